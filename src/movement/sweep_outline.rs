//! Stick figures of the sweeps: curls, raises and extensions with the whole body around them.
//!
//! In: how the body is placed, the angles that stand, the moving limb's joints. Out: [`BodyOutline`].

use super::limb_lines::{BACK_M, BodyLines, bench, floor};
use super::pose::{BodyOutline, View};
use super::sweep_record::{BodyPlace, SweptLimb};
use crate::numeric::{BendSide, Point};
use std::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};

/// Height of the step under the ball of the foot, m (a drawing's measure).
const STEP_M: f64 = 0.12;

/// What a sweep's figure is drawn from.
#[derive(Debug, Clone)]
pub(super) struct Drawn {
    pub figure: BodyLines,
    pub body: BodyPlace,
    /// How far the trunk leans back from upright.
    pub lean_rad: f64,
    pub limb: SweptLimb,
    pub shoulder_rad: f64,
    pub hip_rad: f64,
    pub knee_rad: f64,
    /// Share of the sagittal plane in a raise of the arm.
    pub forward: f64,
    pub ball_m: f64,
}

impl Drawn {
    /// Height of the hip over the ankle of the standing leg, m.
    pub(super) fn hip_over_ankle_m(&self) -> f64 {
        self.figure.shank_m + self.figure.thigh_m * self.knee_rad.cos()
    }

    pub(super) fn outline(&self, joints: &[Point], load: Point) -> BodyOutline {
        match self.limb {
            SweptLimb::Forearm => self.forearm(joints, load),
            SweptLimb::Arm if self.forward > 0.5 => self.arm_from_the_side(joints, load),
            SweptLimb::Arm => self.arms_from_the_front(joints, load),
            SweptLimb::Shank => self.shank(joints, load),
            SweptLimb::Foot => self.foot(joints),
        }
    }

    /// Direction from hip to shoulder, rad.
    fn trunk_rad(&self) -> f64 {
        self.body.trunk_rad() + self.lean_rad
    }

    /// Trunk, legs and what bears them, from the shoulder down.
    fn body_under(&self, shoulder: Point) -> (Vec<Vec<Point>>, Vec<Vec<Point>>, Point) {
        let trunk_rad = self.trunk_rad();
        let hip = shoulder - Point::from_polar(self.figure.trunk_m, trunk_rad);
        let forward = match self.body {
            BodyPlace::Upright => 0.0,
            BodyPlace::Supine => 0.45,
            BodyPlace::Seated | BodyPlace::Prone => 0.40,
        };
        let ankle = Point::new(hip.x + forward, self.figure.ankle_height_m);
        let mut body = self.figure.leg(hip, ankle);
        body.insert(0, shoulder);
        let limbs = vec![body, self.figure.foot(ankle, 0.0, false)];
        let mut props = vec![floor(hip.x - 0.5, hip.x + 0.8)];
        let under = Point::new(0.0, -BACK_M);
        match self.body {
            BodyPlace::Supine => props.extend(bench(
                shoulder + under - Point::new(0.28, 0.0),
                hip + under + Point::new(0.06, 0.0),
            )),
            BodyPlace::Seated => props.extend(bench(
                hip + under - Point::new(0.18, 0.0),
                hip + under + Point::new(0.30, 0.0),
            )),
            BodyPlace::Upright | BodyPlace::Prone => {}
        }
        if self.lean_rad > 0.0 {
            let trunk = Point::from_polar(1.0, trunk_rad);
            let pad = trunk.quarter_turn() * BACK_M;
            props.push(vec![hip + pad + trunk * 0.08, shoulder + pad]);
        }
        (limbs, props, self.figure.head(shoulder, trunk_rad))
    }

    fn forearm(&self, joints: &[Point], load: Point) -> BodyOutline {
        let upper_rad = self.trunk_rad() - PI + self.shoulder_rad;
        let shoulder = joints[0] - Point::from_polar(self.figure.upper_arm_m, upper_rad);
        let (mut limbs, props, head) = self.body_under(shoulder);
        limbs.insert(0, vec![shoulder, joints[0], joints[1]]);
        BodyOutline {
            view: View::Side,
            limbs,
            head: Some(head),
            props,
            load,
            centres: vec![joints[0]],
        }
    }

    fn arm_from_the_side(&self, joints: &[Point], load: Point) -> BodyOutline {
        let (mut limbs, props, head) = self.body_under(joints[0]);
        limbs.insert(0, joints.to_vec());
        BodyOutline {
            view: View::Side,
            limbs,
            head: Some(head),
            props,
            load,
            centres: vec![joints[0]],
        }
    }

