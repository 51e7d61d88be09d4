//! The three-compartment model of muscle fatigue: resting, active and fatigued share of a muscle.
//!
//! In: a joint's published rates, a target share of maximal force, a time. Out: the three shares over
//! time, endurance in closed form and by integration, and the published endurance curves to check
//! against. A muscle that works and rests in turns is in [`super::muscle_state`].

pub use super::fatigue_joint::FatigueJoint;
use crate::anatomy::Joint;
use crate::error::{Error, PredictionFault, Result};
use crate::numeric::{Arrival, Steps, integrate};
use crate::progress::origin::Origin;
use crate::units::Duration;

/// Rates of one joint.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rates {
    /// The joint.
    pub joint: FatigueJoint,
    /// Its name, as movements write it.
    pub name: &'static str,
    /// Flow from active to fatigued, 1/s.
    pub f_per_s: f64,
    /// Flow from fatigued to resting, 1/s.
    pub r_per_s: f64,
    /// By how much recovery is faster at rest.
    pub rest_multiplier: f64,
    /// Where `F` and `R` come from.
    pub origin: Origin,
    /// Where the rest multiplier comes from.
    pub rest_origin: Origin,
}

const READ: Origin = Origin::Read("frey_law_2012", "abstract (F and R of ankle and shoulder)");
const RECALLED: Origin = Origin::Recalled("frey_law_2012", "parameter table");
const LOOFT: Origin = Origin::Read("looft_2018", "rest multiplier, also restated in looft_2020");
const NO_REST_ROW: Origin =
    Origin::Assumed("no row was published; 15 holds for every joint but the grip");
const HIP: Origin =
    Origin::Assumed("no hip row was published; the trunk's values are a usual stand-in");

const fn rates(
    joint: FatigueJoint,
    name: &'static str,
    f_per_s: f64,
    r_per_s: f64,
    rest_multiplier: f64,
    origin: Origin,
    rest_origin: Origin,
) -> Rates {
    Rates {
        joint,
        name,
        f_per_s,
        r_per_s,
        rest_multiplier,
        origin,
        rest_origin,
    }
}

/// Every joint's rates.
#[rustfmt::skip]
pub const JOINTS: &[Rates] = &[
    rates(FatigueJoint::Ankle,    "ankle",     0.00589, 0.00058, 15.0, READ,     LOOFT),
    rates(FatigueJoint::Knee,     "knee",      0.01500, 0.00149, 15.0, RECALLED, LOOFT),
    rates(FatigueJoint::Hip,      "hip",       0.00755, 0.00075, 15.0, HIP,      NO_REST_ROW),
    rates(FatigueJoint::Trunk,    "trunk",     0.00755, 0.00075, 15.0, RECALLED, NO_REST_ROW),
    rates(FatigueJoint::Shoulder, "shoulder",  0.01820, 0.00168, 15.0, READ,     LOOFT),
    rates(FatigueJoint::Elbow,    "elbow",     0.00912, 0.00094, 15.0, RECALLED, LOOFT),
    rates(FatigueJoint::HandGrip, "hand_grip", 0.00980, 0.00064, 30.0, RECALLED, LOOFT),
    rates(FatigueJoint::General,  "general",   0.00970, 0.00091, 15.0, RECALLED, NO_REST_ROW),
];

impl FatigueJoint {
    /// Its rates.
    #[must_use]
    pub fn rates(self) -> &'static Rates {
        JOINTS
            .iter()
            .find(|row| row.joint == self)
            .unwrap_or(&JOINTS[JOINTS.len() - 1])
    }
}

impl From<Joint> for FatigueJoint {
    fn from(joint: Joint) -> Self {
        match joint {
            Joint::Elbow => Self::Elbow,
            Joint::Shoulder => Self::Shoulder,
            Joint::Hip => Self::Hip,
            Joint::Knee => Self::Knee,
            Joint::Ankle => Self::Ankle,
        }
    }
}

/// How fast the controller recruits, 1/s (`LD`; Xia & Frey Law 2008, from memory).
pub const RECRUIT_PER_S: f64 = 10.0;
/// How fast the controller releases, 1/s (`LR`; Xia & Frey Law 2008, from memory).
pub const RELEASE_PER_S: f64 = 10.0;

/// Longest integration step, s: a fiftieth of a second, a fifth of the controller's time constant, where
/// one step of fourth order errs by less than 3e-6 of the change.
pub const LONGEST_STEP_S: f64 = 0.02;

