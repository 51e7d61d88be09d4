//! The height of a bar over time, as a phone or any other device records it.
//!
//! In: a text of rows with a time and a position, the names of both columns. Out: [`BarTrace`]; units stand behind the
//! columns' names ("position_mm", "time [ms]"), else they are seconds and metres.

use super::log_table::{LogTable, TableRow};
use crate::bounds::bounds;
use crate::error::{Error, Result, TraceFault};

/// Heights over time, in the order of time.
#[derive(Debug, Clone, PartialEq)]
pub struct BarTrace {
    /// Time, s, and height, m, of every row that holds both.
    pub points: Vec<(f64, f64)>,
    /// Rows that hold no two numbers.
    pub left_out: usize,
}

/// Units of time, and seconds in each.
const TIMES: [(&str, f64); 3] = [("us", 1.0e-6), ("ms", 1.0e-3), ("s", 1.0)];
/// Units of length, and metres in each.
const LENGTHS: [(&str, f64); 5] = [
    ("mm", 1.0e-3),
    ("cm", 1.0e-2),
    ("in", 0.0254),
    ("ft", 0.3048),
    ("m", 1.0),
];
/// Rows that a repetition has at least.
const FEWEST_ROWS: usize = 20;

/// A column: its place and what its unit is of one.
struct TraceColumn {
    place: usize,
    unit: f64,
}

impl BarTrace {
    /// Reads a trace whose columns of time and position are called so: "time,position".
    ///
    /// **Fails** where a column is not there or stands for no two, where time runs backward, and with too few rows.
    pub fn read(file: &str, text: &str, columns: &str) -> Result<Self> {
        let named: Vec<&str> = columns.split(',').map(str::trim).collect();
        let one = || TraceFault::NoTwoColumns {
            written: columns.to_owned(),
        };
        let [time, position] = named[..] else {
            return Err(Error::bad(one()));
        };
        if time == position {
            return Err(Error::bad(one()));
        }
        let table = LogTable::of(file, text);
        table.check()?;
        let mut header = None;
        let mut seen: Vec<String> = Vec::new();
        table.rows(|row| {
            let of = |name: &str, units: &[(&str, f64)]| column(row, name, units);
            let found = of(time, &TIMES).zip(of(position, &LENGTHS));
            header = found.map(|columns| (columns, row.line));
            if header.is_none() && seen.is_empty() {
                seen = row.fields().map(str::to_owned).collect();
            }
            header.is_none()
        });
        let Some(((time, position), line)) = header else {
            return Err(Error::bad(TraceFault::NoColumns {
                file: file.to_owned(),
                written: columns.to_owned(),
                seen,
            }));
        };
        let (mut points, mut left_out) = (Vec::new(), 0);
        table.below(line, |row| {
            let number = |column: &TraceColumn| {
                let value = number_of(row.field(column.place))?;
                Some(value * column.unit)
            };
            match number(&time).zip(number(&position)) {
                Some(point) => points.push((point, row.line)),
                None => left_out += 1,
            }
            true
        });
        let mut trace = Self {
            points: Vec::with_capacity(points.len()),
            left_out,
        };
        for ((at, height), line) in points {
            match trace.points.last() {
                // A row that stands twice tells nothing new.
                Some((last, _)) if at == *last => trace.left_out += 1,
                Some((last, _)) if at < *last => {
                    return Err(Error::bad(TraceFault::Backward {
                        file: file.to_owned(),
                        line,
                    }));
                }
                _ => trace.points.push((at, height)),
            }
        }
        trace.check(file)?;
        Ok(trace)
    }

    fn check(&self, file: &str) -> Result<()> {
        if self.points.len() < FEWEST_ROWS {
            return Err(Error::bad(TraceFault::TooShort {
                file: file.to_owned(),
                rows: self.points.len(),
                least: FEWEST_ROWS,
            }));
        }
        let heights = self.points.iter().map(|(_, height)| *height);
        let highest = heights.clone().fold(f64::NEG_INFINITY, f64::max);
        let way_m = highest - heights.fold(f64::INFINITY, f64::min);
        if bounds().traced_way.holds(way_m) {
            return Ok(());
        }
        Err(Error::bad(TraceFault::NoWay {
            file: file.to_owned(),
            way_m,
        }))
    }
}

/// A number, with a decimal point or comma.
fn number_of(field: &str) -> Option<f64> {
    let number = field.replacen(',', ".", 1).parse::<f64>();
    number.ok().filter(|number| number.is_finite())
}

/// The column of a row that is called so, with or without a unit behind the name.
fn column(row: &TableRow<'_>, name: &str, units: &[(&str, f64)]) -> Option<TraceColumn> {
    let wanted = name.to_lowercase();
    row.fields().enumerate().find_map(|(place, field)| {
        let field = field.to_lowercase();
        let behind = field.strip_prefix(wanted.as_str())?;
        let is_sign = |sign: char| " _-.()[]/".contains(sign);
        let unit = behind.trim_matches(is_sign);
        let factor = match unit {
            "" => wanted
                .rsplit(is_sign)
                .next()
                .and_then(|last| units.iter().find(|(unit, _)| last == *unit))
                .filter(|_| wanted.contains(is_sign))
                .map_or(1.0, |(_, factor)| *factor),
            unit => units.iter().find(|(known, _)| *known == unit)?.1,
        };
        Some(TraceColumn {
            place,
            unit: factor,
        })
    })
}
