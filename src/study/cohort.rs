//! Many invented lifters around one: how far the maximum of a lift scatters in a group.
//!
//! In: a question, how strongly lifters differ, a seed. Out: [`Cohort`], every lifter's maximum and the
//! quantiles. The same for any number of threads and of parts: each lifter has a random stream of its own.

use super::invented_lifter::invented;
use super::people_asked::PeopleAsked;
use super::question::Question;
use super::rep_study::rigged;
use crate::error::{Error, MaximumFault, Result};
use crate::rep::{RepModel, RepOptions};
use crate::resistance::Setup;
use crate::setups::Watch;
use crate::units::Mass;
use rayon::prelude::*;
use std::sync::atomic::Ordering::Relaxed;

/// One invented lifter and the maximum.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Member {
    /// Number in the group, from 0.
    pub number: usize,
    /// Standing height, m.
    pub height_m: f64,
    /// Body mass.
    pub body_mass: Mass,
    /// Factor on all peak forces beyond what body mass explains.
    pub strength: f64,
    /// The maximum, where there is one.
    pub one_rm: Option<Mass>,
}

/// A group of invented lifters.
#[derive(Debug, Clone, PartialEq)]
pub struct Cohort {
    /// What the movement is called.
    pub movement_title: String,
    /// What the lifter is called that the others are invented around.
    pub lifter_title: String,
    /// Who was asked for.
    pub asked: PeopleAsked,
    /// Everyone, by number.
    pub members: Vec<Member>,
    /// Whether everyone was reckoned, or the work was stopped before.
    pub is_complete: bool,
}

/// Finds the maxima of invented lifters in parallel; `watch` tells how many are done and can stop it.
///
/// **Fails** for an empty group or one (or part of one) of more than 100,000, and where the setup does not fit. A lifter
/// whose limbs do not close the movement's path, or who lifts nothing, is kept without a maximum.
pub fn cohort(
    question: &Question<'_>,
    template: &Setup,
    options: &RepOptions,
    asked: &PeopleAsked,
    watch: &Watch,
) -> Result<Cohort> {
    let count = asked.checked()?;
    options.check()?;
    let carrier = question.movement.carrier()?;
    template.check_for(&carrier, question.movement_name)?;
    watch.all.store(count as u64, Relaxed);
    let members: Vec<Option<Member>> = asked
        .numbers()
        .into_par_iter()
        .map(|number| {
            if watch.stop.load(Relaxed) {
                return None;
            }
            let member = member(question, template, options, (number, asked));
            watch.done.fetch_add(1, Relaxed);
            member.ok()
        })
        .collect();
    let members: Vec<Member> = members.into_iter().flatten().collect();
    Ok(Cohort {
        movement_title: question.movement.title.clone(),
        lifter_title: question.lifter.title.clone(),
        asked: asked.clone(),
        is_complete: members.len() == count,
        members,
    })
}

/// One invented lifter and the maximum, where there is one.
fn member(
    question: &Question<'_>,
    template: &Setup,
    options: &RepOptions,
    (number, asked): (usize, &PeopleAsked),
) -> Result<Member> {
    let (lifter, strength) = invented(question.lifter, &asked.scatter, asked.seed, number);
    let own = Question {
        lifter: &lifter,
        ..question.clone()
    };
    let body = rigged(&own, question.movement.carrier()?, template);
    let one_rm = RepModel::for_setup(question.movement, &lifter, &body)
        .and_then(|model| model.one_rm(&body, options));
    Ok(Member {
        number,
        height_m: lifter.height.as_m(),
        body_mass: lifter.body_mass,
        strength,
        one_rm: one_rm.ok().map(|found| found.load),
    })
}

impl Cohort {
    /// Nothing to say of a group in which somebody has a maximum.
    ///
    /// **Fails** (no answer) where nobody has one, and where it was stopped before anybody with one was reckoned.
    pub fn check(&self) -> Result<()> {
        let has_one = self.members.iter().any(|member| member.one_rm.is_some());
        match (has_one, self.is_complete) {
            (true, _) => Ok(()),
            (false, true) => Err(Error::no_answer(MaximumFault::NobodyInGroup)),
            (false, false) => Err(Error::no_answer(MaximumFault::GroupStopped)),
        }
    }

    /// All maxima, kg, rising.
    #[must_use]
    pub fn maxima_kg(&self) -> Vec<f64> {
        let mut maxima: Vec<f64> = self
            .members
            .iter()
            .filter_map(|member| Some(member.one_rm?.as_kg()))
            .collect();
        maxima.sort_by(f64::total_cmp);
        maxima
    }

    /// All maxima over body mass, rising.
    #[must_use]
    pub fn shares_of_body(&self) -> Vec<f64> {
        let mut shares: Vec<f64> = self
            .members
            .iter()
            .filter_map(|member| Some(member.one_rm?.as_kg() / member.body_mass.as_kg()))
            .collect();
        shares.sort_by(f64::total_cmp);
        shares
    }
}
