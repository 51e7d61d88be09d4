//! Words for: what is wrong with the arguments of a command.

use super::Told;
use crate::error::CommandFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &CommandFault, _units: System) -> Told {
    match *fault {}
}
