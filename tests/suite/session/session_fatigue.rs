//! The three-compartment model against published endurance and recovery, and its laws.

use super::endurance::{ENDURANCE_CURVES, closed_form_s, stepped_s, sustainable_share};
use super::published;
use crate::evidence::paper;
use proptest::prelude::*;
use torquill::library::Library;
use torquill::rep::Tiring;
use torquill::session::fatigue::{Compartments, FatigueJoint, TiringJoint, after};
use torquill::session::muscle_state::MuscleState;
use torquill::session::published::RecoveryTime;
use torquill::units::Duration;

const NAMED: [(FatigueJoint, &str); 6] = [
    (FatigueJoint::Knee, "knee"),
    (FatigueJoint::Shoulder, "shoulder"),
    (FatigueJoint::HandGrip, "grip"),
    (FatigueJoint::Ankle, "ankle"),
    (FatigueJoint::Trunk, "trunk"),
    (FatigueJoint::Elbow, "elbow"),
];

fn named(name: &str) -> FatigueJoint {
    let found = NAMED.iter().find(|(_, other)| *other == name);
    found.expect("a joint").0
}

fn tiring(joint: FatigueJoint) -> TiringJoint {
    published().fatigue.tiring(joint)
}

fn joints() -> Vec<TiringJoint> {
    let rows = published().fatigue.joints.iter();
    rows.map(|row| tiring(row.joint)).collect()
}

fn model_s(joint: FatigueJoint, target: f64) -> f64 {
    closed_form_s(target, &tiring(joint)).expect("not for ever")
}

fn curve_s(joint: FatigueJoint, target: f64) -> f64 {
    let mut curves = ENDURANCE_CURVES.iter();
    let (_, b0_s, b1) = curves.find(|curve| curve.0 == joint).expect("published");
    b0_s * target.powf(-b1)
}

#[test]
fn published_endurance_of_model_and_curves() {
    let (model, curves) = (
        paper("freylaw2012_endurance"),
        paper("freylaw2010_endurance"),
    );
    for row in model.rows() {
        row.check(model_s(named(row.text("joint")), row.number("share")));
    }
    for row in paper("knee_extension_thesis").rows_with("share") {
        row.check(model_s(named("knee"), row.number("share")));
    }
    for row in curves.rows() {
        let (joint, share) = (named(row.text("joint")), row.number("share"));
        row.check(match row.text("by") {
            "curve" => curve_s(joint, share),
            _ => model_s(joint, share),
        });
    }
}

#[test]
fn published_rates_and_rest_multipliers() {
    for row in paper("freylaw2012_held_for_ever").rows() {
        row.check(sustainable_share(&tiring(named(row.text("joint")))));
    }
    for row in paper("looft2018_rest_multiplier").rows() {
        row.check(tiring(named(row.text("joint"))).rest_multiplier);
    }
}

#[test]
fn published_grip_strength_is_back_four_minutes_after_a_minute_of_all_out_grip() {
    let mut grip = MuscleState::fresh(tiring(FatigueJoint::HandGrip));
    grip.work(1.0, Duration::from_s(60.0)).expect("a minute");
    assert!(
        grip.capacity_share() < 0.7,
        "a minute of all-out grip tires"
    );
    grip.rest(Duration::from_s(235.0)).expect("a rest");
    paper("grip31_recovery").check(
        "grip strength 235 s after a minute of all-out grip, share of fresh",
        grip.capacity_share(),
    );
}

#[test]
fn published_phosphocreatine_half_times() {
    for name in ["slade2006_recovery", "calf_31p_recovery"] {
        for row in paper(name).rows() {
            let recovery = published()
                .phosphocreatine
                .recoveries
                .iter()
                .find(|recovery| recovery.muscle == row.text("muscle"))
                .expect("listed");
            row.check(match recovery.time {
                RecoveryTime::Constant(time) => time.as_s() * std::f64::consts::LN_2,
                RecoveryTime::Half(time) => time.as_s(),
            });
        }
    }
}

#[test]
fn law_phosphocreatine_comes_back_with_rest() {
    let back = |rest_s| {
        let rest = Duration::from_s(rest_s);
        published().phosphocreatine.share_back_range(rest)
    };
    let (least, most) = back(30.0);
    assert!(least > 0.25 && most < 0.9 && least < most);
    let (later, _) = back(180.0);
    assert!(later > least && back(0.0) == (0.0, 0.0));
}

