//! Where muscles run on a drawn skeleton: past every joint at the model's own moment arm.
//!
//! In: a study, a sample, what its muscles do there. Out: lines in the metres of the stick figure. What is exact is the
//! distance from each joint: the line passes square to its arm, as long as the model's. Where it begins and ends on the
//! bones is a drawing's measure, because the muscles of hinges are moment arms in the model and no lines.

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

/// Most that is drawn of a bone before the first joint that turns, m (a drawing's measure).
const NEAR_M: f64 = 0.26;
/// Most that is drawn of a bone beyond the last one, m (a drawing's measure).
const FAR_M: f64 = 0.24;

/// The end of a bone, or as far as it is drawn.
fn within(joint: Point, end: Point, most_m: f64) -> Point {
    let length_m = (end - joint).length().max(most_m);
    joint.towards(end, most_m / length_m)
}

/// Muscles that do not begin high and end close beyond the joint: what their names begin with, and where they begin and end
/// in shares of the drawn bones, from the joint (a drawing's measure, from memory of the anatomy of the arm).
const FAR_ENDS: [(&str, f64, f64); 3] = [
    ("brachioradialis", 0.34, 1.0),
    ("pronator teres", 0.06, 0.45),
    ("extensor carpi", 0.2, 1.0),
];

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

