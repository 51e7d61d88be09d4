//! What `src/cli/make_gym.rs` does, from inside.

use torquill::cli::make_gym::asked;
use torquill::error::GymPart;
use torquill::units::System;

#[test]
fn law_answers_are_kept_and_empty_lines_leave_the_usual() {
    let mut shown = Vec::new();
    let mut answers = "20 kg\n\nnone\n".as_bytes();
    let told = asked(System::Metric, &mut answers, &mut shown);
    let told: Vec<_> = told.into_iter().collect();
    assert_eq!(
        told,
        [
            (GymPart::Bars, "20 kg".to_owned()),
            (GymPart::Collars, "none".to_owned())
        ]
    );
    let shown = String::from_utf8(shown).expect("text");
    assert!(shown.starts_with("Bars (such as 20 kg"), "{shown}");
    assert!(shown.contains("[20 kg]: Plates (such as"), "{shown}");
}
