//! Leg press: hips in a fixed seat, feet on a plate that moves along rails.
//!
//! In: angle of the rails, height of the foot on the plate, knee angles at both ends. Out: hip, knee
//! and ankle angles. The plate stands square to the rails; what the foot presses along the plate is
//! free within friction, and the centre of pressure is free within the foot.

use super::leg_press_record::LegPressRecord;
use super::limb_lines::{BACK_M, BodyLines, floor};
use super::limb_weight::{BodyPart, LimbWeight, limbs_of};
use super::linkage::{Link, Linkage, along};
use super::load_point::LoadPoint;
use super::pose::{
    Affine, BodyOutline, Coordinate, Pose, PushPlace, Reaction, ReactionLimit, ReactionReading,
    View,
};
use super::record::Movement;
use super::traced_path::TracedPath;
use super::trunk_links::from_hip;
use crate::anatomy::{Dof, Lifter, SegmentName, ShoulderMotion};
use crate::error::{Error, LegPressFault, Result};
use crate::numeric::{BendSide, Point, close_two_links};
use crate::units::Length;
use std::f64::consts::{FRAC_PI_2, PI};

/// A leg press ready for a lifter.
#[derive(Debug, Clone)]
pub struct LegPressPath {
    linkage: Linkage,
    figure: BodyLines,
    rails_rad: f64,
    trunk_rad: f64,
    friction: f64,
    /// Ankle above the line through the hip along the rails, m.
    ankle_up_m: f64,
    /// Ankle along the rails from the hip at start and end, m.
    ends_m: (f64, f64),
    ball_m: f64,
}

/// Index of the foot in the chain.
const FOOT: usize = 2;

impl LegPressPath {
    /// The leg press of a movement for a lifter.
    ///
    /// **Fails** if a technique parameter is missing or the foot is out of the leg's reach.
    pub fn new(record: &LegPressRecord, movement: &Movement, lifter: &Lifter) -> Result<Self> {
        let rails_rad = movement.angle_rad("sled_angle")?.unwrap_or(0.0);
        let trunk_rad = rails_rad + record.back.as_rad();
        let trunk_m = lifter.segment(SegmentName::Trunk).length.as_m();
        let pelvis_m = lifter.build.hip_to_lumbar.as_m();
        let turned_under = from_hip(pelvis_m, (trunk_m, 0.0), record.lumbar.as_rad());
        let pelvis_rad = trunk_rad - turned_under.angle_rad();
        let figure = BodyLines::of(lifter);
        let foot_segment = lifter.segment(SegmentName::Foot);
        let mut foot = Link::proximal(foot_segment)
            .turned_by(2, 1.0)
            .offset(FRAC_PI_2);
        foot.centre_m = foot.length_m * foot_segment.centre_of_mass - figure.heel_m;
        let middle_m = 0.5 * (figure.toe_m - figure.heel_m);
        let mut path = Self {
            linkage: Linkage {
                base: Point::new(0.0, record.seat_height.as_m()),
                base_direction_rad: pelvis_rad - PI,
                links: vec![
                    Link::proximal(lifter.segment(SegmentName::Thigh)).turned_by(0, 1.0),
                    Link::proximal(lifter.segment(SegmentName::Shank)).turned_by(1, -1.0),
                    foot,
                ],
            },
            rails_rad,
            trunk_rad,
            friction: record.friction,
            ankle_up_m: movement.length_m("foot_height", lifter)?.unwrap_or(0.0) - middle_m,
            ends_m: (0.0, 0.0),
            ball_m: lifter.build.ankle_to_ball.as_m(),
            figure,
        };
        path.ends_m = (
            path.along_rails_m(record.start_knee.as_rad())?,
            path.along_rails_m(record.end_knee.as_rad())?,
        );
        Ok(path)
    }

    /// Ankle along the rails at a knee angle, m: `√(a² + b² + 2ab·cos k − h²)`.
    fn along_rails_m(&self, knee: f64) -> Result<f64> {
        let (a, b) = (self.figure.thigh_m, self.figure.shank_m);
        let squared = a * a + b * b + 2.0 * a * b * knee.cos() - self.ankle_up_m.powi(2);
        if squared <= 0.0 {
            let reach_2 = squared + self.ankle_up_m.powi(2);
            return Err(Error::bad(LegPressFault::FootTooHigh {
                above_hip: Length::from_m(self.ankle_up_m),
                reach: Length::from_m(reach_2.max(0.0).sqrt()),
            }));
        }
        Ok(squared.sqrt())
    }

    fn ankle(&self, s: f64) -> Point {
        let along_m = self.ends_m.0 + s * (self.ends_m.1 - self.ends_m.0);
        let rails = Point::from_polar(1.0, self.rails_rad);
        self.linkage.base + rails * along_m + rails.quarter_turn() * self.ankle_up_m
    }

