//! The body of a pose with its muscles: lines between joints, each muscle beside the joints that it crosses, at its
//! moment arm and on the side to which it turns them.
//!
//! In: a study, a sample of its range. Out: [`BodyPicture`] in metres. Where a muscle begins and ends along a bone is
//! a drawing's measure; its distance from a joint is the model's.

use super::body_lines::stick_figure;
use crate::anatomy::Joint;
use crate::movement::Pose;
use crate::numeric::Point;
use crate::plot::{DrawnLoad, StickFigure};
use crate::study::Study;
use serde::Serialize;

/// Where muscles begin along the bone before a joint, share of its length (a drawing's measure).
const BEGINS: f64 = 0.62;
/// Where they end along the bone beyond it (a drawing's measure).
const ENDS: f64 = 0.34;
/// Arms shorter than this cross no joint, m.
const CROSSES_M: f64 = 0.001;

/// A pose as lines, x forwards and y upwards, m.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BodyPicture {
    /// Each limb as its joints in order.
    pub limbs: Vec<Vec<[f64; 2]>>,
    /// Middle of the head and its radius.
    pub head: Option<([f64; 2], f64)>,
    /// Floor, bench, seat, a bar from the front.
    pub supports: Vec<[[f64; 2]; 2]>,
    /// Middle of the load, and the radius of plates where it is seen from its end.
    pub load: Option<([f64; 2], Option<f64>)>,
    /// The muscles of one side.
    pub muscles: Vec<DrawnMuscle>,
}

/// One muscle as a line.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DrawnMuscle {
    /// Its number in the study.
    pub number: usize,
    /// Its way past the joints.
    pub way: Vec<[f64; 2]>,
}

/// A joint with the bones on both sides of it.
#[derive(Debug, Clone, Copy)]
struct PlacedJoint {
    joint: Joint,
    before: Point,
    at: Point,
    beyond: Point,
}

/// Left, lower, right and upper end of all poses, m.
#[must_use]
pub fn body_extent(study: &Study) -> [f64; 4] {
    let carrier = study.range.carrier;
    let figures = study.range.poses.iter().map(|p| stick_figure(p, carrier));
    let extents = figures.filter_map(|figure: StickFigure| figure.extent());
    let join = |a: [f64; 4], b: [f64; 4]| {
        [
            a[0].min(b[0]),
            a[1].min(b[1]),
            a[2].max(b[2]),
            a[3].max(b[3]),
        ]
    };
    extents.reduce(join).unwrap_or([0.0, 0.0, 1.0, 1.0])
}

/// The body at a sample.
#[must_use]
pub fn body_picture(study: &Study, sample: usize) -> BodyPicture {
    let pose = &study.range.poses[sample];
    let figure = stick_figure(pose, study.range.carrier);
    let turns = turns(study);
    let joints = placed_joints(pose);
    let held = &study.capacity.held[sample];
    let numbers = 0..held.muscles.len();
    BodyPicture {
        muscles: numbers
            .filter_map(|number| {
                let arms = |joint| {
                    turns
                        .iter()
                        .find(|turn| turn.joint == joint)
                        .map_or(0.0, |turn| turn.side * arm_m(study, sample, number, turn))
                };
                let way = way(&joints, arms);
                (!way.is_empty()).then_some(DrawnMuscle { number, way })
            })
            .collect(),
        limbs: figure.limbs,
        head: figure.head,
        supports: figure.supports,
        load: figure.load.map(|load| match load {
            DrawnLoad::Bar { at, radius_m } => (at, Some(radius_m)),
            DrawnLoad::Dumbbell { at } => (at, None),
        }),
    }
}

/// How the lift turns a joint where it turns it fastest.
#[derive(Debug, Clone, Copy)]
struct Turn {
    joint: Joint,
    /// The sample.
    sample: usize,
    /// 1 where the bone beyond goes to the left in the picture, −1 where it goes to the right.
    side: f64,
}

/// The moment arm of a muscle about a joint in the direction of its turn: positive where it lifts, m.
fn arm_m(study: &Study, sample: usize, muscle: usize, turn: &Turn) -> f64 {
    let coordinates = study.range.poses[turn.sample].coordinates.iter();
    let arms = study.capacity.held[sample].muscles[muscle].arms_m.iter();
    let turning = coordinates
        .zip(arms)
        .filter(|(c, _)| c.dof.joint() == turn.joint);
    let (mut arm, mut size) = (0.0, 0.0);
    for (coordinate, own) in turning {
        arm += coordinate.slope_rad * own;
        size += coordinate.slope_rad * coordinate.slope_rad;
    }
    if size > 0.0 { arm / size.sqrt() } else { 0.0 }
}

