//! Where muscles run on a drawn skeleton: past every joint at the model's own moment arm.
//!
//! In: a study, a sample, what its muscles do there. Out: lines in the metres of the stick figure. What is exact is the
//! distance from each joint: the line passes square to its arm, as long as the model's. Where it begins and ends on the
//! bones is a drawing's measure, because the muscles of hinges are moment arms in the model and no lines.

use super::bone_ends::{BoneEnd, Bones, FAR_ENDS, FAR_M, NEAR_M, pull_in, smooth};
use crate::anatomy::{Dof, Joint};
use crate::movement::{BodyOutline, View};
use crate::numeric::Point;
use crate::study::Study;

/// A muscle as it is drawn.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct MusclePath {
    /// Points along the muscle, m.
    pub points: Vec<[f64; 2]>,
    /// From the joint's centre square to the line of pull, m.
    pub arm: [[f64; 2]; 2],
}

/// A joint whose axis is square to the picture, so that an arm about it shows its length.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct ShownJoint {
    /// Its coordinate in the poses of the study.
    pub row: usize,
    /// +1 where a growing angle turns the far bone counter-clockwise in the picture, −1 where clockwise.
    sign: f64,
}

/// A muscle that is to be drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct DrawnArms<'a> {
    /// Its name in words.
    pub name: &'a str,
    /// Moment arm about every coordinate, m; none where it crosses none.
    pub arms_m: &'a [Option<f64>],
    /// Tells muscles apart that begin on one bone.
    pub place: usize,
}

/// Points that differ by less are one joint, m.
const SAME_M: f64 = 1.0e-6;

/// The joints that the picture of a lift shows.
pub(crate) fn shown_joints(study: &Study) -> Vec<ShownJoint> {
    let pose = &study.range.poses[0];
    let only = pose.coordinates.len() == 1;
    let shown = |(row, dof): (usize, Dof)| match pose.outline.view {
        _ if only || !dof.is_shoulder() => true,
        View::Front => row == 0,
        View::Side => dof == Dof::ShoulderFlexion,
    };
    let dofs = pose.coordinates.iter().map(|c| c.dof).enumerate();
    let in_view = dofs.filter(|entry| shown(*entry)).map(|entry| entry.0);
    let joint = |row| sign(study, row).map(|sign| ShownJoint { row, sign });
    in_view.filter_map(joint).collect()
}

/// +1 where a growing angle turns the far bone counter-clockwise in the picture, −1 where clockwise; none where the joint
/// does not move or has no two bones in the picture.
fn sign(study: &Study, row: usize) -> Option<f64> {
    /// A joint that turns less than this stands still, rad.
    const STILL_RAD: f64 = 0.01;
    let (mut turned, mut angle) = (0.0, 0.0);
    for pair in study.range.poses.windows(2) {
        let [before, after] = [&pair[0], &pair[1]].map(|pose| bones(&pose.outline, row));
        let step = after?.turn_rad() - before?.turn_rad();
        let wrapped = step.sin().atan2(step.cos());
        let own = pair[1].coordinates[row].angle_rad - pair[0].coordinates[row].angle_rad;
        turned += wrapped * own.signum();
        angle += own.abs();
    }
    (angle > STILL_RAD).then(|| turned.signum())
}

fn bones(outline: &BodyOutline, row: usize) -> Option<Bones> {
    let centre = *outline.centres.get(row)?;
    let is_here = |point: &Point| (*point - centre).length() < SAME_M;
    let foot = outline.limbs.iter().find(|limb| is_foot(limb));
    let ankle = foot.map(|foot| foot[0]);
    let (mut near, mut far) = (None, None);
    for limb in outline.limbs.iter().filter(|limb| !is_foot(limb)) {
        let Some(index) = limb.iter().position(is_here) else {
            continue;
        };
        let before = index.checked_sub(1).map(|index| limb[index]);
        let after = limb.get(index + 1).copied();
        let from_the_floor = ankle.is_some_and(|ankle| (limb[0] - ankle).length() < SAME_M);
        let (trunkward, outward) = match from_the_floor {
            true => (after, before),
            false => (before, after),
        };
        near = near.or(trunkward);
        // A line that ends at the joint of another begins at the trunk: the arm at the shoulder.
        far = match index {
            0 if !from_the_floor => after.or(far),
            _ => far.or(outward),
        };
    }
    if let Some(foot) = foot.filter(|foot| is_here(&foot[0])) {
        far = Some(foot[2]);
        return Some(Bones {
            centre,
            near: near?,
            far: far?,
            heel: Some(foot[1]),
        });
    }
    let far = far?;
    let near = near.or_else(|| beside(outline, centre, far))?;
    Some(Bones {
        centre,
        near,
        far,
        heel: None,
    })
}

