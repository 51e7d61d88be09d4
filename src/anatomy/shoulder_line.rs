//! A muscle's line across the shoulder: from the trunk or the shoulder blade to the upper arm.
//!
//! In: where it starts and ends, and the radius that it cannot cut through, from a model file. Out:
//! [`LineAtPose`]: its length, and its moment about the joint's centre for a unit of force.

use super::shoulder_pose::{ShoulderMotion, ShoulderPose};
use crate::source::Source;
use crate::units::Length;
use nalgebra::Vector3;
use serde::{Deserialize, Serialize};

/// A muscle's line across the shoulder, for the hanging arm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ShoulderLine {
    /// What its start is fixed to.
    pub starts_on: LineStart,
    /// Start of its last straight part (of the one before the blade, where it passes that), from the joint's centre.
    pub origin: LinePlace,
    /// A place of the shoulder blade that it passes on its way from the trunk, from the joint's centre.
    #[serde(default)]
    pub over_blade: Option<LinePlace>,
    /// Where it ends on the upper arm (or passes its far end), from the joint's centre.
    pub insertion: LinePlace,
    /// Radius about the joint's centre that the line bends round.
    pub wrap: Length,
    /// Multiplies every length; 1 unless a body is scaled or a value is set.
    #[serde(default = "one")]
    pub scale: f64,
    /// Where places and radius come from.
    pub source: Source,
}

fn one() -> f64 {
    1.0
}

/// What the start of a line is fixed to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum LineStart {
    /// Ribs, spine, pelvis, inner collar bone.
    Trunk,
    /// Shoulder blade or outer collar bone: it turns upward with the arm.
    Blade,
}

/// A place by its distances from the joint's centre, the arm hanging.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LinePlace {
    /// Outward.
    pub out: Length,
    /// Forward.
    pub forward: Length,
    /// Upward.
    pub up: Length,
}

impl LinePlace {
    fn vector_m(self, scale: f64) -> Vector3<f64> {
        Vector3::new(self.out.as_m(), self.forward.as_m(), self.up.as_m()) * scale
    }
}

/// A line in SI, ready to be evaluated.
#[derive(Debug, Clone, Copy)]
pub struct ShoulderPath {
    starts_on: LineStart,
    origin_m: Vector3<f64>,
    over_blade_m: Option<Vector3<f64>>,
    insertion_m: Vector3<f64>,
    wrap_m: f64,
}

/// A line at a pose.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LineAtPose {
    /// Length from start to end, m.
    pub length_m: f64,
    /// Moment of a unit of tension on the upper arm about the joint's centre, trunk's axes, m.
    pub moment_m: Vector3<f64>,
    /// Moment on the shoulder blade of what comes from the trunk to it, m: 0 where the line does not pass it.
    pub before_blade_m: Vector3<f64>,
    /// Where the part that goes to the upper arm starts: on trunk or blade, trunk's axes, m.
    pub last_start_m: Vector3<f64>,
    /// Whether that part bends round the ball.
    pub is_bent: bool,
}

impl ShoulderLine {
    /// The line ready to be evaluated.
    #[must_use]
    pub fn path(&self) -> ShoulderPath {
        ShoulderPath {
            starts_on: self.starts_on,
            origin_m: self.origin.vector_m(self.scale),
            over_blade_m: self.over_blade.map(|place| place.vector_m(self.scale)),
            insertion_m: self.insertion.vector_m(self.scale),
            wrap_m: self.wrap.as_m() * self.scale,
        }
    }
}

