//! Names and units on the sheet of a worked pose.
//!
//! In: rows and muscles. Out: words and units that several parts of the sheet share.

use super::worked_sheet::InUnit;
use crate::anatomy::Dof;
use crate::movement::Measure;
use crate::narrative::muscle_names::head_name;
use crate::study::{WorkedMuscle, WorkedPose};

/// A muscle's name in words.
pub(super) fn name_of(muscle: &WorkedMuscle) -> String {
    head_name(&muscle.name)
}

/// A row's name in words.
pub(super) fn row_name(dof: Dof) -> String {
    dof.name().replace('_', " ")
}

/// Unit and decimals of capacity and demand.
pub(super) fn load_unit(pose: &WorkedPose) -> InUnit {
    match pose.measure {
        Measure::Force => ("N", 1),
        Measure::Torque => ("N·m", 2),
    }
}
