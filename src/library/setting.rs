//! One `PATH=VALUE` as it was written.
//!
//! In: a text such as `segments.upper_arm.length="34 cm"`. Out: [`Setting`], or a fault that says what does not fit.

use crate::bounds::{bounds, first_hidden};
use crate::error::{Error, Fault, Result, SettingFault, SettingReason};
use crate::units::{Length, QuantityFault, parse_number_and_unit};

/// Settings as they were typed, each of a value of its own.
///
/// **Fails** with every text that sets nothing, and with every value that is set twice: one of the two would be lost.
pub(super) fn each_once(written: &[String]) -> Result<Vec<Setting>> {
    let (mut read, mut faults): (Vec<Setting>, Vec<Fault>) = (Vec::new(), Vec::new());
    for written in written {
        match Setting::read(written) {
            Ok(setting) => read.push(setting),
            Err(error) => faults.extend(error.faults().iter().cloned()),
        }
    }
    for (index, setting) in read.iter().enumerate() {
        let place = setting.place();
        if let Some(first) = read[..index].iter().find(|first| first.place() == place) {
            faults.push(Fault::new(SettingFault::Twice {
                first: [first.path.clone(), first.text.clone()],
                second: [setting.path.clone(), setting.text.clone()],
            }));
        }
    }
    if faults.is_empty() {
        return Ok(read);
    }
    Err(Error::bad_input(faults))
}

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
        // A path with a dot too many leads nowhere, and so does none.
        if path.trim().split('.').any(str::is_empty) || text.is_empty() {
            return Err(nothing(false));
        }
        Ok(Self {
            path: path.trim().to_owned(),
            text: text.to_owned(),
        })
    }

    /// The path in one form, so that two ways to write it are alike: what stands for the whole of a value by its own name is
    /// left out.
    fn place(&self) -> String {
        let path = match self.path.strip_prefix("movement.") {
            Some(inside) if inside.starts_with("technique.") => inside,
            _ => &self.path,
        };
        let path = [".scale", ".value"]
            .into_iter()
            .find_map(|whole| path.strip_suffix(whole))
            .unwrap_or(path);
        let steps = path.split('.').map(|step| {
            let number = step.parse::<usize>().ok();
            number.map_or_else(|| step.to_owned(), |number| number.to_string())
        });
        steps.collect::<Vec<_>>().join(".")
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