/// The turn of every joint in the picture.
fn turns(study: &Study) -> Vec<Turn> {
    let poses = &study.range.poses;
    let placed: Vec<Vec<PlacedJoint>> = poses.iter().map(placed_joints).collect();
    let joints = placed[0].iter().enumerate();
    let fastest = |(index, joint): (usize, &PlacedJoint)| {
        let bend = |sample: usize| placed[sample].get(index).map_or(0.0, PlacedJoint::bend_rad);
        let step = |sample: usize| wrapped(bend(sample + 1) - bend(sample));
        let samples = 0..poses.len() - 1;
        let most = samples.max_by(|a, b| step(*a).abs().total_cmp(&step(*b).abs()));
        let sample = most.unwrap_or(0);
        Turn {
            joint: joint.joint,
            sample,
            side: step(sample).signum(),
        }
    };
    joints.map(fastest).collect()
}

fn wrapped(angle_rad: f64) -> f64 {
    angle_rad.sin().atan2(angle_rad.cos())
}

impl PlacedJoint {
    /// Turn of the bone beyond against the bone before, rad.
    fn bend_rad(&self) -> f64 {
        wrapped((self.beyond - self.at).angle_rad() - (self.at - self.before).angle_rad())
    }

    /// To the left of the way past the joint.
    fn left(&self) -> Option<Point> {
        let along = (self.at - self.before).unit()? + (self.beyond - self.at).unit()?;
        Some(along.unit()?.quarter_turn())
    }
}

/// The way of a muscle past the joints that it crosses, from the trunk outward.
fn way(joints: &[PlacedJoint], arm: impl Fn(Joint) -> f64) -> Vec<[f64; 2]> {
    let crossed: Vec<(&PlacedJoint, Point)> = joints
        .iter()
        .filter_map(|joint| {
            let arm_m = arm(joint.joint);
            let side = joint.left()?;
            (arm_m.abs() > CROSSES_M).then(|| (joint, side * arm_m))
        })
        .collect();
    let (Some((first, near)), Some((last, far))) = (crossed.first(), crossed.last()) else {
        return Vec::new();
    };
    let begin = first.at.towards(first.before, BEGINS) + *near * 0.6;
    let end = last.at.towards(last.beyond, ENDS) + *far * 0.3;
    let past = crossed.iter().map(|(joint, aside)| joint.at + *aside);
    let points = std::iter::once(begin).chain(past).chain([end]);
    points.map(|point| [point.x, point.z]).collect()
}

/// The joints of the pose that the picture shows, from the trunk outward.
fn placed_joints(pose: &Pose) -> Vec<PlacedJoint> {
    let limbs = &pose.outline.limbs;
    let is_foot = |limb: &&Vec<Point>| limb.len() == 4 && limb[0] == limb[3];
    let moves = |joint: Joint| pose.coordinates.iter().any(|c| c.dof.joint() == joint);
    if let Some(foot) = limbs.iter().find(is_foot)
        && (moves(Joint::Knee) || moves(Joint::Ankle))
    {
        return leg(limbs, foot);
    }
    arm(limbs)
}

/// Lower back, hip, knee, ankle along the chain that ends at the foot.
fn leg(limbs: &[Vec<Point>], foot: &[Point]) -> Vec<PlacedJoint> {
    let ankle = foot[0];
    let is_leg = |limb: &&Vec<Point>| {
        limb.len() >= 3 && limb[0] != limb[limb.len() - 1] && limb.contains(&ankle)
    };
    let Some(leg) = limbs.iter().find(is_leg) else {
        return Vec::new();
    };
    let mut up = leg.clone();
    if up[0] != ankle {
        up.reverse();
    }
    let mut chain = vec![foot[2]];
    chain.extend(up);
    let names = [Joint::Ankle, Joint::Knee, Joint::Hip, Joint::LowerBack];
    let joints = chain.windows(3).zip(names);
    let mut placed: Vec<PlacedJoint> = joints.map(|(three, joint)| placed(joint, three)).collect();
    placed.reverse();
    placed
}

/// A joint between the bone beyond it and the bone before it.
fn placed(joint: Joint, three: &[Point]) -> PlacedJoint {
    PlacedJoint {
        joint,
        before: three[2],
        at: three[1],
        beyond: three[0],
    }
}

/// Shoulder and elbow of the arm that comes first.
fn arm(limbs: &[Vec<Point>]) -> Vec<PlacedJoint> {
    let Some(arm) = limbs.first().filter(|limb| limb.len() >= 2) else {
        return Vec::new();
    };
    let shoulder = arm[0];
    let others = limbs[1..].iter();
    let trunk = others.clone().find_map(|limb| match limb.as_slice() {
        // The other arm of a body from the front: the trunk is between both shoulders.
        [other, ..] if limb.len() == arm.len() && *other != shoulder => {
            Some(shoulder.towards(*other, 0.5))
        }
        [first, second, ..] if *first == shoulder => Some(*second),
        _ => None,
    });
    let before = trunk.unwrap_or(shoulder - Point::new(0.0, 0.3));
    let mut placed_joints = vec![placed(Joint::Shoulder, &[arm[1], shoulder, before])];
    if let Some(hand) = arm.get(2) {
        placed_joints.push(placed(Joint::Elbow, &[*hand, arm[1], shoulder]));
    }
    placed_joints
}
