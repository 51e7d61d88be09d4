//! `plan … --team`: a sheet for everybody, an overview, a log that is read back; and what is refused.

use super::calling::{Answer, call_in, in_one_line};
use std::path::Path;
use tempfile::TempDir;

/// An invented team.
const TEAM: &str = "Name;Sex;Mass (kg);Height (cm);Training_months;Back squat (kg);Bench press;Shoe size\n\
    Mia (invented);woman;64,5;168;14;85;;38\n\
    Tom (invented);m;82;181;30;120 x 5;100 kg x 3;44\n\
    Ayo (invented);man;76;175;;;60 kg;42\n";

fn folder_with(team: &str) -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("team.csv"), team).expect("a file");
    folder
}

fn planned(folder: &Path, more: &[&str]) -> Answer {
    let usual = ["plan", "all", "--team", "team.csv", "-o", "sheets"];
    call_in(folder, &[&usual, more].concat())
}

fn read(folder: &Path, name: &str) -> String {
    std::fs::read_to_string(folder.join("sheets").join(name))
        .unwrap_or_else(|e| panic!("{name}: {e}"))
}

/// Lifts of a row that contradict one another are told in the row's line, below the table, in the overview and on the sheet;
/// lifts that fit are not.
#[test]
fn law_lifts_that_contradict_one_another_are_told() {
    let folder = folder_with(
        "name,sex,mass (kg),height (cm),training_months,squat (kg),deadlift (kg),bench press (kg)\n\
         Di (invented),man,80,181,30,200,80,\n\
         Bo (invented),man,80,181,30,140,165,100\n",
    );
    let words = ["plan", "deadlift", "--team", "team.csv", "-o", "sheets"];
    let told = call_in(folder.path(), &words).done();
    let one = in_one_line(&told.out);
    assert!(
        one.contains(
            "! Di (invented): a 1RM of 80 kg in the deadlift does not fit the row: by the squat"
        ),
        "{}",
        told.out
    );
    assert!(!one.contains("Bo (invented): a 1RM"), "{}", told.out);
    for name in ["overview.html", "di-invented.html"] {
        assert!(
            read(folder.path(), name).contains("does not fit the row"),
            "{name}"
        );
    }
    assert!(read(folder.path(), "overview.html").contains("; the row's other lift says"));
    assert!(!read(folder.path(), "bo-invented.html").contains("does not fit"));
}

/// The line of a person's days.
fn days_of<'a>(told: &'a str, name: &str) -> &'a str {
    let line = told.split(&format!("- {name}: ")).nth(1);
    let line = line.unwrap_or_else(|| panic!("no days of {name}: {told}"));
    line.split(" - ").next().unwrap_or(line)
}

/// Lifts of several joints, legs first.
const SEVERAL_JOINTS: [&str; 5] = ["squat", "deadlift", "bench-press", "overhead-press", "row"];

