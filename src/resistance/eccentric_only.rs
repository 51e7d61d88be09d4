//! Load that is only there in lowering: hooks that let go at the bottom, a partner who pushes down.
//!
//! In: mass or push. Out: its force in lowering, nothing in holding and lifting. Source: statics.

use super::accepted::accepted;
use super::directions::{DOWN, force_along, lifting_direction};
use super::motion::Motion;
use super::weight::{Felt, Machine, felt_weight};
use crate::bounds::bounds;
use crate::error::{ImplementFault, ImplementSize};
use crate::movement::{Carrier, LoadPoint};
use crate::units::{Force, Mass};
use serde::Deserialize;

/// A load of the lowering phase.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
pub enum EccentricOnly {
    /// Hung on and released at the bottom; both sides together, one hand for dumb-bells.
    Hung(Mass),
    /// Pushed by a partner.
    Pushed(Force),
}

impl EccentricOnly {
    /// Checks the size of a push or a mass.
    ///
    /// **Fails** for a negative push, and for more of either than helpers and hooks put on.
    pub fn checked(self) -> Result<Self, ImplementFault> {
        match self {
            Self::Pushed(force) => {
                accepted(ImplementSize::Push, force.as_n(), &bounds().helper_force)?;
            }
            Self::Hung(mass) => {
                let bound = &bounds().lowering_mass;
                accepted(ImplementSize::LoweringMass, mass.as_kg(), bound)?;
            }
        }
        Ok(self)
    }

    /// What the lifter feels: all of it in lowering, nothing otherwise.
    pub(super) fn felt(
        &self,
        point: &LoadPoint,
        carrier: &Carrier,
        motion: Motion,
        machine: &Machine,
    ) -> Felt {
        if !motion.is_lowering() {
            return Felt::default();
        }
        match self {
            Self::Hung(mass) => felt_weight(mass.as_kg(), point, carrier, motion, machine),
            Self::Pushed(force) => {
                let push = match carrier {
                    Carrier::Bar | Carrier::Dumbbell | Carrier::Body => {
                        force_along(force.as_n(), DOWN)
                    }
                    Carrier::Sled { .. } | Carrier::Lever { .. } => {
                        force_along(-force.as_n(), lifting_direction(point, carrier))
                    }
                };
                Felt {
                    force: push,
                    moving_mass_kg: 0.0,
                }
            }
        }
    }
}
