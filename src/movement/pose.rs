//! One pose of the range: what capacity, demand and figures need to know about it.

use super::load_point::{LoadPoint, PlaneForce};
use crate::anatomy::{Dof, ShoulderMotion, axis_of};
use crate::numeric::Point;
use nalgebra::Vector3;

/// A joint angle that moves along the range: one row of the pose's linear programme.
#[derive(Debug, Clone, PartialEq)]
pub struct Coordinate {
    /// Degree of freedom that names it.
    pub dof: Dof,
    /// At the shoulder, the trunk's axis that it turns about; elsewhere 0.
    pub axis: Vector3<f64>,
    /// Angle, rad; at the shoulder that of the arm as seen along the axis.
    pub angle_rad: f64,
    /// Turn per unit of range, rad; at the shoulder the part of the arm's turn about the axis.
    pub slope_rad: f64,
}

impl Coordinate {
    /// An angle of a hinge, or of the shoulder in one plane.
    #[must_use]
    pub fn new(dof: Dof, angle_rad: f64, slope_rad: f64) -> Self {
        Self {
            dof,
            axis: axis_of(dof),
            angle_rad,
            slope_rad,
        }
    }
}

/// A limit that grows with the load: `constant + λ·(per_load · load)`.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ReactionLimit {
    /// Part that does not depend on the load, N or N·m.
    pub constant: f64,
    /// Multiplies the load's force on one side (N): x with x, z with z.
    pub per_load: [f64; 2],
}

/// Where a reaction acts, in the picture.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PushPlace {
    /// A force square to the load, on the hand or foot that bears the load; `way` is its direction, nothing where it leaves the picture.
    WithLoad {
        /// Its direction per unit.
        way: Point,
    },
    /// It moves the place where the load presses.
    MovesLoad,
    /// A force on the body beside the load.
    Beside {
        /// Where it acts, m.
        at: Point,
        /// Its direction per unit.
        way: Point,
        /// Whether the floor pushes.
        is_floor: bool,
    },
    /// It moves the place where the floor presses.
    MovesFloor,
}

/// A force or couple that the surroundings supply as the lifter likes, inside a cone.
#[derive(Debug, Clone, PartialEq)]
pub struct Reaction {
    /// What it is: "lateral", "centre_of_pressure", …
    pub name: &'static str,
    /// Where it acts.
    pub place: PushPlace,
    /// Torque on every coordinate per unit of the reaction.
    pub column: Vec<f64>,
    /// Smallest value.
    pub least: ReactionLimit,
    /// Largest value.
    pub most: ReactionLimit,
}

/// A condition the pose must meet whatever the muscles do, such as balance over the foot:
/// `constant + λ·(per_load · load) + Σ reaction·coefficient = 0`.
#[derive(Debug, Clone, PartialEq)]
pub struct Balance {
    /// Part that does not depend on load and reactions.
    pub constant: f64,
    /// Multiplies the load's force on one side (N).
    pub per_load: [f64; 2],
    /// Coefficient of every reaction, in their order.
    pub reactions: Vec<f64>,
}

/// A sum of what the pose gives, what the load adds and what the reactions add:
/// `constant + per_load · load + Σ reaction·coefficient`.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Affine {
    /// Part that depends on neither load nor reactions.
    pub constant: f64,
    /// Multiplies the load's force on one side (N).
    pub per_load: [f64; 2],
    /// Coefficient of every reaction, in their order.
    pub reactions: Vec<f64>,
}

impl Affine {
    /// Its value for these reactions and this load on one side.
    #[must_use]
    pub fn value(&self, reactions: &[f64], load: PlaneForce) -> f64 {
        let sum: f64 = self
            .reactions
            .iter()
            .zip(reactions)
            .map(|(coefficient, reaction)| coefficient * reaction)
            .sum();
        self.constant + self.per_load[0] * load.x_n + self.per_load[1] * load.z_n + sum
    }
}

/// What a report tells of the reactions: a force of one side, or the place where a force acts.
#[derive(Debug, Clone, PartialEq)]
pub struct ReactionReading {
    /// Its name with the unit, such as "lateral_n" or "centre_of_pressure_m".
    pub name: &'static str,
    /// The force (N), or the moment (N·m) that `over` turns into a place.
    pub value: Affine,
    /// The force that the moment is divided by, N.
    pub over: Option<Affine>,
}

impl ReactionReading {
    /// The reading at these reactions and this load on one side; `None` where nothing presses.
    #[must_use]
    pub fn at(&self, reactions: &[f64], load: PlaneForce) -> Option<f64> {
        /// A force too small to have a place, N.
        const NOTHING_N: f64 = 1.0e-6;
        let value = self.value.value(reactions, load);
        match &self.over {
            None => Some(value),
            Some(force) => {
                let force_n = force.value(reactions, load);
                (force_n.abs() > NOTHING_N).then(|| value / force_n)
            }
        }
    }
}

/// From where a stick figure is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum View {
    /// From the side; a bar is seen from its end.
    #[default]
    Side,
    /// From the front; a bar is a line among the props.
    Front,
}

/// Lines of the body in a pose, for a stick figure.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct BodyOutline {
    /// From where it is seen.
    pub view: View,
    /// Chains of joint centres, m.
    pub limbs: Vec<Vec<Point>>,
    /// Centre of the head, if it is in the picture.
    pub head: Option<Point>,
    /// Lines of bench, seat, ground, rack, and of a bar seen from the front.
    pub props: Vec<Vec<Point>>,
    /// Where the load is drawn.
    pub load: Point,
    /// Centre of the joint of every coordinate, in their order.
    pub centres: Vec<Point>,
}

/// The body at one place of the range.
#[derive(Debug, Clone, PartialEq)]
pub struct Pose {
    /// Angles that move, one a row of the programme.
    pub coordinates: Vec<Coordinate>,
    /// Angles that stand, with their values in rad: they set muscle lengths only.
    pub held: Vec<(Dof, f64)>,
    /// How the shoulder stands and turns.
    pub shoulder: ShoulderMotion,
    /// Where the load acts and how that point moves.
    pub load: LoadPoint,
    /// Torque on every coordinate per newton of the load's force on one side: x and z parts.
    pub load_jacobian: Vec<Point>,
    /// Torque of the limbs' own weight on every coordinate, N·m, one side.
    pub gravity_nm: Vec<f64>,
    /// Forces that the surroundings supply freely.
    pub reactions: Vec<Reaction>,
    /// Conditions beside the joints' equilibrium.
    pub balances: Vec<Balance>,
    /// What a report tells of the reactions.
    pub readings: Vec<ReactionReading>,
    /// Effective mass of the limbs of one side along the range, kg·m² per unit range squared.
    pub limb_inertia: f64,
    /// Lines for a stick figure.
    pub outline: BodyOutline,
}