/// Several lifts of a person, planned or tested: every one once, in its order, on days that are not too long; times, sets
/// and attempts add up.
#[test]
fn law_several_lifts_have_an_order_and_days_that_end() {
    let folder = folder_with(
        "name,sex,mass (kg),height (cm),training_months,biceps curl,bench press,squat,deadlift,overhead press,row\n\
         Bo (invented),man,80,181,40,40 kg,100 kg,140 kg,165 kg,60 kg,\n\
         Cy (invented),man,80,181,3,,60 kg,,,,\n",
    );
    let told = planned(folder.path(), &[]).done();
    let one = in_one_line(&told.out);
    let count = |text: &str, pattern: &str| -> Vec<f64> {
        let pattern = regex::Regex::new(pattern).expect("a pattern");
        let found = pattern.captures_iter(text);
        found
            .map(|found| found[1].parse().expect("a number"))
            .collect()
    };
    // What is not told is tested, and that comes first.
    let tested: [(&str, &str, &[&str]); 2] = [
        ("Bo (invented)", "bo-invented.html", &["row"]),
        (
            "Cy (invented)",
            "cy-invented.html",
            &["squat", "deadlift", "overhead-press", "row", "biceps-curl"],
        ),
    ];
    for (name, sheet, tested) in tested {
        let line = days_of(&one, name);
        let minutes = count(line, r"about ([0-9]+) min");
        assert!(
            minutes.len() > 1 && minutes.iter().all(|day| *day <= 75.0),
            "{line}"
        );
        let days: Vec<&str> = line.split("day ").skip(1).collect();
        assert_eq!(days.len(), minutes.len(), "{line}");
        let rank = |lift: &str| {
            let place = SEVERAL_JOINTS.iter().position(|known| *known == lift);
            let arms = place.is_none_or(|place| place > 1);
            (!tested.contains(&lift), place.is_none(), arms)
        };
        let mut seen = Vec::new();
        for day in days {
            let lifts = day
                .split(": ")
                .nth(1)
                .and_then(|day| day.split(" (").next());
            let lifts: Vec<&str> = lifts.expect("lifts").split(", ").collect();
            assert!(lifts.is_sorted_by_key(|lift| rank(lift)), "{day}");
            let is_tested = |lift: &&str| tested.contains(lift);
            assert_eq!(
                day.contains(" attempt"),
                lifts.iter().any(is_tested),
                "{day}"
            );
            let is_planned = |lift: &&str| !is_tested(lift);
            assert_eq!(
                day.contains(" working set"),
                lifts.iter().any(is_planned),
                "{day}"
            );
            seen.extend(lifts);
        }
        seen.sort_unstable();
        let mut all = [&SEVERAL_JOINTS[..], &["biceps-curl"]].concat();
        all.sort_unstable();
        assert_eq!(seen, all, "{line}");
        let sheet = read(folder.path(), sheet);
        let own: f64 = count(&sheet, "about ([0-9]+) min,").iter().sum();
        assert!(
            own > 0.0 && minutes.iter().sum::<f64>() >= own - 3.0,
            "{own}: {line}"
        );
        assert!(sheet.contains("lift 1 of "), "{sheet}");
        // The table tells the working sets of each planned lift.
        let row = format!("{name} ");
        let rows = told
            .out
            .lines()
            .filter(|line| line.trim_start().starts_with(&row));
        let rows: String = rows.collect::<Vec<_>>().join("\n");
        let sets: f64 = count(&rows, r" ([0-9]+) × [0-9]+ at").iter().sum();
        let line_sets: f64 = count(line, "([0-9]+) working sets?").iter().sum();
        assert!(sets > 0.0);
        assert!((sets - line_sets).abs() < 1.0e-9, "{rows}: {line}");
    }
}

/// A load that helps is no maximum, and is told as that; the other unit of an odd maximum is shown.
#[test]
fn fault_a_load_that_helps_is_no_maximum() {
    let head = "name,sex,mass (kg),height (cm),training_months,squat,pull-up\n";
    let folder = folder_with(&format!(
        "{head}Ann (invented),woman,64,168,14,60 kg,-10 kg\nBo (invented),man,80,181,30,2450 lb,10 kg\n"
    ));
    let told = planned(folder.path(), &[]);
    assert_eq!(told.status, 2, "{}", told.out);
    assert!(
        told.complaint.contains("a load that helps is no 1RM"),
        "{}",
        told.complaint
    );
    let told = planned(folder.path(), &["--skip-bad-rows"]).done();
    assert!(
        in_one_line(&told.complaint).contains("left out: line 2: `-10 kg` of the pull-up"),
        "{}",
        told.complaint
    );
    assert!(
        in_one_line(&told.out).contains("1111.3 kg (2450 lb)"),
        "{}",
        told.out
    );
}

