//! A training log studied: the sets of one lift and their trend.
//!
//! In: the name or path of a log, a lift. Out: [`LogStudy`].

use crate::error::Result;
use crate::library::Library;
use crate::progress::log_file::{BadRows, read_log};
use crate::progress::training_log::Log;
use crate::progress::trend::{Trend, trend};

/// A training log of one lift and its trend.
#[derive(Debug, Clone, PartialEq)]
pub struct LogStudy<'a> {
    /// The sets of the lift, with what is odd about the log.
    pub log: Log,
    /// Their trend.
    pub trend: Trend<'a>,
}

/// Studies a log by path, or an invented one by name; the only lift of it, if none is named.
///
/// **Fails** with every bad row, unless they are to be left out; where the lift is not clear; and with too few
/// sessions for a trend.
pub fn log_study<'a>(
    library: &'a Library,
    name: &str,
    lift: Option<&str>,
    bad_rows: BadRows,
) -> Result<LogStudy<'a>> {
    let log = log_of(library, name, bad_rows)?.of_lift(lift)?;
    let trend = trend_of(library, &log)?;
    Ok(LogStudy { log, trend })
}

/// The log of a name or path.
pub(super) fn log_of(library: &Library, name: &str, bad_rows: BadRows) -> Result<Log> {
    let (file, text) = library.log_text(name)?;
    read_log(&file, &text, bad_rows)
}

/// The trend of a log of one lift, read with what the lift's movement says.
pub(super) fn trend_of<'a>(library: &'a Library, log: &Log) -> Result<Trend<'a>> {
    let lift = log.entries.first().map_or("", |entry| &entry.lift);
    trend(
        log,
        library.lift_facts(lift),
        &library.published()?.estimates,
    )
}
