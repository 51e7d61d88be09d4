//! What `src/report/typed_words.rs` does, from inside.

use torquill::report::typed_words::quoted;

#[test]
fn regress_words_are_quoted_where_a_shell_needs_it() {
    for (word, typed) in [
        ("bench-press", "bench-press"),
        ("80 kg", "\"80 kg\""),
        ("a=+10%", "a=+10%"),
        ("", "\"\""),
        ("it's", "\"it's\""),
        ("a\"$b'", "'a\"$b'\\'''"),
    ] {
        assert_eq!(quoted(word), typed);
    }
}
