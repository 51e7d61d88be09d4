//! A maximum in words: the finding, the eccentric one, the strength that a known one implies.
//!
//! In: a [`MaximumStudy`]. Out: sentences, and the cells of its table of velocities.

use super::failure_words::bands_gone_caution;
use super::faults::session_told::{body_lowered_only, not_handed_over};
use super::quantities::{QuantityWords, rounded};
use crate::movement::{Handover, Measure};
use crate::rep::{LoadPace, OneRepMax};
use crate::session::overload_ground::no_help;
use crate::study::{MaximumInterval, MaximumPace, MaximumStudy};
use crate::units::{Mass, System};

/// What stands behind a maximum that is lowered.
const OVERLOAD: &str = "lowering more than one can lift is for experienced lifters only, at most once a week, \
with safety arms at the right height and spotters who know the plan. Education, not medical advice; local rules and a \
qualified professional come first.";

/// What stands behind a maximum that is lowered where less can be lowered than lifted.
const NO_OVERLOAD: &str = "how much can be lowered under control is not known here, so plan no lowering of more than can be \
lifted, and have somebody take a heavy load or put it down another way. Education, not medical advice; local rules and a qualified professional come first.";

/// What ends a maximum whose load gets away on the way down.
const LOST_IN_LOWERING: &str = "A heavier load gets away in the lowering before it can be lifted: \
--lowering \"0 s\" begins at the bottom.";

/// A maximum in words: to a tenth, or where that would be the load that fails, to a hundredth.
fn below(maximum: Mass, failed: Mass, units: System) -> String {
    let told = units.mass(maximum);
    if told == units.mass(failed) {
        return units.fine_mass(maximum, 2);
    }
    told
}

/// The findings, one a line.
#[must_use]
pub fn maximum_sentences(found: &MaximumStudy, own: OwnStrength, units: System) -> Vec<String> {
    let mut lines = vec![format!(
        "{}, {}: maximum {} ({} can be loaded; the next step, {}, is not lifted).",
        found.movement_title,
        found.lifter_title,
        below(found.one_rm.load, found.loadable.failed, units),
        units.mass(found.loadable.load),
        units.mass(found.loadable.failed)
    )];
    lines.extend(found.pace.map(|pace| paced(pace, found, units)));
    let interval = found.interval.as_ref();
    lines.extend(interval.map(|interval| interval_in_words(interval, "it", units)));
    if found.is_lost_in_lowering {
        lines.push(LOST_IN_LOWERING.to_owned());
    }
    lines.extend(found.not_lowered.map(|time| {
        format!(
            "Nothing is lowered evenly in {} s, not even the limbs alone: that fast they ask for more than there is. Give \
             --eccentric more time.",
            rounded(time.as_s(), 2)
        )
    }));
    if let Some(eccentric) = found.eccentric {
        lines.push(lowered(eccentric, found, units));
    }
    let cautions = maximum_cautions(found, units).into_iter();
    lines.extend(cautions.map(|words| format!("caution: {words}")));
    lines.extend(found.factor.map(|factor| implied(factor, own)));
    lines
}

/// How fast the load of a test and the exact maximum go up, on average.
fn paced(pace: MaximumPace, found: &MaximumStudy, units: System) -> String {
    let [exact, in_steps] = [pace.exact, pace.in_steps].map(|mean| velocity(found.measure, mean));
    let other = match exact == in_steps {
        true => String::new(),
        false => format!("; the exact maximum, which nobody loads, at {exact}"),
    };
    format!(
        "{} goes up at {in_steps} on average, to be compared with velocities measured at a 1RM, which is tested in such steps{other}.",
        units.mass(found.loadable.load)
    )
}

/// The lifter's own factor on strength, and whether the one that a known maximum implies can be set in its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OwnStrength {
    /// The factor that the lifter's file has already.
    pub scale: f64,
    /// Whether a model with the implied factor is accepted.
    pub takes_implied: bool,
}

/// The factor on strength that a known maximum implies, as it is set.
#[must_use]
pub fn implied_scale(factor: f64, own_scale: f64) -> String {
    rounded(factor * own_scale, 4)
}

