//! One row of a log, read field by field.
//!
//! In: the fields of a row and where the columns stand. Out: a [`LogEntry`]; or everything that is wrong
//! with the row, each with the columns it fills.

use super::day::Day;
use super::log_header::LogHeader;
use super::log_line::LogField;
use super::training_log::LogEntry;
use crate::bounds::bounds;
use crate::error::{LogColumn, LogRowFault};
use crate::movement::lift_name;
use crate::units::{Mass, Speed};

/// What is wrong with a row, and the columns that it stands in.
pub(super) struct BadField {
    /// What is wrong.
    pub fault: LogRowFault,
    /// First column, and the one just behind it.
    pub columns: (usize, usize),
}

type Read<T> = std::result::Result<T, BadField>;

/// Reads one row, collecting everything that is wrong with it.
pub(super) fn entry(
    header: &LogHeader,
    line: usize,
    fields: &[LogField],
) -> std::result::Result<LogEntry, Vec<BadField>> {
    check_width(header, fields).map_err(|fault| vec![fault])?;
    let field = |column| header.field(column, fields);
    let needed = |column| field(column).ok_or_else(|| whole(fields, LogRowFault::Missing(column)));
    let mut bad = Vec::new();
    let day = kept(needed(LogColumn::Date).and_then(day), &mut bad);
    let lift = kept(needed(LogColumn::Lift).and_then(lift), &mut bad);
    let load = kept(needed(LogColumn::Load).and_then(load), &mut bad);
    let repetitions = kept(
        needed(LogColumn::Repetitions).and_then(repetitions),
        &mut bad,
    );
    let velocity = kept(
        field(LogColumn::Velocity).map(velocity).transpose(),
        &mut bad,
    );
    let reserve = kept(field(LogColumn::Reserve).map(reserve).transpose(), &mut bad);
    match (day, lift, load, repetitions) {
        (Some(day), Some(lift), Some(load), Some(repetitions)) if bad.is_empty() => Ok(LogEntry {
            line,
            day,
            lift,
            load,
            repetitions,
            velocity: velocity.flatten(),
            reserve: reserve.flatten(),
        }),
        _ => Err(bad),
    }
}

fn check_width(header: &LogHeader, fields: &[LogField]) -> Read<()> {
    let (fields_count, columns) = (fields.len(), header.count());
    if fields_count > columns {
        let fault = LogRowFault::TooManyFields {
            fields: fields_count,
            columns,
        };
        return Err(whole(fields, fault));
    }
    Ok(())
}

/// The value, or its fault on the list.
fn kept<T>(read: Read<T>, bad: &mut Vec<BadField>) -> Option<T> {
    read.map_err(|fault| bad.push(fault)).ok()
}

fn wrong(field: &LogField, fault: LogRowFault) -> BadField {
    BadField {
        fault,
        columns: field.columns,
    }
}

/// A fault of the row as a whole.
fn whole(fields: &[LogField], fault: LogRowFault) -> BadField {
    let end = fields.last().map_or(1, |field| field.columns.1);
    BadField {
        fault,
        columns: (1, end),
    }
}

fn day(field: &LogField) -> Read<Day> {
    Day::from_text(&field.value).map_err(|fault| wrong(field, LogRowFault::Date(fault)))
}

fn lift(field: &LogField) -> Read<String> {
    let name = lift_name(&field.value);
    if name.is_empty() {
        let written = field.value.clone();
        return Err(wrong(field, LogRowFault::NoLift { written }));
    }
    Ok(name)
}

fn load(field: &LogField) -> Read<Mass> {
    let written = || field.value.clone();
    let mass = Mass::from_text(&field.value)
        .map_err(|fault| wrong(field, LogRowFault::Quantity(fault)))?;
    if mass <= Mass::ZERO {
        return Err(wrong(field, LogRowFault::NoLoad { written: written() }));
    }
    let bound = &bounds().log_load;
    if !bound.holds(mass.as_kg()) {
        return Err(wrong(
            field,
            LogRowFault::TooHeavy {
                written: written(),
                most: Mass::from_kg(bound.most()),
            },
        ));
    }
    Ok(mass)
}

fn repetitions(field: &LogField) -> Read<u32> {
    let bound = &bounds().log_repetitions;
    match field.value.parse::<u32>() {
        Ok(count) if bound.holds(f64::from(count)) => Ok(count),
        Ok(count) => Err(wrong(
            field,
            LogRowFault::TooManyRepetitions {
                count,
                most: bound.most_of_them() as u32,
            },
        )),
        Err(_) => {
            let written = field.value.clone();
            Err(wrong(field, LogRowFault::NoRepetitions { written }))
        }
    }
}

fn velocity(field: &LogField) -> Read<Speed> {
    let speed = Speed::from_text(&field.value)
        .map_err(|fault| wrong(field, LogRowFault::Quantity(fault)))?;
    let bound = &bounds().log_velocity;
    if !bound.holds(speed.as_m_s()) {
        return Err(wrong(
            field,
            LogRowFault::NoVelocity {
                written: field.value.clone(),
                slowest: Speed::from_m_s(bound.least()),
                fastest: Speed::from_m_s(bound.most()),
            },
        ));
    }
    Ok(speed)
}

fn reserve(field: &LogField) -> Read<f64> {
    match field.value.parse::<f64>() {
        Ok(reserve) if bounds().log_reserve.holds(reserve) => Ok(reserve),
        _ => {
            let written = field.value.clone();
            Err(wrong(field, LogRowFault::NoReserve { written }))
        }
    }
}
