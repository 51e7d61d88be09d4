//! One row of a log, read field by field.
//!
//! In: the row, where the columns stand, how dates and lifts are to be read. Out: the sets of the row; or everything
//! that is wrong with it, each with its field.

use super::day::Day;
use super::lift_names::LiftNames;
use super::log_header::{LogHeader, unit_named};
use super::log_table::TableRow;
use super::training_log::LogEntry;
use super::written_date::WrittenDate;
use crate::bounds::bounds;
use crate::error::{DateOrder, LogColumn, LogRowFault};
use crate::units::{Mass, QuantityFault, Speed};

/// What is wrong with a row, and the field that it stands in; without one it is the whole row.
pub(super) struct BadField {
    /// What is wrong.
    pub fault: LogRowFault,
    /// The field, counted from 0.
    pub field: Option<usize>,
}

type Read<T> = std::result::Result<T, LogRowFault>;

/// How the rows of a file are read.
pub(super) struct RowReader<'a> {
    /// Where the columns stand.
    pub header: LogHeader,
    /// What lifts are called.
    pub names: &'a LiftNames,
    /// The order of day and month where a date has none.
    pub order: DateOrder,
    /// Whether the log names its athletes.
    pub has_athletes: bool,
}

impl RowReader<'_> {
    /// Reads one row, collecting everything that is wrong with it.
    pub fn sets(&self, row: &TableRow<'_>) -> std::result::Result<Vec<LogEntry>, Vec<BadField>> {
        if row.width() > self.header.width {
            let fault = LogRowFault::TooManyFields {
                fields: row.width(),
                columns: self.header.width,
            };
            return Err(vec![BadField { fault, field: None }]);
        }
        let mut bad = Vec::new();
        let day = self.needed(LogColumn::Date, row, &mut bad, |text| self.day(text));
        let lift = self.needed(LogColumn::Lift, row, &mut bad, |text| self.lift(text));
        let (of_heading, of_row) = (
            self.unit(LogColumn::Load),
            self.header.field(LogColumn::Unit, row),
        );
        if let (Some(heading), Some(written)) = (of_heading, of_row)
            && unit_named(written).is_some_and(|unit| unit != heading)
        {
            let fault = LogRowFault::UnitAgainstHeading {
                written: written.to_owned(),
                heading: heading.to_owned(),
            };
            let field = self.header.head(LogColumn::Unit).map(|head| head.position);
            bad.push(BadField { fault, field });
        }
        let load_unit = of_heading.or(of_row);
        let load = self.needed(LogColumn::Load, row, &mut bad, |text| load(text, load_unit));
        let counts = self.needed(LogColumn::Repetitions, row, &mut bad, repetitions);
        let sets = self.optional(LogColumn::Sets, row, &mut bad, sets);
        let speed_unit = self.unit(LogColumn::Velocity);
        let velocity = self.optional(LogColumn::Velocity, row, &mut bad, |text| {
            velocity(text, speed_unit)
        });
        let reserve = self.optional(LogColumn::Reserve, row, &mut bad, reserve);
        let exertion = self.optional(LogColumn::Exertion, row, &mut bad, left_by_exertion);
        if let (Some(reserve), Some(exertion)) = (reserve, exertion)
            && (reserve - exertion).abs() > REASONABLY_ALIKE
        {
            let fault = LogRowFault::ReserveAgainstExertion {
                reserve,
                rating: MOST_EXERTION - exertion,
            };
            bad.push(BadField { fault, field: None });
        }
        let athlete = self.athlete(row, &mut bad);
        let (Some(day), Some(lift), Some(load), Some(mut counts)) = (day, lift, load, counts)
        else {
            return Err(bad);
        };
        if !bad.is_empty() {
            return Err(bad);
        }
        if let (Some(sets), [only]) = (sets, &counts[..]) {
            counts = vec![*only; sets as usize];
        }
        let set = |repetitions| LogEntry {
            line: row.line,
            athlete: athlete.clone(),
            day,
            lift: lift.clone(),
            load,
            repetitions,
            velocity,
            reserve: reserve.or(exertion),
        };
        Ok(counts.into_iter().map(set).collect())
    }

    /// Whether a row of a sheet that is filled in by hand has nothing filled in yet: the heading says what was "done", and
    /// neither that nor anything else that is written down of a set stands in the row.
    pub fn is_not_done(&self, row: &TableRow<'_>) -> bool {
        use LogColumn::{Exertion, Repetitions, Reserve, Velocity};
        let asks = self.header.head(Repetitions).is_some_and(|head| {
            let heading = head.heading.to_lowercase();
            let mut words = heading.split(|c: char| !c.is_alphanumeric());
            words.any(|word| word == "done")
        });
        let done = [Repetitions, Exertion, Reserve, Velocity];
        asks && done
            .iter()
            .all(|column| self.header.field(*column, row).is_none())
    }

    /// Whether the cell of repetitions itself tells several sets.
    pub fn tells_sets(&self, row: &TableRow<'_>) -> bool {
        let cell = self.header.field(LogColumn::Repetitions, row);
        cell.is_some_and(|text| whole(text).is_none())
    }

    /// The unit in a column's heading.
    fn unit(&self, column: LogColumn) -> Option<&'static str> {
        self.header.head(column)?.unit
    }

    fn needed<T>(
        &self,
        column: LogColumn,
        row: &TableRow<'_>,
        bad: &mut Vec<BadField>,
        read: impl FnOnce(&str) -> Read<T>,
    ) -> Option<T> {
        if self.header.field(column, row).is_none() {
            let fault = LogRowFault::Missing(column);
            bad.push(BadField { fault, field: None });
            return None;
        }
        self.optional(column, row, bad, read)
    }

    fn optional<T>(
        &self,
        column: LogColumn,
        row: &TableRow<'_>,
        bad: &mut Vec<BadField>,
        read: impl FnOnce(&str) -> Read<T>,
    ) -> Option<T> {
        let text = self.header.field(column, row)?;
        let field = self.header.head(column).map(|head| head.position);
        read(text)
            .map_err(|fault| bad.push(BadField { fault, field }))
            .ok()
    }

    fn athlete(&self, row: &TableRow<'_>, bad: &mut Vec<BadField>) -> Option<String> {
        if !self.has_athletes {
            return None;
        }
        self.needed(LogColumn::Athlete, row, bad, |text| Ok(text.to_owned()))
    }

    fn day(&self, text: &str) -> Read<Day> {
        let written = WrittenDate::from_text(text);
        written
            .and_then(|date| date.in_order(self.order, text))
            .map_err(LogRowFault::Date)
    }

    fn lift(&self, text: &str) -> Read<String> {
        let name = self.names.named(text);
        if name.is_empty() {
            let written = text.to_owned();
            return Err(LogRowFault::NoLift { written });
        }
        Ok(name)
    }
}

