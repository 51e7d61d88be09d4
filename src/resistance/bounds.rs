//! Bounds of what an implement can be.
//!
//! In: a size and its value. Out: the value, or the fault that names both limits.

use crate::error::{ImplementFault, ImplementSize};

/// The value, if it is a number inside the limits.
pub(super) fn between(
    size: ImplementSize,
    value: f64,
    least: f64,
    most: f64,
) -> Result<f64, ImplementFault> {
    if (least..=most).contains(&value) {
        Ok(value)
    } else {
        Err(ImplementFault::Outside {
            size,
            value,
            least,
            most,
        })
    }
}
