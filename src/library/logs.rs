//! Training logs and what must be known of a lift to read them.
//!
//! In: the name of an invented log or the path of a user's; the name of a lift. Out: text; [`LiftFacts`].

use super::built_in;
use super::records::Library;
use crate::error::{Error, LogFault, Result};
use crate::movement::{CarrierRecord, EquationBias};
use crate::progress::lift_facts::LiftFacts;
use std::path::Path;

/// The invented logs.
pub(super) const INVENTED: [&str; 3] = ["rising", "stalled", "gappy"];

impl Library {
    /// A training log, an invented one by name or a file by its path: its name as messages show it, and its text.
    ///
    /// **Fails** with the known names if there is none of that name, and where the file cannot be read.
    pub fn log_text(&self, name: &str) -> Result<(String, String)> {
        if Path::new(name).extension().is_some() {
            let text = std::fs::read_to_string(name).map_err(|fault| {
                Error::bad(LogFault::Unreadable {
                    file: name.to_owned(),
                    system: fault.to_string(),
                })
            })?;
            return Ok((name.to_owned(), text));
        }
        let inside = format!("logs/{name}.csv");
        match built_in::text(&inside) {
            Some(text) => Ok((format!("models/{inside}"), text.to_owned())),
            None => Err(Error::bad(LogFault::UnknownLog {
                name: name.to_owned(),
                invented: &INVENTED,
            })),
        }
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
