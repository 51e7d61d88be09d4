//! Whether a body is of an adult: nothing is chosen or planned for a smaller one.
//!
//! In: a question. Out: nothing, or the height that no adult has.

use super::person_asked::ends;
use super::question::Question;
use crate::bounds::bounds;
use crate::error::{Error, PersonFault, Result};
use crate::units::Length;

/// **Fails** for a lifter smaller than adults are, by the table of bounds; a tall one is an adult.
pub(super) fn check_adult(question: &Question<'_>) -> Result<()> {
    let height = question.lifter.height;
    let (least, most) = ends(&bounds().lifter_height);
    if height.as_m() >= least {
        return Ok(());
    }
    Err(Error::bad(PersonFault::OddHeight {
        height,
        ends: (Length::from_m(least), Length::from_m(most)),
    }))
}
