//! A phone's export of 10,000 rows, made by a rule: what `progress` says of it is what the rule put in, and reading it is work
//! in proportion to its rows.

use crate::calling::{call_in, in_one_line};
use std::fmt::Write as _;
use torquill::library::Library;
use torquill::progress::day::Day;
use torquill::progress::log_file::{LogReading, read_log};

const ROWS: u32 = 10_000;

/// The columns of a phone's export.
const HEAD: &str = "Date,Session,Minutes,Exercise name,Set no.,Load,Load unit,Reps,RPE,Distance,Seconds,Heart rate,Place,Tag,\
    Remarks,Energy,Photo\n";

/// A lift of the log: its name there, the 1RM of the first week, what a week adds, how many weeks that goes on.
const LIFTS: [(&str, f64, f64, f64); 4] = [
    ("Bench Press (Barbell)", 70.0, 0.15, 270.0),
    ("Back Squat (Barbell)", 80.0, 0.25, f64::INFINITY),
    ("Deadlift (Barbell)", 180.0, 0.0, 0.0),
    ("Overhead Press (Barbell)", 60.0, -0.04, f64::INFINITY),
];

/// Repetitions and rating of exertion of the four sets of a lift, the load as a share of the day's 1RM.
const SETS: [(f64, u32, &str); 4] = [
    (0.50, 8, ""),
    (0.80, 5, "8"),
    (0.80, 5, "9"),
    (0.70, 8, "9"),
];

/// What a lift's 1RM is in a week.
fn one_rm_kg((_, first, gain, until): (&str, f64, f64, f64), week: f64) -> f64 {
    first + gain * week.min(until)
}

/// The export, two days a week.
fn export(rows: u32) -> String {
    let mut text = HEAD.to_owned();
    let first = Day::from_date(2019, 1, 7).expect("a day");
    let mut state = 7_u32;
    let mut chance = move || {
        // Knuth's generator (The Art of Computer Programming, vol. 2): the same log on every machine.
        state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
        f64::from(state >> 8) / f64::from(1 << 24)
    };
    let mut days_strength = 1.0;
    for row in 0..rows {
        let (session, lift, set) = (row / 16, LIFTS[(row / 4 % 4) as usize], row % 4);
        let day = 7 * (session / 2) + 3 * (session % 2);
        if set == 0 {
            // Days differ by some two percent.
            days_strength = 1.0 + 0.04 * (chance() - 0.5);
        }
        let (share, repetitions, rating) = SETS[set as usize];
        let kg = share * days_strength * one_rm_kg(lift, f64::from(day) / 7.0);
        let date = first.after(day).expect("a day");
        let remark = if row % 31 == 0 {
            "\"slept badly, \"\"again\"\"\""
        } else {
            ""
        };
        let _ = writeln!(
            text,
            "{date} 18:05:11,Evening,{},{},{},{kg:.2},kg,{repetitions},{rating},,,{},home,strength,{remark},,",
            50 + session % 20,
            lift.0,
            set + 1,
            110 + row % 30,
        );
    }
    text
}

#[test]
fn law_a_phones_ten_thousand_rows_say_what_was_put_in() {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("phone.csv"), export(ROWS)).expect("written");
    let weeks = f64::from(ROWS / 16 / 2);
    for (lift, verdict, name) in [
        (LIFTS[0], "flat", "bench-press"),
        (LIFTS[1], "rising", "squat"),
    ] {
        let words = [
            "progress",
            "--lift",
            name,
            "--log",
            "phone.csv",
            "--format",
            "json",
        ];
        let answer = call_in(folder.path(), &words).done();
        let found = &answer.json()["summary"];
        let number = |key: &str| {
            found[key]
                .as_f64()
                .unwrap_or_else(|| panic!("{key}: {found}"))
        };
        assert_eq!(found["verdict"], verdict, "{found}");
        assert_eq!(found["sureness"], "clear", "{found}");
        // The gain ends with its last week; a line finds its bend to a month.
        let (gain, since) = match lift.3 < weeks {
            true => (0.0, weeks - lift.3),
            false => (lift.2, weeks),
        };
        assert!(
            (number("weeks") - since).abs() <= 4.0,
            "{since} weeks: {found}"
        );
        // Two standard errors of some 80 sessions that differ by two percent are less than a hundredth a week.
        assert!(
            (number("slope_kg_per_week") - gain).abs() < 0.05 * gain + 0.01,
            "{gain}: {found}"
        );
        // Equations differ by five percent for such a set.
        let ratio = number("one_rm_now_kg") / one_rm_kg(lift, weeks);
        assert!((0.95..1.05).contains(&ratio), "{ratio}: {found}");
    }
    let words = ["progress", "--lift", "squat", "--log", "phone.csv"];
    let told = in_one_line(&call_in(folder.path(), &words).done().out);
    for part in [
        "columns not used: `Session`",
        "deadlift (2500 sets)",
        "10 less the rating of exertion",
    ] {
        assert!(told.contains(part), "{part}: {told}");
    }
}

/// The time that this thread was at work, s.
#[cfg(target_os = "linux")]
fn at_work_s() -> f64 {
    let text = std::fs::read_to_string("/proc/thread-self/schedstat").expect("Linux counts it");
    let nanoseconds = text.split(' ').next().expect("a number");
    1.0e-9 * nanoseconds.parse::<f64>().expect("a number")
}

/// Four times the rows take four times the work; by pairs of rows it would be sixteen times, and the mean of both, eight, is
/// where one is told from the other.
#[cfg(target_os = "linux")]
#[test]
fn law_reading_is_work_in_proportion_to_rows() {
    let reading = LogReading {
        names: Library::built_in().lift_names(),
        ..LogReading::default()
    };
    let work = |rows: u32| {
        let text = export(rows);
        let before = at_work_s();
        let log = read_log("phone.csv", &text, &reading).expect("a log");
        assert_eq!(log.entries.len(), rows as usize);
        at_work_s() - before
    };
    let [few, many] = [ROWS / 4, ROWS].map(work);
    assert!(many < 8.0 * few, "{few} s for a quarter, {many} s for all");
}
