//! The simulated repetition as the session asks for it: load and tired joints in, velocity out.
//!
//! In: a movement, a lifter scaled to a known maximum. Out: a [`RepOracle`] that simulates every attempt
//! with muscles weakened by what each joint has left.

use super::question::Question;
use super::rep_study::rigged;
use super::solve::with_body;
use crate::anatomy::{Dof, Lifter, Muscle};
use crate::error::Result;
use crate::movement::{Carrier, Movement, trace};
use crate::rep::{
    After, RepEnd, RepModel, RepOptions, RepSample, RepTrace, scale_for_one_rm, stronger, with_load,
};
use crate::resistance::{Item, Setup};
use crate::session::fatigue::FatigueJoint;
use crate::session::oracle::{Attempt, JointUse, RepOracle, RepOutcome, STALL_S};
use crate::session::published::Published;
use crate::units::{Duration, Length, Mass, Speed};
use std::collections::BTreeMap;
use std::sync::{Mutex, MutexGuard, PoisonError};

/// Models are solved for joint shares in steps of this, and stand in between by their weighted mean, so that a few
/// serve a whole session.
const SHARE_STEP: f64 = 0.1;

/// Models by the steps of their joints' shares.
type Models = BTreeMap<Vec<u32>, RepModel>;

/// Attempts that were simulated, by load and shares to the last bit: a session asks for many of them more than once.
type Outcomes = BTreeMap<Vec<u64>, RepOutcome>;

/// The lifter whose maximum in this movement is the known one.
///
/// **Fails** when no strength gives that maximum.
pub fn lifter_of_one_rm(question: &Question<'_>, known: Mass) -> Result<Lifter> {
    let carrier = question.movement.carrier()?;
    let body = rigged(question, carrier, &Setup::default());
    let factor = scale_for_one_rm(
        question.movement,
        question.lifter,
        &body,
        known,
        &RepOptions::usual_for(question.movement),
    )?;
    Ok(stronger(question.lifter, factor))
}

/// An oracle that simulates.
///
/// Bands and chains in `hung` hang on every load that is tried; its plain load tells in which direction the
/// whole of it pulls.
///
/// Muscles that cross a tired joint lose as much force as the most tired of the joints they cross:
/// the fatigue model is of joints, the simulation of muscles (assumed).
///
/// **Fails** if the movement cannot be simulated.
pub fn simulated_oracle<'a>(
    published: &Published,
    question: &Question<'a>,
    lifter: &'a Lifter,
    hung: &Setup,
    lowering: Duration,
) -> Result<RepOracle<'a>> {
    let movement: &'a Movement = question.movement;
    let carrier = movement.carrier()?;
    let own = Question {
        lifter,
        ..question.clone()
    };
    let attempts = Attempts {
        lifter,
        body: rigged(&own, carrier, hung),
        pulling: with_body(hung, carrier, lifter.body_mass),
        options: RepOptions::usual_for(movement),
        lowering,
        way: travel(movement, lifter)?,
    };
    let model = model_of(movement, lifter, &attempts.pulling)?;
    let (one_rm, eccentric, evenness) =
        attempts.maxima(&model, published.eccentric.lowering.time)?;
    let names = joints_of(&model);
    let tiring = names.iter().map(|joint| published.fatigue.tiring(*joint));
    let joints = tiring.collect();
    let models: Mutex<Models> = Mutex::new(Models::new());
    let outcomes: Mutex<Outcomes> = Mutex::new(Outcomes::new());
    Ok(RepOracle {
        one_rm,
        eccentric_one_rm: eccentric,
        eccentric_of: None,
        lowering_evenness: evenness,
        repetitions_overstated: None,
        travel: Some(attempts.way),
        joints,
        repetition: Box::new(move |attempt| {
            let shares = attempt.joint_shares.iter().copied();
            let exact = shares.chain([attempt.load.as_kg()]);
            let key: Vec<u64> = exact.map(f64::to_bits).collect();
            if let Some(known) = locked(&outcomes).get(&key) {
                return Ok(known.clone());
            }
            let outcome = attempts.outcome(&names, (&model, &models), attempt)?;
            locked(&outcomes).insert(key, outcome.clone());
            Ok(outcome)
        }),
    })
}

/// What every attempt of a session shares.
struct Attempts<'a> {
    lifter: &'a Lifter,
    /// What hangs on every load, and the body where that is the load.
    body: Setup,
    /// The direction in which the whole of it pulls.
    pulling: Setup,
    options: RepOptions,
    lowering: Duration,
    way: Length,
}

