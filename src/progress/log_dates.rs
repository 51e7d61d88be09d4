//! The order of day and month in the dates of a file, proved by one of them or told; never guessed.
//!
//! In: all dates of a log. Out: the order, and what proves it.

use super::log_header::LogHeader;
use super::log_note::LogNote;
use super::log_table::LogTable;
use super::written_date::WrittenDate;
use crate::error::{DateOrder, Error, Fault, LogColumn, LogFault, Result};

/// A date as written, and where.
struct SeenDate {
    start: usize,
    line: usize,
    written: String,
}

/// The order of day and month.
///
/// **Fails** where the dates prove both orders, or neither and one of them is two days.
pub(super) fn date_order(
    table: &LogTable,
    header: &LogHeader,
    header_line: usize,
    told: Option<DateOrder>,
) -> Result<(DateOrder, Option<LogNote>)> {
    if let Some(order) = told {
        return Ok((order, None));
    }
    let (mut day_first, mut month_first, mut open) = (None, None, None);
    table.below(header_line, |row| {
        let written = header.field(LogColumn::Date, row);
        if let Some((written, Ok(date))) = written.map(|text| (text, WrittenDate::from_text(text)))
        {
            let seen = |place: &mut Option<SeenDate>| {
                if place.is_none() {
                    *place = Some(SeenDate {
                        start: row.start,
                        line: row.line,
                        written: written.to_owned(),
                    });
                }
            };
            match date.proves() {
                Some(DateOrder::DayFirst) => seen(&mut day_first),
                Some(DateOrder::MonthFirst) => seen(&mut month_first),
                None if date.is_open() => seen(&mut open),
                None => {}
            }
        }
        true
    });
    let field = header.head(LogColumn::Date).map(|head| head.position);
    match (day_first, month_first, open) {
        (Some(day), Some(month), _) => {
            let fault = Fault::new(LogFault::DatesDisagree {
                day_first: (day.line, day.written),
                month_first: (month.line, month.written),
            });
            Err(fault.at(table.place(month.start, field)).into())
        }
        (Some(seen), None, open) => {
            Ok((DateOrder::DayFirst, proof(DateOrder::DayFirst, seen, open)))
        }
        (None, Some(seen), open) => Ok((
            DateOrder::MonthFirst,
            proof(DateOrder::MonthFirst, seen, open),
        )),
        (None, None, Some(open)) => {
            let place = table.place(open.start, field);
            Err(Error::from(Fault::new(two_days(open)).at(place)))
        }
        (None, None, None) => Ok((DateOrder::DayFirst, None)),
    }
}

/// What proves an order, where any date needed it.
fn proof(order: DateOrder, seen: SeenDate, open: Option<SeenDate>) -> Option<LogNote> {
    open.map(|_| LogNote::DatesProved {
        order,
        line: seen.line,
        written: seen.written,
    })
}

fn two_days(seen: SeenDate) -> LogFault {
    let SeenDate { line, written, .. } = seen;
    let day = |order| {
        let date = WrittenDate::from_text(&written).ok()?;
        let day = date.in_order(order, &written).ok()?;
        Some(day.to_string())
    };
    LogFault::TwoDays {
        line,
        day_first: day(DateOrder::DayFirst),
        month_first: day(DateOrder::MonthFirst),
        written: written.clone(),
    }
}
