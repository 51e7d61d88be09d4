//! `show` and `parameters`: what is listed is what there is, what is printed can be used.

use super::{folder, repository};
use crate::calling::{call, call_in};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::BTreeSet;
use torquill::library::{Library, SettableNow, Shelf, Wanted, Workbench};
use torquill::narrative::parameter_meanings::meaning;

#[test]
fn law_every_built_in_file_is_listed_and_printed_as_it_is() {
    let library = Library::built_in();
    let folder = tempfile::tempdir().expect("a folder can be made");
    for shelf in Shelf::ALL {
        let listed = call(&["show", shelf.folder()]).done().out;
        for name in library.names(shelf) {
            let path = repository(&format!("models/{}/{name}.ron", shelf.folder()));
            let text = std::fs::read_to_string(path).expect("shipped");
            if shelf == Shelf::Muscles || shelf == Shelf::Lifters {
                let shown = call(&["show", shelf.folder(), &name]).done().out;
                assert_eq!(shown, text, "{name}");
            }
            if shelf != Shelf::Muscles {
                let line = listed
                    .lines()
                    .find(|line| line.split(' ').next() == Some(&name));
                let line = line.unwrap_or_else(|| panic!("{name} is missing:\n{listed}"));
                assert!(line.len() > name.len() + 2, "{line}");
            }
        }
    }
    let written = ["show", "lifter", "reference-man", "-o", "mine.ron"];
    call_in(folder.path(), &written).done();
    call_in(folder.path(), &["check", "mine.ron"]).done();
    assert_eq!(
        call_in(folder.path(), &written).status,
        2,
        "it is there already"
    );
    for log in ["rising", "stalled", "gappy"] {
        assert!(
            call(&["show", "log", log])
                .done()
                .out
                .starts_with("# Invented log")
        );
    }
    let fault = call(&["show", "lifter", "reference-men"]);
    assert_eq!(fault.status, 2);
    assert!(
        fault.complaint.contains("did you mean `reference-man`?"),
        "{}",
        fault.complaint
    );
}

#[test]
fn law_a_muscle_is_printed_as_a_file_that_changes_nothing() {
    let library = Library::built_in();
    let plain = library.lifter("reference-man").expect("sound");
    for muscle in library.listed_muscles().expect("sound") {
        let text = library
            .starting_text(Shelf::Muscles, &muscle.name)
            .expect("it is there");
        let folder = folder(&[("muscles/reference.ron", &text)]);
        let mut lifter = super::library(&folder)
            .lifter("reference-man")
            .expect("sound");
        // A file that takes the place of a built-in one may mark the lifter; it changes no value.
        lifter.title = plain.title.clone();
        assert!(lifter == plain, "{}", muscle.name);
    }
}

/// The values of every lift, with the movement's name.
fn all_values() -> Vec<(String, torquill::library::SettableValue)> {
    let library = Library::built_in();
    let of = |name: String| {
        let bench = Workbench::open(&library, "club-lifter", &name).expect("sound");
        let values = bench.settable(&[], Wanted::Moving).expect("no settings");
        values
            .into_iter()
            .map(move |value| (name.clone(), value))
            .collect::<Vec<_>>()
    };
    library.movements().into_iter().flat_map(of).collect()
}

#[test]
fn law_every_value_has_a_meaning_a_range_around_it_and_a_file() {
    for (movement, value) in all_values() {
        let path = &value.path;
        let is_told = value.meaning.is_some() || meaning(path).is_some();
        assert!(is_told, "{movement}: nobody says what {path} means");
        assert!(
            value
                .from
                .file
                .as_ref()
                .is_some_and(|file| file.starts_with("models/")),
            "{path}"
        );
        if let SettableNow::Number { si, .. } = value.now {
            let is_a_key_pose = path.contains("_course.");
            let (least, most) = match value.range {
                Some(range) => range,
                None if is_a_key_pose => continue,
                None => panic!("{movement}: nothing bounds {path}"),
            };
            assert!(least < most, "{path}");
            let slack = 1e-9 * most.abs().max(least.abs());
            assert!(
                (least - slack..=most + slack).contains(&si),
                "{movement}: {path} is {si}, outside {least} to {most}"
            );
        }
        if let Some(fitted) = value.from.fitted {
            assert!(
                value.scaled_by.is_finite() && fitted.deviation >= 0.0,
                "{path}"
            );
        }
    }
}

