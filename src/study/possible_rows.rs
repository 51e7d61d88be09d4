//! A log without the rows that stand for what nobody lifts, where bad rows are to be left out.
//!
//! In: a log, what becomes of bad rows, how it is judged. Out: the log, the rows among its skipped ones, and what judging gave.

use crate::error::{Error, LogRowFault, PersonFault, Result, What};
use crate::progress::log_file::BadRows;
use crate::progress::training_log::{Log, SkippedRow};

/// Judges a log, again and again without the row that is refused, until none is.
///
/// **Fails** as judging does; with a row that nobody lifts, unless such rows are left out.
pub(super) fn without_impossible<T>(
    mut log: Log,
    bad_rows: BadRows,
    judge: impl Fn(&Log) -> Result<T>,
) -> Result<(Log, T)> {
    loop {
        let refused = match judge(&log) {
            Ok(judged) => return Ok((log, judged)),
            Err(refused) => refused,
        };
        let row = impossible_row(&refused).filter(|_| bad_rows == BadRows::LeftOut);
        let before = log.entries.len();
        if let Some(row) = row {
            log.entries.retain(|entry| entry.line != row.line);
            log.skipped.push(row);
        }
        if log.entries.len() == before {
            return Err(refused);
        }
    }
}

/// The row of a log that is refused for what it stands for.
fn impossible_row(refused: &Error) -> Option<SkippedRow> {
    refused.faults().iter().find_map(|fault| match &fault.what {
        What::Person(PersonFault::ImpossibleOneRm {
            line: Some(line),
            movement,
            one_rm,
            over_expected,
            deviations,
            judged_by,
            ..
        }) => Some(SkippedRow {
            line: *line,
            faults: vec![LogRowFault::ImpossibleOneRm {
                movement: movement.clone(),
                one_rm: *one_rm,
                over_expected: *over_expected,
                deviations: *deviations,
                judged_by: *judged_by,
            }],
        }),
        _ => None,
    })
}
