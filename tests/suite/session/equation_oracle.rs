//! A repetition by the published load-velocity equations: an oracle for the laws of predictions.

use super::published;
use torquill::library::Library;
use torquill::progress::published_equations::{Velocity, VelocityEquation};
use torquill::session::fatigue::FatigueJoint;
use torquill::session::oracle::{Attempt, JointUse, RepOracle, RepOutcome, STALL_S};
use torquill::session::status::Trainee;
use torquill::session::strength::{OneRmSource, PlannedLift};
use torquill::units::{Duration, Length, Mass, Speed};

/// A built-in movement with a 1RM as given.
pub fn planned_lift(movement: &str, trainee: Trainee, one_rm: Mass) -> PlannedLift {
    let model = Library::built_in().movement(movement).expect("built in");
    PlannedLift {
        movement: movement.to_owned(),
        title: model.title.clone(),
        one_joint: model.moves_one_joint(),
        lower_body: model.lifts_with_legs(),
        from_floor: model.starts_on_floor(),
        handling: model.handling,
        trainee,
        one_rm,
        body: Mass::ZERO,
        unlikely: None,
        one_rm_from: OneRmSource::Given,
    }
}

/// Travel and joint that a published load-velocity equation is used with (assumed: an arm or a thigh of
/// average length; the joint that tires fastest of those that lift).
#[rustfmt::skip]
const LIFTS: &[(&str, f64, &[FatigueJoint])] = &[
    ("bench-press", 0.40, &[FatigueJoint::Shoulder, FatigueJoint::Elbow]),
    ("squat",       0.55, &[FatigueJoint::Knee, FatigueJoint::Hip]),
];

/// Time of a controlled lowering, s (ACSM 2009, Med Sci Sports Exerc 41:687-708: 1 to 2 s).
const LOWERING_S: f64 = 1.5;

/// An oracle from the published load-velocity equation: the load as a share of what is left of the 1RM
/// gives the velocity, and the repetition stalls when that share passes 1.
///
/// ```text
/// load % = 100 · load / (1RM · c)        v = equation(load %)        time = travel / v
/// ```
/// | symbol   | meaning                                           | unit | range  |
/// | -------- | ------------------------------------------------- | ---- | ------ |
/// | `c`      | smallest remaining share of capacity              | –    | 0 to 1 |
/// | `v`      | mean velocity of the lifting phase                | m/s  | > 0    |
/// | `travel` | travel of the bar                                 | m    | > 0    |
///
/// **Shape.** Slower with every repetition of a set; stalls when the load passes what is left.
/// **Source.** The equations of [`torquill::progress::published_equations`]; that fatigue acts like a heavier load is the
/// assumption of velocity-loss training (González-Badillo et al. 2017, Int J Sports Med 38:217-225).
pub fn from_load_velocity(movement: &str, one_rm: Mass) -> RepOracle<'static> {
    let equations = &published().estimates.velocity;
    let equation = equations
        .equation_for(movement, Velocity::MeanPropulsive)
        .expect("published");
    let loads = equations.loads.percent;
    let (_, travel_m, joints) = LIFTS
        .iter()
        .find(|(name, ..)| *name == movement)
        .expect("known");
    let eccentric = published().eccentric.eccentric_one_rm(one_rm, Mass::ZERO);
    RepOracle {
        one_rm,
        eccentric_one_rm: eccentric,
        eccentric_of: Some("published".to_owned()),
        lowering_evenness: None,
        repetitions_overstated: None,
        travel: Some(Length::from_m(*travel_m)),
        joints: joints
            .iter()
            .map(|joint| published().fatigue.tiring(*joint))
            .collect(),
        repetition: Box::new(move |attempt| {
            Ok(outcome(
                (equation, loads),
                (one_rm, eccentric),
                (*travel_m, joints.len()),
                attempt,
            ))
        }),
    }
}

fn outcome(
    (equation, loads): (&VelocityEquation, (f64, f64)),
    (one_rm, eccentric): (Mass, Mass),
    (travel_m, joints): (f64, usize),
    attempt: &Attempt,
) -> RepOutcome {
    let share = attempt.load.as_kg() / (one_rm.as_kg() * attempt.smallest_share());
    let percent = (100.0 * share).max(loads.0);
    let lowering = (attempt.load.as_kg() / eccentric.as_kg()).clamp(0.0, 1.0);
    let joint = JointUse {
        lifting: 1.0,
        lowering,
    };
    let velocity_m_s = equation
        .velocity_m_s_at(percent)
        .filter(|_| percent <= loads.1 + 1e-9);
    RepOutcome {
        completed: velocity_m_s.is_some(),
        mean_velocity: Speed::from_m_s(velocity_m_s.unwrap_or(0.0)),
        sticking_velocity: None,
        lifting: Duration::from_s(velocity_m_s.map_or(STALL_S, |v| travel_m / v)),
        lowering: Duration::from_s(LOWERING_S),
        joints: vec![joint; joints],
    }
}
