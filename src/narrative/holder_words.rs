//! Who holds the load, in words.
//!
//! In: the layers of a joint's muscles, what is asked of it. Out: the words around their figure.

use super::figure_words::FigureWords;
use super::muscle_names::muscle_name;
use super::page_words::joint_axis;
use super::prose::{capital, listed, percent};
use super::quantities::rounded;
use super::shown_units::ShownUnits;
use crate::study::{LoadHolders, MusclePart, Study};
use crate::units::System;

/// What the heaviest load of each place asks of the joint, limbs included.
pub(crate) const ASKED_AT_MOST: &str = "asked by the heaviest load";

/// Where the least is held.
pub(crate) const WEAKEST_PLACE: &str = "weakest";

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
    let (at, joint) = (holders.weakest, joint_axis(study, holders.joint));
    let last = (study.range.poses.len() - 1) as f64;
    let place = study.told(units).at_place(at as f64 / last);
    let unit = units.torque_unit();
    let most = most_there(holders);
    let shares = most.iter().map(|layer| layer.torque_nm[at]);
    let share = shares.sum::<f64>() / holders.total_nm[at];
    let names: Vec<String> = most.iter().map(|layer| muscle_name(layer)).collect();
    let told: Vec<String> = holders
        .layers
        .iter()
        .map(|layer| {
            let moment = rounded(unit.of(layer.torque_nm[at]), 0);
            format!("{} {moment} {}", muscle_name(layer), unit.symbol)
        })
        .collect();
    let is_limit = holders.limits[at];
    let title = match is_limit {
        true => format!(
            "{} at its weakest: {} {} {} of the muscles' moment at the {joint}",
            study.movement_title,
            listed(&names),
            if names.len() == 1 { "makes" } else { "make" },
            percent(share)
        ),
        false => format!(
            "{} at its weakest: the {joint} does not limit",
            study.movement_title
        ),
    };
    let (shown_as, why) = unlike_elsewhere(holders, &joint);
    let words = FigureWords {
        title,
        subtitle: format!(
            "{}, one side: muscle moments at the {joint} under the heaviest load of each place",
            study.lifter_title
        ),
        footnote: format!(
            "{shown_as}Upper edge: all muscles that lift; the rest is tissue, and muscles that pull the other way."
        ),
        description: format!(
            "Stacked muscle moments at the {joint} over {}. Where the lift is weakest, {place}: {}; that load and the limbs ask for {} {}.",
            study.axis,
            told.join(", "),
            rounded(unit.of(holders.asked_nm[at]), 0),
            unit.symbol
        ),
        caption: format!(
            "At every place the moments of the muscles that lift hold what load and limbs ask of the joint; its passive tissue adds to \
             them or takes from them, and muscles that pull the other way take.{why}"
        ),
    };
    let words = words.doubting(&[(study.movement_title.as_str(), study)]);
    HolderWords {
        words,
        axis: format!("Moment at the {joint}"),
    }
}

/// The one or two muscles that make most of the moment where the lift is weakest.
fn most_there(holders: &LoadHolders) -> Vec<&MusclePart> {
    /// Less of the moment is not told.
    const TOLD: f64 = 0.01;
    let moment = |layer: &&MusclePart| layer.torque_nm[holders.weakest];
    let told = |layer: &&MusclePart| {
        layer.others == 0 && moment(layer) >= TOLD * holders.total_nm[holders.weakest]
    };
    let mut layers: Vec<&MusclePart> = holders.layers.iter().filter(told).collect();
    layers.sort_by(|a, b| moment(b).total_cmp(&moment(a)));
    layers.truncate(2);
    if layers.is_empty() {
        return holders.layers.iter().take(1).collect();
    }
    layers
}

/// How the stretches are read in which the joint does not limit, and what is said of them; nothing where it limits
/// everywhere.
fn unlike_elsewhere(holders: &LoadHolders, joint: &str) -> (String, String) {
    let stretches = holders.undetermined();
    if stretches.is_empty() {
        let why = " The joint limits the lift everywhere, so no other sharing of its moment holds as much.";
        return (String::new(), why.to_owned());
    }
    let told: Vec<String> = stretches
        .iter()
        .map(|ends| {
            let [from, to] = ends.map(percent);
            format!("from {from} to {to}")
        })
        .collect();
    (
        format!("Pale: the {joint} does not limit; one of several ways to share the moment. "),
        format!(
            " {} of the range the {joint} does not limit the lift: its muscles may share the moment otherwise, and the sharing \
             with the least summed activation is drawn, pale.",
            capital(&listed(&told))
        ),
    )
}
