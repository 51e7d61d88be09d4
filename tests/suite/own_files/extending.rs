//! Files that extend others: what they change and nothing else, faults in the file they stand in, no circle.

use super::{folder, library, words};
use crate::calling::call_in;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use torquill::library::{Library, Shelf, assemble};

#[test]
fn law_a_file_that_changes_nothing_is_the_file_that_it_extends() {
    let library = Library::built_in();
    for shelf in Shelf::ALL
        .into_iter()
        .filter(|shelf| *shelf != Shelf::Published)
    {
        for name in library.names(shelf) {
            let (file, text) = library.text(shelf, &name).expect("it is shipped");
            let plain = library
                .check_text(Some(shelf), &file, &text)
                .expect("sound");
            let extending = format!("(extends: \"{name}\")");
            let own = library.check_text(Some(shelf), "mine.ron", &extending);
            let own =
                own.unwrap_or_else(|error| panic!("{name}: {}", crate::calling::said(&error)));
            assert_eq!(own.facts, plain.facts, "{name}");
            assert_eq!(own.extends, [file], "{name}");
        }
    }
}

/// `Sweep(joint: …)` is read as `Sweep((joint: …))`, and a fault in it stands where it is written.
#[test]
fn law_one_pair_of_brackets_is_read_as_two() {
    let library = Library::built_in();
    for name in library.names(Shelf::Movements) {
        let (file, text) = library.text(Shelf::Movements, &name).expect("shipped");
        let plain = library
            .check_text(Some(Shelf::Movements), &file, &text)
            .expect("sound");
        let (before, path) = text.split_once("    path: ").expect("a path");
        let single = path
            .replacen("((", "(", 1)
            .replacen("\n    )),", "\n    ),", 1);
        assert_ne!(single, path, "{name}");
        let own = format!("{before}    path: {single}");
        let read = library.check_text(Some(Shelf::Movements), "mine.ron", &own);
        let read = read.unwrap_or_else(|error| panic!("{name}: {}", crate::calling::said(&error)));
        assert_eq!(read.facts, plain.facts, "{name}");
        assert_eq!(read.doubts, [], "{name}");
    }
}

/// What is unlikely only together with the file's own values is told in it and not in the sound file that it extends; and
/// a lift that leaves its title to that file is marked.
#[test]
fn regress_what_follows_from_own_values_is_told_in_the_own_file() {
    let text = "(extends: \"biceps-curl\", technique: {\"shoulder_angle\": (value: Angle(\"-35 deg\"), source: Assumed(\"x\"))})";
    let checked = super::check(Shelf::Movements, text).expect("it can be used");
    let place = checked.doubts[0].place.clone().expect("a place");
    assert_eq!((place.file.as_str(), place.start), ("mine.ron", (1, 11)));
    let folder = folder(&[("movements/half.ron", text)]);
    let half = library(&folder).movement("half").expect("sound");
    assert_eq!(half.title, "Biceps curl (changed)");
}

/// A changed value gives the same model as the same value in a copy of the whole file, and as `--set` does.
#[test]
fn law_a_changed_value_is_as_in_a_copy_of_the_whole_file() {
    let mut random = ChaCha8Rng::seed_from_u64(31);
    let shipped = Library::built_in()
        .text(Shelf::Lifters, "reference-man")
        .expect("shipped")
        .1;
    let present = shipped
        .split_once("\"elbow_flexors\": ")
        .and_then(|(_, after)| after.split_once(','))
        .expect("a strength")
        .0;
    for _ in 0..20 {
        let height = format!("{} cm", random.random_range(160..195));
        let strength = f64::from(random.random_range(80..120_u32)) / 100.0;
        let copy = shipped
            .replace("\"174.1 cm\"", &format!("\"{height}\""))
            .replace(
                &format!("\"elbow_flexors\": {present},"),
                &format!("\"elbow_flexors\": {strength},"),
            );
        let own = format!(
            "(extends: \"reference-man\", height: \"{height}\", strength: {{\"elbow_flexors\": {strength}}})"
        );
        let folder = folder(&[("lifters/copy.ron", &copy), ("lifters/own.ron", &own)]);
        let library = library(&folder);
        let mut copied = library.lifter("copy").expect("sound");
        copied.name = "own".to_owned();
        assert!(library.lifter("own").expect("sound") == copied);
        let sets = [
            format!("lifter.height={height}"),
            format!("lifter.strength.elbow_flexors={strength}"),
        ];
        let set = assemble(&library, "reference-man", "squat", &sets)
            .expect("sound")
            .lifter;
        // What is set on the command line is marked, what a file of the user's own says is not.
        copied.name = set.name.clone();
        copied.title = set.title.clone();
        assert!(set == copied);
    }
}