#[test]
fn law_closed_form_is_the_integral() {
    for rates in &joints() {
        for target in [0.15, 0.3, 0.5, 0.7, 0.9] {
            let closed = closed_form_s(target, rates).expect("not for ever");
            let stepped = stepped_s(target, rates, 5000.0).expect("it ends");
            // The controller recruits in a few tenths of a second and stays F/LD short of the target.
            let lag_s = 1.0 + 0.01 * closed;
            assert!(
                (closed - stepped).abs() < lag_s,
                "{:?} {target}: {closed} {stepped}",
                rates.joint
            );
        }
    }
}

#[test]
fn law_a_small_share_is_held_for_ever() {
    let knee = &tiring(FatigueJoint::Knee);
    assert_eq!(closed_form_s(0.05, knee), None);
    assert_eq!(stepped_s(0.05, knee, 1000.0), None);
    for share in [-0.1, 1.1, f64::NAN] {
        assert!(after(Compartments::FRESH, share, Duration::from_s(1.0), knee).is_err());
    }
    let mut state = MuscleState::fresh(tiring(FatigueJoint::Knee));
    assert!(state.rest(Duration::from_s(-1.0)).is_err());
    assert!(state.work(0.5, Duration::from_s(-1.0)).is_err());
    assert_eq!(state.capacity_share(), 1.0);
}

fn shares() -> impl Strategy<Value = Compartments> {
    (0.0..1.0_f64, 0.0..1.0_f64).prop_map(|(active, of_rest)| Compartments {
        active,
        fatigued: (1.0 - active) * of_rest,
        resting: (1.0 - active) * (1.0 - of_rest),
    })
}

proptest! {
    #[test]
    fn law_the_three_shares_sum_to_one_and_stay_shares(
        start in shares(), joint in 0..8_usize, target in 0.0..1.0_f64, time_s in 0.0..200.0_f64,
    ) {
        let end = after(start, target, Duration::from_s(time_s), &joints()[joint]).unwrap();
        let sum = end.resting + end.active + end.fatigued;
        prop_assert!((sum - 1.0).abs() < 1e-9, "{sum}");
        for share in [end.resting, end.active, end.fatigued] {
            prop_assert!((-1e-9..=1.0 + 1e-9).contains(&share), "{end:?}");
        }
    }

    #[test]
    fn law_rest_in_closed_form_is_the_integral(
        start in shares(), joint in 0..8_usize, time_s in 0.0..120.0_f64,
    ) {
        let rates = &joints()[joint];
        let stepped = after(start, 0.0, Duration::from_s(time_s), rates).unwrap();
        let mut state = MuscleState { joint: *rates, now: start };
        state.rest(Duration::from_s(time_s)).unwrap();
        prop_assert!((state.now.fatigued - stepped.fatigued).abs() < 1e-6);
        prop_assert!((state.now.active - stepped.active).abs() < 1e-5);
    }

    #[test]
    fn law_work_tires_and_rest_restores(
        joint in 0..8_usize, target in 0.3..1.0_f64, work_s in 5.0..60.0_f64, rest_s in 20.0..300.0_f64,
    ) {
        let mut state = MuscleState::fresh(joints()[joint]);
        state.work(target, Duration::from_s(work_s)).unwrap();
        let tired = state.capacity_share();
        prop_assert!(tired < 1.0);
        let mut longer = MuscleState::fresh(joints()[joint]);
        longer.work(target, Duration::from_s(2.0 * work_s)).unwrap();
        prop_assert!(longer.capacity_share() < tired);
        state.rest(Duration::from_s(rest_s)).unwrap();
        prop_assert!(state.capacity_share() > tired);
    }

    /// One repetition and a whole session tire alike: the same rate, told in two places. What recovers meanwhile, a tenth
    /// of the rate on what is spent, is all that parts them.
    #[test]
    fn law_a_repetition_tires_as_the_compartments_do(time_s in 0.2..12.0_f64) {
        let rates = tiring(FatigueJoint::General);
        let all = Compartments { resting: 0.0, active: 1.0, fatigued: 0.0 };
        let session = 1.0 - after(all, 1.0, Duration::from_s(time_s), &rates)
            .expect("a share and a time")
            .capacity_share();
        let lifter = Library::built_in().lifter("reference-man").expect("built in");
        let rep = Tiring::of(&lifter.curves.dynamics).after(0.0, 1.0, time_s);
        let recovered = rates.r_per_s * time_s * rep;
        prop_assert!(rep >= session && rep - session <= recovered, "{rep} {session} {recovered}");
    }

    #[test]
    fn law_a_higher_share_is_held_for_less_time(joint in 0..8_usize, a in 0.12..0.99_f64, b in 0.12..0.99_f64) {
        prop_assume!(a < b);
        let rates = &joints()[joint];
        let time = |target| closed_form_s(target, rates).unwrap();
        prop_assert!(time(b) < time(a));
    }
}
