//! Who holds the load, in words.
//!
//! In: the layers of a joint's muscles, what is asked of it. Out: the words around their figure.

use super::figure_words::FigureWords;
use super::muscle_names::muscle_name;
use super::prose::{listed, percent};
use super::quantities::rounded;
use super::shown_units::ShownUnits;
use crate::study::{LoadHolders, Study};
use crate::units::System;

/// What the heaviest load of each place asks of the joint, limbs included.
pub(crate) const ASKED_AT_MOST: &str = "asked by the heaviest load";

/// What a load asks of the joint.
pub(crate) fn asked_by(setup: &str) -> String {
    format!("asked by {setup}")
}

/// Words around the figure, and the name of its upright axis.
pub(crate) struct HolderWords {
    /// The words.
    pub words: FigureWords,
    /// Moment at which joint.
    pub axis: String,
}

/// The words around the stack.
pub(crate) fn holder_words(study: &Study, holders: &LoadHolders, units: System) -> HolderWords {
    let (at, joint) = (holders.weakest, study.joint(holders.joint));
    let last = (study.range.poses.len() - 1) as f64;
    let place = study.told(units).at_place(at as f64 / last);
    let unit = units.torque_unit();
    let share = |count: usize| {
        let first = holders.layers[..count].iter();
        first.map(|layer| layer.torque_nm[at]).sum::<f64>() / holders.total_nm[at]
    };
    let two = holders.layers.len().min(2);
    let names: Vec<String> = holders.layers[..two].iter().map(muscle_name).collect();
    let told: Vec<String> = holders
        .layers
        .iter()
        .map(|layer| {
            let moment = rounded(unit.of(layer.torque_nm[at]), 0);
            format!("{} {moment} {}", muscle_name(layer), unit.symbol)
        })
        .collect();
    let words = FigureWords {
        title: format!(
            "{} {} {} of the muscles' moment at the {joint} where the lift is weakest",
            super::prose::capital(&listed(&names)),
            if two == 1 { "makes" } else { "make" },
            percent(share(two))
        ),
        subtitle: format!(
            "{}, {}: muscle moments at the {joint} under the heaviest load of each place",
            study.lifter_title,
            study.movement_title.to_lowercase()
        ),
        footnote: "One side. Upper edge: all muscles that lift; off the line of what is asked by what tissue of the \
                   joint and muscles that pull the other way make of it."
            .to_owned(),
        description: format!(
            "Stacked muscle moments at the {joint} over {}. Where the lift is weakest, {place}: {}; load and limbs ask for {} {}.",
            study.axis,
            told.join(", "),
            rounded(unit.of(holders.asked_nm[at]), 0),
            unit.symbol
        ),
        caption: "At every place the moments of the muscles that lift hold what load and limbs ask of the joint; its passive tissue adds to \
                  them or takes from them, and muscles that pull the other way take. Which muscles share it, and how, changes over the range with \
                  their arms and lengths."
            .to_owned(),
    };
    HolderWords {
        words,
        axis: format!("Moment at the {joint}"),
    }
}
