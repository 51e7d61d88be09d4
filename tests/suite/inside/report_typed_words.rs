//! What `src/report/typed_words.rs` does, from inside.

use torquill::report::typed_words::{quoted, typed_words, words_typed};

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

#[test]
fn law_words_come_back_from_the_line_that_was_typed() {
    for words in [
        &["torquill", "max", "bench-press"][..],
        &["80 kg", "", "a\"$b'", "it's", "\\", "a=+10%", "!"],
        &["'", "\"", " ", "`x`", "\u{e9}"],
    ] {
        let words: Vec<String> = words.iter().map(|word| (*word).to_owned()).collect();
        assert_eq!(words_typed(&typed_words(&words)), Some(words));
    }
    assert_eq!(words_typed("an \"open quote"), None);
    assert_eq!(words_typed("a 'b c' \"d\"e"), words_typed("'a' b\\ c de"));
}
