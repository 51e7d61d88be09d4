//! Words for: what is wrong in a model file or a path of a value.

use super::Told;
use crate::error::ModelFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &ModelFault, _units: System) -> Told {
    match *fault {}
}
