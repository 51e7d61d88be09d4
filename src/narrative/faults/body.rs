//! Words for: what is wrong with a lifter, a muscle, a segment.

use super::Told;
use crate::error::BodyFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &BodyFault, _units: System) -> Told {
    match *fault {}
}
