//! Where a drawn muscle holds on to bones, and how it passes a joint at the length of its moment arm.
//!
//! In: the bones at a joint, a moment arm, the muscle's name. Out: places with directions, and a smooth line through them. The
//! arm is the model's; the rest is a drawing's measure.

use crate::numeric::{Point, bisect};

/// Two bones at a joint: the nearer one to the trunk, and the farther one.
pub(super) struct Bones {
    /// The joint.
    pub centre: Point,
    /// The other end of the nearer bone.
    pub near: Point,
    /// The other end of the farther one.
    pub far: Point,
    /// The heel, at the ankle.
    pub heel: Option<Point>,
}

impl Bones {
    /// Direction from the near bone past the joint to the far one.
    pub fn along(&self) -> Option<Point> {
        let near = (self.near - self.centre).unit()?;
        let far = (self.far - self.centre).unit()?;
        (far - near).unit()
    }

    /// Turn of the far bone against the near one, rad.
    pub fn turn_rad(&self) -> f64 {
        let (near, far) = (self.near - self.centre, self.far - self.centre);
        near.cross(far).atan2(near.dot(far))
    }
}

/// Most that is drawn of a bone before the first joint that turns, m (a drawing's measure).
pub(super) const NEAR_M: f64 = 0.26;
/// Most that is drawn of a bone beyond the last one, m (a drawing's measure).
pub(super) const FAR_M: f64 = 0.24;

/// Muscles that do not begin high and end close beyond the joint: what their names begin with, and where they begin and end
/// in shares of the drawn bones, from the joint (a drawing's measure, from memory of the anatomy of the arm).
pub(super) const FAR_ENDS: [(&str, f64, f64); 3] = [
    ("brachioradialis", 0.34, 1.0),
    ("pronator teres", 0.06, 0.45),
    ("extensor carpi", 0.2, 1.0),
];

/// Muscles run on this side of a bone by so much where they begin and end, m, at the most (a drawing's measure).
const BESIDE_M: f64 = 0.012;
/// Where a muscle holds on to a bone.
pub(super) struct BoneEnd {
    /// The joint.
    pub centre: Point,
    /// Along the bone away from the joint.
    pub bone: Point,
    /// How far from the joint, m.
    pub length_m: f64,
    /// From the bone's middle to its edge on the muscle's side, m.
    pub aside: Point,
}

impl BoneEnd {
    /// The place in the picture.
    pub fn point(&self) -> Point {
        self.centre + self.bone * self.length_m + self.aside
    }
}

/// Past a joint: places with their directions, and the end of the moment arm.
pub(super) struct WayPast {
    /// The places, each with the direction in which it is passed.
    pub knots: Vec<(Point, Point)>,
    /// The end of the arm.
    pub foot: Point,
}

impl Bones {
    /// To the muscle's side, square to the way past the joint.
    fn outward(&self, arm_m: f64) -> Option<Point> {
        Some(self.along()?.quarter_turn() * arm_m.signum())
    }

    /// From the middle of the bone that ends there to its edge on the muscle's side, m.
    pub fn aside(&self, end: Point, arm_m: f64) -> Option<Point> {
        let square = (end - self.centre).unit()?.quarter_turn();
        let side = square.dot(self.outward(arm_m)?).signum();
        Some(square * (side * BESIDE_M.min(0.5 * arm_m.abs())))
    }

    /// Where a muscle ends on the far bone: a little beyond its arm, on its own side; at the ankle the heel or the instep.
    pub fn insertion(&self, name: &str, arm_m: f64) -> Option<BoneEnd> {
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

    /// Whether a line between two places can pass the joint at its arm, straight or bent around it.
    pub fn can_pass(&self, start: Point, end: Point, arm_m: f64) -> Option<bool> {
        let (distance_m, foot) = self.distance(start, end, arm_m)?;
        let off_m = distance_m - arm_m.abs();
        // From beyond an end the line would come back to it in a hook.
        if off_m < -STRAIGHT_M && !lies_between(foot, start, end) {
            return Some(false);
        }
        let is_outside = |point: Point| (point - self.centre).length() > arm_m.abs();
        let is_around = off_m < 0.0 && is_outside(start) && is_outside(end);
        Some(off_m.abs() < STRAIGHT_M || is_around)
    }

    /// A straight line where it keeps the arm's distance, else around the joint like a belt around a wheel.
    pub fn way_past(&self, start: Point, end: Point, arm_m: f64) -> Option<WayPast> {
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
    pub fn way_along(&self, arm_m: f64) -> Option<WayPast> {
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
/// How finely the ends of a straight line are placed, m.
const EDGE_M: f64 = 1.0e-12;

/// Brings the nearer one of both ends closer to the joint until a straight line between them keeps the arm's distance; where
/// the line passes nearer anyway, it bends around the joint.
pub(super) fn pull_in(
    near: &mut BoneEnd,
    far: &mut BoneEnd,
    joint: &Bones,
    arm_m: f64,
) -> Option<()> {
    let (start, end) = (near.point(), far.point());
    let (distance_m, foot) = joint.distance(start, end, arm_m)?;
    if distance_m <= arm_m.abs() {
        if !lies_between(foot, start, end) {
            push_out(near, far, joint, arm_m);
        }
        return Some(());
    }
    let (moved, other) = match near.length_m < far.length_m {
        true => (near, end),
        false => (far, start),
    };
    let at = |length_m: f64| BoneEnd { length_m, ..*moved }.point();
    let is_far = |length_m: f64| {
        let passed = joint.distance(at(length_m), other, arm_m);
        passed.is_some_and(|(distance_m, _)| distance_m > arm_m.abs())
    };
    // Where even the joint's own side is too far, the end stands there.
    let edge = bisect(0.0, moved.length_m, EDGE_M, is_far);
    moved.length_m = edge.map_or(0.0, |edge| edge.below);
    Some(())
}

/// Moves the far end out until a straight line keeps the arm's distance, as far as twice its place; else it stays where it was.
fn push_out(near: &BoneEnd, far: &mut BoneEnd, joint: &Bones, arm_m: f64) {
    const FARTHEST: f64 = 2.0;
    let own = far.length_m;
    let is_near = |length_m: f64| {
        let end = BoneEnd { length_m, ..*far }.point();
        let passed = joint.distance(near.point(), end, arm_m);
        passed.is_some_and(|(distance_m, _)| distance_m < arm_m.abs())
    };
    if let Ok(edge) = bisect(own, FARTHEST * own, EDGE_M, is_near) {
        far.length_m = edge.above;
    }
}

/// Whether a place on a line lies between two others on it.
fn lies_between(place: Point, from: Point, to: Point) -> bool {
    let way = to - from;
    let share = (place - from).dot(way) / way.dot(way).max(f64::MIN_POSITIVE);
    (0.0..=1.0).contains(&share)
}

/// A smooth line through points with their directions.
///
/// ```text
/// P(t) = (2t³−3t²+1)·P₀ + (t³−2t²+t)·m₀ + (3t²−2t³)·P₁ + (t³−t²)·m₁
/// ```
/// `P` points (m), `m` directions of the length of the stretch (m). **Source.** Cubic of Hermite.
pub(super) fn smooth(knots: &[(Point, Point)]) -> Vec<[f64; 2]> {
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
