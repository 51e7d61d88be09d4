//! Repetition by repetition: what a set does to the joints and what the joints do to the set.
//!
//! In: a [`RepOracle`], a load, groups of repetitions and the rests between them, the joints as the last
//! set left them. Out: velocity of every repetition, the one that stalls, and the fatigue states over
//! time. Straight sets and clusters differ only in their groups and rests.

use super::fatigue::{Compartments, FatigueJoint, TiringJoint};
use super::muscle_state::MuscleState;
use super::oracle::{Attempt, JointUse, RepOracle, RepOutcome};
use crate::error::{Error, PredictionFault, Result};
use crate::units::{Duration, Mass, Speed};

/// Pause between two repetitions of a group, s, in which the load is held at lockout (assumed: a breath).
pub const BREATH_S: f64 = 1.0;

/// Most repetitions that one set is predicted for.
pub const MOST_REPETITIONS: u32 = 60;

/// Longest stretch of a rest between two points of the fatigue trace, s.
const TRACE_STEP_S: f64 = 5.0;

/// Time after a change of work until the next point of the trace, s: six time constants of the controller (0.1 s), after
/// which what works has come or gone.
const SETTLED_S: f64 = 0.6;

/// The shares of one joint at one time.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FatigueSample {
    /// Time since the start of the session, s.
    pub time_s: f64,
    /// The joint.
    pub joint: FatigueJoint,
    /// The three shares.
    pub shares: Compartments,
}

/// The joints of a lifter through a session.
#[derive(Debug, Clone, PartialEq)]
pub struct TiringBody {
    joints: Vec<MuscleState>,
    time_s: f64,
    trace: Vec<FatigueSample>,
}

impl TiringBody {
    /// Rested, with these joints.
    #[must_use]
    pub fn fresh(joints: &[TiringJoint]) -> Self {
        let joints = joints
            .iter()
            .map(|joint| MuscleState::fresh(*joint))
            .collect();
        let mut body = Self {
            joints,
            time_s: 0.0,
            trace: Vec::new(),
        };
        body.note();
        body
    }

    /// Remaining share of capacity of each joint.
    #[must_use]
    pub fn shares(&self) -> Vec<f64> {
        self.joints
            .iter()
            .map(MuscleState::capacity_share)
            .collect()
    }

    /// The smallest remaining share.
    #[must_use]
    pub fn smallest_share(&self) -> f64 {
        self.shares().into_iter().fold(1.0, f64::min)
    }

    /// The shares over time so far.
    #[must_use]
    pub fn trace(&self) -> &[FatigueSample] {
        &self.trace
    }

    /// Rests all joints.
    ///
    /// **Fails** when the time is none.
    pub fn rest(&mut self, time: Duration) -> Result<()> {
        let settling = Duration::from_s(time.as_s().min(SETTLED_S));
        let left_s = time.as_s() - settling.as_s();
        self.rest_once(settling)?;
        let pieces = (left_s / TRACE_STEP_S).ceil().clamp(0.0, 1000.0);
        for _ in 0..pieces as u32 {
            self.rest_once(Duration::from_s(left_s / pieces))?;
        }
        Ok(())
    }

    fn rest_once(&mut self, time: Duration) -> Result<()> {
        for joint in &mut self.joints {
            joint.rest(time)?;
        }
        self.time_s += time.as_s();
        self.note();
        Ok(())
    }

    /// Works each joint at its own share of fresh capacity.
    ///
    /// **Fails** when a share is outside 0 to 1 or the time is none.
    pub fn work(&mut self, shares: impl Iterator<Item = f64>, time: Duration) -> Result<()> {
        let shares: Vec<f64> = shares.collect();
        let settling = Duration::from_s(time.as_s().min(SETTLED_S));
        let left = Duration::from_s(time.as_s() - settling.as_s());
        for piece in [settling, left] {
            if piece == Duration::ZERO && piece != time {
                continue;
            }
            for (joint, share) in self.joints.iter_mut().zip(&shares) {
                joint.work(*share, piece)?;
            }
            self.time_s += piece.as_s();
            self.note();
        }
        Ok(())
    }

    fn note(&mut self) {
        let time_s = self.time_s;
        self.trace
            .extend(self.joints.iter().map(|state| FatigueSample {
                time_s,
                joint: state.joint.joint,
                shares: state.now,
            }));
    }
}

/// One repetition of a predicted set.
#[derive(Debug, Clone, PartialEq)]
pub struct RepPrediction {
    /// Number in the set, from 1.
    pub number: u32,
    /// Number of its group, from 1.
    pub group: u32,
    /// Whether it reaches lockout.
    pub completed: bool,
    /// Mean velocity of the lifting phase.
    pub mean_velocity: Speed,
    /// Slowest velocity in the sticking region, if known.
    pub sticking_velocity: Option<Speed>,
    /// Time of the lifting phase.
    pub lifting: Duration,
    /// Smallest remaining share of capacity before it.
    pub capacity_share: f64,
}

/// A predicted set.
#[derive(Debug, Clone, PartialEq)]
pub struct SetPrediction {
    /// The load.
    pub load: Mass,
    /// Repetitions of each group, as asked.
    pub groups: Vec<u32>,
    /// Rest between the groups.
    pub rest_within: Duration,
    /// The repetitions, the stalled one last if there is one.
    pub repetitions: Vec<RepPrediction>,
    /// Smallest remaining share of capacity right after the set.
    pub capacity_after: f64,
}

impl SetPrediction {
    /// Repetitions that reach lockout.
    #[must_use]
    pub fn completed(&self) -> u32 {
        self.repetitions
            .iter()
            .filter(|repetition| repetition.completed)
            .count() as u32
    }

