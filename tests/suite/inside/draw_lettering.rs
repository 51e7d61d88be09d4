//! What `src/draw/lettering.rs` does, from inside.

use torquill::draw::lettering::*;

#[test]
fn law_bundled_faces_measure_and_bold_is_wider() {
    let regular = width("Sticking region", 30.0, Face::Regular);
    let bold = width("Sticking region", 30.0, Face::Bold);
    assert!(regular > 150.0 && regular < 300.0, "{regular}");
    assert!(bold > regular * 1.02, "{bold} against {regular}");
}

#[test]
fn law_wrapped_lines_fit_and_lose_nothing() {
    let text = "Hardest fourteen centimetres off the chest, antidisestablishmentarianism too";
    let lines = wrap(text, 20.0, Face::Bold, 150.0);
    assert!(lines.len() > 3);
    for line in &lines {
        assert!(width(line, 20.0, Face::Bold) <= 150.0, "{line}");
    }
    // A word may be broken; then a hyphen stands at the line's end that the text has not.
    let mut left = text.replace(' ', "");
    for line in &lines {
        let own = line.replace(' ', "");
        let kept = if left.starts_with(&own) {
            own.as_str()
        } else {
            own.strip_suffix('-').expect("a hyphen at a break")
        };
        left = left.strip_prefix(kept).expect("no letter lost").to_owned();
    }
    assert_eq!(left, "");
}

#[test]
fn law_no_line_ends_between_a_number_and_its_unit() {
    let text =
        "a doubled 64 mm band flattens effort by 27 % more than 35.5 kg of chain do at 130 deg";
    for most in 120..500 {
        for line in wrap(text, 20.0, Face::Bold, f64::from(most)) {
            let end = line.chars().last().unwrap_or(' ');
            assert!(!end.is_ascii_digit(), "{most}: {line}");
        }
    }
}

#[test]
fn law_fitted_text_keeps_within_its_lines() {
    let fitted = fit(&"long words ".repeat(40), 48.0, 30.0, Face::Bold, 600.0, 2);
    assert_eq!(fitted.lines.len(), 2);
    assert!(fitted.lines[1].ends_with('…'));
}