#[test]
fn law_everybody_has_a_sheet_and_the_log_is_read_back() {
    let folder = folder_with(TEAM);
    let answer = planned(folder.path(), &[]).done();
    assert!(
        answer.complaint.contains("column not used: `Shoe size`"),
        "{}",
        answer.complaint
    );
    let overview = read(folder.path(), "overview.html");
    for name in ["mia-invented", "tom-invented", "ayo-invented"] {
        assert!(
            overview.contains(&format!("href=\"{name}.html\"")),
            "{overview}"
        );
        let sheet = read(folder.path(), &format!("{name}.html"));
        assert_eq!(sheet.matches("<section").count(), 2, "{name}");
        assert!(
            sheet.contains("<th>RIR</th>") && sheet.contains("(invented)</span>"),
            "{sheet}"
        );
        for lift in ["squat", "bench-press"] {
            let picture = read(folder.path(), &format!("{name}-{lift}.svg"));
            assert!(
                picture.starts_with("<svg") || picture.starts_with("<?xml"),
                "{name}"
            );
        }
    }
    // A set of five stands for more than its load, an empty cell for a test.
    assert!(overview.contains("120 kg × 5"), "{overview}");
    assert!(overview.contains("test of the 1RM"), "{overview}");
    assert!(overview.contains("test of five repetitions"), "{overview}");
    let log = read(folder.path(), "log.csv");
    let filled: Vec<String> = log.lines().map(filled).collect();
    let file = folder.path().join("filled.csv");
    std::fs::write(&file, filled.join("\n")).expect("a file");
    let progress = call_in(
        folder.path(),
        &[
            "progress",
            "--log",
            "filled.csv",
            "--athlete",
            "tom (INVENTED)",
            "--lift",
            "squat",
            "--format",
            "json",
            "--skip-bad-rows",
        ],
    );
    // One day is no trend, and that is said: the log itself was read.
    assert_eq!(progress.status, 1, "{}", progress.complaint);
    assert!(
        progress.complaint.contains("1 usable session: no trend"),
        "{}",
        progress.complaint
    );
}

/// A row of the log as somebody fills it in: the day, what was planned, two in reserve, a velocity.
fn filled(row: &str) -> String {
    let mut cells: Vec<String> = row.split(',').map(str::to_owned).collect();
    if cells[0] == "date" {
        return row.to_owned();
    }
    let last = cells.len();
    cells[0] = "2026-03-02".to_owned();
    cells[last - 3] = cells[last - 4].clone();
    cells[last - 2] = "2".to_owned();
    cells[last - 1] = "0.45".to_owned();
    cells.join(",")
}

#[test]
fn law_a_team_of_one_lift_and_other_forms() {
    let folder = folder_with(TEAM);
    let call = |form: &str, to: &str| {
        let arguments = [
            "plan", "squat", "--team", "team.csv", "-o", to, "--format", form,
        ];
        call_in(folder.path(), &arguments).done()
    };
    let json = call("json", "a").json();
    let team = json["team"].as_array().expect("a list");
    assert_eq!(team.len(), 3);
    assert_eq!(team[0]["one_rm_kg"], 85.0);
    // The median of the equations for five repetitions is 13 to 18 % above the load.
    let tom = team[1]["one_rm_kg"].as_f64().expect("a 1RM");
    assert!((134.0..143.0).contains(&tom), "{tom}");
    assert_eq!(team[2]["plan"], "test");
    assert_eq!(call("csv", "b").out.lines().count(), 4);
    let again = call_in(
        folder.path(),
        &["plan", "squat", "--team", "team.csv", "-o", "a"],
    );
    assert_eq!(again.status, 2, "{}", again.complaint);
}

