//! `plan --log` from a log that ended long ago: its age is told, more than the 1RM is refused, and a block stays light.

use crate::calling::{Answer, call, call_in, in_one_line};
use torquill::progress::day::Day;
use torquill::progress::one_rm_now::LAY_OFF_DAYS;

const WORDS: [&str; 7] = [
    "plan",
    "squat",
    "--log",
    "log.csv",
    "--training-months",
    "84",
    "--gym",
];

/// The last day of the log.
const LAST: &str = "2026-02-02";

/// Plans from a log of five weeks.
fn planned(more: &[&str]) -> Answer {
    let folder = tempfile::tempdir().expect("a folder");
    let log = "date,lift,load (kg),repetitions,reserve\n2026-01-05,squat,200,3,1\n2026-01-12,squat,202.5,3,1\n\
               2026-01-19,squat,205,3,1\n2026-01-26,squat,205,3,1\n2026-02-02,squat,207.5,3,1\n";
    std::fs::write(folder.path().join("log.csv"), log).expect("a log");
    call_in(
        folder.path(),
        &[&WORDS[..], &["college-weight-room"], more].concat(),
    )
}

fn days_later(days: u32) -> String {
    let last = Day::from_date(2026, 2, 2).expect("a date");
    last.after(days).expect("a date").to_string()
}

/// Loads of the working sets of each session, kg.
fn loads(answer: &Answer) -> Vec<Vec<f64>> {
    let json = answer.json();
    let sessions = json["sessions"].as_array().expect("sessions").iter();
    let of_session = |session: &serde_json::Value| {
        let sets = session["sets"].as_array().expect("sets").iter();
        sets.filter(|set| set["kind"] == "work")
            .map(|set| set["load_kg"].as_f64().expect("kg"))
            .collect()
    };
    sessions.map(of_session).collect()
}

#[test]
fn law_a_single_session_tells_how_old_its_log_is() {
    let said = in_one_line(&planned(&[]).done().out);
    assert!(
        said.contains(&format!("from the log up to {LAST}, ")),
        "{said}"
    );
    assert!(
        said.contains(&format!("(its last: {LAST}); tell the day by --start")),
        "{said}"
    );
    let told = in_one_line(&planned(&["--start", &days_later(3)]).done().out);
    assert!(
        told.contains(&format!("from the log up to {LAST}, ")),
        "{told}"
    );
    assert!(!told.contains("tell the day by --start"), "{told}");
}

#[test]
fn fault_a_day_that_tells_nothing_is_refused() {
    let arguments = [
        "plan",
        "squat",
        "--one-rm",
        "140 kg",
        "--start",
        "2026-12-01",
    ];
    crate::calling::told(
        &call(&arguments),
        &arguments,
        &["--start changes nothing", "--log", "--weeks"],
    );
    let refused = planned(&["--start", LAST]);
    assert_eq!(refused.status, 2, "{}", refused.out);
    assert!(refused.complaint.contains("so the plan begins later"));
}

/// Whatever the day: after a lay-off nothing beyond the 1RM, and every session of a block as light as the first week's.
#[test]
fn law_an_old_log_is_no_measure_of_today() {
    let limit = u32::try_from(LAY_OFF_DAYS).expect("some days");
    let usual = planned(&["--format", "json"]).done();
    for (days, weeks) in [(1, 3), (limit, 4), (limit + 1, 3), (499, 6)] {
        let is_old = days > limit;
        let start = days_later(days);
        let overload = planned(&["--start", &start, "--method", "overloaded-lowering"]);
        let is_refused = overload.complaint.contains("the log has no session for");
        assert_eq!(is_refused, is_old, "{} {}", days, overload.complaint);
        let single = planned(&["--start", &start, "--format", "json"]).done();
        let heaviest = |answer: &Answer| loads(answer)[0].iter().copied().fold(0.0, f64::max);
        assert_eq!(heaviest(&single) < heaviest(&usual), is_old);
        let weeks = weeks.to_string();
        let block = ["--start", &start, "--weeks", &weeks, "--format", "json"];
        let block = planned(&block).done();
        let all = loads(&block);
        let first = all[0].iter().copied().fold(0.0, f64::max);
        let most = all.iter().flatten().copied().fold(0.0, f64::max);
        assert_eq!(most <= first, is_old, "{} {:?}", days, all);
        let text = planned(&["--start", &start, "--weeks", &weeks]).done();
        let said = in_one_line(&text.out);
        let asks = said.contains("plan from their log as soon as it holds two of them");
        assert_eq!(asks, is_old, "{}", said);
        assert_eq!(said.contains(&format!("Weeks 1 to {weeks}")), is_old);
    }
}
