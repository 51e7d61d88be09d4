//! The library: names, folders, settings by path; laws of settings and of broken texts.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::path::Path;
use torquill::anatomy::{Dof, SegmentName, Sex};
use torquill::error::{Error, Result};
use torquill::library::{Library, Model, Shelf, Workbench, assemble, get, nearest, numeric_paths};

fn with(sets: &[&str]) -> Result<Model> {
    let sets: Vec<String> = sets.iter().map(|set| (*set).to_owned()).collect();
    assemble(&Library::built_in(), "reference-man", "bench-press", &sets)
}

fn plain() -> Model {
    with(&[]).expect("the built-in files are sound")
}

/// What a faulty set of settings is told: message and next moves of every fault.
fn told(sets: &[&str]) -> String {
    let error = with(sets).expect_err("this cannot be set");
    assert_eq!(error.exit_status(), 2);
    said(&error)
}

fn said(error: &Error) -> String {
    let lines = error.faults().iter().flat_map(|fault| {
        let told = torquill::narrative::faults::told(fault, torquill::units::System::Metric);
        let moves = told.hints.into_iter().map(|hint| format!("  {hint}"));
        std::iter::once(told.message)
            .chain(moves)
            .collect::<Vec<_>>()
    });
    lines.collect::<Vec<_>>().join("\n")
}

fn value(model: &Model, path: &str) -> f64 {
    get(model, path).expect("the path leads to a number").value
}

#[test]
fn fault_unknown_names_are_answered_with_the_nearest_or_with_all() {
    let library = Library::built_in();
    let lifter = library
        .lifter("reference-mann")
        .expect_err("nobody is called that");
    assert_eq!(
        said(&lifter),
        "no lifter is called `reference-mann`\n  did you mean `reference-man`?"
    );
    let movement = said(
        &library
            .movement("Biceps_Curl")
            .expect_err("names are in kebab case"),
    );
    assert!(
        movement.ends_with("did you mean `biceps-curl`?"),
        "{movement}"
    );
    let far = said(&library.movement("xyzzy").expect_err("no such movement"));
    assert!(
        far.contains("known: ") && far.contains("lateral-raise"),
        "{far}"
    );
    assert!(library.sarcomere("human").is_ok());
    assert!(library.sarcomere("humans").is_err());
    let pieces = library.pieces().expect("they are sound");
    let band = &pieces.stock().bands["loop-29mm"];
    assert_eq!(band.name(), "loop-29mm");
    let chain = said(
        &library
            .text(Shelf::Chains, "chain-12mm")
            .expect_err("12 mm is not sold"),
    );
    assert!(chain.contains("did you mean"), "{chain}");
}

#[test]
fn regress_nearest_names_come_nearest_first() {
    let known = ["biceps_long", "biceps_short", "triceps_long", "brachialis"];
    assert_eq!(nearest("bicep_long", &known), ["biceps_long"]);
    assert_eq!(nearest("Biceps Short", &known), ["biceps_short"]);
    assert_eq!(nearest("biceps", &known), ["biceps_long", "biceps_short"]);
    assert!(nearest("quadriceps_of_another", &known).is_empty());
}

#[test]
fn regress_a_folder_adds_files_and_replaces_those_of_the_same_name() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    let lifters = folder.path().join("lifters");
    std::fs::create_dir(&lifters).expect("a folder can be made");
    let text = std::fs::read_to_string("models/lifters/reference-man.ron").expect("it is shipped");
    let taller = text.replace("174.1 cm", "190 cm");
    assert_ne!(taller, text);
    std::fs::write(lifters.join("reference-man.ron"), &taller).expect("a file can be written");
    std::fs::write(lifters.join("my-own.ron"), &text).expect("a file can be written");
    let library = Library::with_dir(folder.path()).expect("the folder is there");
    let height_cm = |name: &str| library.lifter(name).expect("sound").height.as_cm();
    assert!((height_cm("reference-man") - 190.0).abs() < 1e-9);
    assert!((height_cm("my-own") - 174.1).abs() < 1e-9);
    assert!(
        library.lifter("reference-woman").is_ok(),
        "built-in files stay"
    );
    let names = library.names(Shelf::Lifters);
    assert!(names.contains(&"my-own".to_owned()) && names.contains(&"club-lifter".to_owned()));
    let by_path = lifters.join("my-own.ron").display().to_string();
    let by_path = library
        .lifter(&by_path)
        .expect("a path does as well as a name");
    assert!(by_path == library.lifter("my-own").expect("sound"));
    assert_eq!(by_path.name, "my-own");
}

