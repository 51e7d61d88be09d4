//! What `src/report/wrapping.rs` does, from inside.

use torquill::report::wrapping::*;

#[test]
fn law_no_line_is_wider_than_a_terminal_unless_one_word_is() {
    let words = "a band of twenty-nine millimetres ".repeat(9);
    for line in wrapped("  hang      ", words.trim_end()) {
        assert!(line.chars().count() <= COLUMNS, "{line}");
        assert!(line.starts_with("  "), "{line}");
    }
    assert_eq!(wrapped("a  ", ""), ["a"]);
}