/// A number with a decimal point in place of a decimal comma.
///
/// **Fails** where three digits stand behind the comma: it may part thousands.
fn with_point(text: &str) -> Read<String> {
    let digits_behind = text.split_once(',').map(|(_, behind)| {
        let digits = behind.chars().take_while(char::is_ascii_digit);
        digits.count()
    });
    match digits_behind {
        None | Some(0) => Ok(text.to_owned()),
        Some(3) => Err(LogRowFault::CommaTwoWays {
            written: text.to_owned(),
        }),
        Some(_) => Ok(text.replacen(',', ".", 1)),
    }
}

/// Whether a cell holds a number and nothing else.
pub(super) fn is_bare_number(text: &str) -> bool {
    text.replacen(',', ".", 1).parse::<f64>().is_ok()
}

/// A number with the unit of its column where the cell has none.
pub(super) fn with_unit(text: &str, unit: Option<&str>) -> Read<String> {
    let text = with_point(text)?;
    Ok(match unit {
        Some(unit) if text.parse::<f64>().is_ok() => format!("{text} {unit}"),
        _ => text,
    })
}

/// The same fault, told of what stands in the cell.
fn of_quantity(fault: QuantityFault, written: &str) -> LogRowFault {
    LogRowFault::Quantity(match fault {
        QuantityFault::NoNumber { kind, .. } => QuantityFault::NoNumber {
            kind,
            text: written.to_owned(),
        },
        other => other,
    })
}

fn load(written: &str, unit: Option<&str>) -> Read<Mass> {
    let text = with_unit(written, unit)?;
    let mass = Mass::from_text(&text).map_err(|fault| of_quantity(fault, written))?;
    let written = || written.to_owned();
    if mass <= Mass::ZERO {
        return Err(LogRowFault::NoLoad { written: written() });
    }
    let bound = &bounds().log_load;
    if !bound.holds(mass.as_kg()) {
        return Err(LogRowFault::TooHeavy {
            written: written(),
            most: Mass::from_kg(bound.most()),
        });
    }
    Ok(mass)
}