impl ShoulderPath {
    /// Length and moment at a pose.
    ///
    /// ```text
    /// d = |I × S|/|S − I|,  R' = min(R, |S|, |I|)
    /// straight (d ≥ R'):  L = |S − I|                     m = I × S/|S − I|
    /// wrapped  (d < R'):  L = √(|S|² − R'²) + √(|I|² − R'²) + R'·(γ − acos(R'/|S|) − acos(R'/|I|))
    ///                     m = R'·(I × S)/|I × S|
    /// past the blade at V:  S = V,  L grows by |V − O|,  b = V × (O − V)/|V − O|;   else  S = O,  b = 0
    /// ```
    /// | symbol   | meaning                                                   | unit |
    /// | -------- | --------------------------------------------------------- | ---- |
    /// | `O`, `I` | start and end of the line from the joint's centre         | m    |
    /// | `V`      | place of the shoulder blade that it passes, turned with it | m   |
    /// | `S`      | start of the part that goes to the upper arm              | m    |
    /// | `R`      | radius of the ball that the line bends round              | m    |
    /// | `γ`      | angle between `S` and `I`                                 | rad  |
    /// | `m`, `b` | moment of a unit of tension on the upper arm, on the blade | m   |
    ///
    /// A turn `δ` of the upper arm shortens the line by `m·δ`: r = −dL/dq about every axis by construction.
    /// **Shape.** C¹ where the line leaves the ball. Where `S` and `I` come to lie opposite each other the line would
    /// go round the ball's other side; a broad muscle that wanders so far is led past the blade.
    /// **Source.** Geometry (tangents to a sphere).
    /// **Fails.** Never; where start, centre and end lie in one line the last direction is undetermined and
    /// the moment is 0.
    #[must_use]
    pub fn at(&self, pose: &ShoulderPose) -> LineAtPose {
        let origin = match self.starts_on {
            LineStart::Trunk => self.origin_m,
            LineStart::Blade => pose.on_blade(self.origin_m),
        };
        let insertion = pose.on_humerus(self.insertion_m);
        let Some(over_blade) = self.over_blade_m else {
            return self.to_arm(origin, insertion);
        };
        let via = pose.on_blade(over_blade);
        let before = origin - via;
        let before_m = before.norm().max(1.0e-6);
        let last = self.to_arm(via, insertion);
        LineAtPose {
            length_m: last.length_m + before_m,
            before_blade_m: via.cross(&before) / before_m,
            ..last
        }
    }

    /// The part that goes to the upper arm, straight or round the ball.
    fn to_arm(self, start: Vector3<f64>, insertion: Vector3<f64>) -> LineAtPose {
        let cross = insertion.cross(&start);
        let sine = cross.norm();
        let (from_m, to_m) = (start.norm(), insertion.norm());
        let straight_m = (start - insertion).norm().max(1.0e-6);
        let radius = self.wrap_m.min(from_m).min(to_m);
        let angle = sine.atan2(start.dot(&insertion));
        let corner = |far: f64| (radius / far.max(1.0e-9)).clamp(-1.0, 1.0).acos();
        let bent = angle - corner(from_m) - corner(to_m);
        let leg = |far: f64| (far * far - radius * radius).max(0.0).sqrt();
        let is_bent = bent > 0.0;
        let (length_m, moment_m) = if is_bent {
            let arc_m = radius * bent;
            let moment_m = cross * (radius / sine.max(1.0e-12));
            (leg(from_m) + leg(to_m) + arc_m, moment_m)
        } else {
            (straight_m, cross / straight_m)
        };
        LineAtPose {
            length_m,
            moment_m,
            before_blade_m: Vector3::zeros(),
            last_start_m: start,
            is_bent,
        }
    }

    /// Shortening of the line per unit of range, m.
    ///
    /// ```text
    /// −dL/ds = m·(ω − ω_start) + b·ω_blade
    /// ```
    /// `ω` turn of the upper arm per unit of range, `ω_start` that of what the part to the upper arm starts on,
    /// `ω_blade` that of the shoulder blade.
    #[must_use]
    pub fn shortening_m(&self, at: &LineAtPose, motion: &ShoulderMotion) -> f64 {
        let blade = motion.blade_vector();
        let start = match self.starts_on {
            LineStart::Trunk if self.over_blade_m.is_none() => Vector3::zeros(),
            LineStart::Trunk | LineStart::Blade => blade,
        };
        let before = match self.starts_on {
            LineStart::Trunk => at.before_blade_m.dot(&blade),
            LineStart::Blade => 0.0,
        };
        at.moment_m.dot(&(motion.turn - start)) + before
    }

    /// What the shoulder blade's own muscles do for a unit of this muscle's tension, per unit of range, m.
    #[must_use]
    pub fn by_blade_m(&self, at: &LineAtPose, motion: &ShoulderMotion) -> f64 {
        at.moment_m.dot(&motion.turn) - self.shortening_m(at, motion)
    }
}
