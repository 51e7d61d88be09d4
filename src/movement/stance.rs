//! Stance: a lifter on both feet with a bar on the back or in the hands.
//!
//! In: how the ankle bends over the range (published key poses), depth and bar position. Out: ankle,
//! knee and hip angles that keep the bar over the middle of the foot on its whole way up. Lifter and
//! bar must balance over the foot: the centre of pressure is part of the pose's programme.

use super::leg_chain::{ARM, LegChain, THORAX, shoulder_of};
use super::limb_lines::{BodyLines, floor};
use super::linkage::along;
use super::load_point::LoadPoint;
use super::pose::{
    Affine, Balance, BodyOutline, Pose, Reaction, ReactionLimit, ReactionReading, View,
};
use super::record::Movement;
use super::stance_record::{BarPlace, StanceRecord};
use super::traced_path::TracedPath;
use crate::anatomy::{Lifter, SegmentName};
use crate::error::{Error, Result, StanceFault};
use crate::numeric::{BendSide, Beyond, Point, Spline, close_two_links};
use crate::units::Length;
use std::f64::consts::{FRAC_PI_2, PI};

/// A stance ready for a lifter.
#[derive(Debug, Clone)]
pub struct StancePath {
    chain: LegChain,
    figure: BodyLines,
    /// What bears the bar, along and behind a straight trunk, m: a place on the back, or the shoulder.
    on_trunk_m: (f64, f64),
    /// How far the lower back is bent all the way, rad.
    lumbar: f64,
    /// Distance from the shoulder to a bar in the hands, m.
    arm_m: Option<f64>,
    start_arms: f64,
    arms_course: Spline,
    bar_x_m: f64,
    /// Heights of the bar at start and end, m.
    heights_m: (f64, f64),
    start_ankle: f64,
    end_ankle: f64,
    course: Spline,
}

impl StancePath {
    /// The stance of a movement for a lifter.
    ///
    /// **Fails** if a technique parameter is missing, or the limbs cannot make the first or last pose.
    pub fn new(record: &StanceRecord, movement: &Movement, lifter: &Lifter) -> Result<Self> {
        let (turned, arm_m) = match &record.bar {
            BarPlace::OnBack { .. } => (None, None),
            BarPlace::InHands { sumo, reach, .. } => {
                let wide = movement.choice("stance")? == "sumo";
                (wide.then_some(sumo), Some(arm_m(lifter) + reach.as_m()))
            }
        };
        let chain = LegChain::new(lifter, turned, arm_m);
        let mut path = Self {
            bar_x_m: chain.along_the_foot_m(record.bar_over),
            figure: BodyLines::of(lifter),
            on_trunk_m: (chain.trunk_m(), 0.0),
            lumbar: record.lumbar.as_rad(),
            chain,
            arm_m,
            start_arms: 0.0,
            arms_course: Spline::through(&[(0.0, 0.0), (1.0, 0.0)], Beyond::ConstantSlope)?,
            heights_m: (0.0, 0.0),
            start_ankle: 0.0,
            end_ankle: record.end_ankle.as_rad(),
            course: Spline::through(&record.ankle_course, Beyond::ConstantSlope)?,
        };
        path.set_start(&record.bar, movement, lifter)?;
        path.heights_m.1 = path.bar_height_m(path.end_ankle, record.end_knee.as_rad())?;
        if path.heights_m.1 <= path.heights_m.0 + 0.01 {
            return Err(Error::bad(StanceFault::NoWayUp {
                start: Length::from_m(path.heights_m.0),
                end: Length::from_m(path.heights_m.1),
            }));
        }
        Ok(path)
    }

    /// The first pose, as the place of the bar has it.
    fn set_start(&mut self, bar: &BarPlace, movement: &Movement, lifter: &Lifter) -> Result<()> {
        match bar {
            BarPlace::OnBack {
                high,
                low,
                ankle_per_knee,
            } => {
                let place = match movement.choice("bar_position")? {
                    "low" => low,
                    _ => high,
                };
                let trunk_m = self.chain.trunk_m();
                self.on_trunk_m = (place.along * trunk_m, place.behind * trunk_m);
                self.start_on_back(*ankle_per_knee, movement, lifter)?;
            }
            BarPlace::InHands {
                start_height,
                start_ankle,
                start_arms,
                arms_course,
                ..
            } => {
                self.start_ankle = start_ankle.as_rad();
                self.start_arms = start_arms.as_rad();
                self.arms_course = Spline::through(arms_course, Beyond::ConstantSlope)?;
                self.heights_m.0 = start_height.as_m();
            }
        }
        Ok(())
    }

