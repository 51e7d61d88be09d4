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
//! `K` knee, `d` hip to ankle, `s` shank, `t` thigh (m). Ankle and knee turn as hinges square to that plane;
//! the hip's angle is that from thigh to pelvis as seen square to it, and muscles, whose arms are known
//! for the sagittal plane, act on these angles. Spreading the legs and turning the thigh ask nothing of
//! muscles: what holds both legs in their planes is the sideways push of the feet on the floor, which aims
//! from the foot through the leg's plane, and the other leg by way of the pelvis. The hip's torque is then
//! more than the sagittal moment, by as much as the force of the floor acts outside the hip.
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

/// The plane of a leg, and the knee in it.
#[derive(Debug, Clone, Copy)]
struct LegPlane {
    /// Axes of the leg's plane: from the ankle to the hip, and square to that to the side of the foot.
    up: Vector3<f64>,
    side: Vector3<f64>,
    /// Ankle to hip, and the knee in those axes from the ankle, m.
    far_m: f64,
    knee_up_m: f64,
    knee_out_m: f64,
    knee: Vector3<f64>,
}

/// A leg under a place of the hip.
#[derive(Debug, Clone, Copy)]
pub(super) struct PlacedLeg {
    hip: Vector3<f64>,
    plane: LegPlane,
    /// Direction of the thigh from hip to knee, and what is in front of it in the leg's plane.
    thigh: Vector3<f64>,
    front: Vector3<f64>,
    /// Dorsiflexion, the shank against the foot, rad.
    pub ankle_rad: f64,
    /// Flexion of the knee, rad.
    pub knee_rad: f64,
}

/// How a placed leg changes per metre of a way of its hip.
#[derive(Debug, Clone, Copy)]
struct LegChange {
    knee: Vector3<f64>,
    thigh: Vector3<f64>,
    front: Vector3<f64>,
    ankle_rad: f64,
    knee_rad: f64,
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

    /// The plane of the leg under a hip and where the knee is in it; out of reach, straight or folded in the hip's
    /// direction.
    fn plane_under(&self, hip: Vector3<f64>) -> LegPlane {
        let (shank_m, thigh_m) = (self.shank.length_m, self.thigh.length_m);
        let line = hip - self.ankle;
        let far_m = line.norm().max(1.0e-9);
        let up = line / far_m;
        let d = far_m.clamp((shank_m - thigh_m).abs().max(1.0e-9), shank_m + thigh_m);
        let side = (self.forward - up * self.forward.dot(&up)).normalize();
        let along = (shank_m * shank_m + d * d - thigh_m * thigh_m) / (2.0 * d);
        let out = (shank_m * shank_m - along * along).max(0.0).sqrt();
        LegPlane {
            up,
            side,
            far_m: d,
            knee_up_m: along,
            knee_out_m: out,
            knee: self.ankle + up * along + side * out,
        }
    }

    /// Lean of the shank forward under a hip as seen from the side, rad.
    pub(super) fn lean_under(&self, hip: Point) -> f64 {
        let shank = self.plane_under(Vector3::new(hip.x, 0.0, hip.z)).knee - self.ankle;
        shank.x.atan2(shank.z)
    }

    /// The leg under a hip; out of its reach, straight or folded in the hip's direction.
    pub(super) fn under(&self, hip: Point) -> PlacedLeg {
        let hip = Vector3::new(hip.x, 0.0, hip.z);
        let plane = self.plane_under(hip);
        let (shank_m, thigh_m) = (self.shank.length_m, self.thigh.length_m);
        let (d, along, out) = (plane.far_m, plane.knee_up_m, plane.knee_out_m);
        // Thigh from hip to knee in the axes of the plane, and a quarter turn ahead of it.
        let thigh = ((along - d) / thigh_m, out / thigh_m);
        let shank = (plane.knee - self.ankle) / shank_m;
        let bend = (d * d - shank_m * shank_m - thigh_m * thigh_m) / (2.0 * shank_m * thigh_m);
        PlacedLeg {
            hip,
            thigh: plane.up * thigh.0 + plane.side * thigh.1,
            front: plane.up * thigh.1 - plane.side * thigh.0,
            ankle_rad: shank.dot(&self.forward).clamp(-1.0, 1.0).asin(),
            knee_rad: bend.clamp(-1.0, 1.0).acos(),
            plane,
        }
    }

