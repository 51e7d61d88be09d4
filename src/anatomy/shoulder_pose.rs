//! How the upper arm stands to the trunk, and the shoulder blade with it.
//!
//! In: a direction of the upper arm and of the bending forearm, or an angle in one plane. Out:
//! [`ShoulderPose`], in the trunk's axes: x outward, y forward, z upward, from the joint's centre.

use super::joint::Dof;
use nalgebra::{Matrix3, Vector3};

/// Share of the arm's elevation that the shoulder blade does.
///
/// **Source.** Inman, Saunders & Abbott 1944 (two to one, from memory); the blade is taken to turn upward in
/// the frontal plane whatever the plane of the arm.
const BLADE_SHARE: f64 = 1.0 / 3.0;

/// Orientation of the upper arm and of the shoulder blade in the trunk's axes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShoulderPose {
    /// From the upper arm's own axes (x outward, y forward, z upward of the hanging arm) to the trunk's.
    humerus: Matrix3<f64>,
    /// Upward turn of the blade, rad.
    blade_rad: f64,
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
            blade_rad: 0.0,
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
        Self {
            humerus,
            blade_rad: BLADE_SHARE * elevation,
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
    #[must_use]
    pub fn on_blade(&self, place: Vector3<f64>) -> Vector3<f64> {
        let (sin, cos) = self.blade_rad.sin_cos();
        Vector3::new(
            place.x * cos - place.z * sin,
            place.y,
            place.x * sin + place.z * cos,
        )
    }

    /// Upward turn of the blade, rad.
    #[must_use]
    pub fn blade_rad(&self) -> f64 {
        self.blade_rad
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
    /// Upward turn of the blade, rad per unit of range.
    pub blade_turn: f64,
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
        // d(elevation)/dt: the arm's own speed along the direction of rising.
        let arm = pose.arm();
        let rise = turn.cross(&arm).z;
        let level = (arm.x * arm.x + arm.y * arm.y).sqrt();
        let elevation_turn = if level > 1.0e-6 {
            rise / level
        } else {
            turn.xy().norm()
        };
        Self {
            pose,
            turn,
            blade_turn: BLADE_SHARE * elevation_turn,
        }
    }

    /// Turn of the blade as a vector in the trunk's axes.
    #[must_use]
    pub fn blade_vector(&self) -> Vector3<f64> {
        -Vector3::y() * self.blade_turn
    }
}
