//! What `src/progress/lift_names.rs` does, from inside.

use torquill::progress::lift_names::LiftNames;

#[test]
fn law_a_lift_has_one_name_however_it_is_written() {
    let called = ["squat".to_owned(), "barbell back squat".to_owned()];
    let names = LiftNames::of([("squat", &called[..])].into_iter());
    for written in [
        "Squat",
        "SQUAT ",
        "Back Squat (Barbell)",
        "back-squat_barbell",
        "Squats",
    ] {
        assert_eq!(names.named(written), "squat", "{written}");
    }
    assert_eq!(names.named("Front Squat"), "front-squat");
    assert_eq!(names.named("squat, box"), "squat,-box");
}
