//! Bridge: shoulders on a bench, feet on the floor, a bar on the hips (hip thrust).
//!
//! In: height of the bench, how far the hips sink, knee angle at the top. Out: ankle, knee and hip
//! angles. Bench and floor push as they like inside their friction cones, and the whole body must
//! balance between them: three conditions beside the joints'.

use super::bridge_record::BridgeRecord;
use super::leg_chain::{LegChain, PELVIS, THORAX};
use super::limb_lines::{BodyLines, bench, floor};
use super::limb_weight::{BodyPart, LimbWeight, limbs_of};
use super::linkage::along;
use super::load_point::{LoadPoint, travelled};
use super::pose::{
    Affine, Balance, BodyOutline, Pose, PushPlace, Reaction, ReactionLimit, ReactionReading, View,
};
use super::record::Movement;
use super::traced_path::TracedPath;
use super::trunk_links::{coordinates_upward, from_hip};
use crate::anatomy::{Lifter, ShoulderMotion};
use crate::error::{BridgeFault, Error, Result};
use crate::numeric::{BendSide, Point, brent, close_two_links};
use crate::units::{Angle, Length};
use std::f64::consts::{FRAC_PI_2, PI};

/// A bridge ready for a lifter.
#[derive(Debug, Clone)]
pub struct BridgePath {
    record: BridgeRecord,
    chain: LegChain,
    figure: BodyLines,
    /// The bench's place on the thorax from the hip joint, in the pelvis's axes, m.
    from_hip: Point,
    /// Where the bench bears the trunk; the ankle is at x = 0.
    pivot: Point,
    heights_m: (f64, f64),
}

impl BridgePath {
    /// The bridge of a movement for a lifter.
    ///
    /// **Fails** if a technique parameter is missing or the limbs cannot make the last pose.
    pub fn new(record: &BridgeRecord, movement: &Movement, lifter: &Lifter) -> Result<Self> {
        let chain = LegChain::new(lifter);
        let knee = movement.angle_rad("knee_angle")?.unwrap_or(FRAC_PI_2);
        let on_trunk_m = (record.pivot * chain.trunk_m(), 0.0);
        let from_hip = from_hip(chain.pelvis_m(), on_trunk_m, record.lumbar.as_rad());
        let pivot_m = from_hip.length();
        // Thigh against the line from hip to bench, which a bent back turns against the pelvis.
        let hip_angle = record.end_hip.as_rad() - from_hip.angle_rad();
        // Height of the ankle when that line slopes down from the bench to the hips by this much.
        let ankle_z = |slope: f64| {
            record.pivot_height.as_m() - pivot_m * slope.sin()
                + chain.thigh_m() * (hip_angle - slope).sin()
                - chain.shank_m() * (hip_angle - slope - knee + PI).sin()
        };
        let target = chain.linkage.base.z;
        let slope = brent(-1.2, 1.2, 1.0e-12, |slope| ankle_z(slope) - target).map_err(|_| {
            Error::bad(BridgeFault::FeetOffTheFloor {
                knee: Angle::from_rad(knee),
                bench: record.pivot_height,
            })
        })?;
        let shank_rad = PI - slope + hip_angle - knee;
        let (_, hip) = chain.knee_and_hip(FRAC_PI_2 - shank_rad, knee);
        let pivot = hip + Point::from_polar(pivot_m, PI - slope);
        let heights_m = (record.start_hip_height.as_m(), hip.z);
        if heights_m.1 <= heights_m.0 + 0.02 {
            return Err(Error::bad(BridgeFault::NoWayUp {
                start: Length::from_m(heights_m.0),
                end: Length::from_m(heights_m.1),
            }));
        }
        Ok(Self {
            record: record.clone(),
            figure: BodyLines::of(lifter),
            chain,
            from_hip,
            pivot,
            heights_m,
        })
    }

    fn hip(&self, s: f64) -> Result<Point> {
        let (from, to) = self.heights_m;
        let height = from + s * (to - from);
        let drop = self.pivot.z - height;
        let pivot_m = self.from_hip.length();
        if drop.abs() >= pivot_m {
            return Err(Error::bad(BridgeFault::HipsTooLow {
                below: Length::from_m(drop),
                from_bench: Length::from_m(pivot_m),
            }));
        }
        let across = (pivot_m * pivot_m - drop * drop).sqrt();
        Ok(Point::new(self.pivot.x + across, height))
    }

