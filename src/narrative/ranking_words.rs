//! The figure of a ranking of setups in words: what the first one gains, how it loads.
//!
//! In: a [`PickAnswer`], units. Out: the words around its figure and its labels.

use super::figure_words::FigureWords;
use super::pick_words::load_or_help;
use super::places::sides_in_words;
use super::quantities::{QuantityWords, rounded};
use super::setup_names::{added_name, short_name};
use super::strength_words::conjugated;
use crate::study::{PickAnswer, Picked};
use crate::units::System;

/// The stretch of the first setup.
pub(crate) const REGION_OF_FIRST: &str = "Hardest part, number 1";
/// The stretch of plain weight.
pub(crate) const REGION_OF_PLAIN: &str = "Hardest part, plain weight";

/// The words around the figure of the setups that are shown.
#[must_use]
pub fn ranking_words(pick: &PickAnswer, shown: &[Picked], units: System) -> FigureWords {
    FigureWords {
        title: title(pick, units),
        subtitle: subtitle(pick, units),
        footnote: format!(
            "Every setup is loaded so that its hardest place asks for at most {} % of what {}. {}",
            rounded(100.0 * pick.wish.effort, 0),
            if pick.effort_unit > 1.0 {
                "the 1RM asks for at its own"
            } else {
                "the lifter can hold"
            },
            sides_in_words(&pick.study)
        ),
        description: description(pick, shown, units),
        caption: String::new(),
    }
}

/// The name of a setup among others: its place and what hangs.
#[must_use]
pub(crate) fn numbered_setup(
    index: usize,
    pick: &PickAnswer,
    picked: &Picked,
    units: System,
) -> String {
    format!("{}: {}", index + 1, short(pick, picked, units))
}

/// The name of plain weight beside the setups.
#[must_use]
pub(crate) fn plain_setup(plain: &Picked, units: System) -> String {
    format!("{}, plain", load_or_help(plain.loaded.loading.total, units))
}

fn short(pick: &PickAnswer, picked: &Picked, units: System) -> String {
    short_name(&picked.loaded.setup, &pick.study.range.carrier, units)
}

/// The finding in one sentence.
fn title(pick: &PickAnswer, units: System) -> String {
    let movement = &pick.study.movement_title;
    let first = &pick.ranked[0];
    if first.loaded.hung == 0 {
        return format!("{movement}: no band or chain of this gym beats plain weight");
    }
    let added = added_name(&first.loaded.setup, units).unwrap_or_else(|| short(pick, first, units));
    format!(
        "{movement}: {added} {}",
        does(first, |verb| conjugated(&first.loaded.setup, verb))
    )
}

/// "flattens effort by 16 %", "makes effort less even by 3 %", "leaves effort as even as plain weight does".
fn does(picked: &Picked, verb: impl Fn(&'static str) -> String) -> String {
    let percent = picked.loaded.flattening_percent;
    match rounded(percent.abs(), 0).as_str() {
        "0" => format!("{} effort as even as plain weight does", verb("leave")),
        whole if percent > 0.0 => format!("{} effort by {whole} %", verb("flatten")),
        whole => format!("{} effort less even by {whole} %", verb("make")),
    }
}

fn subtitle(pick: &PickAnswer, units: System) -> String {
    let first = &pick.ranked[0];
    let loads: Vec<String> = first
        .loaded
        .loads
        .iter()
        .map(|load| units.mass(*load))
        .collect();
    format!(
        "{}, {}: number 1 loads {} at the start, {} in the middle, {} at the end",
        pick.study.lifter_title, pick.gym_title, loads[0], loads[1], loads[2]
    )
}

/// What the figure shows, for those who cannot see it.
fn description(pick: &PickAnswer, shown: &[Picked], units: System) -> String {
    let mut words = format!(
        "Effort over {} in the {} for {}, with plain weight and the best setups of {}.",
        pick.study.axis,
        pick.study.movement_title.to_lowercase(),
        pick.study.lifter_title,
        pick.gym_title
    );
    for (index, picked) in shown.iter().enumerate() {
        words += &format!(
            " Number {}, {}, {}.",
            index + 1,
            short(pick, picked, units),
            does(picked, |verb| format!("{verb}s"))
        );
    }
    words
}
