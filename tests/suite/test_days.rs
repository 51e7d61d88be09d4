//! Days of a team on which a maximum is tested: nothing else that is heavy for the same limbs stands beside the test.

use crate::calling::{call_in, in_one_line};
use proptest::prelude::*;
use proptest::test_runner::TestCaseResult;
use torquill::library::Library;
use torquill::progress::log_file::BadRows;
use torquill::session::maximum_test::TestedMaximum;
use torquill::session::method::Method;
use torquill::setups::Watch;
use torquill::study::{LiftPlan, MemberLift, MethodChoice, PlanQuestion, team_of, team_plans};

const HEAD: &str = "name,sex,mass (kg),height (cm),training_months,squat (kg),deadlift (kg),bench press (kg),row (kg),overhead press (kg),leg press (kg)\n";

/// What a strong lifter of the columns has, kg.
const MAXIMA: [u32; 6] = [150, 170, 110, 90, 65, 260];

fn question(method: Method) -> PlanQuestion {
    PlanQuestion {
        methods: MethodChoice::One(method),
        ..PlanQuestion::usual("all")
    }
}

/// A row of a team: cells that are not told are tested.
fn row(months: u32, told: [bool; 6]) -> String {
    let cells = told.iter().zip(MAXIMA);
    let cells: Vec<String> = cells
        .map(|(told, kg)| if *told { kg.to_string() } else { String::new() })
        .collect();
    format!(
        "{HEAD}Bo (invented),man,82,181,{months},{}\n",
        cells.join(",")
    )
}

/// Whether a maximum is tested, and the hardest set of a plan.
fn hardest(lift: &MemberLift) -> (bool, f64, bool) {
    match &lift.plan {
        LiftPlan::Test(test) => {
            let is_maximum = test.finds == TestedMaximum::OneRm;
            (
                is_maximum,
                if is_maximum { 1.0 } else { 0.0 },
                test.lift.lower_body,
            )
        }
        LiftPlan::Sessions(answer) => {
            let plans = || answer.sessions.iter().map(|session| &session.plan);
            let sets = plans().flat_map(|plan| plan.working_sets());
            let hardest = sets.map(|set| set.hardness()).fold(0.0, f64::max);
            let first = plans().next().expect("a session");
            (false, hardest, first.draft.lift.lower_body)
        }
        LiftPlan::Nothing(_) => (false, 0.0, false),
    }
}

/// Returns how many days have a test, and how many heavy lifts stand on days without.
fn tests_stand_alone(
    months: u32,
    told: [bool; 6],
    method: Method,
) -> Result<[usize; 2], TestCaseError> {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("team.csv");
    std::fs::write(&file, row(months, told)).expect("a file");
    let library = Library::built_in();
    let team = team_of(&library, &file.display().to_string(), BadRows::Refused).expect("a team");
    let plans = team_plans(&question(method), &team, None, &library, &Watch::default());
    let mut seen = [0, 0];
    for member in plans.expect("plans") {
        let mut placed = 0;
        for day in &member.days {
            let lifts: Vec<_> = day
                .lifts
                .iter()
                .map(|place| hardest(&member.lifts[*place]))
                .collect();
            placed += lifts.len();
            let tests = lifts.iter().filter(|lift| lift.0).count();
            seen[0] += tests.min(1);
            let is_heavy = |hardest: f64| (100.0 * hardest).round() >= 85.0;
            let heavy = lifts.iter().enumerate();
            for (at, heavy) in heavy.filter(|(_, lift)| is_heavy(lift.1)) {
                for (other, (_, hardest, legs)) in lifts.iter().enumerate() {
                    prop_assert!(
                        other == at || *legs != heavy.2 || !is_heavy(*hardest),
                        "{hardest} beside another: {months} {told:?} {method:?}"
                    );
                }
                // First what is tested.
                let is_first = lifts[..at].iter().all(|lift| lift.0 || lift.1 == 0.0);
                prop_assert!(!heavy.0 || is_first);
            }
            seen[1] += lifts
                .iter()
                .filter(|lift| !lift.0 && (100.0 * lift.1).round() >= 85.0)
                .count();
        }
        let planned = member.lifts.iter();
        let planned = planned.filter(|lift| !matches!(lift.plan, LiftPlan::Nothing(_)));
        prop_assert_eq!(placed, planned.count());
    }
    Ok(seen)
}

fn random(months: u32, told: u32, method: usize) -> TestCaseResult {
    let told = std::array::from_fn(|lift| told >> lift & 1 == 1);
    let method = [Method::Straight, Method::Pyramid][method];
    tests_stand_alone(months, told, method).map(|_| ())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// On no day two lifts of the same limbs with a test of a maximum or sets of 85 % or more.
    #[test]
    #[ignore = "24 teams: nightly"]
    fn law_every_test_of_a_maximum_has_its_limbs_for_itself(months in 0..80_u32, told in 0..64_u32, method in 0..2_usize) {
        random(months, told, method)?;
    }
}

/// A tested squat and a heavy deadlift, which fit one day by their time, come apart; and the rule is told.
#[test]
fn regress_a_tested_squat_and_heavy_deadlifts_are_two_days() {
    let told = [false, true, false, true, true, true];
    let [tests, heavy] = tests_stand_alone(60, told, Method::Pyramid).expect("apart");
    assert!(
        tests > 0 && heavy > 0,
        "{tests} {heavy}: nothing was kept apart"
    );
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("team.csv"), row(60, told)).expect("a file");
    let words = ["plan", "all", "--team", "team.csv", "-o", "sheets"];
    let out = in_one_line(&call_in(folder.path(), &words).done().out);
    assert!(
        out.contains("each with a test of a 1RM or sets of 85 % or more, are on days of their own"),
        "{out}"
    );
}
