//! Words for: why a figure cannot be drawn.

use super::Told;
use crate::error::FigureFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &FigureFault, _units: System) -> Told {
    match *fault {}
}
