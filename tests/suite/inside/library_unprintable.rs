//! What `src/library/unprintable.rs` does, from inside.

use torquill::library::unprintable::first_unprintable;

#[test]
fn fault_signs_that_cannot_be_shown_are_found_escaped_or_not() {
    for (written, code) in [
        ("\"a\\u{1b}[31m\"", 0x1B),
        ("\"\\x1b\"", 0x1B),
        ("\"\\0\"", 0),
        ("\"\u{9b}\"", 0x9B),
        ("\"\u{202e}\"", 0x202E),
        ("\"\\u{fffe}\"", 0xFFFE),
        ("\"\u{1ffff}\"", 0x1_FFFF),
    ] {
        assert_eq!(first_unprintable(written), Some(code), "{written:?}");
    }
    for written in [
        "\"größer als 5 °, ≤ 10 →\"",
        "\"a\\n\\t\\\"b\\\"\"",
        "12.5",
        "\"\\\\u{1b}\"",
    ] {
        assert_eq!(first_unprintable(written), None, "{written}");
    }
}
