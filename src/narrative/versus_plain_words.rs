//! A repetition with bands or chains beside one with plain weight, in words.
//!
//! In: a [`VersusPlain`]. Out: title and sentences.

use super::figure_words::FigureWords;
use super::limits_words::STICKING_MISSED;
use super::places::velocity_in_words;
use super::prose::percent;
use super::quantities::rounded;
use super::repetition_words::rep_title;
use crate::rep::StickingInMotion;
use crate::resistance::{Item, Setup};
use crate::study::{LiftShape, RepStudy, VersusPlain};
use crate::units::System;

/// Ends that differ by less than this share are told as equally fast.
const SAME_SPEED: f64 = 0.02;

/// The words around the figure of both lifts.
#[must_use]
pub(crate) fn versus_figure_words(both: &VersusPlain, units: System) -> FigureWords {
    // What the picture shows; times and means stand in the report.
    let mut shown = versus_sentences(both, units);
    shown.truncate(3);
    FigureWords {
        title: versus_title(both, units),
        subtitle: format!(
            "{}, simulated: {} against {}, both at {} effort. {}",
            both.with.still.lifter_title,
            hung_in_full(&both.with, units),
            hung_in_full(&both.plain, units),
            percent(both.effort),
            STICKING_MISSED.trim_end_matches('.')
        ),
        footnote:
            "Full effort from turn-round to straight limbs. Bars: sticking regions in motion."
                .to_owned(),
        description: shown.join(" "),
        caption: format!(
            "A bar brings speed along, and needs way to lose and to gain it: so the slowest place in motion need not be the \
             hardest place held still.{}",
            slowest_and_hardest(&both.plain, units).unwrap_or_default()
        ),
    }
}

/// The stretch that is hardest held still, in the figure.
pub(crate) const HARDEST_STILL: &str = "hardest held still";

/// What hangs in a repetition's only setup.
fn hung_in_full(rep: &RepStudy, units: System) -> String {
    rep.still.told(units).hung_in_full(&rep.still.setups[0])
}

/// Where a lift with plain weight is slowest and where it is hardest held still; nothing for one that does not stick.
fn slowest_and_hardest(plain: &RepStudy, units: System) -> Option<String> {
    let (_, slowest) = LiftShape::of(plain)?.region?;
    let hardest = plain.still.setups[0].sticking?.point_range;
    let [moving, still] = [slowest, hardest].map(|range| plain.still.told(units).at_place(range));
    Some(if moving == still {
        format!(" Here plain weight has both at one place, {still}.")
    } else {
        format!(" Here plain weight is slowest {moving} and hardest {still}.")
    })
}

/// How long a lift sticks, beside the bar of its region.
#[must_use]
pub(crate) fn stuck_for(sticking: &StickingInMotion) -> String {
    format!("sticks {} s", rounded(sticking.duration_s(), 2))
}

/// The finding in one line.
#[must_use]
pub fn versus_title(both: &VersusPlain, units: System) -> String {
    let name = &both.with.still.movement_title;
    let (Some(with), Some(plain)) = (LiftShape::of(&both.with), LiftShape::of(&both.plain)) else {
        return format!("{name}: one of the two setups is not lifted");
    };
    let region = match (with.region, plain.region) {
        (Some((_, a)), Some((_, b))) => Some(shift(both, units, a, b)),
        (None, Some(_)) => Some("no sticking region any more".to_owned()),
        (Some(_), None) => Some("a sticking region appears".to_owned()),
        (None, None) => None,
    };
    let end = end_of_lift(with.end_velocity / plain.end_velocity.max(1.0e-9) - 1.0);
    let parts: Vec<String> = region.into_iter().chain([end]).collect();
    let hung = what_hangs(&both.with.still.setups[0].demand.setup);
    format!("{name} {hung}: {}", parts.join(", "))
}

