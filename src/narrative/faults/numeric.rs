//! Words for: what the mathematics cannot do.

use super::Told;
use crate::error::NumericFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &NumericFault, _units: System) -> Told {
    match *fault {}
}
