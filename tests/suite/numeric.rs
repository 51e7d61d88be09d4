//! Tests of `numeric`.

mod integrate;
mod least_squares;
mod piecewise;
mod planar;
mod polynomial;
mod programme;
mod root;
mod search;
mod slope;
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
