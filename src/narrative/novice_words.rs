//! A novice's double progression in words: where the weeks begin, and from where on the log decides.
//!
//! In: the facts of [`crate::session::remark::Remark::WeeksBegin`], units. Out: sentences.

use super::prose::{counted_noun, percent};
use super::quantities::{QuantityWords, rounded};
use crate::session::end_of_log::LastSession;
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
    let on = begin.on_from.as_ref();
    let on = on.map_or_else(String::new, |from| log_goes_on(from, begin, units));
    format!(
        "{on}Double progression: {fewest} to {most} repetitions at a load, then the next load with {fewest} again. The weeks begin \
         at {} ({} of 1RM){known}.",
        units.mass(begin.load),
        percent(begin.share)
    )
}

/// What was lifted in the last session of the log, as it was written down, and what that is with the reserve of the plan.
fn log_goes_on((last, reached): &(LastSession, u32), begin: &WeeksBegin, units: System) -> String {
    let before = match last.is_second(*reached, begin.reserve) {
        true => ", as in the session before",
        false => "",
    };
    let shown = match begin.goes_before {
        true => ", which goes before what chart and simulation allow",
        false => "",
    };
    let (repetitions, left) = last.reached.hardest;
    let as_planned = repetitions == *reached && left == Some(f64::from(begin.reserve));
    let load = units.mass(last.load);
    let of_sets = match (last.reached.sets, as_planned) {
        (1, true) => "the only set".to_owned(),
        (1, false) => format!("the only set at {load} was"),
        (_, true) => "every set".to_owned(),
        (sets, false) => format!("the hardest of {sets} sets at {load} was"),
    };
    let lifted = if as_planned {
        let count = counted_noun(*reached as usize, "repetition");
        format!(
            "{of_sets} reached {count} at {load} with {} in reserve",
            begin.reserve
        )
    } else {
        let left = left.map_or_else(
            || "none noted in reserve, taken as done to failure".to_owned(),
            |left| format!("{} in reserve", rounded(left, 1)),
        );
        format!(
            "{of_sets} {}, {left}: {reached} with {} in reserve",
            counted_noun(repetitions as usize, "repetition"),
            begin.reserve
        )
    };
    format!("The log goes on: on {} {lifted}{before}{shown}. ", last.day)
}

/// Today's strength is known to hold no more.
pub(super) const LOG_DECIDES: &str = "From here on the log decides, not the calendar: a novice's strength grows by training, and how fast nobody knows \
     beforehand, so this session is done until every set of it goes, and then the next step.";
