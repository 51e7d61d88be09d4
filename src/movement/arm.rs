//! Guided path of the hand: a two-link arm in space, its elbow out of the vertical plane.
//!
//! In: where the hand starts and ends, grip, where the elbow points, lean of the trunk. Out: the upper arm's
//! orientation and the elbow's angle along the range. The shoulder is a ball joint: the load's moment about
//! each of the trunk's three axes is balanced by the muscles, the arm's twist included.

use super::arm_frame::TrunkFrame;
use super::arm_in_space::{ArmInSpace, square_to};
use super::arm_outline::{ArmLine, outline};
use super::arm_record::{ArmPlace, ArmRecord, BentEnd, Hand, HandPlace, Posture};
use super::limb_lines::BodyLines;
use super::limb_weight::LimbWeight;
use super::linkage::{Link, along, forearm_and_hand};
use super::load_point::{LoadPoint, travelled};
use super::pose::{Affine, Coordinate, Pose, PushPlace, Reaction, ReactionLimit, ReactionReading};
use super::record::Movement;
use super::traced_path::TracedPath;
use crate::anatomy::{BladeTurn, Dof, Lifter, SegmentName, ShoulderMotion, ShoulderPose, axis_of};
use crate::error::{ArmFault, Error, Result, TechniqueFault};
use crate::numeric::Point;
use crate::units::{Length, STANDARD_GRAVITY_M_S2};
use nalgebra::Vector3;

/// A guided path ready for a lifter.
#[derive(Debug, Clone)]
pub struct ArmPath {
    record: ArmRecord,
    upper: Link,
    lower: Link,
    lateral_m: f64,
    start: (f64, f64),
    end: (f64, f64),
    /// Side of the line from shoulder to hand to which the elbow keeps, in the trunk's axes.
    elbow_side: Vector3<f64>,
    shoulder_height_m: f64,
    frame: TrunkFrame,
    figure: BodyLines,
}

impl ArmPath {
    /// The path of a movement for a lifter.
    ///
    /// **Fails** if the limbs cannot reach the start or the end, or a technique parameter is missing.
    pub fn new(record: &ArmRecord, movement: &Movement, lifter: &Lifter) -> Result<Self> {
        let upper = Link::proximal(lifter.segment(SegmentName::UpperArm));
        let (forearm, hand) = (
            lifter.segment(SegmentName::Forearm),
            lifter.segment(SegmentName::Hand),
        );
        let lower = forearm_and_hand(forearm, hand);
        let grip_width_m = movement.length_m("grip_width", lifter)?.ok_or_else(|| {
            Error::bad(TechniqueFault::NotFree {
                technique: "grip_width",
            })
        })?;
        let lean = if movement.technique.contains_key("torso_angle") {
            movement.angle_rad("torso_angle")?.unwrap_or(0.0)
        } else {
            0.0
        };
        let mut path = Self {
            record: record.clone(),
            upper,
            lower,
            lateral_m: 0.5 * (grip_width_m - lifter.build.shoulder_breadth.as_m()),
            start: (0.0, 0.0),
            end: (0.0, 0.0),
            elbow_side: Vector3::zeros(),
            shoulder_height_m: 0.0,
            frame: TrunkFrame::of(record.posture, lean),
            figure: BodyLines::of(lifter),
        };
        path.shoulder_height_m = path.place(&record.shoulder_height, movement, lifter)?;
        path.start = path.hand_place(&record.start, movement, lifter)?;
        path.end = path.hand_place(&record.end, movement, lifter)?;
        path.set_elbow(movement)?;
        Ok(path)
    }

    fn place(&self, place: &ArmPlace, movement: &Movement, lifter: &Lifter) -> Result<f64> {
        match place {
            ArmPlace::Fixed(length) => Ok(length.as_m()),
            ArmPlace::OfHeight(share) => Ok(share * lifter.height.as_m()),
            ArmPlace::Chest => Ok(lifter.build.chest_height.as_m()),
            ArmPlace::Technique(name) => match movement.length_m(name, lifter)? {
                Some(length_m) => Ok(length_m),
                None => self.under_the_elbow(movement, lifter),
            },
            ArmPlace::OverHips(share) => {
                Ok(share * lifter.height.as_m() + self.figure.trunk_m * self.frame.lean_rad.sin())
            }
            ArmPlace::Plumb => {
                Ok(self.straight_m(self.lateral_m)? * self.frame.plumb_forward(self.record.hand))
            }
            ArmPlace::Lockout => Err(Error::bad(ArmFault::LockoutOnlyUp)),
        }
    }

    fn hand_place(
        &self,
        place: &HandPlace,
        movement: &Movement,
        lifter: &Lifter,
    ) -> Result<(f64, f64)> {
        let forward = self.place(&place.forward, movement, lifter)?;
        let up = match &place.up {
            ArmPlace::Lockout => self.straight_m(self.lateral_m.hypot(forward))?,
            other => self.place(other, movement, lifter)?,
        };
        Ok((forward, up))
    }

