//! What was understood of a log, and its load-velocity profile, in words.
//!
//! In: [`LogNote`]s, a [`VelocityProfile`], units. Out: sentences.

use super::prose::{counted_noun, percent};
use super::quantities::{QuantityWords, rounded};
use super::shown_units::ShownUnits;
use crate::error::DateOrder;
use crate::progress::log_note::LogNote;
use crate::progress::log_profile::{
    FEWEST_MEASURED, LEAST_SPREAD, NoProfile, PROFILE_WEEKS, VelocityProfile,
};
use crate::units::System;

/// "day-first" and "month-first", as the option has them.
#[must_use]
pub const fn order_word(order: DateOrder) -> &'static str {
    match order {
        DateOrder::DayFirst => "day-first",
        DateOrder::MonthFirst => "month-first",
    }
}

/// Columns that are not used, named once.
#[must_use]
pub fn columns_ignored(headings: &[String]) -> Option<String> {
    let quoted: Vec<String> = headings
        .iter()
        .map(|heading| format!("`{heading}`"))
        .collect();
    let columns = if quoted.len() == 1 {
        "column"
    } else {
        "columns"
    };
    (!quoted.is_empty()).then(|| format!("{columns} not used: {}", quoted.join(", ")))
}

/// What was understood, in one sentence.
#[must_use]
pub fn note_in_words(note: &LogNote) -> String {
    match note {
        LogNote::ColumnsIgnored(headings) => columns_ignored(headings).unwrap_or_default(),
        LogNote::SpeedWithoutUnit(heading) => format!(
            "left out: the column `{heading}`, which tells no unit; write it behind, such as `{heading} (m/s)`"
        ),
        LogNote::OtherLifts(lifts) => {
            let lifts = lifts.iter();
            let named: Vec<String> = lifts
                .map(|(lift, sets)| format!("{lift} ({})", counted_noun(*sets, "set")))
                .collect();
            format!("other lifts of this log, left out: {}", named.join(", "))
        }
        LogNote::DatesProved {
            order,
            line,
            written,
        } => format!(
            "dates are read {}, which line {line} proves (`{written}`)",
            order_word(*order)
        ),
        LogNote::LiftsRenamed(renamed) => {
            let pairs = renamed.iter().take(MOST_NAMED);
            let pairs: Vec<String> = pairs
                .map(|(written, lift)| format!("\"{written}\" as {lift}"))
                .collect();
            let more = renamed.len().saturating_sub(MOST_NAMED);
            let more = if more > 0 {
                format!(" and {more} more")
            } else {
                String::new()
            };
            format!("lifts read by their names: {}{more}", pairs.join(", "))
        }
        LogNote::ReserveByExertion => {
            "repetitions in reserve (RIR) are taken as 10 less the rating of exertion".to_owned()
        }
        LogNote::NotDoneYet(count) => format!(
            "{} without repetitions, reserve and speed: not done yet, passed over",
            counted_noun(*count, "row")
        ),
        LogNote::SetsByRepetitions => "rows such as 3x5 are read as sets x repetitions".to_owned(),
    }
}

/// At most this many names are told.
const MOST_NAMED: usize = 12;

/// Rows beyond those that are told one by one.
#[must_use]
pub fn more_left_out(count: usize) -> String {
    format!("left out: {}", counted_noun(count, "more row"))
}

/// The profile, or why there is none, in a sentence or two.
#[must_use]
pub fn profile_in_words(
    profile: &Result<VelocityProfile<'_>, NoProfile>,
    units: System,
) -> Vec<String> {
    match profile {
        Ok(profile) => found_profile(profile, units),
        Err(none) => vec![format!("No load-velocity profile: {}.", no_profile(*none))],
    }
}

/// A share of the variance, cut after three digits: nothing short of 1 is told as 1.
#[must_use]
pub fn r_squared_in_words(r_squared: f64) -> String {
    rounded((r_squared * 1000.0).floor() / 1000.0, 3)
}

fn found_profile(profile: &VelocityProfile<'_>, units: System) -> Vec<String> {
    let unit = units.mass_unit();
    let shown = |kg: f64| rounded(unit.of(kg), 1);
    let (lightest, heaviest) = profile.loads;
    let mut lines = vec![format!(
        "Load-velocity profile of {} with a velocity, {} to {} ({} to {}): \
         load = {} − {} v, in {} with v in m/s (R² {}).",
        counted_noun(profile.sets, "set"),
        profile.from,
        profile.to,
        units.mass(lightest),
        units.mass(heaviest),
        shown(profile.intercept_kg),
        shown(-profile.slope_kg_s_m),
        unit.symbol,
        r_squared_in_words(profile.r_squared)
    )];
    lines.push(match &profile.one_rm {
        Some(maximum) => format!(
            "At {} m/s, the mean velocity of a true 1RM ({}), it gives {} (standard error {}).",
            rounded(maximum.at.mean.as_m_s(), 2),
            maximum.at.lift,
            units.mass(maximum.load),
            units.mass(maximum.error)
        ),
        None => {
            "No velocity of a true 1RM was published for this lift, so it gives no 1RM.".to_owned()
        }
    });
    lines
}

fn no_profile(none: NoProfile) -> String {
    match none {
        NoProfile::FewSets(sets) => format!(
            "{} with a velocity in the last {} weeks, {FEWEST_MEASURED} are needed",
            counted_noun(sets, "set"),
            rounded(PROFILE_WEEKS, 0)
        ),
        NoProfile::NarrowLoads(spread) => format!(
            "the loads with a velocity lie within {} of the heaviest, {} are needed",
            percent(spread),
            percent(LEAST_SPREAD)
        ),
        NoProfile::NotFalling => "heavier loads are no slower in this log".to_owned(),
    }
}
