//! Why a changed value changed the capacity at a place: a waterfall of the parts.
//!
//! In: a [`Family`]. Out: a chart of the farthest value at the place where it changes most.

use super::sheet::heading;
use crate::narrative::waterfall_words::{WaterfallTold, waterfall_told};
use crate::plot::{Axis, Waterfall, WaterfallStep};
use crate::study::Family;
use crate::units::System;

/// Parts that are readable on a slide beside what is left and the whole.
const MOST_PARTS: usize = 6;

/// The parts of the largest change; `None` where no place was told.
#[must_use]
pub fn why_chart(family: &Family, units: System) -> Option<Waterfall> {
    let (variant, cause) = family.foremost_cause()?;
    let WaterfallTold {
        words,
        axis: (quantity, unit),
        decimals,
        parts,
        whole,
    } = waterfall_told(family, variant, cause, MOST_PARTS, units);
    let steps = parts.into_iter();
    Some(Waterfall {
        heading: heading(&words),
        axis: Axis::new(quantity, unit),
        decimals,
        steps: steps
            .map(|(name, part)| WaterfallStep { name, part })
            .collect(),
        whole,
    })
}
