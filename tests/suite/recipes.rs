//! "A new … is one file": each kind of model is copied under another name into a folder of the user's own, and every
//! command answers for the copy as it does for the original.

use crate::calling::call_in;
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};
use std::path::Path;
use tempfile::TempDir;

/// A folder with a copy of a shipped file under another name; words of the text may be changed.
fn copied(kind: &str, from: &str, to: &str, change: impl Fn(&str) -> String) -> TempDir {
    let folder = tempfile::tempdir().expect("a folder can be made");
    add(folder.path(), kind, from, to, change);
    folder
}

fn add(folder: &Path, kind: &str, from: &str, to: &str, change: impl Fn(&str) -> String) {
    let shipped = Path::new(env!("CARGO_MANIFEST_DIR")).join("models");
    let text = std::fs::read_to_string(shipped.join(kind).join(format!("{from}.ron")))
        .expect("a shipped file");
    let into = folder.join("own").join(kind);
    std::fs::create_dir_all(&into).expect("a folder can be made");
    std::fs::write(into.join(format!("{to}.ron")), change(&text)).expect("a file can be written");
}

/// A command line whose word `{}` is the name of a model.
fn line<'a>(words: &'a str, name: &'a str) -> Vec<&'a str> {
    let words = words.split(' ');
    words
        .map(|word| if word == "{}" { name } else { word })
        .collect()
}

/// An answer without what it says of its own making, which names the files of the copy.
fn unsigned(answer: &str) -> String {
    let mut answer: serde_json::Value = serde_json::from_str(answer).expect("an answer in JSON");
    let record = answer
        .as_object_mut()
        .and_then(|map| map.shift_remove("provenance"));
    assert!(record.is_some(), "an answer says how it was made");
    answer.to_string()
}

/// Every command says of the copy what it says of the original, but for the name.
fn answers_alike(folder: &Path, from: &str, to: &str, commands: &[&str]) {
    commands.par_iter().for_each(|command| {
        let original = call_in(folder, &line(command, from)).done();
        let own = [&line(command, to)[..], &["--models", "own"]].concat();
        let copy = call_in(folder, &own).done();
        let renamed = unsigned(&copy.out).replace(to, from);
        assert_eq!(renamed, unsigned(&original.out), "{command}");
        assert!(!original.out.is_empty(), "{command}");
    });
}

#[test]
fn law_a_new_movement_is_one_file() {
    // One of every kind of path.
    for (movement, plan) in [
        ("bench-press", "plan {} --one-rm 90kg --format json"),
        ("squat", "plan {} --one-rm 90kg --format json"),
        ("leg-press", "plan {} --one-rm 150kg --format json"),
        ("hip-thrust", "plan {} --one-rm 90kg --format json"),
        ("biceps-curl", "plan {} --one-rm 20kg --format json"),
    ] {
        let copy = format!("own-{movement}");
        let folder = copied("movements", movement, &copy, str::to_owned);
        let commands = [
            "curve {} --load 40kg --samples 11 --format json",
            "rep {} --load 60% --format json",
            "max {} --format json",
            plan,
            "pick {} --gym college-weight-room --top 2 --format json",
        ];
        answers_alike(folder.path(), movement, &copy, &commands);
        let drawn = |name: &str, file: &str, more: &[&str]| {
            let arguments = ["figure", name, "--load", "40kg", "-o", file];
            call_in(folder.path(), &[&arguments, more].concat()).done();
            let svg = std::fs::read_to_string(folder.path().join(file)).expect("the figure");
            let (before, behind) = svg
                .split_once("<metadata")
                .expect("it says how it was made");
            let (_, behind) = behind.split_once("</metadata>").expect("the element ends");
            format!("{before}{behind}")
        };
        let original = drawn(movement, "original.svg", &[]);
        let own = drawn(&copy, "own.svg", &["--models", "own"]);
        assert_eq!(own.replace(&copy, movement), original, "{movement}");
    }
}

#[test]
fn law_a_new_lifter_is_one_file() {
    let folder = copied("lifters", "tall-novice", "own-lifter", str::to_owned);
    let commands = [
        "curve bench-press --lifter {} --load 40kg --samples 11 --format json",
        "rep squat --lifter {} --load 60% --format json",
        "max deadlift --lifter {} --format json",
    ];
    answers_alike(folder.path(), "tall-novice", "own-lifter", &commands);
}

#[test]
fn law_a_new_gym_is_one_file() {
    let folder = copied("gyms", "garage", "own-gym", str::to_owned);
    let commands = [
        "pick bench-press --gym {} --top 3 --format json",
        "plan bench-press --one-rm 100kg --gym {} --format json",
    ];
    answers_alike(folder.path(), "garage", "own-gym", &commands);
}

#[test]
fn law_a_new_band_or_chain_is_one_file() {
    let named = |text: &str| text.replace("loop-29mm", "own-band");
    let folder = copied("bands", "loop-29mm", "own-band", named);
    let named = |text: &str| text.replace("chain-8mm", "own-chain");
    add(folder.path(), "chains", "chain-8mm", "own-chain", named);
    for (option, from, to) in [
        ("--band", "loop-29mm", "own-band"),
        ("--chain", "chain-8mm", "own-chain"),
    ] {
        let curve = |name: &str| {
            let arguments = [
                "curve", "squat", "--load", "60kg", option, name, "--models", "own",
            ];
            call_in(
                folder.path(),
                &[&arguments[..], &["--format", "json"]].concat(),
            )
            .done()
            .json()
        };
        // Shipped gear is called by its size; all else is the same.
        let (original, copy) = (curve(from), curve(to));
        assert_eq!(copy["samples"], original["samples"], "{to}");
        let effort = |answer: &serde_json::Value| answer["summary"]["max_effort"].clone();
        assert_eq!(effort(&copy), effort(&original), "{to}");
    }
}

/// A table of muscles is one file, and a lifter names it.
#[test]
fn law_a_new_table_of_muscles_is_one_file() {
    let folder = copied("muscles", "reference", "own-muscles", str::to_owned);
    let named = |text: &str| text.replace("muscles: \"reference\"", "muscles: \"own-muscles\"");
    add(
        folder.path(),
        "lifters",
        "reference-man",
        "own-lifter",
        named,
    );
    let commands = [
        "curve bench-press --lifter {} --load 40kg --samples 11 --detail --format json",
        "max squat --lifter {} --format json",
    ];
    answers_alike(folder.path(), "reference-man", "own-lifter", &commands);
}
