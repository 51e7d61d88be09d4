//! Words for: why a session is not planned.

use super::Told;
use crate::error::SessionFault;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &SessionFault, _units: System) -> Told {
    match *fault {}
}
