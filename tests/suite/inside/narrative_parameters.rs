//! What `src/narrative/parameters.rs` does, from inside.

use torquill::narrative::parameters::*;

#[test]
fn regress_paths_have_words() {
    assert_eq!(
        parameter_in_words("muscles.biceps_long.moment_arm.elbow.scale"),
        "moment arm of biceps brachii long head at the elbow"
    );
    assert_eq!(parameter_in_words("technique.grip_width"), "grip width");
    assert_eq!(
        parameter_in_words("segments.upper_arm.length"),
        "length of the upper arm"
    );
}

#[test]
fn regress_short_names_drop_what_goes_without_saying() {
    assert_eq!(
        parameter_in_short("muscles.deltoid.moment_arm.shoulder_flexion.scale"),
        "arm of deltoid (flexion)"
    );
    assert_eq!(
        parameter_in_short("muscles.deltoid.reference.0.length"),
        "length of deltoid"
    );
}
