//! How the upper arm stands to the trunk, and the shoulder blade with it.
//!
//! In: a direction of the upper arm and of the bending forearm, or an angle in one plane. Out:
//! [`ShoulderPose`], in the trunk's axes: x outward, y forward, z upward, from the joint's centre.

use super::joint::Dof;
use nalgebra::{Matrix3, Vector3};

/// Share of the arm's way that the shoulder blade does: upward with elevation, and round the ribs as the arm
/// goes before or behind the frontal plane.
///
/// **Source.** Inman, Saunders & Abbott 1944 (two to one in elevation, from memory); the same share round the
/// ribs is assumed: reaching forward draws the blade forward, pulling the elbow back draws it back.
const BLADE_SHARE: f64 = 1.0 / 3.0;

/// Orientation of the upper arm and of the shoulder blade in the trunk's axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShoulderPose {
    /// From the upper arm's own axes (x outward, y forward, z upward of the hanging arm) to the trunk's.
    humerus: Matrix3<f64>,
    /// Turn of the blade: upward, and forward round the ribs.
    blade: BladeTurn,
}

/// Turn of the shoulder blade, rad (or rad per unit of range).
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct BladeTurn {
    /// Upward in the frontal plane.
    pub up_rad: f64,
    /// Forward about the trunk's long axis.
    pub forward_rad: f64,
}

impl Default for ShoulderPose {
    fn default() -> Self {
        Self::hanging()
    }
}

impl ShoulderPose {
    /// The arm hangs at the side.
    #[must_use]
    pub fn hanging() -> Self {
        Self {
            humerus: Matrix3::identity(),
            blade: BladeTurn::default(),
        }
    }

    /// The upper arm points along `arm`, and the elbow bends the forearm toward `bend`.
    ///
    /// ```text
    /// z = −u,   y = b − (b·u)u, normalised,   x = y × z
    /// ```
    /// `u` direction from shoulder to elbow, `b` direction of the bending. **Shape.** Orthonormal; a `bend`
    /// along the arm counts as forward. **Fails.** Never.
    #[must_use]
    pub fn of_arm(arm: Vector3<f64>, bend: Vector3<f64>) -> Self {
        let up = -arm.normalize();
        let across = |b: Vector3<f64>| b - up * b.dot(&up);
        let forward = [bend, Vector3::y(), Vector3::z()]
            .into_iter()
            .map(across)
            .find(|b| b.norm() > 1.0e-6)
            .unwrap_or_else(Vector3::x)
            .normalize();
        Self::of_axes(Matrix3::from_columns(&[forward.cross(&up), forward, up]))
    }

    fn of_axes(humerus: Matrix3<f64>) -> Self {
        let elevation = humerus[(2, 2)].clamp(-1.0, 1.0).acos();
        let in_front = (-humerus[(1, 2)]).clamp(-1.0, 1.0).asin();
        Self {
            humerus,
            blade: BladeTurn {
                up_rad: BLADE_SHARE * elevation,
                forward_rad: BLADE_SHARE * in_front,
            },
        }
    }

    /// The arm turned from hanging about an axis of the trunk through the joint's centre.
    #[must_use]
    pub fn turned(axis: Vector3<f64>, angle_rad: f64) -> Self {
        let axis = nalgebra::Unit::new_normalize(axis);
        Self::of_axes(*nalgebra::Rotation3::from_axis_angle(&axis, angle_rad).matrix())
    }

    /// The arm in one plane: flexed, abducted, or at shoulder height and drawn across by an angle.
    #[must_use]
    pub fn in_plane(dof: Dof, angle_rad: f64) -> Self {
        match dof {
            Dof::ShoulderHorizontal => {
                let abducted =
                    Self::turned(axis_of(Dof::ShoulderAbduction), std::f64::consts::FRAC_PI_2);
                let across = nalgebra::Rotation3::from_axis_angle(&Vector3::z_axis(), angle_rad);
                Self::of_axes(across.matrix() * abducted.humerus)
            }
            Dof::ShoulderFlexion | Dof::ShoulderAbduction => Self::turned(axis_of(dof), angle_rad),
            Dof::Elbow | Dof::Lumbar | Dof::Hip | Dof::Knee | Dof::Ankle => Self::hanging(),
        }
    }

    /// Direction from the shoulder to the elbow.
    #[must_use]
    pub fn arm(&self) -> Vector3<f64> {
        -self.humerus.column(2)
    }

    /// Axis about which the elbow bends.
    #[must_use]
    pub fn elbow_axis(&self) -> Vector3<f64> {
        self.humerus.column(0).into_owned()
    }

    /// A place on the upper arm (its own axes) in the trunk's axes.
    #[must_use]
    pub fn on_humerus(&self, place: Vector3<f64>) -> Vector3<f64> {
        self.humerus * place
    }

    /// A place on the shoulder blade of the hanging arm, where the blade has turned to.
    ///
    /// ```text
    /// P' = R_z(forward)·R_−y(up)·P
    /// ```
    #[must_use]
    pub fn on_blade(&self, place: Vector3<f64>) -> Vector3<f64> {
        let (sin, cos) = self.blade.up_rad.sin_cos();
        let up = Vector3::new(
            place.x * cos - place.z * sin,
            place.y,
            place.x * sin + place.z * cos,
        );
        let (sin, cos) = self.blade.forward_rad.sin_cos();
        Vector3::new(up.x * cos - up.y * sin, up.x * sin + up.y * cos, up.z)
    }

