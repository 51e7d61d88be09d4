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

/// How much more likely another unit makes a maximum before it is asked for (Jeffreys 1961, Theory of Probability, app. B,
/// from memory: from ten on the evidence is strong).
const MUCH_LIKELIER: f64 = 10.0;

/// How far a maximum is from what people of that kind show.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OddMaximum {
    /// The maximum over what is expected.
    pub over_expected: f64,
    /// The same in standard deviations.
    pub deviations: f64,
    /// What it would be if pounds were taken for kilograms, the body with it, where that fits such people much better.
    pub in_pounds: Option<Mass>,
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
/// where it is neither unlikely nor much likelier in pounds, and where the lifter cannot do the lift in the simulation, so that nothing is expected.
///
/// **Fails** with what is wrong in the tables.
pub(super) fn odd_maximum(
    library: &Library,
    model: &Model,
    months: (f64, f64),
    (total, body): (Mass, Mass),
) -> Result<Option<OddMaximum>> {
    match judged(library, model, months, (total, body)) {
        Err(fault) if fault.kind() == FaultKind::NoAnswer => Ok(None),
        judged => judged,
    }
}

fn judged(
    library: &Library,
    model: &Model,
    months: (f64, f64),
    (total, body): (Mass, Mass),
) -> Result<Option<OddMaximum>> {
    let beside = BesidePeople {
        library,
        lift: PersonLift::of(model.clone())?,
        sex: model.lifter.sex,
        months,
    };
    let (held, _) = beside.lift.log_held(&beside.lift.own_strength())?;
    if (log_of(total) - held).abs() < SURELY_USUAL {
        return Ok(None);
    }
    let Some((miss, deviations)) = beside.miss(total, held)? else {
        return Ok(None);
    };
    let as_pounds = body + Mass::from_lb((total - body).as_kg());
    let in_pounds = match deviations > 0.0 {
        true => {
            let (_, other) = beside.miss(as_pounds, held)?.unwrap_or((0.0, 0.0));
            let likelier = (0.5 * (deviations * deviations - other * other)).exp();
            (likelier > MUCH_LIKELIER).then_some(as_pounds)
        }
        false => None,
    };
    let is_odd = deviations.abs() > UNLIKELY || in_pounds.is_some();
    Ok(is_odd.then_some(OddMaximum {
        over_expected: miss.exp(),
        deviations,
        in_pounds,
    }))
}

fn log_of(total: Mass) -> f64 {
    total.as_kg().max(f64::MIN_POSITIVE).ln()
}

/// People of one kind in one lift, beside whom a maximum is held.
struct BesidePeople<'a> {
    library: &'a Library,
    lift: PersonLift,
    sex: Sex,
    /// Least and most months of training.
    months: (f64, f64),
}

impl BesidePeople<'_> {
    /// How far a maximum is from theirs, as a logarithm and in standard deviations; nothing where training explains
    /// it. `held` is the logarithm of what the lifter as it stands holds still.
    fn miss(&self, total: Mass, held: f64) -> Result<Option<(f64, f64)>> {
        let Self { library, lift, .. } = self;
        let log_total = log_of(total);
        let table = library.person_table()?;
        let is_above = log_total > held;
        let (fewest, most) = self.months;
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
        let who = (self.sex, most);
        let before = prior_of(who, library, &factors, std::slice::from_ref(lift))?;
        let (_, variance) = before.along(&slopes);
        let deviations = miss / (variance + table.one_rm.deviation.powi(2)).sqrt();
        Ok(Some((miss, deviations)))
    }
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
        let odd = odd_maximum(library, &model, (months, months), (one_rm, Mass::ZERO))?;
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