    /// How far the hand is when the arm is as straight as the lockout says and this far out, m.
    fn straight_m(&self, out_m: f64) -> Result<f64> {
        let elbow = self.record.lockout_elbow.as_rad();
        let (a, b) = (self.upper.length_m, self.lower.length_m);
        let reach_2 = a * a + b * b + 2.0 * a * b * elbow.cos();
        if out_m * out_m >= reach_2 {
            return Err(Error::bad(ArmFault::HandTooFarOut {
                out: Length::from_m(out_m.abs()),
                reach: Length::from_m(reach_2.sqrt()),
            }));
        }
        Ok((reach_2 - out_m * out_m).sqrt())
    }

    /// How far forward the bar is when the elbow, turned as it is, is right under it, m.
    ///
    /// Fixed point of `y = ρ(y)·sin(turned)`: the elbow's own place in the side view.
    fn under_the_elbow(&self, movement: &Movement, lifter: &Lifter) -> Result<f64> {
        let turned = movement
            .angle_rad(&self.record.elbow.turned)?
            .unwrap_or(0.0);
        let up = self.place(&self.record.start.up, movement, lifter)?;
        let mut forward = self.upper.length_m * turned.sin();
        for _ in 0..50 {
            let level_m = self.bent_elbow(turned, forward, up).0;
            forward = level_m * turned.sin();
        }
        Ok(forward)
    }

    /// Where the elbow is, level with the shoulder and above it, when the upper arm is turned so, m.
    ///
    /// ```text
    /// E = (ρ·cos t, ρ·sin t, ε),   ρ² + ε² = a²,   |H − E| = b,   the lower of two
    /// ρ·A + ε·B = C,   A = H_x·cos t + H_f·sin t,   B = H_u,   C = (a² + |H|² − b²)/2
    /// ```
    /// `a` upper arm, `b` elbow to grip (m), `H` the hand, `t` how far the arm is turned. Where no elbow of
    /// this turn reaches the hand, the direction of the nearest counts.
    fn bent_elbow(&self, turned: f64, forward: f64, up: f64) -> (f64, f64) {
        let (a, b) = (self.upper.length_m, self.lower.length_m);
        let across = self.lateral_m * turned.cos() + forward * turned.sin();
        let hand_2 = self.lateral_m.powi(2) + forward * forward + up * up;
        let c = 0.5 * (a * a + hand_2 - b * b);
        let cosine = c / (a * across.hypot(up)).max(1.0e-9);
        let angle = up.atan2(across) - cosine.clamp(-1.0, 1.0).acos();
        (a * angle.cos(), a * angle.sin())
    }

    fn set_elbow(&mut self, movement: &Movement) -> Result<()> {
        let turned = movement
            .angle_rad(&self.record.elbow.turned)?
            .unwrap_or(0.0);
        let (forward, up) = match self.record.elbow.bent {
            BentEnd::Start => self.start,
            BentEnd::End => self.end,
        };
        let (level_m, above_m) = self.bent_elbow(turned, forward, up);
        let elbow = self
            .frame
            .in_trunk(level_m * turned.cos(), level_m * turned.sin(), above_m);
        let to_hand = self.frame.in_trunk(self.lateral_m, forward, up);
        self.elbow_side = square_to(elbow, to_hand);
        Ok(())
    }

    fn hand(&self, s: f64) -> (f64, f64) {
        (
            self.start.0 + s * (self.end.0 - self.start.0),
            self.start.1 + s * (self.end.1 - self.start.1),
        )
    }

    /// The arm at a place of the range.
    ///
    /// ```text
    /// cos e = (D² − a² − b²)/(2ab),   E = d·ŝ + √(a² − d²)·n̂,   d = (a² + D² − b²)/(2D)
    /// ```
    /// `D` distance and `ŝ` direction from shoulder to hand, `n̂` the elbow's side, square to `ŝ`.
    /// **Fails** when the arm cannot reach, with both lengths.
    fn arm(&self, s: f64) -> Result<ArmInSpace> {
        let (a, b) = (self.upper.length_m, self.lower.length_m);
        let (forward, up) = self.hand(s);
        let hand = self.frame.in_trunk(self.lateral_m, forward, up);
        let distance_m = hand.norm();
        let cosine = (distance_m * distance_m - a * a - b * b) / (2.0 * a * b);
        if cosine.abs() > 1.0 {
            return Err(Error::bad(ArmFault::CannotClose {
                upper_arm: Length::from_m(a),
                to_grip: Length::from_m(b),
                hand: Length::from_m(distance_m),
            }));
        }
        let along = (a * a + distance_m * distance_m - b * b) / (2.0 * distance_m);
        let aside = (a * a - along * along).max(0.0).sqrt();
        let side = square_to(self.elbow_side, hand);
        let elbow = hand * (along / distance_m) + side * aside;
        Ok(ArmInSpace {
            shoulder: ShoulderPose::of_arm(elbow, hand - elbow)
                .drawn_back(s * self.record.blades_drawn_back.as_rad()),
            elbow,
            hand,
            elbow_rad: cosine.acos(),
        })
    }

