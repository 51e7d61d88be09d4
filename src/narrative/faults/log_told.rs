//! Words for: what is wrong with a training log.

use super::{Told, quantity_told};
use crate::error::{DateFault, LogColumn, LogFault, LogRowFault};
use crate::narrative::quantities::QuantityWords;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &LogFault, units: System) -> Told {
    match fault {
        LogFault::UnknownLog { name, invented } => unknown_log(name, invented),
        LogFault::Unreadable { file, system } => {
            Told::new(format!("`{file}` cannot be read: {system}"))
        }
        LogFault::Empty { file } => Told::new(format!("{file} is empty"))
            .hint("a log begins with a header: date,lift,load,repetitions"),
        LogFault::NoRows { file } => Told::new(format!("{file} has a header and no sets")),
        LogFault::ColumnTwice(column) => {
            let name = column.name();
            Told::new(format!("the column `{name}` stands twice in the header"))
        }
        LogFault::UnknownColumn { written, near } => unknown_column(written, *near),
        LogFault::NoColumn(column) => {
            Told::new(format!("the log has no column `{}`", column.name())).hint(holds(*column))
        }
        LogFault::Row {
            line,
            fault,
            is_last,
        } => row(*line, fault, *is_last, units),
        LogFault::MoreRows(count) => Told::new(format!("and {count} more bad rows")).hint(CORRECT),
        LogFault::NoSets => Told::new("the log has no sets")
            .hint("it needs a header and rows of date, lift, load, repetitions"),
        LogFault::MixedLifts(lifts) => mixed_lifts(lifts),
        LogFault::NoSetOf { lift, lifts } => Told::new(format!("the log has no set of {lift}"))
            .hint(format!("lifts in it: {}", counted(lifts))),
        LogFault::FewSessions {
            usable,
            least,
            for_verdict,
        } => Told::new(format!(
            "{usable} usable sessions are no trend: at least {least} are needed, {for_verdict} for a verdict"
        )),
    }
}

fn unknown_log(name: &str, invented: &[&str]) -> Told {
    Told::new(format!("no log is called `{name}`")).hint(format!(
        "invented ones: {}; your own is a file that ends in .csv",
        invented.join(", ")
    ))
}

fn mixed_lifts(lifts: &[(String, usize)]) -> Told {
    Told::new(format!(
        "the log mixes {} lifts: {}",
        lifts.len(),
        counted(lifts)
    ))
    .hint("name one of them; a trend is of one lift")
}

const CORRECT: &str = "correct the rows, or ask for bad rows to be left out";

fn counted(lifts: &[(String, usize)]) -> String {
    let named: Vec<String> = lifts
        .iter()
        .map(|(lift, count)| format!("{lift} ({count} sets)"))
        .collect();
    named.join(", ")
}

fn unknown_column(written: &str, near: Option<LogColumn>) -> Told {
    let names = LogColumn::ALL.map(LogColumn::name);
    let told = Told::new(format!("a log has no column `{written}`"))
        .hint(format!("columns: {}", names.join(", ")));
    match near {
        Some(column) => told.hint(format!("did you mean `{}`?", column.name())),
        None => told,
    }
}

fn holds(column: LogColumn) -> String {
    let what = match column {
        LogColumn::Date => "year-month-day, such as 2024-03-01",
        LogColumn::Lift => "the lift, such as bench-press",
        LogColumn::Load => "the load with its unit, such as 100 kg",
        LogColumn::Repetitions => "a whole number, 0 for a failed attempt",
        LogColumn::Velocity => "mean velocity of the fastest repetition, such as 0.35 m/s",
        LogColumn::Reserve => "repetitions left, such as 2",
        LogColumn::Note => "anything",
    };
    format!("it holds {what}")
}

fn row(line: usize, fault: &LogRowFault, is_last: bool, units: System) -> Told {
    let mut told = log_row_in_words(fault, units);
    told.message = format!("line {line}: {}", told.message);
    if is_last { told.hint(CORRECT) } else { told }
}

/// What is wrong with a row, without its line.
#[must_use]
pub fn log_row_in_words(fault: &LogRowFault, units: System) -> Told {
    match fault {
        LogRowFault::Missing(column) => {
            Told::new(format!("the row has no {}", column.name())).hint(holds(*column))
        }
        LogRowFault::TooManyFields { fields, columns } => {
            Told::new(format!("the row has {fields} fields, the header {columns}"))
                .hint("write decimals with a point, or put a field with a comma in quotes")
        }
        LogRowFault::Date(fault) => Told::new(date(fault)),
        LogRowFault::NoLift { written } => Told::new(format!("`{written}` is no lift")),
        LogRowFault::Quantity(fault) => quantity_told::told(fault),
        LogRowFault::NoLoad { written } => Told::new(format!("a load of `{written}` is no set")),
        LogRowFault::TooHeavy { written, most } => Told::new(format!(
            "`{written}` is more than anybody lifts ({})",
            units.mass(*most)
        ))
        .hint("check the unit and the number of digits"),
        LogRowFault::TooManyRepetitions { count, most } => Told::new(format!(
            "{count} repetitions are no strength set (at most {most})"
        )),
        LogRowFault::NoRepetitions { written } => {
            Told::new(format!("`{written}` is no number of repetitions"))
                .hint("a whole number such as 5")
        }
        LogRowFault::NoVelocity {
            written,
            slowest,
            fastest,
        } => Told::new(format!(
            "`{written}` is no mean velocity of a lift ({} to {} m/s)",
            slowest.as_m_s(),
            fastest.as_m_s()
        )),
        LogRowFault::NoReserve { written } => Told::new(format!("`{written}` is no reserve"))
            .hint("repetitions that were left, 0 or more, such as 2"),
    }
}

fn date(fault: &DateFault) -> String {
    const FORM: &str = "write year-month-day, such as \"2024-03-01\"";
    match fault {
        DateFault::Form { written } => format!("`{written}` is no date: {FORM}"),
        DateFault::Year {
            written,
            year,
            years: (first, last),
        } => format!("`{written}`: the year {year} is outside {first} to {last}"),
        DateFault::Month { written, month } => {
            format!("`{written}`: there is no month {month}; {FORM}")
        }
        DateFault::Day { written, days } => format!("`{written}`: that month has {days} days"),
    }
}
