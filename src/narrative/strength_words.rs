//! A strength curve with its setups in words: the finding, whose curve, what the figure shows.
//!
//! In: a [`Study`], units. Out: the words around its figure and the labels in it.

use super::figure_words::FigureWords;
use super::places::{place_in_words, sides_in_words};
use super::prose::capital;
use super::quantities::rounded;
use super::setup_names::{added_is_plural, added_name, name_of};
use crate::overlay::Sticking;
use crate::study::{SetupStudy, Study};
use crate::units::System;

/// What an effort of 100 % means.
pub(crate) const WHOLE_STRENGTH: &str = "all the lifter has";

/// The shaded stretch of the only setup.
pub(crate) const STICKING_REGION: &str = "Sticking region";

/// A gain of evenness smaller than this is called none, %.
const ALIKE_PERCENT: f64 = 0.5;

/// The words around the figure of a study.
#[must_use]
pub fn strength_words(study: &Study, units: System) -> FigureWords {
    FigureWords {
        title: strength_title(study, units),
        subtitle: subtitle(study, units),
        footnote: format!(
            "{} Isometric model; sticking region: effort within 5 % of its greatest.",
            sides_in_words(study)
        ),
        description: strength_description(study, units),
        caption: sides_in_words(study).to_owned(),
    }
}

/// The finding in one sentence.
#[must_use]
pub fn strength_title(study: &Study, units: System) -> String {
    let name = &study.movement_title;
    match study.setups.as_slice() {
        [] => format!("{name}: {} strength curve", article(study)),
        [one] => format!("{name}: {}", hardest(study, one, units)),
        [first, others @ ..] => comparison(study, units, first, others),
    }
}

/// How the only setup goes at its hardest place.
fn hardest(study: &Study, setup: &SetupStudy, units: System) -> String {
    let Some(sticking) = setup.sticking else {
        return "this load asks for nothing".to_owned();
    };
    let (effort, place) = (
        sticking.max_effort,
        place_in_words(study, sticking.point_range, units),
    );
    if effort >= 2.0 {
        format!("{} times what can be held {place}", rounded(effort, 1))
    } else if effort > 1.0 {
        format!(
            "too heavy by {} % {place}",
            rounded(100.0 * (effort - 1.0), 0)
        )
    } else {
        format!("hardest {place}")
    }
}

fn comparison(study: &Study, units: System, first: &SetupStudy, others: &[SetupStudy]) -> String {
    let movement = &study.movement_title;
    let base = first.flattening_percent.unwrap_or(0.0);
    let best = others
        .iter()
        .filter_map(|setup| Some((setup.flattening_percent? - base, setup)))
        .max_by(|a, b| a.0.total_cmp(&b.0));
    let than = match added_name(&first.demand.setup, units) {
        Some(_) => format!(" more than {}", name_of(study, first, units)),
        None => String::new(),
    };
    match best {
        Some((gain, setup)) if gain > ALIKE_PERCENT => format!(
            "{movement}: {} effort by {} %{than}",
            does(study, setup, "flatten", units),
            rounded(gain, 0)
        ),
        Some((gain, setup)) if gain < -ALIKE_PERCENT => format!(
            "{movement}: {} effort less even, by {} %",
            does(study, setup, "make", units),
            rounded(-gain, 0)
        ),
        _ => format!("{movement}: the setups load the range alike"),
    }
}

/// What hangs on the bar as a subject with its verb.
fn does(study: &Study, setup: &SetupStudy, verb: &str, units: System) -> String {
    match added_name(&setup.demand.setup, units) {
        Some(added) => format!("{added} {}", conjugated(&setup.demand.setup, verb)),
        None => format!("{} {verb}s", name_of(study, setup, units)),
    }
}

/// The verb for what a setup adds, one thing or several.
#[must_use]
pub(crate) fn conjugated(setup: &crate::resistance::Setup, verb: &str) -> String {
    if added_is_plural(setup) {
        verb.to_owned()
    } else {
        format!("{verb}s")
    }
}

fn article(study: &Study) -> String {
    let word = study.class.shape.word();
    if word.starts_with(['a', 'e', 'i', 'o', 'u']) {
        format!("an {word}")
    } else {
        format!("a {word}")
    }
}

fn subtitle(study: &Study, units: System) -> String {
    let mut words = study.lifter_title.clone();
    if let [one] = study.setups.as_slice() {
        words += &format!(", {}", name_of(study, one, units));
    }
    words += &format!(
        ". {} curve: start {} %, end {} % of its peak",
        capital(study.class.shape.word()),
        rounded(100.0 * study.class.start_ratio, 0),
        rounded(100.0 * study.class.end_ratio, 0)
    );
    words
}

/// What the figure shows, for those who cannot see it.
#[must_use]
pub fn strength_description(study: &Study, units: System) -> String {
    let mut words = format!(
        "{} of the {} strength curve: capacity of {} over {}.",
        capital(study.class.shape.word()),
        study.movement_title.to_lowercase(),
        study.lifter_title,
        study.axis
    );
    for setup in &study.setups {
        if let Some(sticking) = &setup.sticking {
            words += &setup_description(study, setup, sticking, units);
        }
        if let Some(percent) = setup.flattening_percent.filter(|_| study.setups.len() > 1) {
            words += &format!(
                " It flattens effort by {} % against plain weight.",
                rounded(percent, 0)
            );
        }
    }
    words
}

fn setup_description(
    study: &Study,
    setup: &SetupStudy,
    sticking: &Sticking,
    units: System,
) -> String {
    let place = |range: f64| place_in_words(study, range, units);
    format!(
        " With {}, the greatest effort is {} % {}, and the sticking region runs from {} to {}.",
        name_of(study, setup, units),
        rounded(100.0 * sticking.max_effort, 0),
        place(sticking.point_range),
        place(sticking.from_range),
        place(sticking.to_range),
    )
}

/// The label of the hardest place of the only setup, and its detail.
#[must_use]
pub(crate) fn hardest_label(
    study: &Study,
    setup: &SetupStudy,
    sticking: &Sticking,
    units: System,
) -> (String, String) {
    let joint = setup.limiting.map_or("limb", |joint| study.joint(joint));
    (
        format!("{} % effort", rounded(100.0 * sticking.max_effort, 0)),
        format!(
            "{}; the {joint} gives way first",
            place_in_words(study, sticking.point_range, units)
        ),
    )
}

/// The sticking region of one of several setups.
#[must_use]
pub(crate) fn region_of(name: &str) -> String {
    format!("{STICKING_REGION}, {name}")
}
