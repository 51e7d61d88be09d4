//! The chain from a foot on the floor up: shank, thigh, trunk with head and arms; and the floor under it.
//!
//! In: a lifter, and how far the limbs are turned out of the plane. Out: [`LegChain`], whose
//! coordinates are ankle dorsiflexion, knee flexion and hip flexion of one side, with half the trunk;
//! shoulder flexion is a fourth where a straight arm hangs from the trunk.

use super::linkage::{Link, Linkage, Placed, forearm_and_hand};
use super::pose::Coordinate;
use crate::anatomy::{Dof, Lifter, SegmentName, ShoulderMotion, ShoulderPose};
use crate::numeric::Point;
use crate::source::Source;
use crate::units::STANDARD_GRAVITY_M_S2;
use serde::{Deserialize, Serialize};
use std::f64::consts::{FRAC_PI_2, PI};

/// How long the limbs look in the plane when they are turned out of it, as shares of their length.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Projection {
    /// Thigh.
    pub thigh: f64,
    /// Shank.
    pub shank: f64,
    /// Foot.
    pub foot: f64,
    /// Where the shares come from.
    pub source: Source,
}

/// One leg on the floor with half of what it carries.
#[derive(Debug, Clone)]
pub(super) struct LegChain {
    /// Shank, thigh and trunk from the ankle at x = 0.
    pub linkage: Linkage,
    /// Heel, ball and toe in front of the ankle, m.
    pub heel_m: f64,
    pub ball_m: f64,
    pub toe_m: f64,
    /// Weight of the foot, N, and its place, m.
    foot_n: f64,
    foot_x_m: f64,
}

/// Index of the trunk in the chain.
pub(super) const TRUNK: usize = 2;
/// Index of the straight arm, where there is one.
pub(super) const ARM: usize = 3;

impl LegChain {
    /// The chain; with `hands_at_m`, a straight arm of that length hangs from the shoulder.
    pub(super) fn new(
        lifter: &Lifter,
        turned: Option<&Projection>,
        hands_at_m: Option<f64>,
    ) -> Self {
        let (thigh_share, shank_share, foot_share) =
            turned.map_or((1.0, 1.0, 1.0), |p| (p.thigh, p.shank, p.foot));
        let shank = shortened(
            Link::distal(lifter.segment(SegmentName::Shank)),
            shank_share,
        );
        let thigh = shortened(
            Link::distal(lifter.segment(SegmentName::Thigh)),
            thigh_share,
        );
        let mut links = vec![
            shank.turned_by(0, -1.0),
            thigh.turned_by(1, 1.0),
            trunk_and_head(lifter, hands_at_m.is_none()).turned_by(2, -1.0),
        ];
        if let Some(hands_m) = hands_at_m {
            links.push(straight_arm(lifter, hands_m).turned_by(3, 1.0).offset(-PI));
        }
        let foot = lifter.segment(SegmentName::Foot);
        let heel = lifter.build.heel_to_ankle.as_m();
        Self {
            linkage: Linkage {
                base: Point::new(0.0, lifter.build.ankle_height.as_m()),
                base_direction_rad: FRAC_PI_2,
                links,
            },
            heel_m: -heel * foot_share,
            ball_m: lifter.build.ankle_to_ball.as_m() * foot_share,
            toe_m: (foot.length.as_m() - heel) * foot_share,
            foot_n: foot.mass.as_kg() * STANDARD_GRAVITY_M_S2,
            foot_x_m: (foot.centre_of_mass * foot.length.as_m() - heel) * foot_share,
        }
    }

    /// Place at a share of the way from heel to toe, m in front of the ankle.
    pub(super) fn along_the_foot_m(&self, share: f64) -> f64 {
        self.heel_m + share * (self.toe_m - self.heel_m)
    }

    pub(super) fn shank_m(&self) -> f64 {
        self.linkage.links[0].length_m
    }

    pub(super) fn thigh_m(&self) -> f64 {
        self.linkage.links[1].length_m
    }

