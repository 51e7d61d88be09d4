//! A date as people write it: which day it is, or which two days it may be.
//!
//! In: the text of a cell. Out: a [`WrittenDate`]; "1/8/2024" is two days until somebody says which.

use super::day::Day;
use crate::error::{DateFault, DateOrder};

/// What a text says of a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WrittenDate {
    /// One day.
    Clear(Day),
    /// Day and month in an order that the text does not tell.
    TwoWays {
        /// The number that stands first.
        first: u32,
        /// The number that stands second.
        second: u32,
        /// The year.
        year: i32,
    },
}

const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];

const WEEKDAYS: [&str; 7] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

impl WrittenDate {
    /// Reads "2024-03-01", "1/8/2024", "01.08.24", "1 Aug 2024", "Aug 1, 2024", each with or without a time of day.
    ///
    /// **Fails** on other forms, on "26-04-06", whose year may stand at either end, and on a month or day that does not
    /// exist.
    pub fn from_text(text: &str) -> Result<Self, DateFault> {
        let form = || DateFault::Form {
            written: text.to_owned(),
        };
        let parts = parts(text);
        let [a, b, c] = &parts[..] else {
            return Err(form());
        };
        if let Some(at) = parts.iter().position(|part| month(part).is_some()) {
            return named_month(text, &parts, at).ok_or_else(form)?;
        }
        if a.len() == 4 {
            return Day::from_text(&format!("{a}-{b}-{c}"))
                .map(Self::Clear)
                .map_err(|fault| of_cell(fault, text));
        }
        if let Some(fault) = short_year(text, [a, b, c]) {
            return Err(fault);
        }
        let year = year(c).ok_or_else(form)?;
        match (number(a), number(b)) {
            (Some(first), Some(second)) => Ok(Self::TwoWays {
                first,
                second,
                year,
            }),
            _ => Err(form()),
        }
    }

    /// The order that the text itself proves: a number above 12 is no month.
    pub fn proves(self) -> Option<DateOrder> {
        match self {
            Self::TwoWays { first, second, .. } if first > 12 && second <= 12 => {
                Some(DateOrder::DayFirst)
            }
            Self::TwoWays { first, second, .. } if second > 12 && first <= 12 => {
                Some(DateOrder::MonthFirst)
            }
            _ => None,
        }
    }

    /// Whether the text means another day in the other order.
    pub fn is_open(self) -> bool {
        matches!(self, Self::TwoWays { first, second, .. } if first != second && first <= 12 && second <= 12)
    }

    /// The day, in this order where the text has none.
    ///
    /// **Fails** on a month or day that does not exist.
    pub fn in_order(self, order: DateOrder, text: &str) -> Result<Day, DateFault> {
        match self {
            Self::Clear(day) => Ok(day),
            Self::TwoWays {
                first,
                second,
                year,
            } => {
                let (month, day) = match order {
                    DateOrder::DayFirst => (second, first),
                    DateOrder::MonthFirst => (first, second),
                };
                Day::from_text(&format!("{year:04}-{month}-{day}"))
                    .map_err(|fault| of_cell(fault, text))
            }
        }
    }
}

/// The fault of "26-04-06": with dashes, as the order from year to day is written, the first of three numbers of two
/// digits may be the year where it is no month; none where one reading alone is a day.
fn short_year(text: &str, parts: [&String; 3]) -> Option<DateFault> {
    let has_dashes = text.contains('-') && !text.contains(['/', '.']);
    let is_short = parts.iter().all(|part| part.len() == 2);
    let [first, second, third] = parts.map(|part| number(part));
    let (first, second, third) = (first?, second?, third?);
    if !has_dashes || !is_short || first <= 12 {
        return None;
    }
    let day = |year: u32, day: u32| Day::from_text(&format!("20{year:02}-{second}-{day}")).ok();
    let [year_first, year_last] = [day(first, third)?, day(third, first)?];
    Some(DateFault::ShortYear {
        written: text.to_owned(),
        year_first: year_first.to_string(),
        year_last: year_last.to_string(),
    })
}

/// The same fault, told of what stands in the cell.
fn of_cell(mut fault: DateFault, text: &str) -> DateFault {
    let (DateFault::Form { written }
    | DateFault::Year { written, .. }
    | DateFault::Month { written, .. }
    | DateFault::ShortYear { written, .. }
    | DateFault::Day { written, .. }) = &mut fault;
    text.clone_into(written);
    fault
}

/// The parts of a date, without weekday and time of day.
fn parts(text: &str) -> Vec<String> {
    let text = text.trim();
    // "2024-03-01T10:00:00Z": what follows the T is a time.
    let date = match text.split_once('T') {
        Some((date, time))
            if date.ends_with(|c: char| c.is_ascii_digit()) && time.contains(':') =>
        {
            date
        }
        _ => text,
    };
    let is_time = |word: &&str| {
        let bare = word.trim_matches(['.', ',']).to_lowercase();
        word.contains(':') || ["am", "pm", "a.m", "p.m"].contains(&bare.as_str())
    };
    let words = date.split_whitespace().filter(|word| !is_time(word));
    words
        .flat_map(|word| word.split(['-', '/', '.', ',', '\u{2011}', '\u{2013}']))
        .filter(|part| !part.is_empty())
        .map(str::to_lowercase)
        .filter(|part| !WEEKDAYS.iter().any(|day| part.starts_with(day)) || month(part).is_some())
        .collect()
}

fn number(part: &str) -> Option<u32> {
    let is_number = (1..=2).contains(&part.len()) && part.bytes().all(|b| b.is_ascii_digit());
    is_number.then(|| part.parse().ok()).flatten()
}

/// A year of four digits, or of two in this century.
fn year(part: &str) -> Option<i32> {
    if !part.bytes().all(|b| b.is_ascii_digit()) {
        return None;
    }
    match part.len() {
        4 => part.parse().ok(),
        2 => part.parse::<i32>().ok().map(|short| 2000 + short),
        _ => None,
    }
}

/// The month of an English name or its first three letters or more.
fn month(part: &str) -> Option<u32> {
    let found = MONTHS.iter().position(|name| {
        part.len() >= 3 && name.starts_with(part) || part == "sept" && name.starts_with("sep")
    })?;
    u32::try_from(found + 1).ok()
}

/// A date whose month is written as a word: the year stands last, or first with four digits.
fn named_month(text: &str, parts: &[String], at: usize) -> Option<Result<WrittenDate, DateFault>> {
    let others: Vec<&str> = (0..3)
        .filter(|index| *index != at)
        .map(|index| parts[index].as_str())
        .collect();
    let (day, year_part) = if others[0].len() == 4 {
        (others[1], others[0])
    } else {
        (others[0], others[1])
    };
    let (day, year, month) = (
        number(day.trim_end_matches(char::is_alphabetic))?,
        year(year_part)?,
        month(&parts[at])?,
    );
    Some(
        Day::from_text(&format!("{year:04}-{month}-{day}"))
            .map(WrittenDate::Clear)
            .map_err(|fault| of_cell(fault, text)),
    )
}
