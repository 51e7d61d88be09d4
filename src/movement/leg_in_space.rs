//! One leg in space: a foot beside the middle of the body and turned out, the hip above it, the knee
//! over the foot.
//!
//! In: segments, how far the feet are apart and turned out. Out: [`LegInSpace`], and for every place of
//! the hip a [`PlacedLeg`]: angles in the leg's own plane and how parts of it move with the hip.
//!
//! ```text
//! plane of the leg: through hip H, ankle A and the direction f of the foot
//! K = A + a·u + b·k,   u = (H − A)/d,   k = (f − (f·u)·u)/|…|
//! a = (s² + d² − t²)/(2d),   b = √(s² − a²)
//! ```
//! `K` knee, `d` hip to ankle, `s` shank, `t` thigh (m). Ankle, knee and hip turn as hinges square to that
//! plane, and muscles, whose arms are known for the sagittal plane, act in it. Nothing is asked of the
//! muscles beside the hip: what holds both legs in their planes is the sideways push of the feet on the
//! floor, which then aims from the foot through the leg's plane, and the other leg by way of the pelvis.
//! **Source.** Rigid-body kinematics; the knee over the foot is the textbooks' rule for wide stances.

use super::linkage::Link;
use crate::error::LinksFault;
use crate::numeric::Point;
use crate::source::Source;
use crate::units::{Angle, Length};
use nalgebra::{Matrix3, Vector3};
use serde::{Deserialize, Serialize};

/// Where the feet stand.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Feet {
    /// Distance between the ankles.
    pub between: Length,
    /// How far each foot is turned out.
    pub turned_out: Angle,
    /// Where both come from.
    pub source: Source,
}

/// A leg ready to be placed: x forward, y outward from the hip, z up, the ankle at x = 0.
#[derive(Debug, Clone)]
pub(super) struct LegInSpace {
    /// From the ankle up.
    shank: Link,
    /// From the knee up.
    thigh: Link,
    ankle: Vector3<f64>,
    /// Direction of the foot.
    forward: Vector3<f64>,
}

/// A leg under a place of the hip.
#[derive(Debug, Clone, Copy)]
pub(super) struct PlacedLeg {
    hip: Vector3<f64>,
    /// Knee.
    pub knee: Vector3<f64>,
    /// Direction of the thigh from hip to knee, and what is in front of it in the leg's plane.
    thigh: Vector3<f64>,
    front: Vector3<f64>,
    /// Lean of the shank forward as seen from the side, rad.
    pub lean_rad: f64,
    /// Dorsiflexion, the shank against the foot, rad.
    pub ankle_rad: f64,
    /// Flexion of the knee, rad.
    pub knee_rad: f64,
}

/// How hip and pelvis move with the angles of one leg: columns of ankle, knee and hip; rows of hip
/// forward, hip up (m/rad) and turn of the pelvis (rad/rad).
pub(super) type HipMotion = Matrix3<f64>;

impl LegInSpace {
    /// A leg of these links (from the ankle up) under a hip so far from the middle.
    pub(super) fn new(
        shank: Link,
        thigh: Link,
        ankle_m: f64,
        hip_aside_m: f64,
        feet: &Feet,
    ) -> Self {
        let (sin, cos) = feet.turned_out.as_rad().sin_cos();
        Self {
            shank,
            thigh,
            ankle: Vector3::new(0.0, 0.5 * feet.between.as_m() - hip_aside_m, ankle_m),
            forward: Vector3::new(cos, sin, 0.0),
        }
    }

    /// How long a foot looks from the side, as a share of its length.
    pub(super) fn foot_share(&self) -> f64 {
        self.forward.x
    }

    pub(super) fn shank_m(&self) -> f64 {
        self.shank.length_m
    }

    pub(super) fn thigh_m(&self) -> f64 {
        self.thigh.length_m
    }

    /// How far the hip is from the level of the ankle, in the sagittal plane, with the knee bent so, m.
    pub(super) fn span_m(&self, knee: f64) -> f64 {
        let (s, t) = (self.shank.length_m, self.thigh.length_m);
        let squared = s * s + t * t + 2.0 * s * t * knee.cos() - self.ankle.y.powi(2);
        squared.max(0.0).sqrt()
    }

    fn reach_m(&self) -> f64 {
        self.shank.length_m + self.thigh.length_m
    }

    /// Why this place of the hip is out of the leg's reach, if it is.
    pub(super) fn out_of_reach(&self, hip: Point) -> Option<LinksFault> {
        let needed = (Vector3::new(hip.x, 0.0, hip.z) - self.ankle).norm();
        let nearest = (self.shank.length_m - self.thigh.length_m).abs();
        if needed > self.reach_m() {
            let reach = self.reach_m();
            Some(LinksFault::TooFar { reach, needed })
        } else if needed < nearest {
            Some(LinksFault::TooNear { nearest, needed })
        } else {
            None
        }
    }

