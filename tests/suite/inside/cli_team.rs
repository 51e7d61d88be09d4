//! What `src/cli/team.rs` does, from inside.

use std::collections::BTreeSet;
use torquill::cli::team::{stem, stems};

#[test]
fn law_names_of_files_stay_inside_the_folder() {
    assert_eq!(stem("Mia (Invented)"), "mia-invented");
    assert_eq!(stem("../../etc/passwd"), "etc-passwd");
    assert_eq!(stem("Zoë Ünal"), "zoë-ünal");
    assert_eq!(stem("..."), "person-");
    assert_eq!(stem("Overview"), "person-overview");
}
#[test]
fn law_every_person_has_a_file_of_their_own() {
    let long = "ü".repeat(200);
    let names = [
        "a",
        "A!",
        "a 2",
        "a-2",
        "a 3",
        "overview",
        "person overview",
        "log",
        "?",
        "!",
        &long,
        &long,
    ];
    let stems = stems(names.into_iter());
    let different: BTreeSet<&String> = stems.iter().collect();
    assert_eq!(different.len(), names.len(), "{stems:?}");
    assert!(stems.iter().all(|stem| stem.len() < 200), "{stems:?}");
}
