//! Words for: why a movement cannot be traced or posed.

use super::Told;
use crate::error::PathFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &PathFault, _units: System) -> Told {
    match *fault {}
}
