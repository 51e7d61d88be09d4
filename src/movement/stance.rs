//! Stance: a lifter on both feet with a bar on the back or in the hands.
//!
//! In: how the ankle bends over the range (published key poses), depth and bar position. Out: ankle,
//! knee and hip angles that keep the bar over the middle of the foot on its whole way up. Lifter and
//! bar must balance over the foot: the centre of pressure is part of the pose's programme.

use super::limb_lines::{BodyLines, floor};
use super::limb_weight::LimbWeight;
use super::linkage::along;
use super::load_point::{LoadPoint, travelled};
use super::pose::{
    Affine, Balance, BodyOutline, Pose, PushPlace, Reaction, ReactionLimit, ReactionReading, View,
};
use super::record::Movement;
use super::stance_record::{BarPlace, LiftOff, StanceRecord};
use super::standing::{ARM, Standing, THORAX};
use super::traced_path::TracedPath;
use super::trunk_links::{coordinates_upward, from_hip};
use crate::anatomy::{Lifter, SegmentName, ShoulderMotion, ShoulderPose};
use crate::error::{Error, LinksFault, Result, StanceFault};
use crate::numeric::{Beyond, Point, Spline, brent};
use crate::units::Length;
use std::f64::consts::FRAC_PI_2;

/// A stance ready for a lifter.
#[derive(Debug, Clone)]
pub struct StancePath {
    standing: Standing,
    figure: BodyLines,
    /// What bears the bar, along and behind a straight trunk, m: a place on the back, or the shoulder.
    on_trunk_m: (f64, f64),
    /// Flexion of the lower back at start and end, rad.
    lumbar: (f64, f64),
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
        let (feet, arm_m) = match &record.bar {
            BarPlace::OnBack { feet, .. } => (feet, None),
            BarPlace::InHands {
                conventional,
                sumo,
                reach,
                ..
            } => {
                let style = style(movement, conventional, sumo)?;
                (&style.feet, Some(arm_m(lifter) + reach.as_m()))
            }
        };
        let standing = Standing::new(lifter, feet, arm_m);
        let mut path = Self {
            bar_x_m: standing.along_the_foot_m(record.bar_over),
            figure: BodyLines::of(lifter),
            on_trunk_m: (standing.trunk_m(), 0.0),
            lumbar: (record.lumbar.as_rad(), record.end_lumbar.as_rad()),
            standing,
            arm_m,
            start_arms: 0.0,
            arms_course: Spline::through(&[(0.0, 0.0), (1.0, 0.0)], Beyond::ConstantSlope)?,
            heights_m: (0.0, 0.0),
            start_ankle: 0.0,
            end_ankle: record.end_ankle.as_rad(),
            course: Spline::through(&record.ankle_course, Beyond::ConstantSlope)?,
        };
        path.set_start(&record.bar, movement, lifter)?;
        path.heights_m.1 = path.bar_height_m(1.0, path.end_ankle, record.end_knee.as_rad())?;
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
                ..
            } => {
                let place = match movement.choice("bar_position")? {
                    "low" => low,
                    _ => high,
                };
                let trunk_m = self.standing.trunk_m();
                self.on_trunk_m = (place.along * trunk_m, place.behind * trunk_m);
                self.start_on_back(*ankle_per_knee, movement, lifter)?;
            }
            BarPlace::InHands {
                start_height,
                start_arms,
                arms_course,
                conventional,
                sumo,
                ..
            } => {
                let style = style(movement, conventional, sumo)?;
                self.start_ankle = style.start_ankle.as_rad();
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
    /// shank = k·knee,   thigh falls from hip to knee by −depth,   length·sin(shank) ≤ toe + knee_travel
    /// ```
    /// `depth` how far the hip is below the level thigh, `shank` its lean from upright.
    fn start_on_back(
        &mut self,
        ankle_per_knee: f64,
        movement: &Movement,
        lifter: &Lifter,
    ) -> Result<()> {
        /// How far apart the poses are that are looked at on the way down, knee flexion in rad.
        const STEP_RAD: f64 = 0.1;
        let depth = movement.angle_rad("depth")?.unwrap_or(0.0);
        let travel_m = movement.length_m("knee_travel", lifter)?;
        let most = travel_m.map_or(f64::INFINITY, |travel_m| {
            let reach = (self.standing.toe_m + travel_m) / self.standing.shank_m();
            reach.clamp(-0.5, 1.0).asin()
        });
        let ankle = |knee: f64| (ankle_per_knee * knee).min(most);
        let above = |knee: f64| -> Result<f64> {
            let hip = self.standing.hip_over(ankle(knee), knee)?;
            Ok(self.standing.leg().under(hip).thigh_fall_rad() + depth)
        };
        // The first place on the way down: with the knee folded farther, no lean of the leg may be left.
        let mut deeper = STEP_RAD;
        while above(deeper)? > 0.0 {
            deeper += STEP_RAD;
        }
        let knee = brent(deeper - STEP_RAD, deeper, 1.0e-13, |knee| {
            above(knee).unwrap_or(f64::NAN)
        })?;
        self.start_ankle = ankle(knee);
        self.heights_m.0 = self.bar_height_m(0.0, self.start_ankle, knee)?;
        Ok(())
    }

    /// Height of the bar when it is over the foot with these angles and plumb arms, m.
    fn bar_height_m(&self, s: f64, ankle: f64, knee: f64) -> Result<f64> {
        let hip = self.standing.hip_over(ankle, knee)?;
        let reach = self.bearing_from_hip(s).length();
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
    fn bearing_from_hip(&self, s: f64) -> Point {
        from_hip(
            self.standing.pelvis_m(),
            self.on_trunk_m,
            self.lumbar_rad(s),
        )
    }

    fn lumbar_rad(&self, s: f64) -> f64 {
        self.lumbar.0 + s * (self.lumbar.1 - self.lumbar.0)
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

    /// Hip, and direction of the pelvis (rad), that bring the bar over the foot with the ankle's angle.
    fn hip_and_pelvis(&self, s: f64) -> Result<(Point, f64)> {
        let (from_hip, bearing) = (self.bearing_from_hip(s), self.bearing(s));
        let reach = from_hip.length();
        let cannot = |why: LinksFault| {
            Error::bad(StanceFault::CannotClose {
                range: s,
                thigh: Length::from_m(self.standing.thigh_m()),
                hip_to_bar: Length::from_m(reach),
                why,
            })
        };
        let hip = self
            .standing
            .hip_below(bearing, reach, self.ankle(s))
            .ok_or_else(|| cannot(LinksFault::NoDirection))?;
        if let Some(why) = self.standing.leg().out_of_reach(hip) {
            return Err(cannot(why));
        }
        Ok((hip, (bearing - hip).angle_rad() - from_hip.angle_rad()))
    }

    /// Pressure under the foot: its moment about the ankle balances lifter and load.
    ///
    /// ```text
    /// N·x_p − Σ w·x + (x·F_z − z·F_x) = 0,   heel·N ≤ N·x_p ≤ ball·N,   N = Σ w − F_z
    /// ```
    /// `N` force of the floor (N), `x_p` centre of pressure (m), `w` weights (N), `F` load (N) at
    /// `x`, `z` (m).
    fn pressure(&self, weight_moment_nm: f64, at: Point) -> (Reaction, Balance, ReactionReading) {
        let weight_n = self.standing.weight_n();
        let at_most = |place_m: f64| ReactionLimit {
            constant: place_m * weight_n,
            per_load: [0.0, -place_m],
        };
        let reaction = Reaction {
            name: "centre_of_pressure",
            place: PushPlace::MovesFloor,
            column: vec![0.0; self.standing.coordinates()],
            least: at_most(self.standing.heel_m),
            most: at_most(self.standing.ball_m),
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
        let shoulder = joints[joints.len() - 1];
        let arm = if self.arm_m.is_some() {
            vec![shoulder, shoulder.towards(bar, 0.5), bar]
        } else {
            self.figure.arm_at_a_bar_carried(shoulder, bar, thorax_rad)
        };
        BodyOutline {
            view: View::Side,
            limbs: vec![
                joints.to_vec(),
                arm,
                self.figure.foot(joints[0], 0.0, false),
            ],
            head: Some(self.figure.head(shoulder, thorax_rad)),
            props: vec![floor(-0.55, 0.65)],
            load: bar,
            centres: joints.to_vec(),
        }
    }
}

/// The style that the movement's technique asks for.
fn style<'a>(
    movement: &Movement,
    conventional: &'a LiftOff,
    sumo: &'a LiftOff,
) -> Result<&'a LiftOff> {
    Ok(match movement.choice("stance")? {
        "sumo" => sumo,
        _ => conventional,
    })
}

/// Shoulder to grip of the straight arm, m.
fn arm_m(lifter: &Lifter) -> f64 {
    let hand = lifter.segment(SegmentName::Hand);
    lifter.segment(SegmentName::UpperArm).length.as_m()
        + lifter.segment(SegmentName::Forearm).length.as_m()
        + hand.centre_of_mass * hand.length.as_m()
}

impl TracedPath for StancePath {
    /// A twentieth of the way from lockout to a straight knee, beyond which the angles have no value: the
    /// slopes at lockout then err by 1e-7 and not by 1e-5.
    fn step(&self) -> f64 {
        2.5e-4
    }

    fn angles(&self, s: f64) -> Result<Vec<f64>> {
        let (hip, pelvis_rad) = self.hip_and_pelvis(s)?;
        let leg = self.standing.leg().under(hip);
        let mut angles = vec![
            leg.ankle_rad,
            leg.knee_rad,
            leg.hip_rad(pelvis_rad),
            self.lumbar_rad(s),
        ];
        if self.arm_m.is_some() {
            angles.push(FRAC_PI_2 - self.arms(s) - (pelvis_rad - self.lumbar_rad(s)));
        }
        Ok(angles)
    }

    fn pose(&self, s: f64, angles: &[f64], slopes: &[f64]) -> Result<Pose> {
        let (hip, pelvis_rad) = self.hip_and_pelvis(s)?;
        let stood = self.standing.stood(s, hip, pelvis_rad, &angles[3..])?;
        let (link, bar) = match self.arm_m {
            None => {
                let along_m = self.on_trunk_m.0 - self.standing.pelvis_m();
                let bar = stood.upper.point(THORAX, along_m, self.on_trunk_m.1);
                (THORAX, bar)
            }
            Some(arm_m) => (ARM, stood.upper.point(ARM, arm_m, 0.0)),
        };
        let load_jacobian = stood.jacobian(link, bar);
        let speed = along(&load_jacobian, slopes);
        let (reaction, balance, reading) = self.pressure(stood.weight_moment_nm(), bar);
        let coordinates = coordinates_upward(angles, slopes);
        let arm = coordinates.iter().find(|c| c.dof.is_shoulder());
        Ok(Pose {
            shoulder: arm.map_or_else(ShoulderMotion::default, |c| {
                let pose = ShoulderPose::turned(c.axis, c.angle_rad);
                ShoulderMotion::about(pose, c.axis, c.slope_rad)
            }),
            coordinates,
            held: Vec::new(),
            load: LoadPoint {
                range: s,
                x_m: bar.x,
                z_m: bar.z,
                dx_ds_m: speed.x,
                dz_ds_m: speed.z,
                travel_m: travelled(bar.z - self.heights_m.0),
                lever_rad: 0.0,
            },
            load_jacobian,
            gravity_nm: stood.gravity_nm(),
            reactions: vec![reaction],
            balances: vec![balance],
            readings: vec![reading],
            limb_inertia: stood.effective_mass(slopes),
            outline: self.outline(&stood.joints(), stood.upper.directions_rad[THORAX], bar),
        })
    }

    fn limbs(&self, s: f64, angles: &[f64]) -> Result<Vec<LimbWeight>> {
        let (hip, pelvis_rad) = self.hip_and_pelvis(s)?;
        let stood = self.standing.stood(s, hip, pelvis_rad, &angles[3..])?;
        Ok(stood.limbs())
    }
}
