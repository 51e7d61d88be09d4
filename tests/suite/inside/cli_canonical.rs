//! What `src/cli/canonical.rs` does, from inside.

use torquill::cli::canonical::{portable, stays_below};

#[test]
fn law_no_path_of_a_machine_goes_out() {
    for (path, out) in [
        ("me.ron", "me.ron"),
        ("own/me.ron", "own/me.ron"),
        ("/home/someone/me.ron", "me.ron"),
        ("../someone/me.ron", "me.ron"),
        ("own/../../me.ron", "me.ron"),
        ("..", ""),
        ("reference-man", "reference-man"),
    ] {
        assert_eq!(portable(path), out);
        assert!(stays_below(out));
    }
    assert!(!stays_below("C:\\me.ron"));
}
