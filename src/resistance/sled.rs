//! A sled on rails: only the part of its weight along the rails is felt, and friction.
//!
//! In: mass, rail angle, friction. Out: force along the rails. Source: statics of the inclined plane.

use super::accepted::accepted;
use super::motion::Motion;
use crate::bounds::bounds;
use crate::error::{ImplementFault, ImplementSize};
use crate::units::{Mass, STANDARD_GRAVITY_M_S2};
use serde::Deserialize;

/// The sled itself; the plates on it are weights of the setup.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(try_from = "SledRecord")]
pub struct Sled {
    mass: Mass,
    friction: f64,
}

#[derive(Deserialize)]
#[serde(rename = "Sled", deny_unknown_fields)]
struct SledRecord {
    mass: Mass,
    #[serde(default)]
    friction: f64,
}

impl TryFrom<SledRecord> for Sled {
    type Error = ImplementFault;
    fn try_from(record: SledRecord) -> Result<Self, ImplementFault> {
        Self::new(record.mass, record.friction)
    }
}

impl Sled {
    /// A sled of this mass on rails of this friction (share of the normal force, 0 to 1).
    ///
    /// **Fails** for a friction that rails cannot have.
    pub fn new(mass: Mass, friction: f64) -> Result<Self, ImplementFault> {
        Ok(Self {
            mass,
            friction: accepted(
                ImplementSize::RailFriction,
                friction,
                &bounds().rail_friction,
            )?,
        })
    }

    /// Mass of the empty sled.
    #[must_use]
    pub fn mass(&self) -> Mass {
        self.mass
    }

    /// Friction force over normal force.
    #[must_use]
    pub fn friction(&self) -> f64 {
        self.friction
    }
}

/// Force of a mass on rails against the lifter, N along the rails.
///
/// ```text
/// F = m·g·(sin a + μ cos a)   held or lifted        F = max(0, m·g·(sin a − μ cos a))   lowered
/// ```
/// | symbol | meaning                          | unit | range |
/// | ------ | -------------------------------- | ---- | ----- |
/// | `a`    | angle of the rails               | rad  | 0-π/2 |
/// | `μ`    | friction force over normal force | –    | 0-1   |
///
/// **Shape.** At 45° without friction 0.70711 of the weight. Where friction alone holds the sled,
/// lowering feels nothing. **Source.** Statics of the inclined plane. **Fails.** Never.
#[must_use]
pub fn along_rails_n(mass_kg: f64, angle_rad: f64, friction: f64, motion: Motion) -> f64 {
    let weight_n = mass_kg * STANDARD_GRAVITY_M_S2;
    let along_n = weight_n * angle_rad.sin();
    let rubbing_n = friction * weight_n * angle_rad.cos().abs();
    if motion.is_lowering() {
        (along_n - rubbing_n).max(0.0)
    } else {
        along_n + rubbing_n
    }
}
