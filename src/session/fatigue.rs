//! The three-compartment model of muscle fatigue: resting, active and fatigued share of a muscle.
//!
//! In: a joint's published rates, a target share of maximal force, a time. Out: the three shares over
//! time. A muscle that works and rests in turns is in [`super::muscle_state`].

pub use super::fatigue_joint::FatigueJoint;
use super::published::FatigueTable;
use crate::anatomy::Joint;
use crate::error::{Error, PredictionFault, Result};
use crate::numeric::{Arrival, Steps, integrate};
use crate::units::Duration;

/// A joint that tires, with the rates of the model.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TiringJoint {
    /// The joint.
    pub joint: FatigueJoint,
    /// Flow from active to fatigued, 1/s.
    pub f_per_s: f64,
    /// Flow from fatigued to resting, 1/s.
    pub r_per_s: f64,
    /// By how much recovery is faster at rest.
    pub rest_multiplier: f64,
    /// How fast the controller recruits (`LD`), 1/s.
    pub recruit_per_s: f64,
    /// How fast the controller releases (`LR`), 1/s.
    pub release_per_s: f64,
}

impl FatigueTable {
    /// A joint with its rates; those of the last row where it has none.
    #[must_use]
    pub fn tiring(&self, joint: FatigueJoint) -> TiringJoint {
        let of_joint = self.joints.iter().find(|row| row.joint == joint);
        let row = of_joint
            .or(self.joints.last())
            .expect("a table without a row is refused when it is read");
        TiringJoint {
            joint: row.joint,
            f_per_s: row.f_per_s,
            r_per_s: row.r_per_s,
            rest_multiplier: row.rest_multiplier,
            recruit_per_s: self.controller.recruit_per_s,
            release_per_s: self.controller.release_per_s,
        }
    }
}

impl From<Joint> for FatigueJoint {
    fn from(joint: Joint) -> Self {
        match joint {
            Joint::Elbow => Self::Elbow,
            Joint::Shoulder => Self::Shoulder,
            Joint::LowerBack => Self::Trunk,
            Joint::Hip => Self::Hip,
            Joint::Knee => Self::Knee,
            Joint::Ankle => Self::Ankle,
        }
    }
}

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
/// | `LD`, `LR`  | rates of the controller                    | 1/s  | > 0    |
///
/// **Shape.** Drives `MA` to `TL` with a time constant of 0.1 s. **Source.** Xia & Frey Law 2008,
/// J. Biomech. 41:3046-3052 (from memory; the structure read in abstracts). **Fails.** Never.
#[must_use]
pub fn controller_per_s(state: Compartments, target: f64, rates: &TiringJoint) -> f64 {
    let missing = target - state.active;
    if missing <= 0.0 {
        rates.release_per_s * missing
    } else if state.resting > missing {
        rates.recruit_per_s * missing
    } else {
        rates.recruit_per_s * state.resting
    }
}

/// ```text
/// MR′ = −C + R MF      MA′ = C − F MA      MF′ = F MA − R MF
/// ```
/// with `R` times the rest multiplier while the target is 0 (Looft et al. 2018).
fn rate_of_change(state: Compartments, target: f64, rates: &TiringJoint) -> [f64; 3] {
    let c = controller_per_s(state, target, rates);
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
    rates: &TiringJoint,
) -> Result<Compartments> {
    check(target, time)?;
    if time == Duration::ZERO {
        return Ok(state);
    }
    let steps = Steps {
        start: 0.0,
        end: time.as_s(),
        step: LONGEST_STEP_S,
    };
    let arrival: Arrival<3, ()> = integrate(
        steps,
        state.as_array(),
        |_, y| rate_of_change(Compartments::from_array(*y), target, rates),
        |_, _| None,
        |_, _| {},
    )?;
    Ok(Compartments::from_array(arrival.state))
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
