//! Plain weight: bar, plates, collars, dumb-bell, belt, the body itself.
//!
//! In: masses and how the movement takes its load. Out: what the lifter feels, and the mass that moves
//! along. In the hands a weight pulls straight down; on rails and on a machine lever only the part
//! along the path is felt. Sources: statics; masses of bars and plates stand in the model files.

use super::cam::Cam;
use super::directions::{DOWN, force_along, lifting_direction};
use super::motion::Motion;
use super::sled::along_rails_n;
use crate::movement::{Carrier, LoadPoint, PlaneForce};
use crate::units::{Mass, STANDARD_GRAVITY_M_S2};
use serde::Deserialize;

/// On which side of the lifter a piece hangs; counts are per side.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize)]
pub enum HangingSide {
    /// The same on both sides.
    #[default]
    Both,
    /// Only on the left.
    Left,
    /// Only on the right.
    Right,
    /// In the middle, once: a band under both knees, a chain on a belt.
    Middle,
}

impl HangingSide {
    /// How many pieces pull when `count` hang on this side; in a movement with a dumb-bell in each
    /// hand only one hand is looked at.
    #[must_use]
    pub fn pieces(self, count: u32, carrier: &Carrier) -> f64 {
        let both = self == Self::Both && !matches!(carrier, Carrier::Dumbbell);
        f64::from(count) * if both { 2.0 } else { 1.0 }
    }
}

/// A plain weight.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Weight {
    /// All of it in one figure: loaded bar, one dumb-bell, sled with plates, weight stack.
    Load(Mass),
    /// An empty bar.
    Bar(Mass),
    /// Equal plates, so many pairs.
    Plates {
        /// Mass of one plate.
        each: Mass,
        /// Pairs of them: plates a side.
        pairs: u32,
    },
    /// A plate on one side only.
    OnePlate {
        /// Its mass.
        mass: Mass,
        /// The side it hangs on.
        side: HangingSide,
    },
    /// A pair of collars.
    Collars {
        /// Mass of one collar.
        each: Mass,
    },
    /// A dumb-bell in each hand; the mass of one.
    Dumbbell(Mass),
    /// Hung from a belt.
    Belt(Mass),
    /// The part of the lifter's own mass that the movement lifts.
    BodyMass(Mass),
}

impl Weight {
    /// The mass that the load consists of: both sides together, one hand for dumb-bells.
    #[must_use]
    pub fn mass_kg(&self, carrier: &Carrier) -> f64 {
        match self {
            Self::Load(mass) | Self::Bar(mass) | Self::Belt(mass) | Self::BodyMass(mass) => {
                mass.as_kg()
            }
            Self::Plates { each, pairs } => 2.0 * f64::from(*pairs) * each.as_kg(),
            Self::OnePlate { mass, .. } => mass.as_kg(),
            Self::Collars { each } => 2.0 * each.as_kg(),
            Self::Dumbbell(mass) => mass.as_kg() * HangingSide::Both.pieces(1, carrier),
        }
    }
}

/// What the lifter feels of one item, and the mass that has to be sped up with it.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Felt {
    /// Force of the load on the lifter.
    pub force: PlaneForce,
    /// Mass as felt along the path, kg.
    pub moving_mass_kg: f64,
}

/// The machine that stands between a weight and the lifter, if any.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Machine<'a> {
    /// Friction of the sled's rails.
    pub(super) rail_friction: f64,
    /// The cam that takes the place of the machine's round one.
    pub(super) cam: Option<&'a Cam>,
}

impl Machine<'_> {
    /// Radius on which a stack's cable runs at this place over the distance of the pad.
    pub(super) fn cam_over_pad(&self, point: &LoadPoint, carrier: &Carrier) -> f64 {
        match carrier {
            Carrier::Lever { pad_m, cam_m } => {
                let radius_m = self.cam.map_or(*cam_m, |cam| cam.radius_m(point.lever_rad));
                radius_m / pad_m.max(0.01)
            }
            _ => 1.0,
        }
    }
}

/// What the lifter feels of a mass.
///
/// ```text
/// in the hands, on the back   F = m·g downward                              moving mass m
/// on rails at angle a         F = m·g·(sin a ± μ cos a) down the rails      moving mass m
/// on a stack with a cam       F = m·g·r(θ)/p against the pad                moving mass m·(r/p)²
/// ```
/// | symbol | meaning                          | unit | range |
/// | ------ | -------------------------------- | ---- | ----- |
/// | `m`    | mass                             | kg   | ≥ 0   |
/// | `μ`    | friction of the rails            | –    | ≥ 0   |
/// | `r, p` | radius of the cam, pad from joint| m    | > 0   |
///
/// **Shape.** Proportional to the mass; nothing for 0 kg. **Source.** Statics. **Fails.** Never.
pub(super) fn felt_weight(
    mass_kg: f64,
    point: &LoadPoint,
    carrier: &Carrier,
    motion: Motion,
    machine: &Machine,
) -> Felt {
    match carrier {
        Carrier::Bar | Carrier::Dumbbell | Carrier::Body => Felt {
            force: force_along(mass_kg * STANDARD_GRAVITY_M_S2, DOWN),
            moving_mass_kg: mass_kg,
        },
        Carrier::Sled { angle_rad } => {
            let size_n = along_rails_n(mass_kg, *angle_rad, machine.rail_friction, motion);
            Felt {
                force: force_along(-size_n, lifting_direction(point, carrier)),
                moving_mass_kg: mass_kg,
            }
        }
        Carrier::Lever { .. } => {
            let ratio = machine.cam_over_pad(point, carrier);
            let size_n = mass_kg * STANDARD_GRAVITY_M_S2 * ratio;
            Felt {
                force: force_along(-size_n, lifting_direction(point, carrier)),
                moving_mass_kg: mass_kg * ratio * ratio,
            }
        }
    }
}
