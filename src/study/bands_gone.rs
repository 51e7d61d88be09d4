//! What lies on a lifter when the bands go that help, where that is more than is lifted without them.
//!
//! In: a question, a setup with its load. Out: [`BandsGone`].

use super::question::Question;
use super::solve::SolvedLift;
use crate::error::Result;
use crate::resistance::{Item, Setup};
use crate::units::Mass;

/// More than is lifted, once bands go.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BandsGone {
    /// The most that is felt then; the body included where it is the load.
    pub left: Mass,
    /// What is lifted without bands, the body included where it is the load.
    pub plain: Mass,
}

/// What is left of a loaded setup when all bands that help go, beside what is lifted without bands; nothing where that is no more
/// than is lifted without them, and where no band helps or nothing is lifted.
///
/// **Fails** as the study of the setup does.
pub(super) fn bands_gone(
    question: &Question<'_>,
    loaded: &Setup,
    plain: impl FnOnce() -> Option<Mass>,
) -> Result<Option<BandsGone>> {
    let mut items = loaded.items.iter();
    if !items.any(|item| matches!(item, Item::Band(_))) {
        return Ok(None);
    }
    let failure = SolvedLift::of(question)?.failure_of(loaded)?;
    let Some(failure) = failure.filter(|failure| failure.grows) else {
        return Ok(None);
    };
    let Some(plain) = plain() else {
        return Ok(None);
    };
    let gone = BandsGone {
        left: failure.after_all,
        plain,
    };
    Ok((gone.left > gone.plain).then_some(gone))
}
