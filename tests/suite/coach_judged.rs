//! What a coach of many years would not sign stays mended: logs of unknown age, one set taken for three, loads above the maximum
//! before years of training, weeks that repeat themselves, spotters counted twice, words that are not true of the day.

use crate::calling::{Answer, call, call_in, in_one_line, json, refused};
use serde_json::Value;
use std::collections::BTreeSet;
use std::path::Path;

const LOWERING: [&str; 2] = ["--method", "overloaded-lowering"];

/// A plan from a log of these rows.
fn from_log(rows: &str, more: &str) -> Answer {
    let folder = tempfile::tempdir().expect("a folder");
    let text = format!("date,lift,load (kg),repetitions,reserve\n{rows}");
    std::fs::write(folder.path().join("log.csv"), text).expect("written");
    plan_in(folder.path(), more)
}

fn plan_in(folder: &Path, more: &str) -> Answer {
    let words: Vec<&str> = more.split(' ').collect();
    call_in(
        folder,
        &[&["plan"], &words[..], &["--log", "log.csv"]].concat(),
    )
}

fn work(session: &Value) -> Vec<&Value> {
    let sets = session["sets"].as_array().expect("sets").iter();
    sets.filter(|set| set["kind"] == "work").collect()
}

fn kg(set: &Value) -> f64 {
    set["load_kg"].as_f64().expect("a load")
}

const STRONG: &str =
    "2026-03-02,squat,120,5,2\n2026-03-09,squat,122.5,5,2\n2026-03-16,squat,125,5,2\n";

/// A log that may be old is no ground for more than its maximum; any plan of it says what it takes for granted, on the sheet too.
#[test]
fn fault_more_than_the_maximum_of_a_log_of_unknown_age() {
    let lowering = "squat --training-months 60 --method overloaded-lowering";
    let untold = from_log(STRONG, lowering);
    assert_eq!(untold.status, 1, "{}", untold.out);
    for part in ["ends on 2026-03-16", "--start DATE"] {
        assert!(untold.complaint.contains(part), "{}", untold.complaint);
    }
    from_log(STRONG, &format!("{lowering} --start 2026-03-20")).done();
    let folder = tempfile::tempdir().expect("a folder");
    let text = format!("date,lift,load (kg),repetitions,reserve\n{STRONG}");
    std::fs::write(folder.path().join("log.csv"), text).expect("written");
    for (start, is_told) in [("", true), (" --start 2026-03-20", false)] {
        for months in ["3", "60"] {
            let words =
                format!("squat --training-months {months} --weeks 2 --sheet s.html --force{start}");
            let out = in_one_line(&plan_in(folder.path(), &words).done().out);
            let sheet = std::fs::read_to_string(folder.path().join("s.html")).expect("a sheet");
            let says = "! The plan assumes that the log ends shortly before";
            assert_eq!(out.contains(says), is_told, "{out}");
            let pages = sheet.matches("<section").count();
            let told = sheet.matches(says).count();
            assert_eq!(told, if is_told { pages } else { 0 }, "{sheet}");
        }
    }
}

/// One set that was done shows one set: more of them hold in the simulation, with their reserve, or are planned lighter.
#[test]
fn law_one_set_shows_no_three() {
    let mut differs = false;
    for (load, count, left) in [(100.0, 5, 0), (60.0, 12, 2), (80.0, 8, 2), (70.0, 10, 1)] {
        let row = |day: &str, load: f64| format!("2026-03-{day},squat,{load},{count},{left}\n");
        let before = [row("02", load - 2.5), row("06", load)].concat();
        let last = row("10", load);
        let plan = |sets: usize| {
            let rows = format!("{before}{}", last.repeat(sets));
            let asked = "squat --training-months 3 --start 2026-03-12 --format json";
            from_log(&rows, asked).done().json()["sessions"][0].clone()
        };
        let (one, three) = (plan(1), plan(3));
        for set in work(&one) {
            let needed = set["repetitions"].as_f64().expect("a count")
                + set["reserve"].as_f64().expect("a count");
            let allowed = set["to_failure_by_model"].as_f64();
            assert!(allowed.is_none_or(|allowed| allowed >= needed), "{set}");
        }
        let told = one.to_string();
        assert!(!told.contains("goes before what chart"), "{told}");
        let all = |session: &Value| {
            kg(work(session)[0]) * work(session)[0]["repetitions"].as_f64().expect("a count")
        };
        assert!(all(&one) <= all(&three) + 1.0e-6, "{one} {three}");
        differs |= all(&one) < all(&three) - 1.0e-6;
    }
    assert!(
        differs,
        "some single set is planned lighter than three of it"
    );
}