/// What hangs beside the weight, without its size.
fn what_hangs(setup: &Setup) -> &'static str {
    let count = |is: fn(&Item) -> bool| setup.items.iter().filter(|item| is(item)).count();
    let bands = count(|item| matches!(item, Item::Band(_)));
    let chains = count(|item| matches!(item, Item::Chain(_)));
    match (bands, chains) {
        (1, 0) => "with a band",
        (0, 1..) => "with chains",
        (1.., 1..) => "with bands and chains",
        (2.., 0) => "with bands",
        (0, 0) => "so loaded",
    }
}

/// How much faster the lift ends, as a share.
fn end_of_lift(change: f64) -> String {
    if change < -SAME_SPEED {
        format!("{} slower over the last fifth", percent(-change))
    } else if change > SAME_SPEED {
        format!("{} faster over the last fifth", percent(change))
    } else {
        "as fast over the last fifth".to_owned()
    }
}

/// How the slowest place moves along the way.
fn shift(both: &VersusPlain, units: System, with: f64, plain: f64) -> String {
    let told = both.with.still.told(units);
    let (apart, unit) = told.apart(with, plain);
    match apart.as_str() {
        "0" => {
            let [low, high] =
                [with.min(plain), with.max(plain)].map(|range| told.place_and_unit(range).0);
            match low == high {
                true => format!("slowest at {low} {unit} with and without"),
                false => format!("slowest at {low} to {high} {unit} with and without"),
            }
        }
        _ if with > plain => format!("slowest {apart} {unit} later"),
        _ => format!("slowest {apart} {unit} earlier"),
    }
}

/// What bands and chains do to the lift, in sentences.
#[must_use]
pub fn versus_sentences(both: &VersusPlain, units: System) -> Vec<String> {
    let (with, plain) = (&both.with, &both.plain);
    let mut lines = vec![format!(
        "At the same hardest effort ({} of what is held still): {} against {}.",
        percent(both.effort),
        setup_name(with, units),
        setup_name(plain, units)
    )];
    match (LiftShape::of(with), LiftShape::of(plain)) {
        (Some(a), Some(b)) => lines.extend([
            peaks(with, &a, &b, units),
            regions(with, &a, &b, units),
            ends(with, &a, &b),
            whole_lifts(with, &a, &b),
        ]),
        _ => lines.extend([with, plain].map(|rep| format!("{}.", rep_title(rep, units)))),
    }
    lines
}

/// The setup of a repetition in a few words.
#[must_use]
pub(crate) fn setup_name(rep: &RepStudy, units: System) -> String {
    rep.still.told(units).asked_name(&rep.still.setups[0])
}

fn velocity(rep: &RepStudy, value: f64) -> String {
    velocity_in_words(rep.trace.measure, value)
}

fn peaks(rep: &RepStudy, with: &LiftShape, plain: &LiftShape, units: System) -> String {
    let peak = |shape: &LiftShape| {
        format!(
            "{} {}",
            velocity(rep, shape.peak_velocity),
            rep.still.told(units).at_place(shape.peak_range)
        )
    };
    format!("Peak velocity: {} against {}.", peak(with), peak(plain))
}

fn regions(rep: &RepStudy, with: &LiftShape, plain: &LiftShape, units: System) -> String {
    let region = |shape: &LiftShape| match shape.region {
        Some((from, to)) => format!(
            "{} s, {}",
            rounded(shape.region_s, 2),
            rep.still.told(units).stretch(from, to)
        ),
        None => "none".to_owned(),
    };
    format!(
        "Sticking region in motion: {}, against {} with plain weight.",
        region(with),
        region(plain)
    )
}

fn ends(rep: &RepStudy, with: &LiftShape, plain: &LiftShape) -> String {
    format!(
        "End of the lift (last fifth of the way): {} against {}; the load there asks for {} of plain weight's.",
        velocity(rep, with.end_velocity),
        velocity(rep, plain.end_velocity),
        percent(with.end_demand / plain.end_demand.max(1.0e-9))
    )
}

fn whole_lifts(rep: &RepStudy, with: &LiftShape, plain: &LiftShape) -> String {
    format!(
        "Whole lift: {} s at {} on average, against {} s at {}.",
        rounded(with.time_s, 2),
        velocity(rep, with.mean_velocity),
        rounded(plain.time_s, 2),
        velocity(rep, plain.mean_velocity)
    )
}