    /// Pushes of bench and floor: the two edges of each friction cone, floor under heel and ball.
    fn contacts(&self) -> [(&'static str, Point, Point); 6] {
        let (bench, ground) = (self.record.bench_friction, self.record.floor_friction);
        let heel = Point::new(self.chain.heel_m, 0.0);
        let ball = Point::new(self.chain.ball_m, 0.0);
        [
            ("bench_forward", self.pivot, Point::new(bench, 1.0)),
            ("bench_backward", self.pivot, Point::new(-bench, 1.0)),
            ("heel_forward", heel, Point::new(ground, 1.0)),
            ("heel_backward", heel, Point::new(-ground, 1.0)),
            ("ball_forward", ball, Point::new(ground, 1.0)),
            ("ball_backward", ball, Point::new(-ground, 1.0)),
        ]
    }

    /// What each push does to the joints; the floor's reach none of them.
    fn reactions(&self, on_pivot: &[Point]) -> Vec<Reaction> {
        let boundless = ReactionLimit {
            constant: f64::INFINITY,
            per_load: [0.0, 0.0],
        };
        let contacts = self.contacts().into_iter().enumerate();
        contacts
            .map(|(index, (name, at, force))| Reaction {
                name,
                place: PushPlace::Beside {
                    at,
                    way: force,
                    is_floor: index >= 2,
                },
                column: if index < 2 {
                    on_pivot.iter().map(|column| column.dot(force)).collect()
                } else {
                    vec![0.0; self.chain.linkage.links.len()]
                },
                least: ReactionLimit::default(),
                most: boundless,
            })
            .collect()
    }

    /// Forces and moment (about the floor under the ankle) of weight, load and pushes sum to nothing.
    fn balances(&self, weight_moment_nm: f64, hip: Point) -> Vec<Balance> {
        let contacts = self.contacts();
        let of = |part: fn(Point, Point) -> f64| {
            contacts.iter().map(|c| part(c.1, c.2)).collect::<Vec<_>>()
        };
        vec![
            Balance {
                constant: 0.0,
                per_load: [1.0, 0.0],
                reactions: of(|_, push| push.x),
            },
            Balance {
                constant: -self.chain.weight_n(),
                per_load: [0.0, 1.0],
                reactions: of(|_, push| push.z),
            },
            Balance {
                constant: -weight_moment_nm,
                per_load: [-hip.z, hip.x],
                reactions: of(Point::cross),
            },
        ]
    }

    fn readings(&self) -> Vec<ReactionReading> {
        let contacts = self.contacts();
        let sum = |of: &dyn Fn(usize) -> f64| Affine {
            reactions: (0..contacts.len()).map(of).collect(),
            ..Affine::default()
        };
        let on_floor = |k: usize| f64::from(u8::from(k >= 2));
        vec![
            ReactionReading {
                name: "bench_n",
                value: sum(&|k| 1.0 - on_floor(k)),
                over: None,
            },
            ReactionReading {
                name: "centre_of_pressure_m",
                value: sum(&|k| on_floor(k) * contacts[k].1.x),
                over: Some(sum(&on_floor)),
            },
        ]
    }

    fn outline(&self, joints: &[Point], thorax_rad: f64, bar: Point) -> BodyOutline {
        let shoulder = joints[THORAX + 1];
        // Limbs are drawn as lines, so the bench, across which the lifter lies, reaches up to the trunk's.
        let pad = self.pivot - Point::new(0.0, 0.03);
        BodyOutline {
            view: View::Side,
            limbs: vec![
                joints[..=THORAX + 1].to_vec(),
                self.figure.arm(shoulder, bar, BendSide::Right),
                self.figure.foot(joints[0], 0.0, false),
            ],
            head: Some(self.figure.head(shoulder, thorax_rad)),
            props: bench(pad - Point::new(0.15, 0.0), pad + Point::new(0.01, 0.0))
                .into_iter()
                .chain([floor(self.pivot.x - 0.6, self.chain.toe_m + 0.15)])
                .collect(),
            load: bar,
            centres: joints.to_vec(),
        }
    }
}

impl TracedPath for BridgePath {
    fn angles(&self, s: f64) -> Result<Vec<f64>> {
        let hip = self.hip(s)?;
        let closed = close_two_links(
            self.chain.linkage.base,
            hip,
            self.chain.shank_m(),
            self.chain.thigh_m(),
            BendSide::Right,
        )
        .map_err(|why| Error::bad(BridgeFault::CannotClose { range: s, why }))?;
        let positive = |angle: f64| if angle < 0.0 { angle + 2.0 * PI } else { angle };
        let thigh_rad = positive(closed.second_rad);
        let pelvis_rad = positive((self.pivot - hip).angle_rad()) - self.from_hip.angle_rad();
        Ok(vec![
            FRAC_PI_2 - closed.first_rad,
            thigh_rad - closed.first_rad,
            thigh_rad - pelvis_rad,
            self.record.lumbar.as_rad(),
        ])
    }

    fn pose(&self, s: f64, angles: &[f64], slopes: &[f64]) -> Result<Pose> {
        let placed = self.chain.linkage.place(angles);
        let hip = placed.joints[PELVIS];
        let load_jacobian = placed.jacobian(PELVIS - 1, hip);
        let speed = along(&load_jacobian, slopes);
        let along_m = self.record.pivot * self.chain.trunk_m() - self.chain.pelvis_m();
        let pivot = placed.point(THORAX, along_m, 0.0);
        let reactions = self.reactions(&placed.jacobian(THORAX, pivot));
        let bar = hip + Point::new(0.0, self.record.bar_above_hip.as_m());
        Ok(Pose {
            coordinates: coordinates_upward(angles, slopes),
            held: Vec::new(),
            shoulder: ShoulderMotion::default(),
            load: LoadPoint {
                range: s,
                x_m: bar.x,
                z_m: bar.z,
                dx_ds_m: speed.x,
                dz_ds_m: speed.z,
                travel_m: travelled(hip.z - self.heights_m.0),
                lever_rad: 0.0,
            },
            load_jacobian,
            gravity_nm: placed.gravity_nm(),
            reactions,
            balances: self.balances(self.chain.weight_moment_nm(&placed), hip),
            readings: self.readings(),
            limb_inertia: placed.effective_mass(slopes),
            outline: self.outline(&placed.joints, placed.directions_rad[THORAX], bar),
        })
    }

    fn limbs(&self, _: f64, angles: &[f64]) -> Result<Vec<LimbWeight>> {
        let parts = [
            BodyPart::Shank,
            BodyPart::Thigh,
            BodyPart::Pelvis,
            BodyPart::ThoraxHeadAndArm,
        ];
        Ok(limbs_of(&self.chain.linkage.place(angles), &parts))
    }
}