/// The strength that a known maximum implies, and how to ask for it where that can be asked for.
fn implied(factor: f64, own: OwnStrength) -> String {
    let scale = implied_scale(factor, own.scale);
    let times = rounded(factor, 3);
    match own.takes_implied {
        true => format!(
            "That maximum implies {times} times this lifter's strength: --set lifter.strength_scale={scale}"
        ),
        false => format!(
            "That maximum implies {times} times this lifter's strength, which is outside what this program takes for a person's: a strength_scale of {scale} is refused."
        ),
    }
}

/// A lowering that ends below the lift: what the model says, and that it is wrong there.
fn lowered_less(times: &str) -> String {
    format!(
        "The model lowers only {times} times what it lifts, and people lower more than they lift: it holds too little at a place that \
         the lift passes with speed. No weight to go by."
    )
}

/// What goes with a maximum: with one that is lowered, and with bands that leave more than is lifted when they go.
#[must_use]
pub fn maximum_cautions(found: &MaximumStudy, units: System) -> Vec<String> {
    let gone = found.bands_gone.as_ref();
    let gone = gone.map(|gone| bands_gone_caution(gone, units));
    lowered_caution(found).into_iter().chain(gone).collect()
}

/// What stands behind a maximum that is lowered, by who could take the load.
fn lowered_caution(found: &MaximumStudy) -> Option<String> {
    let eccentric = found.eccentric?;
    let title = found.movement_title.to_lowercase();
    let is_more = eccentric.load > found.one_rm.load;
    let that = if is_more {
        "nobody is to try that: "
    } else {
        ""
    };
    let nobody = |why: String| {
        format!(
            "{that}{why}. Education, not medical advice; local rules and a qualified professional come first."
        )
    };
    Some(match found.handover {
        Handover::No(why) => nobody(not_handed_over(&title, no_help(why))),
        _ if !is_more => NO_OVERLOAD.to_owned(),
        Handover::BodyOnly { .. } => nobody(body_lowered_only(&title)),
        Handover::Yes { .. } => OVERLOAD.to_owned(),
    })
}

fn lowered(eccentric: OneRepMax, found: &MaximumStudy, units: System) -> String {
    let one_rm = found.one_rm;
    let times = eccentric.load.as_kg() / one_rm.load.as_kg().max(1e-9);
    let shown = rounded(times, 2);
    if eccentric.load < one_rm.load {
        return lowered_less(&shown);
    }
    let load = units.mass(eccentric.load);
    match found.handover {
        Handover::Yes { .. } => {
            format!("Lowered under control: {load}, {shown} times the maximum.")
        }
        Handover::No(_) | Handover::BodyOnly { .. } => {
            format!("The muscles would lower {load}, {shown} times the maximum.")
        }
    }
}

/// The heads of the table of velocities.
pub const VELOCITY_HEADS: [&str; 4] = [
    "share %",
    "load",
    "mean velocity",
    "mean propulsive velocity",
];

/// One load as a row of that table.
#[must_use]
pub fn velocity_cells(row: &LoadPace, measure: Measure, units: System) -> Vec<String> {
    vec![
        rounded(100.0 * row.share, 0),
        units.mass(row.load),
        velocity(measure, row.mean_velocity),
        velocity(measure, row.mean_propulsive_velocity),
    ]
}

/// Decimals stay, so that a column lines up.
fn velocity(measure: Measure, value: f64) -> String {
    match measure {
        Measure::Force => format!("{value:.2} m/s"),
        Measure::Torque => format!("{:.0} deg/s", value.to_degrees()),
    }
}

/// What a maximum is in plausible versions of a fitted lifter; `what` is "it" or names it.
#[must_use]
pub fn interval_in_words(interval: &MaximumInterval, what: &str, units: System) -> String {
    format!(
        "In four of five plausible versions of this lifter {what} is {} to {} ({} versions, the model's own error in them).",
        units.mass(interval.low),
        units.mass(interval.high),
        interval.versions
    )
}
