//! What `src/cli/team.rs` does, from inside.

use torquill::cli::team::stem;

#[test]
fn law_names_of_files_stay_inside_the_folder() {
    assert_eq!(stem("Mia (Invented)"), "mia-invented");
    assert_eq!(stem("../../etc/passwd"), "etc-passwd");
    assert_eq!(stem("Zoë Ünal"), "zoë-ünal");
    assert_eq!(stem("..."), "person-");
    assert_eq!(stem("Overview"), "person-overview");
}
