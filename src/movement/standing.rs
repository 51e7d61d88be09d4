//! A lifter on both feet: two legs in space under one trunk that keeps to the sagittal plane.
//!
//! In: a lifter, where the feet stand, whether arms hang down to a bar. Out: [`Standing`], and for every
//! place of hip and pelvis a [`Stood`]: angles of one side, Jacobians, torques of the limbs, inertia.
//! Coordinates are ankle, knee, hip (in the leg's own plane), lower back, and the shoulder of a hanging
//! arm; those of the legs move hip and pelvis, and everything above follows.

use super::leg_in_space::{Feet, HipMotion, LegInSpace, PlacedLeg};
use super::limb_weight::{BodyPart, LimbWeight};
use super::linkage::{Link, Linkage, Placed};
use super::trunk_links::{pelvis_and_thorax, straight_arm};
use crate::anatomy::{Lifter, SegmentName};
use crate::error::{Error, PathFault, Result};
use crate::numeric::{Point, brent};
use crate::units::STANDARD_GRAVITY_M_S2;
use nalgebra::Vector3;
use std::f64::consts::PI;

/// A lifter on both feet, one side with half of what it carries.
#[derive(Debug, Clone)]
pub(super) struct Standing {
    leg: LegInSpace,
    /// Pelvis (turned against the level), thorax and, where it hangs, the arm.
    upper: Linkage,
    /// Height of the ankle, m.
    ankle_m: f64,
    /// Heel and ball in front of the ankle as seen from the side, m.
    pub heel_m: f64,
    pub ball_m: f64,
    /// Toes in front of the ankle along the foot, m.
    pub toe_m: f64,
    foot_share: f64,
    foot_n: f64,
    foot_x_m: f64,
}

/// Index of the rest of the trunk above the pelvis in the upper chain.
pub(super) const THORAX: usize = 1;
/// Index of the straight arm, where there is one.
pub(super) const ARM: usize = 2;

/// Tolerance of a place of the hip, rad: slopes are differences of these places.
const CLOSE_RAD: f64 = 1.0e-14;

/// Where hip and pelvis are and what they do when an angle turns.
#[derive(Debug)]
pub(super) struct Stood<'a> {
    standing: &'a Standing,
    leg: PlacedLeg,
    motion: HipMotion,
    /// Pelvis, thorax and arm in place.
    pub upper: Placed<'a>,
}

impl Standing {
    /// The lifter; with `hands_at_m`, a straight arm of that length hangs from the shoulder.
    pub(super) fn new(lifter: &Lifter, feet: &Feet, hands_at_m: Option<f64>) -> Self {
        let (pelvis, thorax) = pelvis_and_thorax(lifter, hands_at_m.is_none());
        let mut links = vec![pelvis.turned_by(0, 1.0), thorax.turned_by(1, -1.0)];
        if let Some(hands_m) = hands_at_m {
            links.push(straight_arm(lifter, hands_m).turned_by(2, 1.0).offset(-PI));
        }
        let ankle_m = lifter.build.ankle_height.as_m();
        let leg = LegInSpace::new(
            Link::distal(lifter.segment(SegmentName::Shank)),
            Link::distal(lifter.segment(SegmentName::Thigh)),
            ankle_m,
            0.5 * lifter.build.hip_breadth.as_m(),
            feet,
        );
        let foot = lifter.segment(SegmentName::Foot);
        let heel_m = lifter.build.heel_to_ankle.as_m();
        let foot_share = leg.foot_share();
        Self {
            upper: Linkage {
                base: Point::ORIGIN,
                base_direction_rad: 0.0,
                links,
            },
            ankle_m,
            heel_m: -heel_m * foot_share,
            ball_m: lifter.build.ankle_to_ball.as_m() * foot_share,
            toe_m: foot.length.as_m() - heel_m,
            foot_share,
            foot_n: foot.mass.as_kg() * STANDARD_GRAVITY_M_S2,
            foot_x_m: (foot.centre_of_mass * foot.length.as_m() - heel_m) * foot_share,
            leg,
        }
    }