#[test]
fn fault_a_folder_that_cannot_be_read_is_told_so() {
    let error = Library::with_dir("no/such/folder").expect_err("there is no such folder");
    assert_eq!(error.exit_status(), 2);
    assert!(said(&error).starts_with("cannot read the folder of models `no/such/folder`"));
    assert!(
        Library::with_dir("Cargo.toml").is_err(),
        "a file is no folder"
    );
    let other = said(&Library::with_dir("tests").expect_err("it holds no models"));
    assert!(
        other.starts_with("`tests` holds none of the folders"),
        "{other}"
    );
}

#[test]
fn fault_a_faulty_file_of_the_folder_is_told_with_its_place() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    std::fs::create_dir(folder.path().join("lifters")).expect("a folder can be made");
    let text = std::fs::read_to_string("models/lifters/reference-man.ron").expect("it is shipped");
    let path = folder.path().join("lifters/reference-man.ron");
    std::fs::write(&path, text.replace("174.1 cm", "17.41 m")).expect("a file can be written");
    let library = Library::with_dir(folder.path()).expect("the folder is there");
    let error = library
        .lifter("reference-man")
        .expect_err("nobody is that tall");
    let place = error.faults()[0].place.as_ref().expect("the file is known");
    assert_eq!(Path::new(&place.file), path);
    assert_eq!(&place.text[place.bytes()], "\"17.41 m\"");
}

#[test]
fn regress_quantities_numbers_words_and_changes_are_set_by_path() {
    let cases = [
        ("technique.grip_width=60 cm", "technique.grip_width", 0.6),
        (
            "technique.grip_width=\"60 cm\"",
            "technique.grip_width",
            0.6,
        ),
        (
            "technique.grip_width=1.5 shoulder breadths",
            "technique.grip_width",
            1.5,
        ),
        (
            "technique.tuck=45deg",
            "technique.tuck",
            std::f64::consts::FRAC_PI_4,
        ),
        ("technique.touch_point=5 cm", "technique.touch_point", 0.05),
        (
            "segments.upper_arm.length=34 cm",
            "segments.upper_arm.length",
            0.34,
        ),
        (
            "muscles.triceps_long.max_velocity = 8",
            "muscles.triceps_long.max_velocity",
            8.0,
        ),
        ("curves.velocity.hill_a=0.3", "curves.velocity.hill_a", 0.3),
        ("movement.path.friction=0.3", "movement.path.friction", 0.3),
        (
            "movement.path.end.forward=5 cm",
            "movement.path.end.forward",
            0.05,
        ),
        (
            "movement.path.end.forward=0.1 body heights",
            "movement.path.end.forward",
            0.1,
        ),
        (
            "joints.elbow.low_torque=20 N·m",
            "joints.elbow.low_torque",
            20.0,
        ),
        (
            "lifter.body_mass=180 lb",
            "lifter.body_mass",
            180.0 * 0.453_592_37,
        ),
        (
            "lifter.strength.deltoids=1.1",
            "lifter.strength.deltoids",
            1.1,
        ),
    ];
    for (set, path, expected) in cases {
        let model = with(&[set]).unwrap_or_else(|error| panic!("{set}: {error}"));
        assert!((value(&model, path) - expected).abs() < 1e-12, "{set}");
    }
    let percent = [("+10%", 1.1), ("-5 %", 0.95), ("\u{2212}5%", 0.95)];
    for path in [
        "muscles.biceps_long.moment_arm.elbow",
        "technique.grip_width",
        "lifter.height",
    ] {
        for (change, factor) in percent {
            let model = with(&[&format!("{path}={change}")]).expect("a change of a number");
            let expected = factor * value(&plain(), path);
            assert!(
                (value(&model, path) - expected).abs() < 1e-12,
                "{path}={change}"
            );
        }
    }
}

#[test]
fn regress_words_and_places_are_set_by_path() {
    let model = with(&["movement.sides=One", "muscles.biceps_long.along=forearm"]).expect("words");
    assert_eq!(model.movement.sides, torquill::movement::Sides::One);
    assert_eq!(
        model.lifter.muscles["biceps_long"].along,
        SegmentName::Forearm
    );
    let twice = with(&["technique.touch_point=5 cm", "technique.touch_point=free"]);
    assert!(said(&twice.expect_err("one place, two values")).contains("twice"));
    let same = with(&["technique.touch_point=free"]).expect("it is free already");
    assert!(same == plain());
    let constant = with(&["muscles.rectus_femoris.moment_arm.hip=3 cm"]).expect("a length");
    let arm = &constant.lifter.muscles["rectus_femoris"].moment_arm[&Dof::Hip];
    assert!((arm.curve().expect("a constant").at(1.0) - 0.03).abs() < 1e-12);
    let wrapped = with(&["muscles.biceps_long.shoulder.wrap=3 cm"]).expect("a radius");
    let line = wrapped.lifter.muscles["biceps_long"].shoulder.as_ref();
    assert!((line.expect("a line").wrap.as_m() - 0.03).abs() < 1e-12);
}

