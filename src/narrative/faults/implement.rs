//! Words for: what is wrong with an implement or its text.

use super::Told;
use crate::error::ImplementFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &ImplementFault, _units: System) -> Told {
    match *fault {}
}
