//! The 1RM of the model as it stands, for a plan.
//!
//! In: a question, the lifter's file. Out: the 1RM and where it comes from.

use super::question::Question;
use super::rep_study::maximum;
use crate::anatomy::LifterRecord;
use crate::error::Result;
use crate::rep::RepOptions;
use crate::resistance::Setup;
use crate::session::strength::OneRmSource;
use crate::units::Mass;

/// Whether a lifter's file was fitted to measurements of this very lift.
pub(super) fn is_measured(record: &LifterRecord, question: &Question<'_>) -> bool {
    record.lift_strength.contains_key(question.movement_name)
}

/// The 1RM of the model, and whether the lifter was measured in this lift: then the file has a factor of the lift's own.
pub(super) fn simulated_one_rm(
    question: &Question<'_>,
    record: Option<&LifterRecord>,
) -> Result<(Mass, OneRmSource)> {
    let usual = RepOptions::usual_for(question.movement);
    let (found, _) = maximum(question, &Setup::default(), &usual)?;
    let from = OneRmSource::Simulated {
        lifter: question.lifter.title.clone(),
        measured: record.is_some_and(|record| is_measured(record, question)),
    };
    Ok((found.load, from))
}
