//! Many invented lifters around one: how far the maximum of a lift scatters in a group.
//!
//! In: a question, how strongly lifters differ, a seed. Out: [`Cohort`], every lifter's maximum and the
//! quantiles. The same for any number of threads: each lifter has a random stream of its own.

use super::question::Question;
use super::rep_study::rigged;
use crate::anatomy::{Lifter, SegmentName};
use crate::bounds::bounds;
use crate::error::{Error, MaximumFault, Result};
use crate::rep::{RepModel, RepOptions};
use crate::resistance::Setup;
use crate::setups::Watch;
use crate::units::Mass;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::atomic::Ordering::Relaxed;

/// How strongly invented lifters differ: standard deviations as shares (of the logarithm).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Scatter {
    /// Standing height.
    pub height: f64,
    /// Body mass of lifters of one height.
    pub mass: f64,
    /// Length of one segment at one height.
    pub segment: f64,
    /// Strength of all muscles together, beyond what body mass explains.
    pub strength: f64,
    /// Strength of one muscle group beside the others.
    pub group: f64,
}

impl Default for Scatter {
    /// Height 4 % (7 cm, from memory of national surveys); mass at one height 12 %, lengths at one
    /// height 2.5 %, one group beside the others 10 % (assumed: order of magnitude); strength 12 %
    /// (assumed so that squat maxima then scatter by about 16 % as in a group of trained men,
    /// 148.2 ± 23.4 kg, Bazyler et al. 2015, abstract).
    fn default() -> Self {
        Self {
            height: 0.04,
            mass: 0.12,
            segment: 0.025,
            strength: 0.12,
            group: 0.10,
        }
    }
}

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
    /// Seed of the invention.
    pub seed: u64,
    /// Everyone, by number.
    pub members: Vec<Member>,
    /// Whether everyone was reckoned, or the work was stopped before.
    pub is_complete: bool,
}

/// Finds the maxima of invented lifters in parallel; `watch` tells how many are done and can stop it.
///
/// **Fails** for an empty group or one of more than 100,000, and where the setup does not fit. A lifter
/// whose limbs do not close the movement's path, or who lifts nothing, is kept without a maximum.
pub fn cohort(
    question: &Question<'_>,
    template: &Setup,
    options: &RepOptions,
    (count, seed): (usize, u64),
    watch: &Watch,
) -> Result<Cohort> {
    let bound = &bounds().cohort_members;
    if !bound.holds(count as f64) {
        return Err(Error::bad(MaximumFault::GroupSize {
            count,
            most: bound.most_of_them(),
        }));
    }
    options.check()?;
    let carrier = question.movement.carrier()?;
    template.check_for(&carrier, question.movement_name)?;
    watch.all.store(count as u64, Relaxed);
    let members: Vec<Option<Member>> = (0..count)
        .into_par_iter()
        .map(|number| {
            if watch.stop.load(Relaxed) {
                return None;
            }
            let member = member(question, template, options, (number, seed));
            watch.done.fetch_add(1, Relaxed);
            member.ok()
        })
        .collect();
    let members: Vec<Member> = members.into_iter().flatten().collect();
    Ok(Cohort {
        movement_title: question.movement.title.clone(),
        lifter_title: question.lifter.title.clone(),
        seed,
        is_complete: members.len() == count,
        members,
    })
}

/// One invented lifter and the maximum, where there is one.
fn member(
    question: &Question<'_>,
    template: &Setup,
    options: &RepOptions,
    (number, seed): (usize, u64),
) -> Result<Member> {
    let (lifter, strength) = invented(question.lifter, Scatter::default(), seed, number);
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

/// One lifter of a group, and the factor on strength.
///
/// ```text
/// height × e^(σ_h·z)   length × height·e^(σ_l·z)   mass × height²·e^(σ_m·z)
/// fibre, arm × length  passive torque × mass      force × mass^(2/3)·e^(σ_s·z)·e^(σ_g·z)
/// ```
/// `z` standard normal, drawn anew for each quantity. **Source.** The scaling of a lifter's file (see
/// [`crate::anatomy`]); mass with the square of height as in the body mass index.
#[must_use]
pub fn invented(lifter: &Lifter, scatter: Scatter, seed: u64, number: usize) -> (Lifter, f64) {
    let mut draw = Draws::new(seed, number);
    let mut one = lifter.clone();
    let height = draw.factor(scatter.height);
    let mass = height * height * draw.factor(scatter.mass);
    let strength = draw.factor(scatter.strength);
    let lengths: BTreeMap<SegmentName, f64> = one
        .segments
        .keys()
        .map(|name| (*name, height * draw.factor(scatter.segment)))
        .collect();
    scale_body(&mut one, height, mass, &lengths);
    let mut groups: BTreeMap<String, f64> = BTreeMap::new();
    for muscle in one.muscles.values_mut() {
        let group = *groups
            .entry(muscle.group.clone())
            .or_insert_with(|| draw.factor(scatter.group));
        // Volume grows with mass: a longer muscle of the same mass is thinner.
        let size = lengths[&muscle.along];
        muscle.peak_force = muscle.peak_force * (mass * strength * group / size);
        muscle.optimal_fibre_length = muscle.optimal_fibre_length * size;
        for arm in muscle.moment_arm.values_mut() {
            arm.scale *= size;
        }
        if let Some(line) = &mut muscle.shoulder {
            line.scale *= size;
        }
    }
    (one, strength)
}

/// Height, lengths, masses and passive torques of another size.
fn scale_body(one: &mut Lifter, height: f64, mass: f64, lengths: &BTreeMap<SegmentName, f64>) {
    one.height = one.height * height;
    one.body_mass = one.body_mass * mass;
    for (name, segment) in &mut one.segments {
        segment.length = segment.length * lengths[name];
        segment.mass = segment.mass * mass;
    }
    let build = &mut one.build;
    for length in [
        &mut build.biacromial_breadth,
        &mut build.shoulder_breadth,
        &mut build.chest_height,
        &mut build.hip_breadth,
        &mut build.hip_to_lumbar,
        &mut build.ankle_height,
        &mut build.heel_to_ankle,
        &mut build.ankle_to_ball,
    ] {
        *length = *length * height;
    }
    for joint in one.joints.values_mut() {
        joint.low_torque = joint.low_torque * mass;
        joint.high_torque = joint.high_torque * mass;
    }
}

/// A stream of standard normal numbers.
struct Draws(ChaCha8Rng);

impl Draws {
    fn new(seed: u64, number: usize) -> Self {
        let mut stream = ChaCha8Rng::seed_from_u64(seed);
        stream.set_stream(number as u64);
        Self(stream)
    }

    /// e^(σ·z); `z` by Box and Muller 1958, cut at three standard deviations.
    fn factor(&mut self, deviation: f64) -> f64 {
        let radius = (-2.0 * (1.0 - self.0.random::<f64>()).max(1.0e-300).ln()).sqrt();
        let z = radius * (std::f64::consts::TAU * self.0.random::<f64>()).cos();
        (deviation * z.clamp(-3.0, 3.0)).exp()
    }
}

impl Cohort {
    /// Nothing to say of a group in which somebody has a maximum.
    ///
    /// **Fails** (no answer) where nobody has one.
    pub fn check(&self) -> Result<()> {
        if self.members.iter().all(|member| member.one_rm.is_none()) {
            return Err(Error::no_answer(MaximumFault::NobodyInGroup));
        }
        Ok(())
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
