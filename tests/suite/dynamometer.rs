//! One joint alone against a dynamometer: the torque that all its muscles make together, passive
//! tension included, the limb's weight taken off as the papers do.

use torquill::anatomy::{Dof, Lifter, ShoulderMotion, ShoulderPose};
use torquill::capacity::Acting;
use torquill::movement::{BodyOutline, Coordinate, LoadPoint, Pose};

/// A joint with the others held, and the direction in which it pushes.
#[derive(Debug, Clone, Copy)]
pub struct Joint<'a> {
    pub dof: Dof,
    /// +1 pushes the angle up (flexion, abduction, dorsiflexion), −1 down.
    pub sign: f64,
    /// Angles of the other joints, deg.
    pub held: &'a [(Dof, f64)],
}

impl Joint<'_> {
    /// The arm in the plane of the joint that is tested, or where it is held.
    fn shoulder(&self, coordinate: &Coordinate) -> ShoulderMotion {
        if self.dof.is_shoulder() {
            let pose = ShoulderPose::in_plane(self.dof, coordinate.angle_rad);
            return ShoulderMotion::about(pose, coordinate.axis, coordinate.slope_rad);
        }
        let held = self.held.iter().find(|(dof, _)| dof.is_shoulder());
        let pose = held.map_or_else(ShoulderPose::hanging, |(dof, degrees)| {
            ShoulderPose::in_plane(*dof, degrees.to_radians())
        });
        ShoulderMotion::still(pose)
    }

    /// The pose with the joint at this angle.
    pub fn pose(&self, degrees: f64) -> Pose {
        let coordinate = Coordinate::new(self.dof, degrees.to_radians(), self.sign);
        let shoulder = self.shoulder(&coordinate);
        Pose {
            coordinates: vec![coordinate],
            shoulder,
            held: self
                .held
                .iter()
                .map(|(dof, degrees)| (*dof, degrees.to_radians()))
                .collect(),
            load: LoadPoint::default(),
            load_jacobian: Vec::new(),
            gravity_nm: vec![0.0],
            reactions: Vec::new(),
            balances: Vec::new(),
            readings: Vec::new(),
            limb_inertia: 0.0,
            outline: BodyOutline::default(),
        }
    }

    /// Torque in the direction of the push, N·m, held still.
    pub fn torque(&self, lifter: &Lifter, degrees: f64) -> f64 {
        self.torque_at_speed(lifter, degrees, 0.0)
    }

    /// The same while the joint turns at this speed, deg/s, negative = giving way.
    pub fn torque_at_speed(&self, lifter: &Lifter, degrees: f64, speed: f64) -> f64 {
        self.torque_in(&self.pose(degrees), lifter, speed)
    }

    /// The same in a pose that was changed.
    pub fn torque_in(&self, pose: &Pose, lifter: &Lifter, speed: f64) -> f64 {
        let acting = Acting::of(lifter, std::slice::from_ref(pose)).expect("sound arms");
        let muscles: f64 = acting
            .muscles
            .iter()
            .map(|muscle| {
                let at = muscle.at(&acting.curves, pose, speed.to_radians());
                let arm = self.sign * at.arms_m[0];
                (arm * at.active_n).max(0.0) + arm * at.passive_n
            })
            .sum();
        muscles + self.sign * acting.passive_joints_nm(pose)[0]
    }

    /// What full effort adds to the relaxed limb's torque, N·m, held still: what a paper gives that took the rest off.
    pub fn active_torque(&self, lifter: &Lifter, degrees: f64) -> f64 {
        let pose = self.pose(degrees);
        let acting = Acting::of(lifter, std::slice::from_ref(&pose)).expect("sound arms");
        let muscles = acting.muscles.iter();
        muscles
            .map(|muscle| {
                let at = muscle.at(&acting.curves, &pose, 0.0);
                (self.sign * at.arms_m[0] * at.active_n).max(0.0)
            })
            .sum()
    }

    /// Angle (deg) and size of the greatest torque between two angles, deg.
    pub fn peak(&self, lifter: &Lifter, from: i32, to: i32) -> (f64, f64) {
        (from..=to)
            .map(|d| (f64::from(d), self.torque(lifter, f64::from(d))))
            .max_by(|a, b| a.1.total_cmp(&b.1))
            .expect("angles between the two")
    }

    /// Mean torque over angles every 5 deg.
    pub fn mean(&self, lifter: &Lifter, from: i32, to: i32) -> f64 {
        let angles: Vec<i32> = (from..=to).step_by(5).collect();
        let sum: f64 = angles
            .iter()
            .map(|d| self.torque(lifter, f64::from(*d)))
            .sum();
        sum / angles.len() as f64
    }
}
