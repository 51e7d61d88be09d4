//! What a plan asks of a repetition: does it reach lockout, how fast, how long, at what effort.
//!
//! In: a function that answers this for a load and the joints' remaining shares of capacity; the
//! simulated repetition is plugged in here, or the published load-velocity equation where there is one.
//! Out: a [`RepOracle`] that the predictions ask repetition by repetition.

use super::eccentric::{LOWERING_S, PLANNING, eccentric_one_rm};
use super::fatigue::FatigueJoint;
use crate::error::{Error, Result};
use crate::progress::published::{Velocity, VelocityEquation, VelocityEquations};
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
    /// Where the answers come from, in a few words for the plan.
    pub described: String,
    /// The 1RM that belongs to the function: the largest load it completes when fresh.
    pub one_rm: Mass,
    /// The most that can be lowered under control.
    pub eccentric_one_rm: Mass,
    /// Where the eccentric 1RM comes from, in words.
    pub eccentric_described: String,
    /// What the simulation gives for that limit, for comparison; people are measured stronger.
    pub simulated_eccentric: Option<Mass>,
    /// Mean effort of a lowering over its largest, if known: the load is not equally heavy all the way.
    pub lowering_evenness: Option<f64>,
    /// Travel of the load in a repetition, if known.
    pub travel: Option<Length>,
    /// The joints that tire.
    pub joints: Vec<FatigueJoint>,
    /// Whether a repetition begins with the lowering (bench press) or with the lifting (deadlift).
    pub lowering_first: bool,
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
            Err(Error::no_answer(format!(
                "the repetition at {} kg gave no sound answer: {outcome:?}",
                attempt.load.as_kg()
            )))
        }
    }
}

/// How the published load-velocity equation is turned into repetitions.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VelocityOracle {
    /// Travel of the bar in the lifting phase.
    pub travel: Length,
    /// Time of the lowering phase.
    pub lowering: Duration,
}

/// Travel and joint that a published load-velocity equation is used with (assumed: an arm or a thigh of
/// average length; the joint that tires fastest of those that lift).
#[rustfmt::skip]
const LIFTS: &[(&str, f64, &[FatigueJoint], bool)] = &[
    ("bench-press", 0.40, &[FatigueJoint::Shoulder, FatigueJoint::Elbow], true),
    ("squat",       0.55, &[FatigueJoint::Knee, FatigueJoint::Hip], true),
    ("row",         0.40, &[FatigueJoint::Shoulder, FatigueJoint::Elbow], false),
];

/// An oracle from the published load-velocity equation: the load as a share of what is left of the 1RM
/// gives the velocity, and the repetition stalls when that share passes 1.
///
/// ```text
/// load % = 100 · load / (1RM · c)        v = equation(load %)        time = travel / v
/// ```
/// | symbol   | meaning                                           | unit | range  |
/// | -------- | ------------------------------------------------- | ---- | ------ |
/// | `c`      | smallest remaining share of capacity              | –    | 0 to 1 |
/// | `v`      | mean velocity of the lifting phase                | m/s  | > 0    |
/// | `travel` | travel of the bar                                 | m    | > 0    |
///
/// **Shape.** Slower with every repetition of a set; stalls when the load passes what is left.
/// **Source.** The equations of [`crate::progress::velocity_equations`]; that fatigue acts like a heavier load is the
/// assumption of velocity-loss training (González-Badillo et al. 2017, Int J Sports Med 38:217-225).
/// **Fails** when no equation was published for the movement.
pub fn from_load_velocity<'a>(
    equations: &'a VelocityEquations,
    movement: &str,
    one_rm: Mass,
    given: Option<VelocityOracle>,
) -> Result<RepOracle<'a>> {
    let equation = equations.equation_for(movement, Velocity::MeanPropulsive);
    let lift = LIFTS.iter().find(|(name, ..)| *name == movement);
    let (Some(equation), Some((_, travel_m, joints, lowering_first))) = (equation, lift) else {
        return Err(Error::no_answer(format!(
            "no load-velocity equation was published for {movement}"
        ))
        .hint(
            "published: bench-press, squat, row; other movements need the simulated repetition",
        ));
    };
    let given = given.unwrap_or(VelocityOracle {
        travel: Length::from_m(*travel_m),
        // A controlled lowering of 1 to 2 s: ACSM 2009, Med Sci Sports Exerc 41:687-708.
        lowering: Duration::from_s(1.5),
    });
    let eccentric = eccentric_one_rm(one_rm, Mass::ZERO);
    let count = joints.len();
    let loads = equations.loads.percent;
    Ok(RepOracle {
        described: format!("published load-velocity equation, {}", equation.lift),
        one_rm,
        eccentric_one_rm: eccentric,
        eccentric_described: format!("{} × 1RM, {}", PLANNING.ratio, PLANNING.who),
        simulated_eccentric: None,
        lowering_evenness: None,
        travel: Some(given.travel),
        joints: joints.to_vec(),
        lowering_first: *lowering_first,
        repetition: Box::new(move |attempt| {
            velocity_outcome((equation, loads), one_rm, eccentric, given, count, attempt)
        }),
    })
}

/// How long a lifter pushes against a bar that no longer moves, s (assumed: spotters step in then).
pub const STALL_S: f64 = 2.0;

fn velocity_outcome(
    (equation, loads): (&VelocityEquation, (f64, f64)),
    one_rm: Mass,
    eccentric: Mass,
    given: VelocityOracle,
    joints: usize,
    attempt: &Attempt,
) -> Result<RepOutcome> {
    let share = attempt.load.as_kg() / (one_rm.as_kg() * attempt.smallest_share());
    let percent = (100.0 * share).max(loads.0);
    let lowering = (attempt.load.as_kg() / eccentric.as_kg()).clamp(0.0, 1.0);
    let joint = JointUse {
        lifting: 1.0,
        lowering,
    };
    let velocity_m_s = equation
        .velocity_m_s_at(percent)
        .filter(|_| percent <= loads.1 + 1e-9);
    Ok(RepOutcome {
        completed: velocity_m_s.is_some(),
        mean_velocity: Speed::from_m_s(velocity_m_s.unwrap_or(0.0)),
        sticking_velocity: None,
        lifting: Duration::from_s(velocity_m_s.map_or(STALL_S, |v| given.travel.as_m() / v)),
        lowering: given.lowering,
        joints: vec![joint; joints],
    })
}

/// Time of a lowering for the overloaded method, when the simulation gives none.
#[must_use]
pub const fn overload_lowering() -> Duration {
    Duration::from_s(LOWERING_S)
}
