//! A band of one's own as text: `mine:1@floor: rest=104 cm, 120 cm=10 kg, 150 cm=18 kg`.
//!
//! In: a name and readings, in the text or read from a file. Out: the fitted band.

use super::readings_text::readings_from_text;
use crate::error::{Error, ReadingsFault, Result};
use crate::resistance::{Band, BandReading, FittedPull};
use crate::units::Length;

/// Reads the user's own band: `mine: rest=104 cm, 120 cm=10 kg, 150 cm=18 kg`.
///
/// The readings are of the band pulled as it is, a loop as a loop. The rest length may be left out
/// when three readings pull.
///
/// **Fails** for a text without a name and for readings that allow no fit.
pub fn own_band_from_text(text: &str) -> Result<Band> {
    let (name, readings) = text
        .split_once(':')
        .filter(|(name, _)| !name.trim().is_empty())
        .ok_or_else(|| Error::bad(ReadingsFault::Unnamed(text.to_owned())))?;
    let is_rest = |part: &str| part.trim_start().starts_with("rest");
    let rest = readings.split(',').find(|part| is_rest(part));
    let rest = rest.map(|part| {
        let length = part.trim().trim_start_matches("rest");
        Length::from_text(length.trim_start_matches([' ', '=']))
    });
    let rest = rest.transpose().map_err(Error::bad)?;
    let pulls: Vec<&str> = readings.split(',').filter(|part| !is_rest(part)).collect();
    let readings = readings_from_text(&pulls.join(","))?;
    fitted(name.trim(), &readings, rest, true)
}

/// The user's own band from readings of a file.
///
/// **Fails** for readings that allow no fit.
pub fn own_band_from_readings(name: &str, readings: &[BandReading]) -> Result<Band> {
    fitted(name, readings, None, false)
}

fn fitted(
    name: &str,
    readings: &[BandReading],
    rest: Option<Length>,
    in_text: bool,
) -> Result<Band> {
    let pull = FittedPull::from_readings(readings, rest).map_err(|fault| {
        Error::bad(ReadingsFault::OwnBand {
            name: name.to_owned(),
            fault,
            in_text,
        })
    })?;
    Ok(Band::measured(name, pull))
}