impl Attempts<'_> {
    /// The maximum, the eccentric one in a slow lowering, and how even that is.
    fn maxima(&self, model: &RepModel, slow: Duration) -> Result<(Mass, Mass, Option<f64>)> {
        let one_rm = model.one_rm(&self.body, &self.options)?;
        let eccentric = model.eccentric_max(&self.body, slow, &self.options)?;
        let lowered = with_load(&self.body, eccentric.load);
        let evenness = evenness(model, &lowered, slow, &self.options)?;
        Ok((one_rm.load, eccentric.load, evenness))
    }

    fn outcome(
        &self,
        joints: &[FatigueJoint],
        models: (&RepModel, &Mutex<Models>),
        attempt: &Attempt,
    ) -> Result<RepOutcome> {
        let (trace, lowered) = tired_rep(self, joints, models, attempt)?;
        let lowering = mean_effort(&lowered);
        Ok(outcome(
            &trace,
            attempt,
            (self.lowering, lowering),
            self.way,
        ))
    }

    /// A repetition, and its lowering: a lift that starts from the floor or a hang goes down after it went up.
    fn run(&self, model: &RepModel, load: Mass) -> Result<(RepTrace, Vec<RepSample>)> {
        let setup = with_load(&self.body, load);
        let mut trace = model.run(&setup, &self.options)?;
        if self.options.lowering_s().is_some() {
            let lift = trace.samples.split_off(trace.lift_start);
            let lowered = std::mem::replace(&mut trace.samples, lift);
            trace.lift_start = 0;
            return Ok((trace, lowered));
        }
        let down = RepOptions {
            lowering: Some(self.lowering),
            after: After::HandOver,
            ..self.options
        };
        Ok((trace, model.run(&setup, &down)?.samples))
    }
}

/// Body mass that is part of the load: all of it where the body hangs or stands on the load, else none.
#[must_use]
pub fn carried_body(carrier: &Carrier, lifter: &Lifter) -> Mass {
    match carrier {
        Carrier::Body => lifter.body_mass,
        _ => Mass::ZERO,
    }
}

/// The model for a plain load, or for the direction in which bands and chains with it pull.
fn model_of(movement: &Movement, lifter: &Lifter, pulling: &Setup) -> Result<RepModel> {
    let hangs = pulling
        .items
        .iter()
        .any(|item| matches!(item, Item::Band(_) | Item::Chain(_)));
    if hangs {
        RepModel::for_setup(movement, lifter, pulling)
    } else {
        RepModel::new(movement, lifter)
    }
}

/// Mean effort of a slow lowering to spotters over its largest; nothing where the load gets away.
fn evenness(
    model: &RepModel,
    setup: &Setup,
    slow: Duration,
    options: &RepOptions,
) -> Result<Option<f64>> {
    let options = RepOptions {
        lowering: Some(slow),
        after: After::HandOver,
        ..*options
    };
    let trace = model.run(setup, &options)?;
    let efforts: Vec<f64> = trace.samples.iter().map(|s| s.effort).collect();
    let most = efforts.iter().copied().fold(0.0, f64::max);
    let mean = efforts.iter().sum::<f64>() / efforts.len().max(1) as f64;
    let handed_over = trace.outcome == RepEnd::HandedOver && most > 0.0;
    Ok(handed_over.then(|| (mean / most).clamp(0.0, 1.0)))
}

/// Poses along which the travel of the load is measured.
const POSES: usize = 51;

/// How far the load travels in a repetition.
fn travel(movement: &Movement, lifter: &Lifter) -> Result<Length> {
    let range = trace(movement, lifter, POSES)?;
    let last = range.poses.last().map_or(0.0, |pose| pose.load.travel_m);
    Ok(Length::from_m(last))
}

fn joints_of(model: &RepModel) -> Vec<FatigueJoint> {
    let mut joints: Vec<FatigueJoint> = model
        .joints()
        .iter()
        .map(|dof| FatigueJoint::from(dof.joint()))
        .collect();
    joints.sort();
    joints.dedup();
    joints
}

fn tired_rep(
    attempts: &Attempts<'_>,
    joints: &[FatigueJoint],
    (fresh, models): (&RepModel, &Mutex<Models>),
    attempt: &Attempt,
) -> Result<(RepTrace, Vec<RepSample>)> {
    let corners = corners(attempt.joint_shares);
    let mut models = locked(models);
    let is_fresh = |key: &[u32]| key.iter().all(|k| f64::from(*k) * SHARE_STEP >= 1.0);
    for (key, _) in &corners {
        if !is_fresh(key) && !models.contains_key(key) {
            let shares: Vec<f64> = key.iter().map(|k| f64::from(*k) * SHARE_STEP).collect();
            let left = left_of_muscles(attempts.lifter, joints, &shares);
            let of = |name: &str| left.get(name).copied().unwrap_or(1.0);
            let model = fresh.on_same_speeds_with_forces_times(of)?;
            models.insert(key.clone(), model);
        }
    }
    let parts: Vec<(f64, &RepModel)> = corners
        .iter()
        .map(|(key, weight)| (*weight, models.get(key).unwrap_or(fresh)))
        .collect();
    attempts.run(&fresh.with_mean_of(&parts), attempt.load)
}

