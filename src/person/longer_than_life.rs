//! Training that would have begun before a lifter was old enough to train.
//!
//! In: age and months of training. Out: the fault, if there is one.

use crate::bounds::bounds;
use crate::error::PersonFault;

/// That somebody of this age, years, has trained for so many months; nothing where that can be.
///
/// ```text
/// months > 0   and   months > 12·(age − youngest)
/// ```
/// `youngest` is the least age of the bound `trainee_age`. **Fails.** Never.
#[must_use]
pub fn longer_than_life(age: f64, months: f64) -> Option<PersonFault> {
    let youngest = bounds().trainee_age.least();
    let is_longer = months > 0.0 && months > 12.0 * (age - youngest);
    is_longer.then_some(PersonFault::LongerThanLife { age, months })
}
