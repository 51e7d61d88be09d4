//! What `src/cli/complain.rs` does, from inside.

use torquill::cli::complain::render;
use torquill::error::{Error, Fault, OptionFault, Place};
use torquill::units::System;

fn no_share(text: &str) -> Fault {
    Fault::new(OptionFault::NoShare(text.to_owned()))
}

#[test]
fn fault_a_fault_shows_its_line_and_its_next_move() {
    let text = "(\n    share: \"1,8\", // µ\n)";
    let start = text.find("\"1,").expect("the value is in the text");
    let place = Place::of("me.ron", text, start..start + 5);
    let shown = render(&no_share("1,8").at(place).into(), System::Metric, false);
    assert_eq!(
        shown,
        r#"error: `1,8` is no share
 --> me.ron:2:12
  |
2 |     share: "1,8", // µ
  |            ^^^^^
  |
  = hint: write 80% or 0.8"#
    );
}

#[test]
fn fault_several_faults_stand_one_under_the_other_and_no_answer_says_so() {
    let both = Error::bad_input(vec![no_share("one"), no_share("two")]);
    assert_eq!(
        render(&both, System::Metric, false),
        "error: `one` is no share\n |\n = hint: write 80% or 0.8\n\n\
             error: `two` is no share\n |\n = hint: write 80% or 0.8"
    );
    let none = Error::no_answer(OptionFault::NoShare("x".to_owned()));
    let shown = render(&none, System::Metric, false);
    assert!(shown.starts_with("no answer: `x` is no share"), "{shown}");
    assert!(render(&both, System::Metric, true).contains('\u{1b}'));
}

#[test]
fn fault_of_many_faults_the_first_are_shown_and_the_others_counted() {
    let many = (0..40).map(|n| no_share(&format!("x{n}"))).collect();
    let shown = render(&Error::bad_input(many), System::Metric, false);
    assert!(shown.contains("`x24` is") && !shown.contains("`x25` is"));
    assert!(shown.ends_with("and 15 more faults"), "{shown}");
}

#[test]
fn fault_no_sign_that_a_terminal_obeys_is_shown() {
    let text = "(\n  \u{feff}a\u{1b}[31m: \"1\u{202e},8\", // \u{7}\n)";
    let start = text.find("\"1").expect("the value is in the text");
    let place = Place::of("me.ron", text, start..start + 6);
    let shown = render(
        &no_share("1\u{9b}8").at(place).into(),
        System::Metric,
        false,
    );
    assert_eq!(torquill::bounds::first_hidden(&shown), None, "{shown:?}");
    assert!(shown.contains("`1\u{fffd}8` is no share"), "{shown}");
    let lines: Vec<&str> = shown.lines().collect();
    let line = lines
        .iter()
        .position(|line| line.contains("[31m"))
        .expect("it is shown");
    let signs = |line: &str, of: &str| line.split(of).next().map(|before| before.chars().count());
    assert_eq!(
        signs(lines[line], "\"1"),
        signs(lines[line + 1], "^"),
        "{shown}"
    );
}

#[test]
fn fault_places_at_the_end_of_a_text_do_no_harm() {
    for text in ["", "\n", "a", "µ\r\n"] {
        for start in 0..5 {
            let place = Place::of("f.ron", text, start..start + 2);
            let shown = render(&no_share("x").at(place).into(), System::Metric, false);
            assert!(shown.starts_with("error: `x` is no share"), "{shown}");
        }
    }
}
