//! Guided path of the hand: a two-link arm in a vertical plane through shoulder and hand.
//!
//! In: where the hand starts and ends, grip, tuck, lean of the trunk. Out: shoulder and elbow angles
//! along the range. The arm's plane turns with the hand (a wide grip works between abduction or horizontal adduction
//! and flexion), so every quantity in the plane is exact; what happens about the vertical axis and
//! about the line from shoulder to hand is left to the small rotators of the shoulder.

use super::arm_frame::{ArmPlane, TrunkFrame};
use super::arm_outline::{ArmLine, outline};
use super::arm_record::{ArmPlace, ArmRecord, Hand, HandPlace};
use super::limb_lines::BodyLines;
use super::linkage::{Link, Linkage, along, forearm_and_hand};
use super::load_point::LoadPoint;
use super::pose::{Affine, Coordinate, Pose, Reaction, ReactionLimit, ReactionReading};
use super::record::Movement;
use super::traced_path::TracedPath;
use crate::anatomy::{Dof, Lifter, SegmentName};
use crate::error::{ArmFault, Error, Result, TechniqueFault};
use crate::numeric::Point;
use crate::units::Length;

/// A guided path ready for a lifter.
#[derive(Debug, Clone)]
pub struct ArmPath {
    record: ArmRecord,
    upper_m: f64,
    grip_m: f64,
    lateral_m: f64,
    start: (f64, f64),
    end: (f64, f64),
    /// Turn of the elbow out of the plane through shoulder and hand at the start, rad.
    swivel_rad: f64,
    shoulder_height_m: f64,
    links: [Link; 2],
    frame: TrunkFrame,
    figure: BodyLines,
}

