//! What `src/study/between_samples.rs` does, from inside.

use torquill::study::between_samples::{crest, promised};

/// A roof with its ridge at a place, steep on one side.
fn roof(ridge: f64) -> impl Fn(f64) -> f64 {
    move |x: f64| {
        100.0
            - if x < ridge {
                300.0 * (ridge - x)
            } else {
                40.0 * (x - ridge)
            }
    }
}

#[test]
fn law_a_ridge_between_samples_is_found_on_the_curve_itself() {
    for step in 0..50 {
        let ridge = 0.2 + 0.012_3 * f64::from(step);
        let values: Vec<f64> = (0..=20).map(|i| roof(ridge)(f64::from(i) / 20.0)).collect();
        let turns =
            |piece: usize| (piece as f64) / 20.0 <= ridge && ridge <= (piece as f64 + 1.0) / 20.0;
        let found = crest(&values, turns, |x| Some(roof(ridge)(x))).expect("a ridge");
        assert!((found.value - 100.0).abs() < 1.0e-2, "{ridge}: {found:?}");
        assert!((found.range - ridge).abs() < 1.0e-5, "{ridge}: {found:?}");
    }
}

#[test]
fn law_a_smooth_curve_is_left_to_its_samples() {
    let values: Vec<f64> = (0..=20)
        .map(|i| f64::from(i) * (20.0 - f64::from(i)))
        .collect();
    assert_eq!(crest(&values, |_| false, |_| panic!("not asked")), None);
    assert_eq!(crest(&[1.0], |_| true, |_| None), None);
}

#[test]
fn law_lines_promise_where_they_meet() {
    // 2·x from the left and 3·(1 − x) + 1 from the right meet at 0.8.
    let values = [-2.0, 0.0, 1.0, -2.0];
    assert!((promised(&values, 1) - 1.6).abs() < 1.0e-12);
    // A step promises nothing beyond its samples.
    assert!((promised(&[1.0, 1.0, 2.0, 2.0], 1) - 2.0).abs() < 1.0e-12);
}
