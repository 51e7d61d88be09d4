//! Tests of `numeric`.

mod belief;
mod crossing;
mod integrate;
mod least_squares;
mod minimum;
pub mod optimality;
mod planar;
mod polynomial;
mod programme;
mod spline;
mod statistics;

use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

/// Random numbers that are the same in every run.
fn seeded(seed: u64) -> ChaCha8Rng {
    ChaCha8Rng::seed_from_u64(seed)
}

/// Asserts that two numbers agree to `tolerance` times the larger of them and 1.
#[track_caller]
fn assert_near(found: f64, expected: f64, tolerance: f64) {
    let miss = (found - expected).abs() / expected.abs().max(1.0);
    assert!(
        miss <= tolerance,
        "found {found}, expected {expected}: off by {miss:.3e}, allowed {tolerance:.0e}"
    );
}

/// The slope of a function by a central difference, for checks of what should be its derivative.
fn slope_at(x: f64, function: impl Fn(f64) -> f64) -> f64 {
    let step = 1e-5;
    (function(x + step) - function(x - step)) / (2.0 * step)
}