    /// The repetition that stalls, if one does.
    #[must_use]
    pub fn stalls_at(&self) -> Option<u32> {
        self.repetitions
            .iter()
            .find(|repetition| !repetition.completed)
            .map(|repetition| repetition.number)
    }

    /// Mean velocity over the repetitions that were asked for, a stalled or undone one counting as 0.
    #[must_use]
    pub fn mean_velocity(&self) -> Speed {
        let asked: u32 = self.groups.iter().sum();
        let sum: f64 = self
            .repetitions
            .iter()
            .map(|repetition| repetition.mean_velocity.as_m_s())
            .sum();
        Speed::from_m_s(if asked == 0 {
            0.0
        } else {
            sum / f64::from(asked)
        })
    }

    /// How much slower the last asked repetition is than the fastest, as a share; 1 when the set stalls.
    #[must_use]
    pub fn velocity_loss(&self) -> f64 {
        let fastest = self
            .repetitions
            .iter()
            .map(|r| r.mean_velocity.as_m_s())
            .fold(0.0, f64::max);
        match self.repetitions.last() {
            Some(last) if last.completed && fastest > 0.0 => {
                1.0 - last.mean_velocity.as_m_s() / fastest
            }
            Some(_) => 1.0,
            None => 0.0,
        }
    }
}

/// Predicts a set: groups of repetitions with a rest between the groups, stopping at the first stall.
///
/// Each repetition is asked of the oracle with the joints' remaining shares; its lowering and lifting then
/// tire the joints, a breath between repetitions holds the load at lockout, a rest lets them recover.
///
/// **Fails** when no repetition or too many are asked for, and as the oracle does.
pub fn predict_set(
    oracle: &RepOracle,
    load: Mass,
    groups: &[u32],
    rest_within: Duration,
    body: &mut TiringBody,
) -> Result<SetPrediction> {
    check(groups)?;
    let mut repetitions = Vec::new();
    'set: for (group, count) in (1..).zip(groups) {
        if group > 1 {
            body.rest(rest_within)?;
        }
        for index in 0..*count {
            if index > 0 {
                body.rest(Duration::from_s(BREATH_S))?;
            }
            let repetition =
                one_repetition(oracle, load, group, repetitions.len() as u32 + 1, body)?;
            let completed = repetition.completed;
            repetitions.push(repetition);
            if !completed {
                break 'set;
            }
        }
    }
    let capacity_after = body.smallest_share();
    Ok(SetPrediction {
        load,
        groups: groups.to_vec(),
        rest_within,
        repetitions,
        capacity_after,
    })
}

fn check(groups: &[u32]) -> Result<()> {
    let total = groups
        .iter()
        .fold(0_u32, |sum, count| sum.saturating_add(*count));
    if total == 0 || groups.contains(&0) {
        return Err(Error::bad(PredictionFault::EmptyGroup));
    }
    if total > MOST_REPETITIONS {
        return Err(Error::bad(PredictionFault::NoStrengthSet {
            repetitions: total,
            most: MOST_REPETITIONS,
        }));
    }
    Ok(())
}

fn one_repetition(
    oracle: &RepOracle,
    load: Mass,
    group: u32,
    number: u32,
    body: &mut TiringBody,
) -> Result<RepPrediction> {
    let shares = body.shares();
    let outcome = oracle.ask(&Attempt {
        load,
        joint_shares: &shares,
    })?;
    let capacity_share = body.smallest_share();
    tire(&outcome, body)?;
    Ok(RepPrediction {
        number,
        group,
        completed: outcome.completed,
        mean_velocity: if outcome.completed {
            outcome.mean_velocity
        } else {
            Speed::ZERO
        },
        sticking_velocity: outcome.sticking_velocity,
        lifting: outcome.lifting,
        capacity_share,
    })
}

/// A repetition is a lowering and then a lift, as it is simulated.
fn tire(outcome: &RepOutcome, body: &mut TiringBody) -> Result<()> {
    let lowering = |joint: &JointUse| joint.lowering;
    let lifting = |joint: &JointUse| joint.lifting;
    body.work(outcome.joints.iter().map(lowering), outcome.lowering)?;
    body.work(outcome.joints.iter().map(lifting), outcome.lifting)
}

/// Repetitions to failure of a straight set at a load, from the joints as they are.
///
/// **Fails** as the oracle does, and when the set goes on beyond [`MOST_REPETITIONS`].
pub fn repetitions_to_failure(oracle: &RepOracle, load: Mass, body: &TiringBody) -> Result<u32> {
    stall_within(oracle, load, MOST_REPETITIONS, body)?.ok_or_else(|| {
        Error::no_answer(PredictionFault::EndlessSet {
            load,
            most: MOST_REPETITIONS,
        })
    })
}

/// The same, but no more than `most`: whether a set with its reserve is possible needs no more.
///
/// **Fails** as the oracle does.
pub fn repetitions_up_to(
    oracle: &RepOracle,
    load: Mass,
    most: u32,
    body: &TiringBody,
) -> Result<u32> {
    Ok(stall_within(oracle, load, most, body)?.unwrap_or(most))
}

/// Repetitions before the one that stalls, if one of the first so many does.
fn stall_within(
    oracle: &RepOracle,
    load: Mass,
    most: u32,
    body: &TiringBody,
) -> Result<Option<u32>> {
    let set = predict_set(oracle, load, &[most], Duration::ZERO, &mut body.clone())?;
    Ok(set.stalls_at().map(|number| number - 1))
}
