//! Polynomials against closed forms.

use super::{assert_near, seeded, slope_at};
use rand::RngExt;
use torquill::numeric::Polynomial;

#[test]
fn law_quintic_value_and_area_by_hand() {
    // 2 − x + 3x³ + x⁵
    let p = Polynomial::new(&[2.0, -1.0, 0.0, 3.0, 0.0, 1.0]).unwrap();
    assert_eq!(p.value(2.0), 2.0 - 2.0 + 24.0 + 32.0);
    assert_near(p.integral(0.0, 2.0), 4.0 - 2.0 + 12.0 + 64.0 / 6.0, 1e-15);
    let constant = Polynomial::new(&[7.0]).unwrap();
    assert_eq!(constant.value(3.0), 7.0);
    assert_eq!(constant.integral(1.0, 3.0), 14.0);
}

#[test]
fn law_area_and_slope_of_a_polynomial_undo_each_other() {
    let mut rng = seeded(11);
    for _ in 0..200 {
        let coefficients: Vec<f64> = (0..6).map(|_| rng.random::<f64>() * 4.0 - 2.0).collect();
        let p = Polynomial::new(&coefficients).unwrap();
        let numbered = coefficients.iter().enumerate();
        let slopes: Vec<f64> = numbered.skip(1).map(|(k, c)| k as f64 * c).collect();
        let slope = Polynomial::new(&slopes).unwrap();
        let (a, b) = (
            rng.random::<f64>() * 3.0 - 1.5,
            rng.random::<f64>() * 3.0 - 1.5,
        );
        assert_near(slope.value(a), slope_at(a, |x| p.value(x)), 1e-8);
        assert_near(slope.integral(a, b), p.value(b) - p.value(a), 1e-12);
    }
}

#[test]
fn fault_a_polynomial_refuses_no_or_bad_coefficients() {
    assert!(Polynomial::new(&[]).is_err());
    let fault = Polynomial::new(&[1.0, f64::NAN]).unwrap_err();
    assert!(crate::calling::said(&fault).contains("x^1"), "{fault}");
}