#[test]
fn law_a_new_height_or_mass_rescales_the_body_and_a_new_segment_does_not() {
    let (old, tall) = (
        plain(),
        with(&["lifter.height=+10%"]).expect("191.5 cm is a height"),
    );
    for name in SegmentName::ALL {
        let ratio =
            tall.lifter.segment(name).length.as_m() / old.lifter.segment(name).length.as_m();
        assert!((ratio - 1.1).abs() < 1e-12, "{}", name.name());
    }
    let arm = "muscles.biceps_long.moment_arm.elbow";
    assert!((value(&tall, arm) / value(&old, arm) - 1.1).abs() < 1e-12);
    let heavy = with(&["lifter.body_mass=+10%"]).expect("80.3 kg is a mass");
    let force = "muscles.biceps_long.peak_force";
    let ratio = value(&heavy, force) / value(&old, force);
    assert!(
        (ratio - 1.1).abs() < 1e-12,
        "a muscle's volume goes with mass"
    );
    let alike = with(&["lifter.height=+10%", "lifter.body_mass=+33.1%"]).expect("a larger body");
    let ratio = value(&alike, force) / value(&old, force);
    assert!(
        (ratio - 1.331_f64.powf(2.0 / 3.0)).abs() < 1e-12,
        "at one build force goes with the section"
    );
    let long = with(&["segments.upper_arm.length=+10%"]).expect("31 cm is a length");
    assert!((value(&long, arm) - value(&old, arm)).abs() < 1e-15);
}

#[test]
fn regress_a_strength_group_that_the_file_leaves_out_can_be_set() {
    let folder = tempfile::tempdir().expect("a folder can be made");
    let path = folder.path().join("plain.ron");
    let text = r#"(title: "Plain", invented: true, sex: Man, height: "174.1 cm", body_mass: "73 kg",
        training: Novice, segments: "de-leva-men", muscles: "reference", curves: "default",
        strength: {}, strength_sources: {}, strength_scale: 1.0, source: Invented("an example"))"#;
    std::fs::write(&path, text).expect("a file can be written");
    let file = path.display().to_string();
    let model = |sets: &[String]| assemble(&Library::built_in(), &file, "bench-press", sets);
    let force = "muscles.biceps_long.peak_force";
    let set = ["lifter.strength.elbow_flexors=1.5".to_owned()];
    let (weak, strong) = (
        model(&[]).expect("sound"),
        model(&set).expect("a known group"),
    );
    assert!((value(&strong, force) / value(&weak, force) - 1.5).abs() < 1e-12);
}