/// Muscles run on this side of a bone by so much where they begin and end, m, at the most (a drawing's measure).
const BESIDE_M: f64 = 0.012;
/// The line of one muscle, with its arm about the coordinate `main`; none where it crosses no shown joint.
pub(crate) fn muscle_path(
    study: &Study,
    sample: usize,
    shown: &[ShownJoint],
    muscle: DrawnArms<'_>,
    main: usize,
) -> Option<MusclePath> {
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
    let mut near = BoneEnd {
        centre: first.centre,
        bone: (first.near - first.centre).unit()?,
        length_m: origin_m(dof, near_m, muscle.name, muscle.place as f64),
        aside: first.aside(first.near, *first_arm)?,
    };
    let mut far = last.insertion(muscle.name, *last_arm)?;
    let one_joint = crossed.len() == 1 && last.heel.is_none();
    if one_joint {
        pull_in(&mut near, &mut far, first, *first_arm)?;
    }
    let (start, end) = (near.point(), far.point());
    let mut knots: Vec<(Point, Point)> = Vec::new();
    let mut arm = [[0.0; 2]; 2];
    for (row, joint, arm_m) in &crossed {
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

/// Where a muscle holds on to a bone.
struct BoneEnd {
    /// The joint.
    centre: Point,
    /// Along the bone away from the joint.
    bone: Point,
    /// How far from the joint, m.
    length_m: f64,
    /// From the bone's middle to its edge on the muscle's side, m.
    aside: Point,
}

impl BoneEnd {
    fn point(&self) -> Point {
        self.centre + self.bone * self.length_m + self.aside
    }
}

/// Past a joint: places with their directions, and the end of the moment arm.
struct WayPast {
    knots: Vec<(Point, Point)>,
    foot: Point,
}

impl Bones {
    /// To the muscle's side, square to the way past the joint.
    fn outward(&self, arm_m: f64) -> Option<Point> {
        Some(self.along()?.quarter_turn() * arm_m.signum())
    }

    /// From the middle of the bone that ends there to its edge on the muscle's side, m.
    fn aside(&self, end: Point, arm_m: f64) -> Option<Point> {
        let square = (end - self.centre).unit()?.quarter_turn();
        let side = square.dot(self.outward(arm_m)?).signum();
        Some(square * (side * BESIDE_M.min(0.5 * arm_m.abs())))
    }

    /// Where a muscle ends on the far bone: a little beyond its arm, on its own side; at the ankle the heel or the instep.
    fn insertion(&self, name: &str, arm_m: f64) -> Option<BoneEnd> {
        if let Some(heel) = self.heel {
            let to_heel = heel - self.centre;
            if to_heel.dot(self.outward(arm_m)?) > 0.0 {
                return Some(BoneEnd {
                    centre: self.centre,
                    bone: to_heel.unit()?,
                    length_m: to_heel.length(),
                    aside: Point::new(0.0, 0.0),
                });
            }
        }
        let bone = self.far - self.centre;
        let length_m = match FAR_ENDS.iter().find(|known| name.starts_with(known.0)) {
            Some((_, _, share)) => share * bone.length().min(FAR_M),
            None => (1.2 * arm_m.abs()).max(0.05).min(0.4 * bone.length()),
        };
        Some(BoneEnd {
            centre: self.centre,
            bone: bone.unit()?,
            length_m,
            aside: self.aside(self.far, arm_m)?,
        })
    }

    /// Distance of a straight line between two places from the joint, to the muscle's side, m, and the nearest place on it.
    fn distance(&self, from: Point, to: Point, arm_m: f64) -> Option<(f64, Point)> {
        let along = (to - from).unit()?;
        let foot = from + along * (self.centre - from).dot(along);
        let away = foot - self.centre;
        let side = away.dot(self.outward(arm_m)?).signum();
        Some((side * away.length(), foot))
    }

    /// A straight line where it keeps the arm's distance, else around the joint like a belt around a wheel.
    fn way_past(&self, start: Point, end: Point, arm_m: f64) -> Option<WayPast> {
        let radius_m = arm_m.abs();
        let (distance_m, foot) = self.distance(start, end, arm_m)?;
        if distance_m > radius_m - STRAIGHT_M {
            let knots = Vec::new();
            return Some(WayPast { knots, foot });
        }
        let touching = [start, end].map(|point| self.touching(point, arm_m));
        let [Some(leaves), Some(arrives)] = touching else {
            return self.way_along(arm_m);
        };
        let middle = (leaves + arrives) * 0.5 - self.centre;
        let foot = self.centre + middle.unit()? * radius_m;
        let knots = vec![
            (leaves, (leaves - start).unit()?),
            (foot, (arrives - leaves).unit()?),
            (arrives, (end - arrives).unit()?),
        ];
        Some(WayPast { knots, foot })
    }

    /// Past the joint at its arm, in the mean direction of both bones.
    fn way_along(&self, arm_m: f64) -> Option<WayPast> {
        let foot = self.centre + self.outward(arm_m)? * arm_m.abs();
        let knots = vec![(foot, self.along()?)];
        Some(WayPast { knots, foot })
    }

    /// Where a line from a place touches the circle of the arm about the joint on the muscle's side; none from inside it.
    fn touching(&self, from: Point, arm_m: f64) -> Option<Point> {
        let away = from - self.centre;
        let cosine = arm_m.abs() / away.length();
        let sine = (1.0 - cosine * cosine).max(0.0).sqrt();
        let (unit, square) = (away.unit()?, away.unit()?.quarter_turn());
        let side = square.dot(self.outward(arm_m)?).signum();
        let towards = unit * cosine + square * (side * sine);
        (cosine < 1.0).then(|| self.centre + towards * arm_m.abs())
    }
}

/// Lines that pass the joint nearer than their arm by less than this are drawn straight, m.
const STRAIGHT_M: f64 = 1.0e-4;

/// Brings the nearer one of both ends closer to the joint until a straight line between them keeps the arm's distance; where
/// the line passes nearer anyway, it bends around the joint.
fn pull_in(near: &mut BoneEnd, far: &mut BoneEnd, joint: &Bones, arm_m: f64) -> Option<()> {
    const HALVINGS: usize = 40;
    let (start, end) = (near.point(), far.point());
    if joint.distance(start, end, arm_m)?.0 <= arm_m.abs() {
        return Some(());
    }
    let near_is_moved = near.length_m < far.length_m;
    let (mut low, mut high) = (0.0, near.length_m.min(far.length_m));
    for _ in 0..HALVINGS {
        let middle = 0.5 * (low + high);
        match near_is_moved {
            true => near.length_m = middle,
            false => far.length_m = middle,
        }
        match joint.distance(near.point(), far.point(), arm_m)?.0 > arm_m.abs() {
            true => high = middle,
            false => low = middle,
        }
    }
    Some(())
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