    /// How the shoulder turns along the range: central differences of fourth order.
    fn motion(&self, s: f64, shoulder: ShoulderPose) -> Result<ShoulderMotion> {
        let at = |k: f64| self.arm(s + k * STEP).map(|arm| arm.shoulder);
        let (near, far) = ((at(-1.0)?, at(1.0)?), (at(-2.0)?, at(2.0)?));
        let turn = near.0.turn_to(&near.1) * (8.0 / (12.0 * STEP))
            - far.0.turn_to(&far.1) * (1.0 / (12.0 * STEP));
        let turned = |angle: fn(BladeTurn) -> f64| {
            let by =
                |pair: (ShoulderPose, ShoulderPose)| angle(pair.1.blade()) - angle(pair.0.blade());
            (8.0 * by(near) - by(far)) / (12.0 * STEP)
        };
        Ok(ShoulderMotion {
            pose: shoulder,
            turn,
            blade_turn: BladeTurn {
                up_rad: turned(|blade| blade.up_rad),
                forward_rad: turned(|blade| blade.forward_rad),
            },
        })
    }

    /// The shoulder's three axes and the elbow; the angle most spoken of in this posture first.
    fn dofs(&self) -> [Dof; 4] {
        match self.frame.posture {
            Posture::Lying | Posture::Bent => [
                Dof::ShoulderHorizontal,
                Dof::Elbow,
                Dof::ShoulderFlexion,
                Dof::ShoulderAbduction,
            ],
            Posture::Upright => [
                Dof::ShoulderAbduction,
                Dof::Elbow,
                Dof::ShoulderFlexion,
                Dof::ShoulderHorizontal,
            ],
        }
    }
}

impl ArmPath {
    /// −1 where the body hangs from the hand and moves against it, else 1.
    fn turn(&self) -> f64 {
        match self.record.hand {
            Hand::Carries => 1.0,
            Hand::Hangs => -1.0,
        }
    }

    /// How the load moves with every coordinate.
    fn load_jacobian(&self, arm: &ArmInSpace) -> Vec<Point> {
        let onward = if self.frame.is_from_the_side() {
            self.frame.onward()
        } else {
            Vector3::zeros()
        };
        let (upward, turn) = (self.frame.upward(), self.turn());
        let column = |dof| {
            let column = arm.column(dof, arm.hand);
            Point::new(turn * column.dot(&onward), turn * column.dot(&upward))
        };
        self.dofs().into_iter().map(column).collect()
    }

    /// Torque of the arm's own weight on every coordinate, N·m.
    fn gravity_nm(&self, arm: &ArmInSpace) -> Vec<f64> {
        let upward = self.frame.upward();
        let upper = ArmInSpace::centre(Vector3::zeros(), arm.elbow, &self.upper);
        let lower = ArmInSpace::centre(arm.elbow, arm.hand, &self.lower);
        let torque = |dof| {
            let of_upper = if dof == Dof::Elbow {
                0.0
            } else {
                self.upper.mass_kg * arm.column(dof, upper).dot(&upward)
            };
            let of_lower = self.lower.mass_kg * arm.column(dof, lower).dot(&upward);
            -STANDARD_GRAVITY_M_S2 * (of_upper + of_lower)
        };
        self.dofs().into_iter().map(torque).collect()
    }

    /// Effective mass of the arm along the range, kg·m² per unit of range squared.
    ///
    /// ```text
    /// M = Σ m·|dP/ds|² + I·|Ω − (Ω·l̂)l̂|²
    /// ```
    /// `Ω` turn of the link per unit of range, `l̂` its direction: thin links.
    fn inertia(&self, arm: &ArmInSpace, turn: Vector3<f64>, elbow_slope: f64) -> f64 {
        let lower_turn = turn + arm.shoulder.elbow_axis() * elbow_slope;
        let upper = ArmInSpace::centre(Vector3::zeros(), arm.elbow, &self.upper);
        let lower = ArmInSpace::centre(arm.elbow, arm.hand, &self.lower);
        let lower_speed = turn.cross(&arm.elbow) + lower_turn.cross(&(lower - arm.elbow));
        let part = |link: &Link, speed: Vector3<f64>, turn: Vector3<f64>, along: Vector3<f64>| {
            let spin = turn.dot(&along.normalize());
            link.mass_kg * speed.norm_squared()
                + link.inertia_kg_m2 * (turn.norm_squared() - spin * spin)
        };
        part(&self.upper, turn.cross(&upper), turn, arm.elbow)
            + part(&self.lower, lower_speed, lower_turn, arm.hand - arm.elbow)
    }