#[test]
fn fault_settings_that_do_not_fit_say_which_part_and_offer_the_nearest() {
    let library = Library::built_in();
    let hill_a = library.fitted(Sex::Man, "curves.velocity.hill_a");
    let hill_a = hill_a.expect("a sound file").expect("it is fitted").value;
    let hill_a_told = format!(
        "`curves.velocity.hill_a`: `NaN` is no number\n  it is {hill_a} now: a plain number without a unit, or a change such as +10%"
    );
    let cases = [
        (
            "technique.gripwidth=60 cm",
            "`technique.gripwidth`: nothing in `technique` is called `gripwidth`\n  did you mean `grip_width`?",
        ),
        (
            "technique.tuck=60 cm",
            "`technique.tuck`: `60 cm` is no angle: units of angle are rad, deg",
        ),
        (
            "technique.tuck=free",
            "`technique.tuck`: cannot be left free in this movement",
        ),
        (
            "technique.touch_point=+5%",
            "`technique.touch_point`: is left free, so there is no number to change\n  give it a value first",
        ),
        (
            "muscles.bicep_long.pennation=1 deg",
            "`muscles.bicep_long.pennation`: nothing in `muscles` is called `bicep_long`\n  did you mean `biceps_long`?",
        ),
        (
            "muscles.biceps_long.moment_arm.elbow=3 cm",
            "`muscles.biceps_long.moment_arm.elbow`: is a course over the joint angle, not one value\n  change it as a whole, such as +10%",
        ),
        (
            "segments.upper_arm.length=34",
            "`segments.upper_arm.length`: `34` has no unit; write a length with its unit, such as \"26 cm\"",
        ),
        (
            "segments.upper_arm.length=34 kg",
            "`segments.upper_arm.length`: `34 kg` is no length: units of length are m, cm, mm, in, ft",
        ),
        (
            "segments.upper_arm.length=-34 cm",
            "`segments.upper_arm.length` is -34 cm; it must lie between 1 and 150 cm",
        ),
        (
            "lifter.segments.upper_arm.length=34 cm",
            "`lifter.segments.upper_arm.length`: `lifter.segments` is a single value, so it has no `upper_arm`\n  did you mean `segments.upper_arm.length`?",
        ),
        (
            "lifter.height=+90%",
            "`lifter.height` is 3.3079 m; it must lie between 1.2 and 2.3 m",
        ),
        (
            "lifter.training=Expert",
            "`lifter.training`: cannot be `Expert`\n  known words here: Novice, Intermediate, Advanced",
        ),
        (
            "lifter.curves=defalt",
            "`lifter.curves` is `defalt`, and no set of curves is called that\n  did you mean `default`?",
        ),
        (
            "lifter.strength.delts=1.1",
            "`lifter.strength.delts`: nothing in `lifter.strength` is called `delts`\n  known: cuff, deltoids, dorsiflexors, elbow_extensors, elbow_flexors, hip_extensors, hip_flexors, horizontal_adductors, knee_extensors, knee_flexors, plantarflexors, shoulder_extensors, trunk_extensors",
        ),
        (
            "muscles.biceps_long.along=forarm",
            "`muscles.biceps_long.along`: cannot be `forarm`\n  did you mean `forearm`?\n  known words here: head, trunk, upper_arm, forearm, hand, thigh, shank, foot",
        ),
        (
            "muscles.biceps_long.peak_force=0 N",
            "`muscles.biceps_long.peak_force` is 0 N; it must be above 0 and at most 50000 N",
        ),
        ("curves.velocity.hill_a=NaN", hill_a_told.as_str()),
        (
            "muskles.biceps_long.pennation=1 deg",
            "`muskles.biceps_long.pennation`: no path begins with `muskles`\n  did you mean `muscles`?\n  paths begin with: lifter, segments, muscles, joints, build, curves, technique, movement",
        ),
        (
            "technique=3",
            "`technique` is a group of values, not one\n  go on with technique.NAME",
        ),
        (
            "muscles.brachialis.reference.7.fibre_length=1",
            "`muscles.brachialis.reference.7.fibre_length`: nothing in `muscles.brachialis.reference` has the number `7`\n  its items are numbered 0 to 0",
        ),
        (
            "grip",
            "`grip` sets nothing: expected PATH=VALUE\n  for example technique.grip_width=\"60 cm\" or segments.upper_arm.length=+5%",
        ),
    ];
    for (set, expected) in cases {
        assert_eq!(told(&[set]), expected, "{set}");
    }
}

#[test]
fn fault_all_settings_that_do_not_fit_are_told_at_once() {
    let error = with(&[
        "a=1",
        "segments.arm.length=3 cm",
        "muscles.x.y=1",
        "technique.tuck=1 deg",
    ]);
    let error = error.expect_err("the first cannot be set");
    assert_eq!(error.faults().len(), 1, "unknown beginnings come first");
    let error = with(&[
        "segments.arm.length=3 cm",
        "muscles.x.y=1",
        "technique.tuck=1 deg",
    ]);
    assert_eq!(error.expect_err("two cannot be set").faults().len(), 2);
}

#[test]
fn fault_a_width_outside_the_range_is_told_in_lengths_whoever_lifts() {
    let told = told(&["technique.grip_width=60 shoulder breadths"]);
    assert!(
        told.contains("outside what the model accepts (35 cm to 100 cm)"),
        "{told}"
    );
}

#[test]
fn regress_numbers_that_matter_are_listed_and_others_are_not() {
    let paths: Vec<String> = numeric_paths(&plain())
        .into_iter()
        .map(|n| n.path)
        .collect();
    for path in [
        "lifter.height",
        "lifter.strength.deltoids",
        "segments.forearm.mass",
        "build.biacromial_breadth",
        "muscles.triceps_long.moment_arm.elbow.scale",
        "muscles.pectoralis_sternal.peak_force",
        "joints.elbow.high",
        "curves.velocity.voluntary_share",
        "technique.grip_width",
        "movement.path.friction",
    ] {
        assert!(paths.contains(&path.to_owned()), "{path} is missing");
    }
    let idle =
        |path: &String| path.contains("soleus") || path.contains("knee") || path.contains("source");
    assert!(
        !paths.iter().any(idle),
        "the legs do not move in a bench press"
    );
}

