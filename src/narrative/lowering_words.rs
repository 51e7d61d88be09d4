//! Lowered, held, lifted, in words.
//!
//! In: three capacities, a maximum. Out: the words around their figure, and of its lines.

use super::figure_words::FigureWords;
use super::muscle_names::head_name;
use super::places::forces_of;
use super::prose::{capital, percent};
use super::quantities::{QuantityWords, rounded};
use super::shown_units::ShownUnits;
use crate::movement::Measure;
use crate::study::{BEYOND, SLOW_M_S, Study, ThreeCapacities, sample_of_peak};
use crate::units::{Mass, System};

/// Capacity in slow lowering.
pub(crate) const LOWERED: &str = "lowered";
/// Capacity held still.
pub(crate) const HELD: &str = "held";
/// Capacity in slow lifting.
pub(crate) const LIFTED: &str = "lifted";

/// The maximum in the data.
pub(crate) const MAXIMUM: &str = "maximum";
/// The load beyond it in the data.
pub(crate) const LOAD_BEYOND: &str = "load beyond the maximum";

/// The line of the maximum.
pub(crate) fn maximum_line(three: &ThreeCapacities, units: System) -> String {
    format!("1RM, {}", units.mass(three.one_rm))
}

/// The line of the load beyond it.
pub(crate) fn beyond_line(three: &ThreeCapacities, units: System) -> String {
    let load = Mass::from_kg(BEYOND * three.one_rm.as_kg());
    format!("{} of 1RM, {}", percent(BEYOND), units.mass(load))
}

/// Why the maximum lies above what the weakest place holds, where it does.
fn past_the_weakest(three: &ThreeCapacities, units: System) -> String {
    let unit = units.load_unit(Measure::Force);
    let [maximum, held] = [three.one_rm_n(), ThreeCapacities::least_n(&three.held)];
    let [maximum_told, held_told] = [maximum, held].map(|force| rounded(unit.of(force), 0));
    if maximum <= held || maximum_told == held_told {
        return format!(". Weakest place: {held_told} {} held.", unit.symbol);
    }
    /// A place as near to the start as this is where the bar turns round, share of the range.
    const AT_THE_TURN: f64 = 0.03;
    let values = three.held.capacity.values();
    let weakness: Vec<f64> = values.iter().map(|value| -value).collect();
    let weakest = sample_of_peak(&weakness) as f64 / (values.len() - 1) as f64;
    let carried = if weakest < AT_THE_TURN {
        "the lowering before it helps"
    } else {
        "lowering before it and the bar's speed help"
    };
    format!(
        ". The 1RM, {maximum_told} {u}, is above the {held_told} {u} held at the weakest place: {carried}.",
        u = unit.symbol
    )
}

/// That the weakest place bears less lowered slowly than held still, where it does, with the strongest muscle that shortens there.
fn less_than_held(three: &ThreeCapacities) -> String {
    /// A muscle below this activation is not told of.
    const TOLD_ACTIVATION: f64 = 0.2;
    let lowered = &three.lowered.capacity;
    let values = lowered.values();
    let [least, held] = [&three.lowered, &three.held].map(ThreeCapacities::least_n);
    if least >= held {
        return String::new();
    }
    let weakness: Vec<f64> = values.iter().map(|value| -value).collect();
    let there = &lowered.held[sample_of_peak(&weakness)];
    let force_n = |at: usize| there.activations[at] * there.muscles[at].active_n;
    let shortens = |at: &usize| {
        there.muscles[*at].state.velocity_norm > 0.0 && there.activations[*at] > TOLD_ACTIVATION
    };
    let strongest = (0..there.muscles.len())
        .filter(shortens)
        .max_by(|a, b| force_n(*a).total_cmp(&force_n(*b)));
    let muscle = strongest.map_or_else(String::new, |at| {
        let name = head_name(&lowered.muscles[at]);
        format!("; the {name} shortens there while the load goes down")
    });
    format!(" Here the weakest place bears less lowered slowly than held still{muscle}.")
}

