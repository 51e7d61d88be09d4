//! A weight stack on a cable: pulley ratio, direction of pull, friction both ways.
//!
//! In: stack, ratio, friction, where the cable leads. Out: force on the handle (or on the cam of a
//! machine lever) and the stack's inertia as felt there. Source: statics and dynamics of pulleys.

use super::accepted::accepted;
use super::anchor::Anchor;
use super::directions::{Direction, cosine, force_along, lifting_direction, share_of_way_back};
use super::motion::Motion;
use super::weight::{Felt, Machine};
use crate::bounds::bounds;
use crate::error::{ImplementFault, ImplementSize};
use crate::movement::{Carrier, LoadPoint};
use crate::units::{Angle, Mass, STANDARD_GRAVITY_M_S2};
use serde::Deserialize;

/// Where a cable leads from the handle.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
pub enum Lead {
    /// To a pulley standing somewhere: the direction turns as the handle moves.
    Pulley(Anchor),
    /// In a fixed direction: angle above the horizontal, forward (or outward) positive.
    Direction(Angle),
}

/// A weight stack on a cable.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(try_from = "CableRecord")]
pub struct Cable {
    stack: Mass,
    ratio: f64,
    friction: f64,
    lead: Lead,
}

#[derive(Deserialize)]
#[serde(rename = "Cable", deny_unknown_fields)]
struct CableRecord {
    stack: Mass,
    #[serde(default = "one")]
    ratio: f64,
    #[serde(default)]
    friction: f64,
    #[serde(default = "floor")]
    lead: Lead,
}

fn one() -> f64 {
    1.0
}

fn floor() -> Lead {
    Lead::Pulley(Anchor::FLOOR)
}

impl TryFrom<CableRecord> for Cable {
    type Error = ImplementFault;
    fn try_from(record: CableRecord) -> Result<Self, ImplementFault> {
        Self::new(record.stack, record.ratio, record.friction, record.lead)
    }
}

impl Cable {
    /// A stack on a cable with ratio `ratio` (handle travel over stack travel) and friction (share of
    /// the pull lost in the pulleys, 0 to 0.9).
    ///
    /// **Fails** for a ratio outside 1/8 to 8, a friction outside 0 to 0.9, or a direction beyond a full turn.
    pub fn new(stack: Mass, ratio: f64, friction: f64, lead: Lead) -> Result<Self, ImplementFault> {
        if let Lead::Direction(angle) = lead {
            let bound = &bounds().cable_direction;
            accepted(ImplementSize::CableDirection, angle.as_deg(), bound)?;
        }
        Ok(Self {
            stack,
            ratio: accepted(ImplementSize::CableRatio, ratio, &bounds().cable_ratio)?,
            friction: accepted(
                ImplementSize::CableFriction,
                friction,
                &bounds().cable_friction,
            )?,
            lead,
        })
    }

    /// The mass of the stack.
    #[must_use]
    pub fn stack(&self) -> Mass {
        self.stack
    }

    /// Travel of the handle over travel of the stack.
    #[must_use]
    pub fn ratio(&self) -> f64 {
        self.ratio
    }

    /// Share of the pull lost in the pulleys.
    #[must_use]
    pub fn friction(&self) -> f64 {
        self.friction
    }

    /// Pull of the cable at the handle, N.
    ///
    /// ```text
    /// T = m·g / (n·(1 − f))   stack going up          T = m·g·(1 − f) / n   stack going down
    /// ```
    /// | symbol | meaning                                 | unit | range |
    /// | ------ | --------------------------------------- | ---- | ----- |
    /// | `m`    | mass of the stack                       | kg   | ≥ 0   |
    /// | `n`    | ratio: handle travel over stack travel  | –    | 1/8-8 |
    /// | `f`    | share of the pull lost in the pulleys   | –    | 0-0.9 |
    ///
    /// `drawing_out` is the cosine between motion and cable: 1 straight away from the pulley. Near 0
    /// the pull passes smoothly between its branches.
    ///
    /// **Shape.** Proportional to m/n; never negative. **Source.** Statics. **Fails.** Never.
    #[must_use]
    pub fn pull_n(&self, drawing_out: f64) -> f64 {
        let ideal_n = self.stack.as_kg() * STANDARD_GRAVITY_M_S2 / self.ratio;
        let back = share_of_way_back(drawing_out);
        ideal_n * ((1.0 - back) / (1.0 - self.friction) + back * (1.0 - self.friction))
    }

    /// Direction from the handle along the cable.
    fn direction(&self, point: &LoadPoint, start_x_m: Option<f64>) -> Direction {
        match self.lead {
            Lead::Pulley(pulley) => pulley.line_from(point, start_x_m).1,
            Lead::Direction(angle) => (angle.cos(), angle.sin()),
        }
    }

    /// What the lifter feels: a pull along the cable, or on a machine lever through its cam.
    ///
    /// ```text
    /// moving mass = m · cos²φ / n²      (φ between path and cable)        on a lever  m·(r/p)² / n²
    /// ```
    pub(super) fn felt(
        &self,
        point: &LoadPoint,
        carrier: &Carrier,
        motion: Motion,
        start_x_m: Option<f64>,
        machine: &Machine,
    ) -> Felt {
        let lifting = lifting_direction(point, carrier);
        let stack_kg = self.stack.as_kg() / (self.ratio * self.ratio);
        if matches!(carrier, Carrier::Lever { .. }) {
            let ratio = machine.cam_over_pad(point, carrier);
            return Felt {
                force: force_along(-self.pull_n(motion.sense()) * ratio, lifting),
                moving_mass_kg: stack_kg * ratio * ratio,
            };
        }
        let towards = self.direction(point, start_x_m);
        let along = cosine(lifting, towards);
        Felt {
            force: force_along(self.pull_n(-along * motion.sense()), towards),
            moving_mass_kg: stack_kg * along * along,
        }
    }
}