/// Repetitions of every set of the row: "5", "5.0", "3x5" (three sets of five), "5/5/4".
fn repetitions(text: &str) -> Read<Vec<u32>> {
    let none = || LogRowFault::NoRepetitions {
        written: text.to_owned(),
    };
    let lower = text.to_lowercase();
    if let Some((sets_text, count)) = lower.split_once(['x', '×', '*']) {
        let sets = whole(sets_text).ok_or_else(none)?;
        let count = repetition_count(count, text)?;
        return Ok(vec![count; sets_in_bounds(sets, text)? as usize]);
    }
    text.split('/')
        .map(|part| repetition_count(part, text))
        .collect()
}

fn repetition_count(part: &str, text: &str) -> Read<u32> {
    let bound = &bounds().log_repetitions;
    match whole(part) {
        Some(count) if bound.holds(f64::from(count)) => Ok(count),
        Some(count) => Err(LogRowFault::TooManyRepetitions {
            count,
            most: bound.most_of_them() as u32,
        }),
        None => Err(LogRowFault::NoRepetitions {
            written: text.to_owned(),
        }),
    }
}

/// A whole number, as spreadsheets write it: "5", "5.0", "5,0".
pub(super) fn whole(text: &str) -> Option<u32> {
    let text = text.trim();
    let digits = text
        .strip_suffix(".0")
        .or_else(|| text.strip_suffix(",0"))
        .unwrap_or(text);
    let is_number = !digits.is_empty() && digits.bytes().all(|b| b.is_ascii_digit());
    is_number.then(|| digits.parse().ok()).flatten()
}

fn sets(text: &str) -> Read<u32> {
    let none = || LogRowFault::NoSets {
        written: text.to_owned(),
        most: bounds().log_sets.most_of_them() as u32,
    };
    sets_in_bounds(whole(text).ok_or_else(none)?, text)
}

fn sets_in_bounds(sets: u32, text: &str) -> Read<u32> {
    let bound = &bounds().log_sets;
    if bound.holds(f64::from(sets)) {
        return Ok(sets);
    }
    Err(LogRowFault::NoSets {
        written: text.to_owned(),
        most: bound.most_of_them() as u32,
    })
}

fn velocity(written: &str, unit: Option<&str>) -> Read<Speed> {
    let text = with_unit(written, unit).or_else(|_| {
        // Thousandths of a metre a second: "0,345" is no thousand.
        with_unit(&written.replacen(',', ".", 1), unit)
    })?;
    let speed = Speed::from_text(&text).map_err(|fault| of_quantity(fault, written))?;
    let bound = &bounds().log_velocity;
    if !bound.holds(speed.as_m_s()) {
        return Err(LogRowFault::NoVelocity {
            written: written.to_owned(),
            slowest: Speed::from_m_s(bound.least()),
            fastest: Speed::from_m_s(bound.most()),
        });
    }
    Ok(speed)
}

fn reserve(text: &str) -> Read<f64> {
    match text.replacen(',', ".", 1).parse::<f64>() {
        Ok(reserve) if bounds().log_reserve.holds(reserve) => Ok(reserve),
        _ => Err(LogRowFault::NoReserve {
            written: text.to_owned(),
        }),
    }
}

/// Repetitions by which a reserve and the one of a rating may differ (assumed: half ratings, and the reserve that is a range).
const REASONABLY_ALIKE: f64 = 1.0;

/// The rating of a set that leaves nothing.
const MOST_EXERTION: f64 = 10.0;

/// Lowest rating that stands for repetitions in reserve; below, people rate the set and count nothing.
const LEAST_EXERTION: f64 = 5.0;

/// Repetitions in reserve by a rating of perceived exertion: `reserve = 10 − rating`.
///
/// **Source.** Zourdos et al. 2016, J Strength Cond Res 30:267-275 (from memory).
fn left_by_exertion(text: &str) -> Read<f64> {
    match text.replacen(',', ".", 1).parse::<f64>() {
        Ok(rating) if (LEAST_EXERTION..=MOST_EXERTION).contains(&rating) => {
            Ok(MOST_EXERTION - rating)
        }
        _ => Err(LogRowFault::NoExertion {
            written: text.to_owned(),
        }),
    }
}