#[test]
fn regress_a_muscle_is_added_changed_and_taken_out() {
    let text = r#"(
        extends: "reference",
        muscles: {
            "brachialis": (peak_force: "1000 N"),
            "soleus": None,
            "second_soleus": (
                peak_force: "3000 N", optimal_fibre_length: "4 cm", pennation: "25 deg",
                max_velocity: 10.0, velocity_source: Assumed("as others"), group: "plantarflexors", along: shank,
                moment_arm: {ankle: (shape: Constant("-5 cm"), source: Assumed("an example"))},
                reference: [(at: {}, fibre_length: 1.0, source: Assumed("an example"))],
                source: Assumed("an example"),
            ),
        },
    )"#;
    let own = "(extends: \"reference-man\", muscles: \"mine\")";
    let folder = folder(&[("muscles/mine.ron", text), ("lifters/me.ron", own)]);
    let (lifter, plain) = (
        library(&folder).lifter("me").expect("sound"),
        Library::built_in().lifter("reference-man").expect("sound"),
    );
    assert!(!lifter.muscles.contains_key("soleus"));
    assert!(lifter.muscles.contains_key("second_soleus"));
    assert_eq!(lifter.muscles.len(), plain.muscles.len());
    let changed = &lifter.muscles["brachialis"];
    assert_ne!(changed.peak_force, plain.muscles["brachialis"].peak_force);
    assert_eq!(changed.pennation, plain.muscles["brachialis"].pennation);
    assert!(lifter.muscles["biceps_long"] == plain.muscles["biceps_long"]);
}

#[test]
fn regress_a_file_may_bear_the_name_of_the_one_it_extends_and_files_stand_on_files() {
    let folder = folder(&[
        (
            "lifters/reference-man.ron",
            "(extends: \"reference-man\", height: \"180 cm\")",
        ),
        (
            "lifters/heavier.ron",
            "(extends: \"reference-man\", body_mass: \"90 kg\")",
        ),
        (
            "lifters/by-path.ron",
            "(extends: \"heavier.ron\", title: \"By path\")",
        ),
    ]);
    let lifter = library(&folder).lifter("by-path").expect("sound");
    assert!((lifter.height.as_cm() - 180.0).abs() < 1e-9);
    assert!((lifter.body_mass.as_kg() - 90.0).abs() < 1e-9);
    assert_eq!(lifter.title, "By path");
}

#[test]
fn fault_a_circle_and_a_name_that_leads_nowhere_are_refused_at_their_place() {
    let folder = folder(&[
        ("lifters/one.ron", "(\n    extends: \"two\",\n)"),
        ("lifters/two.ron", "(extends: \"three\")"),
        ("lifters/three.ron", "(extends: \"one\")"),
        ("lifters/self.ron", "(extends: \"self\")"),
        ("lifters/lost.ron", "(\n    extends: \"reference-men\",\n)"),
        ("lifters/none.ron", "(extends: reference_man)"),
    ]);
    let library = library(&folder);
    let fault = |name: &str| {
        let error = library.lifter(name).expect_err("it cannot be read");
        assert_eq!(
            (error.exit_status(), error.faults().len()),
            (2, 1),
            "{name}"
        );
        error.faults()[0].clone()
    };
    let circle = words(&fault("one"));
    assert!(
        circle.starts_with("files extend one another in a circle: "),
        "{circle}"
    );
    assert_eq!(circle.matches("one.ron").count(), 2, "{circle}");
    assert!(words(&fault("self")).contains("circle"));
    let lost = fault("lost");
    assert_eq!(lost.place.as_ref().expect("a place").start, (2, 14));
    assert_eq!(
        words(&lost),
        "no lifter is called `reference-men`, so it cannot be extended; did you mean `reference-man`?"
    );
    assert!(words(&fault("none")).contains("`extends` holds no name"));
}

