//! Where muscles run on a drawn skeleton: past every joint at the model's own moment arm.
//!
//! In: a study, a sample, what its muscles do there. Out: lines in the metres of the stick figure. What is exact is the
//! distance from each joint: the line passes square to its arm, as long as the model's. Where it begins and ends on the
//! bones is a drawing's measure, because the muscles of hinges are moment arms in the model and no lines.

use crate::anatomy::{Dof, Joint};
use crate::movement::{BodyOutline, View};
use crate::numeric::Point;
use crate::study::{MuscleLine, Study};

/// A muscle as it is drawn.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct MusclePath {
    /// Points along the muscle, m.
    pub points: Vec<[f64; 2]>,
    /// From the joint's centre square to the line of pull, m.
    pub arm: [[f64; 2]; 2],
    /// Where its letter stands: beside the bone on which it begins, away from the muscle, m.
    pub letter: [f64; 2],
}

/// Two bones at a joint: the nearer one to the trunk, and the farther one.
struct Bones {
    centre: Point,
    near: Point,
    far: Point,
    /// The heel, at the ankle.
    heel: Option<Point>,
}

impl Bones {
    /// Direction from the near bone past the joint to the far one.
    fn along(&self) -> Option<Point> {
        let near = (self.near - self.centre).unit()?;
        let far = (self.far - self.centre).unit()?;
        (far - near).unit()
    }

    /// Turn of the far bone against the near one, rad.
    fn turn_rad(&self) -> f64 {
        let (near, far) = (self.near - self.centre, self.far - self.centre);
        near.cross(far).atan2(near.dot(far))
    }
}

/// Points that differ by less are one joint, m.
const SAME_M: f64 = 1.0e-6;

