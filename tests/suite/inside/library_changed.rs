//! What `src/library/changed.rs` does, from inside.

use torquill::library::changed::{changed, changed_lift, is_changed};

#[test]
fn law_a_title_is_marked_once() {
    let once = changed("Reference man");
    assert_eq!(once, "Reference man, changed");
    assert_eq!(changed(&once), once);
    assert_eq!(changed_lift("Squat"), "Squat (changed)");
    assert!(is_changed(&once) && is_changed(&changed_lift("Squat")));
    assert!(!is_changed("Reference man"));
}