    /// How the leg changes when its hip moves this way (derivatives of [`LegInSpace::under`]).
    ///
    /// ```text
    /// dd = u·dH,  du = (dH − u·dd)/d,  dk = (dw − k(k·dw))/|w|,  w = f − (f·u)u
    /// da = (1 − a/d)·dd,  db = −a·da/b,  dK = u·da + a·du + k·db + b·dk
    /// dknee = −d·dd/(s·t·sin knee),   dankle = f·dK/(s·cos ankle)
    /// ```
    fn change(&self, leg: &PlacedLeg, way: Vector3<f64>) -> LegChange {
        let (shank_m, thigh_m) = (self.shank.length_m, self.thigh.length_m);
        let (up, side, d) = (leg.plane.up, leg.plane.side, leg.plane.far_m);
        let (along, out) = (leg.plane.knee_up_m, leg.plane.knee_out_m);
        let farther = up.dot(&way);
        let turned = (way - up * farther) / d;
        let slant = self.forward.dot(&up);
        let square = (self.forward - up * slant).norm();
        let tilted = -up * self.forward.dot(&turned) - turned * slant;
        let swung = (tilted - side * side.dot(&tilted)) / square;
        let along_by = (1.0 - along / d) * farther;
        let out_by = -along * along_by / out;
        let knee = up * along_by + turned * along + side * out_by + swung * out;
        let front = turned * out + up * out_by - swung * (along - d) - side * (along_by - farther);
        LegChange {
            knee,
            thigh: (knee - way) / thigh_m,
            front: front / thigh_m,
            ankle_rad: self.forward.dot(&knee) / (shank_m * leg.ankle_rad.cos()),
            knee_rad: -d * farther / (shank_m * thigh_m * leg.knee_rad.sin()),
        }
    }

    /// How hip and pelvis move with the leg's angles: the inverse of how the angles change with them.
    ///
    /// `None` where the knee is straight and does not say how far the hip is away.
    pub(super) fn hip_motion(&self, leg: &PlacedLeg, pelvis_rad: f64) -> Option<HipMotion> {
        let pelvis = Vector3::new(pelvis_rad.cos(), 0.0, pelvis_rad.sin());
        let (ahead, against) = (pelvis.dot(&leg.front), -pelvis.dot(&leg.thigh));
        let hip = |ahead_by: f64, against_by: f64| {
            (against * ahead_by - ahead * against_by) / (ahead * ahead + against * against)
        };
        let moved = |way: Vector3<f64>| {
            let by = self.change(leg, way);
            let turn = hip(pelvis.dot(&by.front), -pelvis.dot(&by.thigh));
            Vector3::new(by.ankle_rad, by.knee_rad, turn)
        };
        let tipped = Vector3::new(-pelvis.z, 0.0, pelvis.x);
        let turned = hip(tipped.dot(&leg.front), -tipped.dot(&leg.thigh));
        let angles = Matrix3::from_columns(&[
            moved(Vector3::x()),
            moved(Vector3::z()),
            Vector3::new(0.0, 0.0, turned),
        ]);
        angles
            .try_inverse()
            .filter(|m| m.iter().all(|x| x.is_finite()))
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
            self.ankle.lerp(&leg.plane.knee, share(&self.shank)),
            leg.plane.knee.lerp(&leg.hip, share(&self.thigh)),
        )
    }

    /// How the height of that sum changes as the hip moves forward and up, kg·m per m.
    pub(super) fn raised_kg_m(&self, leg: &PlacedLeg) -> Point {
        let [shank, thigh] = self.raised_m(leg);
        shank * self.shank.mass_kg + thigh * self.thigh.mass_kg
    }

    /// How the centres of shank and thigh rise as the hip moves forward and up, m per m.
    pub(super) fn raised_m(&self, leg: &PlacedLeg) -> [Point; 2] {
        let ahead = self.centres_change(leg, Vector3::x());
        let up = self.centres_change(leg, Vector3::z());
        [Point::new(ahead.0.z, up.0.z), Point::new(ahead.1.z, up.1.z)]
    }

    /// Masses of shank and thigh, kg.
    pub(super) const fn masses_kg(&self) -> [f64; 2] {
        [self.shank.mass_kg, self.thigh.mass_kg]
    }

    fn centres_change(&self, leg: &PlacedLeg, way: Vector3<f64>) -> (Vector3<f64>, Vector3<f64>) {
        let knee = self.change(leg, way).knee;
        let share = |link: &Link| link.centre_m / link.length_m;
        (
            knee * share(&self.shank),
            knee.lerp(&way, share(&self.thigh)),
        )
    }

    /// Effective mass of shank and thigh while the hip moves so per unit of range, kg·m².
    ///
    /// Each is a rod: `m·|dC/ds|² + I·|d(direction)/ds|²`, `C` its centre of mass.
    pub(super) fn effective_mass(&self, leg: &PlacedLeg, speed: Point) -> f64 {
        let way = Vector3::new(speed.x, 0.0, speed.z);
        let by = self.change(leg, way);
        let (shank, thigh) = self.centres_change(leg, way);
        self.shank.mass_kg * shank.norm_squared()
            + self.shank.inertia_kg_m2 * (by.knee / self.shank.length_m).norm_squared()
            + self.thigh.mass_kg * thigh.norm_squared()
            + self.thigh.inertia_kg_m2 * by.thigh.norm_squared()
    }
}

impl PlacedLeg {
    /// The knee.
    pub(super) const fn knee(&self) -> Vector3<f64> {
        self.plane.knee
    }

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
