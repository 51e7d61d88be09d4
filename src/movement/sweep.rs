//! Sweep: one joint moves through its range while the others stand.
//!
//! In: the joint, its first and last angle, which limb it carries, how the body is placed. Out: poses
//! with one coordinate.

use super::limb_lines::BodyLines;
use super::limb_weight::{BodyPart, LimbWeight, limbs_of};
use super::linkage::{Link, Linkage, along, forearm_and_hand};
use super::load_point::{Carrier, LoadPoint};
use super::pose::{Coordinate, Pose};
use super::record::Movement;
use super::sweep_outline::Drawn;
use super::sweep_record::{SweepRecord, SweptLimb};
use super::traced_path::TracedPath;
use crate::anatomy::{
    Dof, HIP_OF_THIGH_ON_TRUNK, Lifter, SegmentName, ShoulderMotion, ShoulderPose,
};
use crate::error::Result;
use crate::numeric::Point;
use nalgebra::Vector3;
use std::f64::consts::{FRAC_PI_2, PI};

/// A sweep ready for a lifter.
#[derive(Debug, Clone)]
pub struct SweepPath {
    record: SweepRecord,
    held: Vec<(Dof, f64)>,
    /// Turn of the shoulder's plane from the frontal one toward the front, rad.
    forward_rad: f64,
    linkage: Linkage,
    /// Link that carries the load, and where along it the load acts, m.
    load_at: (usize, f64),
    /// Force on the moving limb per newton of the load: (x, z), or `None` for one square to the limb.
    pull: LimbPull,
    drawn: Drawn,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum LimbPull {
    /// The load hangs from the limb.
    Hangs,
    /// The ground pushes up under the foot what the body weighs.
    Ground,
    /// A lever's pad pushes square to the limb, against the movement.
    Square,
}

impl SweepPath {
    /// The sweep of a movement for a lifter.
    ///
    /// **Fails** if a technique parameter is missing.
    pub fn new(record: &SweepRecord, movement: &Movement, lifter: &Lifter) -> Result<Self> {
        let mut given = Vec::new();
        for (dof, name) in &record.held {
            given.push((*dof, movement.angle_rad(name)?.unwrap_or(0.0)));
        }
        let held: Vec<(Dof, f64)> = given
            .iter()
            .map(|(dof, angle)| held_at(*dof, *angle))
            .collect();
        let forward_rad = match &record.plane {
            Some(name) => movement.angle_rad(name)?.unwrap_or(0.0),
            None => 0.0,
        };
        let lean_rad = if record.leans() && movement.technique.contains_key("torso_angle") {
            movement.angle_rad("torso_angle")?.unwrap_or(0.0)
        } else {
            0.0
        };
        let (linkage, load_at) = chain(record, &held, lean_rad, lifter);
        let (pull, load_at) = match (movement.carrier()?, record.limb) {
            (Carrier::Lever { pad_m, .. }, _) => (LimbPull::Square, (load_at.0, pad_m)),
            (_, SweptLimb::Foot) => (LimbPull::Ground, load_at),
            _ => (LimbPull::Hangs, load_at),
        };
        let drawn = Drawn {
            figure: BodyLines::of(lifter),
            body: record.body,
            lean_rad,
            limb: record.limb,
            shoulder_rad: angle_of(&held, Dof::ShoulderFlexion),
            hip_rad: angle_of(&given, Dof::Hip),
            knee_rad: angle_of(&held, Dof::Knee),
            forward: forward_rad.sin().powi(2),
            ball_m: lifter.build.ankle_to_ball.as_m(),
        };
        Ok(Self {
            record: record.clone(),
            held,
            forward_rad,
            linkage,
            load_at,
            pull,
            drawn,
        })
    }
}

impl SweepPath {
    /// −1 where the limb stays and the body rises over it, else 1.
    fn up(&self) -> f64 {
        match self.pull {
            LimbPull::Ground => -1.0,
            LimbPull::Hangs | LimbPull::Square => 1.0,
        }
    }

    /// The moving coordinate, and how the shoulder stands and turns.
    ///
    /// An arm that is raised in a plane turned forward by `φ` turns about `(sin φ, −cos φ, 0)`.
    fn shoulder(&self, angle_rad: f64, slope_rad: f64) -> (Coordinate, ShoulderMotion) {
        let mut coordinate = Coordinate::new(self.record.joint, angle_rad, slope_rad);
        if self.record.joint.is_shoulder() {
            if self.record.plane.is_some() {
                let (sin, cos) = self.forward_rad.sin_cos();
                coordinate.axis = Vector3::new(sin, -cos, 0.0);
            }
            let pose = ShoulderPose::turned(coordinate.axis, angle_rad);
            let motion = ShoulderMotion::about(pose, coordinate.axis, slope_rad);
            return (coordinate, motion);
        }
        let held = self.held.iter().find(|(dof, _)| dof.is_shoulder());
        let pose = held.map_or_else(ShoulderPose::hanging, |(dof, angle)| {
            ShoulderPose::in_plane(*dof, *angle)
        });
        (coordinate, ShoulderMotion::still(pose))
    }