    /// The same arm with the blade drawn back round the ribs by so much more, rad.
    #[must_use]
    pub fn drawn_back(mut self, angle_rad: f64) -> Self {
        self.blade.forward_rad -= angle_rad;
        self
    }

    /// Forward as the shoulder blade has it: the trunk's, turned back by what the blade is drawn back beyond its share of
    /// the arm's way.
    ///
    /// ```text
    /// f = (sin δ, cos δ, 0),   δ = φ/3 − ψ
    /// ```
    /// `φ` angle of the arm before the frontal plane, `ψ` forward turn of the blade. **Shape.** A unit vector; the trunk's
    /// forward unless [`ShoulderPose::drawn_back`] was called. **Source.** Geometry. **Fails.** Never.
    #[must_use]
    pub fn forward_of_blade(&self) -> Vector3<f64> {
        let in_front = self.arm().y.clamp(-1.0, 1.0).asin();
        let (sin, cos) = (BLADE_SHARE * in_front - self.blade.forward_rad).sin_cos();
        Vector3::new(sin, cos, 0.0)
    }

    /// How the blade has turned.
    #[must_use]
    pub fn blade(&self) -> BladeTurn {
        self.blade
    }

    /// What the arm's angle is in each plane, seen along that plane's axis, rad.
    #[must_use]
    pub fn angle_rad(&self, dof: Dof) -> f64 {
        let arm = self.arm();
        match dof {
            Dof::ShoulderFlexion => arm.y.atan2(-arm.z),
            Dof::ShoulderAbduction => arm.x.atan2(-arm.z),
            Dof::ShoulderHorizontal => arm.y.atan2(arm.x),
            Dof::Elbow | Dof::Lumbar | Dof::Hip | Dof::Knee | Dof::Ankle => 0.0,
        }
    }

    /// Rotation from one pose to another a small step away (rotation vector), rad.
    ///
    /// ```text
    /// v = ½·(R₃₂ − R₂₃, R₁₃ − R₃₁, R₂₁ − R₁₂),   θ = v·asin|v|/|v|,   R = B·Aᵀ
    /// ```
    /// **Shape.** Exact below a right angle; the antisymmetric part keeps its digits where the cosine does not.
    #[must_use]
    pub fn turn_to(&self, other: &Self) -> Vector3<f64> {
        let r = other.humerus * self.humerus.transpose();
        let v = Vector3::new(
            r[(2, 1)] - r[(1, 2)],
            r[(0, 2)] - r[(2, 0)],
            r[(1, 0)] - r[(0, 1)],
        ) * 0.5;
        let sine = v.norm();
        if sine < 1.0e-300 {
            return v;
        }
        v * (sine.min(1.0).asin() / sine)
    }
}

/// Axis in the trunk about which a shoulder angle grows: flexion about x, abduction about −y, horizontal
/// adduction about z.
#[must_use]
pub fn axis_of(dof: Dof) -> Vector3<f64> {
    match dof {
        Dof::ShoulderFlexion => Vector3::x(),
        Dof::ShoulderAbduction => -Vector3::y(),
        Dof::ShoulderHorizontal => Vector3::z(),
        Dof::Elbow | Dof::Lumbar | Dof::Hip | Dof::Knee | Dof::Ankle => Vector3::zeros(),
    }
}

/// A shoulder in motion: where it is, and how it turns per unit of range.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ShoulderMotion {
    /// Where it is.
    pub pose: ShoulderPose,
    /// Turn of the upper arm in the trunk's axes, rad per unit of range.
    pub turn: Vector3<f64>,
    /// Turn of the blade, rad per unit of range.
    pub blade_turn: BladeTurn,
}

impl ShoulderMotion {
    /// An arm that stands.
    #[must_use]
    pub fn still(pose: ShoulderPose) -> Self {
        Self {
            pose,
            ..Self::default()
        }
    }

    /// Turns about a fixed axis of the trunk, `slope_rad` per unit of range.
    #[must_use]
    pub fn about(pose: ShoulderPose, axis: Vector3<f64>, slope_rad: f64) -> Self {
        let turn = axis * slope_rad;
        // The arm's own speed upward, and forward.
        let arm = pose.arm();
        let speed = turn.cross(&arm);
        let level = (arm.x * arm.x + arm.y * arm.y).sqrt();
        let beside = (1.0 - arm.y * arm.y).max(0.0).sqrt();
        let elevation_turn = if level > 1.0e-6 {
            speed.z / level
        } else {
            turn.xy().norm()
        };
        let forward_turn = if beside > 1.0e-6 {
            speed.y / beside
        } else {
            0.0
        };
        Self {
            pose,
            turn,
            blade_turn: BladeTurn {
                up_rad: BLADE_SHARE * elevation_turn,
                forward_rad: BLADE_SHARE * forward_turn,
            },
        }
    }

    /// Turn of the blade as a vector in the trunk's axes, rad per unit of range.
    ///
    /// ```text
    /// ω = ψ'·z + R_z(ψ)·(−β'·y)
    /// ```
    /// `β` upward, `ψ` forward turn of the blade.
    #[must_use]
    pub fn blade_vector(&self) -> Vector3<f64> {
        let (sin, cos) = self.pose.blade.forward_rad.sin_cos();
        let up = self.blade_turn.up_rad;
        Vector3::new(up * sin, -up * cos, self.blade_turn.forward_rad)
    }
}
