//! Sweep: one joint moves through its range while the others stand.
//!
//! In: the joint, its first and last angle, which limb it carries, how the body is placed. Out: poses
//! with one coordinate.

use super::linkage::{Link, Linkage, along, forearm_and_hand};
use super::load_point::{Carrier, LoadPoint};
use super::pose::{Coordinate, Outline, Pose};
use super::record::Movement;
use super::trace::Path;
use crate::anatomy::{Dof, Lifter, SegmentName};
use crate::error::Result;
use crate::numeric::Point;
use crate::source::Source;
use crate::units::{Angle, Length};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use std::f64::consts::{FRAC_PI_2, PI};

/// A sweep as a movement file gives it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SweepRecord {
    /// The joint that moves.
    pub joint: Dof,
    /// Its angle at the start of the concentric phase.
    pub from: Angle,
    /// Its angle at the end.
    pub to: Angle,
    /// What the joint carries.
    pub limb: Limb,
    /// How the body is placed.
    pub body: Body,
    /// Height of the moving joint above the floor.
    pub joint_height: Length,
    /// Joints that stand, at technique parameters.
    pub held: BTreeMap<Dof, String>,
    /// Technique parameter that turns the shoulder's plane from the frontal one, if there is one.
    #[serde(default)]
    pub plane: Option<String>,
    /// Where the angles come from.
    pub source: Source,
}

/// What the moving joint carries.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Limb {
    /// Forearm and hand, turning about the elbow.
    Forearm,
    /// The whole arm, turning about the shoulder.
    Arm,
    /// Shank and foot, turning about the knee.
    Shank,
    /// The foot, turning about the ankle, with the ball on the ground.
    Foot,
}

/// How the body is placed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Body {
    /// Standing or sitting upright.
    Upright,
    /// On the back.
    Supine,
    /// Face down.
    Prone,
    /// On a seat, thighs level.
    Seated,
}

/// A sweep ready for a lifter.
#[derive(Debug, Clone)]
pub struct SweepPath {
    record: SweepRecord,
    held: Vec<(Dof, f64)>,
    planes: Vec<(Dof, f64)>,
    linkage: Linkage,
    /// Link that carries the load, and where along it the load acts, m.
    load_at: (usize, f64),
    /// Force on the moving limb per newton of the load: (x, z), or `None` for one square to the limb.
    pull: Pull,
    proximal: Vec<Point>,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum Pull {
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
        let mut held = Vec::new();
        for (dof, name) in &record.held {
            held.push((*dof, movement.angle_rad(name)?.unwrap_or(0.0)));
        }
        let planes = match &record.plane {
            None => vec![(record.joint, 1.0)],
            Some(name) => {
                let forward = movement.angle_rad(name)?.unwrap_or(0.0).sin().powi(2);
                vec![
                    (Dof::ShoulderAbduction, 1.0 - forward),
                    (Dof::ShoulderFlexion, forward),
                ]
            }
        };
        let (linkage, load_at, proximal) = chain(record, &held, lifter);
        let pull = match (movement.carrier()?, record.limb) {
            (Carrier::Lever { .. }, _) => Pull::Square,
            (_, Limb::Foot) => Pull::Ground,
            _ => Pull::Hangs,
        };
        let load_at = match movement.carrier()? {
            Carrier::Lever { pad_m, .. } => (load_at.0, pad_m),
            _ => load_at,
        };
        Ok(Self {
            record: record.clone(),
            held,
            planes,
            linkage,
            load_at,
            pull,
            proximal,
        })
    }
}