#[test]
fn fault_each_fault_stands_in_the_file_that_holds_it() {
    let base = "(\n    extends: \"reference-man\",\n    height: \"17 m\",\n)";
    let own = "(\n    extends: \"base\",\n    title: \"Mine\",\n    body_mass: \"800 kg\",\n    hight: \"1 m\",\n)";
    let folder = folder(&[("lifters/base.ron", base), ("lifters/own.ron", own)]);
    let path = folder.path().join("lifters/own.ron");
    let error = library(&folder)
        .check_file(&path)
        .expect_err("three things are wrong");
    let places: Vec<(bool, usize)> = error
        .faults()
        .iter()
        .map(|fault| {
            let place = fault.place.as_ref().expect("each stands somewhere");
            (place.file.ends_with("own.ron"), place.start.0)
        })
        .collect();
    assert_eq!(places, [(true, 4), (true, 5), (false, 3)]);
}

/// Whatever is written over a file, faults stand in the texts of their files and nothing panics.
#[test]
fn fault_random_texts_over_a_file_do_no_harm() {
    let mut random = ChaCha8Rng::seed_from_u64(32);
    let library = Library::built_in();
    let pieces = [
        "path",
        "technique",
        "value",
        "Sweep",
        "(",
        ")",
        "{",
        "}",
        "[",
        "]",
        ":",
        ",",
        "\"a\"",
        "1.0",
        "None",
        "Some(",
        "extends",
        "\"biceps-curl\"",
        "elbow",
        "from",
        "\"5 deg\"",
        "Angle(",
    ];
    for _ in 0..300 {
        let count = random.random_range(1..25);
        let own: Vec<&str> = (0..count)
            .map(|_| pieces[random.random_range(0..pieces.len())])
            .collect();
        let text = format!("(extends: \"biceps-curl\", {})", own.join(" "));
        let Err(error) = library.check_text(Some(Shelf::Movements), "x.ron", &text) else {
            continue;
        };
        for place in error
            .faults()
            .iter()
            .filter_map(|fault| fault.place.as_ref())
        {
            assert!(place.bytes().end <= place.text.len(), "{text}");
        }
    }
}

/// A source that a file names is of what the file says itself: what it takes over keeps the source that it has there.
#[test]
fn law_what_is_taken_over_keeps_its_source() {
    let muscles = r#"(extends: "reference", muscles: {"soleus": (pennation: "25 deg", source: Assumed("my ultrasound"))})"#;
    let lifter =
        r#"(extends: "reference-man", height: "190 cm", source: Assumed("measured at home"))"#;
    let squat = r#"(extends: "squat", path: (end_knee: "12 deg", source: Assumed("mine")))"#;
    let folder = folder(&[
        ("muscles/reference.ron", muscles),
        ("lifters/tall.ron", lifter),
        ("movements/squat.ron", squat),
    ]);
    let listed = |words: &[&str]| {
        let words = [
            &["parameters"],
            words,
            &["--models", ".", "--format", "json"],
        ]
        .concat();
        let listed = call_in(folder.path(), &words).done().json();
        let rows = listed["values"].as_array().cloned();
        rows.unwrap_or_else(|| panic!("{listed}"))
    };
    let mut own = 0;
    for (words, source, named) in [
        (
            &["calf-raise", "--find", "soleus"][..],
            "my ultrasound",
            &["muscles.soleus.pennation"][..],
        ),
        (
            &["squat", "--lifter", "tall", "--find", "lifter"],
            "measured at home",
            &["lifter.height"],
        ),
        (
            &["squat", "--find", "path"],
            "mine",
            &["movement.path.end_knee"],
        ),
    ] {
        for row in listed(words) {
            let path = row["path"].as_str().expect("a path");
            let is_said = row["source"].to_string().contains(source);
            let is_own = named.contains(&path);
            assert_eq!(is_said, is_own, "{path}: {row}");
            own += usize::from(is_own);
        }
    }
    assert_eq!(own, 3, "each of the own values is listed");
}
