//! The monotone curve against closed forms and its own laws.

use super::{assert_near, seeded, slope_at};
use rand::RngExt;
use torquill::numeric::{Beyond, Spline};

const ALL_WAYS: [Beyond; 3] = [Beyond::ConstantSlope, Beyond::ConstantValue, Beyond::Level];

fn random_points(seed: u64) -> Vec<(f64, f64)> {
    let mut rng = seeded(seed);
    let mut x = rng.random::<f64>() - 3.0;
    (0..rng.random_range(2..12))
        .map(|_| {
            x += 0.05 + rng.random::<f64>();
            (x, 4.0 * rng.random::<f64>() - 2.0)
        })
        .collect()
}

#[test]
fn law_curve_passes_through_its_points() {
    for seed in 0..200 {
        let points = random_points(seed);
        for beyond in ALL_WAYS {
            let curve = Spline::through(&points, beyond).unwrap();
            for (x, y) in &points {
                assert_near(curve.value(*x), *y, 1e-14);
            }
        }
    }
}

#[test]
fn law_curve_and_slope_have_no_jumps() {
    for seed in 0..200 {
        let points = random_points(seed);
        for beyond in [Beyond::ConstantSlope, Beyond::Level] {
            let curve = Spline::through(&points, beyond).unwrap();
            for (x, _) in &points {
                let gap = 1e-9;
                assert_near(curve.value(x - gap), curve.value(x + gap), 1e-6);
                let slope =
                    |from: f64, to: f64| (curve.value(to) - curve.value(from)) / (to - from);
                let (before, behind) = (slope(x - 1e-8, *x), slope(*x, x + 1e-8));
                assert_near(before, behind, 1e-3);
            }
        }
    }
}

#[test]
fn law_curve_stays_between_neighbouring_points() {
    for seed in 0..200 {
        let points = random_points(seed);
        for beyond in ALL_WAYS {
            let curve = Spline::through(&points, beyond).unwrap();
            for pair in points.windows(2) {
                let rise = pair[1].1 - pair[0].1;
                let mut last = pair[0].1;
                for k in 1..=50 {
                    let x = pair[0].0 + (pair[1].0 - pair[0].0) * f64::from(k) / 50.0;
                    let y = curve.value(x);
                    assert!(
                        (y - last) * rise.signum() >= -1e-13,
                        "turns back at {x} (seed {seed})"
                    );
                    last = y;
                }
            }
        }
    }
}

#[test]
fn law_integral_and_value_belong_together() {
    for seed in 0..200 {
        let points = random_points(seed);
        let mut rng = seeded(1000 + seed);
        let curve = Spline::through(&points, ALL_WAYS[seed as usize % 3]).unwrap();
        let (low, high) = curve.range();
        for _ in 0..20 {
            let x = low - 1.0 + (high - low + 2.0) * rng.random::<f64>();
            if points.iter().any(|p| (p.0 - x).abs() < 1e-3) {
                continue;
            }
            let h = 1e-4;
            let area = (curve.integral(low, x + h) - curve.integral(low, x - h)) / (2.0 * h);
            assert_near(curve.value(x), area, 1e-4);
            assert_near(curve.integral(x, low), -curve.integral(low, x), 1e-15);
        }
    }
}

#[test]
fn law_straight_points_give_the_straight_line_and_its_area() {
    let points = [(0.0, 1.0), (0.3, 1.6), (1.1, 3.2), (2.0, 5.0)];
    let line = Spline::through(&points, Beyond::ConstantSlope).unwrap();
    for x in [-4.0, 0.1, 0.3, 0.77, 1.9, 2.0, 7.0] {
        assert_near(line.value(x), 1.0 + 2.0 * x, 1e-14);
        assert_near(slope_at(x, |x| line.value(x)), 2.0, 1e-9);
        assert_near(line.integral(-1.0, x), (x + x * x) - (-1.0 + 1.0), 1e-14);
    }
    let pair = Spline::through(&[(0.0, 0.0), (2.0, 1.0)], Beyond::ConstantValue).unwrap();
    assert_eq!(
        (pair.value(1.0), pair.value(3.0), pair.value(-3.0)),
        (0.5, 1.0, 0.0)
    );
    assert_eq!(pair.integral(-1.0, 3.0), 2.0);
}

#[test]
fn law_worked_example_by_hand() {
    // (0,0) (1,1) (2,4): δ = 1, 3; slope at 1 = 6/(3/1 + 3/3) = 1.5; end slopes by the parabola
    // (3·1 − 3)/2 = 0 and (3·3 − 1)/2 = 4. Left piece: 1.5t² − 0.5t³, its area 0.5 − 0.125.
    let points = [(0.0, 0.0), (1.0, 1.0), (2.0, 4.0)];
    let curve = Spline::through(&points, Beyond::ConstantSlope).unwrap();
    // The second derivative jumps at a point and beyond an end, which a central difference sees as half a step of it.
    assert_near(slope_at(1.0, |x| curve.value(x)), 1.5, 1e-4);
    assert_near(slope_at(0.0, |x| curve.value(x)), 0.0, 1e-4);
    assert_near(slope_at(2.0, |x| curve.value(x)), 4.0, 1e-4);
    assert_near(curve.value(0.5), 1.5 * 0.25 - 0.5 * 0.125, 1e-15);
    assert_near(curve.integral(0.0, 1.0), 0.375, 1e-15);
    assert_near(curve.value(3.0), 8.0, 1e-15);
}

#[test]
fn law_error_falls_with_the_third_power_of_the_spacing() {
    let worst = |pieces: usize| {
        let at = |k: usize| 1.5 * k as f64 / pieces as f64;
        let points: Vec<_> = (0..=pieces).map(|k| (at(k), at(k).exp())).collect();
        let curve = Spline::through(&points, Beyond::ConstantSlope).unwrap();
        (0..=2000)
            .map(|k| 1.5 * f64::from(k) / 2000.0)
            .map(|x| (curve.value(x) - x.exp()).abs())
            .fold(0.0, f64::max)
    };
    let order = (worst(40) / worst(80)).log2();
    assert!((2.8..4.2).contains(&order), "order {order}");
    assert!(worst(80) < 1e-5);
}

#[test]
fn fault_points_without_order_are_refused_with_their_figures() {
    let refused = |points: &[(f64, f64)]| {
        crate::calling::said(&Spline::through(points, Beyond::Level).unwrap_err())
    };
    assert!(refused(&[]).contains("at least 2 points, not 0"));
    assert!(refused(&[(1.0, 1.0)]).contains("not 1"));
    assert!(refused(&[(0.0, 0.0), (2.0, 0.0), (1.0, 0.0)]).contains("points 2 and 3"));
    assert!(refused(&[(0.0, 0.0), (0.0, 1.0)]).contains("stand at 0 and 0"));
    assert!(refused(&[(0.0, 0.0), (1.0, f64::NAN)]).contains("point 2"));
}
