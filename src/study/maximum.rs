//! The maximum of a lift and what goes with it: the eccentric one, velocities, the strength that a known one implies.
//!
//! In: a question, a setup, how the repetition is done, what is wanted. Out: [`MaximumStudy`].

use super::bands_gone::{BandsGone, bands_gone};
use super::person_versions::MaximumInterval;
use super::question::Question;
use super::rep_study::{maximum, plain_one_rm, rigged};
use crate::error::{FaultKind, Result};
use crate::movement::{Handover, Measure};
use crate::rep::{
    After, LoadVelocity, LoadableMax, OneRepMax, RepEnd, RepModel, RepOptions, scale_for_one_rm,
    with_load,
};
use crate::resistance::Setup;
use crate::units::{Duration, Mass};

/// What is wanted beside the maximum.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct MaximumWishes {
    /// The maximum that is lowered under control in this time.
    pub eccentric: Option<Duration>,
    /// Mean velocities over 30 to 100 % of the maximum.
    pub velocities: bool,
    /// The strength that this known maximum implies.
    pub known: Option<Mass>,
}

/// Mean velocities at a maximum, m/s or rad/s. A limit is passed at a crawl where the reserve is least; what is tested in
/// steps of a gym lies below it, so it is the second one that compares with a measured velocity of a 1RM.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MaximumPace {
    /// Of the maximum itself.
    pub exact: f64,
    /// Of the largest load in whole steps.
    pub in_steps: f64,
}

/// A maximum and what was wanted beside it.
#[derive(Debug, Clone, PartialEq)]
pub struct MaximumStudy {
    /// Name of the movement.
    pub movement_name: String,
    /// What the movement is called.
    pub movement_title: String,
    /// Name of the lifter.
    pub lifter_name: String,
    /// What the lifter is called.
    pub lifter_title: String,
    /// The maximum.
    pub one_rm: OneRepMax,
    /// The same in steps that can be loaded.
    pub loadable: LoadableMax,
    /// How fast both go up.
    pub pace: Option<MaximumPace>,
    /// The maximum that is lowered under control.
    pub eccentric: Option<OneRepMax>,
    /// Whether somebody can hand more than the maximum over in this lift, and who.
    pub handover: Handover,
    /// The time in which not even nothing is lowered under control, where that was asked for.
    pub not_lowered: Option<Duration>,
    /// Whether a load above the maximum gets away in the lowering, so that the lift itself is not the limit.
    pub is_lost_in_lowering: bool,
    /// Mean velocities over the load.
    pub profile: Option<LoadVelocity>,
    /// Factor on the lifter's strength that the known maximum implies.
    pub factor: Option<f64>,
    /// What velocities are told in.
    pub measure: Measure,
    /// More than is lifted without them, once the bands of the load in whole steps go.
    pub bands_gone: Option<BandsGone>,
    /// The interval of the maximum over plausible versions of the lifter, where asked for.
    pub interval: Option<MaximumInterval>,
}

/// Finds the maximum of a movement with a setup, and what is wanted beside it.
///
/// **Fails** if the setup does not fit the movement, or nothing is lifted.
pub fn maximum_study(
    question: &Question<'_>,
    template: &Setup,
    options: &RepOptions,
    step: Mass,
    wishes: MaximumWishes,
) -> Result<MaximumStudy> {
    let (one_rm, motion) = maximum(question, template, options)?;
    let loadable = one_rm.in_steps(step)?;
    let body = rigged(question, question.movement.carrier()?, template);
    let eccentric = match wishes.eccentric {
        None => None,
        Some(time) => match motion.eccentric_max(&body, time, options) {
            // The maximum that is lifted stands all the same.
            Err(fault) if fault.kind() == FaultKind::NoAnswer => None,
            found => Some(found?),
        },
    };
    let profile = wishes
        .velocities
        .then(|| motion.load_velocity(&body, one_rm, &shares(), options))
        .transpose()?;
    let factor = wishes
        .known
        .map(|load| factor(question, &body, load, options))
        .transpose()?;
    Ok(MaximumStudy {
        movement_name: question.movement_name.to_owned(),
        movement_title: question.movement.title.clone(),
        lifter_name: question.lifter.name.clone(),
        lifter_title: question.lifter.title.clone(),
        one_rm,
        loadable,
        pace: pace(&motion, &body, [one_rm.load, loadable.load], options)?,
        eccentric,
        handover: question.movement.handling.overload,
        not_lowered: wishes.eccentric.filter(|_| eccentric.is_none()),
        is_lost_in_lowering: is_lost_in_lowering(&motion, &body, one_rm, options)?,
        profile,
        factor,
        measure: motion.measure(),
        bands_gone: bands_gone(question, &with_load(template, loadable.load), || {
            plain_one_rm(question)
        })?,
        interval: None,
    })
}

/// Mean velocities of two loads; none where one of them is nothing at all or does not reach lockout in the plain repetition.
fn pace(
    motion: &RepModel,
    body: &Setup,
    [exact, in_steps]: [Mass; 2],
    options: &RepOptions,
) -> Result<Option<MaximumPace>> {
    let mean = |load: Mass| -> Result<Option<f64>> {
        if load == Mass::ZERO && body.items.is_empty() {
            return Ok(None);
        }
        let trace = motion.run(&with_load(body, load), options)?;
        Ok(trace.lift.map(|lift| lift.mean_velocity))
    };
    let both = mean(exact)?.zip(mean(in_steps)?);
    Ok(both.map(|(exact, in_steps)| MaximumPace { exact, in_steps }))
}

/// Whether the first load that is not lifted gets away on the way down.
fn is_lost_in_lowering(
    motion: &RepModel,
    body: &Setup,
    one_rm: OneRepMax,
    options: &RepOptions,
) -> Result<bool> {
    let beyond = one_rm.load + Mass::from_kg(OneRepMax::TOLERANCE_KG);
    let options = RepOptions {
        after: After::Drive,
        ..*options
    };
    let trace = motion.run(&with_load(body, beyond), &options)?;
    Ok(matches!(trace.outcome, RepEnd::LostInLowering { .. }))
}

/// Shares of the maximum that velocities are told at, 0.3 to 1.
fn shares() -> Vec<f64> {
    (6..=20)
        .map(|twentieth| f64::from(twentieth) * 0.05)
        .collect()
}

/// The factor on strength that a known maximum implies.
fn factor(question: &Question<'_>, body: &Setup, load: Mass, options: &RepOptions) -> Result<f64> {
    scale_for_one_rm(question.movement, question.lifter, body, load, options)
}
