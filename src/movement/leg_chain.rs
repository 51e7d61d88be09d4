//! The chain in the sagittal plane from a foot on the floor up: shank, thigh, trunk with head and arms: the bridge's.
//!
//! In: a lifter. Out: [`LegChain`], whose coordinates are ankle dorsiflexion, knee flexion and hip flexion
//! of one side and flexion of the lower back, with half the trunk.

use super::linkage::{Link, Linkage, Placed};
use super::trunk_links::pelvis_and_thorax;
use crate::anatomy::{Lifter, SegmentName};
use crate::numeric::Point;
use crate::units::STANDARD_GRAVITY_M_S2;
use std::f64::consts::FRAC_PI_2;

/// One leg on the floor with half of what it carries.
#[derive(Debug, Clone)]
pub(super) struct LegChain {
    /// Shank, thigh, pelvis and thorax from the ankle at x = 0.
    pub linkage: Linkage,
    /// Heel, ball and toe in front of the ankle, m.
    pub heel_m: f64,
    pub ball_m: f64,
    pub toe_m: f64,
    /// Weight of the foot, N, and its place, m.
    foot_n: f64,
    foot_x_m: f64,
}

/// Index of the pelvis in the chain, from the hip joints to L5/S1.
pub(super) const PELVIS: usize = 2;
/// Index of the rest of the trunk, from L5/S1 to the shoulder joints, with the head.
pub(super) const THORAX: usize = 3;

impl LegChain {
    /// The chain of a lifter whose arms rest on what the trunk bears.
    pub(super) fn new(lifter: &Lifter) -> Self {
        let (pelvis, thorax) = pelvis_and_thorax(lifter, true);
        let shank = Link::distal(lifter.segment(SegmentName::Shank));
        let thigh = Link::distal(lifter.segment(SegmentName::Thigh));
        let links = vec![
            shank.turned_by(0, -1.0),
            thigh.turned_by(1, 1.0),
            pelvis.turned_by(2, -1.0),
            thorax.turned_by(3, -1.0),
        ];
        let foot = lifter.segment(SegmentName::Foot);
        let heel = lifter.build.heel_to_ankle.as_m();
        Self {
            linkage: Linkage {
                base: Point::new(0.0, lifter.build.ankle_height.as_m()),
                base_direction_rad: FRAC_PI_2,
                links,
            },
            heel_m: -heel,
            ball_m: lifter.build.ankle_to_ball.as_m(),
            toe_m: foot.length.as_m() - heel,
            foot_n: foot.mass.as_kg() * STANDARD_GRAVITY_M_S2,
            foot_x_m: foot.centre_of_mass * foot.length.as_m() - heel,
        }
    }

    pub(super) fn shank_m(&self) -> f64 {
        self.linkage.links[0].length_m
    }

    pub(super) fn thigh_m(&self) -> f64 {
        self.linkage.links[1].length_m
    }

    pub(super) fn pelvis_m(&self) -> f64 {
        self.linkage.links[PELVIS].length_m
    }

    /// Hip joint to shoulder joint of a straight trunk, m.
    pub(super) fn trunk_m(&self) -> f64 {
        self.pelvis_m() + self.linkage.links[THORAX].length_m
    }

    /// Knee and hip for these angles of ankle and knee.
    pub(super) fn knee_and_hip(&self, ankle: f64, knee: f64) -> (Point, Point) {
        let shank = FRAC_PI_2 - ankle;
        let at = self.linkage.base + Point::from_polar(self.shank_m(), shank);
        (at, at + Point::from_polar(self.thigh_m(), shank + knee))
    }

    /// Weight of this side, foot included, N.
    pub(super) fn weight_n(&self) -> f64 {
        let links: f64 = self.linkage.links.iter().map(|link| link.mass_kg).sum();
        self.foot_n + links * STANDARD_GRAVITY_M_S2
    }

    /// Moment of that weight about the floor under the ankle: weight × distance in front, N·m.
    pub(super) fn weight_moment_nm(&self, placed: &Placed<'_>) -> f64 {
        let (mass_kg, centre) = placed.centre_of_mass();
        mass_kg * STANDARD_GRAVITY_M_S2 * centre.x + self.foot_n * self.foot_x_m
    }
}