/// A set of a log is quoted as it was written, and what it counts as stands beside it.
#[test]
fn law_a_set_of_a_log_is_quoted_as_logged() {
    let bare = "2026-03-02,squat,57.5,12,\n2026-03-09,squat,60,12,\n2026-03-09,squat,60,12,\n";
    let asked = "squat --training-months 3 --start 2026-03-12";
    let told = in_one_line(&from_log(bare, asked).done().out);
    let says = "on 2026-03-09 the hardest of 2 sets at 60 kg was 12 repetitions, none noted in reserve, taken as done to failure: 10 with \
                2 in reserve";
    assert!(told.contains(says), "{told}");
    assert!(!told.contains("every set reached"), "{told}");
}

/// More than the maximum is felt, as it is lowered, after two years of training and not before, whatever hangs.
#[test]
fn law_no_more_than_the_maximum_is_felt_before_years_of_training() {
    let felt = regex::Regex::new(r"\((\d+) %\)").expect("a pattern");
    let mut above = 0;
    for lift in ["squat", "bench-press", "deadlift"] {
        for months in ["8", "23", "24", "60"] {
            for method in ["bands", "chains"] {
                let words = [
                    "plan",
                    lift,
                    "--one-rm",
                    "120 kg",
                    "--training-months",
                    months,
                    "--method",
                    method,
                    "--gym",
                    "strength-lab",
                    "--format",
                    "json",
                ];
                let answer = call(&words);
                if answer.status != 0 {
                    continue;
                }
                let answer = answer.json();
                let notes: String = work(&answer["sessions"][0])
                    .iter()
                    .map(|set| set["notes"].to_string())
                    .collect();
                let most = felt
                    .captures_iter(&notes)
                    .map(|told| told[1].parse::<u32>().expect("a share"))
                    .max()
                    .expect("what is felt");
                let is_young = months.parse::<u32>().expect("months") < 24;
                assert!(!is_young || most <= 100, "{words:?}: {most}");
                above += u32::from(most > 100);
            }
        }
    }
    assert!(above > 0, "trained lifters feel more");
    let named = "plan squat --one-rm 140kg --training-months 12 --method bands --band loop-64mm:4";
    let refused = call(&named.split(' ').collect::<Vec<_>>());
    assert_eq!(refused.status, 1, "{}", refused.out);
    assert!(in_one_line(&refused.complaint).contains("more than the 1RM of 140 kg"));
}

/// The overload days of a block differ: within a round the load rises or sets are added, and no load falls.
#[test]
fn law_overload_weeks_of_a_round_do_not_repeat() {
    for (lift, one_rm) in [
        ("bench-press", "140 kg"),
        ("squat", "150 kg"),
        ("leg-press", "300 kg"),
    ] {
        let words = [
            "plan",
            lift,
            "--one-rm",
            one_rm,
            "--training-months",
            "60",
            "--weeks",
            "12",
        ];
        let answer = json(&[&words[..], &LOWERING].concat());
        let sessions = answer["sessions"].as_array().expect("sessions").iter();
        let days = sessions.filter(|day| {
            day["session"]
                .as_str()
                .expect("words")
                .ends_with("overload day")
        });
        let days: Vec<(f64, usize, u64)> = days
            .map(|day| {
                let sets = work(day);
                let top = sets.iter().map(|set| kg(set)).fold(0.0, f64::max);
                let count = sets
                    .iter()
                    .filter_map(|set| set["repetitions"].as_u64())
                    .sum();
                (top, sets.len(), count)
            })
            .collect();
        assert_eq!(days.len(), 9, "{days:?}");
        for round in days.chunks(3) {
            for pair in round.windows(2) {
                assert_ne!(pair[0], pair[1], "{lift}: {days:?}");
                assert!(pair[1].0 >= pair[0].0, "{lift}: {days:?}");
            }
        }
    }
}

