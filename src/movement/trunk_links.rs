//! The trunk and what hangs from it as links: pelvis, thorax with the head, a straight arm.
//!
//! In: a lifter. Out: links of one side, with half of trunk and head, joined from published segments.

use super::linkage::{Link, forearm_and_hand};
use super::pose::Coordinate;
use crate::anatomy::{Dof, Lifter, SegmentName};
use crate::numeric::Point;

/// Coordinates of legs and trunk, from the floor up.
pub(super) fn coordinates_upward(angles: &[f64], slopes: &[f64]) -> Vec<Coordinate> {
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

/// A place on the thorax, given along and behind a straight trunk from the hip joint, as it stands
/// from the hip joint in the pelvis's own axes (along it, behind it) with the back bent so far.
pub(super) fn from_hip(pelvis_m: f64, on_trunk_m: (f64, f64), lumbar_rad: f64) -> Point {
    let (along, behind) = (on_trunk_m.0 - pelvis_m, on_trunk_m.1);
    let thorax = Point::from_polar(1.0, -lumbar_rad);
    Point::new(pelvis_m, 0.0) + thorax * along + thorax.quarter_turn() * behind
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
pub(super) fn pelvis_and_thorax(lifter: &Lifter, with_arm: bool) -> (Link, Link) {
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
pub(super) fn straight_arm(lifter: &Lifter, hands_m: f64) -> Link {
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
