//! What a coach met on the way from a log or a team to the rack: strength that a log shows, ages, maxima that nobody has,
//! the card of `pick`, loads and repetitions that are nearest to what is meant.

use crate::calling::{Answer, call, call_in, in_one_line, json};
use proptest::prelude::{ProptestConfig, prop_assert, proptest};
use serde_json::Value;
use std::fmt::Write as _;
use std::path::Path;

/// A squat that rises for seven weeks, then nothing for six, then one light session.
const LAY_OFF: &str = "date,exercise,weight (kg),reps,RIR\n\
    2026-08-31,squat,140,5,2\n2026-09-07,squat,142.5,5,2\n2026-09-14,squat,145,5,2\n2026-09-21,squat,147.5,5,1\n\
    2026-09-28,squat,150,5,1\n2026-10-05,squat,152.5,5,1\n2026-10-12,squat,155,5,0\n2026-11-23,squat,100,5,2\n";

/// A bench press in pounds that tires out.
const TIRED: &str = "date,exercise,weight (lb),sets x reps,rpe\n\
    2026-09-01,Bench Press,185,3x5,8\n2026-09-08,Bench Press,190,3x5,8\n2026-09-15,Bench Press,190,3x5,9\n\
    2026-09-29,Bench Press,185,3x5,9\n2026-10-06,Bench Press,180,3x4,9.5\n";

fn with_file(name: &str, text: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join(name), text).expect("a file");
    folder
}

fn of_log(folder: &Path, words: &[&str]) -> Value {
    let words = [words, &["--log", "log.csv", "--format", "json"]].concat();
    call_in(folder, &words).done().json()
}

fn number(value: &Value) -> f64 {
    value
        .as_f64()
        .unwrap_or_else(|| panic!("a number: {value}"))
}

/// The working sets of the first session: load, repetitions, how many there are.
fn work(answer: &Value) -> (f64, u64, usize) {
    let sets = answer["sessions"][0]["sets"].as_array().expect("sets");
    let work: Vec<&Value> = sets.iter().filter(|set| set["kind"] == "work").collect();
    let first = work.first().expect("work");
    let repetitions = first["repetitions"].as_u64().expect("repetitions");
    (number(&first["load_kg"]), repetitions, work.len())
}

/// After six weeks without a session a plan is of the session since, and says so; nothing above the 1RM is lowered yet.
#[test]
fn regress_a_lay_off_ends_what_a_log_shows() {
    let folder = with_file("log.csv", LAY_OFF);
    let words = ["plan", "squat", "--training-months", "24"];
    let progress = of_log(folder.path(), &["progress"]);
    let now = number(&progress["summary"]["one_rm_now_kg"]);
    let last = number(&progress["sessions"][7]["one_rm_kg"]);
    assert!((now - last).abs() < 1.0e-9, "{now} {last}");
    let plan = of_log(folder.path(), &words);
    let planned = number(&plan["sessions"][0]["one_rm_kg"]);
    assert!((planned - now).abs() < 1.0e-6, "{planned} {now}");
    assert!(work(&plan).0 < now, "{plan}");
    let told = call_in(folder.path(), &[&words[..], &["--log", "log.csv"]].concat());
    let told = in_one_line(&told.done().out);
    assert!(
        told.contains("only the sessions since 2026-11-23 count, after 42 days without one"),
        "{told}"
    );
    let more = ["--log", "log.csv", "--method", "overloaded-lowering"];
    let lowering = call_in(folder.path(), &[&words[..], &more].concat());
    assert_eq!(lowering.status, 1, "{}", lowering.out);
    assert!(
        lowering.complaint.contains("42 days"),
        "{}",
        lowering.complaint
    );
    let dates = ["--sex", "man", "--mass", "80 kg", "--height", "180 cm"];
    let fit = [
        &["fit", "--name", "dea", "--training-months", "24"],
        &dates[..],
    ]
    .concat();
    let fit = of_log(folder.path(), &fit);
    let fitted = fit["lifts"].as_array().expect("lifts").iter();
    let squat = fitted.clone().find(|lift| lift["movement"] == "squat");
    let squat = squat.unwrap_or_else(|| panic!("no squat: {fit}"));
    let ratio = number(&squat["one_rm_kg"]) / now;
    assert!((0.95..=1.05).contains(&ratio), "{ratio}");
}

