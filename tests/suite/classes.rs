//! Laws of the class of a strength curve, on random curves.

use crate::lift_by_another_name::LIFTS;
use proptest::prelude::*;
use torquill::capacity::{CurveShape, WEAK_END, class_of, class_with};
use torquill::library::{Library, Workbench};
use torquill::study::Conditions;

const SAMPLES: usize = 101;

/// A curve over the range.
fn curve(of: impl Fn(f64) -> f64) -> Vec<f64> {
    (0..SAMPLES)
        .map(|k| of(k as f64 / (SAMPLES - 1) as f64))
        .collect()
}

/// Falls from 1 to `trough` at `place`, then rises to `end`; the powers bend both parts.
fn sagging(trough: f64, place: f64, end: f64, (fall, rise): (f64, f64)) -> Vec<f64> {
    curve(|s| {
        if s < place {
            trough + (1.0 - trough) * (1.0 - s / place).powf(fall)
        } else {
            trough + (end - trough) * ((s - place) / (1.0 - place)).powf(rise)
        }
    })
}

fn mirrored(shape: CurveShape) -> CurveShape {
    match shape {
        CurveShape::Ascending => CurveShape::Descending,
        CurveShape::Descending => CurveShape::Ascending,
        same => same,
    }
}

proptest! {
    #[test]
    fn law_a_fall_and_a_rise_make_a_u_however_high_an_end_climbs(
        trough in 0.05..0.7_f64, place in 0.3..0.7_f64, end in 0.95..40.0_f64, bend in 0.8..1.25_f64,
    ) {
        let values = sagging(trough, place, end, (bend, 1.0 / bend));
        prop_assert_eq!(class_of(&values).shape, CurveShape::UShaped);
        let found = class_of(&values);
        prop_assert!((found.trough_range - place).abs() < 0.02, "{found:?}");
    }

    #[test]
    fn law_a_curve_that_only_rises_or_falls_is_no_u_with_a_spike_at_an_end_either(
        low in 0.05..0.99_f64, bend in 0.2..5.0_f64, spike in 1.0..50.0_f64, wide in 0..5_usize,
    ) {
        let rising = curve(|s| low + (1.0 - low) * s.powf(bend));
        let falling: Vec<f64> = rising.iter().rev().copied().collect();
        for values in [rising, falling] {
            let shape = class_of(&values).shape;
            prop_assert!(shape != CurveShape::UShaped && shape != CurveShape::BellShaped, "{shape:?}");
            for at_the_end in [false, true] {
                let mut spiked = values.clone();
                for k in 0..wide {
                    let index = if at_the_end { SAMPLES - 1 - k } else { k };
                    spiked[index] = spike;
                }
                prop_assert_ne!(class_of(&spiked).shape, CurveShape::UShaped);
            }
        }
    }

    #[test]
    fn law_a_class_is_of_the_shape_alone_and_mirrors_with_the_curve(
        values in proptest::collection::vec(0.1..10.0_f64, 20..150), factor in 1.0e-3..1.0e3_f64,
    ) {
        let found = class_of(&values);
        let scaled: Vec<f64> = values.iter().map(|v| v * factor).collect();
        let turned: Vec<f64> = values.iter().rev().copied().collect();
        prop_assert_eq!(class_of(&scaled).shape, found.shape);
        prop_assert_eq!(class_of(&turned).shape, mirrored(found.shape));
        prop_assert!((class_of(&turned).trough_ratio - found.trough_ratio).abs() < 1.0e-12);
        // The label follows from the figures that are printed with it.
        let told = match (found.start_ratio < WEAK_END, found.end_ratio < WEAK_END) {
            _ if found.trough_ratio < WEAK_END => CurveShape::UShaped,
            (true, false) => CurveShape::Ascending,
            (false, true) => CurveShape::Descending,
            (true, true) => CurveShape::BellShaped,
            (false, false) => CurveShape::Level,
        };
        prop_assert_eq!(found.shape, told);
    }

    #[test]
    fn law_a_smooth_trough_is_placed_between_its_samples(
        place in 0.3..0.7_f64, least in 0.1..0.9_f64, bend in 2.0..20.0_f64,
    ) {
        let values = curve(|s| least + bend * (s - place).powi(2));
        let found = class_of(&values);
        prop_assert!((found.trough_range - place).abs() < 1.0e-9, "{found:?}");
        // One that is known to lie elsewhere is taken as it is, and with it the class.
        let known = class_with(&values, None, Some((0.5, 0.5 * least)));
        prop_assert_eq!(known.trough_range, 0.5);
        prop_assert!((known.trough_of_peak * known.peak / least - 0.5).abs() < 1.0e-12);
        prop_assert!(known.trough_ratio < found.trough_ratio);
    }

    #[test]
    fn law_a_hill_between_weak_ends_is_bell_shaped(
        start in 0.05..0.8_f64, end in 0.05..0.8_f64, place in 0.2..0.8_f64,
    ) {
        let hill = curve(|s| if s < place {
            start + (1.0 - start) * (s / place)
        } else {
            end + (1.0 - end) * ((1.0 - s) / (1.0 - place))
        });
        prop_assert_eq!(class_of(&hill).shape, CurveShape::BellShaped);
    }
}

#[test]
fn law_a_level_curve_and_a_curve_of_nothing_are_level() {
    for values in [vec![], vec![3.0], vec![2.0; 40], vec![0.0; 40]] {
        assert_eq!(class_of(&values).shape, CurveShape::Level, "{values:?}");
    }
}

#[test]
fn law_a_trough_is_that_of_ten_times_as_many_poses() {
    let library = Library::built_in();
    let mut seen = 0;
    for lift in LIFTS {
        let bench = Workbench::open(&library, "reference-man", lift).expect("a shipped lift");
        let model = bench.model(&[]).expect("a model");
        let class = |samples: usize| {
            let asked = Conditions {
                samples,
                ..Conditions::default()
            };
            asked.of(&model).expect("a study").class
        };
        let coarse = class(61);
        if coarse.shape != CurveShape::UShaped {
            continue;
        }
        let fine = class(601);
        let [told, true_one] = [coarse, fine].map(|class| class.trough_of_peak * class.peak);
        assert!(
            (told / true_one - 1.0).abs() < 2.0e-3,
            "{lift}: {told} {true_one}"
        );
        let off = (coarse.trough_range - fine.trough_range).abs();
        assert!(off < 1.0 / 60.0, "{lift}: {off}");
        seen += 1;
    }
    assert!(seen > 0, "a built-in lift sags");
}
