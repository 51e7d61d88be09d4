//! How a training log is read: whose sets, which order of dates, what becomes of rows that cannot be read.
//!
//! In: options; the command's file of rows (a log, or a team) stands in its group `rows`. Out: [`LogChoice`].

use super::options::DatesOption;
use crate::error::{CommandFault, DateOrder, Error, Result};
use crate::progress::day::Day;
use crate::progress::log_file::BadRows;
use crate::study::LogChoice;
use clap::Args;
use clap::builder::NonEmptyStringValueParser;
use std::time::{SystemTime, UNIX_EPOCH};

/// Options of a log.
#[derive(Debug, Args)]
pub struct LogOptions {
    /// Whose sets, where the log holds several athletes
    #[arg(
        long,
        value_name = "NAME",
        requires = "log",
        value_parser = NonEmptyStringValueParser::new()
    )]
    athlete: Option<String>,
    /// What stands first in dates such as 1/8/2024, if no date of the log proves it
    #[arg(long, value_enum, requires = "log")]
    dates: Option<DatesOption>,
    /// Leave rows out that cannot be read, and say which
    #[arg(long, requires = "rows")]
    skip_bad_rows: bool,
}

impl LogOptions {
    /// The log of this path or name, read as told; where a plan says when it begins, that day is known already.
    #[must_use]
    pub fn choice(&self, log: &str, has_start: bool) -> LogChoice {
        LogChoice {
            name: log.to_owned(),
            athlete: self.athlete.clone(),
            dates: self.dates.map(DateOrder::from),
            bad_rows: self.bad_rows(),
            today: today().filter(|_| !has_start),
        }
    }

    /// **Fails** with an option that only a log heeds: whoever typed it counts on it.
    pub fn check_idle(&self) -> Result<()> {
        let typed = [
            ("athlete", self.athlete.is_some()),
            ("dates", self.dates.is_some()),
        ];
        match typed.into_iter().find(|(_, is_typed)| *is_typed) {
            None => Ok(()),
            Some((option, _)) => Err(Error::bad(CommandFault::Idle {
                option: option.to_owned(),
                needed: vec!["log".to_owned()],
            })),
        }
    }

    /// What becomes of rows that cannot be read.
    #[must_use]
    pub const fn bad_rows(&self) -> BadRows {
        if self.skip_bad_rows {
            BadRows::LeftOut
        } else {
            BadRows::Refused
        }
    }
}

/// Seconds of a day.
const DAY_S: u64 = 86_400;

/// The first year in which this program ran: a clock that shows an earlier one is wrong, so nothing is judged by it.
const FIRST_YEAR: i32 = 2026;

/// Today by the clock of this machine, in universal time; no result depends on it, only whether a log is refused.
fn today() -> Option<Day> {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).ok()?;
    let days = u32::try_from(since.as_secs() / DAY_S).ok()?;
    let today = Day::from_date(1970, 1, 1)?.after(days)?;
    (today.date().0 >= FIRST_YEAR).then_some(today)
}