/// A set that was half a repetition from failure is not repeated as an easy one.
#[test]
fn regress_the_last_set_near_failure_bounds_the_plan() {
    let folder = with_file("log.csv", TIRED);
    let progress = of_log(folder.path(), &["progress"]);
    let now = number(&progress["summary"]["one_rm_now_kg"]);
    let last = number(&progress["sessions"][4]["one_rm_kg"]);
    assert!((now - last).abs() < 1.0e-9, "{now} {last}");
    let words = [
        "plan",
        "bench-press",
        "--training-months",
        "24",
        "--units",
        "us",
    ];
    let (load_kg, repetitions, _) = work(&of_log(folder.path(), &words));
    assert!(
        load_kg < 180.0 * 0.453_592_37 - 0.1 || repetitions < 4,
        "{load_kg} {repetitions}"
    );
    let told = call_in(
        folder.path(),
        &["progress", "--log", "log.csv", "--units", "us"],
    )
    .done();
    assert!(
        in_one_line(&told.out)
            .contains("of the last session, 2026-10-06, which left 0.5 in reserve"),
        "{}",
        told.out
    );
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(5))]

    /// The 1RM of a plan is never more than a session of the log shows since the last lay-off. Whoever trained on a day
    /// whose set does not count was not laid off, so days are counted over all lines.
    #[test]
    fn law_no_log_gives_more_than_its_sessions_show(
        loads in proptest::collection::vec(60_u32..180, 2..9),
        gaps in proptest::collection::vec(2_u32..60, 9),
        reserves in proptest::collection::vec(0_u32..4, 9),
    ) {
        let mut text = "date,lift,load (kg),repetitions,reserve\n".to_owned();
        let mut start = calendar(2020, 1, 1);
        let mut days = Vec::new();
        for ((load, gap), reserve) in loads.iter().zip(&gaps).zip(&reserves) {
            start += i64::from(*gap);
            days.push(start);
            let (year, month, of_month) = date_of(start);
            let _ = writeln!(text, "{year}-{month:02}-{of_month:02},squat,{load},5,{reserve}");
        }
        let folder = with_file("log.csv", &text);
        let progress = of_log(folder.path(), &["progress"]);
        let sessions = progress["sessions"].as_array().expect("sessions");
        // The first line of the file is its heading.
        let day = |session: &Value| days[session["line"].as_u64().expect("a line") as usize - 2];
        let last = day(sessions.last().expect("a session"));
        let trained = days.iter().filter(|day| **day <= last);
        let trained: Vec<i64> = trained.copied().collect();
        let mut breaks = trained.windows(2).filter(|pair| pair[1] - pair[0] > 28);
        let since = breaks.next_back().map_or(trained[0], |pair| pair[1]);
        let counted = sessions.iter().filter(|session| day(session) >= since);
        let most = counted.map(|session| number(&session["one_rm_kg"])).fold(0.0, f64::max);
        let now = number(&progress["summary"]["one_rm_now_kg"]);
        prop_assert!(now <= most + 1.0e-9, "{now} {most}: {text}");
    }
}

/// A day's number, and the date of a number (Gregorian calendar, years from March).
fn calendar(year: i64, month: i64, day: i64) -> i64 {
    let (y, m) = if month > 2 {
        (year, month - 3)
    } else {
        (year - 1, month + 9)
    };
    365 * y + y / 4 - y / 100 + y / 400 + (153 * m + 2) / 5 + day
}

fn date_of(number: i64) -> (i64, i64, i64) {
    let after_2020 = (2020..2030).flat_map(|year| (1..=12).map(move |month| (year, month)));
    let mut begun = after_2020.filter(|(year, month)| calendar(*year, *month, 1) <= number);
    let (year, month) = begun.next_back().expect("a date from 2020 on");
    (year, month, number - calendar(year, month, 1) + 1)
}

