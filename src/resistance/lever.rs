//! A lever machine: plates on an arm that turns about a pivot.
//!
//! In: mass, arm, pivot or start angle. Out: force on the handle or pad. Source: statics, by virtual
//! work: the handle feels the plates' weight times how fast they rise when it moves.

use super::accepted::accepted;
use super::anchor::Anchor;
use super::directions::{cosine, force_along, lifting_direction};
use super::weight::Felt;
use crate::bounds::bounds;
use crate::error::{ImplementFault, ImplementSize};
use crate::movement::{Carrier, LoadPoint};
use crate::units::{Angle, Length, Mass, STANDARD_GRAVITY_M_S2};
use serde::Deserialize;

/// Nearer to the pivot than this the handle is taken to be this far, m: no machine has such a handle.
const SHORTEST_HANDLE_ARM_M: f64 = 0.05;

/// Plates on a turning arm.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(try_from = "LeverRecord")]
pub struct LeverMachine {
    mass: Mass,
    arm_m: f64,
    turns: Turns,
}

/// What the arm turns about.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Turns {
    /// About a pivot of its own; the handle slides on the arm as the hands move.
    AboutPivot {
        /// Where the pivot stands.
        pivot: Anchor,
        /// Angle from the line pivot-handle to the line pivot-plates.
        plates_ahead: Angle,
    },
    /// With the pad, about the lifter's joint (leg curl, knee extension).
    WithPad {
        /// Angle of the loaded arm above the horizontal at the start of the range.
        start: Angle,
    },
}

#[derive(Deserialize)]
#[serde(rename = "Lever", deny_unknown_fields)]
struct LeverRecord {
    mass: Mass,
    arm: Length,
    turns: Turns,
}

impl TryFrom<LeverRecord> for LeverMachine {
    type Error = ImplementFault;
    fn try_from(record: LeverRecord) -> Result<Self, ImplementFault> {
        Self::new(record.mass, record.arm, record.turns)
    }
}

impl LeverMachine {
    /// Plates of this mass on an arm of this length.
    ///
    /// **Fails** for an arm shorter than 1 cm or longer than 3 m.
    pub fn new(mass: Mass, arm: Length, turns: Turns) -> Result<Self, ImplementFault> {
        let arm_m = accepted(ImplementSize::LoadedArm, arm.as_m(), &bounds().loaded_arm)?;
        Ok(Self { mass, arm_m, turns })
    }

    /// Mass of the plates on the arm.
    #[must_use]
    pub fn mass(&self) -> Mass {
        self.mass
    }

    /// What the arm turns about.
    #[must_use]
    pub fn turns(&self) -> Turns {
        self.turns
    }

    /// What the lifter feels.
    ///
    /// ```text
    /// F = m·g · l·cos(β) / h       square to the handle's arm        moving mass m·(l/h)²·cos²φ
    /// ```
    /// | symbol | meaning                                          | unit | range |
    /// | ------ | ------------------------------------------------ | ---- | ----- |
    /// | `l`    | arm of the plates                                | m    | > 0   |
    /// | `β`    | angle of that arm above the horizontal, here     | rad  | any   |
    /// | `h`    | arm of the handle or pad                         | m    | > 0   |
    /// | `φ`    | angle between the path and the handle's circle   | rad  | any   |
    ///
    /// **Shape.** Greatest where the loaded arm is level; 0 where it stands upright, and pulling with
    /// the lifter beyond that. **Source.** Virtual work. **Fails.** Never.
    pub(super) fn felt(
        &self,
        point: &LoadPoint,
        carrier: &Carrier,
        start_x_m: Option<f64>,
    ) -> Felt {
        let lifting = lifting_direction(point, carrier);
        let weight_n = self.mass.as_kg() * STANDARD_GRAVITY_M_S2;
        let (plates_rad, handle_m, turning) = match (self.turns, carrier) {
            (Turns::WithPad { start }, Carrier::Lever { pad_m, .. }) => (
                start.as_rad() + point.lever_rad,
                pad_m.max(SHORTEST_HANDLE_ARM_M),
                lifting,
            ),
            (Turns::WithPad { start }, _) => (start.as_rad(), self.arm_m, lifting),
            (
                Turns::AboutPivot {
                    pivot,
                    plates_ahead,
                },
                _,
            ) => {
                let (distance_m, towards) = pivot.line_from(point, start_x_m);
                let out = (-towards.0, -towards.1);
                let handle_rad = out.1.atan2(out.0);
                let turning = (-out.1, out.0);
                (
                    handle_rad + plates_ahead.as_rad(),
                    distance_m.max(SHORTEST_HANDLE_ARM_M),
                    turning,
                )
            }
        };
        let rise = self.arm_m / handle_m;
        let along = cosine(lifting, turning);
        Felt {
            force: force_along(-weight_n * rise * plates_rad.cos(), turning),
            moving_mass_kg: self.mass.as_kg() * rise * rise * along * along,
        }
    }
}