fn locked<T>(shared: &Mutex<T>) -> MutexGuard<'_, T> {
    shared.lock().unwrap_or_else(PoisonError::into_inner)
}

/// The steps around some joint shares and their weights: the corners of the simplex that holds the point.
///
/// ```text
/// x = Σ w_k·v_k     v_0 the steps below, v_k = v_(k-1) and one step more for the joint with the k-th largest rest
/// ```
/// **Shape.** Weights sum to 1; one corner alone on a step. **Source.** Linear interpolation on Kuhn's simplices
/// (textbook); their faces lie where two joints are equally tired, as the kinks of the muscles' weakness do.
fn corners(shares: &[f64]) -> Vec<(Vec<u32>, f64)> {
    let most = (1.0 / SHARE_STEP).round();
    let scaled: Vec<f64> = shares
        .iter()
        .map(|share| (share.clamp(0.0, 1.0) / SHARE_STEP * 1.0e6).round() / 1.0e6)
        .map(|at| at.min(most))
        .collect();
    let mut corner: Vec<u32> = scaled.iter().map(|at| at.floor() as u32).collect();
    let rest = |joint: &usize| scaled[*joint].fract();
    let mut order: Vec<usize> = (0..shares.len()).collect();
    order.sort_by(|a, b| rest(b).total_cmp(&rest(a)));
    let mut before = 1.0;
    let mut corners = Vec::with_capacity(shares.len() + 1);
    for joint in order {
        let weight = before - rest(&joint);
        if weight > 0.0 {
            corners.push((corner.clone(), weight));
        }
        before = rest(&joint);
        corner[joint] += 1;
    }
    if before > 0.0 {
        corners.push((corner, before));
    }
    corners
}

/// What every muscle has left: as much as the most tired joint that it crosses.
fn left_of_muscles<'a>(
    lifter: &'a Lifter,
    joints: &[FatigueJoint],
    shares: &[f64],
) -> BTreeMap<&'a str, f64> {
    let left = |muscle: &Muscle| {
        let across_shoulder = muscle.shoulder.iter().map(|_| &Dof::ShoulderFlexion);
        muscle
            .moment_arm
            .keys()
            .chain(across_shoulder)
            .filter_map(|dof| {
                let joint = FatigueJoint::from(dof.joint());
                let index = joints.iter().position(|known| *known == joint)?;
                shares.get(index).copied()
            })
            .fold(1.0, f64::min)
    };
    let muscles = lifter.muscles.iter();
    muscles
        .map(|(name, muscle)| (name.as_str(), left(muscle).max(0.01)))
        .collect()
}

/// Mean effort of some moments, none of them above everything.
fn mean_effort(samples: &[RepSample]) -> f64 {
    let sum: f64 = samples.iter().map(|s| s.effort.clamp(0.0, 1.0)).sum();
    sum / samples.len().max(1) as f64
}

/// What the session wants to know of a repetition: while lifting with full intent every joint that
/// lifts gives what its activation says.
///
/// Velocities are those of the load in m/s, also where the trace is of a joint in rad/s.
fn outcome(
    trace: &RepTrace,
    attempt: &Attempt,
    (lowering, lowering_effort): (Duration, f64),
    way: Length,
) -> RepOutcome {
    let completed = trace.outcome == RepEnd::Lockout;
    let figures = trace.lift;
    let use_of_joint = JointUse {
        // Full intent asks for everything that is left; the lowering, for a share of that.
        lifting: mean_effort(trace.lifting()),
        lowering: attempt.smallest_share() * lowering_effort,
    };
    let top = trace
        .samples
        .iter()
        .map(|sample| sample.position)
        .fold(0.0, f64::max);
    let metres = if top > 0.0 { way.as_m() / top } else { 1.0 };
    let speed = |velocity: f64| Speed::from_m_s((velocity * metres).max(0.0));
    let lifting_s = figures.map_or(0.0, |f| f.time_s.max(0.0));
    RepOutcome {
        completed,
        mean_velocity: figures
            .filter(|_| completed)
            .map_or(Speed::ZERO, |f| speed(f.mean_velocity)),
        sticking_velocity: trace
            .sticking
            .filter(|_| completed)
            .map(|s| speed(s.minimum.velocity)),
        lifting: Duration::from_s(if completed {
            lifting_s
        } else {
            lifting_s.min(STALL_S)
        }),
        lowering,
        joints: vec![use_of_joint; attempt.joint_shares.len()],
    }
}
