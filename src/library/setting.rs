//! One `PATH=VALUE` as it was written.
//!
//! In: a text such as `segments.upper_arm.length="34 cm"`. Out: [`Setting`], or a fault that says what does not fit.

use crate::bounds::{bounds, first_hidden};
use crate::error::{Error, Result, SettingFault, SettingReason};
use crate::units::{Length, QuantityFault, parse_number_and_unit};

/// One `PATH=VALUE`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Setting {
    /// The whole path as it was written.
    pub path: String,
    /// The text of the value, without quotes around it.
    pub text: String,
}

impl Setting {
    /// Splits `PATH=VALUE`.
    pub fn read(written: &str) -> Result<Self> {
        let parts = written.split_once('=');
        let nothing = |without_sign| {
            Error::bad(SettingFault::NoSetting {
                written: written.to_owned(),
                without_sign,
            })
        };
        let (path, text) = parts.ok_or_else(|| nothing(true))?;
        let text = text.trim();
        let unquoted = text.strip_prefix('"').and_then(|t| t.strip_suffix('"'));
        let text = unquoted.unwrap_or(text).trim();
        if path.trim().is_empty() || text.is_empty() {
            return Err(nothing(false));
        }
        Ok(Self {
            path: path.trim().to_owned(),
            text: text.to_owned(),
        })
    }

    pub(super) fn fault(&self, reason: SettingReason) -> Error {
        Error::bad(SettingFault::Unfit {
            path: self.path.clone(),
            reason,
        })
    }

    /// **Fails** for a quantity with a plus: only per cents are changes, and who writes "+1 cm" may mean one.
    pub(super) fn is_no_unclear_change(&self) -> Result<()> {
        match parse_number_and_unit(&self.text) {
            Some((_, unit, _)) if self.text.starts_with('+') && unit != "%" => {
                let value = self.text.trim_start_matches('+').to_owned();
                Err(self.fault(SettingReason::UnclearChange { value }))
            }
            _ => Ok(()),
        }
    }

    /// **Fails** for a text that a picture or a terminal cannot show.
    pub(super) fn can_be_shown(&self) -> Result<()> {
        if let Some(code) = first_hidden(&self.text) {
            return Err(self.fault(SettingReason::Unprintable { code }));
        }
        let (letters, most) = (
            self.text.chars().count(),
            bounds().short_text.most_of_them(),
        );
        if letters > most {
            return Err(self.fault(SettingReason::TooLong { letters, most }));
        }
        Ok(())
    }

    /// The text as a length.
    pub(super) fn length(&self) -> Result<Length> {
        Length::from_text(&self.text).map_err(|why| self.told(why))
    }

    /// What a type of quantity says of the text.
    pub(super) fn told(&self, why: QuantityFault) -> Error {
        self.fault(SettingReason::Quantity(why))
    }
}
