//! What a plan asks of a repetition: does it reach lockout, how fast, how long, at what effort.
//!
//! In: a function that answers this for a load and the joints' remaining shares of capacity; the
//! simulated repetition is plugged in here.
//! Out: a [`RepOracle`] that the predictions ask repetition by repetition.

use super::fatigue::TiringJoint;
use crate::error::{Error, PredictionFault, Result};
use crate::units::{Duration, Length, Mass, Speed};

/// A repetition that is about to be done.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Attempt<'a> {
    /// The load.
    pub load: Mass,
    /// Remaining share of fresh capacity of each joint, in the order of [`RepOracle::joints`].
    pub joint_shares: &'a [f64],
}

impl Attempt<'_> {
    /// The smallest of the joints' shares: for an oracle that knows only one.
    #[must_use]
    pub fn smallest_share(&self) -> f64 {
        self.joint_shares.iter().copied().fold(1.0, f64::min)
    }
}

/// What one joint does in a repetition, as shares of its fresh capacity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct JointUse {
    /// Mean share in use while lifting; 1 for a joint that gives all it has.
    pub lifting: f64,
    /// Mean share in use while lowering.
    pub lowering: f64,
}

/// What became of an attempt.
#[derive(Debug, Clone, PartialEq)]
pub struct RepOutcome {
    /// Whether the bar reached lockout.
    pub completed: bool,
    /// Mean velocity of the lifting phase; zero for a stalled one.
    pub mean_velocity: Speed,
    /// Slowest velocity in the sticking region, if there is one and it is known.
    pub sticking_velocity: Option<Speed>,
    /// Time of the lifting phase, or until it stalled.
    pub lifting: Duration,
    /// Time of the lowering phase.
    pub lowering: Duration,
    /// What each joint did, in the order of [`RepOracle::joints`].
    pub joints: Vec<JointUse>,
}

/// A function that tells what becomes of an attempt.
pub type Repetition<'a> = dyn Fn(&Attempt) -> Result<RepOutcome> + 'a;

/// Answers for one lifter and one movement.
pub struct RepOracle<'a> {
    /// The 1RM that belongs to the function: the largest load it completes when fresh.
    // What the laws of an oracle start from; no plan needs it, since each is asked for with a 1RM of its own.
    #[allow(dead_code)]
    pub one_rm: Mass,
    /// The most that can be lowered under control, body mass left out.
    pub eccentric_one_rm: Mass,
    /// On whom and what that was measured; `None` where it is the simulated lifter's own.
    pub eccentric_of: Option<String>,
    /// Mean effort of a lowering over its largest, if known: the load is not equally heavy all the way.
    pub lowering_evenness: Option<f64>,
    /// How many times the published repetitions to failure the simulation gives lifts of this kind, if known.
    pub repetitions_overstated: Option<f64>,
    /// Travel of the load in a repetition, if known.
    pub travel: Option<Length>,
    /// The joints that tire.
    pub joints: Vec<TiringJoint>,
    /// The answer itself.
    pub repetition: Box<Repetition<'a>>,
}

impl RepOracle<'_> {
    /// What becomes of an attempt, checked.
    ///
    /// **Fails** as the function does, and when its answer is not one of a repetition: a time or velocity
    /// that is negative or no number, or a joint's use outside 0 to 1.
    pub fn ask(&self, attempt: &Attempt) -> Result<RepOutcome> {
        let outcome = (self.repetition)(attempt)?;
        let not_negative = |value: f64| value.is_finite() && value >= 0.0;
        let share = |value: f64| (0.0..=1.0).contains(&value);
        let sound = outcome.joints.len() == self.joints.len()
            && outcome
                .joints
                .iter()
                .all(|joint| share(joint.lifting) && share(joint.lowering))
            && not_negative(outcome.mean_velocity.as_m_s())
            && not_negative(outcome.lifting.as_s())
            && not_negative(outcome.lowering.as_s());
        if sound {
            Ok(outcome)
        } else {
            Err(Error::no_answer(PredictionFault::UnsoundRepetition {
                load: attempt.load,
            }))
        }
    }
}

/// How long a lifter pushes against a bar that no longer moves, s (assumed: spotters step in then).
pub const STALL_S: f64 = 2.0;
