//! models/README.md: every example is checked by the code of `check`, every field that a reader knows is named, and
//! no other.

use super::{folder, library, repository};
use std::collections::{BTreeMap, BTreeSet};
use torquill::library::{Shelf, records_of};

fn text() -> String {
    std::fs::read_to_string(repository("models/README.md")).expect("it is in the repository")
}

/// The examples: path of the file and its text.
fn examples() -> Vec<(String, String)> {
    let text = text();
    let blocks = text.split("\n```ron ").skip(1);
    blocks
        .map(|block| {
            let (path, rest) = block
                .split_once('\n')
                .expect("a path stands behind the fence");
            let body = rest.split("\n```").next().expect("a block");
            (path.to_owned(), format!("{body}\n"))
        })
        .collect()
}

#[test]
fn law_every_example_is_a_sound_file_and_nothing_about_it_is_unlikely() {
    let examples = examples();
    let files: Vec<(&str, &str)> = examples
        .iter()
        .map(|(path, text)| (path.as_str(), text.as_str()))
        .collect();
    let folder = folder(&files);
    let library = library(&folder);
    for (path, _) in &examples {
        let checked = library.check_file(&folder.path().join(path));
        let checked =
            checked.unwrap_or_else(|error| panic!("{path}: {}", crate::calling::said(&error)));
        let doubts: Vec<String> = checked.doubts.iter().map(super::words).collect();
        assert!(doubts.is_empty(), "{path}: {doubts:?}");
    }
    let kinds: BTreeSet<&str> = examples
        .iter()
        .filter_map(|(path, _)| path.split('/').next())
        .collect();
    for shelf in Shelf::ALL {
        assert!(
            kinds.contains(shelf.folder()),
            "no example of {}",
            shelf.folder()
        );
    }
}

#[test]
fn law_every_example_answers_in_a_command() {
    let examples = examples();
    let files: Vec<(String, &str)> = examples
        .iter()
        .map(|(path, text)| (format!("own/{path}"), text.as_str()))
        .collect();
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(path, text)| (path.as_str(), *text))
        .collect();
    let folder = folder(&files);
    let stems: Vec<(&str, &str)> = examples
        .iter()
        .filter_map(|(path, _)| path.strip_suffix(".ron")?.split_once('/'))
        .collect();
    for (kind, name) in stems {
        let curve = ["curve", "biceps-curl", "--samples", "5"];
        let setup = format!("own/setups/{name}.ron");
        let muscles = format!("lifter.muscles={name}");
        let segments = format!("lifter.segments={name}");
        let curves = format!("lifter.curves={name}");
        let band = format!("{name}:1");
        let arguments: Vec<&str> = match kind {
            "lifters" => [&curve[..], &["--lifter", name]].concat(),
            "movements" => vec!["curve", name, "--samples", "5", "--load", "5 kg"],
            "muscles" => [&curve[..], &["--set", &muscles]].concat(),
            "segments" => [&curve[..], &["--set", &segments]].concat(),
            "curves" => [&curve[..], &["--set", &curves]].concat(),
            "bands" => vec![
                "curve",
                "squat",
                "--samples",
                "5",
                "--load",
                "40 kg",
                "--band",
                &band,
            ],
            "chains" => vec![
                "curve",
                "squat",
                "--samples",
                "5",
                "--load",
                "40 kg",
                "--chain",
                &band,
            ],
            "gyms" => vec![
                "pick",
                "bench-press",
                "--gym",
                name,
                "--top",
                "1",
                "--samples",
                "21",
            ],
            "setups" => vec!["curve", "bench-press", "--samples", "5", "--setup", &setup],
            _ => continue,
        };
        let own = [&arguments[..], &["--models", "own", "--format", "json"]].concat();
        let answer = crate::calling::call_in(folder.path(), &own);
        assert_eq!(answer.status, 0, "{own:?}: {}", answer.complaint);
    }
}

/// The sections of the guide by the folder in their headings, and the one on files in general under an empty name.
fn sections() -> BTreeMap<String, String> {
    let text = text();
    let mut found = BTreeMap::new();
    for section in text.split("\n## ").skip(1) {
        let heading = section.lines().next().unwrap_or_default();
        let name = heading
            .split_once("(`")
            .and_then(|(_, rest)| rest.split_once("/`)"))
            .map_or("", |(name, _)| name);
        let held: &mut String = found.entry(name.to_owned()).or_default();
        held.push_str(section);
    }
    found
}

/// The names in backticks in the first column of the tables of a section that list fields.
fn fields_named(section: &str) -> BTreeSet<String> {
    let mut inside = false;
    let mut found = BTreeSet::new();
    for line in section.lines() {
        let Some(rest) = line.strip_prefix("| ") else {
            inside = false;
            continue;
        };
        let first = rest.split(" | ").next().unwrap_or_default();
        if first == "field" {
            inside = true;
        } else if inside {
            found.extend(first.split('`').skip(1).step_by(2).map(str::to_owned));
        }
    }
    found
}

/// The sections that a kind's readers lean on besides its own.
fn leans_on(shelf: Shelf) -> &'static [&'static str] {
    match shelf {
        Shelf::Gyms | Shelf::Setups => &["bands", "chains"],
        _ => &[],
    }
}

#[test]
fn law_every_field_of_the_readers_is_named_and_no_other() {
    let sections = sections();
    for shelf in Shelf::ALL {
        let known: BTreeSet<String> = records_of(shelf)
            .records
            .values()
            .flat_map(|fields| fields.iter().map(|field| (*field).to_owned()))
            .collect();
        let own = fields_named(&sections[shelf.folder()]);
        let others = leans_on(shelf)
            .iter()
            .map(|name| fields_named(&sections[*name]));
        let all: BTreeSet<String> = others.flatten().chain(own.clone()).collect();
        let lacking: Vec<&String> = known.difference(&all).collect();
        let foreign: Vec<&String> = own.difference(&known).collect();
        assert!(lacking.is_empty(), "{} lacks {lacking:?}", shelf.folder());
        assert!(
            foreign.is_empty(),
            "{}: no reader knows {foreign:?}",
            shelf.folder()
        );
    }
}

#[test]
fn law_every_word_of_a_choice_is_named_in_its_section() {
    let sections = sections();
    for shelf in Shelf::ALL {
        let names = [&["", shelf.folder()], leans_on(shelf)].concat();
        let texts: String = names.iter().map(|name| sections[*name].as_str()).collect();
        // Words in the guide's code: whole, or with their brackets.
        let code: Vec<&str> = texts.split('`').skip(1).step_by(2).collect();
        let is_named = |word: &str| {
            code.iter().any(|code| {
                code.split(|c: char| !c.is_alphanumeric() && c != '_')
                    .any(|part| part == word)
            })
        };
        for (choice, words) in records_of(shelf).choices {
            for word in words {
                assert!(is_named(word), "{}: `{word}` of {choice}", shelf.folder());
            }
        }
    }
}
