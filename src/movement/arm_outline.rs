//! Stick figures of the arm movements: bench, standing press, hanging, bent over.
//!
//! In: elbow and hand seen from the shoulder. Out: [`BodyOutline`], from the front with both arms at the
//! true breadth of the shoulders, or from the side for a bent-over lifter.

use super::arm_frame::TrunkFrame;
use super::arm_record::Posture;
use super::limb_lines::{BACK_M, BodyLines, bar_from_the_front, bench, floor};
use super::pose::{BodyOutline, View};
use crate::numeric::Point;

/// Elbow and hand of one arm: outward from the shoulder, and (ahead, up) in the world, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct ArmLine {
    pub hangs: bool,
    pub shoulder_height_m: f64,
    /// Height of the hand over the shoulder at the start.
    pub start_rise_m: f64,
    pub elbow: (f64, Point),
    pub hand: (f64, Point),
}

pub(super) fn outline(frame: &TrunkFrame, figure: &BodyLines, arm: &ArmLine) -> BodyOutline {
    match frame.posture {
        Posture::Bent => bent_over(frame, figure, arm),
        Posture::Lying => from_the_front(figure, arm, true),
        Posture::Upright => from_the_front(figure, arm, false),
    }
}

fn from_the_front(figure: &BodyLines, arm: &ArmLine, lying: bool) -> BodyOutline {
    let height_m = if arm.hangs {
        arm.shoulder_height_m + arm.start_rise_m - arm.hand.1.z
    } else {
        arm.shoulder_height_m
    };
    let middle = Point::new(0.0, height_m);
    let bar = middle + Point::new(0.0, arm.hand.1.z);
    let mut limbs: Vec<Vec<Point>> = [1.0, -1.0]
        .into_iter()
        .map(|side| {
            let at = |(out, place): (f64, Point)| {
                middle + Point::new(side * (figure.half_shoulders_m + out), place.z)
            };
            vec![at((0.0, Point::ORIGIN)), at(arm.elbow), at(arm.hand)]
        })
        .collect();
    let centres = shoulder_and_elbow(&limbs[0]);
    let mut props = bar_from_the_front(bar, figure.half_shoulders_m + arm.hand.0);
    let head = if lying {
        let half = Point::new(figure.half_shoulders_m, 0.0);
        limbs.push(vec![middle - half, middle + half]);
        limbs.push(figure.chest(middle));
        props.extend(bench_under(middle));
        middle + Point::new(0.0, 0.25 * figure.head_m)
    } else {
        limbs.extend(figure.front(middle));
        middle + Point::new(0.0, 0.85 * figure.head_m)
    };
    if arm.hangs {
        // A fixed bar has no plates.
        props.truncate(1);
    }
    props.push(floor(-0.85, 0.85));
    BodyOutline {
        view: View::Front,
        limbs,
        head: Some(head),
        props,
        load: bar,
        centres,
    }
}

/// Shoulder, elbow, and the shoulder for its two other axes: the coordinates of an arm in their order.
fn shoulder_and_elbow(arm: &[Point]) -> Vec<Point> {
    vec![arm[0], arm[1], arm[0], arm[0]]
}

/// The bench under a lifter who lies with the shoulders there, seen from the head.
fn bench_under(shoulders: Point) -> Vec<Vec<Point>> {
    let back = shoulders - Point::new(0.0, BACK_M);
    let half = Point::new(0.15, 0.0);
    bench(back - half, back + half)
}

fn bent_over(frame: &TrunkFrame, figure: &BodyLines, arm: &ArmLine) -> BodyOutline {
    let shoulder = Point::new(0.0, arm.shoulder_height_m);
    let trunk = Point::from_polar(1.0, frame.lean_rad);
    let hip = shoulder - trunk * figure.trunk_m;
    let middle_of_foot_m = 0.5 * (figure.toe_m - figure.heel_m);
    let ankle = Point::new(
        shoulder.x - 0.5 * figure.trunk_m * trunk.x - middle_of_foot_m,
        figure.ankle_height_m,
    );
    let hand = shoulder + arm.hand.1;
    let mut body = figure.leg(hip, ankle);
    body.insert(0, shoulder);
    let line = vec![shoulder, shoulder + arm.elbow.1, hand];
    BodyOutline {
        view: View::Side,
        centres: shoulder_and_elbow(&line),
        limbs: vec![line, body, figure.foot(ankle, 0.0, false)],
        head: Some(figure.head(shoulder, frame.lean_rad)),
        props: vec![floor(hip.x - 0.35, 0.4)],
        load: hand,
    }
}
