//! Small pieces of sentences for titles and captions.
//!
//! In: words and numbers. Out: text.

use super::quantities::rounded;
use std::borrow::Borrow;
use std::fmt::Display;

/// The text with its first letter as a capital.
#[must_use]
pub fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}

/// "a", "a and b", "a, b and c".
#[must_use]
pub fn listed<T: Borrow<str>>(items: &[T]) -> String {
    match items {
        [] => String::new(),
        [only] => only.borrow().to_owned(),
        [most @ .., last] => format!("{} and {}", most.join(", "), last.borrow()),
    }
}

/// "a", "a or b", "a, b or c".
#[must_use]
pub fn either<T: Borrow<str>>(items: &[T]) -> String {
    match items {
        [] => String::new(),
        [only] => only.borrow().to_owned(),
        [most @ .., last] => format!("{} or {}", most.join(", "), last.borrow()),
    }
}

/// A count with its noun, by the number as it is shown: "1 week", "3 weeks", "0 sets", "1.5 months". The plural is formed
/// with an s.
#[must_use]
pub fn counted_noun(count: impl Display + Copy, noun: &str) -> String {
    let plural = of_count(count, "", "s");
    format!("{count} {noun}{plural}")
}

/// The word that goes with a count as it is shown: that of one, or that of any other.
#[must_use]
pub fn of_count<'a>(count: impl Display, one: &'a str, many: &'a str) -> &'a str {
    if count.to_string() == "1" { one } else { many }
}

/// A rounded number of weeks: "1 week", "11 weeks".
#[must_use]
pub fn weeks(weeks: f64) -> String {
    counted_noun(&rounded(weeks, 0), "week")
}

/// A share as a whole percentage: "58 %".
#[must_use]
pub fn percent(share: f64) -> String {
    format!("{} %", rounded(100.0 * share, 0))
}

/// A place of the range in words that need no unit.
#[must_use]
pub fn part_of_range(range: f64) -> &'static str {
    /// This near to an end a place is that end, share of the range.
    const AT_AN_END: f64 = 0.05;
    match range {
        start if start < AT_AN_END => "at the start",
        end if end > 1.0 - AT_AN_END => "at the end",
        early if early < 1.0 / 3.0 => "in the first third",
        late if late > 2.0 / 3.0 => "in the last third",
        _ => "in the middle third",
    }
}