    /// Where the load is, and how it moves.
    fn load_point(&self, s: f64, speed: Point) -> LoadPoint {
        let (forward, up) = self.hand(s);
        let rise_m = self.frame.height_m(forward, up);
        let start_m = self.frame.height_m(self.start.0, self.start.1);
        LoadPoint {
            range: s,
            x_m: if self.frame.is_from_the_side() {
                self.turn() * self.frame.ahead_m(forward, up)
            } else {
                0.0
            },
            z_m: match self.record.hand {
                Hand::Carries => self.shoulder_height_m + rise_m,
                Hand::Hangs => self.shoulder_height_m + start_m - rise_m,
            },
            dx_ds_m: speed.x,
            dz_ds_m: speed.z,
            travel_m: travelled(self.turn() * (rise_m - start_m)),
            lever_rad: 0.0,
        }
    }

    /// Sideways push of the hand on the bar, free within friction; the bar presses the hand inward.
    fn lateral(&self, arm: &ArmInSpace) -> Reaction {
        let within = |share: f64| ReactionLimit {
            constant: 0.0,
            per_load: [0.0, -share],
        };
        let inward = |dof| -arm.column(dof, arm.hand).x;
        let way = if self.frame.is_from_the_side() {
            Point::ORIGIN
        } else {
            Point::new(-self.turn(), 0.0)
        };
        Reaction {
            name: "lateral",
            place: PushPlace::WithLoad { way },
            column: self.dofs().into_iter().map(inward).collect(),
            least: within(-self.record.friction),
            most: within(self.record.friction),
        }
    }

    /// What the stick figure needs: elbow and hand seen from the shoulder.
    fn shape(&self, arm: &ArmInSpace) -> ArmLine {
        let (onward, upward) = (self.frame.onward(), self.frame.upward());
        let seen =
            |place: Vector3<f64>| (place.x, Point::new(place.dot(&onward), place.dot(&upward)));
        ArmLine {
            hangs: self.record.hand == Hand::Hangs,
            shoulder_height_m: self.shoulder_height_m,
            start_rise_m: self.frame.height_m(self.start.0, self.start.1),
            elbow: seen(arm.elbow),
            hand: seen(arm.hand),
        }
    }
}

/// Step of all differences along the range: fine enough for an arm that is nearly straight.
const STEP: f64 = 2.5e-4;

impl TracedPath for ArmPath {
    fn step(&self) -> f64 {
        STEP
    }

    fn angles(&self, s: f64) -> Result<Vec<f64>> {
        let arm = self.arm(s)?;
        let angle = |dof| match dof {
            Dof::Elbow => arm.elbow_rad,
            of_shoulder => arm.shoulder.angle_rad(of_shoulder),
        };
        Ok(self.dofs().into_iter().map(angle).collect())
    }

    fn pose(&self, s: f64, angles: &[f64], slopes: &[f64]) -> Result<Pose> {
        let arm = self.arm(s)?;
        let shoulder = self.motion(s, arm.shoulder)?;
        let coordinate = |(dof, (angle, slope)): (Dof, (&f64, &f64))| match dof {
            Dof::Elbow => Coordinate::new(dof, *angle, *slope),
            of_shoulder => Coordinate::new(dof, *angle, axis_of(of_shoulder).dot(&shoulder.turn)),
        };
        let coordinates: Vec<Coordinate> = self
            .dofs()
            .into_iter()
            .zip(angles.iter().zip(slopes))
            .map(coordinate)
            .collect();
        let turns: Vec<f64> = coordinates.iter().map(|c| c.slope_rad).collect();
        let load_jacobian = self.load_jacobian(&arm);
        let speed = along(&load_jacobian, &turns);
        Ok(Pose {
            coordinates,
            held: Vec::new(),
            shoulder,
            load: self.load_point(s, speed),
            load_jacobian,
            gravity_nm: self.gravity_nm(&arm),
            reactions: vec![self.lateral(&arm)],
            balances: Vec::new(),
            readings: vec![ReactionReading {
                name: "lateral_n",
                value: Affine {
                    reactions: vec![1.0],
                    ..Affine::default()
                },
                over: None,
            }],
            limb_inertia: self.inertia(&arm, shoulder.turn, slopes[1]),
            outline: outline(&self.frame, &self.figure, &self.shape(&arm)),
        })
    }

    fn limbs(&self, s: f64, _: &[f64]) -> Result<Vec<LimbWeight>> {
        let (arm, upward) = (self.arm(s)?, self.frame.upward());
        Ok(arm.limbs(self.dofs(), &self.upper, &self.lower, upward))
    }
}