    /// Place at a share of the way from heel to toe as seen from the side, m in front of the ankle.
    pub(super) fn along_the_foot_m(&self, share: f64) -> f64 {
        self.heel_m + share * (self.toe_m * self.foot_share - self.heel_m)
    }

    pub(super) fn shank_m(&self) -> f64 {
        self.leg.shank_m()
    }

    pub(super) fn thigh_m(&self) -> f64 {
        self.leg.thigh_m()
    }

    pub(super) fn pelvis_m(&self) -> f64 {
        self.upper.links[0].length_m
    }

    /// Hip joint to shoulder joint of a straight trunk, m.
    pub(super) fn trunk_m(&self) -> f64 {
        self.pelvis_m() + self.upper.links[THORAX].length_m
    }

    /// How many coordinates there are.
    pub(super) fn coordinates(&self) -> usize {
        self.upper.links.len() + 2
    }

    /// The leg, to ask what a place of the hip does to it.
    pub(super) const fn leg(&self) -> &LegInSpace {
        &self.leg
    }

    /// The hip over a leg whose shank leans forward so, as seen from the side.
    ///
    /// **Fails** if no lean of the whole leg gives it.
    pub(super) fn hip_over(&self, shank: f64, knee: f64) -> Result<Point> {
        let far_m = self.leg.span_m(knee);
        let at = |lean: f64| Point::new(far_m * -lean.sin(), self.ankle_m + far_m * lean.cos());
        // Beyond these leans a bent leg has left the plane of its foot.
        let lean = brent(-1.2, 1.0, CLOSE_RAD, |lean| {
            self.leg.lean_under(at(lean)) - shank
        })?;
        Ok(at(lean))
    }

    /// The hip of a leg whose shank leans so, at a distance from the place that its trunk bears.
    ///
    /// The hip is sought behind the line from ankle to bearing: on it the knee is bent most, and from
    /// there back the shank only grows more upright. `None` if the trunk cannot be turned so.
    pub(super) fn hip_below(&self, bearing: Point, reach_m: f64, shank: f64) -> Option<Point> {
        let at = |turn: f64| bearing - Point::from_polar(reach_m, turn);
        let most = (bearing - Point::new(0.0, self.ankle_m)).angle_rad();
        let turn = brent(-0.6, most, CLOSE_RAD, |turn| {
            self.leg.lean_under(at(turn)) - shank
        });
        turn.ok().map(at)
    }

    /// The lifter with hip and pelvis here; `above`: lower back, and the shoulder of a hanging arm.
    ///
    /// **Fails** if the knee is straight.
    pub(super) fn stood(
        &self,
        range: f64,
        hip: Point,
        pelvis_rad: f64,
        above: &[f64],
    ) -> Result<Stood<'_>> {
        let leg = self.leg.under(hip);
        let motion = self.leg.hip_motion(&leg, pelvis_rad);
        let motion = motion.ok_or_else(|| Error::bad(PathFault::PoseNotFinite { range }))?;
        let mut turns = vec![pelvis_rad];
        turns.extend_from_slice(above);
        Ok(Stood {
            standing: self,
            leg,
            motion,
            upper: self.upper.place_from(hip, &turns),
        })
    }

    /// Weight of this side, foot included, N.
    pub(super) fn weight_n(&self) -> f64 {
        let links: f64 = self.upper.links.iter().map(|link| link.mass_kg).sum();
        self.foot_n + (links + self.leg.mass_kg()) * STANDARD_GRAVITY_M_S2
    }
}

