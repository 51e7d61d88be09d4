//! `torquill gym`: what it writes is sound, can be used, and what it assumed is told.

use super::calling::call_in;
use torquill::library::{FileFacts, Library};
use torquill::movement::Carrier;
use torquill::narrative::loads::loading_in_words;
use torquill::setups::Loadings;

#[test]
fn law_a_gym_in_a_minute_is_sound_and_used() {
    let folder = tempfile::tempdir().expect("a folder");
    let call = |arguments: &[&str]| call_in(folder.path(), arguments);
    let made = call(&["gym", "-o", "home.ron"]);
    assert_eq!(made.status, 0, "{}", made.complaint);
    assert!(
        made.complaint.contains("assumed: bars: 20 kg"),
        "{}",
        made.complaint
    );
    assert!(
        made.complaint.contains("assumed: kettlebells: none"),
        "{}",
        made.complaint
    );
    let checked = call(&["check", "home.ron"]);
    assert_eq!(
        (checked.status, checked.complaint.as_str()),
        (0, ""),
        "{}",
        checked.out
    );
    let picked = call(&["pick", "bench-press", "--gym", "home.ron"]);
    assert_eq!(picked.status, 0, "{}", picked.complaint);
    // A file is not replaced unasked.
    let again = call(&["gym", "-o", "home.ron"]);
    assert_eq!(again.status, 2);
    assert_eq!(
        call(&["gym", "-o", "home.ron", "--force", "--units", "us"]).status,
        0
    );
    let us = std::fs::read_to_string(folder.path().join("home.ron")).expect("it is there");
    assert!(us.contains("45 lb") && !us.contains("kg"), "{us}");
}

#[test]
fn law_curls_with_a_bar_kettlebells_and_plates_without_collars() {
    let folder = tempfile::tempdir().expect("a folder");
    let call = |arguments: &[&str]| call_in(folder.path(), arguments);
    let made = call(&[
        "gym",
        "-o",
        "small.ron",
        "--bars",
        "none",
        "--bands",
        "none",
        "--plates",
        "4 x 2 kg, 2 x 1 kg",
        "--curl-bars",
        "bent bar = 7 kg",
        "--kettlebells",
        "8 kg",
    ]);
    assert_eq!(made.status, 0, "{}", made.complaint);
    let library = Library::built_in();
    let gym = library
        .gym(&folder.path().join("small.ron").display().to_string())
        .expect("it is sound");
    let words = |joins| -> Vec<(f64, String)> {
        let loads = Loadings::of(&gym.clone().for_hands(joins), &Carrier::Dumbbell).expect("loads");
        let all = loads.all().iter();
        all.map(|load| (load.total.as_kg(), loading_in_words(load)))
            .collect()
    };
    let curls = words(true);
    assert!(
        curls.contains(&(3.5, "bent bar (7 kg) in both hands, no plates".to_owned())),
        "{curls:?}"
    );
    assert!(
        curls.contains(&(
            6.5,
            "bent bar (7 kg) in both hands, 2 kg + 1 kg a side".to_owned()
        )),
        "{curls:?}"
    );
    assert!(
        curls.contains(&(8.0, "kettlebell of 8 kg in each hand".to_owned())),
        "{curls:?}"
    );
    // Arms that go apart cannot hold one bar.
    assert_eq!(
        words(false),
        [(8.0, "kettlebell of 8 kg in each hand".to_owned())]
    );
    for (movement, joins) in [
        ("biceps-curl", true),
        ("triceps-extension", true),
        ("lateral-raise", false),
    ] {
        let handling = library.movement(movement).expect("it is known").handling;
        assert_eq!(handling.bar_joins_hands, joins, "{movement}");
    }
    let picked = call(&[
        "pick",
        "biceps-curl",
        "--gym",
        "small.ron",
        "--lifter",
        "reference-man",
    ]);
    assert!(
        picked.out.contains("in both hands") || picked.out.contains("kettlebell"),
        "{}{}",
        picked.out,
        picked.complaint
    );
}

#[test]
fn law_safety_arms_told_are_arms_that_setups_are_judged_by() {
    let folder = tempfile::tempdir().expect("a folder");
    let call = |arguments: &[&str]| call_in(folder.path(), arguments);
    let arms = ["--safety-arms", "30 cm..120 cm by 5 cm"];
    let made = call(&[&["gym", "-o", "home.ron"][..], &arms].concat());
    assert_eq!(made.status, 0, "{}", made.complaint);
    let words = ["pick", "bench-press", "--lifter", "heavy-lifter", "--gym"];
    let with = call(&[&words[..], &["home.ron"]].concat()).out;
    assert!(with.contains("\narms      at "), "{with}");
    assert_eq!(call(&["gym", "-o", "bare.ron"]).status, 0);
    let bare = call(&[&words[..], &["bare.ron"]].concat()).out;
    assert!(!bare.contains("\narms      "), "{bare}");
}

#[test]
fn fault_a_part_that_is_none_is_told_with_an_example() {
    let folder = tempfile::tempdir().expect("a folder");
    for (option, text, says) in [
        ("--plates", "20 kg", "`20 kg` tells no plates"),
        ("--bars", "heavy", "write 20 kg, light bar = 10 kg"),
        ("--bands", "loop-15mm", "loop-14mm"),
        ("--bars", "900 kg", "bars.0.mass"),
        ("--stack", "80 kg", "5 kg..80 kg"),
        ("--safety-arms", "80 cm", "30 cm..120 cm by 5 cm"),
    ] {
        let call = call_in(folder.path(), &["gym", "-o", "home.ron", option, text]);
        assert_eq!(call.status, 2, "{text}");
        assert!(call.complaint.contains(says), "{text}: {}", call.complaint);
        assert!(!folder.path().join("home.ron").exists());
    }
    let odd = call_in(folder.path(), &["gym", "-o", "home.txt"]);
    assert!(
        odd.status == 2 && odd.complaint.contains("end in .ron"),
        "{}",
        odd.complaint
    );
}

#[test]
fn law_a_gym_file_of_this_program_is_of_the_kind_gym() {
    let folder = tempfile::tempdir().expect("a folder");
    assert_eq!(call_in(folder.path(), &["gym", "-o", "g.ron"]).status, 0);
    let checked = Library::built_in().check_file(&folder.path().join("g.ron"));
    let facts = checked.expect("it is sound").facts;
    assert!(matches!(facts, FileFacts::Gym(_)));
}
