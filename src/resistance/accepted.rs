//! Sizes of implements, accepted inside their bounds.
//!
//! In: a size and its value. Out: the value, or the fault that names both limits.

use crate::bounds::Bound;
use crate::error::{ImplementFault, ImplementSize};

/// The value, if it is a number inside its bounds.
pub(super) fn accepted(
    size: ImplementSize,
    value: f64,
    bound: &Bound,
) -> Result<f64, ImplementFault> {
    accepted_from(size, value, bound.least(), bound)
}

/// The value, if it is a number from `least` to the upper end of its bounds.
pub(super) fn accepted_from(
    size: ImplementSize,
    value: f64,
    least: f64,
    bound: &Bound,
) -> Result<f64, ImplementFault> {
    if bound.holds(value) && value >= least {
        Ok(value)
    } else {
        Err(ImplementFault::Outside {
            size,
            value,
            least,
            most: bound.most(),
        })
    }
}