/// The three shares; they sum to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Compartments {
    /// Rested and not in use (`MR`).
    pub resting: f64,
    /// In use (`MA`).
    pub active: f64,
    /// Spent (`MF`).
    pub fatigued: f64,
}

impl Compartments {
    /// All rested.
    pub const FRESH: Self = Self {
        resting: 1.0,
        active: 0.0,
        fatigued: 0.0,
    };

    /// The share of its fresh strength that the muscle can still make: `1 − MF`.
    #[must_use]
    pub fn capacity_share(self) -> f64 {
        (self.resting + self.active).clamp(0.0, 1.0)
    }

    const fn as_array(self) -> [f64; 3] {
        [self.resting, self.active, self.fatigued]
    }

    const fn from_array([resting, active, fatigued]: [f64; 3]) -> Self {
        Self {
            resting,
            active,
            fatigued,
        }
    }
}

/// What the controller moves from resting to active, 1/s.
///
/// ```text
/// MA < TL and MR > TL − MA :  C = LD (TL − MA)
/// MA < TL and MR ≤ TL − MA :  C = LD MR
/// MA ≥ TL                  :  C = LR (TL − MA)
/// ```
/// | symbol      | meaning                                    | unit | range  |
/// | ----------- | ------------------------------------------ | ---- | ------ |
/// | `MA`, `MR`  | active and resting share                   | –    | 0 to 1 |
/// | `TL`        | target load, share of fresh maximal force  | –    | 0 to 1 |
/// | `LD`, `LR`  | [`RECRUIT_PER_S`], [`RELEASE_PER_S`]       | 1/s  | > 0    |
///
/// **Shape.** Drives `MA` to `TL` with a time constant of 0.1 s. **Source.** Xia & Frey Law 2008,
/// J. Biomech. 41:3046-3052 (from memory; the structure read in abstracts). **Fails.** Never.
#[must_use]
pub fn controller_per_s(state: Compartments, target: f64) -> f64 {
    let missing = target - state.active;
    if missing <= 0.0 {
        RELEASE_PER_S * missing
    } else if state.resting > missing {
        RECRUIT_PER_S * missing
    } else {
        RECRUIT_PER_S * state.resting
    }
}

/// ```text
/// MR′ = −C + R MF      MA′ = C − F MA      MF′ = F MA − R MF
/// ```
/// with `R` times the rest multiplier while the target is 0 (Looft et al. 2018).
fn rate_of_change(state: Compartments, target: f64, rates: &Rates) -> [f64; 3] {
    let c = controller_per_s(state, target);
    let r = if target == 0.0 {
        rates.r_per_s * rates.rest_multiplier
    } else {
        rates.r_per_s
    };
    let tiring = rates.f_per_s * state.active;
    let recovering = r * state.fatigued;
    [recovering - c, c - tiring, tiring - recovering]
}

/// The three shares after `time` at a constant target, by Runge and Kutta's fourth-order steps.
///
/// **Shape.** The sum of the shares is kept to rounding, each stays between 0 and 1.
/// **Source.** The equations of Xia & Frey Law 2008, with the rest multiplier of Looft et al. 2018,
/// J. Biomech. 77:16-25. **Fails** when the target is no share of maximal force, or the time no time.
pub fn after(
    state: Compartments,
    target: f64,
    time: Duration,
    rates: &Rates,
) -> Result<Compartments> {
    check(target, time)?;
    if time == Duration::ZERO {
        return Ok(state);
    }
    let arrival = run(state, target, time, rates, |_| None::<()>)?;
    Ok(Compartments::from_array(arrival.state))
}

fn run<E>(
    state: Compartments,
    target: f64,
    time: Duration,
    rates: &Rates,
    event: impl Fn(Compartments) -> Option<E>,
) -> Result<Arrival<3, E>> {
    let steps = Steps {
        start: 0.0,
        end: time.as_s(),
        step: LONGEST_STEP_S,
    };
    integrate(
        steps,
        state.as_array(),
        |_, y| rate_of_change(Compartments::from_array(*y), target, rates),
        |_, y| event(Compartments::from_array(*y)),
        |_, _| {},
    )
}