/// What is said to be accepted is accepted, and what lies just beyond is refused, by the reader itself.
#[test]
fn law_the_ranges_listed_are_those_that_hold() {
    let mut random = ChaCha8Rng::seed_from_u64(33);
    let library = Library::built_in();
    let values = all_values();
    for _ in 0..60 {
        let (movement, value) = &values[random.random_range(0..values.len())];
        let (SettableNow::Number { unit, .. }, Some((least, most))) = (&value.now, value.range)
        else {
            continue;
        };
        let bench = Workbench::open(&library, "club-lifter", movement).expect("sound");
        let beyond = if random.random_bool(0.5) {
            least - 0.01 * (most - least)
        } else {
            most + 0.01 * (most - least)
        };
        let set = format!("{}={beyond} {unit}", value.path);
        assert!(
            bench.model(&[set.trim().to_owned()]).is_err(),
            "{movement}: {set} is accepted"
        );
    }
}

#[test]
fn law_lists_fit_a_terminal_and_words_find_values() {
    for arguments in [
        vec!["parameters", "biceps-curl"],
        vec!["parameters", "bench-press", "--long"],
        vec!["parameters", "squat", "--units", "us"],
        vec!["parameters", "--find", "soleus"],
    ] {
        let text = call(&arguments).done().out;
        let wide: Vec<&str> = text
            .lines()
            .filter(|line| line.chars().count() > 100)
            .collect();
        assert!(wide.is_empty(), "{arguments:?}: {wide:#?}");
        assert!(text.lines().count() > 5, "{arguments:?}: {text}");
    }
    let found = crate::calling::json(&["parameters", "bench-press", "--find", "grip"]);
    let paths: BTreeSet<&str> = found["values"]
        .as_array()
        .expect("a list")
        .iter()
        .filter_map(|value| value["path"].as_str())
        .collect();
    assert!(paths.contains("technique.grip_width"), "{paths:?}");
    let word = crate::calling::json(&["parameters", "squat", "--find", "bar_position"]);
    assert_eq!(
        word["values"][0]["words"],
        serde_json::json!(["high", "low"])
    );
    assert_eq!(call(&["parameters", "squat", "--find", "xyzzy"]).status, 1);
}

#[test]
fn regress_a_value_says_which_file_it_stands_in_and_whether_that_names_a_source() {
    let own = "(extends: \"reference-man\", height: \"180 cm\")";
    let sourced = "(extends: \"reference-man\", height: \"180 cm\", source: Assumed(\"a tape\"))";
    let muscles = "(extends: \"reference\", muscles: {\"brachialis\": (peak_force: \"1000 N\")})";
    let folder = folder(&[
        ("own/lifters/bare.ron", own),
        ("own/lifters/sourced.ron", sourced),
        ("own/muscles/reference.ron", muscles),
    ]);
    let value = |lifter: &str, find: &str| {
        let arguments = [
            "parameters",
            "biceps-curl",
            "--models",
            "own",
            "--lifter",
            lifter,
            "--find",
            find,
            "--format",
            "json",
        ];
        call_in(folder.path(), &arguments).done().json()["values"][0].clone()
    };
    let height = value("bare", "lifter.height");
    assert_eq!(height["file"], "own/lifters/bare.ron");
    assert_eq!(height["from"], "no source");
    assert_eq!(
        value("sourced", "lifter.height")["source"],
        "assumed: a tape"
    );
    assert_eq!(
        value("sourced", "lifter.body_mass")["file"],
        "models/lifters/reference-man.ron"
    );
    let changed = value("bare", "brachialis.peak_force");
    assert_eq!(
        (&changed["file"], &changed["prior_si"]),
        (
            &"own/muscles/reference.ron".into(),
            &serde_json::Value::Null
        )
    );
    let kept = value("bare", "brachialis.optimal_fibre_length");
    assert_eq!(kept["file"], "models/muscles/reference.ron");
    assert!(kept["prior_si"].is_number() && kept["posterior_deviation_si"].is_number());
}

#[test]
fn regress_a_table_that_is_set_is_the_one_in_which_values_stand() {
    let own = "(extends: \"reference\", muscles: {\"brachialis\": (peak_force: \"1000 N\", source: Assumed(\"x\"))})";
    let folder = super::folder(&[("muscles/mine.ron", own)]);
    let library = super::library(&folder);
    let sets = ["lifter.muscles=mine".to_owned()];
    let values =
        torquill::study::listed_values(&library, "reference-man", Some("biceps-curl"), &sets);
    let values = values.expect("sound");
    let path = "muscles.brachialis.peak_force";
    let found = values
        .iter()
        .find(|listed| listed.value.path == path)
        .expect("listed");
    let file = found.value.from.file.clone().expect("a file");
    assert!(file.ends_with("mine.ron"), "{file}");
}