#[test]
fn fault_a_bad_team_is_refused_with_lines_and_nothing_is_written() {
    let head = "name,sex,mass (kg),height (cm),training_months,squat (kg)\n";
    for (rows, says) in [
        (
            "Mia,woman,64,168,14,85\nmia ,woman,60,170,2,\n",
            "`mia` stands in line 2 already",
        ),
        (
            "Mia,woman,64,168,14,heavy\n",
            "`heavy` is no 1RM of the squat",
        ),
        (
            "Mia,woman,64,168,14,85 x 30\n",
            "30 repetitions of the squat give no 1RM",
        ),
        ("Mia,girl,64,168,14,85\n", "`girl` names no table"),
        ("Kim,man,32,128,0,\n", "128 cm is no height of an adult"),
        ("Kim,man,640,178,0,\n", "640 kg is no body mass"),
        ("Kim,man,64,178,soon,\n", "`soon` is no number of months"),
        ("Kim,man,,178,0,\n", "the row has no mass"),
        (",man,64,178,0,\n", "the row has no name"),
        ("", "nobody in it"),
    ] {
        let folder = folder_with(&format!("{head}{rows}"));
        let answer = planned(folder.path(), &[]);
        assert_eq!(answer.status, 2, "{rows}: {}", answer.complaint);
        assert!(
            answer.complaint.contains(says),
            "{rows}: {}",
            answer.complaint
        );
        assert!(!folder.path().join("sheets").exists());
    }
    for (text, says) in [
        ("", "is empty"),
        (
            "name,sex,mass (kg),height (cm)\nMia,woman,64,168\n",
            "no column of the team holds a lift",
        ),
        (
            "name,sex,mass (kg),squat (kg)\nMia,woman,64,90\n",
            "no column `height`",
        ),
        (
            "name,sex,mass,height,squat\nMia,woman,64,168,90\n",
            "`64` has no unit",
        ),
        (
            "name,sex,mass (kg),height (cm),squat (kg),back squat\nMia,woman,64,168,90,\n",
            "hold the same",
        ),
    ] {
        let folder = folder_with(text);
        let answer = planned(folder.path(), &[]);
        assert_eq!(answer.status, 2, "{text}: {}", answer.complaint);
        assert!(
            answer.complaint.contains(says),
            "{text}: {}",
            answer.complaint
        );
    }
    let folder = folder_with(TEAM);
    let other = ["plan", "row", "--team", "team.csv", "-o", "sheets"];
    let answer = call_in(folder.path(), &other);
    assert!(
        answer.status == 2 && answer.complaint.contains("no column for the row"),
        "{}",
        answer.complaint
    );
    let both = planned(folder.path(), &["--one-rm", "100 kg"]);
    assert_eq!(both.status, 2, "{}", both.complaint);
}

/// Columns of health are read as the options are, under any common heading, and what is neither yes nor no is told.
#[test]
fn fault_an_injured_or_ill_person_gets_no_session_from_a_column() {
    let team = "name,sex,mass (kg),height (cm),training_months,injury,Ill,squat (kg)\n\
        Mia (invented),woman,64,168,14,yes,,85\n\
        Tom (invented),man,82,181,30,,,120\n\
        Ayo (invented),man,76,175,30,no,x,\n\
        Lea (invented),woman,60,166,20,Y,-,\n";
    let folder = folder_with(team);
    let answer = planned(folder.path(), &[]).done();
    assert!(
        !answer.complaint.contains("not used"),
        "{}",
        answer.complaint
    );
    let line = |name: &str| {
        let mut lines = answer.out.lines().skip_while(|line| !line.contains(name));
        let first = lines.next().expect("a line").to_owned();
        let rest = lines.take_while(|line| !line.contains("(invented)"));
        rest.fold(first, |whole, line| whole + " " + line.trim())
    };
    for name in ["Mia", "Ayo", "Lea"] {
        assert!(line(name).contains("nothing planned"), "{}", answer.out);
    }
    assert!(!line("Tom").contains("nothing planned"), "{}", answer.out);
    let odd = folder_with(&team.replace(",Y,", ",a bit,"));
    let answer = planned(odd.path(), &[]);
    assert_eq!(answer.status, 2);
    for words in ["`a bit`", "`injured`", "neither yes nor no", "team.csv:5"] {
        assert!(answer.complaint.contains(words), "{}", answer.complaint);
    }
}

/// Where nobody gets a plan the sheets say why and the status says so too.
#[test]
fn fault_nobody_of_a_team_is_planned_for() {
    let ill = "name,sex,mass (kg),height (cm),training_months,injury,squat (kg)\n\
        Ayo (invented),man,76,175,30,x,100\nLea (invented),woman,60,166,20,x,60\n";
    let folder = folder_with(ill);
    let answer = planned(folder.path(), &[]);
    assert_eq!(answer.status, 1, "{}", answer.out);
    let told = in_one_line(&answer.complaint);
    assert!(
        told.contains("nothing is planned for any of 2 people"),
        "{told}"
    );
    assert!(read(folder.path(), "overview.html").contains("Lea (invented)"));
}
