//! Whether a repetition ends as it was meant to.
//!
//! In: a [`RepStudy`]. Out: nothing, or what happened instead and where.

use super::rep_study::RepStudy;
use crate::error::{Error, FailedEnd, OutcomeFault, Result, StopPlace, StopPosition};
use crate::movement::Measure;
use crate::rep::RepEnd;
use crate::units::{Angle, Length};

impl RepStudy {
    /// Nothing to say of a load that is lifted or handed over.
    ///
    /// **Fails** (no answer) where the load stops on the way, is thrown to its end, gets away or rises by itself.
    pub fn check_lifted(&self) -> Result<()> {
        let end = match self.trace.outcome {
            RepEnd::Lockout | RepEnd::HandedOver => return Ok(()),
            RepEnd::Stalled { .. } if self.is_stuck_at_start() => FailedEnd::StuckAtStart,
            RepEnd::Stalled { position, .. } => FailedEnd::Stops(self.stop(position)),
            RepEnd::NotHeld { position, .. } => FailedEnd::NotHeld(self.stop(position)),
            RepEnd::LostInLowering { .. } if self.rises_by_itself() => FailedEnd::Rises,
            RepEnd::LostInLowering { position, .. } => FailedEnd::GetsAway(self.stop(position)),
        };
        Err(Error::no_answer(OutcomeFault {
            end,
            maximum: self.one_rm.map(|max| max.load),
        }))
    }

    fn stop(&self, position: f64) -> StopPlace {
        let across = self.across(position);
        StopPlace {
            at: match self.trace.measure {
                Measure::Force => StopPosition::Way(Length::from_cm(across)),
                Measure::Torque => StopPosition::Joint(Angle::from_deg(across)),
            },
            away_from: self.still.away_from.clone(),
        }
    }
}
