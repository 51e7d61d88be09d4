//! Whether weight makes a lift harder at all: nothing can be loaded for one that it helps.
//!
//! In: a movement and a lifter. Out: nothing, or by how much the load ends below where it starts.

use super::question::Question;
use crate::error::{Error, MaximumSearchFault, Result};
use crate::movement::{Carrier, trace};
use crate::units::Length;

/// Poses of which the first and the last are looked at: as few as a range has.
const POSES: usize = 5;

/// **Fails** for a bar, a dumb-bell or a body that ends below where it starts, and where the limbs cannot do the lift.
pub(super) fn check_weight_resists(question: &Question<'_>) -> Result<()> {
    let range = trace(question.movement, question.lifter, POSES)?;
    let carried = matches!(
        range.carrier,
        Carrier::Bar | Carrier::Dumbbell | Carrier::Body
    );
    match range.sinks_m().filter(|_| carried) {
        Some(sinks) => Err(Error::bad(MaximumSearchFault::WeightHelps {
            sinks: Length::from_m(sinks),
        })),
        None => Ok(()),
    }
}
