//! The load pattern at each sample: what capacity solves against.
//!
//! In: a setup, load points, how the movement takes its load. Out: force and moving mass, one a point.

use crate::movement::{Carrier, LoadPoint};
use crate::resistance::{Felt, Motion, Setup};

/// Force on the lifter and moving mass at every load point.
///
/// The setup is put up for the movement first ([`Setup::rigged_over`]), unless it already is.
///
/// **Shape.** One pattern a point, in their order. **Fails.** Never.
#[must_use]
pub fn patterns(
    setup: &Setup,
    points: &[LoadPoint],
    carrier: &Carrier,
    motion: Motion,
) -> Vec<Felt> {
    let rigged = put_up(setup, points);
    points
        .iter()
        .map(|point| rigged.total_at(point, carrier, motion))
        .collect()
}

/// The setup as it hangs over these points.
#[must_use]
pub fn put_up(setup: &Setup, points: &[LoadPoint]) -> Setup {
    if setup.start_x_m().is_some() {
        setup.clone()
    } else {
        setup.rigged_over(points)
    }
}
