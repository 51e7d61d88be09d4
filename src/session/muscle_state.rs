//! A muscle that works and rests in turns, and what it can still do.
//!
//! In: phases of work (a share of fresh maximal force, for a time) and of rest. Out: the remaining
//! share of its capacity after each, from the three-compartment model of [`super::fatigue`].

use super::fatigue::{Compartments, TiringJoint, after};
use crate::error::{Error, RestPlace, Result, SessionFigureFault};
use crate::units::Duration;

/// The muscles of one joint over a session.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MuscleState {
    /// The joint with its rates.
    pub joint: TiringJoint,
    /// The three shares now.
    pub now: Compartments,
}

impl MuscleState {
    /// Rested.
    #[must_use]
    pub const fn fresh(joint: TiringJoint) -> Self {
        Self {
            joint,
            now: Compartments::FRESH,
        }
    }

    /// The share of its fresh strength that it can still make, 0 to 1.
    #[must_use]
    pub fn capacity_share(&self) -> f64 {
        self.now.capacity_share()
    }

    /// Works at a share of fresh maximal force (1 = all there is) for a time.
    ///
    /// **Fails** when the share is outside 0 to 1 or the time is none.
    pub fn work(&mut self, share: f64, time: Duration) -> Result<()> {
        self.now = after(self.now, share, time, &self.joint)?;
        Ok(())
    }

    /// Rests for a time, in closed form.
    ///
    /// ```text
    /// MA(t) = MA₀ e^(−a t)                                   a = LR + F
    /// MF(t) = MF₀ e^(−b t) + F MA₀ (e^(−b t) − e^(−a t)) / (a − b)   b = r R
    /// MR(t) = 1 − MA − MF
    /// ```
    /// | symbol   | meaning                                      | unit | range |
    /// | -------- | -------------------------------------------- | ---- | ----- |
    /// | `a`      | release of active muscle                     | 1/s  | > 0   |
    /// | `b`      | recovery at rest, `r` the rest multiplier    | 1/s  | > 0   |
    /// | index 0  | shares at the start of the rest              | –    | 0 to 1 |
    ///
    /// **Shape.** Capacity rises towards 1, 63 % of the way in 1/b (40 s for the shoulder).
    /// **Source.** The linear equations of the model with target 0; r from Looft et al. 2018, J. Biomech.
    /// 77:16-25. **Fails** when the time is negative or no number.
    pub fn rest(&mut self, time: Duration) -> Result<()> {
        let t = time.as_s();
        if !t.is_finite() || t < 0.0 {
            return Err(Error::bad(SessionFigureFault::NoRest {
                rest: time,
                place: RestPlace::Anywhere,
            }));
        }
        self.now = rested(self.now, t, &self.joint);
        Ok(())
    }
}

fn rested(start: Compartments, t: f64, rates: &TiringJoint) -> Compartments {
    let a = rates.release_per_s + rates.f_per_s;
    let b = rates.rest_multiplier * rates.r_per_s;
    let (release, recovery) = ((-a * t).exp(), (-b * t).exp());
    let active = start.active * release;
    let fatigued =
        start.fatigued * recovery + rates.f_per_s * start.active * (recovery - release) / (a - b);
    let whole = start.resting + start.active + start.fatigued;
    Compartments {
        resting: whole - active - fatigued,
        active,
        fatigued,
    }
}
