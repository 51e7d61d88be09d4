//! Words for: why a repetition or a maximum cannot be simulated.

use super::Told;
use crate::error::RepetitionFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &RepetitionFault, _units: System) -> Told {
    match *fault {}
}
