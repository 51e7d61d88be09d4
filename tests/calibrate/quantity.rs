//! What the model says of a target.

use super::problem::{ArmTest, Axis, FibreAs, FibreTest, JointTest, Over, Push, Quantity, Targets};
use crate::dynamometer::Joint;
use nalgebra::{Rotation3, Vector3};
use std::collections::BTreeSet;
use torquill::anatomy::{Dof, Lifter, Sex, ShoulderLine, ShoulderPose, Tendon};
use torquill::capacity::{Acting, MuscleAtPose};
use torquill::movement::Pose;

/// How far the plane of the shoulder blade lies in front of the frontal plane, deg; 30 to 40 in textbooks.
const BLADE_IN_FRONT_DEG: f64 = 30.0;

/// Roundness of the corner between pulling with a push and against it, N·m.
const CORNER_NM: f64 = 0.5;
/// Torques so close to the greatest are mixed with it, N·m.
const MIXED_NM: f64 = 1.0;

/// Computes targets for a man and a woman.
#[derive(Debug, Clone, Copy)]
pub struct Laboratory<'a> {
    pub lifters: &'a [Lifter; 2],
    pub targets: &'a Targets,
}

impl Laboratory<'_> {
    pub fn value(&self, quantity: &Quantity) -> f64 {
        match quantity {
            Quantity::Torque(test) => self.torque(test),
            Quantity::Ratio(above, below) => self.torque(above) / self.torque(below),
            Quantity::Length(test) => self.length(test),
            Quantity::Shortening(from, to) => 1.0 - self.length(to) / self.length(from),
            Quantity::Excursion(from, to) => self.length(from) - self.length(to),
            Quantity::Arm(test) => self.arm_mm(test),
            Quantity::Twist(test) => self.twist_mm(test),
            Quantity::Pull(test, axis) => self.pull(test).map_or(f64::NAN, |pull| match axis {
                Axis::Outward => pull.x,
                Axis::Forward => pull.y,
                Axis::Upward => pull.z,
            }),
        }
    }

    fn lifter(&self, sex: Sex) -> &Lifter {
        match sex {
            Sex::Man => &self.lifters[0],
            Sex::Woman => &self.lifters[1],
        }
    }

    fn torque(&self, test: &JointTest) -> f64 {
        let sexes = test.who.sexes();
        let sum: f64 = sexes.iter().map(|sex| self.torque_of(test, *sex)).sum();
        sum / sexes.len() as f64
    }

    fn torque_of(&self, test: &JointTest, sex: Sex) -> f64 {
        let lifter = self.lifter(sex);
        let some;
        let tested = if test.muscles.is_empty() {
            lifter
        } else {
            let mut left = lifter.clone();
            left.muscles.retain(|name, _| test.muscles.contains(name));
            left.joints.clear();
            some = left;
            &some
        };
        let held: Vec<(Dof, f64)> = test.held.iter().map(|(dof, d)| (*dof, *d)).collect();
        let joint = joint_of(test, &held);
        let torque_at = |degrees: &f64| {
            let mut pose = joint.pose(*degrees);
            if test.twist {
                pose.coordinates[0].axis = -pose.shoulder.pose.arm();
            }
            torque_nm(&pose, joint.sign, tested, test)
        };
        let torques: Vec<f64> = test.degrees.iter().map(torque_at).collect();
        let torque = match test.over {
            Over::Mean => torques.iter().sum::<f64>() / torques.len() as f64,
            Over::Greatest => greatest(&torques),
        };
        if test.per_kg {
            torque / lifter.body_mass.as_kg()
        } else {
            torque
        }
    }

    fn length(&self, test: &FibreTest) -> f64 {
        let mut man = self.lifters[0].clone();
        man.muscles.retain(|name, _| *name == test.muscle);
        if test.state != FibreAs::Active
            && let Some(muscle) = man.muscles.get_mut(&test.muscle)
        {
            muscle.tendon = Tendon::Rigid;
        }
        let Some((dof, degrees)) = test.at.first() else {
            return f64::NAN;
        };
        let at = muscle_at(&man, &test.muscle, *dof, *degrees, &test.at[1..]);
        let length = at.map_or(f64::NAN, |at| at.state.length_norm);
        match test.state {
            FibreAs::Active | FibreAs::Taut => length,
            FibreAs::Relaxed => self.at_rest(length),
        }
    }

    /// Length at which relaxed fibres are found where the joints' angles would leave them `taut`.
    ///
    /// ```text
    /// l = l0 + w ln(1 + exp((l_taut - l0)/w))
    /// ```
    fn at_rest(&self, taut: f64) -> f64 {
        let Targets {
            limp, limp_width, ..
        } = self.targets;
        limp + limp_width * ((taut - limp) / limp_width).exp().ln_1p()
    }

    fn arm_mm(&self, test: &ArmTest) -> f64 {
        let held: Vec<(Dof, f64)> = test.held.iter().map(|(dof, d)| (*dof, *d)).collect();
        let man = &self.lifters[0];
        let at = muscle_at(man, &test.muscle, test.joint, test.degrees, &held);
        at.map_or(f64::NAN, |at| 1000.0 * at.arms_m[0])
    }

    fn line(&self, test: &ArmTest) -> Option<(&ShoulderLine, ShoulderPose)> {
        let muscle = self.lifters[0].muscles.get(&test.muscle)?;
        let pose = ShoulderPose::in_plane(test.joint, test.degrees.to_radians());
        Some((muscle.shoulder.as_ref()?, pose))
    }

    fn twist_mm(&self, test: &ArmTest) -> f64 {
        self.line(test).map_or(f64::NAN, |(line, pose)| {
            -1000.0 * line.path().at(&pose).moment_m.dot(&pose.arm())
        })
    }

    /// Direction of a muscle's pull where it leaves its end on the upper arm, in the blade's axes.
    fn pull(&self, test: &ArmTest) -> Option<Vector3<f64>> {
        let (line, pose) = self.line(test)?;
        let place = line.insertion;
        let place = Vector3::new(place.out.as_m(), place.forward.as_m(), place.up.as_m());
        let end = pose.on_humerus(place * line.scale);
        let at = line.path().at(&pose);
        // The pull has this moment, lies in the plane of start, centre and end, and is one long.
        let across = at.moment_m.cross(&end) / end.norm_squared();
        let inward = (1.0 - across.norm_squared()).max(0.0).sqrt();
        let along = end.normalize();
        let is_outward = !at.is_bent && (at.last_start_m - end).dot(&along) > 0.0;
        let pull = across + along * if is_outward { inward } else { -inward };
        let raised = Rotation3::from_axis_angle(&Vector3::y_axis(), pose.blade().up_rad);
        let drawn = Rotation3::from_axis_angle(&Vector3::z_axis(), -pose.blade().forward_rad);
        let turned =
            Rotation3::from_axis_angle(&Vector3::z_axis(), -BLADE_IN_FRONT_DEG.to_radians());
        Some(turned * raised * drawn * pull)
    }

    /// Names of the muscles that a target looks at.
    pub fn muscles(&self, quantity: &Quantity) -> BTreeSet<String> {
        match quantity {
            Quantity::Torque(test) => self.crossing(test),
            Quantity::Ratio(above, below) => self
                .crossing(above)
                .into_iter()
                .chain(self.crossing(below))
                .collect(),
            Quantity::Length(test) => [test.muscle.clone()].into(),
            Quantity::Shortening(from, to) | Quantity::Excursion(from, to) => {
                [from.muscle.clone(), to.muscle.clone()].into()
            }
            Quantity::Arm(test) | Quantity::Twist(test) | Quantity::Pull(test, _) => {
                [test.muscle.clone()].into()
            }
        }
    }

    fn crossing(&self, test: &JointTest) -> BTreeSet<String> {
        let held: Vec<(Dof, f64)> = test.held.iter().map(|(dof, d)| (*dof, *d)).collect();
        let pose = joint_of(test, &held).pose(test.degrees[0]);
        let man = &self.lifters[0];
        let acting = Acting::of(man, std::slice::from_ref(&pose)).expect("sound arms");
        acting
            .muscles
            .into_iter()
            .map(|muscle| muscle.name)
            .collect()
    }
}