impl ArmPath {
    /// The path of a movement for a lifter.
    ///
    /// **Fails** if the limbs cannot reach the start or the end, or a technique parameter is missing.
    pub fn new(record: &ArmRecord, movement: &Movement, lifter: &Lifter) -> Result<Self> {
        let upper = lifter.segment(SegmentName::UpperArm);
        let (forearm, hand) = (
            lifter.segment(SegmentName::Forearm),
            lifter.segment(SegmentName::Hand),
        );
        let lower = forearm_and_hand(forearm, hand);
        let grip_m = lower.length_m;
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
            upper_m: upper.length.as_m(),
            grip_m,
            lateral_m: 0.5 * (grip_width_m - lifter.build.shoulder_breadth.as_m()),
            start: (0.0, 0.0),
            end: (0.0, 0.0),
            swivel_rad: 0.0,
            shoulder_height_m: 0.0,
            links: [
                Link::proximal(upper).turned_by(0, 1.0),
                lower.turned_by(1, 1.0),
            ],
            frame: TrunkFrame::of(record.posture, lean),
            figure: BodyLines::of(lifter),
        };
        path.shoulder_height_m = path.place(&record.shoulder_height, movement, lifter)?;
        path.start = path.hand_place(&record.start, movement, lifter)?;
        path.end = path.hand_place(&record.end, movement, lifter)?;
        path.set_swivel(movement, lifter)?;
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
        let reach_2 = self.upper_m.powi(2)
            + self.grip_m.powi(2)
            + 2.0 * self.upper_m * self.grip_m * elbow.cos();
        if out_m * out_m >= reach_2 {
            return Err(Error::bad(ArmFault::HandTooFarOut {
                out: Length::from_m(out_m.abs()),
                reach: Length::from_m(reach_2.sqrt()),
            }));
        }
        Ok((reach_2 - out_m * out_m).sqrt())
    }

    /// How far forward the bar is when the elbow, tucked, is right under it, m.
    ///
    /// Fixed point of `y = L_u·cos φ(y)·sin(tuck)`: the elbow's own place in the side view.
    fn under_the_elbow(&self, movement: &Movement, lifter: &Lifter) -> Result<f64> {
        let tuck = movement.angle_rad("tuck")?.unwrap_or(0.0);
        let up = self.place(&self.record.start.up, movement, lifter)?;
        let mut forward = self.upper_m * tuck.sin();
        for _ in 0..50 {
            let (shoulder, _) = self.solve(self.lateral_m.hypot(forward), up, self.grip_m)?;
            forward = self.upper_m * shoulder.cos() * tuck.sin();
        }
        Ok(forward)
    }

    fn set_swivel(&mut self, movement: &Movement, lifter: &Lifter) -> Result<()> {
        if !movement.technique.contains_key("tuck") {
            return Ok(());
        }
        let free = movement.length_m("touch_point", lifter)?.is_none();
        if let (false, Some(tuck)) = (free, movement.angle_rad("tuck")?) {
            self.swivel_rad = tuck - self.start.0.atan2(self.lateral_m);
        }
        Ok(())
    }

    /// Direction of the upper arm and elbow flexion for a hand `out` and `up` in the plane, rad.
    ///
    /// ```text
    /// cos e = (D² − a² − b²)/(2ab),   θ = atan2(up, out) − atan2(b·sin e, a + b·cos e)
    /// ```
    /// `a` upper arm, `b` elbow to grip (m), `D` distance shoulder to grip (m), `e` elbow flexion.
    /// **Fails** when the arm cannot reach, with both lengths.
    fn solve(&self, out: f64, up: f64, grip_m: f64) -> Result<(f64, f64)> {
        let (a, b) = (self.upper_m, grip_m);
        let distance_2 = out * out + up * up;
        let cosine = (distance_2 - a * a - b * b) / (2.0 * a * b);
        if cosine.abs() > 1.0 {
            return Err(Error::bad(ArmFault::CannotClose {
                upper_arm: Length::from_m(a),
                to_grip: Length::from_m(b),
                hand: Length::from_m(distance_2.sqrt()),
            }));
        }
        let elbow = cosine.acos();
        let shoulder = up.atan2(out) - (b * elbow.sin()).atan2(a + b * elbow.cos());
        Ok((shoulder, elbow))
    }

    fn hand(&self, s: f64) -> (f64, f64) {
        (
            self.start.0 + s * (self.end.0 - self.start.0),
            self.start.1 + s * (self.end.1 - self.start.1),
        )
    }

    /// Hand in the arm's plane, the plane's turn from sideways, the forearm's length in the plane.
    fn in_plane(&self, s: f64) -> (f64, f64, f64, f64) {
        let (forward, up) = self.hand(s);
        let out = self.lateral_m.hypot(forward);
        let swivel = self.swivel_rad * (1.0 - s);
        let azimuth = forward.atan2(self.lateral_m) + swivel;
        let beside = out * swivel.sin();
        let grip = (self.grip_m.powi(2) - beside.powi(2)).max(0.0).sqrt();
        (out * swivel.cos(), up, azimuth, grip)
    }

    fn coordinates(&self, azimuth: f64, angles: &[f64], slopes: &[f64]) -> Vec<Coordinate> {
        let forward = azimuth.sin().powi(2);
        let planes = if self.record.lateral_plane == self.record.forward_plane {
            vec![(self.record.lateral_plane, 1.0)]
        } else {
            vec![
                (self.record.lateral_plane, 1.0 - forward),
                (self.record.forward_plane, forward),
            ]
        };
        vec![
            Coordinate {
                dof: self.record.lateral_plane,
                planes,
                angle_rad: angles[0],
                slope_rad: slopes[0],
            },
            Coordinate {
                dof: Dof::Elbow,
                planes: vec![(Dof::Elbow, 1.0)],
                angle_rad: angles[1],
                slope_rad: slopes[1],
            },
        ]
    }
}

impl ArmPath {
    /// The arm in its plane, the forearm as long as it looks there.
    fn linkage(&self, plane: &ArmPlane, grip_m: f64) -> Linkage {
        let mut links = self.links;
        links[1].length_m = grip_m;
        Linkage {
            base: Point::new(0.0, self.shoulder_height_m),
            base_direction_rad: plane.turn_rad - self.frame.zero_rad(),
            links: links.to_vec(),
        }
    }