/// Another end of a line that meets the joint: the trunk or the other shoulder.
fn beside(outline: &BodyOutline, centre: Point, far: Point) -> Option<Point> {
    let others = outline.limbs.iter().filter(|limb| !is_foot(limb));
    let ends = others.flat_map(|limb| limb.windows(2));
    ends.filter_map(|pair| match pair {
        [a, b] if (*a - centre).length() < SAME_M => Some(*b),
        [a, b] if (*b - centre).length() < SAME_M => Some(*a),
        _ => None,
    })
    .find(|end| (*end - far).length() > SAME_M)
}

/// A foot is a closed line.
fn is_foot(limb: &[Point]) -> bool {
    limb.len() == 4 && (limb[0] - limb[3]).length() < SAME_M
}

/// The limbs that the shown joints turn, without the rest of the body.
pub(crate) fn limbs_at(outline: &BodyOutline, joints: &[ShownJoint]) -> Vec<Vec<Point>> {
    let is_centre = |point: &Point| {
        let mut centres = joints.iter().map(|joint| outline.centres[joint.row]);
        centres.any(|centre| (centre - *point).length() < SAME_M)
    };
    let mut limbs = Vec::new();
    for limb in &outline.limbs {
        let at: Vec<usize> = (0..limb.len()).filter(|i| is_centre(&limb[*i])).collect();
        let (Some(first), Some(last)) = (at.first(), at.last()) else {
            continue;
        };
        if is_foot(limb) {
            limbs.push(limb.clone());
            continue;
        }
        let mut kept = limb[first.saturating_sub(1)..(last + 2).min(limb.len())].to_vec();
        let count = kept.len();
        if *first > 0 {
            kept[0] = within(kept[1], kept[0], NEAR_M);
        }
        if last + 1 < limb.len() {
            kept[count - 1] = within(kept[count - 2], kept[count - 1], FAR_M);
        }
        limbs.push(kept);
    }
    limbs
}

/// The end of a bone, or as far as it is drawn.
fn within(joint: Point, end: Point, most_m: f64) -> Point {
    let length_m = (end - joint).length().max(most_m);
    joint.towards(end, most_m / length_m)
}

/// How far from the nearest joint a muscle begins, m (a drawing's measure).
fn origin_m(dof: Dof, bone_m: f64, name: &str, place: f64) -> f64 {
    let most = match dof.joint() {
        Joint::Hip => 0.13,
        _ => 0.8 * bone_m,
    };
    match FAR_ENDS.iter().find(|known| name.starts_with(known.0)) {
        Some((_, origin, _)) => origin * bone_m.min(NEAR_M),
        None => (0.95 - 0.2 * place).max(0.25) * most.min(bone_m).min(0.95 * NEAR_M),
    }
}

/// How far from their joints a muscle begins and ends, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct MuscleEnds {
    near_m: f64,
    far_m: f64,
}

/// A muscle at one sample: the joints that it crosses from the trunk outward, and where it holds on to their bones there.
struct AtJoints {
    /// Coordinate, bones, and arm, positive to the side of a growing angle in the picture.
    crossed: Vec<(usize, Bones, f64)>,
    near: BoneEnd,
    far: BoneEnd,
}