    fn arms_from_the_front(&self, joints: &[Point], load: Point) -> BodyOutline {
        let middle = Point::new(0.0, joints[0].z);
        let outward = |side: f64| {
            move |p: &Point| Point::new(side * (self.figure.half_shoulders_m + p.x), p.z)
        };
        let mut limbs: Vec<Vec<Point>> = [1.0, -1.0]
            .into_iter()
            .map(|side| joints.iter().map(outward(side)).collect())
            .collect();
        limbs.extend(self.figure.front(middle));
        BodyOutline {
            view: View::Front,
            limbs,
            head: Some(middle + Point::new(0.0, 0.85 * self.figure.head_m)),
            props: vec![floor(-0.7, 0.7)],
            load: outward(1.0)(&load),
            centres: vec![outward(1.0)(&joints[0])],
        }
    }

    fn shank(&self, joints: &[Point], load: Point) -> BodyOutline {
        let (knee, ankle) = (joints[0], joints[1]);
        let sign = self.body.knee_sign();
        let hip = knee - Point::new(self.figure.thigh_m, 0.0);
        let trunk_rad = PI + sign * self.hip_rad;
        let trunk = Point::from_polar(1.0, trunk_rad);
        let shoulder = hip + trunk * self.figure.trunk_m;
        let shank_rad = (ankle - knee).angle_rad();
        let face_down = self.body == BodyPlace::Prone;
        let (hand, side) = if face_down {
            (shoulder - Point::new(0.25, 0.35), BendSide::Right)
        } else {
            (hip + Point::new(0.05, 0.0), BendSide::Left)
        };
        BodyOutline {
            view: View::Side,
            limbs: vec![
                vec![shoulder, hip, knee, ankle],
                self.figure
                    .foot(ankle, shank_rad - sign * FRAC_PI_2, face_down),
                self.figure.arm(shoulder, hand, side),
            ],
            head: Some(self.figure.head(shoulder, trunk_rad)),
            props: leg_bench(knee, hip, trunk, shoulder),
            load,
            centres: vec![knee],
        }
    }

    /// The ball stays on the step, and the body rises over it.
    fn foot(&self, joints: &[Point]) -> BodyOutline {
        let sole_rad = (joints[1] - joints[0]).angle_rad();
        let along = Point::from_polar(1.0, sole_rad);
        let ball = along * self.ball_m - along.quarter_turn() * self.figure.ankle_height_m;
        let ankle = Point::new(self.ball_m, STEP_M) - ball;
        let knee = ankle + Point::new(0.0, self.figure.shank_m);
        let hip = knee + Point::from_polar(self.figure.thigh_m, FRAC_PI_2 + self.knee_rad);
        let shoulder = hip + Point::new(0.0, self.figure.trunk_m);
        let hand = shoulder
            + Point::from_polar(
                0.97 * (self.figure.upper_arm_m + self.figure.grip_m),
                -FRAC_PI_2,
            );
        let mut props = vec![
            vec![
                Point::new(self.ball_m - 0.03, 0.0),
                Point::new(self.ball_m - 0.03, STEP_M),
                Point::new(self.ball_m + 0.35, STEP_M),
            ],
            floor(-0.55, 0.55),
        ];
        if self.knee_rad > FRAC_PI_4 {
            let seat = hip - Point::new(0.0, BACK_M);
            props.extend(bench(
                seat - Point::new(0.20, 0.0),
                seat + Point::new(0.20, 0.0),
            ));
        }
        BodyOutline {
            view: View::Side,
            limbs: vec![
                vec![shoulder, hip, knee, ankle],
                self.figure.foot(ankle, sole_rad, false),
                self.figure.arm(shoulder, hand, BendSide::Right),
            ],
            head: Some(self.figure.head(shoulder, FRAC_PI_2)),
            props,
            load: shoulder,
            centres: vec![ankle],
        }
    }
}

/// The bench of a leg curl or extension: under the thigh, and the pad under the chest or behind the back.
fn leg_bench(knee: Point, hip: Point, trunk: Point, shoulder: Point) -> Vec<Vec<Point>> {
    let under = Point::new(0.0, -BACK_M);
    let mut props = bench(
        hip + under - Point::new(0.10, 0.0),
        knee + under - Point::new(0.05, 0.0),
    );
    let pad = trunk.quarter_turn() * BACK_M;
    props.push(vec![hip + pad + trunk * 0.08, shoulder + pad]);
    props.push(floor(shoulder.x.min(hip.x) - 0.4, knee.x + 0.55));
    props
}
