//! Training logs and what must be known of a lift to read them.
//!
//! In: the name of an invented log or the path of a user's; the name of a lift. Out: text; [`LiftFacts`].

use super::bounded_read::{ByteOrder, bytes_of_file, utf16_order};
use super::built_in;
use super::records::Library;
use crate::error::{Error, FileFault, LogFault, Result};
use crate::movement::{CarrierRecord, EquationBias, lift_name};
use crate::progress::lift_facts::LiftFacts;
use crate::progress::lift_names::LiftNames;
use std::path::Path;

/// The invented logs.
pub(super) const INVENTED: [&str; 3] = ["rising", "stalled", "gappy"];

impl Library {
    /// A training log, an invented one by name or a file by its path: its name as messages show it, and its text.
    ///
    /// **Fails** with the known names if there is none of that name, and where the file cannot be read.
    pub fn log_text(&self, name: &str) -> Result<(String, String)> {
        let path = Path::new(name);
        let is_path = path.extension().is_some() || path.components().count() > 1;
        let inside = format!("logs/{name}.csv");
        match built_in::text(&inside).filter(|_| !is_path) {
            Some(text) => Ok((format!("models/{inside}"), text.to_owned())),
            None if is_path || path.exists() => Ok((name.to_owned(), text_of_log(name)?)),
            None if self.own_file(&inside).is_some() => {
                let own = self.own_file(&inside).unwrap_or_default();
                let shown = own.display().to_string();
                let text = text_of_log(&shown)?;
                Ok((shown, text))
            }
            None => Err(Error::bad(LogFault::UnknownLog {
                name: name.to_owned(),
                invented: &INVENTED,
            })),
        }
    }

    /// The trace of a bar, an invented one by name or a file by its path: its name as messages show it, and its text.
    ///
    /// **Fails** where the file cannot be read.
    pub fn trace_text(&self, name: &str) -> Result<(String, String)> {
        match built_in::text(&format!("traces/{name}.csv")) {
            Some(text) => Ok((name.to_owned(), text.to_owned())),
            None => Ok((name.to_owned(), text_of_log(name)?)),
        }
    }

    /// What lifts are called: every movement by its own name and those in its file; of two movements of one name that
    /// one which is called as its file.
    #[must_use]
    pub fn lift_names(&self) -> LiftNames {
        let known = self.movements().into_iter();
        let mut known: Vec<(String, Vec<String>)> = known
            .filter_map(|name| {
                let called = self.movement(&name).ok()?.handling.called;
                Some((name.clone(), [vec![name], called].concat()))
            })
            .collect();
        let is_other = |(name, called): &(String, Vec<String>)| {
            !called[1..].iter().any(|other| lift_name(other) == *name)
        };
        known.sort_by_key(is_other);
        LiftNames::of(
            known
                .iter()
                .map(|(name, called)| (name.as_str(), &called[..])),
        )
    }

    /// What must be known of a lift to read its log; a lift that no movement stands for has nothing special.
    #[must_use]
    pub fn lift_facts(&self, lift: &str) -> LiftFacts {
        let names = self.movements();
        let movements = names.iter().filter_map(|name| self.movement(name).ok());
        let known = movements
            .into_iter()
            .find(|movement| movement.handling.reads_log_of(lift));
        known.map_or_else(LiftFacts::default, |movement| LiftFacts {
            is_estimated_low: movement.handling.general_equations == EquationBias::TooLow,
            moves_body: matches!(movement.carrier, CarrierRecord::Body),
        })
    }
}

/// The text of a log; that of spreadsheets may be UTF-16.
fn text_of_log(name: &str) -> Result<String> {
    let file = || name.to_owned();
    let bytes = bytes_of_file(Path::new(name))?;
    if let Some(order) = utf16_order(&bytes) {
        let from = match order {
            ByteOrder::Little => u16::from_le_bytes,
            ByteOrder::Big => u16::from_be_bytes,
        };
        let (pairs, _) = bytes.as_chunks::<2>();
        let units: Vec<u16> = pairs.iter().map(|pair| from(*pair)).collect();
        let text = String::from_utf16_lossy(&units);
        return Ok(text.trim_start_matches('\u{feff}').to_owned());
    }
    match &bytes[..] {
        [b'P', b'K', 3, 4, ..] => Err(Error::bad(LogFault::Workbook { file: file() })),
        _ => match std::str::from_utf8(&bytes) {
            Ok(text) => Ok(text.to_owned()),
            Err(fault) => Err(Error::bad(FileFault::NotUtf8 {
                file: file(),
                byte: fault.valid_up_to() + 1,
            })),
        },
    }
}
