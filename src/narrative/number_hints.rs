//! How numbers of the command line are written: what is said of a text that is none.

/// Of a count.
pub const COUNT_DUE: &str = "a whole number is due, such as 10, and none below 0";

/// Of a count with more digits than are read.
#[must_use]
pub fn count_too_large(most: &str) -> String {
    format!("that is more than is counted here, at most {most}")
}

/// Of a number.
pub const NUMBER_DUE: &str = "a number is due, such as 24 or 1.5";

/// Of a percentage.
pub const PERCENT_DUE: &str = "write a percentage as 5% or 5";
