//! More than the 1RM for a fitted lifter: the limit of the lowering is that of the low end of what the 1RM may be.

use crate::calling::{call_in, in_one_line};
use proptest::prelude::*;
use torquill::error::{SessionFault, SessionRefusal, What};
use torquill::library::Library;
use torquill::narrative::session_remarks::remark;
use torquill::session::draft::SessionPlan;
use torquill::session::lowering_limits::LEAST_RESERVE;
use torquill::session::method::Method;
use torquill::session::request::SessionRequest;
use torquill::session::schemes::plan;
use torquill::session::status::Trainee;
use torquill::session::strength::{OneRmSource, PlannedLift, SimulatedRange};
use torquill::setups::Loadings;
use torquill::units::{Mass, System};

/// An overload of somebody fitted to the bench press, whose 1RM may be as little as this share of what is simulated.
fn overload(one_rm: Mass, low: f64) -> Result<SessionPlan, torquill::error::Error> {
    let library = Library::built_in();
    let range = SimulatedRange {
        simulated: one_rm,
        low: one_rm * low,
        high: one_rm * (2.0 - low),
    };
    let lift = PlannedLift {
        movement: "bench-press".to_owned(),
        title: "Bench press".to_owned(),
        handling: library.movement("bench-press")?.handling,
        one_joint: false,
        lower_body: false,
        from_floor: false,
        trainee: Trainee::with_training_months(48.0),
        one_rm,
        body: Mass::ZERO,
        one_rm_from: OneRmSource::Simulated {
            lifter: "Ann (invented)".to_owned(),
            measured: true,
            range: Some(range),
        },
        unlikely: None,
    };
    let gym = Loadings::usual(System::Metric);
    let method = Method::OverloadedLowering;
    plan(&SessionRequest::usual(
        library.published()?,
        lift,
        method,
        &gym,
    ))
}

/// The load that is lowered, and what helpers hold of a bar that is lost, where that is why nothing is planned.
fn beyond_helpers(fault: &torquill::error::Error) -> Option<(Mass, Mass)> {
    match &fault.faults().first()?.what {
        What::Session(SessionFault::Refusal(SessionRefusal::NobodyHolds {
            load, held, ..
        })) => Some((*load, held.1)),
        _ => None,
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// Every load above the 1RM keeps its reserve at the low end too, and the plan tells that end; or nothing is planned.
    #[test]
    fn law_an_overload_holds_at_the_low_end_of_the_maximum(kg in 60.0..200.0_f64, low in 0.75..1.0_f64) {
        let one_rm = Mass::from_kg(kg);
        let library = Library::built_in();
        let table = &library.published().expect("tables").eccentric;
        // What the measured ratio makes of the low end.
        let limit_kg = table.eccentric_one_rm(one_rm * low, Mass::ZERO).as_kg();
        match overload(one_rm, low) {
            Ok(session) => {
                let most_kg = limit_kg * (1.0 - LEAST_RESERVE);
                for set in session.working_sets() {
                    prop_assert!(set.load.total.as_kg() <= most_kg + 1.0e-6);
                }
                let kept = session.draft.lowerings.iter();
                prop_assert!(kept.clone().count() > 0);
                for lowering in kept {
                    prop_assert!(lowering.reserve >= LEAST_RESERVE);
                }
                let remarks = session.draft.remarks.iter();
                let told: String = remarks.map(|fact| remark(fact, System::Metric)).collect();
                prop_assert!(told.contains("hold four in five: the limit of the lowering is that of"), "{}", told);
            }
            Err(fault) => {
                prop_assert_eq!(fault.exit_status(), 1, "{}", fault);
                if let Some((load, held)) = beyond_helpers(&fault) {
                    prop_assert!(load > held && load > one_rm, "{}", fault);
                    return Ok(());
                }
                // Fatigue in the lowering itself takes some hundredths.
                prop_assert!(limit_kg * (1.0 - LEAST_RESERVE) < 1.1 * kg, "{} at {}: {}", kg, low, fault);
            }
        }
    }
}

/// A low end that is as good as the middle costs nothing; a far one ends the overload.
#[test]
fn law_a_far_low_end_ends_an_overload() {
    let one_rm = Mass::from_kg(140.0);
    let loads = |low: f64| -> Vec<f64> {
        let session = overload(one_rm, low).expect("a session");
        let sets = session.working_sets();
        sets.map(|set| set.load.total.as_kg()).collect()
    };
    let (sure, unsure) = (loads(1.0), loads(0.92));
    assert!(
        sure.iter()
            .zip(&unsure)
            .all(|(sure, unsure)| sure >= unsure)
    );
    assert!(
        sure.iter().all(|kg| (147.0..=154.0).contains(kg)),
        "{sure:?}"
    );
    assert_eq!(
        overload(one_rm, 0.78).expect_err("refused").exit_status(),
        1
    );
}

/// A lifter fitted to a set far from failure: refused with the low end, and with what to do.
#[test]
fn fault_an_overload_of_a_maximum_that_is_hardly_known() {
    let folder = tempfile::tempdir().expect("a folder");
    let folder = folder.path();
    let fit = "fit --name ann --sex man --mass 82kg --height 181cm --training-months 40 -o a.ron";
    let mut fit: Vec<&str> = fit.split(' ').collect();
    fit.extend(["--lift", "squat=140 kg x 8 @ rir 3"]);
    call_in(folder, &fit).done();
    let max = [
        "max",
        "squat",
        "--lifter",
        "a.ron",
        "--scatter",
        "--format",
        "json",
    ];
    let low = call_in(folder, &max).done().json()["summary"]["one_rm_low_kg"]
        .as_f64()
        .expect("a low end");
    let asked = [
        "plan",
        "squat",
        "--lifter",
        "a.ron",
        "--method",
        "overloaded-lowering",
    ];
    let refused = call_in(folder, &asked);
    assert_eq!(refused.status, 1, "{}", refused.out);
    let text = in_one_line(&refused.complaint);
    let shown = format!("{} kg", (10.0 * low).round() / 10.0);
    for part in [
        format!("at {shown}, the low end of what the 1RM may be"),
        "tell a 1RM that was tested lately with --one-rm".to_owned(),
    ] {
        assert!(text.contains(&part), "{part}: {text}");
    }
}
