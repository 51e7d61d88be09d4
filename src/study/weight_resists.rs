//! Whether weight makes a lift harder at all: nothing can be loaded for one that it helps.
//!
//! In: a movement and a lifter. Out: nothing, or by how much the load ends below where it starts.

use super::question::Question;
use crate::error::{Error, MaximumSearchFault, Result};
use crate::movement::{Carrier, trace};
use crate::units::Length;

/// A load that ends no more than this below its start is not helped along its way, m (as a movement's check takes it).
const LEVEL_M: f64 = 0.01;

/// Poses of which the first and the last are looked at: as few as a range has.
const POSES: usize = 5;

/// **Fails** for a bar, a dumb-bell or a body that ends below where it starts, and where the limbs cannot do the lift.
pub(super) fn check_weight_resists(question: &Question<'_>) -> Result<()> {
    let range = trace(question.movement, question.lifter, POSES)?;
    let carried = matches!(
        range.carrier,
        Carrier::Bar | Carrier::Dumbbell | Carrier::Body
    );
    let ends = (range.poses.first(), range.poses.last());
    match ends {
        (Some(first), Some(last)) if carried && first.load.z_m - last.load.z_m > LEVEL_M => {
            let sinks = Length::from_m(first.load.z_m - last.load.z_m);
            Err(Error::bad(MaximumSearchFault::WeightHelps { sinks }))
        }
        _ => Ok(()),
    }
}