fn check(target: f64, time: Duration) -> Result<()> {
    if !(0.0..=1.0).contains(&target) {
        return Err(Error::bad(PredictionFault::NoShareOfForce {
            share: target,
        }));
    }
    // A day: far beyond any session, and still quick to step through.
    if !(0.0..=86_400.0).contains(&time.as_s()) {
        return Err(Error::bad(PredictionFault::NoTime { time }));
    }
    Ok(())
}

/// How long a share of maximal force can be held, in closed form; `None` if for ever.
///
/// ```text
/// t = −ln( 1 − (1 − TL) R / (F TL) ) / R
/// ```
/// | symbol   | meaning                              | unit | range  |
/// | -------- | ------------------------------------ | ---- | ------ |
/// | `t`      | endurance time                       | s    | ≥ 0    |
/// | `TL`     | target load, share of maximal force  | –    | 0 to 1 |
/// | `F`, `R` | rates of the joint                   | 1/s  | > 0    |
///
/// **Shape.** Falls with `TL`; 0 at 1; infinite up to `R/(F + R)`, where tiring and recovery balance.
/// **Source.** Derived: with `MA` held at `TL`, `MF(t) = (F TL/R)(1 − e^(−R t))` until `MF = 1 − TL`.
/// **Fails** when the target is no share of maximal force.
pub fn endurance_closed_form(target: f64, rates: &Rates) -> Result<Option<Duration>> {
    check(target, Duration::ZERO)?;
    if target <= sustainable_share(rates) {
        return Ok(None);
    }
    let (f, r) = (rates.f_per_s, rates.r_per_s);
    let time_s = -(1.0 - (1.0 - target) * r / (f * target)).ln() / r;
    Ok(Some(Duration::from_s(time_s.max(0.0))))
}

/// The share of maximal force that can be held for ever: `R / (F + R)`.
#[must_use]
pub fn sustainable_share(rates: &Rates) -> f64 {
    rates.r_per_s / (rates.f_per_s + rates.r_per_s)
}

/// How long a share of maximal force can be held, by integration: until the resting share no longer
/// covers what is missing to the target.
///
/// **Fails** when the target is no share of maximal force, or can be held for longer than `limit`.
pub fn endurance_by_integration(target: f64, rates: &Rates, limit: Duration) -> Result<Duration> {
    check(target, limit)?;
    let exhausted = |now: Compartments| {
        let missing = target - now.active;
        (missing > 0.0 && now.resting <= missing).then_some(())
    };
    // The controller takes half a second to recruit; only then does the question make sense.
    let settled = after(
        Compartments::FRESH,
        target,
        Duration::from_s(SETTLING_S),
        rates,
    )?;
    let arrival = run(settled, target, limit, rates, exhausted)?;
    match arrival.event {
        Some(()) => Ok(Duration::from_s(SETTLING_S + arrival.time)),
        None => Err(Error::no_answer(PredictionFault::HeldLonger {
            share: target,
            limit,
        })),
    }
}

/// Time in which the controller recruits all but 1 % of the target, s: five of its time constants.
const SETTLING_S: f64 = 0.5;

/// A published curve of endurance time: `t = b0 TL^(−b1)`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EnduranceCurve {
    /// The joint.
    pub joint: FatigueJoint,
    /// Time at all of maximal force, s.
    pub b0_s: f64,
    /// Exponent.
    pub b1: f64,
}

/// Where the endurance curves come from.
pub const ENDURANCE_ORIGIN: Origin = Origin::Recalled(
    "frey_law_avin_2010",
    "power model; the order of the joints read in the abstract; elbow uncertain",
);

const fn curve(joint: FatigueJoint, b0_s: f64, b1: f64) -> EnduranceCurve {
    EnduranceCurve { joint, b0_s, b1 }
}

/// Endurance curves fitted to 194 publications.
#[rustfmt::skip]
pub const ENDURANCE_CURVES: &[EnduranceCurve] = &[
    curve(FatigueJoint::Ankle,    34.71, 2.06),
    curve(FatigueJoint::Trunk,    22.69, 2.27),
    curve(FatigueJoint::HandGrip, 33.55, 1.61),
    curve(FatigueJoint::Elbow,    17.98, 2.21),
    curve(FatigueJoint::Knee,     19.38, 1.88),
    curve(FatigueJoint::Shoulder, 14.86, 1.83),
];

impl EnduranceCurve {
    /// Endurance time at a share of maximal force.
    #[must_use]
    pub fn time_at(&self, target: f64) -> Duration {
        Duration::from_s(self.b0_s * target.powf(-self.b1))
    }
}
