//! At which step a lift went wrong, and why.
//!
//! In: an error of the rooms. Out: [`LiftError`] with a [`Reason`] in words.

use crate::error::{Error, FaultKind};
use crate::narrative::faults::{in_one_line, told};
use crate::units::System;
use std::fmt;

/// At which step a lift went wrong, and why.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
#[non_exhaustive]
pub enum LiftError {
    /// The folder of model files cannot be used.
    #[error("models: {0}")]
    Models(Reason),
    /// There is no such movement, or its file is wrong.
    #[error("movement: {0}")]
    Movement(Reason),
    /// There is no such lifter, or the file is wrong.
    #[error("lifter: {0}")]
    Lifter(Reason),
    /// A path or value does not fit the model.
    #[error("setting: {0}")]
    Setting(Reason),
    /// A text is no load, or the movement cannot take it.
    #[error("load: {0}")]
    Load(Reason),
    /// A text is no speed.
    #[error("speed: {0}")]
    Speed(Reason),
    /// The question is well put and has no answer.
    #[error("no answer: {0}")]
    NoAnswer(Reason),
    /// The chart cannot be drawn.
    #[error("drawing: {0}")]
    Drawing(Reason),
}

impl LiftError {
    /// Why.
    ///
    /// ```
    /// let error = torquill::Lift::of("bench-pres", "reference-man").expect_err("no such movement");
    /// assert!(error.reason().hints().iter().any(|hint| hint.contains("bench-press")));
    /// ```
    #[must_use]
    pub fn reason(&self) -> &Reason {
        match self {
            Self::Models(reason)
            | Self::Movement(reason)
            | Self::Lifter(reason)
            | Self::Setting(reason)
            | Self::Load(reason)
            | Self::Speed(reason)
            | Self::NoAnswer(reason)
            | Self::Drawing(reason) => reason,
        }
    }
}

/// Why a step failed, in words, with what to try next.
#[derive(Debug, Clone, PartialEq)]
pub struct Reason(pub(super) Error);

impl Reason {
    /// What is wrong, one sentence a fault.
    ///
    /// ```
    /// let error = torquill::Lift::of("squat", "nobody").expect_err("no such lifter");
    /// assert_eq!(error.reason().messages().len(), 1);
    /// ```
    #[must_use]
    pub fn messages(&self) -> Vec<String> {
        let faults = self.0.faults().iter();
        faults
            .map(|fault| told(fault, System::Metric).message)
            .collect()
    }

    /// What to try next.
    ///
    /// ```
    /// let error = torquill::Lift::of("squats", "reference-man").expect_err("no such movement");
    /// assert!(!error.reason().hints().is_empty());
    /// ```
    #[must_use]
    pub fn hints(&self) -> Vec<String> {
        let faults = self.0.faults().iter();
        faults
            .flat_map(|fault| told(fault, System::Metric).hints)
            .collect()
    }
}

impl fmt::Display for Reason {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&in_one_line(&self.0, System::Metric))
    }
}

/// An error of the rooms as one of a step; a well-put question without an answer is that at every step.
pub(super) fn told_as(step: fn(Reason) -> LiftError) -> impl Fn(Error) -> LiftError {
    move |error| match error.kind() {
        FaultKind::NoAnswer => LiftError::NoAnswer(Reason(error)),
        FaultKind::BadInput => step(Reason(error)),
    }
}
