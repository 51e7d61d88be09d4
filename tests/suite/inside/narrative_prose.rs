//! What `src/narrative/prose.rs` does, from inside.

use torquill::narrative::prose::*;

#[test]
fn regress_lists_read_as_sentences() {
    let words = |n: usize| {
        ["a", "b", "c"][..n]
            .iter()
            .map(|w| (*w).to_owned())
            .collect::<Vec<_>>()
    };
    assert_eq!(listed(&words(0)), "");
    assert_eq!(listed(&words(1)), "a");
    assert_eq!(listed(&words(2)), "a and b");
    assert_eq!(listed(&words(3)), "a, b and c");
    assert_eq!(capital("row"), "Row");
    assert_eq!(counted_noun(1, "set"), "1 set");
    assert_eq!(counted_noun(0, "set"), "0 sets");
    assert_eq!(counted_noun(1.0, "month"), "1 month");
    assert_eq!(counted_noun(1.5, "month"), "1.5 months");
    assert_eq!(counted_noun("2 to 3", "day"), "2 to 3 days");
    assert_eq!(
        [0, 1, 2].map(|n| of_count(n, "is", "are")),
        ["are", "is", "are"]
    );
    assert_eq!([0.6, 1.4, 1.6].map(weeks), ["1 week", "1 week", "2 weeks"]);
    assert_eq!(percent(0.583), "58 %");
}
