//! Readings of a band as a line of text or as CSV.
//!
//! In: "120 cm=10 kg, 150 cm=18 kg", or a file with a head line. Out: lengths and forces in SI, or the faulty part.

use crate::error::{Error, GrammarFault, ReadingColumn, ReadingsFault, Result, What};
use crate::resistance::{BandReading, pull_from_text};
use crate::units::Length;

/// Reads "120 cm=10 kg, 150 cm=18 kg": readings as one line of text.
///
/// **Fails** for a part without `=`, and for a bad length or pull.
pub fn readings_from_text(text: &str) -> Result<Vec<BandReading>> {
    text.split(',')
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .map(one_reading)
        .collect()
}

fn one_reading(part: &str) -> Result<BandReading> {
    let (length, pull) = part
        .split_once('=')
        .ok_or_else(|| Error::bad(ReadingsFault::NotOne(part.to_owned())))?;
    reading(length, pull.trim())
}

fn reading(length: &str, pull: &str) -> Result<BandReading> {
    Ok(BandReading {
        length: Length::from_text(length).map_err(Error::bad)?,
        force: pull_from_text(pull).map_err(Error::bad)?,
    })
}

/// Reads CSV with a head line `length,force`; units stand in the cells ("120 cm") or in the head
/// (`length_cm,force_kg`).
///
/// **Fails** for another head and for a cell that is no length or pull, with the line.
pub fn readings_from_csv(text: &str) -> Result<Vec<BandReading>> {
    let mut reader = csv::ReaderBuilder::new()
        .trim(csv::Trim::All)
        .comment(Some(b'#'))
        .from_reader(text.as_bytes());
    let head = reader.headers().map_err(|fault| no_csv(&fault))?.clone();
    let units = [
        unit_of(&head, 0, "length", ReadingColumn::Length)?,
        unit_of(&head, 1, "force", ReadingColumn::Force)?,
    ];
    let mut readings = Vec::new();
    for row in reader.records() {
        let row = row.map_err(|fault| no_csv(&fault))?;
        let cell = |index: usize| {
            let text = row.get(index).unwrap_or_default();
            if text.parse::<f64>().is_ok() {
                format!("{text} {}", units[index])
            } else {
                text.to_owned()
            }
        };
        let line = row.position().map_or(0, csv::Position::line);
        let on_line = |fault| What::from(GrammarFault::OnLine { line, fault });
        readings.push(reading(&cell(0), &cell(1)).map_err(|error| error.inside(on_line))?);
    }
    Ok(readings)
}

/// The unit in the name of a column; empty where it stands in the cells.
fn unit_of(
    head: &csv::StringRecord,
    index: usize,
    name: &str,
    expected: ReadingColumn,
) -> Result<String> {
    let found = head.get(index).unwrap_or_default();
    let unit = found.strip_prefix(name).ok_or_else(|| {
        Error::bad(ReadingsFault::Column {
            number: index + 1,
            found: found.to_owned(),
            expected,
        })
    })?;
    let unit = unit.trim_start_matches(['_', ' ', '(']);
    Ok(unit.trim_end_matches(')').to_owned())
}

fn no_csv(fault: &csv::Error) -> Error {
    Error::bad(ReadingsFault::NoCsv {
        reason: fault.to_string(),
    })
}
