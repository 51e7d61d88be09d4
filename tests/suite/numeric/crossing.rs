//! Bisection and Brent's method on functions with known zeros.

use super::{assert_near, seeded};
use rand::RngExt;
use torquill::numeric::{bisect, brent};

#[test]
fn law_brent_finds_known_zeros_in_few_calls() {
    type Case = (fn(f64) -> f64, f64, f64, f64, usize);
    let cases: [Case; 6] = [
        (|x| x * x - 2.0, 0.0, 2.0, 2f64.sqrt(), 12),
        (|x| x.cos() - x, 0.0, 1.0, 0.739_085_133_215_160_6, 12),
        (|x| (x - 1.0).powi(3), 0.0, 3.0, 1.0, 200),
        (|x| x.exp() - 1e6, 0.0, 100.0, 1e6f64.ln(), 40),
        (|x| if x < 0.3 { -1.0 } else { 1.0 }, 0.0, 1.0, 0.3, 120),
        (|x| x, -1.0, 2.0, 0.0, 5),
    ];
    for (index, (function, low, high, zero, most_calls)) in cases.into_iter().enumerate() {
        let mut calls = 0;
        let found = brent(low, high, 1e-13, |x| {
            calls += 1;
            function(x)
        })
        .unwrap();
        let allowed = if index == 2 { 1e-5 } else { 1e-12 };
        assert_near(found, zero, allowed);
        assert!(calls <= most_calls, "case {index}: {calls} calls");
    }
}

#[test]
fn law_brent_and_halving_agree_on_random_cubics() {
    let mut rng = seeded(31);
    for _ in 0..500 {
        let (a, b, zero): (f64, f64, f64) = (rng.random(), rng.random(), rng.random());
        let function = |x: f64| (x - zero) * (1.0 + a * x * x) * (1.0 + b);
        let by_brent = brent(-1.0, 2.0, 1e-14, function).unwrap();
        let by_halving = bisect(-1.0, 2.0, 0.0, |x| function(x) <= 0.0).unwrap();
        assert_near(by_brent, zero, 1e-13);
        assert_near(by_halving.below, zero, 1e-13);
        assert!(function(by_halving.below) <= 0.0 && function(by_halving.above) > 0.0);
        assert_eq!(by_halving.below.next_up(), by_halving.above);
    }
}

#[test]
fn fault_searches_without_a_crossing_say_so() {
    let fault = brent(0.0, 1.0, 1e-9, |x| x + 1.0).unwrap_err();
    assert!(
        crate::calling::said(&fault).contains("no change of sign"),
        "{fault}"
    );
    assert!(brent(0.0, 1.0, 1e-9, |_| f64::NAN).is_err());
    assert!(brent(1.0, 0.0, 1e-9, |x| x).is_err());
    assert!(brent(0.0, f64::INFINITY, 1e-9, |x| x - 1.0).is_err());
    let fault = bisect(0.0, 5.0, 1e-9, |_| true).unwrap_err();
    assert!(
        crate::calling::said(&fault).contains("yes both at 0 and at 5"),
        "{fault}"
    );
    assert_eq!(brent(0.0, 1.0, 1e-9, |x| x).unwrap(), 0.0);
    assert_eq!(brent(-1.0, 0.0, 1e-9, |x| x).unwrap(), 0.0);
}
