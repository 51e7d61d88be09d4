//! A band of one's own as text: `mine:1@floor: rest=104 cm, 120 cm=10 kg, 150 cm=18 kg`.
//!
//! In: a name and readings, in the text or read from a file. Out: the fitted band.

use super::named_pieces::Stock;
use super::piece_texts::band_from_text;
use super::readings_text::readings_from_text;
use crate::error::{Error, ReadingsFault, Result};
use crate::resistance::{Band, BandReading, FittedPull, HungBand};
use crate::units::Length;
use std::collections::BTreeMap;

/// The parts of `NAME[:COUNT[@ANCHOR]][,WORD]: READINGS`.
#[derive(Debug, Clone, Copy)]
pub struct OwnBandText<'a> {
    /// The band and how it hangs.
    head: &'a str,
    /// What the band is called.
    pub name: &'a str,
    /// Its readings, or the path of a CSV file.
    readings: &'a str,
}

impl<'a> OwnBandText<'a> {
    /// The parts of a text that describes a band by readings; nothing where it names one.
    #[must_use]
    pub fn of(text: &'a str) -> Option<Self> {
        if !text.contains('=') && !text.trim_end().ends_with(".csv") {
            return None;
        }
        let readings_begin = text.find('=').unwrap_or(text.len());
        let (head, readings) = match text[..readings_begin].rfind(':') {
            Some(colon) => (text[..colon].trim(), text[colon + 1..].trim()),
            None => ("", text),
        };
        let name = head.split([':', '@', ',']).next().unwrap_or_default();
        Some(Self {
            head,
            name: name.trim(),
            readings,
        })
    }

    /// The path of the CSV file with the readings, where they stand in one.
    #[must_use]
    pub fn file(&self) -> Option<&'a str> {
        (self.readings.ends_with(".csv") && !self.name.is_empty()).then_some(self.readings)
    }

    /// The band by the readings in the text.
    ///
    /// **Fails** as [`own_band_from_text`].
    pub fn band(&self) -> Result<Band> {
        own_band_from_text(&format!("{}: {}", self.name, self.readings))
    }

    /// The band hung as the text says.
    ///
    /// **Fails** for an unknown anchor, a bad count, a word of chains.
    pub fn hung(&self, band: Band, stock: &Stock) -> Result<HungBand> {
        let only = BTreeMap::from([(self.name.to_owned(), band)]);
        let stock = Stock {
            bands: &only,
            ..*stock
        };
        band_from_text(self.head, &stock)
    }
}

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
    let mut rests = readings.split(',').filter(|part| is_rest(part));
    let rest = rests.next();
    if rests.next().is_some() {
        return Err(Error::bad(ReadingsFault::TwoRests(text.to_owned())));
    }
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
