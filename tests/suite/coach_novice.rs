//! Days of a block on what is printed, bands and rows that are told alike everywhere.

use crate::calling::{call, in_one_line};

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
