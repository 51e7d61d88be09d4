//! What `src/numeric/local_polynomial.rs` does, from inside.

use torquill::numeric::local_polynomial::smoothed;

#[test]
fn law_a_parabola_keeps_value_and_slope_at_any_spacing() {
    let curve = |t: f64| 0.3 + 0.8 * t - 0.5 * t * t;
    let points: Vec<(f64, f64)> = (0..60)
        .map(|k| 0.02 * f64::from(k) + 0.007 * f64::from(k % 3))
        .map(|t| (t, curve(t)))
        .collect();
    for ((t, _), (value, slope)) in points.iter().zip(smoothed(&points, 0.1)) {
        assert!((value - curve(*t)).abs() < 1e-9);
        assert!((slope - (0.8 - t)).abs() < 1e-8);
    }
    assert_eq!(smoothed(&[(0.0, 1.0), (1.0, 2.0)], 0.1)[0].1, 0.0);
}