    /// The leg under a hip; out of its reach, straight or folded in the hip's direction.
    pub(super) fn under(&self, hip: Point) -> PlacedLeg {
        let hip = Vector3::new(hip.x, 0.0, hip.z);
        let (shank_m, thigh_m) = (self.shank.length_m, self.thigh.length_m);
        let line = hip - self.ankle;
        let far = line.norm().max(1.0e-9);
        let up = line / far;
        let d = far.clamp((shank_m - thigh_m).abs().max(1.0e-9), shank_m + thigh_m);
        let side = (self.forward - up * self.forward.dot(&up)).normalize();
        let along = (shank_m * shank_m + d * d - thigh_m * thigh_m) / (2.0 * d);
        let out = (shank_m * shank_m - along * along).max(0.0).sqrt();
        let knee = self.ankle + up * along + side * out;
        // Thigh from hip to knee in the axes `up` and `side` of the plane, and a quarter turn ahead of it.
        let thigh = ((along - d) / thigh_m, out / thigh_m);
        let shank = (knee - self.ankle) / shank_m;
        let bend = (d * d - shank_m * shank_m - thigh_m * thigh_m) / (2.0 * shank_m * thigh_m);
        PlacedLeg {
            hip,
            knee,
            thigh: up * thigh.0 + side * thigh.1,
            front: up * thigh.1 - side * thigh.0,
            lean_rad: shank.x.atan2(shank.z),
            ankle_rad: shank.dot(&self.forward).clamp(-1.0, 1.0).asin(),
            knee_rad: bend.clamp(-1.0, 1.0).acos(),
        }
    }

    /// Angles of ankle, knee and hip under a hip with the pelvis in this direction, rad.
    fn angles(&self, hip: Point, pelvis_rad: f64) -> Vector3<f64> {
        let leg = self.under(hip);
        Vector3::new(leg.ankle_rad, leg.knee_rad, leg.hip_rad(pelvis_rad))
    }

    /// How hip and pelvis move with the leg's angles: the inverse of how the angles change with them.
    ///
    /// `None` where the knee is straight and does not say how far the hip is away.
    pub(super) fn hip_motion(&self, hip: Point, pelvis_rad: f64) -> Option<HipMotion> {
        let change = |way: Point, turn: f64| {
            slope(|step| self.angles(hip + way * step, pelvis_rad + turn * step))
        };
        Matrix3::from_columns(&[
            change(Point::new(1.0, 0.0), 0.0),
            change(Point::new(0.0, 1.0), 0.0),
            change(Point::ORIGIN, 1.0),
        ])
        .try_inverse()
    }

    /// Mass of shank and thigh, kg.
    pub(super) fn mass_kg(&self) -> f64 {
        self.shank.mass_kg + self.thigh.mass_kg
    }

    /// Sum of mass times place of shank and thigh in the sagittal plane, kg·m.
    pub(super) fn mass_moment_kg_m(&self, leg: &PlacedLeg) -> Point {
        let (shank, thigh) = self.centres(leg);
        let sum = shank * self.shank.mass_kg + thigh * self.thigh.mass_kg;
        Point::new(sum.x, sum.z)
    }

    fn centres(&self, leg: &PlacedLeg) -> (Vector3<f64>, Vector3<f64>) {
        let share = |link: &Link| link.centre_m / link.length_m;
        (
            self.ankle.lerp(&leg.knee, share(&self.shank)),
            leg.knee.lerp(&leg.hip, share(&self.thigh)),
        )
    }

    /// How the height of that sum changes as the hip moves forward and up, kg·m per m.
    pub(super) fn raised_kg_m(&self, hip: Point) -> Point {
        let height = |way: Point| {
            slope(|step| {
                let leg = self.under(hip + way * step);
                Vector3::new(self.mass_moment_kg_m(&leg).z, 0.0, 0.0)
            })
            .x
        };
        Point::new(height(Point::new(1.0, 0.0)), height(Point::new(0.0, 1.0)))
    }

    /// Effective mass of shank and thigh while the hip moves so per unit of range, kg·m².
    ///
    /// Each is a rod: `m·|dC/ds|² + I·|d(direction)/ds|²`, `C` its centre of mass.
    pub(super) fn effective_mass(&self, hip: Point, speed: Point) -> f64 {
        let moved = |step: f64| self.under(hip + speed * step);
        let (shank_m, thigh_m) = (self.shank.length_m, self.thigh.length_m);
        let knee = slope(|step| moved(step).knee);
        let shank = slope(|step| self.centres(&moved(step)).0);
        let thigh = slope(|step| self.centres(&moved(step)).1);
        let hip = Vector3::new(speed.x, 0.0, speed.z);
        self.shank.mass_kg * shank.norm_squared()
            + self.shank.inertia_kg_m2 * (knee / shank_m).norm_squared()
            + self.thigh.mass_kg * thigh.norm_squared()
            + self.thigh.inertia_kg_m2 * ((hip - knee) / thigh_m).norm_squared()
    }
}

impl PlacedLeg {
    /// Flexion of the hip in the leg's plane under a pelvis that points this way, rad: the angle from
    /// the thigh to the pelvis as seen square to the plane.
    pub(super) fn hip_rad(&self, pelvis_rad: f64) -> f64 {
        let pelvis = Vector3::new(pelvis_rad.cos(), 0.0, pelvis_rad.sin());
        pelvis.dot(&self.front).atan2(-pelvis.dot(&self.thigh))
    }

    /// How far the thigh falls from the hip to the knee, rad: negative where the hip is the lower end.
    pub(super) fn thigh_fall_rad(&self) -> f64 {
        (-self.thigh.z).clamp(-1.0, 1.0).asin()
    }
}

/// Derivative at 0 by a central difference of fourth order (error near 1e-12 but for a straight knee).
fn slope(of: impl Fn(f64) -> Vector3<f64>) -> Vector3<f64> {
    const STEP: f64 = 2.0e-4;
    let near = of(STEP) - of(-STEP);
    let far = of(2.0 * STEP) - of(-2.0 * STEP);
    (near * 8.0 - far) / (12.0 * STEP)
}