/// Torque in the direction of the push as a dynamometer of the suite has it, N·m; without its corner where a
/// muscle's arm passes through nothing, at which a search would stick.
fn torque_nm(pose: &Pose, sign: f64, lifter: &Lifter, test: &JointTest) -> f64 {
    let acting = Acting::of(lifter, std::slice::from_ref(pose)).expect("sound arms");
    let passive = if test.active_only { 0.0 } else { 1.0 };
    let muscles: f64 = acting
        .muscles
        .iter()
        .map(|muscle| {
            let at = muscle.at(&acting.curves, pose, test.speed.to_radians());
            let arm = sign * at.arms_m[0];
            let full = arm * at.active_n;
            0.5 * (full + full.hypot(CORNER_NM)) + passive * arm * at.passive_n
        })
        .sum();
    muscles + passive * sign * acting.passive_joints_nm(pose)[0]
}

/// The greatest of some torques, a little of those close to it mixed in: smooth where two change places.
fn greatest(torques: &[f64]) -> f64 {
    let top = torques.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let weight = |torque: f64| ((torque - top) / MIXED_NM).exp();
    let weights: f64 = torques.iter().map(|t| weight(*t)).sum();
    torques.iter().map(|t| t * weight(*t)).sum::<f64>() / weights
}

fn joint_of<'a>(test: &JointTest, held: &'a [(Dof, f64)]) -> Joint<'a> {
    Joint {
        dof: test.joint,
        sign: if test.push == Push::Up { 1.0 } else { -1.0 },
        held,
    }
}

fn muscle_at(
    lifter: &Lifter,
    name: &str,
    dof: Dof,
    degrees: f64,
    held: &[(Dof, f64)],
) -> Option<MuscleAtPose> {
    let joint = Joint {
        dof,
        sign: 1.0,
        held,
    };
    let pose: Pose = joint.pose(degrees);
    let acting = Acting::of(lifter, std::slice::from_ref(&pose)).ok()?;
    let muscle = acting.muscles.iter().find(|muscle| muscle.name == name)?;
    Some(muscle.at(&acting.curves, &pose, 0.0))
}
