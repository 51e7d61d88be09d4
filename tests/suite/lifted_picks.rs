//! What `pick` advises is lifted: every card is tried by `rep`, over lifts, gyms and efforts up to all that is held.

use super::calling::call;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

const GYMS: [&str; 3] = ["garage", "college-weight-room", "strength-lab"];

const LIFTS: [&str; 8] = [
    "bench-press",
    "overhead-press",
    "squat",
    "deadlift",
    "row",
    "biceps-curl",
    "calf-raise",
    "hip-thrust",
];

/// The line of a card behind a label, what it was wrapped into put together.
fn line_of(card: &str, label: &str) -> Option<String> {
    let mut lines = card.lines().skip_while(|line| !line.starts_with(label));
    let first = lines.next()?.split_at(label.len()).1.trim().to_owned();
    let rest = lines.take_while(|line| line.starts_with("          "));
    Some(rest.fold(first, |whole, line| whole + " " + line.trim()))
}

/// The words of a command line, quotes around some of them.
fn words_of(line: &str) -> Vec<String> {
    let parts = line.split('"').enumerate();
    let words = parts.flat_map(|(index, part)| match index % 2 {
        1 => vec![part.to_owned()],
        _ => part.split_whitespace().map(str::to_owned).collect(),
    });
    words.collect()
}

/// The card of a pick is lifted by `rep`, or there is no card.
fn is_lifted_or_refused(lift: &str, gym: &str, effort: &str) {
    let picked = call(&["pick", lift, "--gym", gym, "--effort", effort]);
    let case = format!("{lift}, {gym}, {effort}");
    if picked.status != 0 {
        assert_eq!(picked.status, 1, "{case}: {}", picked.complaint);
        assert_eq!(picked.out, "", "{case}");
        return;
    }
    let reps = line_of(&picked.out, "reps").expect("a line");
    let first = line_of(&picked.out, "first rep").expect("a line");
    assert!(first.contains("m/s"), "{case}: {first}");
    assert!(!reps.starts_with("0 "), "{case}: {reps}");
    let again = line_of(&picked.out, "again").expect("a line");
    let words = match again.starts_with("--") {
        true => words_of(&again),
        // The body alone is the load.
        false => ["--load", "0 kg"].map(str::to_owned).to_vec(),
    };
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let load: &[&str] = match words.contains(&"--load") {
        true => &[],
        false => &["--load", "0 kg"],
    };
    let tried = call(&[&["rep", lift][..], &words[..], load].concat());
    assert_eq!(tried.status, 0, "{case}: {again}: {}", tried.complaint);
}

#[test]
fn law_what_is_picked_is_lifted_where_it_is_hardest() {
    for (lift, gym) in [
        ("calf-raise", "garage"),
        ("deadlift", "strength-lab"),
        ("overhead-press", "strength-lab"),
        ("bench-press", "garage"),
    ] {
        is_lifted_or_refused(lift, gym, "100%");
    }
}

#[test]
fn law_what_is_picked_is_lifted() {
    let mut random = ChaCha8Rng::seed_from_u64(17);
    for _ in 0..6 {
        let lift = LIFTS[random.random_range(0..LIFTS.len())];
        let gym = GYMS[random.random_range(0..GYMS.len())];
        let effort = random.random_range(60..=100);
        is_lifted_or_refused(lift, gym, &format!("{effort}%"));
    }
}

#[test]
fn fault_no_effort_is_more_than_all_that_is_held() {
    for effort in ["101%", "110%", "120%", "150%"] {
        for lift in ["bench-press", "overhead-press", "squat", "deadlift", "row"] {
            let picked = call(&["pick", lift, "--gym", "garage", "--effort", effort]);
            assert_eq!((picked.status, picked.out.as_str()), (2, ""), "{lift}");
            assert!(
                picked.complaint.contains("5 % to 100 %")
                    && picked.complaint.contains("overloaded-lowering"),
                "{}",
                picked.complaint
            );
        }
    }
}
