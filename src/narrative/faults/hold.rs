//! Words for: why a pose holds nothing, or has no capacity.

use super::Told;
use crate::error::HoldFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &HoldFault, _units: System) -> Told {
    match *fault {}
}
