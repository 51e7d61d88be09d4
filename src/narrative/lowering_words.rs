//! Lowered, held, lifted, in words.
//!
//! In: three capacities, a maximum. Out: the words around their figure, and of its lines.

use super::figure_words::FigureWords;
use super::places::forces_of;
use super::prose::{capital, percent};
use super::quantities::{QuantityWords, rounded};
use super::shown_units::ShownUnits;
use crate::movement::Measure;
use crate::study::{BEYOND, SLOW_M_S, Study, ThreeCapacities};
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
        return ".".to_owned();
    }
    format!(
        ". The 1RM, {maximum_told} {u}, is more than the weakest place holds, {held_told} {u}: the lowering before it and \
         the speed of the bar carry it past.",
        u = unit.symbol
    )
}

/// The words around the figure.
pub(crate) fn three_capacity_words(three: &ThreeCapacities, units: System) -> FigureWords {
    let unit = units.load_unit(Measure::Force);
    let least = |study: &Study| rounded(unit.of(ThreeCapacities::least_n(study)), 0);
    let [lowered, held, lifted] = [&three.lowered, &three.held, &three.lifted].map(least);
    let speed = rounded(SLOW_M_S, 2);
    let is_borne = ThreeCapacities::least_n(&three.lowered) >= three.beyond_n();
    let study = &three.held;
    FigureWords {
        title: format!(
            "At its weakest place this lift lowers {lowered}, holds {held} and lifts {lifted} {}",
            unit.symbol
        ),
        subtitle: format!(
            "{}, {}: lowering and lifting at {speed} m/s",
            study.lifter_title,
            study.movement_title.to_lowercase()
        ),
        footnote: format!(
            "{}{}",
            capital(forces_of(study).split(';').next().unwrap_or_default()),
            past_the_weakest(three, units)
        ),
        description: format!(
            "Three capacities over {}; the least of each: lowered {lowered} {u}, held {held} {u}, lifted {lifted} {u}. {}",
            study.axis,
            if is_borne {
                "The load beyond the maximum stays below the capacity of lowering everywhere."
            } else {
                "The load beyond the maximum is more than can be lowered slowly at the weakest place."
            },
            u = unit.symbol
        ),
        caption: "Muscles that are pulled longer hold more than muscles that shorten, so more can be lowered than lifted. The surplus of a whole person is \
                  small, and a load beyond the maximum needs help on its way up."
            .to_owned(),
    }
}
