//! The 1RM of the model as it stands, and what is planned from where nobody tested it.
//!
//! In: a model, a question of its lift. Out: the 1RM and where it comes from; the interval about it and the lifter of its
//! lower end.

use super::person_versions::PersonVersions;
use super::question::Question;
use super::rep_study::maximum;
use super::session_oracle::{carried_body, lifter_of_one_rm};
use crate::anatomy::{Lifter, LifterRecord};
use crate::error::{Error, PlanFault, Result};
use crate::library::Model;
use crate::rep::RepOptions;
use crate::resistance::Setup;
use crate::session::strength::{OneRmSource, SimulatedRange};
use crate::units::Mass;

/// Whether a lifter's file was fitted to measurements of this very lift.
pub(super) fn is_measured(record: &LifterRecord, question: &Question<'_>) -> bool {
    record.lift_strength.contains_key(question.movement_name)
}

/// The 1RM of the model.
pub(super) fn simulated_one_rm(question: &Question<'_>) -> Result<Mass> {
    let usual = RepOptions::usual_for(question.movement);
    let (found, _) = maximum(question, &Setup::default(), &usual)?;
    Ok(found.load)
}

/// The 1RM that is planned from where none is told: the model's; of a fitted lifter who was not measured in this lift, the
/// lower end of the interval that holds four in five. Where more than the 1RM is planned the interval of a measured lift is
/// told too.
///
/// **Fails** where no repetition is simulated, and where the lower end is nothing.
pub(super) fn one_rm_of_model(
    model: &Model,
    question: &Question<'_>,
    overloads: bool,
) -> Result<(Mass, OneRmSource)> {
    let measured = is_measured(&model.record, question);
    let range = match measured && !overloads {
        true => None,
        false => known_range(model, question)?,
    };
    let one_rm = match &range {
        Some(range) if measured => range.simulated,
        Some(range) => range.careful(),
        None => simulated_one_rm(question)?,
    };
    let body = carried_body(&question.movement.carrier()?, question.lifter);
    if range.is_some() && (one_rm + body).as_kg() <= 0.0 {
        return Err(Error::no_answer(PlanFault::NobodyOfOneRm { one_rm }));
    }
    let from = OneRmSource::Simulated {
        lifter: question.lifter.title.clone(),
        measured,
        range,
    };
    Ok((one_rm, from))
}

/// The interval about the model's 1RM; nothing where the file does not say how well its lifter is known.
fn known_range(model: &Model, question: &Question<'_>) -> Result<Option<SimulatedRange>> {
    if model.record.scatter.is_none() {
        return Ok(None);
    }
    let usual = RepOptions::usual_for(question.movement);
    let interval = PersonVersions::of(model)?.maximum(question, &Setup::default(), &usual);
    Ok(Some(SimulatedRange {
        simulated: simulated_one_rm(question)?,
        low: interval.low,
        high: interval.high,
    }))
}

/// A fitted lifter as strong in an untested lift as the lower end of the interval says.
#[derive(Debug, Clone)]
pub struct UntestedLifter {
    /// The lifter, scaled to that end.
    pub lifter: Lifter,
    /// The interval.
    pub range: SimulatedRange,
}

/// The lifter that an untested lift is picked for; nothing where [`SimulatedRange`] is not known.
///
/// **Fails** where no repetition is simulated, and where no strength gives the lower end.
pub fn untested_lifter(model: &Model, question: &Question<'_>) -> Result<Option<UntestedLifter>> {
    if is_measured(&model.record, question) {
        return Ok(None);
    }
    let Some(range) = known_range(model, question)? else {
        return Ok(None);
    };
    let lifter = lifter_of_one_rm(question, range.careful())?;
    Ok(Some(UntestedLifter { lifter, range }))
}
