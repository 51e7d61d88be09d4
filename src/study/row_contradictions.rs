//! Whether the lifts of a row of a team fit one another: each beside what the others say of the same person.
//!
//! In: a row of a team. Out: an [`ApartLift`] for each lift that stands far off.

use super::datum_outcome::outcomes;
use super::expected_lifter::asked_of;
use super::fit_ground::FitGround;
use super::person_data::PersonDatum;
use super::person_lifts::PersonLift;
use super::possible_maximum::SURELY_USUAL;
use crate::error::Result;
use crate::library::Library;
use crate::progress::team_file::TeamMember;
use crate::units::Mass;

/// A lift farther from what the others say does not fit them, in standard deviations: one person in twenty is that far off
/// (the usual level of significance).
pub const FAR_FROM_OTHERS: f64 = 1.96;

/// A lift that does not fit the others of its row.
#[derive(Debug, Clone, PartialEq)]
pub struct ApartLift {
    /// Its movement.
    pub movement: String,
    /// Its 1RM as the row tells it, body apart.
    pub one_rm: Mass,
    /// What the others say its 1RM is, body apart.
    pub others_say: Mass,
    /// How far it is from that, in standard deviations.
    pub deviations: f64,
    /// The others.
    pub others: Vec<String>,
}

/// The lifts of a row that stand far from what the others say, by the fit of all of them.
///
/// Nothing where the row tells fewer than two lifts. **Fails** where one is none that such a person shows.
pub(super) fn lifts_apart(member: &TeamMember, library: &Library) -> Result<Vec<ApartLift>> {
    let asked = asked_of(member, None);
    if asked.measurements.len() < 2 {
        return Ok(Vec::new());
    }
    let files = asked.files(library)?;
    let told = asked.measurements.iter();
    let lifts = told
        .map(|told| PersonLift::open(library, &files, &told.movement))
        .collect::<Result<Vec<_>>>()?;
    if are_surely_alike(&PersonDatum::all(&asked, library, &lifts)?, &lifts)? {
        return Ok(Vec::new());
    }
    let ground = FitGround::on(&asked, library, lifts)?;
    let found = ground.fitted()?;
    let outcomes = outcomes(&ground, &found, &[]);
    let names = || outcomes.iter().map(|outcome| outcome.movement.clone());
    let far = outcomes
        .iter()
        .filter(|outcome| outcome.deviations().abs() > FAR_FROM_OTHERS);
    Ok(far
        .map(|outcome| ApartLift {
            movement: outcome.movement.clone(),
            one_rm: Mass::from_kg(outcome.measured - outcome.body_kg),
            others_say: Mass::from_kg(outcome.others.0 - outcome.body_kg),
            deviations: outcome.deviations(),
            others: names().filter(|name| *name != outcome.movement).collect(),
        })
        .collect())
}

/// Whether the lifts, each beside what the reference person of that size holds, are so near one another that no fit has to
/// be asked.
fn are_surely_alike(data: &[PersonDatum], lifts: &[PersonLift]) -> Result<bool> {
    let beside = |datum: &PersonDatum| {
        let lift = &lifts[datum.lift];
        let (held, _) = lift.log_held(&lift.own_strength())?;
        Ok(datum.measured.log_value - held)
    };
    let beside = data.iter().map(beside);
    let beside = beside.collect::<Result<Vec<f64>>>()?;
    let most = beside.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let least = beside.iter().copied().fold(f64::INFINITY, f64::min);
    Ok(most - least < SURELY_USUAL)
}
