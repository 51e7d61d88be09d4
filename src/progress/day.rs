//! A calendar day as a number, so that weeks between sessions can be counted.
//!
//! In: a date written year-month-day ("2024-03-01"). Out: a [`Day`], or what is wrong with it. Gregorian
//! calendar, no clock, no time zone.

use crate::bounds::bounds;
use crate::error::DateFault;
use std::fmt;

/// A day of the Gregorian calendar, counted from 1970-01-01.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day(i32);

impl Day {
    /// The day of a date, or `None` if the calendar has no such date.
    ///
    /// ```text
    /// n = 365 y + ⌊y/4⌋ − ⌊y/100⌋ + ⌊y/400⌋ + ⌊(153 m + 2)/5⌋ + d − 719469
    /// ```
    /// with the year counted from March (`m` = 0 for March, 11 for February). Exact in the proleptic
    /// Gregorian calendar; 153/5 is the mean length of the months from March to January.
    #[must_use]
    pub fn from_date(year: i32, month: u32, day: u32) -> Option<Self> {
        if !bounds().log_year.holds(f64::from(year)) || !(1..=12).contains(&month) {
            return None;
        }
        if day < 1 || day > days_in(year, month) {
            return None;
        }
        let y = if month > 2 { year } else { year - 1 };
        let m = (i32::try_from(month).ok()? + 9) % 12;
        let d = i32::try_from(day).ok()?;
        Some(Self(
            365 * y + y / 4 - y / 100 + y / 400 + (153 * m + 2) / 5 + d - 719_469,
        ))
    }

    /// Reads "2024-03-01".
    ///
    /// **Fails** on another order or separator, and on a month or day that does not exist.
    pub fn from_text(text: &str) -> Result<Self, DateFault> {
        let (year, month, day) = numbers(text).ok_or_else(|| DateFault::Form {
            written: text.to_owned(),
        })?;
        Self::from_date(year, month, day).ok_or_else(|| no_such_date(text, year, month))
    }

    /// Year, month and day.
    #[must_use]
    pub fn date(self) -> (i32, u32, u32) {
        // A year that is surely not too late: the mean year is longer than 365 and shorter than 366 days.
        let mut year = 1970 + self.0.div_euclid(if self.0 < 0 { 365 } else { 366 });
        while Self::from_date(year + 1, 1, 1).is_some_and(|first| first <= self) {
            year += 1;
        }
        let mut month = 1;
        while month < 12 && Self::from_date(year, month + 1, 1).is_some_and(|first| first <= self) {
            month += 1;
        }
        let first = Self::from_date(year, month, 1).map_or(self.0, |first| first.0);
        (year, month, u32::try_from(self.0 - first + 1).unwrap_or(1))
    }

    /// So many days later, or `None` where the years that are counted end.
    #[must_use]
    pub fn after(self, days: u32) -> Option<Self> {
        let later = Self(self.0.checked_add(i32::try_from(days).ok()?)?);
        let (year, month, day) = later.date();
        Self::from_date(year, month, day)
    }

    /// Days from `earlier` to this day; negative if it is later.
    #[must_use]
    pub const fn days_since(self, earlier: Self) -> i32 {
        self.0 - earlier.0
    }

    /// Weeks from `earlier` to this day.
    #[must_use]
    pub fn weeks_since(self, earlier: Self) -> f64 {
        f64::from(self.days_since(earlier)) / 7.0
    }
}

impl fmt::Display for Day {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (year, month, day) = self.date();
        write!(f, "{year:04}-{month:02}-{day:02}")
    }
}

fn days_in(year: i32, month: u32) -> u32 {
    let leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    match month {
        2 if leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

/// Year, month and day of a text in that order, whether or not the calendar has them.
fn numbers(text: &str) -> Option<(i32, u32, u32)> {
    let parts: Vec<&str> = text.trim().split('-').collect();
    let [year, month, day] = parts[..] else {
        return None;
    };
    let digits = |part: &str| {
        let is_number = (1..=2).contains(&part.len()) && part.bytes().all(|b| b.is_ascii_digit());
        is_number.then(|| part.parse().ok()).flatten()
    };
    let is_year = year.len() == 4 && year.bytes().all(|b| b.is_ascii_digit());
    let year = is_year.then(|| year.parse().ok()).flatten()?;
    Some((year, digits(month)?, digits(day)?))
}

fn no_such_date(text: &str, year: i32, month: u32) -> DateFault {
    let written = text.to_owned();
    let bound = &bounds().log_year;
    if !bound.holds(f64::from(year)) {
        DateFault::Year {
            written,
            year,
            years: (bound.least() as i32, bound.most() as i32),
        }
    } else if !(1..=12).contains(&month) {
        DateFault::Month { written, month }
    } else {
        DateFault::Day {
            written,
            days: days_in(year, month),
        }
    }
}
