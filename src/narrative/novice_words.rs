//! A novice's double progression in words: where the weeks begin, and from where on the log decides.
//!
//! In: the facts of [`crate::session::remark::Remark::WeeksBegin`], units. Out: sentences.

use super::prose::{counted_noun, percent};
use super::quantities::QuantityWords;
use crate::session::remark::WeeksBegin;
use crate::units::System;

/// Where the weeks begin, and how many of them today's strength is known to hold.
#[must_use]
pub(super) fn weeks_begin(begin: &WeeksBegin, units: System) -> String {
    let (fewest, most) = begin.ends;
    let known = match begin.steps {
        0 => String::new(),
        steps => format!(
            ": with today's strength {} from there on, one a week, {} {} in reserve {}",
            counted_noun(steps as usize, "step"),
            if steps == 1 { "keeps" } else { "keep" },
            begin.reserve,
            if begin.simulated {
                "by the chart and in the simulation"
            } else {
                "by the chart"
            }
        ),
    };
    format!(
        "Double progression: {fewest} to {most} repetitions at a load, then the next load with {fewest} again. The weeks begin \
         at {} ({} of 1RM){known}.",
        units.mass(begin.load),
        percent(begin.share)
    )
}

/// Today's strength is known to hold no more.
pub(super) const LOG_DECIDES: &str = "From here on the log decides, not the calendar: a novice's strength grows by training, and how fast nobody knows \
     beforehand, so this session is done until every set of it goes, and then the next step.";