    /// −1 where the body hangs from the hand and moves against it, else 1.
    fn turn(&self) -> f64 {
        match self.record.hand {
            Hand::Carries => 1.0,
            Hand::Hangs => -1.0,
        }
    }

    /// How the load moves with the arm's angles.
    fn load_jacobian(&self, plane: &ArmPlane, jacobian: &[Point]) -> Vec<Point> {
        let ahead = if self.frame.is_from_the_side() {
            plane.ahead
        } else {
            Point::ORIGIN
        };
        let turn = self.turn();
        let column = |column: &Point| {
            Point::new(
                turn * column.dot(ahead),
                turn * plane.weight_share * column.z,
            )
        };
        jacobian.iter().map(column).collect()
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
            travel_m: self.turn() * (rise_m - start_m),
            lever_rad: 0.0,
        }
    }

    /// Sideways push of the hand on the bar, free within friction.
    fn lateral(&self, column: Vec<f64>) -> Reaction {
        let within = |share: f64| ReactionLimit {
            constant: 0.0,
            per_load: [0.0, -share],
        };
        Reaction {
            name: "lateral",
            column,
            least: within(-self.record.friction),
            most: within(self.record.friction),
        }
    }

    /// What the stick figure needs: elbow and hand seen from the shoulder.
    fn shape(&self, joints: &[Point], azimuth: f64, s: f64) -> ArmLine {
        let plane = self.frame.plane(azimuth);
        let elbow = joints[1] - joints[0];
        let (forward, up) = self.hand(s);
        ArmLine {
            hangs: self.record.hand == Hand::Hangs,
            shoulder_height_m: self.shoulder_height_m,
            start_rise_m: self.frame.height_m(self.start.0, self.start.1),
            elbow: (
                elbow.dot(plane.out) * azimuth.cos(),
                Point::new(elbow.dot(plane.ahead), elbow.z * plane.weight_share),
            ),
            hand: (
                self.lateral_m,
                Point::new(
                    self.frame.ahead_m(forward, up),
                    self.frame.height_m(forward, up),
                ),
            ),
        }
    }
}

impl TracedPath for ArmPath {
    fn angles(&self, s: f64) -> Result<Vec<f64>> {
        let (out, up, _, grip) = self.in_plane(s);
        let (direction, elbow) = self.solve(out, up, grip)?;
        Ok(vec![direction + self.frame.zero_rad(), elbow])
    }

    fn pose(&self, s: f64, angles: &[f64], slopes: &[f64]) -> Result<Pose> {
        let (_, _, azimuth, grip) = self.in_plane(s);
        let plane = self.frame.plane(azimuth);
        let linkage = self.linkage(&plane, grip);
        let placed = linkage.place(angles);
        let hand = placed.point(1, grip, 0.0);
        let jacobian = placed.jacobian(1, hand);
        // Pushing the bar outward presses the hand inward; only the part in the arm's plane counts.
        let lateral = jacobian
            .iter()
            .map(|column| -column.dot(plane.out) * azimuth.cos())
            .collect();
        let load_jacobian = self.load_jacobian(&plane, &jacobian);
        let speed = along(&load_jacobian, slopes);
        let shape = self.shape(&placed.joints, azimuth, s);
        Ok(Pose {
            coordinates: self.coordinates(azimuth, angles, slopes),
            held: Vec::new(),
            load: self.load_point(s, speed),
            load_jacobian,
            gravity_nm: placed
                .gravity_nm()
                .iter()
                .map(|torque| torque * plane.weight_share)
                .collect(),
            reactions: vec![self.lateral(lateral)],
            balances: Vec::new(),
            readings: vec![ReactionReading {
                name: "lateral_n",
                value: Affine {
                    reactions: vec![1.0],
                    ..Affine::default()
                },
                over: None,
            }],
            limb_inertia: placed.effective_mass(slopes),
            outline: outline(&self.frame, &self.figure, &shape),
        })
    }
}
