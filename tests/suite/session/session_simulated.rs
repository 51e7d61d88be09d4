//! The simulated repetition in a plan: laws of its oracle, and the same published directions.

use super::equation_oracle::planned_lift;
use super::published;
use crate::evidence::paper;
use torquill::library::Library;
use torquill::resistance::Setup;
use torquill::session::clusters::even_groups;
use torquill::session::method::Method;
use torquill::session::oracle::{Attempt, RepOracle};
use torquill::session::prediction::{TiringBody, predict_set, repetitions_to_failure};
use torquill::session::remark::PlanBasis;
use torquill::session::request::SessionRequest;
use torquill::session::schemes::plan;
use torquill::session::status::Trainee;
use torquill::setups::Loadings;
use torquill::study::{Question, simulated_oracle};
use torquill::units::{Duration, Mass, System};

/// Runs a test with the simulated oracle of a built-in lifter.
fn with_oracle(movement: &str, test: impl Fn(&RepOracle)) {
    let library = Library::built_in();
    let model = library.movement(movement).expect("built in");
    let lifter = library.lifter("reference-man").expect("built in");
    let question = Question::new(movement, &model, &lifter);
    test(
        &simulated_oracle(
            published(),
            &question,
            &lifter,
            &Setup::default(),
            Duration::from_s(2.0),
        )
        .expect("it lifts something"),
    );
}

fn kg(value: f64) -> Mass {
    Mass::from_kg(value)
}

#[test]
fn law_the_simulated_oracle_lifts_its_maximum_and_no_more() {
    for movement in ["bench-press", "biceps-curl"] {
        with_oracle(movement, |oracle| {
            let joints = vec![1.0; oracle.joints.len()];
            let ask = |load_kg: f64| {
                oracle
                    .ask(&Attempt {
                        load: kg(load_kg),
                        joint_shares: &joints,
                    })
                    .expect("sound")
            };
            let one_rm_kg = oracle.one_rm.as_kg();
            let (at, above) = (ask(one_rm_kg), ask(one_rm_kg + 0.6));
            assert!(at.completed && !above.completed, "{movement} {one_rm_kg}");
            assert!(at.mean_velocity.as_m_s() > 0.0 && above.mean_velocity.as_m_s() == 0.0);
            assert!(ask(0.5 * one_rm_kg).mean_velocity > ask(0.8 * one_rm_kg).mean_velocity);
            assert!(
                (1.0..3.0).contains(&at.lowering.as_s()),
                "lowered in about 2 s: {:?}",
                at.lowering
            );
        });
    }
}

#[test]
fn law_velocities_are_those_of_the_load_about_a_joint_too() {
    with_oracle("biceps-curl", |oracle| {
        let joints = vec![1.0; oracle.joints.len()];
        let attempt = Attempt {
            load: oracle.one_rm * 0.6,
            joint_shares: &joints,
        };
        let curl = oracle.ask(&attempt).expect("sound");
        let travel_m = oracle.travel.expect("known").as_m();
        let over_time = travel_m / curl.lifting.as_s();
        assert!(
            (curl.mean_velocity.as_m_s() / over_time - 1.0).abs() < 0.05,
            "{curl:?} {travel_m}"
        );
    });
}

#[test]
fn law_a_tired_lifter_is_slower_and_weaker_without_jumps() {
    with_oracle("bench-press", |oracle| {
        let load = oracle.one_rm * 0.6;
        let velocity = |share: f64| {
            let joints = vec![share; oracle.joints.len()];
            oracle
                .ask(&Attempt {
                    load,
                    joint_shares: &joints,
                })
                .expect("sound")
                .mean_velocity
                .as_m_s()
        };
        let mut before = velocity(1.0);
        for step in 1..=40 {
            let now = velocity(1.0 - 0.01 * f64::from(step));
            assert!(
                now <= before + 1e-9,
                "faster when more tired: {before} {now}"
            );
            // Just below the limit velocity falls like the root of what is left, without end in slope.
            assert!(
                before - now < 0.06 || now < 0.12,
                "a jump from {before} to {now} at step {step}"
            );
            before = now;
        }
    });
}

#[test]
fn published_clusters_keep_velocity_in_the_simulated_bench_press() {
    with_oracle("bench-press", |oracle| {
        let load = oracle.one_rm * 0.75;
        let predicted = |groups: &[u32]| {
            let mut body = TiringBody::fresh(&oracle.joints);
            predict_set(oracle, load, groups, Duration::from_s(30.0), &mut body).expect("a set")
        };
        let (straight, clusters) = (predicted(&[8]), predicted(&even_groups(8, 2)));
        paper("tufano2017_clusters").check(
            "mean velocity of 8 simulated bench presses at 75 %, clusters of 2 over straight",
            clusters.mean_velocity().as_m_s() / straight.mean_velocity().as_m_s(),
        );
        let fresh = TiringBody::fresh(&oracle.joints);
        paper("baechle_chart").check(
            "repetitions to failure of the simulated bench press at 75 %",
            f64::from(repetitions_to_failure(oracle, load, &fresh).expect("it ends")),
        );
    });
}

#[test]
fn law_a_plan_takes_the_simulated_repetition() {
    with_oracle("squat", |oracle| {
        let gym = Loadings::usual(System::Metric);
        let lifter = Trainee::with_training_months(60.0);
        let mut asked = SessionRequest::usual(
            published(),
            planned_lift("squat", lifter, oracle.one_rm),
            Method::OverloadedLowering,
            &gym,
        );
        asked.oracle = Some(oracle);
        let lowering = plan(&asked).expect("a plan");
        for one in &lowering.draft.lowerings {
            let speed = one.speed_m_s.expect("the travel is known");
            assert!((0.05..0.3).contains(&speed), "{speed}");
            assert!(one.reserve >= 0.0);
        }
        asked.method = Method::Clusters;
        let clusters = plan(&asked).expect("a plan");
        assert_eq!(clusters.draft.predictions.len(), 2);
        assert!(
            clusters
                .draft
                .sources
                .iter()
                .any(|(what, _)| *what == PlanBasis::Prediction)
        );
    });
}