/// The moving chain, where it bears the load, and the standing part of the body for the figure.
fn chain(
    record: &SweepRecord,
    held: &[(Dof, f64)],
    lifter: &Lifter,
) -> (Linkage, (usize, f64), Vec<Point>) {
    let angle = |dof: Dof| held.iter().find(|h| h.0 == dof).map_or(0.0, |h| h.1);
    let segment = |name| lifter.segment(name);
    let base = Point::new(0.0, record.joint_height.as_m());
    // Direction from hip to shoulder.
    let trunk = match record.body {
        Body::Upright | Body::Seated => FRAC_PI_2,
        Body::Supine => PI,
        Body::Prone => 0.0,
    };
    match record.limb {
        Limb::Forearm => {
            let upper = segment(SegmentName::UpperArm);
            let direction = trunk - PI + angle(Dof::ShoulderFlexion);
            let link = forearm_and_hand(segment(SegmentName::Forearm), segment(SegmentName::Hand));
            let shoulder = base - unit(direction) * upper.length.as_m();
            let hip = shoulder - unit(trunk) * segment(SegmentName::Trunk).length.as_m();
            let grip = link.length_m;
            (
                single(base, direction, link.turned_by(0, 1.0)),
                (0, grip),
                vec![hip, shoulder, base],
            )
        }
        Limb::Arm => {
            let lower = forearm_and_hand(segment(SegmentName::Forearm), segment(SegmentName::Hand));
            let upper = Link::proximal(segment(SegmentName::UpperArm)).turned_by(0, 1.0);
            let bend = angle(Dof::Elbow);
            let grip = lower.length_m;
            let hip = base - unit(trunk) * segment(SegmentName::Trunk).length.as_m();
            (
                Linkage {
                    base,
                    base_direction_rad: trunk - PI,
                    links: vec![upper, lower.offset(bend)],
                },
                (1, grip),
                vec![hip, base],
            )
        }
        Limb::Shank => {
            // Seated, the knee straightens upward; face down, it bends upward.
            let sign = if record.body == Body::Prone {
                1.0
            } else {
                -1.0
            };
            let thigh = segment(SegmentName::Thigh).length.as_m();
            let shank = Link::proximal(segment(SegmentName::Shank)).turned_by(0, sign);
            let foot = Link::proximal(segment(SegmentName::Foot)).offset(-sign * FRAC_PI_2);
            let hip = base - unit(0.0) * thigh;
            let trunk_direction = PI - sign * -angle(Dof::Hip);
            let shoulder = hip + unit(trunk_direction) * segment(SegmentName::Trunk).length.as_m();
            let length = shank.length_m;
            (
                Linkage {
                    base,
                    base_direction_rad: 0.0,
                    links: vec![shank, foot],
                },
                (0, length),
                vec![shoulder, hip, base],
            )
        }
        Limb::Foot => {
            let ball = lifter.build.ankle_to_ball.as_m();
            let mut foot = Link::proximal(segment(SegmentName::Foot)).turned_by(0, 1.0);
            foot.centre_m = 0.5 * ball;
            foot.length_m = ball;
            let knee = base + unit(FRAC_PI_2) * segment(SegmentName::Shank).length.as_m();
            let bend = angle(Dof::Knee);
            let hip = knee + unit(FRAC_PI_2 + bend) * segment(SegmentName::Thigh).length.as_m();
            (single(base, 0.0, foot), (0, ball), vec![hip, knee, base])
        }
    }
}

fn single(base: Point, direction: f64, link: Link) -> Linkage {
    Linkage {
        base,
        base_direction_rad: direction,
        links: vec![link],
    }
}

fn unit(direction: f64) -> Point {
    Point::new(direction.cos(), direction.sin())
}

impl Path for SweepPath {
    fn angles(&self, s: f64) -> Result<Vec<f64>> {
        let (from, to) = (self.record.from.as_rad(), self.record.to.as_rad());
        Ok(vec![from + s * (to - from)])
    }

    fn pose(&self, s: f64, angles: &[f64], slopes: &[f64]) -> Result<Pose> {
        let placed = self.linkage.place(angles);
        let (link, along_m) = self.load_at;
        let point = placed.point(link, along_m, 0.0);
        let jacobian = placed.jacobian(link, point);
        let speed = along(&jacobian, slopes);
        let load_jacobian = jacobian
            .iter()
            .map(|column| match self.pull {
                Pull::Hangs | Pull::Square => *column,
                Pull::Ground => *column * -1.0,
            })
            .collect();
        let up = match self.pull {
            Pull::Ground => -1.0,
            _ => 1.0,
        };
        let mut outline = Outline {
            limbs: vec![self.proximal.clone(), placed.joints.clone()],
            load: point,
            ..Outline::default()
        };
        if self.pull == Pull::Ground {
            let shift = Point::new(0.0, -point.z);
            for limb in &mut outline.limbs {
                for joint in limb {
                    *joint += shift;
                }
            }
            outline.load = self.proximal[0] + shift;
        }
        let body_height =
            self.proximal[0].z - self.linkage.base.z + (self.linkage.base.z - point.z);
        Ok(Pose {
            coordinates: vec![Coordinate {
                dof: self.record.joint,
                planes: self.planes.clone(),
                angle_rad: angles[0],
                slope_rad: slopes[0],
            }],
            held: self.held.clone(),
            load: LoadPoint {
                range: s,
                x_m: point.x,
                z_m: if up > 0.0 { point.z } else { body_height },
                dx_ds_m: up * speed.x,
                dz_ds_m: up * speed.z,
                travel_m: (angles[0] - self.record.from.as_rad()).abs() * along_m,
                lever_rad: (angles[0] - self.record.from.as_rad()).abs(),
            },
            load_jacobian,
            gravity_nm: placed.gravity_nm(),
            reactions: Vec::new(),
            balances: Vec::new(),
            readings: Vec::new(),
            limb_inertia: placed.effective_mass(slopes),
            outline,
        })
    }
}
