//! What a coach must not overlook in a row of a team or a 1RM: pounds for kilograms, bars too heavy for a test, one helper.

use crate::calling::{Answer, call, call_in, in_one_line};
use std::path::Path;
use tempfile::TempDir;

fn team(rows: &str) -> TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    std::fs::write(folder.path().join("team.csv"), rows).expect("a file");
    folder
}

fn planned(folder: &Path, lift: &str, gym: &str) -> Answer {
    let words = [
        "plan", lift, "--team", "team.csv", "--gym", gym, "-o", "sheets",
    ];
    call_in(folder, &words).done()
}

fn sheet(folder: &Path, name: &str) -> String {
    std::fs::read_to_string(folder.join("sheets").join(name)).expect("a sheet")
}

/// Pounds under a head of kilograms are asked about, with the lift, in the overview and on the sheet; a usual 1RM is not.
#[test]
fn fault_pounds_in_a_column_of_kilograms_are_asked_about() {
    let folder = team(
        "name,sex,mass (kg),height (cm),training_months,squat (kg),bench press (kg)\n\
         Mia,woman,58,165,2,150,100\n\
         Ann,woman,58,165,2,60,35\n",
    );
    let told = planned(folder.path(), "all", "college-weight-room");
    let one = in_one_line(&told.out);
    assert!(
        one.contains("! Mia: This 1RM in the bench press is "),
        "{one}"
    );
    assert!(
        one.contains("if pounds were taken for kilograms, as 45.4 kg: is the unit right?"),
        "{one}"
    );
    assert!(!one.contains("! Ann"), "{one}");
    assert!(sheet(folder.path(), "mia.html").contains("is the unit right?"));
    assert!(!sheet(folder.path(), "ann.html").contains("is the unit right?"));
}

/// No test begins with more than its ramp: a bar that is too heavy is refused with the load that is needed; where the bar is
/// light enough the ramp begins with it.
#[test]
fn law_a_test_begins_no_heavier_than_its_ramp() {
    let folder = team(
        "name,sex,mass (kg),height (cm),training_months,age,squat (kg),overhead press (kg)\n\
         P,woman,50,160,0,25,22,\n\
         Tom,man,82,181,30,25,140,\n",
    );
    let told = planned(folder.path(), "overhead-press", "garage");
    let one = in_one_line(&told.out);
    assert!(
        one.contains("this lifter begins its attempts with"),
        "{one}"
    );
    assert!(one.contains("take a lighter bar or dumb-bells of"), "{one}");
    let tom = in_one_line(&sheet(folder.path(), "tom.html"));
    assert!(
        tom.contains("low end of the interval that holds four in five"),
        "{tom}"
    );
}

/// The number of spotters of a squat.
fn spotters(one_rm: &str, repetitions: &str) -> (u64, f64, bool) {
    let words = [
        "plan",
        "squat",
        "--one-rm",
        one_rm,
        "--reps",
        repetitions,
        "--training-months",
        "60",
    ];
    let text = in_one_line(&call(&words).done().out);
    let json = call(&[&words[..], &["--format", "json"]].concat()).done();
    let session = &json.json()["sessions"][0];
    let sets = session["sets"].as_array().expect("sets").iter();
    let kg = sets.map(|set| set["load_kg"].as_f64().expect("kg"));
    (
        session["spotters"].as_u64().expect("a count"),
        kg.fold(0.0, f64::max),
        text.contains("more than 100 kg is not for one: assumed"),
    )
}

/// Two spotters from a share of the 1RM on, or from more than one of them holds: by both rules, over a range of lifters.
#[test]
fn law_a_heavy_bar_takes_two_spotters_whatever_its_share() {
    let mut seen = [0, 0];
    for one_rm in ["80 kg", "110 kg", "150 kg", "200 kg", "280 kg"] {
        let (count, heaviest, by_mass) = spotters(one_rm, "8");
        assert_eq!(count == 2, heaviest > 100.0, "{one_rm} {heaviest}");
        assert_eq!(by_mass, heaviest > 100.0, "{one_rm} {heaviest}");
        seen[count as usize - 1] += 1;
    }
    assert!(seen.iter().all(|seen| *seen > 0), "{seen:?}");
}

/// Whatever bands make of the load: more than the 1RM is told among the gravest cautions, and only then.
#[test]
fn law_more_than_the_1rm_near_the_end_is_told() {
    let share = regex::Regex::new(r"\((\d+) %\)").expect("a pattern");
    let mut seen = [false, false];
    for band in ["loop-64mm:4", "loop-64mm:2", "loop-14mm:2"] {
        let words = [
            "plan",
            "squat",
            "--one-rm",
            "140 kg",
            "--training-months",
            "60",
            "--method",
            "bands",
            "--band",
            band,
        ];
        let answer = call(&[&words[..], &["--format", "json"]].concat());
        if answer.status != 0 {
            continue;
        }
        let sets = answer.json()["sessions"][0]["sets"].clone();
        let work = sets.as_array().expect("sets").iter();
        let work = work.filter(|set| set["kind"] == "work");
        let notes: String = work.map(|set| set["notes"].to_string()).collect();
        let felt = share.captures_iter(&notes);
        let is_more = felt
            .map(|told| told[1].parse::<u32>().expect("a share"))
            .max()
            > Some(100);
        let said = in_one_line(&call(&words).done().out);
        assert_eq!(
            said.contains("of the 1RM is felt: more than"),
            is_more,
            "{band} {said}"
        );
        seen[usize::from(is_more)] = true;
    }
    assert_eq!(seen, [true, true]);
}