    pub(super) fn trunk_m(&self) -> f64 {
        self.linkage.links[2].length_m
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

    /// The coordinates of a pose.
    pub(super) fn coordinates(angles: &[f64], slopes: &[f64]) -> Vec<Coordinate> {
        [Dof::Ankle, Dof::Knee, Dof::Hip, Dof::ShoulderFlexion]
            .into_iter()
            .take(angles.len())
            .enumerate()
            .map(|(index, dof)| Coordinate::new(dof, angles[index], slopes[index]))
            .collect()
    }
}

/// How the shoulder of a straight arm stands and turns, if one of the coordinates is its flexion.
pub(super) fn shoulder_of(coordinates: &[Coordinate]) -> ShoulderMotion {
    let flexion = coordinates.iter().find(|c| c.dof.is_shoulder());
    flexion.map_or_else(ShoulderMotion::default, |c| {
        let pose = ShoulderPose::turned(c.axis, c.angle_rad);
        ShoulderMotion::about(pose, c.axis, c.slope_rad)
    })
}

fn shortened(mut link: Link, share: f64) -> Link {
    link.length_m *= share;
    link.centre_m *= share;
    link
}

/// Half the trunk and half the head as one link from the hip to the shoulder, if asked with the arm.
///
/// The arm then counts as a point at the shoulder, where it bears the bar.
/// **Source.** de Leva 1996 for the segments; the head's centre from its share of the head's length
/// below the vertex and from standing height.
fn trunk_and_head(lifter: &Lifter, with_arm: bool) -> Link {
    let segment = |name| lifter.segment(name);
    let (trunk, head) = (segment(SegmentName::Trunk), segment(SegmentName::Head));
    let trunk_m = trunk.length.as_m();
    let shoulder_height_m = trunk_m
        + segment(SegmentName::Thigh).length.as_m()
        + segment(SegmentName::Shank).length.as_m()
        + lifter.build.ankle_height.as_m();
    let above_shoulder_m =
        (lifter.height.as_m() - shoulder_height_m - head.centre_of_mass * head.length.as_m())
            .max(0.0);
    let arm_kg = if with_arm {
        straight_arm(lifter, 0.0).mass_kg
    } else {
        0.0
    };
    joined(
        trunk_m,
        &[
            LinkPart {
                mass_kg: 0.5 * trunk.mass.as_kg(),
                at_m: (1.0 - trunk.centre_of_mass) * trunk_m,
                inertia_kg_m2: 0.5 * trunk.inertia_kg_m2(),
            },
            LinkPart {
                mass_kg: 0.5 * head.mass.as_kg(),
                at_m: trunk_m + above_shoulder_m,
                inertia_kg_m2: 0.5 * head.inertia_kg_m2(),
            },
            LinkPart {
                mass_kg: arm_kg,
                at_m: trunk_m,
                inertia_kg_m2: 0.0,
            },
        ],
    )
}

/// Upper arm, forearm and hand as one link from the shoulder to the bar.
fn straight_arm(lifter: &Lifter, hands_m: f64) -> Link {
    let upper = Link::proximal(lifter.segment(SegmentName::UpperArm));
    let lower = forearm_and_hand(
        lifter.segment(SegmentName::Forearm),
        lifter.segment(SegmentName::Hand),
    );
    joined(
        hands_m,
        &[
            LinkPart {
                mass_kg: upper.mass_kg,
                at_m: upper.centre_m,
                inertia_kg_m2: upper.inertia_kg_m2,
            },
            LinkPart {
                mass_kg: lower.mass_kg,
                at_m: upper.length_m + lower.centre_m,
                inertia_kg_m2: lower.inertia_kg_m2,
            },
        ],
    )
}

/// A part of a link: mass, place of its centre along the link, inertia about that centre.
struct LinkPart {
    mass_kg: f64,
    at_m: f64,
    inertia_kg_m2: f64,
}

/// Parts joined into one rigid link (parallel-axis theorem).
fn joined(length_m: f64, parts: &[LinkPart]) -> Link {
    let mass_kg: f64 = parts.iter().map(|p| p.mass_kg).sum();
    let centre_m = parts.iter().map(|p| p.mass_kg * p.at_m).sum::<f64>() / mass_kg;
    Link {
        length_m,
        mass_kg,
        centre_m,
        inertia_kg_m2: parts
            .iter()
            .map(|p| p.inertia_kg_m2 + p.mass_kg * (p.at_m - centre_m).powi(2))
            .sum(),
        coordinate: None,
        sign: 1.0,
        offset_rad: 0.0,
    }
}
