//! Words for: what is wrong with a training log.

use super::Told;
use crate::error::LogFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &LogFault, _units: System) -> Told {
    match *fault {}
}
