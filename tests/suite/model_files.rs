//! The model files that are shipped: each is sound, each number has a source, all fit together.

use ron::Value;
use ron::extensions::Extensions;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use torquill::library::{Library, Shelf, assemble};
use torquill::movement::trace;
use torquill::units::{Angle, Duration, Force, Length, LinearDensity, Mass, Speed, Stress, Torque};

/// Every `.ron` file below `models/`.
fn shipped() -> Vec<PathBuf> {
    let mut files = Vec::new();
    let mut folders = vec![PathBuf::from("models")];
    while let Some(folder) = folders.pop() {
        for entry in std::fs::read_dir(&folder).expect("models/ is in the repository") {
            let path = entry.expect("a file can be listed").path();
            if path.is_dir() {
                folders.push(path);
            } else if path.extension().is_some_and(|extension| extension == "ron") {
                files.push(path);
            }
        }
    }
    files.sort();
    files
}

#[test]
fn law_every_shipped_file_is_sound() {
    let library = Library::built_in();
    let faults: Vec<String> = shipped()
        .iter()
        .filter_map(|path| library.check_file(path).err())
        .map(|error| torquill::cli::render(&error, torquill::units::System::Metric, false))
        .collect();
    assert!(faults.is_empty(), "{}", faults.join("\n\n"));
}

#[test]
fn law_the_program_holds_the_files_of_the_folder_and_no_others() {
    let library = Library::built_in();
    for shelf in Shelf::ALL {
        let folder = Path::new("models").join(shelf.folder());
        let on_disk: Vec<String> = shipped()
            .iter()
            .filter(|path| path.parent() == Some(&folder))
            .filter_map(|path| Some(path.file_stem()?.to_str()?.to_owned()))
            .collect();
        assert_eq!(library.names(shelf), on_disk, "{}", shelf.folder());
        for name in on_disk {
            let kebab = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '-';
            assert!(name.chars().all(kebab), "{name} is not in kebab case");
        }
    }
}

/// Whether a value is a number, or a text that is a quantity.
fn is_number(value: &Value) -> bool {
    match value {
        Value::Number(_) => true,
        Value::String(text) => {
            Length::from_text(text).is_ok()
                || Mass::from_text(text).is_ok()
                || Angle::from_text(text).is_ok()
                || Force::from_text(text).is_ok()
                || Torque::from_text(text).is_ok()
                || Stress::from_text(text).is_ok()
                || LinearDensity::from_text(text).is_ok()
                || Speed::from_text(text).is_ok()
                || Duration::from_text(text).is_ok()
        }
        _ => false,
    }
}

/// Notes the paths of numbers that no record around them names a source for, and counts the others.
fn unsourced(value: &Value, path: &str, sourced: bool, found: &mut Vec<String>, count: &mut usize) {
    match value {
        Value::Map(map) => {
            let names = |key: &Value| matches!(key, Value::String(name) if is_source(name));
            let sourced = sourced || map.keys().any(names);
            for (key, part) in map.iter() {
                let name = match key {
                    Value::String(name) => name.clone(),
                    other => format!("{other:?}"),
                };
                if !is_source(&name) {
                    unsourced(part, &format!("{path}.{name}"), sourced, found, count);
                }
            }
        }
        Value::Seq(items) => {
            for (index, item) in items.iter().enumerate() {
                unsourced(item, &format!("{path}.{index}"), sourced, found, count);
            }
        }
        Value::Option(Some(inner)) => unsourced(inner, path, sourced, found, count),
        number if is_number(number) => {
            *count += 1;
            if !sourced {
                found.push(path.to_owned());
            }
        }
        _ => {}
    }
}

fn is_source(field: &str) -> bool {
    field == "source" || field.ends_with("_source") || field.ends_with("_sources")
}

fn tree(text: &str) -> Value {
    ron::Options::default()
        .with_default_extension(Extensions::IMPLICIT_SOME)
        .from_str(text)
        .expect("shipped files are sound")
}

#[test]
fn law_every_number_stands_in_a_record_that_names_its_source() {
    let mut found = Vec::new();
    let mut count = 0;
    for path in shipped()
        .iter()
        .filter(|path| !path.ends_with("sources.ron"))
    {
        let text = std::fs::read_to_string(path).expect("shipped files can be read");
        let before = count;
        unsourced(
            &tree(&text),
            &path.display().to_string(),
            false,
            &mut found,
            &mut count,
        );
        // Classes are words; their record names its source all the same.
        let has_words_only = path.ends_with("calibration/published_classes.ron");
        assert!(
            count > before || has_words_only,
            "{} holds no number that was seen",
            path.display()
        );
    }
    assert!(found.is_empty(), "without a source:\n{}", found.join("\n"));
    assert!(count > 500, "only {count} numbers were seen");
}

#[test]
fn fault_a_number_without_a_source_would_be_noticed() {
    let text = r#"(a: (mass: "3 kg", source: Assumed("x")), b: (mass: "3 kg"), c: [1.0], d: Point("2 cm"))"#;
    let (mut found, mut count) = (Vec::new(), 0);
    unsourced(&tree(text), "f", false, &mut found, &mut count);
    assert_eq!(found.len(), 3, "{found:?}");
    assert_eq!(count, 4);
}

#[test]
fn law_every_lifter_can_do_every_movement() {
    let library = Library::built_in();
    for lifter in library.names(Shelf::Lifters) {
        for movement in library.movements() {
            let model = assemble(&library, &lifter, &movement, &[])
                .unwrap_or_else(|error| panic!("{lifter}, {movement}: {error}"));
            let range = trace(&model.movement, &model.lifter, 21)
                .unwrap_or_else(|error| panic!("{lifter}, {movement}: {error}"));
            assert_eq!(range.poses.len(), 21);
        }
    }
}

#[test]
fn law_publications_are_told_apart_and_complete() {
    let sources = Library::built_in().sources().expect("sources.ron is sound");
    let citations: BTreeSet<&str> = sources.values().map(|s| s.citation.as_str()).collect();
    assert_eq!(citations.len(), sources.len(), "two keys for one citation");
    for (key, publication) in &sources {
        assert!(!publication.used_for.trim().is_empty(), "{key}");
    }
}

#[test]
fn regress_the_published_tables_are_read_once() {
    let library = Library::built_in();
    let published = library.published().expect("the shipped tables are sound");
    let again = library.clone();
    assert!(std::ptr::eq(
        published,
        again.published().expect("they were read")
    ));
    assert_eq!(published.repetitions.chart.rows.len(), 13);
}

#[test]
fn law_a_published_table_of_the_users_own_is_used_in_place_of_the_built_in_one() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    std::fs::create_dir_all(folder.path().join("published")).expect("a folder can be made");
    let file = folder.path().join("published/rests.ron");
    let shipped = std::fs::read_to_string("models/published/rests.ron").expect("it ships");
    std::fs::write(&file, shipped.replace("\"180 s\"", "\"200 s\"")).expect("it can be written");
    let library = Library::with_dir(folder.path()).expect("a folder of models");
    let heavy = &library.published().expect("sound tables").rests.heavy;
    assert_eq!(heavy.least, Duration::from_s(200.0));
    assert!(library.check_file(&file).is_ok());
    std::fs::write(&file, shipped.replace("\"180 s\"", "\"900 s\"")).expect("it can be written");
    let fault = library
        .check_file(&file)
        .expect_err("shortest above longest");
    let told = torquill::cli::render(&fault, torquill::units::System::Metric, false);
    assert!(
        told.contains("`heavy` does not rise: 900 is followed by 300"),
        "{told}"
    );
}