impl Stood<'_> {
    /// What a change with hip forward, hip up and turn of the pelvis is with the leg's angles, and on.
    fn with_angles(&self, hip: Point, upper: &[f64]) -> Vec<f64> {
        let legs = self.motion.transpose() * Vector3::new(hip.x, hip.z, upper[0]);
        let mut with = vec![legs.x, legs.y, legs.z];
        with.extend_from_slice(&upper[1..]);
        with
    }

    /// How a point fixed to a link of the upper chain moves with every coordinate, m/rad.
    pub(super) fn jacobian(&self, link: usize, point: Point) -> Vec<Point> {
        let columns = self.upper.jacobian(link, point);
        let part = |of: fn(&Point) -> f64| columns.iter().map(of).collect::<Vec<_>>();
        let forward = self.with_angles(Point::new(1.0, 0.0), &part(|column| column.x));
        let up = self.with_angles(Point::new(0.0, 1.0), &part(|column| column.z));
        forward
            .into_iter()
            .zip(up)
            .map(|(x, z)| Point::new(x, z))
            .collect()
    }

    /// Torque of the limbs' weight on every coordinate, N·m.
    pub(super) fn gravity_nm(&self) -> Vec<f64> {
        let raised = self.standing.leg.raised_kg_m(&self.leg);
        let carried_kg = self.upper.centre_of_mass().0;
        let hip = Point::new(raised.x, raised.z + carried_kg) * -STANDARD_GRAVITY_M_S2;
        self.with_angles(hip, &self.upper.gravity_nm())
    }

    /// Shank, thigh, pelvis, thorax and the arm where it hangs.
    pub(super) fn limbs(&self) -> Vec<LimbWeight> {
        let legs = self.standing.leg.raised_m(&self.leg);
        let masses_kg = self.standing.leg.masses_kg();
        let still = vec![0.0; self.standing.upper.links.len()];
        let leg = |(part, index): (BodyPart, usize)| LimbWeight {
            part,
            mass_kg: masses_kg[index],
            raised_m: self.with_angles(legs[index], &still),
        };
        let hangs = self.standing.upper.links.len() > ARM;
        let above: &[BodyPart] = if hangs {
            &[
                BodyPart::Pelvis,
                BodyPart::ThoraxAndHead,
                BodyPart::WholeArm,
            ]
        } else {
            &[BodyPart::Pelvis, BodyPart::ThoraxHeadAndArm]
        };
        let carried = |(link, part): (usize, &BodyPart)| LimbWeight {
            part: *part,
            mass_kg: self.upper.mass_kg(link),
            raised_m: self.with_angles(Point::new(0.0, 1.0), &self.upper.raised_m(link)),
        };
        let legs = [(BodyPart::Shank, 0), (BodyPart::Thigh, 1)].into_iter();
        legs.map(leg)
            .chain(above.iter().enumerate().map(carried))
            .collect()
    }

    /// Effective mass of this side along a path with these slopes, kg·m².
    pub(super) fn effective_mass(&self, slopes_rad: &[f64]) -> f64 {
        let moved = self.motion * Vector3::new(slopes_rad[0], slopes_rad[1], slopes_rad[2]);
        let hip = Point::new(moved.x, moved.y);
        let mut turns = vec![moved.z];
        turns.extend_from_slice(&slopes_rad[3..]);
        self.standing.leg.effective_mass(&self.leg, hip)
            + self.upper.effective_mass_carried(hip, &turns)
    }

    /// Moment of this side's weight about the floor under the ankle, N·m.
    pub(super) fn weight_moment_nm(&self) -> f64 {
        let (carried_kg, centre) = self.upper.centre_of_mass();
        let legs_kg_m = self.standing.leg.mass_moment_kg_m(&self.leg).x;
        (carried_kg * centre.x + legs_kg_m) * STANDARD_GRAVITY_M_S2
            + self.standing.foot_n * self.standing.foot_x_m
    }

    /// Ankle, knee, hip, lower back and shoulder as seen from the side.
    pub(super) fn joints(&self) -> Vec<Point> {
        let knee = Point::new(self.leg.knee().x, self.leg.knee().z);
        let mut joints = vec![Point::new(0.0, self.standing.ankle_m), knee];
        joints.extend_from_slice(&self.upper.joints[..=THORAX + 1]);
        joints
    }
}
