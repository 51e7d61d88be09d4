//! What is left on a lifter when bands give way, in words.
//!
//! In: a [`BandFailure`], what is left as a share of the 1RM, the height of safety arms. Out: one sentence.

use super::prose::percent;
use super::quantities::QuantityWords;
use super::shared_phrases::range_place;
use crate::setups::BandFailure;
use crate::study::BandsGone;
use crate::units::{Length, System};

/// "If one band goes at the start: 21 kg more on that side than on the other, 120 kg in all; if all go: 170 kg are left, 106 % of the 1RM; safety arms
/// at 50 cm."
#[must_use]
pub(crate) fn failure_in_words(
    failure: &BandFailure,
    share: f64,
    arms: Option<Length>,
    units: System,
) -> String {
    let side = units.mass(failure.one_side);
    let first = if failure.grows {
        format!("{side} more on that side than on the other")
    } else {
        format!("{side} less on that side than on the other")
    };
    let place = range_place(failure.worst_at);
    let in_all = units.mass(failure.after_one);
    let arms = arms.map_or_else(String::new, |height| {
        format!("; safety arms at {}", units.tape(height))
    });
    format!(
        "If one band goes at {place}: {first}, {in_all} in all; if all go: {} are left, {} of the 1RM{arms}.",
        units.mass(failure.after_all),
        percent(share)
    )
}

/// That more is left when bands go than is lifted without them.
#[must_use]
pub(crate) fn bands_gone_caution(gone: &BandsGone, units: System) -> String {
    format!(
        "If the bands go, {} are left, {} of the {} that this lifter lifts without them: safety arms right below the lowest place \
         or nothing, and better thinner bands with less weight.",
        units.mass(gone.left),
        percent(gone.left.as_kg() / gone.plain.as_kg().max(f64::MIN_POSITIVE)),
        units.mass(gone.plain)
    )
}
