//! Motion under a drive that does not change: what the equation alone says, without a lifter's plans.
//!
//! In: an equation, a state, a drive. Out: place, speed and energies in time. For experiments and for
//! checks against motions that have an answer on paper.

use super::equation::{Equation, Way};
use crate::error::Result;
use crate::numeric::{Steps, integrate};
use crate::units::Duration;

/// A motion from a state, left to itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coast {
    /// Place in the range at the start.
    pub range: f64,
    /// Speed along the range at the start, 1/s.
    pub speed: f64,
    /// Activation times enhancement, all the time; 0 = muscles do nothing.
    pub drive: f64,
    /// How long, unless an end of the range comes first.
    pub time: Duration,
    /// Step of the integration.
    pub step: Duration,
}

/// One step of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CoastSample {
    /// Time since the start, s.
    pub time_s: f64,
    /// Place in the range.
    pub range: f64,
    /// Speed along the range, 1/s.
    pub speed: f64,
    /// Kinetic energy of limbs and load, J.
    pub kinetic_j: f64,
    /// Net work of muscles, limbs' weight and load since the start, J.
    pub work_j: f64,
}

impl Equation<'_> {
    /// Acceleration along the range at a place, speed and drive, 1/s².
    #[must_use]
    pub fn acceleration(&self, range: f64, speed: f64, drive: f64) -> f64 {
        let terms = self.terms(range, speed, way_of(speed));
        terms.acceleration(drive, speed)
    }

    /// Effective inertia of limbs and load along the range, kg·m² per range².
    #[must_use]
    pub fn inertia(&self, range: f64) -> f64 {
        self.terms(range, 0.0, Way::Up).inertia()
    }

    /// Lets the load go from a state until time is over or an end of the range is reached.
    ///
    /// **Fails** on steps that are none, and when the motion has no finite state.
    pub fn coast(&self, coast: &Coast) -> Result<Vec<CoastSample>> {
        let mut samples = Vec::new();
        let steps = Steps {
            start: 0.0,
            end: coast.time.as_s(),
            step: coast.step.as_s(),
        };
        let rate = |_: f64, y: &[f64; 3]| {
            let terms = self.terms(y[0], y[1], way_of(y[1]));
            [
                y[1],
                terms.acceleration(coast.drive, y[1]),
                terms.net_power_w(coast.drive, y[1]),
            ]
        };
        let is_out = |_: f64, y: &[f64; 3]| (y[0] < 0.0 || y[0] > 1.0).then_some(());
        integrate(
            steps,
            [coast.range, coast.speed, 0.0],
            rate,
            is_out,
            |time_s, y| {
                samples.push(CoastSample {
                    time_s,
                    range: y[0],
                    speed: y[1],
                    kinetic_j: 0.5 * self.inertia(y[0]) * y[1] * y[1],
                    work_j: y[2],
                });
            },
        )?;
        Ok(samples)
    }
}

fn way_of(speed: f64) -> Way {
    if speed < 0.0 { Way::Down } else { Way::Up }
}
