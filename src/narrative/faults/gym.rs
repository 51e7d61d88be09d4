//! Words for: what is wrong with a gym, a wish, or a search for setups.

use super::Told;
use crate::error::GymFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &GymFault, _units: System) -> Told {
    match *fault {}
}
