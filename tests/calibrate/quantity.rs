//! What the model says of a target.

use crate::calibration::problem::{
    ArmTest, FibreAs, FibreTest, JointTest, Over, Push, Quantity, Targets,
};
use crate::dynamometer::Joint;
use std::collections::BTreeSet;
use torquill::anatomy::{Dof, Lifter, Sex, Tendon};
use torquill::capacity::{Acting, MuscleAtPose};
use torquill::movement::Pose;

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
        let torques = test
            .degrees
            .iter()
            .map(|d| joint.torque_at_speed(tested, *d, test.speed));
        let torque = match test.over {
            Over::Mean => torques.sum::<f64>() / test.degrees.len() as f64,
            Over::Greatest => torques.fold(f64::NEG_INFINITY, f64::max),
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
            Quantity::Arm(test) => [test.muscle.clone()].into(),
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