/// A digit too much in one line is told with the line, wherever the log is read.
#[test]
fn fault_a_log_with_a_load_that_nobody_lifts() {
    let typo = TIRED.replace("2026-09-29,Bench Press,185", "2026-09-29,Bench Press,1850");
    let folder = with_file("log.csv", &typo);
    for words in [&["progress"][..], &["plan", "bench-press"]] {
        let told = call_in(folder.path(), &[words, &["--log", "log.csv"]].concat());
        assert_eq!(told.status, 2, "{}", told.out);
        assert!(told.complaint.contains("line 5"), "{}", told.complaint);
    }
}

/// An age travels with the lifter that was fitted; nobody below eighteen is planned or fitted, alone or in a team.
#[test]
fn law_one_rule_of_age_at_every_door() {
    let folder = tempfile::tempdir().expect("a folder");
    let person = [
        "fit",
        "--name",
        "emil",
        "--sex",
        "man",
        "--mass",
        "80 kg",
        "--height",
        "178 cm",
        "--training-months",
        "60",
        "--lift",
        "squat=100 kg",
    ];
    let fitted = [&person[..], &["--age", "68", "-o", "emil.ron"]].concat();
    call_in(folder.path(), &fitted).done();
    let words = ["plan", "squat", "--lifter", "emil.ron"];
    let lowering = call_in(
        folder.path(),
        &[&words[..], &["--method", "overloaded-lowering"]].concat(),
    );
    assert_eq!(lowering.status, 1, "{}", lowering.out);
    assert!(
        in_one_line(&lowering.complaint).contains("from 50 years on, and this lifter is 68"),
        "{}",
        lowering.complaint
    );
    let plan = call_in(folder.path(), &words).done();
    assert!(plan.out.contains("At 68 years"), "{}", plan.out);
    let younger = call_in(folder.path(), &[&words[..], &["--age", "40"]].concat()).done();
    assert!(!younger.out.contains("At 68 years"), "{}", younger.out);
    let refused = |answer: Answer| {
        assert_eq!(answer.status, 2, "{}", answer.out);
        assert!(
            answer.complaint.contains("they are of adults from 18 on"),
            "{}",
            answer.complaint
        );
    };
    refused(call(&["plan", "squat", "--one-rm", "40 kg", "--age", "8"]));
    refused(call(&[&person[..], &["--age", "17"]].concat()));
    let team = "name,sex,mass (kg),height (cm),age,squat (kg)\nMia (invented),woman,50,160,14,40\n\
        Tom (invented),man,80,180,30,100\n";
    let folder = with_file("team.csv", team);
    let told = call_in(
        folder.path(),
        &["plan", "squat", "--team", "team.csv", "-o", "sheets"],
    )
    .done();
    let told = in_one_line(&told.out);
    assert!(
        told.contains("nothing planned") && told.contains("adults"),
        "{told}"
    );
    assert!(told.contains("Tom (invented)"), "{told}");
}

/// A maximum that hardly anybody has is told at every place of a team; one that nobody has is refused for its row alone.
#[test]
fn law_odd_maxima_of_a_team_are_told() {
    let team = "name,sex,mass (kg),height (cm),training_months,squat (kg)\nMia (invented),woman,64,168,14,850\n\
        Bo (invented),man,70,175,36,490\nTom (invented),man,80,180,30,100\n";
    let folder = with_file("team.csv", team);
    let told = call_in(
        folder.path(),
        &["plan", "squat", "--team", "team.csv", "-o", "sheets"],
    )
    .done();
    let read = |name: &str| {
        let text =
            std::fs::read_to_string(folder.path().join("sheets").join(name)).expect("a file");
        in_one_line(&text)
    };
    let said = "times what people of that sex, size and training show";
    let mut of_bo = vec![read("bo-invented.html")];
    for text in [in_one_line(&told.out), read("overview.html")] {
        assert!(
            text.contains("! Bo (invented): This 1RM in the squat is"),
            "{text}"
        );
        assert!(text.contains("a 1RM of 850 kg"), "{text}");
        of_bo.push(text);
    }
    for text in of_bo {
        assert!(text.contains(said), "{text}");
    }
    assert!(!read("tom-invented.html").contains(said));
}