    /// The lowest pose: thigh at its depth, ankle in proportion, knee as far forward as allowed.
    ///
    /// ```text
    /// knee = 90° + depth + ankle,   ankle = k·knee  →  ankle = k·(90° + depth)/(1 − k)
    /// shank·sin(ankle) ≤ toe + knee_travel
    /// ```
    /// `depth` how far the hip is below the level thigh, `k` ankle over knee.
    fn start_on_back(
        &mut self,
        ankle_per_knee: f64,
        movement: &Movement,
        lifter: &Lifter,
    ) -> Result<()> {
        let depth = movement.angle_rad("depth")?.unwrap_or(0.0);
        let thigh = FRAC_PI_2 + depth;
        let mut ankle = ankle_per_knee * thigh / (1.0 - ankle_per_knee);
        if let Some(travel_m) = movement.length_m("knee_travel", lifter)? {
            let reach = (self.chain.toe_m + travel_m) / self.chain.shank_m();
            ankle = ankle.min(reach.clamp(-0.5, 1.0).asin());
        }
        self.start_ankle = ankle;
        self.heights_m.0 = self.bar_height_m(ankle, thigh + ankle)?;
        Ok(())
    }

    /// Height of the bar when it is over the foot with these angles and plumb arms, m.
    fn bar_height_m(&self, ankle: f64, knee: f64) -> Result<f64> {
        let (_, hip) = self.chain.knee_and_hip(ankle, knee);
        let reach = self.from_hip().length();
        let forward = self.bar_x_m - hip.x;
        if forward.abs() >= reach {
            return Err(Error::bad(StanceFault::BarNotOverFoot {
                hip_behind: Length::from_m(forward),
                hip_to_bar: Length::from_m(reach),
            }));
        }
        let on_trunk = hip.z + (reach * reach - forward * forward).sqrt();
        Ok(on_trunk - self.arm_m.unwrap_or(0.0))
    }

    /// The bearing from the hip joint in the pelvis's axes.
    fn from_hip(&self) -> Point {
        self.chain.from_hip(self.on_trunk_m, self.lumbar)
    }

    fn ankle(&self, s: f64) -> f64 {
        self.end_ankle + self.course.value(s) * (self.start_ankle - self.end_ankle)
    }

    fn bar(&self, s: f64) -> Point {
        let (from, to) = self.heights_m;
        Point::new(self.bar_x_m, from + s * (to - from))
    }

    /// How far the arms lean from plumb, the shoulders in front of the bar, rad.
    fn arms(&self, s: f64) -> f64 {
        self.start_arms * self.arms_course.value(s)
    }

    /// The place on the trunk that bears the bar: on the back, or the shoulder.
    fn bearing(&self, s: f64) -> Point {
        let arm = self.arm_m.unwrap_or(0.0);
        self.bar(s) + Point::from_polar(arm, FRAC_PI_2 - self.arms(s))
    }

    /// Pressure under the foot: its moment about the ankle balances lifter and load.
    ///
    /// ```text
    /// N·x_p − Σ w·x + (x·F_z − z·F_x) = 0,   heel·N ≤ N·x_p ≤ ball·N,   N = Σ w − F_z
    /// ```
    /// `N` force of the floor (N), `x_p` centre of pressure (m), `w` weights (N), `F` load (N) at
    /// `x`, `z` (m).
    fn pressure(&self, weight_moment_nm: f64, at: Point) -> (Reaction, Balance, ReactionReading) {
        let weight_n = self.chain.weight_n();
        let at_most = |place_m: f64| ReactionLimit {
            constant: place_m * weight_n,
            per_load: [0.0, -place_m],
        };
        let reaction = Reaction {
            name: "centre_of_pressure",
            column: vec![0.0; self.chain.linkage.links.len()],
            least: at_most(self.chain.heel_m),
            most: at_most(self.chain.ball_m),
        };
        let balance = Balance {
            constant: -weight_moment_nm,
            per_load: [-at.z, at.x],
            reactions: vec![1.0],
        };
        let reading = ReactionReading {
            name: "centre_of_pressure_m",
            value: Affine {
                reactions: vec![1.0],
                ..Affine::default()
            },
            over: Some(Affine {
                constant: weight_n,
                per_load: [0.0, -1.0],
                reactions: vec![0.0],
            }),
        };
        (reaction, balance, reading)
    }

