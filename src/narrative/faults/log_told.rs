//! Words for: what is wrong with a training log.

use super::odd_maximum_told::odd_one_rm;
use super::{Told, quantity_told};
use crate::error::{DateFault, LogColumn, LogFault, LogRowFault};
use crate::narrative::prose::counted_noun;
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &LogFault, units: System) -> Told {
    match fault {
        LogFault::UnknownLog { name, invented } => unknown_log(name, invented),
        LogFault::Workbook { file } => {
            Told::new(format!("`{file}` is a workbook or an archive, no text"))
                .hint("save the sheet as CSV and give that file")
        }
        LogFault::Empty { file } => Told::new(format!("{file} is empty"))
            .hint("a log begins with a header: date,lift,load,repetitions"),
        LogFault::NoRows { file } => Told::new(format!("{file} has a header and no sets")),
        LogFault::NothingDone { file, rows } => Told::new(format!(
            "{file} is a log to fill in, and none of its {} is filled in yet",
            counted_noun(*rows, "set")
        ))
        .hint("write the date and the repetitions done of every set that was lifted, and what was left in reserve; the others are passed over"),
        LogFault::ColumnTwice { column, headings } => column_twice(*column, headings),
        LogFault::NoColumn {
            column,
            near,
            headings,
        } => no_column(*column, near.as_ref(), headings),
        LogFault::NoUnit {
            column,
            heading,
            written,
        } => no_unit(*column, heading, written),
        LogFault::TwoDays { .. } | LogFault::DatesDisagree { .. } => of_dates(fault),
        LogFault::Ahead { line, day, today } => Told::new(format!(
            "line {line}: the set is of {day}, more than a year after today, {today}"
        ))
        .hint("a log is of what was done: correct the year, or the clock of this machine")
        .hint("a plan that is to begin later still says so by --start"),
        LogFault::OpenQuote { line } => Told::new(format!(
            "line {line}: a quote opens here and is never closed"
        ))
        .hint("close it, or write it twice if it belongs to the text: \"\""),
        LogFault::Row {
            line,
            fault,
            is_last,
        } => row(*line, fault, *is_last, units),
        LogFault::BadRows { file, count } => Told::new(format!(
            "{} of {file} cannot be read",
            counted_noun(*count, "row")
        ))
        .hint(CORRECT),
        LogFault::MoreRows(count) => {
            let rows = counted_noun(*count, "more bad row");
            Told::new(format!("and {rows}")).hint(CORRECT)
        }
        LogFault::NoSets => Told::new("the log has no sets")
            .hint("it needs a header and rows of date, lift, load, repetitions"),
        LogFault::MixedLifts(lifts) => mixed_lifts(lifts),
        LogFault::SeveralAthletes(athletes) => Told::new(format!(
            "the log is of {} athletes: {}",
            athletes.len(),
            counted(athletes)
        ))
        .hint("name one of them with --athlete; a trend is of one"),
        LogFault::NoSetOfAthlete { athlete, athletes } => no_set_of_athlete(athlete, athletes),
        LogFault::NoSetOf { lift, lifts } => Told::new(format!("the log has no set of {lift}"))
            .hint(format!("lifts in it: {}", counted(lifts))),
        LogFault::FewSessions {
            usable,
            least,
            for_verdict,
        } => Told::new(format!(
            "{}: no trend; at least {least} are needed, {for_verdict} for a verdict",
            counted_noun(*usable, "usable session")
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
    .hint("name one of them with --lift; a trend is of one lift")
}

/// At most this many lifts or athletes are named.
const MOST_NAMED: usize = 12;

const CORRECT: &str = "correct the rows, or leave bad rows out with --skip-bad-rows";

/// Lifts or athletes with their sets: the first by name, the rest by number.
pub(super) fn counted(lifts: &[(String, usize)]) -> String {
    let named: Vec<String> = lifts
        .iter()
        .take(MOST_NAMED)
        .map(|(lift, count)| format!("{lift} ({})", counted_noun(*count, "set")))
        .collect();
    let more = lifts.len().saturating_sub(MOST_NAMED);
    let more = if more > 0 {
        format!(" and {more} more")
    } else {
        String::new()
    };
    named.join(", ") + &more
}

fn column_twice(column: LogColumn, [first, second]: &[String; 2]) -> Told {
    Told::new(format!(
        "`{first}` and `{second}` are both read as the {}",
        column.name()
    ))
    .hint("take one of them out, or give it another heading")
}

fn no_column(column: LogColumn, near: Option<&String>, headings: &[String]) -> Told {
    let told = Told::new(format!("the log has no column `{}`", column.name())).hint(holds(column));
    let told = match near {
        Some(near) => told.hint(format!(
            "`{near}` is no column of a log; did you mean `{}`?",
            column.name()
        )),
        None => told,
    };
    match headings {
        [only] => told.hint(format!(
            "the whole heading is one field, `{}`: columns are parted by a comma, a semicolon or a tab",
            shortened(only)
        )),
        _ => told,
    }
}

/// A text that may be of any length.
fn shortened(text: &str) -> String {
    const MOST: usize = 60;
    match text.char_indices().nth(MOST) {
        Some((end, _)) => format!("{}…", &text[..end]),
        None => text.to_owned(),
    }
}

fn no_unit(column: LogColumn, heading: &str, written: &str) -> Told {
    let unit = if column == LogColumn::Velocity {
        "m/s"
    } else {
        "kg"
    };
    let (name, rest) = heading.split_at(heading.find(['(', '[']).unwrap_or(heading.len()));
    let name = name.trim_end();
    let told = match rest.trim_matches(['(', ')', '[', ']', ' ']) {
        "" => format!("neither has the heading `{heading}`"),
        other => format!("`{other}` in the heading `{heading}` is none that is read here"),
    };
    Told::new(format!("`{written}` has no unit, and {told}")).hint(format!(
        "write the unit into the heading, `{name} ({unit})`, or behind each number, `{written} {unit}`"
    ))
}

fn of_dates(fault: &LogFault) -> Told {
    match fault {
        LogFault::TwoDays {
            line,
            written,
            day_first,
            month_first,
        } => {
            let told = Told::new(format!(
                "line {line}: `{written}` may be two days, and no date of the log says which"
            ));
            let orders = [("day-first", day_first), ("month-first", month_first)];
            orders.into_iter().fold(told, |told, (order, day)| match day {
                Some(day) => told.hint(format!("--dates {order} reads it as {day}")),
                None => told,
            })
        }
        LogFault::DatesDisagree {
            day_first: (day_line, day),
            month_first: (month_line, month),
        } => Told::new(format!(
            "the day stands first in `{day}` (line {day_line}) and the month in `{month}` (line {month_line})"
        ))
        .hint("write all dates in one order, best year-month-day, or tell it: --dates day-first|month-first"),
        _ => Told::new(""),
    }
}

fn no_set_of_athlete(athlete: &str, athletes: &[(String, usize)]) -> Told {
    let told = Told::new(format!("the log has no set of {athlete}"));
    if athletes.is_empty() {
        told.hint("it has no column `athlete`: leave --athlete out")
    } else {
        told.hint(format!("athletes in it: {}", counted(athletes)))
    }
}

fn holds(column: LogColumn) -> String {
    let what = match column {
        LogColumn::Date => "the day, such as 2024-03-01",
        LogColumn::Lift => "the lift, such as bench-press",
        LogColumn::Load => "the load with its unit in the cell or the heading, such as 100 kg",
        LogColumn::Repetitions => {
            "a whole number, 0 for a failed attempt, or 3x5 for three sets of five"
        }
        LogColumn::Sets => "how many sets the row stands for",
        LogColumn::Exertion => "a rating of perceived exertion from 5 to 10",
        LogColumn::Athlete => "the name of who lifted",
        LogColumn::Unit => "the unit of the load, kg or lb",
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
            let fields = counted_noun(*fields, "field");
            Told::new(format!("the row has {fields}, the header {columns}"))
                .hint("write decimals with a point, or put a field with a comma in quotes")
        }
        LogRowFault::Date(fault) => Told::new(date_in_words(fault)),
        LogRowFault::NoLift { written } => Told::new(format!("`{written}` is no lift")),
        LogRowFault::ImpossibleOneRm {
            movement,
            one_rm,
            over_expected,
            deviations,
            judged_by,
        } => {
            let odd = (*over_expected, *deviations, *judged_by);
            Told::new(odd_one_rm(movement, (*one_rm, ""), odd, units))
        }
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
                .hint("a whole number such as 5, or 3x5 for three sets of five")
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
        LogRowFault::NoSets { written, most } => {
            Told::new(format!("`{written}` is no number of sets (1 to {most})"))
        }
        LogRowFault::NoExertion { written } => Told::new(format!(
            "`{written}` is no rating from 5 to 10 that stands for repetitions in reserve"
        ))
        .hint("leave the field empty for easier sets"),
        LogRowFault::UnitAgainstHeading { written, heading } => Told::new(format!(
            "the unit is `{written}`, and the heading of the loads says {heading}"
        ))
        .hint("correct one of the two: a load has one unit"),
        LogRowFault::ReserveAgainstExertion { reserve, rating } => Told::new(format!(
            "{} in reserve and a rating of {} tell different sets: {} would leave {}",
            rounded(*reserve, 1),
            rounded(*rating, 1),
            rounded(*rating, 1),
            rounded(10.0 - rating, 1)
        ))
        .hint("correct one of the two, or take its column out"),
        LogRowFault::CommaTwoWays { written } => Told::new(format!(
            "the comma in `{written}` may part decimals or thousands"
        ))
        .hint("write a point for decimals and nothing for thousands"),
        LogRowFault::NoReserve { written } => Told::new(format!("`{written}` is no reserve"))
            .hint("repetitions that were left, 0 or more, such as 2"),
    }
}

/// What is wrong with a date.
pub(super) fn date_in_words(fault: &DateFault) -> String {
    const FORM: &str = "write year-month-day, such as 2024-03-01";
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
        DateFault::ShortYear {
            written,
            year_first,
            year_last,
        } => {
            format!("`{written}` may be {year_first} or {year_last}: write the year in four digits")
        }
        DateFault::Day { written, days } => format!("`{written}`: that month has {days} days"),
    }
}