/// The 1RM of a setup that is advised first stays when its bands go, and arms below the chest are not said to save it.
#[test]
fn law_what_is_advised_first_leaves_no_more_than_the_maximum() {
    for (lift, lifter, gym) in [
        ("bench-press", "heavy-lifter", "college-weight-room"),
        ("bench-press", "heavy-lifter", "strength-lab"),
        ("squat", "heavy-lifter", "college-weight-room"),
        ("bench-press", "reference-man", "college-weight-room"),
    ] {
        let words = ["pick", lift, "--lifter", lifter, "--gym", gym];
        let told = in_one_line(&call(&words).done().out);
        let card = told.split("The choice").next().unwrap_or_default();
        let left = card
            .split(" if all go: ")
            .nth(1)
            .and_then(|rest| rest.split(" %").next());
        let share = left.and_then(|words| words.rsplit(' ').next()?.parse::<f64>().ok());
        assert!(
            share.is_none_or(|share| share <= 100.0),
            "{lift} {gym}: {card}"
        );
        if lift == "bench-press" {
            assert!(card.contains("hold it only when the chest sinks"), "{card}");
            assert!(!card.contains("the safety arms catch it"), "{card}");
        }
        for caution in ["Do not train injured", "Stop at once"] {
            assert!(told.contains(caution), "{lift} {gym}: {told}");
        }
    }
}

/// A gym without safety arms has no overload; the sheet of one that has them says "and", not "or".
#[test]
fn law_overload_takes_arms_and_spotters() {
    let words = [
        "plan",
        "squat",
        "--one-rm",
        "180 kg",
        "--training-months",
        "60",
        "--method",
        "overloaded-lowering",
        "--gym",
    ];
    let garage = call(&[&words[..], &["garage"]].concat());
    assert_eq!(garage.status, 1, "{}", garage.out);
    let college = call(&[&words[..], &["college-weight-room"]].concat()).done();
    let told = in_one_line(&college.out);
    assert!(
        told.contains("Safety arms at the lowest point AND spotters"),
        "{told}"
    );
    assert!(!told.contains("or have a spotter"), "{told}");
    assert!(!told.contains("that would be"), "{told}");
    let few = "Gym(title: \"Few\", invented: true, bars: [(name: \"bar\", mass: \"20 kg\")], plates: [(mass: \"20 kg\", \
        count: 4), (mass: \"10 kg\", count: 2), (mass: \"5 kg\", count: 2)], safety_arms: Some((lowest: \"30 cm\", highest: \
        \"120 cm\", step: \"5 cm\")), source: Assumed(\"invented\"))";
    let folder = with_file("few.ron", few);
    let words = [
        "plan",
        "bench-press",
        "--one-rm",
        "140 kg",
        "--training-months",
        "60",
        "--method",
        "overloaded-lowering",
        "--gym",
        "few.ron",
    ];
    let told = call_in(folder.path(), &words);
    assert_eq!(told.status, 1, "{}", told.out);
    assert!(
        told.complaint.contains("this gym loads 130 kg at most"),
        "{}",
        told.complaint
    );
}

