//! The chain from a foot on the floor up: shank, thigh, trunk with head and arms; and the floor under it.
//!
//! In: a lifter, and how far the limbs are turned out of the plane. Out: [`LegChain`], whose
//! coordinates are ankle dorsiflexion, knee flexion and hip flexion of one side and flexion of the lower
//! back, with half the trunk; shoulder flexion is a fifth where a straight arm hangs from the trunk.

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
/// Index of the straight arm, where there is one.
pub(super) const ARM: usize = 4;

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
        let (pelvis, thorax) = pelvis_and_thorax(lifter, hands_at_m.is_none());
        let mut links = vec![
            shank.turned_by(0, -1.0),
            thigh.turned_by(1, 1.0),
            pelvis.turned_by(2, -1.0),
            thorax.turned_by(3, -1.0),
        ];
        if let Some(hands_m) = hands_at_m {
            links.push(straight_arm(lifter, hands_m).turned_by(4, 1.0).offset(-PI));
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

    pub(super) fn pelvis_m(&self) -> f64 {
        self.linkage.links[PELVIS].length_m
    }

    /// Hip joint to shoulder joint of a straight trunk, m.
    pub(super) fn trunk_m(&self) -> f64 {
        self.pelvis_m() + self.linkage.links[THORAX].length_m
    }

    /// A place on the thorax, given along and behind a straight trunk from the hip joint, as it stands
    /// from the hip joint in the pelvis's own axes (along it, behind it) with the back bent so far.
    pub(super) fn from_hip(&self, on_trunk_m: (f64, f64), lumbar_rad: f64) -> Point {
        let (along, behind) = (on_trunk_m.0 - self.pelvis_m(), on_trunk_m.1);
        let thorax = Point::from_polar(1.0, -lumbar_rad);
        Point::new(self.pelvis_m(), 0.0) + thorax * along + thorax.quarter_turn() * behind
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
        [
            Dof::Ankle,
            Dof::Knee,
            Dof::Hip,
            Dof::Lumbar,
            Dof::ShoulderFlexion,
        ]
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

/// Half the trunk as two links, from the hip joint to L5/S1 and on to the shoulder joint, the upper one
/// with half the head and, if asked, the arm.
///
/// The arm then counts as a point at the shoulder, where it bears the bar. Mass, centre and inertia of
/// the straight trunk are those of the whole segment.
///
/// **Source.** de Leva 1996 for the segments; the head's centre from its share of the head's length
/// below the vertex and from standing height. **Differs.** The pelvis has 0.27 of the trunk's mass: de
/// Leva's lower trunk, cut at the navel, has 0.257 (men) and 0.293 (women), and is taken as a uniform
/// rod; that L5/S1 lies lower than the navel is left out, because the belly in front hangs lower too.
fn pelvis_and_thorax(lifter: &Lifter, with_arm: bool) -> (Link, Link) {
    const PELVIS_SHARE: f64 = 0.27;
    let segment = |name| lifter.segment(name);
    let (trunk, head) = (segment(SegmentName::Trunk), segment(SegmentName::Head));
    let trunk_m = trunk.length.as_m();
    let pelvis_m = lifter.build.hip_to_lumbar.as_m().min(0.6 * trunk_m);
    let (trunk_kg, centre_m) = (
        0.5 * trunk.mass.as_kg(),
        (1.0 - trunk.centre_of_mass) * trunk_m,
    );
    let pelvis_kg = PELVIS_SHARE * trunk_kg;
    let pelvis = LinkPart {
        mass_kg: pelvis_kg,
        at_m: 0.5 * pelvis_m,
        inertia_kg_m2: pelvis_kg * pelvis_m.powi(2) / 12.0,
    };
    let thorax_kg = trunk_kg - pelvis_kg;
    let thorax_at_m = (trunk_kg * centre_m - pelvis_kg * pelvis.at_m) / thorax_kg;
    let apart = pelvis_kg * (pelvis.at_m - centre_m).powi(2)
        + thorax_kg * (thorax_at_m - centre_m).powi(2)
        + pelvis.inertia_kg_m2;
    let thorax = LinkPart {
        mass_kg: thorax_kg,
        at_m: thorax_at_m - pelvis_m,
        inertia_kg_m2: (0.5 * trunk.inertia_kg_m2() - apart).max(0.0),
    };
    let shoulder_height_m = trunk_m
        + segment(SegmentName::Thigh).length.as_m()
        + segment(SegmentName::Shank).length.as_m()
        + lifter.build.ankle_height.as_m();
    let above_shoulder_m =
        (lifter.height.as_m() - shoulder_height_m - head.centre_of_mass * head.length.as_m())
            .max(0.0);
    let shoulder_m = trunk_m - pelvis_m;
    let skull = LinkPart {
        mass_kg: 0.5 * head.mass.as_kg(),
        at_m: shoulder_m + above_shoulder_m,
        inertia_kg_m2: 0.5 * head.inertia_kg_m2(),
    };
    let arm = LinkPart {
        mass_kg: if with_arm {
            straight_arm(lifter, 0.0).mass_kg
        } else {
            0.0
        },
        at_m: shoulder_m,
        inertia_kg_m2: 0.0,
    };
    (
        joined(pelvis_m, &[pelvis]),
        joined(shoulder_m, &[thorax, skull, arm]),
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
