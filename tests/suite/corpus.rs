//! Every text that was ever put to a door by hand, or found by a fuzzer and cut short: `fuzz/README.md` says which door is
//! which.

#[path = "../../fuzz/src/doors.rs"]
mod fuzz_doors;

use fuzz_doors::DOORS;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};

/// Most bytes of the whole corpus, so that it stays a part of the repository.
const MOST_BYTES: u64 = 500_000;

fn corpus() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("fuzz/corpus")
}

fn inside(folder: &Path) -> BTreeSet<PathBuf> {
    let entries = std::fs::read_dir(folder).expect("a folder");
    entries
        .map(|entry| entry.expect("an entry").path())
        .collect()
}

#[test]
fn fault_every_text_of_the_corpus_is_taken_or_refused_in_words() {
    let mut broken = Vec::new();
    for door in DOORS {
        let (mut taken, mut refused) = (0, 0);
        for path in inside(&corpus().join(door.name)) {
            let bytes = std::fs::read(&path).expect("a file");
            match std::panic::catch_unwind(|| (door.feed)(&bytes)) {
                Ok(true) => taken += 1,
                Ok(false) => refused += 1,
                Err(_) => broken.push(path),
            }
        }
        // A door that takes nothing, or everything, tests nothing.
        assert!(
            taken > 0 && refused > 0,
            "{}: {taken} taken, {refused} refused",
            door.name
        );
    }
    assert!(
        broken.is_empty(),
        "a law of the door is broken by {broken:#?}"
    );
}

#[test]
fn law_the_corpus_is_small_and_every_folder_of_it_is_a_door() {
    let folders = inside(&corpus());
    let doors: BTreeSet<PathBuf> = DOORS.iter().map(|door| corpus().join(door.name)).collect();
    assert_eq!(folders, doors);
    let files = folders.iter().flat_map(|folder| inside(folder));
    let bytes: u64 = files
        .map(|file| std::fs::metadata(file).expect("a file").len())
        .sum();
    assert!(bytes < MOST_BYTES, "{bytes} bytes");
}