/// A load that a refusal names can be set up and is accepted.
#[test]
fn law_a_load_that_a_refusal_names_is_accepted() {
    let named =
        regex::Regex::new(r#"--load "([0-9.]+ kg)"|stay between ([0-9.]+ kg) and ([0-9.]+ kg)"#)
            .expect("a pattern");
    let mut seen = 0;
    for (lift, one_rm, more) in [
        ("squat", "210 kg", vec![]),
        ("squat", "210 kg", vec!["--load", "300 kg"]),
        ("squat", "140 kg", vec!["--load", "200 kg"]),
        ("bench-press", "140 kg", vec!["--load", "200 kg"]),
        ("bench-press", "100 kg", vec!["--load", "140 kg"]),
        ("bench-press", "177.5 kg", vec![]),
    ] {
        let words = [
            "plan",
            lift,
            "--one-rm",
            one_rm,
            "--training-months",
            "60",
            "--gym",
            "college-weight-room",
        ];
        let asked = [&words[..], &LOWERING, &more].concat();
        let answer = call(&asked);
        if answer.status == 0 {
            continue;
        }
        let told = in_one_line(&answer.complaint);
        for found in named.captures_iter(&told).flat_map(|found| {
            let loads = found.iter().skip(1).flatten();
            loads
                .map(|load| load.as_str().to_owned())
                .collect::<Vec<_>>()
        }) {
            seen += 1;
            let again = call(&[&words[..], &LOWERING, &["--load", &found]].concat());
            assert_eq!(again.status, 0, "{asked:?}: {told}: {}", again.complaint);
        }
    }
    assert!(seen >= 3, "{seen} loads are named");
}

/// Nobody is left under a bar that helpers cannot hold where the arms catch it only below the chest.
#[test]
fn fault_a_bar_that_nobody_holds_over_the_chest() {
    for gym in [&[][..], &["--gym", "college-weight-room"]] {
        let words = [
            "plan",
            "bench-press",
            "--one-rm",
            "200 kg",
            "--training-months",
            "60",
        ];
        let answer = call(&[&words[..], &LOWERING, gym].concat());
        assert_eq!(answer.status, 1, "{}", answer.out);
        let told = in_one_line(&answer.complaint);
        assert!(
            told.contains("3 helpers hold 180 kg together at most"),
            "{told}"
        );
    }
}

/// How many stand by is counted once: what stands on the arms takes two to unload it, what may lie on the lifter above the maximum as
/// many as its lowering does.
#[test]
fn law_spotters_are_counted_by_one_judge() {
    let words = [
        "plan",
        "squat",
        "--one-rm",
        "230 kg",
        "--training-months",
        "60",
    ];
    let told = in_one_line(&call(&[&words[..], &LOWERING].concat()).done().out);
    assert!(told.contains("spotters: 2, one at each end"), "{told}");
    assert!(
        told.contains("the 2 spotters take plates off") && !told.contains("3 helpers"),
        "{told}"
    );
    let pick = [
        "pick",
        "squat",
        "--lifter",
        "heavy-lifter",
        "--gym",
        "strength-lab",
        "--goal",
        "most-load",
    ];
    let told = in_one_line(&call(&pick).done().out);
    let left = regex::Regex::new(
        r"are left, 1\d\d % of 1RM[^;]*; safety arms at [0-9]+ cm and ([0-9]) spotters",
    )
    .expect("a pattern");
    let found = left.captures(&told).unwrap_or_else(|| panic!("{told}"));
    assert_eq!(&found[1], "3");
}

/// Two weeks and more without a session are told until they are a lay-off, which is told in its own words.
#[test]
fn law_weeks_without_a_session_are_told() {
    for (start, says) in [
        ("2026-03-29", None),
        ("2026-03-30", Some("No session for 14 days before this one")),
        ("2026-04-13", Some("No session for 28 days before this one")),
        ("2026-04-14", Some("no session for 29 days")),
    ] {
        for weeks in ["", " --weeks 2"] {
            let asked = format!("squat --training-months 30 --start {start}{weeks}");
            let told = in_one_line(&from_log(STRONG, &asked).done().out);
            match says {
                Some(says) => assert!(told.contains(says), "{says}: {told}"),
                None => assert!(!told.contains("No session for"), "{told}"),
            }
        }
    }
}

/// Work that is lighter than an empty bar has one warm-up at most, and that is lighter than the work.
#[test]
fn law_light_work_is_warmed_up_in_one_set() {
    for (lift, one_rm) in [
        ("lateral-raise", "10 kg"),
        ("biceps-curl", "12 kg"),
        ("triceps-extension", "20 kg"),
    ] {
        for months in ["2", "30", "60"] {
            let words = [
                "plan",
                lift,
                "--one-rm",
                one_rm,
                "--training-months",
                months,
                "--gym",
                "college-weight-room",
            ];
            let session = json(&words)["sessions"][0].clone();
            let sets = session["sets"].as_array().expect("sets");
            let warm: Vec<f64> = sets
                .iter()
                .filter(|set| set["kind"] == "warm_up")
                .map(kg)
                .collect();
            assert!(warm.len() <= 1, "{lift} {months}: {warm:?}");
            assert!(
                warm.iter().all(|load| *load < kg(work(&session)[0])),
                "{warm:?}"
            );
        }
    }
}

/// Loads of a log below the body are what is added to it: the maximum lies above what was lifted, and the plan is no plan of nothing.
#[test]
fn law_a_log_of_added_loads_is_read_as_one() {
    for lift in ["calf-raise", "pull-up"] {
        let row = |day: u32, load: f64| format!("2026-03-{day:02},{lift},{load},8,2\n");
        let rows: String = (0..3)
            .map(|week| row(2 + 7 * week, 20.0 + 2.5 * f64::from(week)))
            .collect();
        let asked = format!("{lift} --training-months 30 --start 2026-03-20");
        let answer = from_log(&rows, &format!("{asked} --format json"))
            .done()
            .json();
        let session = &answer["sessions"][0];
        let one_rm = session["one_rm_kg"].as_f64().expect("a maximum");
        assert!(one_rm > 25.0, "{session}");
        assert!(kg(work(session)[0]) > 10.0, "{session}");
        let told = in_one_line(&from_log(&rows, &asked).done().out);
        assert!(
            told.contains("read as what is added to the body of 73 kg"),
            "{told}"
        );
    }
    let whole = "2026-03-02,calf-raise,100,8,2\n2026-03-09,calf-raise,102.5,8,2\n";
    let told = from_log(whole, "calf-raise --training-months 30 --start 2026-03-12").done();
    let told = in_one_line(&told.out);
    assert!(
        told.contains("with the body of 73 kg in them") && told.contains("--one-rm"),
        "{told}"
    );
}

/// Below the fewest repetitions of a novice's list the next step is one more.
#[test]
fn law_a_few_repetitions_rise_one_by_one() {
    let words =
        "plan bench-press --one-rm 25kg --lifter reference-woman --gym garage --format json";
    let session = call(&words.split(' ').collect::<Vec<_>>()).done().json()["sessions"][0].clone();
    let count = work(&session)[0]["repetitions"].as_u64().expect("a count");
    assert!(count < 8, "{session}");
    let says = format!(
        "reaches {count} with 2 in reserve, do {} the next time",
        count + 1
    );
    let told = session["progression"].as_str().expect("words");
    assert!(told.contains(&says), "{says}: {told}");
}

/// A reserve that was asked for and is not the one that is kept is told, whoever trains, well or not, alone or in a block.
#[test]
fn law_a_reserve_that_is_overruled_is_told() {
    for (months, more) in [
        ("3", ""),
        ("3", " --weeks 4"),
        ("3", " --unwell"),
        ("3", " --unwell --weeks 3"),
        ("3", " --method pyramid --weeks 4"),
        ("60", " --weeks 4"),
        ("60", " --unwell"),
        ("60", " --unwell --weeks 4"),
    ] {
        let words = format!("plan squat --one-rm 70kg --training-months {months} --rir 0{more}");
        let told = in_one_line(&call(&words.split(' ').collect::<Vec<_>>()).done().out);
        let says = [
            "in reserve instead of 0",
            "--rir 0 is the least",
            "though asked for: --rir",
        ];
        assert!(
            says.iter().any(|says| told.contains(says)),
            "{words}: {told}"
        );
    }
}

/// A log that waits to be filled in says so, and what to write.
#[test]
fn fault_a_log_where_nothing_is_filled_in() {
    let folder = tempfile::tempdir().expect("a folder");
    let team = "name,sex,mass (kg),height (cm),training_months,squat (kg)\nMia (invented),woman,64,168,14,85\n";
    std::fs::write(folder.path().join("team.csv"), team).expect("a file");
    call_in(
        folder.path(),
        &["plan", "squat", "--team", "team.csv", "-o", "sheets"],
    )
    .done();
    let told = call_in(folder.path(), &["progress", "--log", "sheets/log.csv"]);
    assert_eq!(told.status, 2, "{}", told.out);
    let said = in_one_line(&told.complaint);
    assert!(
        said.contains("none of its 4 sets is filled in yet"),
        "{said}"
    );
    assert!(
        said.contains("write the date and the repetitions done"),
        "{said}"
    );
}

/// Text of two bytes a letter is read as a log, with its mark or without, and is named where it is not read.
#[test]
fn law_two_bytes_a_letter_are_read_or_named() {
    let folder = tempfile::tempdir().expect("a folder");
    let text = format!("date,lift,load (kg),repetitions,reserve\n{STRONG}");
    let ask = || {
        call_in(
            folder.path(),
            &["progress", "--log", "log.csv", "--format", "json"],
        )
        .done()
        .out
    };
    let write = |name: &str, text: &str, mark: bool, little: bool| {
        let units = text.encode_utf16();
        let units = mark.then_some(0xfeff).into_iter().chain(units);
        let bytes = units.flat_map(|unit| {
            if little {
                unit.to_le_bytes()
            } else {
                unit.to_be_bytes()
            }
        });
        std::fs::write(folder.path().join(name), bytes.collect::<Vec<u8>>()).expect("a file");
    };
    std::fs::write(folder.path().join("log.csv"), &text).expect("a file");
    let sessions =
        |out: &str| serde_json::from_str::<Value>(out).expect("JSON")["sessions"].clone();
    let usual = sessions(&ask());
    let mut seen = BTreeSet::new();
    for (mark, little) in [(true, true), (true, false), (false, true), (false, false)] {
        write("log.csv", &text, mark, little);
        assert_eq!(sessions(&ask()), usual, "{mark} {little}");
        write("team.csv", "name,sex\n", mark, little);
        let words = ["plan", "squat", "--team", "team.csv", "-o", "sheets"];
        let told = call_in(folder.path(), &words);
        assert_eq!(told.status, 2, "{}", told.out);
        seen.insert(told.complaint);
    }
    assert_eq!(seen.len(), 1, "{seen:?}");
    let told = seen.pop_first().expect("a complaint");
    assert!(
        told.contains("UTF-16") && told.contains("CSV UTF-8"),
        "{told}"
    );
}

/// The body alone needs no mass of its own where the lift moves it.
#[test]
fn fault_a_body_of_no_mass() {
    for lift in ["squat", "pull-up"] {
        let says = ["`body` needs its mass here", "leave --item out"];
        refused(&["rep", lift, "--item", "body"], &says);
    }
}
