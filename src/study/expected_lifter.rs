//! Who a person of a team most probably is: the strengths that the other lifts of the row and the months of training tell,
//! so that a test begins near what is lifted.
//!
//! In: a row of a team, the lift that is to be tested. Out: the lifter in that lift.

use super::fit_ground::{FOUR_IN_FIVE, FitGround};
use super::person_asked::PersonAsked;
use crate::anatomy::Lifter;
use crate::error::Result;
use crate::library::Library;
use crate::person::{ToldMeasure, ToldMeasurement};
use crate::progress::team_cells::ToldStrength;
use crate::progress::team_file::TeamMember;

/// Who a person most probably is.
pub(super) struct ExpectedLifter {
    /// The most probable lifter.
    pub lifter: Lifter,
    /// Of how many other lifts that is known.
    pub lifts: usize,
    /// Lower end of the interval of the maximum that holds four in five, as a share of what the lifter lifts.
    pub low: f64,
    /// Upper end of the same.
    pub high: f64,
}

/// The most probable lifter.
///
/// ```text
/// low = exp(−1.28·√(J C Jᵀ + v))
/// ```
/// Symbols are those of [`super::person_fit::fit_person`]. Nothing where the movement is none of the library.
///
/// **Fails** as a fit does, so where a lift of the row is none that such a person shows.
pub(super) fn expected_lifter(
    member: &TeamMember,
    movement: &str,
    library: &Library,
) -> Result<Option<ExpectedLifter>> {
    let asked = asked_of(member, Some(movement));
    if !library.movements().iter().any(|known| known == movement) {
        return Ok(None);
    }
    // What no measurement reaches needs no simulation: the lifts of the row are enough.
    let told = asked.measurements.iter();
    let names = told.map(|told| told.movement.as_str()).chain([movement]);
    let ground = FitGround::of_lifts(&asked, library, names)?;
    let found = ground.fitted()?;
    let mut lifts = ground.lifts.iter();
    let lift = lifts.find(|lift| lift.movement == movement);
    let Some(lift) = lift else {
        return Ok(None);
    };
    let (factors, mean) = (&ground.factors, &found.belief.mean);
    let slopes = lift.maximum_slopes(factors, mean)?;
    let (_, variance) = found
        .belief
        .along(&slopes.over(factors, Some(&lift.movement)));
    let deviation = (variance + library.person_table()?.one_rm.deviation.powi(2)).sqrt();
    Ok(Some(ExpectedLifter {
        lifter: lift.lifter(factors, mean),
        lifts: asked.measurements.len(),
        low: (-FOUR_IN_FIVE * deviation).exp(),
        high: (FOUR_IN_FIVE * deviation).exp(),
    }))
}

/// What is asked of a fit of a row, one of its lifts left out if that is named.
pub(super) fn asked_of(member: &TeamMember, but: Option<&str>) -> PersonAsked {
    PersonAsked {
        name: member.name.clone(),
        sex: member.sex,
        height: member.height,
        mass: member.mass,
        months: member.training_months.unwrap_or(0.0),
        age: member.age_years,
        measurements: measured(member, but),
        limbs: Vec::new(),
        traces: Vec::new(),
        seed: 1,
    }
}

/// The lifts that the row tells.
fn measured(member: &TeamMember, but: Option<&str>) -> Vec<ToldMeasurement> {
    let others = member.lifts.iter();
    let others = others.filter(|(name, _)| but.is_none_or(|but| but != name));
    let told = others.filter_map(|(name, told)| {
        let (load, repetitions, reserve) = match *told {
            ToldStrength::OneRm(load) => (load, None, None),
            ToldStrength::Set {
                load,
                repetitions,
                reserve,
            } => (load, Some(repetitions), Some(reserve)),
            ToldStrength::Untested => return None,
        };
        Some(ToldMeasurement {
            written: name.clone(),
            movement: name.clone(),
            measure: ToldMeasure::Lift {
                load,
                repetitions,
                reserve,
            },
        })
    });
    told.collect()
}
