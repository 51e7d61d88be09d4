//! The parts of an implement's text: the quantity that comes first, then words with a value each.
//!
//! In: `40 kg, ratio 2, from rack-high` and the words that may follow. Out: quantities by word.

use super::named_pieces::Stock;
use crate::bounds::bounds;
use crate::error::{Error, ImplementKind, ItemTextFault, Result};
use crate::resistance::Item;
use crate::units::{Angle, Length, Mass};

/// A word that may follow, each with a value.
#[derive(Debug, Clone, Copy)]
pub struct Field {
    /// The word.
    pub word: &'static str,
    /// The value that stands in where the word is left out; none where its absence says something.
    pub default: Option<&'static str>,
}

/// Makes an item from the parts of its text.
pub(super) type Reader = fn(&Words<'_>, &Stock<'_>) -> Result<Item>;

/// The parts of an item's text.
pub(super) struct Words<'a> {
    /// The whole text.
    pub(super) text: &'a str,
    /// What stands before the first word.
    pub(super) main: &'a str,
    given: Vec<(&'a str, &'a str)>,
    fields: &'static [Field],
}

impl<'a> Words<'a> {
    /// Splits what stands behind the first word of an implement's text.
    ///
    /// **Fails** for a word that is none of the fields, with those, and for one that stands twice.
    pub(super) fn split(
        text: &'a str,
        kind: ImplementKind,
        rest: &'a str,
        fields: &'static [Field],
    ) -> Result<Self> {
        let mut words = Self {
            text,
            main: rest.trim(),
            given: Vec::new(),
            fields,
        };
        if fields.is_empty() {
            return Ok(words);
        }
        let mut parts = rest.split(',').map(str::trim);
        words.main = parts.next().unwrap_or_default();
        for part in parts {
            let (word, value) = part.split_once(char::is_whitespace).unwrap_or((part, ""));
            if fields.iter().all(|field| field.word != word) {
                return Err(Error::bad(ItemTextFault::UnknownWord {
                    word: word.to_owned(),
                    text: text.to_owned(),
                    kind,
                }));
            }
            if words.given.iter().any(|(known, _)| *known == word) {
                return Err(Error::bad(ItemTextFault::WordTwice {
                    word: word.to_owned(),
                    text: text.to_owned(),
                }));
            }
            words.given.push((word, value.trim()));
        }
        Ok(words)
    }

    /// The value of a word, or the one that stands in for it.
    pub(super) fn value(&self, word: &str) -> Option<&'a str> {
        let given = self.given.iter().find(|(known, _)| *known == word);
        let default = || self.fields.iter().find(|field| field.word == word)?.default;
        given.map(|(_, value)| *value).or_else(default)
    }

    /// The mass that comes first.
    pub(super) fn mass(&self) -> Result<Mass> {
        load_from_text(self.main)
    }

    /// The length behind a word.
    pub(super) fn length(&self, word: &str) -> Result<Option<Length>> {
        self.value(word)
            .map(Length::from_text)
            .transpose()
            .map_err(Error::bad)
    }

    /// The angle behind a word.
    pub(super) fn angle(&self, word: &str) -> Result<Option<Angle>> {
        self.value(word)
            .map(Angle::from_text)
            .transpose()
            .map_err(Error::bad)
    }

    /// The number or share behind a word that has a default.
    pub(super) fn number(&self, word: &str) -> Result<f64> {
        self.share_or_number(self.value(word).unwrap_or_default())
    }

    /// Reads "5 %" or "0.05".
    pub(super) fn share_or_number(&self, value: &str) -> Result<f64> {
        let (digits, scale) = match value.strip_suffix('%') {
            Some(digits) => (digits.trim(), 100.0),
            None => (value, 1.0),
        };
        let number = digits.parse::<f64>().ok();
        number
            .filter(|number| number.is_finite())
            .map(|number| number / scale)
            .ok_or_else(|| {
                Error::bad(ItemTextFault::NoNumber {
                    value: value.to_owned(),
                    text: self.text.to_owned(),
                })
            })
    }
}

/// Reads a plain load, "100 kg" or "225 lb".
///
/// **Fails** for a bad mass and for one beyond 2000 kg.
pub fn load_from_text(text: &str) -> Result<Mass> {
    let mass = Mass::from_text(text).map_err(Error::bad)?;
    let bound = &bounds().load_mass;
    if !bound.holds(mass.as_kg()) {
        return Err(Error::bad(ItemTextFault::TooHeavy {
            text: text.to_owned(),
            most_kg: bound.most(),
        }));
    }
    Ok(mass)
}
