//! A novice's session today beside the block that it begins; days of a block on what is printed, bands and rows that are told
//! alike everywhere.

use crate::calling::{call, in_one_line};
use proptest::prelude::{ProptestConfig, proptest};
use serde_json::Value;

/// A fit of one man of 80 kg.
fn athlete<'a>(height: &'a str, told: [&'a str; 2]) -> Vec<&'a str> {
    let who = [
        "fit",
        "--name",
        "athlete-7",
        "--sex",
        "man",
        "--mass",
        "80 kg",
    ];
    [&who[..], &["--height", height], &told, &["-o", "one.ron"]].concat()
}

/// The working sets of a session: how many, their load, repetitions and reserve; and how it goes on.
fn work_of(session: &Value) -> (usize, f64, u64, u64, String) {
    let sets = session["sets"].as_array().expect("sets");
    let work: Vec<&Value> = sets.iter().filter(|set| set["kind"] == "work").collect();
    let first = work.first().expect("a working set");
    (
        work.len(),
        first["load_kg"].as_f64().expect("a load"),
        first["repetitions"].as_u64().expect("repetitions"),
        first["reserve"].as_u64().expect("a reserve"),
        session["progression"].as_str().expect("words").to_owned(),
    )
}

/// A novice's session today is the first week of a block of any length; a lift, a share of a usual 1RM, what is asked beside.
fn today_is_the_first_week(lift: usize, share: f64, more: usize, weeks: u32) {
    let (lift, usual) = [
        ("squat", 75.0),
        ("bench-press", 55.0),
        ("deadlift", 100.0),
        ("overhead-press", 35.0),
        ("row", 50.0),
        ("leg-press", 130.0),
        ("biceps-curl", 15.0),
    ][lift];
    let more: &[&str] = [
        &["--training-months", "3", "--gym", "garage"][..],
        &["--training-months", "0", "--lifter", "reference-woman"],
        &["--age", "74", "--training-months", "90"],
        &["--unwell"],
        &["--method", "clusters"],
        &["--rest", "120 s"],
    ][more];
    let one_rm = format!("{:.1} kg", usual * share);
    let who = ["plan", lift, "--one-rm", &one_rm, "--format", "json"];
    let today = call(&[&who[..], more].concat());
    let weeks = weeks.to_string();
    let block = call(&[&who[..], more, &["--weeks", &weeks]].concat());
    assert_eq!(today.status, block.status, "{lift} {one_rm} {more:?}");
    if today.status == 0 {
        let [today, first] = [today, block].map(|answer| work_of(&answer.json()["sessions"][0]));
        assert_eq!(today, first, "{lift} {one_rm} {more:?} {weeks}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2))]

    #[test]
    fn law_a_novices_session_today_is_the_first_week(
        lift in 0..7_usize, share in 0.6..1.4_f64, more in 0..6_usize, weeks in 2..13_u32,
    ) {
        today_is_the_first_week(lift, share, more, weeks);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    #[ignore = "64 blocks: nightly"]
    fn law_every_novices_session_today_is_the_first_week(
        lift in 0..7_usize, share in 0.6..1.4_f64, more in 0..6_usize, weeks in 2..13_u32,
    ) {
        today_is_the_first_week(lift, share, more, weeks);
    }
}

/// What a session says to do next is what the next week prints, and as many weeks rise as are known to.
#[test]
fn law_a_novices_weeks_follow_their_own_sentence() {
    let known = regex::Regex::new("strength ([0-9]+) steps from there").expect("a pattern");
    let (mut more, mut heavier) = (0, 0);
    for (lift, one_rm) in [("squat", "70 kg"), ("bench-press", "60 kg")] {
        let words = [
            "plan",
            lift,
            "--one-rm",
            one_rm,
            "--training-months",
            "3",
            "--weeks",
            "12",
        ];
        let answer = crate::calling::json(&words);
        let sessions = answer["sessions"].as_array().expect("sessions");
        let weeks: Vec<_> = sessions.iter().step_by(2).map(work_of).collect();
        let mut rising = 1;
        for pair in weeks.windows(2) {
            let ((_, load, count, _, says), (_, next, repetitions, ..)) = (&pair[0], &pair[1]);
            if load == next && repetitions > count {
                let told = format!("do {repetitions} the next time");
                assert!(says.contains(&told), "{lift}: {weeks:?}");
                more += 1;
            } else if next > load {
                let shown = (10.0 * next).round() / 10.0;
                let told = format!("go to {shown} kg with {repetitions} again");
                assert!(
                    says.contains(&told) && !says.contains("the next time"),
                    "{lift}: {weeks:?}"
                );
                heavier += 1;
            } else {
                break;
            }
            rising += 1;
        }
        let remarks = sessions[0]["remarks"].to_string();
        let steps = known
            .captures(&remarks)
            .unwrap_or_else(|| panic!("{remarks}"));
        let steps: usize = steps[1].parse().expect("a count");
        assert!(rising >= steps.min(12), "{lift}: {steps} of {weeks:?}");
    }
    assert!(more > 0 && heavier > 0, "{more} {heavier}");
}

/// One answer for today, whatever the block's length: of a lifter of whom a coach asked, and of one whom nobody tested.
#[test]
fn regress_one_answer_for_today() {
    for who in [
        "squat --one-rm 70kg --training-months 3 --gym garage",
        "bench-press --lifter tall-novice",
    ] {
        let told = |more: &str| {
            let words = format!("plan {who} {more}");
            let words: Vec<&str> = words.split_whitespace().collect();
            work_of(&crate::calling::json(&words)["sessions"][0])
        };
        let today = told("");
        for weeks in ["--weeks 2", "--weeks 12"] {
            assert_eq!(told(weeks), today, "{who} {weeks}");
        }
    }
}

#[test]
fn law_a_block_with_a_first_day_fills_the_day_in() {
    let folder = tempfile::tempdir().expect("a folder");
    let words = [
        "plan",
        "squat",
        "--one-rm",
        "120 kg",
        "--training-months",
        "30",
        "--weeks",
        "2",
        "--sheet",
        "sheet.html",
    ];
    let sheet = |more: &[&str]| {
        crate::calling::call_in(folder.path(), &[&words[..], more].concat()).done();
        std::fs::read_to_string(folder.path().join("sheet.html")).expect("a sheet")
    };
    let dated = sheet(&["--start", "2026-12-07"]);
    for day in ["2026-12-07", "2026-12-10", "2026-12-14", "2026-12-17"] {
        assert!(dated.contains(&format!("Date<span>{day}</span>")), "{day}");
    }
    assert!(sheet(&["--force"]).contains("Date<span></span>"));
}

/// Every team's row that has a day in its session has it in its column too.
#[test]
fn law_the_log_to_fill_in_has_the_days_of_its_sessions() {
    let folder = tempfile::tempdir().expect("a folder");
    let team =
        "name,sex,age,mass (kg),height (cm),training_months,squat (kg)\nKim,man,32,80,180,3,70\n";
    std::fs::write(folder.path().join("team.csv"), team).expect("written");
    let words = [
        "plan",
        "squat",
        "--team",
        "team.csv",
        "--weeks",
        "3",
        "--start",
        "2026-12-07",
        "-o",
        "out",
    ];
    crate::calling::call_in(folder.path(), &words).done();
    let log = std::fs::read_to_string(folder.path().join("out/log.csv")).expect("a log");
    let rows: Vec<&str> = log.lines().skip(1).collect();
    assert!(rows.len() >= 12, "{log}");
    for row in rows {
        let day = row.split(',').next().expect("a date");
        assert!(day.starts_with("2026-12-"), "{row}");
        assert_eq!(row.matches(day).count(), 2, "{row}");
    }
}

/// What is said of bands is said alike beside a setup and beside a session.
#[test]
fn law_bands_are_warned_of_alike_in_picks_and_plans() {
    let pick = call(&[
        "pick",
        "squat",
        "--lifter",
        "heavy-lifter",
        "--gym",
        "strength-lab",
        "--all",
    ]);
    let bands = ["--method", "bands", "--gym", "strength-lab"];
    let plan = call(&[&crate::calling::HEAVY_SQUAT[..], &bands].concat());
    for answer in [pick.done(), plan.done()] {
        let text = in_one_line(&answer.out);
        for caution in torquill::setups::OF_BANDS {
            let (words, _) = torquill::narrative::cautions::usual(&caution);
            assert!(text.contains(words), "{words}: {text}");
        }
    }
}

/// A row of a log that nobody lifts: refused with the option as next step, left out and told with it.
#[test]
fn fault_a_row_of_a_log_that_nobody_lifts() {
    let folder = tempfile::tempdir().expect("a folder");
    let loads = [
        "100", "102.5", "105", "107.5", "1125", "107.5", "110", "112.5",
    ];
    let rows = loads.iter().enumerate();
    let rows: String = rows
        .map(|(week, load)| format!("2026-09-{:02},squat,{load},5,2\n", 1 + 3 * week))
        .collect();
    let text = format!("date,lift,load (kg),repetitions,reserve\n{rows}");
    std::fs::write(folder.path().join("log.csv"), text).expect("written");
    let progress = ["progress", "--log", "log.csv"];
    let plan = [
        "plan",
        "squat",
        "--log",
        "log.csv",
        "--training-months",
        "30",
    ];
    let fit = athlete("180 cm", ["--log", "log.csv"]);
    for words in [&progress[..], &plan[..], &fit[..]] {
        let refused = crate::calling::call_in(folder.path(), words);
        assert_eq!(refused.status, 2, "{}", refused.out);
        for part in ["line 6: a 1RM of", "--skip-bad-rows"] {
            let complaint = in_one_line(&refused.complaint);
            assert!(complaint.contains(part), "{part}: {complaint}");
        }
        let skipped = [words, &["--skip-bad-rows"]].concat();
        let left = crate::calling::call_in(folder.path(), &skipped).done();
        let said = in_one_line(&format!("{} {}", left.out, left.complaint));
        assert!(said.contains("left out: line 6: a 1RM of"), "{said}");
    }
}

/// A height in the other unit is named as that, of one person and in a row of a team.
#[test]
fn fault_a_height_in_the_other_unit() {
    let folder = tempfile::tempdir().expect("a folder");
    let team = "name;sex;mass (kg);height (cm);training_months;squat (kg)\nKim;man;80;1,83;4;60\n";
    std::fs::write(folder.path().join("team.csv"), team).expect("written");
    let person = |height| athlete(height, ["--lift", "squat=100 kg"]);
    for (words, meant) in [
        (&person("1.83 cm")[..], "1.83 m"),
        (&person("183 m")[..], "183 cm"),
        (
            &["plan", "squat", "--team", "team.csv", "-o", "out"][..],
            "1.83 m",
        ),
    ] {
        let told = crate::calling::call_in(folder.path(), words);
        assert_eq!(told.status, 2, "{}", told.out);
        let says = format!("did you mean {meant}?");
        assert!(told.complaint.contains(&says), "{}", told.complaint);
    }
    let none = crate::calling::call_in(folder.path(), &person("90 cm"));
    assert!(
        !none.complaint.contains("did you mean"),
        "{}",
        none.complaint
    );
}
