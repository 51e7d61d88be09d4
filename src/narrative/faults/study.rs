//! Words for: why a question has no answer.

use super::Told;
use crate::error::StudyFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &StudyFault, _units: System) -> Told {
    match *fault {}
}
