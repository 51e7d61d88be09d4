//! Short phrases that answers and faults share.
//!
//! In: a number, a record. Out: "0.3 of the range", "2.1 times what trained men show".

use super::quantities::rounded;
use crate::error::JudgedBy;
use crate::movement::Helping;

/// A place of the range in words: "the start", "0.3 of the range".
#[must_use]
pub(crate) fn range_place(at: f64) -> String {
    match at {
        0.0 => "the start".to_owned(),
        0.5 => "the middle".to_owned(),
        1.0 => "the end".to_owned(),
        at => format!("{} of the range", rounded(at, 2)),
    }
}

/// A maximum beside what people show.
#[must_use]
pub(crate) fn times_of_people(over_expected: f64, judged_by: JudgedBy) -> String {
    let people = match judged_by {
        JudgedBy::Kind => "people of that sex, size and training",
        JudgedBy::TrainedMen => "trained men",
        JudgedBy::UntrainedWomen => "untrained women",
    };
    let digits = if over_expected < 0.1 { 4 } else { 2 };
    format!(
        "{} times what {people} show",
        rounded(over_expected, digits)
    )
}

/// "at its start and over 12 % of the range".
#[must_use]
pub(crate) fn where_it_helps(helping: &Helping) -> String {
    let start = if helping.at_start {
        "from its start on, "
    } else {
        ""
    };
    format!(
        "{start}over {} % of the range",
        rounded(100.0 * helping.share, 0)
    )
}

/// Whose limit of lowering it is: measured people's, or the simulated lifter's.
pub(crate) fn whose_limit(who: Option<&str>) -> &str {
    who.unwrap_or("as this lifter is simulated, lowered evenly")
}
