//! Readings of a band as a line of text or as CSV.
//!
//! In: "120 cm=10 kg, 150 cm=18 kg", or a file with a head line. Out: lengths and forces in SI, or the faulty part.

use crate::error::{Error, Fault, Result};
use crate::resistance::{Reading, pull_from_text};
use crate::units::Length;

/// Reads "120 cm=10 kg, 150 cm=18 kg": readings as one line of text.
///
/// **Fails** for a part without `=`, and for a bad length or pull.
pub fn readings_from_text(text: &str) -> Result<Vec<Reading>> {
    text.split(',')
        .map(str::trim)
        .filter(|part| !part.is_empty())
        .map(one_reading)
        .collect()
}

fn one_reading(part: &str) -> Result<Reading> {
    let (length, pull) = part.split_once('=').ok_or_else(|| {
        Error::bad(format!("`{part}` is no reading of a band"))
            .hint("write length=pull, such as \"120 cm=10 kg, 150 cm=18 kg\"")
    })?;
    Ok(Reading {
        length: Length::from_text(length).map_err(Error::bad)?,
        force: pull_from_text(pull.trim()).map_err(Error::bad)?,
    })
}

/// Reads CSV with a head line `length,force`; units stand in the cells ("120 cm") or in the head
/// (`length_cm,force_kg`).
///
/// **Fails** for another head and for a cell that is no length or pull, with the line.
pub fn readings_from_csv(text: &str) -> Result<Vec<Reading>> {
    let mut reader = csv::ReaderBuilder::new()
        .trim(csv::Trim::All)
        .comment(Some(b'#'))
        .from_reader(text.as_bytes());
    let head = reader
        .headers()
        .map_err(|fault| unreadable(&fault))?
        .clone();
    let unit_of = |index: usize, name: &str| -> Result<String> {
        let found = head.get(index).unwrap_or_default();
        let unit = found
            .strip_prefix(name)
            .map(|rest| rest.trim_start_matches(['_', ' ', '(']));
        unit.map(|unit| unit.trim_end_matches(')').to_owned())
            .ok_or_else(|| {
                Error::bad(format!(
                    "column {} is called `{found}`, expected `{name}`",
                    index + 1
                ))
                .hint("the head line is `length,force`, or with units `length_cm,force_kg`")
            })
    };
    let units = [unit_of(0, "length")?, unit_of(1, "force")?];
    let mut readings = Vec::new();
    for row in reader.records() {
        let row = row.map_err(|fault| unreadable(&fault))?;
        let line = row.position().map_or(0, csv::Position::line);
        let cell = |index: usize| {
            let text = row.get(index).unwrap_or_default();
            let bare = text.parse::<f64>().is_ok();
            if bare {
                format!("{text} {}", units[index])
            } else {
                text.to_owned()
            }
        };
        let at_line = |fault: String| Error::bad(format!("line {line}: {fault}"));
        readings.push(Reading {
            length: Length::from_text(&cell(0))
                .map_err(|fault| at_line(Fault::new(fault).message))?,
            force: pull_from_text(&cell(1)).map_err(at_line)?,
        });
    }
    Ok(readings)
}

fn unreadable(fault: &csv::Error) -> Error {
    Error::bad(format!("the readings are no CSV: {fault}"))
        .hint("write one reading a line: length,force")
}
