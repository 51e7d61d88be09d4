//! Help: a spotter's hands, or a counterweight.
//!
//! In: force, share or mass, and the load without help. Out: a force that takes load away. A
//! counterweight still has to be sped up. Assisting bands are bands with an anchor above.
//! Source: mechanics.

use super::accepted::accepted;
use super::directions::{DOWN, Direction, along_n, force_along, lifting_direction};
use super::motion::Motion;
use super::weight::Felt;
use crate::bounds::bounds;
use crate::error::{ImplementFault, ImplementSize};
use crate::movement::{Carrier, LoadPoint, PlaneForce};
use crate::units::{Force, Mass, STANDARD_GRAVITY_M_S2};
use serde::Deserialize;

/// Something that takes load away.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Assistance {
    /// A partner who lifts with a steady force, never more than the load.
    Spotter {
        /// Force of the partner.
        force: Force,
        /// Whether the partner helps in lowering too.
        #[serde(default)]
        in_lowering: bool,
    },
    /// A partner who takes this share of the load.
    SpotterShare {
        /// Share taken, 0 to 1.
        share: f64,
        /// Whether the partner helps in lowering too.
        #[serde(default)]
        in_lowering: bool,
    },
    /// A counterweight over a pulley: takes its weight away, but moves along.
    Counterweight(Mass),
}

impl Assistance {
    /// Checks the size of the help.
    ///
    /// **Fails** for a negative force, one of more than 5000 N, or a share outside 0 to 1.
    pub fn checked(self) -> Result<Self, ImplementFault> {
        match self {
            Self::Spotter { force, .. } => accepted(
                ImplementSize::SpotterForce,
                force.as_n(),
                &bounds().helper_force,
            )?,
            Self::SpotterShare { share, .. } => {
                accepted(ImplementSize::SpotterShare, share, &bounds().helper_share)?
            }
            Self::Counterweight(_) => 0.0,
        };
        Ok(self)
    }

    /// What the help changes, when the rest of the setup exerts `load`.
    ///
    /// ```text
    /// spotter        −min(F, load) or −share·load             moving mass 0
    /// counterweight  −m·g                                     moving mass m
    /// ```
    /// **Shape.** Against the load; a spotter never turns it round, a counterweight may.
    /// **Source.** Mechanics: net weight = body·g − help, inertia = body + counterweight.
    /// **Fails.** Never.
    pub(super) fn felt(
        &self,
        load: PlaneForce,
        point: &LoadPoint,
        carrier: &Carrier,
        motion: Motion,
    ) -> Felt {
        let against = helping_direction(point, carrier);
        let load_n = (-along_n(load, against)).max(0.0);
        let absent = |in_lowering: bool| motion.is_lowering() && !in_lowering;
        match *self {
            Self::Spotter { in_lowering, .. } | Self::SpotterShare { in_lowering, .. }
                if absent(in_lowering) =>
            {
                Felt::default()
            }
            Self::Spotter { force, .. } => Felt {
                force: force_along(force.as_n().min(load_n), against),
                moving_mass_kg: 0.0,
            },
            Self::SpotterShare { share, .. } => Felt {
                force: force_along(share * load_n, against),
                moving_mass_kg: 0.0,
            },
            Self::Counterweight(mass) => Felt {
                force: force_along(mass.as_kg() * STANDARD_GRAVITY_M_S2, against),
                moving_mass_kg: mass.as_kg(),
            },
        }
    }
}

/// Upward for what is held, along the path on rails and levers.
fn helping_direction(point: &LoadPoint, carrier: &Carrier) -> Direction {
    match carrier {
        Carrier::Bar | Carrier::Dumbbell | Carrier::Body => (-DOWN.0, -DOWN.1),
        Carrier::Sled { .. } | Carrier::Lever { .. } => lifting_direction(point, carrier),
    }
}
