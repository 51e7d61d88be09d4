//! Finite differences against derivatives known in closed form.

use super::{assert_near, seeded};
use rand::RngExt;
use torquill::numeric::{jacobian_at, slope_at};

#[test]
fn law_central_differences_are_good_to_ten_digits() {
    let mut rng = seeded(81);
    for _ in 0..300 {
        let x = 4.0 * rng.random::<f64>() - 2.0;
        assert_near(slope_at(x, 1.0, f64::sin), x.cos(), 1e-9);
        assert_near(slope_at(x, 1.0, f64::exp), x.exp(), 1e-9);
        assert_near(slope_at(1e6 + x, 1e6, |x| x * x), 2.0 * (1e6 + x), 1e-9);
        let (y, size) = (rng.random::<f64>(), [1.0, 1.0]);
        let found = jacobian_at(&[x, y], &size, |p| {
            vec![p[0] * p[1], p[0].sin(), p[1].exp()]
        });
        let expected = [[y, x], [x.cos(), 0.0], [0.0, y.exp()]];
        for (row, expected) in found.iter().zip(expected) {
            for (a, b) in row.iter().zip(expected) {
                assert_near(*a, b, 1e-9);
            }
        }
        assert_eq!((found.len(), found[0].len()), (3, 2));
    }
}
