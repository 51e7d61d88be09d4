//! What `src/cli/number_words.rs` does, from inside.

use std::ffi::OsString;
use torquill::cli::number_words::joined;

#[test]
fn law_a_negative_value_is_joined_to_its_option_and_nothing_else_is() {
    let program = torquill::cli::definitions();
    let told = |words: &[&str]| -> Vec<OsString> {
        joined(&program, words.iter().map(OsString::from).collect())
    };
    for (words, joins) in [
        (
            vec!["torquill", "plan", "squat", "--age", "-3", "--injured"],
            vec!["torquill", "plan", "squat", "--age=-3", "--injured"],
        ),
        (
            vec!["torquill", "rep", "squat", "--lowering", "-1 s", "-o", "x"],
            vec!["torquill", "rep", "squat", "--lowering=-1 s", "-o", "x"],
        ),
        (
            vec!["torquill", "plan", "squat", "--injured", "-3"],
            vec!["torquill", "plan", "squat", "--injured", "-3"],
        ),
        (
            vec!["torquill", "curve", "squat", "--load", "--band", "-x"],
            vec!["torquill", "curve", "squat", "--load", "--band", "-x"],
        ),
    ] {
        let joins: Vec<OsString> = joins.iter().map(OsString::from).collect();
        assert_eq!(told(&words), joins);
    }
}