    /// Place and way of the load when the limb's point is here and moves so.
    fn load_point(&self, point: Point, speed: Point) -> LoadPoint {
        let up = self.up();
        LoadPoint {
            x_m: up * point.x,
            z_m: if up > 0.0 {
                point.z
            } else {
                self.drawn.hip_over_ankle_m() + self.linkage.base.z - point.z
            },
            dx_ds_m: up * speed.x,
            dz_ds_m: up * speed.z,
            ..LoadPoint::default()
        }
    }
}

/// A joint that stands: the hip's angle is given as thigh against trunk, and muscles see thigh against pelvis.
fn held_at(dof: Dof, angle_rad: f64) -> (Dof, f64) {
    let share = if dof == Dof::Hip {
        HIP_OF_THIGH_ON_TRUNK
    } else {
        1.0
    };
    (dof, share * angle_rad)
}

/// The moving chain, and where it bears the load.
fn chain(
    record: &SweepRecord,
    held: &[(Dof, f64)],
    lean_rad: f64,
    lifter: &Lifter,
) -> (Linkage, (usize, f64)) {
    let segment = |name| lifter.segment(name);
    let lower = forearm_and_hand(segment(SegmentName::Forearm), segment(SegmentName::Hand));
    let grip_m = lower.length_m;
    let hanging_rad = record.body.trunk_rad() + lean_rad - PI;
    let (base_direction_rad, links, load_at) = match record.limb {
        SweptLimb::Forearm => {
            let direction = hanging_rad + angle_of(held, Dof::ShoulderFlexion);
            (direction, vec![lower.turned_by(0, 1.0)], (0, grip_m))
        }
        SweptLimb::Arm => {
            let upper = Link::proximal(segment(SegmentName::UpperArm)).turned_by(0, 1.0);
            let links = vec![upper, lower.offset(angle_of(held, Dof::Elbow))];
            (hanging_rad, links, (1, grip_m))
        }
        SweptLimb::Shank => {
            let sign = record.body.knee_sign();
            let shank = Link::proximal(segment(SegmentName::Shank)).turned_by(0, sign);
            let foot = Link::proximal(segment(SegmentName::Foot)).offset(-sign * FRAC_PI_2);
            (0.0, vec![shank, foot], (0, shank.length_m))
        }
        SweptLimb::Foot => {
            let ball_m = lifter.build.ankle_to_ball.as_m();
            let mut foot = Link::proximal(segment(SegmentName::Foot)).turned_by(0, 1.0);
            foot.centre_m = 0.5 * ball_m;
            foot.length_m = ball_m;
            (0.0, vec![foot], (0, ball_m))
        }
    };
    let linkage = Linkage {
        base: Point::new(0.0, joint_height_m(record, held, lean_rad, lifter)),
        base_direction_rad,
        links,
    };
    (linkage, load_at)
}

fn angle_of(held: &[(Dof, f64)], dof: Dof) -> f64 {
    held.iter().find(|h| h.0 == dof).map_or(0.0, |h| h.1)
}

/// Height of the moving joint: as given, or that of a lifter who stands upright, m.
fn joint_height_m(
    record: &SweepRecord,
    held: &[(Dof, f64)],
    lean_rad: f64,
    lifter: &Lifter,
) -> f64 {
    if let Some(height) = record.joint_height {
        return height.as_m();
    }
    let length = |name| lifter.segment(name).length.as_m();
    let ankle = lifter.build.ankle_height.as_m();
    let knee = ankle + length(SegmentName::Shank);
    let trunk = length(SegmentName::Trunk) * lean_rad.cos();
    let shoulder = knee + length(SegmentName::Thigh) + trunk;
    match record.limb {
        SweptLimb::Foot => ankle,
        SweptLimb::Shank => knee,
        SweptLimb::Arm => shoulder,
        SweptLimb::Forearm => {
            let flexion = angle_of(held, Dof::ShoulderFlexion);
            shoulder - length(SegmentName::UpperArm) * (flexion + lean_rad).cos()
        }
    }
}

impl TracedPath for SweepPath {
    fn angles(&self, s: f64) -> Result<Vec<f64>> {
        let (from, to) = (self.record.from.as_rad(), self.record.to.as_rad());
        Ok(vec![from + s * (to - from)])
    }

    fn pose(&self, s: f64, angles: &[f64], slopes: &[f64]) -> Result<Pose> {
        let placed = self.linkage.place(angles);
        let (link, along_m) = self.load_at;
        let point = placed.point(link, along_m, 0.0);
        let jacobian = placed.jacobian(link, point);
        let turned_rad = (angles[0] - self.record.from.as_rad()).abs();
        let up = self.up();
        let (coordinate, shoulder) = self.shoulder(angles[0], slopes[0]);
        Ok(Pose {
            coordinates: vec![coordinate],
            held: self.held.clone(),
            shoulder,
            load: LoadPoint {
                range: s,
                travel_m: turned_rad * along_m,
                lever_rad: turned_rad,
                ..self.load_point(point, along(&jacobian, slopes))
            },
            load_jacobian: jacobian.iter().map(|column| *column * up).collect(),
            gravity_nm: placed.gravity_nm(),
            reactions: Vec::new(),
            balances: Vec::new(),
            readings: Vec::new(),
            limb_inertia: placed.effective_mass(slopes),
            outline: self.drawn.outline(&placed.joints, point),
        })
    }

    fn limbs(&self, _: f64, angles: &[f64]) -> Result<Vec<LimbWeight>> {
        let parts: &[BodyPart] = match self.record.limb {
            SweptLimb::Forearm => &[BodyPart::ForearmAndHand],
            SweptLimb::Arm => &[BodyPart::UpperArm, BodyPart::ForearmAndHand],
            SweptLimb::Shank => &[BodyPart::Shank, BodyPart::Foot],
            SweptLimb::Foot => &[BodyPart::Foot],
        };
        Ok(limbs_of(&self.linkage.place(angles), parts))
    }
}