impl AtJoints {
    /// None where the muscle crosses no shown joint.
    fn of(
        study: &Study,
        sample: usize,
        shown: &[ShownJoint],
        muscle: DrawnArms<'_>,
    ) -> Option<Self> {
        let outline = &study.range.poses[sample].outline;
        let mut crossed: Vec<(usize, Bones, f64)> = Vec::new();
        for ShownJoint { row, sign } in shown {
            if let Some(arm_m) = muscle.arms_m[*row] {
                crossed.push((*row, bones(outline, *row)?, sign * arm_m));
            }
        }
        // From the trunk outward: the far bone of one joint is the near one of the next.
        crossed.sort_by(|a, b| {
            let leads = |x: &Bones, y: &Bones| (x.far - y.centre).length() < SAME_M;
            match (leads(&a.1, &b.1), leads(&b.1, &a.1)) {
                (true, _) => std::cmp::Ordering::Less,
                (_, true) => std::cmp::Ordering::Greater,
                _ => std::cmp::Ordering::Equal,
            }
        });
        let (first_row, first, first_arm) = crossed.first()?;
        let (_, last, last_arm) = crossed.last()?;
        let dof = study.range.poses[sample].coordinates[*first_row].dof;
        let near_m = (first.near - first.centre).length();
        let near = BoneEnd {
            centre: first.centre,
            bone: (first.near - first.centre).unit()?,
            length_m: origin_m(dof, near_m, muscle.name, muscle.place as f64),
            aside: first.aside(first.near, *first_arm)?,
        };
        let far = last.insertion(muscle.name, *last_arm)?;
        Some(Self { crossed, near, far })
    }

    /// Whether the line may run straight past a joint.
    fn is_of_one_joint(&self) -> bool {
        self.crossed.len() == 1 && self.crossed[0].1.heel.is_none()
    }

    /// Brings an end closer where a straight line between both would pass too far from the joint.
    fn pulled_in(&mut self) -> Option<()> {
        let Self { crossed, near, far } = self;
        pull_in(near, far, &crossed[0].1, crossed[0].2)
    }
}

/// Where a muscle holds on to its bones at a sample; none where it crosses no shown joint.
pub(crate) fn muscle_ends(
    study: &Study,
    sample: usize,
    shown: &[ShownJoint],
    muscle: DrawnArms<'_>,
) -> Option<MuscleEnds> {
    let mut joints = AtJoints::of(study, sample, shown, muscle)?;
    if joints.is_of_one_joint() {
        joints.pulled_in()?;
    }
    Some(MuscleEnds {
        near_m: joints.near.length_m,
        far_m: joints.far.length_m,
    })
}

/// The line of one muscle, with its arm about the coordinate `main`; none where it crosses no shown joint. It holds on
/// at the given ends; a muscle of one joint as long as it can pass the joint from there, else where the pose alone puts them.
pub(crate) fn muscle_path(
    study: &Study,
    sample: usize,
    shown: &[ShownJoint],
    muscle: DrawnArms<'_>,
    (main, ends): (usize, Option<MuscleEnds>),
) -> Option<MusclePath> {
    let mut joints = AtJoints::of(study, sample, shown, muscle)?;
    let one_joint = joints.is_of_one_joint();
    let own = [joints.near.length_m, joints.far.length_m];
    let mut fits = false;
    if let Some(ends) = ends {
        joints.near.length_m = ends.near_m;
        joints.far.length_m = ends.far_m;
        if one_joint {
            let (_, joint, arm_m) = &joints.crossed[0];
            fits = joint.can_pass(joints.near.point(), joints.far.point(), *arm_m)?;
        }
    }
    if one_joint && !fits {
        [joints.near.length_m, joints.far.length_m] = own;
        joints.pulled_in()?;
    }
    let (start, end) = (joints.near.point(), joints.far.point());
    let mut knots: Vec<(Point, Point)> = Vec::new();
    let mut arm = [[0.0; 2]; 2];
    for (row, joint, arm_m) in &joints.crossed {
        let way = match one_joint {
            true => joint.way_past(start, end, *arm_m)?,
            false => joint.way_along(*arm_m)?,
        };
        knots.extend(way.knots);
        if *row == main {
            arm = [joint.centre, way.foot].map(|point| [point.x, point.z]);
        }
    }
    // Muscles leave their bones straight towards the next place that they pass.
    let next = knots.first().map_or(end, |knot| knot.0);
    let before = knots.last().map_or(start, |knot| knot.0);
    knots.insert(0, (start, (next - start).unit()?));
    knots.push((end, (end - before).unit()?));
    Some(MusclePath {
        points: smooth(&knots),
        arm,
    })
}
