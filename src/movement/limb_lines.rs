//! Lines for stick figures: heads, feet, benches and bars that the paths' outlines share.
//!
//! In: joint centres of a pose and the lifter's sizes. Out: points of an [`BodyOutline`](super::BodyOutline).
//! Nothing here is calculated with; drawing measures without a source are marked as such.

use super::linkage::forearm_and_hand;
use crate::anatomy::{Lifter, SegmentName};
use crate::numeric::{BendSide, Point, close_two_links};

/// Thickness of the trunk from the joint line to the pad it lies on, m (a drawing's measure).
pub(super) const BACK_M: f64 = 0.09;

/// Sizes of a lifter that every outline needs, m.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct BodyLines {
    pub head_m: f64,
    pub trunk_m: f64,
    /// Top of the chest over the shoulders of a lifter who lies.
    pub chest_m: f64,
    pub thigh_m: f64,
    pub shank_m: f64,
    pub upper_arm_m: f64,
    pub grip_m: f64,
    pub ankle_height_m: f64,
    pub heel_m: f64,
    pub toe_m: f64,
    pub half_shoulders_m: f64,
    pub half_hips_m: f64,
}

impl BodyLines {
    pub(super) fn of(lifter: &Lifter) -> Self {
        let length = |name| lifter.segment(name).length.as_m();
        let heel_m = lifter.build.heel_to_ankle.as_m();
        let lower = forearm_and_hand(
            lifter.segment(SegmentName::Forearm),
            lifter.segment(SegmentName::Hand),
        );
        Self {
            head_m: length(SegmentName::Head),
            trunk_m: length(SegmentName::Trunk),
            chest_m: lifter.build.chest_height.as_m(),
            thigh_m: length(SegmentName::Thigh),
            shank_m: length(SegmentName::Shank),
            upper_arm_m: length(SegmentName::UpperArm),
            grip_m: lower.length_m,
            ankle_height_m: lifter.build.ankle_height.as_m(),
            heel_m,
            toe_m: length(SegmentName::Foot) - heel_m,
            half_shoulders_m: 0.5 * lifter.build.shoulder_breadth.as_m(),
            half_hips_m: 0.5 * lifter.build.hip_breadth.as_m(),
        }
    }

    /// Middle of the head of a trunk that points this way (rad) from hip to shoulder.
    pub(super) fn head(&self, shoulder: Point, trunk_rad: f64) -> Point {
        shoulder + Point::from_polar(0.85 * self.head_m, trunk_rad)
    }

    /// The foot as a triangle: ankle, heel, toe; `sole_rad` points from heel to toe, and the sole is
    /// on the right of that direction, or on its left for a lifter who lies face down.
    pub(super) fn foot(&self, ankle: Point, sole_rad: f64, on_the_left: bool) -> Vec<Point> {
        let along = Point::from_polar(1.0, sole_rad);
        let side = if on_the_left { 1.0 } else { -1.0 };
        let under = ankle + along.quarter_turn() * (side * self.ankle_height_m);
        vec![
            ankle,
            under - along * self.heel_m,
            under + along * self.toe_m,
            ankle,
        ]
    }

    /// Thigh and shank between a hip and an ankle, knee to the side of +x; straight if too far.
    pub(super) fn leg(&self, hip: Point, ankle: Point) -> Vec<Point> {
        let knee = close_two_links(hip, ankle, self.thigh_m, self.shank_m, BendSide::Left)
            .map_or(hip.towards(ankle, 0.5), |leg| leg.middle);
        vec![hip, knee, ankle]
    }

    /// Upper arm and forearm between a shoulder and a hand, elbow on the given side.
    pub(super) fn arm(&self, shoulder: Point, hand: Point, side: BendSide) -> Vec<Point> {
        let elbow = close_two_links(shoulder, hand, self.upper_arm_m, self.grip_m, side)
            .map_or(shoulder.towards(hand, 0.45), |arm| arm.middle);
        vec![shoulder, elbow, hand]
    }

    /// The arm that holds a bar on the shoulders, seen from the side: it goes outward, so it is seen shortened, the elbow below
    /// the bar between the plumb line and a trunk that points this way (rad) (a drawing's measure).
    pub(super) fn arm_at_a_bar_carried(
        &self,
        shoulder: Point,
        bar: Point,
        trunk_rad: f64,
    ) -> Vec<Point> {
        const SEEN: f64 = 0.7;
        let plumb = Point::new(0.0, -1.0);
        let between = (plumb - Point::from_polar(1.0, trunk_rad)).unit();
        let elbow = bar + between.unwrap_or(plumb) * (SEEN * self.upper_arm_m);
        vec![shoulder, elbow, bar]
    }

    /// The chest of a lifter who lies with the middle of the shoulders there, seen from the head: half an ellipse as wide as the
    /// chest between the arms (a drawing's measure) and as high as the chest is, so that a bar upon it touches it.
    pub(super) fn chest(&self, shoulders: Point) -> Vec<Point> {
        const WIDE: f64 = 0.85;
        const STEPS: u32 = 16;
        (0..=STEPS)
            .map(|step| {
                let (sin, cos) =
                    (std::f64::consts::PI * f64::from(step) / f64::from(STEPS)).sin_cos();
                shoulders + Point::new(WIDE * self.half_shoulders_m * cos, self.chest_m * sin)
            })
            .collect()
    }

    /// Shoulders, trunk and legs seen from the front, from the middle of the shoulders down.
    pub(super) fn front(&self, middle: Point) -> Vec<Vec<Point>> {
        let hips = middle - Point::new(0.0, self.trunk_m);
        let half = Point::new(self.half_shoulders_m, 0.0);
        let mut lines = vec![vec![middle - half, middle + half], vec![middle, hips]];
        for side in [-1.0, 1.0] {
            let hip = hips + Point::new(side * self.half_hips_m, 0.0);
            let down = |length: f64| Point::new(0.0, length);
            lines.push(vec![
                hips,
                hip,
                hip - down(self.thigh_m),
                hip - down(self.thigh_m + self.shank_m),
            ]);
        }
        lines
    }
}

/// The floor between two places.
pub(super) fn floor(from_x: f64, to_x: f64) -> Vec<Point> {
    vec![Point::new(from_x, 0.0), Point::new(to_x, 0.0)]
}

/// A pad with two legs down to the floor.
pub(super) fn bench(from: Point, to: Point) -> Vec<Vec<Point>> {
    let leg = |share: f64| {
        let top = from.towards(to, share);
        vec![top, Point::new(top.x, 0.0)]
    };
    vec![vec![from, to], leg(0.15), leg(0.85)]
}

/// A bar seen from the front, with a plate at each end (a drawing's measures).
pub(super) fn bar_from_the_front(middle: Point, half_grip_m: f64) -> Vec<Vec<Point>> {
    const PLATE_M: f64 = 0.225;
    let inner = (half_grip_m + 0.12).max(0.60);
    let mut lines = vec![vec![
        middle - Point::new(inner + 0.12, 0.0),
        middle + Point::new(inner + 0.12, 0.0),
    ]];
    for side in [-1.0, 1.0] {
        let at = middle + Point::new(side * inner, 0.0);
        lines.push(vec![
            at - Point::new(0.0, PLATE_M),
            at + Point::new(0.0, PLATE_M),
        ]);
    }
    lines
}