/// What was measured of the lift: "1.24 to 1.4"; none where nothing was.
fn measured_span(measured: &[f64]) -> Option<String> {
    let least = measured.iter().copied().reduce(f64::min)?;
    let most = measured.iter().copied().fold(least, f64::max);
    let [low, high] = [least, most].map(|ratio| rounded(ratio, 2));
    Some(if low == high {
        low
    } else {
        format!("{low} to {high}")
    })
}

/// Whether every measured ratio of lowering over lifting is above the load beyond the maximum.
fn all_above(measured: &[f64]) -> bool {
    measured.iter().all(|ratio| *ratio > BEYOND)
}

/// That measured maxima of lowering are above the load that the model cannot lower; nothing where they are not.
fn lowered_by_others(measured: &[f64]) -> String {
    match measured_span(measured) {
        Some(told) if all_above(measured) => {
            format!("; by the measured ratios ({told}) it could be lowered")
        }
        _ => String::new(),
    }
}

/// Which way the model misses what was measured; nothing where nothing was.
fn measured_beside(surplus: f64, measured: &[f64]) -> String {
    let Some(told) = measured_span(measured) else {
        return String::new();
    };
    let least = measured.iter().copied().fold(f64::INFINITY, f64::min);
    let most = measured.iter().copied().fold(least, f64::max);
    let verdict = if surplus < least {
        ": the model, which follows single joints, gives too little"
    } else if surplus > most {
        ": the model gives too much"
    } else {
        ", as here"
    };
    format!(" Measured maxima of lowering were {told} times those of lifting{verdict}.")
}

/// The words around the figure; `measured` are published maxima of lowering over lifting for the lift.
pub(crate) fn three_capacity_words(
    three: &ThreeCapacities,
    measured: &[f64],
    units: System,
) -> FigureWords {
    let unit = units.load_unit(Measure::Force);
    let least = |study: &Study| rounded(unit.of(ThreeCapacities::least_n(study)), 0);
    let [lowered, held, lifted] = [&three.lowered, &three.held, &three.lifted].map(least);
    let speed = rounded(SLOW_M_S, 2);
    let is_borne = ThreeCapacities::least_n(&three.lowered) >= three.beyond_n();
    let study = &three.held;
    let surplus =
        ThreeCapacities::least_n(&three.lowered) / ThreeCapacities::least_n(&three.lifted);
    FigureWords {
        title: format!(
            "At the weakest place this lifter lowers {lowered}, holds {held} and lifts {lifted} {}",
            unit.symbol
        ),
        subtitle: format!(
            "{}, {}, at {speed} m/s. Lowered over lifted: {} here{}",
            study.lifter_title,
            study.movement_title.to_lowercase(),
            rounded(surplus, 2),
            measured_span(measured).map_or_else(String::new, |span| format!(", {span} measured"))
        ),
        footnote: format!(
            "{}{}{}",
            capital(forces_of(study).split(';').next().unwrap_or_default()),
            past_the_weakest(three, units),
            if is_borne {
                String::new()
            } else {
                format!(
                    " In the model less than {} of 1RM is lowered slowly there{}.",
                    percent(BEYOND),
                    match measured.is_empty() || !all_above(measured) {
                        true => "",
                        false => ", by the measured ratios more",
                    }
                )
            }
        ),
        description: format!(
            "Three capacities over {}; the least of each: lowered {lowered} {u}, held {held} {u}, lifted {lifted} {u}. {}",
            study.axis,
            if is_borne {
                "The load beyond the maximum stays below the capacity of lowering everywhere."
                    .to_owned()
            } else {
                format!(
                    "In the model the load beyond the maximum is more than can be lowered slowly at the weakest place{}.",
                    lowered_by_others(measured)
                )
            },
            u = unit.symbol
        ),
        caption: format!(
            "Muscles that are pulled longer hold more than muscles that shorten, so more can be lowered than lifted: at the weakest place \
             here {} times as much.{}{} A load beyond the maximum needs help on its way up.",
            rounded(surplus, 2),
            less_than_held(three),
            measured_beside(surplus, measured)
        ),
    }
}
