//! Whether a maximum that is told, or that a log ends at, is one that such a person has: judged by the belief that a fit
//! begins with, before anything is planned on it.
//!
//! In: a model, months of training, a maximum. Out: nothing, or [`OddMaximum`]: how far it is off.

use super::fit_ground::{IMPOSSIBLE, prior_of};
use super::person_asked::reference_of;
use super::person_lifts::PersonLift;
use crate::anatomy::Sex;
use crate::bounds::bounds;
use crate::error::{Error, FaultKind, JudgedBy, PersonFault, Result};
use crate::library::{Library, Model, assemble};
use crate::person::PersonFactors;
use crate::units::Mass;
use nalgebra::DVector;

/// A maximum farther from what people of that kind show is unlikely, in standard deviations (assumed: one person in 400).
const UNLIKELY: f64 = 3.0;
/// A maximum nearer than this logarithm to what is held still is never unlikely (assumed: a factor of one and a half;
/// people of one kind alone scatter by a quarter).
pub(super) const SURELY_USUAL: f64 = 0.4;

/// How far a maximum is from what people of that kind show.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OddMaximum {
    /// The maximum over what is expected.
    pub over_expected: f64,
    /// The same in standard deviations.
    pub deviations: f64,
}

impl OddMaximum {
    /// Whether nobody has it.
    #[must_use]
    pub fn is_impossible(&self) -> bool {
        self.deviations.abs() > IMPOSSIBLE
    }
}

/// Judges a maximum, what is lifted of the body with it: of a lifter of these least and most months of training.
///
/// ```text
/// (ln(maximum) − ln f(m)) / √(J C Jᵀ + v)
/// ```
/// Symbols are those of [`super::person_fit::fit_person`]; where the months are not known, `m` is the nearer end. Nothing
/// where it is not unlikely, and where the lifter cannot do the lift in the simulation, so that nothing is expected.
///
/// **Fails** with what is wrong in the tables.
pub(super) fn odd_maximum(
    library: &Library,
    model: &Model,
    months: (f64, f64),
    total: Mass,
) -> Result<Option<OddMaximum>> {
    match judged(
        library,
        model,
        months,
        total.as_kg().max(f64::MIN_POSITIVE).ln(),
    ) {
        Err(fault) if fault.kind() == FaultKind::NoAnswer => Ok(None),
        judged => judged,
    }
}

fn judged(
    library: &Library,
    model: &Model,
    (fewest, most): (f64, f64),
    log_total: f64,
) -> Result<Option<OddMaximum>> {
    let lift = PersonLift::of(model.clone())?;
    let (held, _) = lift.log_held(&lift.own_strength())?;
    if (log_total - held).abs() < SURELY_USUAL {
        return Ok(None);
    }
    let table = library.person_table()?;
    let is_above = log_total > held;
    let factors = PersonFactors::of(&lift.groups(), std::slice::from_ref(&lift.movement));
    let mut values = DVector::zeros(factors.count());
    values[0] = table.gain(if is_above { most } else { fewest });
    let reckoned = lift.log_maximum(&lift.strength(&factors, &values))?;
    let miss = log_total - reckoned;
    // Between both ends of training, or on the far side of what training explains.
    if (miss > 0.0) != is_above {
        return Ok(None);
    }
    let slopes = lift.maximum_slopes(&factors, &values)?;
    let slopes = slopes.over(&factors, Some(&lift.movement));
    let who = (lift.model.lifter.sex, most);
    let before = prior_of(who, library, &factors, std::slice::from_ref(&lift))?;
    let (_, variance) = before.along(&slopes);
    let deviations = miss / (variance + table.one_rm.deviation.powi(2)).sqrt();
    Ok((deviations.abs() > UNLIKELY).then_some(OddMaximum {
        over_expected: miss.exp(),
        deviations,
    }))
}

/// Refuses the 1RM that a log of a lift ends at where nobody has it, whoever it is of: more than trained men, or less than
/// untrained women.
///
/// **Fails** with it, and with what is wrong in the tables.
pub(super) fn check_of_anybody(library: &Library, movement: &str, one_rm: Mass) -> Result<()> {
    let most = bounds().training_months.most();
    for (sex, months, side, judged_by) in [
        (Sex::Man, most, 1.0, JudgedBy::TrainedMen),
        (Sex::Woman, 0.0, -1.0, JudgedBy::UntrainedWomen),
    ] {
        let lifter = reference_of(sex);
        let model = match assemble(library, lifter, movement, &[]) {
            Err(fault) if fault.kind() == FaultKind::NoAnswer => continue,
            model => model?,
        };
        let odd = odd_maximum(library, &model, (months, months), one_rm)?;
        if let Some(odd) = odd.filter(|odd| odd.is_impossible() && odd.deviations * side > 0.0) {
            return Err(Error::bad(impossible(movement, one_rm, odd, judged_by)));
        }
    }
    Ok(())
}

/// A 1RM that nobody has.
pub(super) fn impossible(
    movement: &str,
    one_rm: Mass,
    odd: OddMaximum,
    judged_by: JudgedBy,
) -> PersonFault {
    PersonFault::ImpossibleOneRm {
        line: None,
        who: None,
        movement: movement.to_owned(),
        one_rm,
        over_expected: odd.over_expected,
        deviations: odd.deviations,
        judged_by,
    }
}
