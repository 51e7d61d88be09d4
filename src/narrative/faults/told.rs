//! What a fault says: message, label of the marked stretch, next moves.
//!
//! In: words. Out: [`Told`].

use crate::error::{Fault, What};
use crate::units::System;

/// Puts what is wrong inside something wider into words.
pub(super) type TellInner = fn(&What, System) -> Told;

/// Puts a fault that a rule stands on into words.
pub(super) type TellFault = fn(&Fault, System) -> Told;

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