/// Of all loads and repetitions that keep the reserve the plan takes the load nearest to what the method means.
#[test]
fn law_a_plan_stays_near_the_load_that_is_meant() {
    for (lift, one_rm) in [
        ("squat", "60 kg"),
        ("squat", "100 kg"),
        ("overhead-press", "30 kg"),
        ("bench-press", "110 kg"),
    ] {
        let words = ["plan", lift, "--one-rm", one_rm, "--training-months", "24"];
        let (load, repetitions, sets) = work(&json(&words));
        assert!(
            (3..=8).contains(&repetitions),
            "{lift} {one_rm}: {load} x {repetitions}"
        );
        let unwell = work(&json(&[&words[..], &["--unwell"]].concat()));
        assert!(
            unwell.0 <= load && unwell.2 <= sets,
            "{unwell:?} {load} {sets}"
        );
        let told = call(&[&words[..], &["--unwell"]].concat()).done();
        let said = format!(
            "{} kg instead of {load} kg and {} sets instead of {sets}",
            unwell.0, unwell.2
        );
        assert!(
            in_one_line(&told.out).contains(&said),
            "{said}: {}",
            told.out
        );
        // The next load up does not keep the reserve with three repetitions.
        let heavier = format!("{} kg", load + 2.5);
        let count = sets.to_string();
        let more = [
            "--load",
            heavier.as_str(),
            "--reps",
            "3",
            "--sets",
            count.as_str(),
        ];
        let tried = call(&[&words[..], &more].concat());
        let usual = 0.85
            * one_rm
                .trim_end_matches(" kg")
                .parse::<f64>()
                .expect("a load");
        assert!(
            tried.status == 1 || load + 2.5 > usual,
            "{lift} {one_rm}: {heavier}"
        );
    }
}

/// Warm-ups with bands on are no heavier than the maximum anywhere.
#[test]
fn law_warm_ups_feel_no_more_than_the_maximum() {
    let mut with_bands = 0;
    for (one_rm, hung) in [
        ("100 kg", ["--band", "loop-102mm:2@floor"]),
        ("140 kg", ["--band", "loop-29mm:1@floor"]),
        ("140 kg", ["--gym", "college-weight-room"]),
        ("180 kg", ["--gym", "strength-lab"]),
    ] {
        let words = [
            "plan",
            "bench-press",
            "--one-rm",
            one_rm,
            "--training-months",
            "48",
            "--method",
            "bands",
        ];
        let answer = call(&[&words[..], &hung].concat());
        let told = in_one_line(&answer.out);
        for warm_up in told.split("bands on; felt: ").skip(1) {
            let felt = warm_up.split("of 1RM").next().unwrap_or_default();
            let shares = felt
                .split(" %)")
                .filter_map(|part| part.rsplit('(').next()?.parse::<f64>().ok());
            let shares: Vec<f64> = shares.collect();
            assert_eq!(shares.len(), 3, "{felt}");
            assert!(
                shares.iter().all(|share| *share <= 100.0),
                "{one_rm} {hung:?}: {felt}"
            );
            with_bands += 1;
        }
    }
    assert!(with_bands > 0, "some warm-ups carry bands");
}

/// One novice with one maximum has one plan, however it was told, and it rises.
#[test]
fn law_one_novice_has_one_plan_that_rises() {
    let team = "name,sex,mass (kg),height (cm),training_months,squat (kg)\nAnn (invented),man,76,175,3,80 x 5\n\
        Ben (invented),man,76,175,3,93.3\n";
    let folder = with_file("team.csv", team);
    let words = [
        "plan", "squat", "--team", "team.csv", "-o", "sheets", "--weeks", "12",
    ];
    let told = call_in(folder.path(), &words).done();
    let lines: Vec<&str> = told
        .out
        .lines()
        .filter(|line| line.contains("(invented)"))
        .collect();
    let first = |line: &str| line.split(" at ").nth(1).map(str::to_owned);
    assert_eq!(first(lines[0]), first(lines[1]), "{lines:?}");
    for line in lines {
        assert!(
            line.trim_end().ends_with("24"),
            "two sessions in each of twelve weeks: {line}"
        );
    }
    let log = std::fs::read_to_string(folder.path().join("sheets/log.csv")).expect("a log");
    let rows = csv::Reader::from_reader(log.as_bytes()).into_records();
    let rows = rows.map(|row| row.expect("a row"));
    let named: std::collections::BTreeSet<String> = rows
        .filter(|row| row[1].contains("Ann"))
        .map(|row| row[3].to_owned())
        .collect();
    assert_eq!(named.len(), 24, "{named:?}");
    let sheet =
        std::fs::read_to_string(folder.path().join("sheets/ann-invented.html")).expect("a sheet");
    assert!(
        sheet.matches("<section").count() >= 6,
        "two weeks at least before the log decides"
    );
}