    /// Shear along the plate and pressure under the foot, both within what the normal force allows.
    ///
    /// The normal force is what the load presses along the rails: `N = −w·d`, `d` up the rails.
    fn contact(&self, shear: Vec<f64>, turn: Vec<f64>) -> (Vec<Reaction>, Vec<ReactionReading>) {
        let rails = Point::from_polar(1.0, self.rails_rad);
        let of_normal = |share: f64| ReactionLimit {
            constant: 0.0,
            per_load: [-share * rails.x, -share * rails.z],
        };
        let reactions = vec![
            Reaction {
                name: "plate_shear",
                place: PushPlace::WithLoad {
                    way: rails.quarter_turn(),
                },
                column: shear,
                least: of_normal(-self.friction),
                most: of_normal(self.friction),
            },
            Reaction {
                name: "centre_of_pressure",
                place: PushPlace::MovesLoad,
                column: turn,
                least: of_normal(-self.figure.heel_m),
                most: of_normal(self.ball_m),
            },
        ];
        (reactions, Self::readings(rails))
    }

    /// Shear, and the place of the pressure, which is its moment over the normal force.
    fn readings(rails: Point) -> Vec<ReactionReading> {
        let picked = |index: usize| Affine {
            reactions: (0..2).map(|k| f64::from(u8::from(k == index))).collect(),
            ..Affine::default()
        };
        vec![
            ReactionReading {
                name: "plate_shear_n",
                value: picked(0),
                over: None,
            },
            ReactionReading {
                name: "centre_of_pressure_m",
                value: picked(1),
                over: Some(Affine {
                    constant: 0.0,
                    per_load: [-rails.x, -rails.z],
                    reactions: vec![0.0, 0.0],
                }),
            },
        ]
    }

    fn outline(&self, joints: &[Point], plate: Point) -> BodyOutline {
        let hip = joints[0];
        let rails = Point::from_polar(1.0, self.rails_rad);
        let up_plate = rails.quarter_turn();
        let trunk = Point::from_polar(1.0, self.trunk_rad);
        let shoulder = hip + trunk * self.figure.trunk_m;
        let behind = trunk.quarter_turn() * BACK_M;
        let under = hip + rails * 0.1 - up_plate * 0.24;
        let front = plate + rails * 0.05;
        BodyOutline {
            view: View::Side,
            limbs: vec![
                vec![shoulder, hip, joints[1], joints[2]],
                self.figure
                    .foot(joints[2], self.rails_rad + FRAC_PI_2, false),
            ],
            head: Some(self.figure.head(shoulder, self.trunk_rad)),
            props: vec![
                vec![hip + behind, shoulder + behind + trunk * 0.25],
                vec![under, under + rails * (self.ends_m.1 + 0.25)],
                vec![plate - up_plate * 0.22, plate + up_plate * 0.34],
                floor(shoulder.x - 0.3, 0.9),
            ],
            load: front,
            centres: joints.to_vec(),
        }
    }
}

/// Hip, knee and ankle, from the seat outward.
fn coordinates(angles: &[f64], slopes: &[f64]) -> Vec<Coordinate> {
    [Dof::Hip, Dof::Knee, Dof::Ankle]
        .into_iter()
        .enumerate()
        .map(|(index, dof)| Coordinate::new(dof, angles[index], slopes[index]))
        .collect()
}

impl TracedPath for LegPressPath {
    fn angles(&self, s: f64) -> Result<Vec<f64>> {
        let closed = close_two_links(
            self.linkage.base,
            self.ankle(s),
            self.figure.thigh_m,
            self.figure.shank_m,
            BendSide::Left,
        )
        .map_err(|why| {
            Error::bad(LegPressFault::CannotClose {
                range: s,
                thigh: Length::from_m(self.figure.thigh_m),
                shank: Length::from_m(self.figure.shank_m),
                why,
            })
        })?;
        Ok(vec![
            closed.first_rad - self.linkage.base_direction_rad,
            closed.bend_rad,
            self.rails_rad - closed.second_rad,
        ])
    }

    fn pose(&self, s: f64, angles: &[f64], slopes: &[f64]) -> Result<Pose> {
        let placed = self.linkage.place(angles);
        let plate = placed.point(FOOT, 0.0, -self.figure.ankle_height_m);
        let rails = Point::from_polar(1.0, self.rails_rad);
        let jacobian = placed.jacobian(FOOT, plate);
        let speed = along(&jacobian, slopes);
        let (reactions, readings) = self.contact(
            jacobian
                .iter()
                .map(|column| column.dot(rails.quarter_turn()))
                .collect(),
            placed.turns(FOOT),
        );
        Ok(Pose {
            coordinates: coordinates(angles, slopes),
            held: Vec::new(),
            shoulder: ShoulderMotion::default(),
            load: LoadPoint {
                range: s,
                x_m: plate.x,
                z_m: plate.z,
                dx_ds_m: speed.x,
                dz_ds_m: speed.z,
                travel_m: s * (self.ends_m.1 - self.ends_m.0),
                lever_rad: 0.0,
            },
            // The rails bear whatever pulls the sled sideways.
            load_jacobian: jacobian
                .iter()
                .map(|column| rails * column.dot(rails))
                .collect(),
            gravity_nm: placed.gravity_nm(),
            reactions,
            balances: Vec::new(),
            readings,
            limb_inertia: placed.effective_mass(slopes),
            outline: self.outline(&placed.joints, plate),
        })
    }

    fn limbs(&self, _: f64, angles: &[f64]) -> Result<Vec<LimbWeight>> {
        let parts = [BodyPart::Thigh, BodyPart::Shank, BodyPart::Foot];
        Ok(limbs_of(&self.linkage.place(angles), &parts))
    }
}
