//! Faults in words: message, label of the marked stretch, next moves; one file a room.
//!
//! In: a [`Fault`] and the units that the user asked for. Out: [`Told`].

mod body;
mod command;
mod figure;
mod grammar;
mod gym;
mod hold;
mod implement;
mod known;
mod log;
mod model;
mod model_body;
mod model_movement;
mod model_rule;
mod model_setting;
mod model_text;
mod numeric;
mod outcome;
mod path;
mod pick;
mod planning;
mod quantity;
mod repetition;
mod session;
mod study;

pub use log::log_row_in_words;

use crate::error::{Error, Fault, What};
use crate::units::System;

/// A fault in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told {
    /// What is wrong, without a full stop.
    pub message: String,
    /// A short label for the marked stretch of a file.
    pub label: Option<String>,
    /// What to try next, one move a line.
    pub hints: Vec<String>,
}

impl Told {
    /// A message and nothing else.
    #[must_use]
    pub fn new(message: impl Into<String>) -> Self {
        Self {
            message: message.into(),
            label: None,
            hints: Vec::new(),
        }
    }

    /// The same with a label on the marked stretch.
    #[must_use]
    pub fn label(mut self, label: impl Into<String>) -> Self {
        self.label = Some(label.into());
        self
    }

    /// The same with one more next move.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hints.push(hint.into());
        self
    }
}

/// A fault in words, quantities in the units asked for.
#[must_use]
pub fn told(fault: &Fault, units: System) -> Told {
    let mut told = match &fault.what {
        None => Told::new(fault.message.clone()),
        Some(what) => of(what, units),
    };
    if told.label.is_none() {
        told.label.clone_from(&fault.label);
    }
    told.hints.extend(fault.hints.iter().cloned());
    told
}

/// An error where it is told beside something else: its faults line by line, next moves behind them.
#[must_use]
pub fn in_one_line(error: &Error, units: System) -> String {
    let lines = error.faults().iter().map(|fault| {
        let told = told(fault, units);
        let place = fault.place.as_ref().map(|place| {
            let (line, column) = place.start;
            format!(" ({}:{line}:{column})", place.file)
        });
        let hints = told.hints.iter().map(|hint| format!("; {hint}"));
        told.message + &place.unwrap_or_default() + &hints.collect::<String>()
    });
    lines.collect::<Vec<String>>().join("\n")
}

/// What is wrong in one sentence, in metric units. (Passing: for rooms that still read a message.)
pub(crate) fn message(what: &What) -> String {
    of(what, System::Metric).message
}

/// What is wrong, in words, quantities in the units asked for.
fn of(what: &What, units: System) -> Told {
    match what {
        What::Told(text) => Told::new(text.clone()),
        What::Quantity(fault) => quantity::told(fault),
        What::Numeric(fault) => numeric::told(fault),
        What::Body(fault) => body::told(fault),
        What::Path(fault) => path::told(fault, units),
        What::Hold(fault) => hold::told(fault),
        What::Repetition(fault) => repetition::told(fault, units),
        What::Implement(fault) => implement::told(fault, units),
        What::Grammar(fault) => grammar::told(fault, units),
        What::Gym(fault) => gym::told(fault, units),
        What::Log(fault) => log::told(fault, units),
        What::Plan(fault) => planning::told(fault, units),
        What::Session(fault) => session::told(fault, units),
        What::Model(fault) => model::told(fault, units),
        What::Study(fault) => study::told(fault, units),
        What::Figure(fault) => figure::told(fault, units),
        What::Command(fault) => command::told(fault, units),
    }
}