/// Coordinates whose axis is square to the picture, so that an arm about it shows its length.
pub(crate) fn shown_coordinates(study: &Study) -> Vec<usize> {
    let pose = &study.range.poses[0];
    let only = pose.coordinates.len() == 1;
    let shown = |(row, dof): (usize, Dof)| match pose.outline.view {
        _ if only || !dof.is_shoulder() => true,
        View::Front => row == 0,
        View::Side => dof == Dof::ShoulderFlexion,
    };
    let dofs = pose.coordinates.iter().map(|c| c.dof).enumerate();
    let in_view = dofs.filter(|entry| shown(*entry)).map(|entry| entry.0);
    in_view.filter(|row| sign(study, *row).is_some()).collect()
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
pub(crate) fn limbs_at(outline: &BodyOutline, rows: &[usize]) -> Vec<Vec<Point>> {
    let is_centre = |point: &Point| {
        let mut centres = rows.iter().map(|row| outline.centres[*row]);
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

/// Most that is drawn of a bone before the first joint that turns, m (a drawing's measure).
const NEAR_M: f64 = 0.28;
/// Most that is drawn of a bone beyond the last one, m (a drawing's measure).
const FAR_M: f64 = 0.18;

/// The end of a bone, or as far as it is drawn.
fn within(joint: Point, end: Point, most_m: f64) -> Point {
    let length_m = (end - joint).length().max(most_m);
    joint.towards(end, most_m / length_m)
}

/// How far from the nearest joint a muscle begins, m, at the most (a drawing's measure).
fn origin_m(dof: Dof, bone_m: f64, place: f64) -> f64 {
    let most = match dof.joint() {
        Joint::Hip => 0.13,
        _ => 0.8 * bone_m,
    };
    (0.95 - 0.2 * place).max(0.25) * most.min(bone_m).min(0.26)
}

/// Muscles run on this side of a bone by so much where they begin and end, m (a drawing's measure).
const BESIDE_M: f64 = 0.015;
/// How far muscles that begin on one bone run apart, m (a drawing's measure).
const APART_M: f64 = 0.012;
/// Distance of a letter from the bone, m (a drawing's measure).
const LETTER_M: f64 = 0.05;

/// The line of one muscle; `place` tells muscles apart that begin on one bone, `main` is the coordinate whose arm is drawn.
/// None where it crosses no shown joint.
pub(crate) fn muscle_path(
    study: &Study,
    sample: usize,
    shown: &[usize],
    muscle: &MuscleLine,
    (place, main): (usize, usize),
) -> Option<MusclePath> {
    let outline = &study.range.poses[sample].outline;
    let mut crossed: Vec<(usize, Bones, f64)> = Vec::new();
    for row in shown {
        if let Some(arm_m) = muscle.arms_m[*row] {
            crossed.push((*row, bones(outline, *row)?, sign(study, *row)? * arm_m));
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
    let dof = |row: usize| study.range.poses[sample].coordinates[row].dof;
    let mut knots: Vec<(Point, Point)> = Vec::new();
    let (first_row, first, first_arm) = crossed.first()?;
    let along = first.along()?;
    let bone = first.near - first.centre;
    let on_bone =
        first.centre + bone.unit()? * origin_m(dof(*first_row), bone.length(), place as f64);
    // Square to the bone, on the muscle's side; muscles that begin nearer to the joint run outside.
    let square = bone.unit()?.quarter_turn();
    let side = square.dot(along.quarter_turn()) * first_arm.signum();
    let aside = if side < 0.0 { square * -1.0 } else { square };
    let start = on_bone + aside * (BESIDE_M + APART_M * place as f64);
    let letter = on_bone + aside * -LETTER_M;
    knots.push((start, bone.unit()? * -1.0));
    let mut arm = [[0.0; 2]; 2];
    for (row, joint, arm_m) in &crossed {
        let along = joint.along()?;
        let foot = joint.centre + along.quarter_turn() * *arm_m;
        knots.push((foot, along));
        if *row == main {
            arm = [joint.centre, foot].map(|point| [point.x, point.z]);
        }
    }
    let (_, last, last_arm) = crossed.last()?;
    knots.push(insertion(last, *last_arm)?);
    Some(MusclePath {
        points: smooth(&knots),
        arm,
        letter: [letter.x, letter.z],
    })
}

/// Where a muscle ends on the far bone: a little beyond its arm, on its own side; at the ankle the heel or the instep.
fn insertion(joint: &Bones, arm_m: f64) -> Option<(Point, Point)> {
    let bone = joint.far - joint.centre;
    let along = joint.along()?;
    let side = along.quarter_turn() * arm_m.signum();
    if let Some(heel) = joint.heel {
        let to_heel = heel - joint.centre;
        if to_heel.dot(side) > 0.0 {
            return Some((heel, to_heel.unit()?));
        }
    }
    let length_m = (1.4 * arm_m.abs()).max(0.05).min(0.4 * bone.length());
    let end = joint.centre + bone.unit()? * length_m;
    let edge = bone.unit()?.quarter_turn();
    let outer = if edge.dot(side) < 0.0 { -1.0 } else { 1.0 };
    Some((end + edge * (0.3 * BESIDE_M * outer), bone.unit()?))
}

/// A smooth line through points with their directions.
///
/// ```text
/// P(t) = (2t³−3t²+1)·P₀ + (t³−2t²+t)·m₀ + (3t²−2t³)·P₁ + (t³−t²)·m₁
/// ```
/// `P` points (m), `m` directions of the length of the stretch (m). **Source.** Cubic of Hermite.
fn smooth(knots: &[(Point, Point)]) -> Vec<[f64; 2]> {
    const STEPS: u32 = 12;
    let mut points = vec![[knots[0].0.x, knots[0].0.z]];
    for pair in knots.windows(2) {
        let [(from, leaves), (to, arrives)] = [pair[0], pair[1]];
        let length = (to - from).length();
        let (m0, m1) = (leaves * length, arrives * length);
        for step in 1..=STEPS {
            let t = f64::from(step) / f64::from(STEPS);
            let (t2, t3) = (t * t, t * t * t);
            let point = from * (2.0 * t3 - 3.0 * t2 + 1.0)
                + m0 * (t3 - 2.0 * t2 + t)
                + to * (3.0 * t2 - 2.0 * t3)
                + m1 * (t3 - t2);
            points.push([point.x, point.z]);
        }
    }
    points
}