#[test]
fn law_a_number_set_to_itself_changes_nothing_and_a_tenth_more_changes_that_number() {
    let mut random = ChaCha8Rng::seed_from_u64(20);
    let library = Library::built_in();
    for movement in library.movements() {
        let bench = Workbench::open(&library, "club-lifter", &movement).expect("sound");
        let model = bench.model(&[]).expect("sound");
        let numbers = numeric_paths(&model);
        for _ in 0..40 {
            let number = &numbers[random.random_range(0..numbers.len())];
            let same = format!("{}={} {}", number.path, number.value, number.unit);
            let same = bench.model(&[same]).expect("its own value fits");
            assert!(same == model, "{}", number.path);
            // Some tenths more leave the accepted range or the reach of the limbs: that is an answer.
            if let Ok(more) = bench.model(&[format!("{}=+10%", number.path)]) {
                let changed = value(&more, &number.path);
                let wanted = 1.1 * number.value;
                assert!(
                    (changed - wanted).abs() <= 1e-12 * wanted.abs(),
                    "{}",
                    number.path
                );
            }
        }
    }
}

/// A text with a few stretches deleted, doubled, swapped for others or for random signs.
fn mutated(text: &str, random: &mut ChaCha8Rng) -> String {
    const PIECES: [&str; 16] = [
        "(", ")", "[", "]", "{", "}", "\"", ",", ":", "NaN", "-1e999", "/*", "r#\"", "µ", "#![",
        "Some(",
    ];
    let mut signs: Vec<char> = text.chars().collect();
    for _ in 0..random.random_range(1..6) {
        let at = random.random_range(0..=signs.len());
        let end = (at + random.random_range(0..12)).min(signs.len());
        let piece: Vec<char> = match random.random_range(0..4) {
            0 => Vec::new(),
            1 => signs[at..end]
                .iter()
                .chain(&signs[at..end])
                .copied()
                .collect(),
            2 => PIECES[random.random_range(0..PIECES.len())]
                .chars()
                .collect(),
            _ => vec![char::from(random.random_range(0..128_u8))],
        };
        signs.splice(at..end, piece);
    }
    signs.into_iter().collect()
}

#[test]
fn fault_no_text_makes_the_reader_panic_and_each_fault_stands_in_its_text() {
    let mut random = ChaCha8Rng::seed_from_u64(21);
    let library = Library::built_in();
    let mut texts = Vec::new();
    for shelf in Shelf::ALL {
        let names = library.names(shelf);
        for name in names.iter().filter(|name| *name != "reference") {
            texts.push((shelf, library.text(shelf, name).expect("it is shipped").1));
        }
    }
    let (mut refused, mut accepted) = (0, 0);
    for _ in 0..800 {
        let (shelf, text) = &texts[random.random_range(0..texts.len())];
        let text = mutated(text, &mut random);
        let shelf = random.random_bool(0.8).then_some(*shelf);
        match library.check_text(shelf, "x.ron", &text) {
            Ok(_) => accepted += 1,
            Err(error) => {
                refused += 1;
                assert!(
                    !torquill::cli::render(&error, torquill::units::System::Metric, false)
                        .is_empty()
                );
                for place in error
                    .faults()
                    .iter()
                    .filter_map(|fault| fault.place.as_ref())
                {
                    assert!(place.bytes().end <= place.text.len());
                }
            }
        }
    }
    assert!(
        refused > 400 && accepted > 20,
        "{refused} refused, {accepted} accepted"
    );
}

#[test]
fn fault_random_bytes_are_refused() {
    let mut random = ChaCha8Rng::seed_from_u64(22);
    let library = Library::built_in();
    let bench = Workbench::open(&library, "reference-man", "biceps-curl").expect("sound");
    for _ in 0..1000 {
        let length = random.random_range(0..80);
        let bytes: Vec<u8> = (0..length).map(|_| random.random()).collect();
        let text = String::from_utf8_lossy(&bytes).into_owned();
        let shelf = Shelf::ALL[random.random_range(0..Shelf::ALL.len())];
        assert!(library.check_text(Some(shelf), "x.ron", &text).is_err());
        let as_value = format!("segments.forearm.length={text}");
        assert!(bench.model(&[as_value]).is_err());
        assert!(bench.model(&[text]).is_err());
    }
}

#[test]
fn fault_deep_nesting_is_refused() {
    for (open, close) in [("(", ")"), ("[", "]"), ("{1:", "}"), ("A(", ")")] {
        let text = format!("(title: {}{})", open.repeat(5000), close.repeat(5000));
        let error = Library::built_in().check_text(Some(Shelf::Movements), "x.ron", &text);
        assert!(error.is_err());
    }
}