    fn outline(&self, joints: &[Point], thorax_rad: f64, bar: Point) -> BodyOutline {
        let shoulder = joints[THORAX + 1];
        let arm = if self.arm_m.is_some() {
            vec![shoulder, shoulder.towards(bar, 0.5), bar]
        } else {
            self.figure.arm(shoulder, bar, BendSide::Left)
        };
        BodyOutline {
            view: View::Side,
            limbs: vec![
                joints[..=THORAX + 1].to_vec(),
                arm,
                self.figure.foot(joints[0], 0.0, false),
            ],
            head: Some(self.figure.head(shoulder, thorax_rad)),
            props: vec![floor(-0.55, 0.65)],
            load: bar,
        }
    }
}

/// Shoulder to grip of the straight arm, m.
fn arm_m(lifter: &Lifter) -> f64 {
    let hand = lifter.segment(SegmentName::Hand);
    lifter.segment(SegmentName::UpperArm).length.as_m()
        + lifter.segment(SegmentName::Forearm).length.as_m()
        + hand.centre_of_mass * hand.length.as_m()
}

impl TracedPath for StancePath {
    /// Two links, thigh and hip to bar (or shoulder), close between the knee and the place over the foot.
    fn angles(&self, s: f64) -> Result<Vec<f64>> {
        let ankle = self.ankle(s);
        let shank_rad = FRAC_PI_2 - ankle;
        let knee_at = self.chain.linkage.base + Point::from_polar(self.chain.shank_m(), shank_rad);
        let from_hip = self.from_hip();
        let reach = from_hip.length();
        let closed = close_two_links(
            knee_at,
            self.bearing(s),
            self.chain.thigh_m(),
            reach,
            BendSide::Left,
        )
        .map_err(|why| {
            Error::bad(StanceFault::CannotClose {
                range: s,
                thigh: Length::from_m(self.chain.thigh_m()),
                hip_to_bar: Length::from_m(reach),
                why,
            })
        })?;
        let mut thigh_rad = closed.first_rad;
        if thigh_rad < -FRAC_PI_2 {
            thigh_rad += 2.0 * PI;
        }
        let pelvis_rad = closed.second_rad - from_hip.angle_rad();
        let mut angles = vec![
            ankle,
            thigh_rad - shank_rad,
            thigh_rad - pelvis_rad,
            self.lumbar,
        ];
        if self.arm_m.is_some() {
            let thorax_rad = pelvis_rad - self.lumbar;
            angles.push(FRAC_PI_2 - self.arms(s) - thorax_rad);
        }
        Ok(angles)
    }

    fn pose(&self, s: f64, angles: &[f64], slopes: &[f64]) -> Result<Pose> {
        let placed = self.chain.linkage.place(angles);
        let (link, bar) = match self.arm_m {
            None => {
                let along_m = self.on_trunk_m.0 - self.chain.pelvis_m();
                (THORAX, placed.point(THORAX, along_m, self.on_trunk_m.1))
            }
            Some(arm_m) => (ARM, placed.point(ARM, arm_m, 0.0)),
        };
        let load_jacobian = placed.jacobian(link, bar);
        let speed = along(&load_jacobian, slopes);
        let (reaction, balance, reading) = self.pressure(self.chain.weight_moment_nm(&placed), bar);
        let coordinates = LegChain::coordinates(angles, slopes);
        Ok(Pose {
            shoulder: shoulder_of(&coordinates),
            coordinates,
            held: Vec::new(),
            load: LoadPoint {
                range: s,
                x_m: bar.x,
                z_m: bar.z,
                dx_ds_m: speed.x,
                dz_ds_m: speed.z,
                travel_m: bar.z - self.heights_m.0,
                lever_rad: 0.0,
            },
            load_jacobian,
            gravity_nm: placed.gravity_nm(),
            reactions: vec![reaction],
            balances: vec![balance],
            readings: vec![reading],
            limb_inertia: placed.effective_mass(slopes),
            outline: self.outline(&placed.joints, placed.directions_rad[THORAX], bar),
        })
    }
}
