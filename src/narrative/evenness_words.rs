//! Bands and chains over an ascending lift in words: what they do to the strong end, how even they make effort.
//!
//! In: a lift under plain weight, band, chain, both. Out: the words around the lecture's figures of them.

use super::figure_words::FigureWords;
use super::implements::item_in_words;
use super::prose::{listed, percent};
use super::quantities::rounded;
use super::strength_words::STICKING_REGION;
use crate::resistance::Setup;
use crate::study::{AgainstPlain, HARD_EFFORT, HungKind};
use crate::units::System;

/// What is said to the sticking region of a plain weight.
pub(crate) const STICKING_CAPTION: &str = "Effort is demand over capacity. Around its greatest value lies the sticking region: the load passes there or \
     the lift fails. It says nothing about the rest of the range, where the same load is light.";

/// What a cam shaped after the curve does, told in place of a hardest place that is none.
const SAME_SHARE: &str =
    "Over the cam the load is about the same share of what the lifter can hold at every place.";

/// What a setup of the lecture is called in its figures.
#[must_use]
pub(crate) fn hung_name(kind: HungKind) -> &'static str {
    match kind {
        HungKind::Plain => "plain weight",
        HungKind::Band => "with a band",
        HungKind::Chain => "with a chain",
        HungKind::Both => "with both",
        HungKind::Cam => "with a cam",
    }
}

/// The shaded stretch, which the figure is about.
#[must_use]
pub(crate) fn region_under(kind: HungKind) -> String {
    format!("{STICKING_REGION} {}", hung_name(kind))
}

/// Plain weight against a band or a chain.
#[must_use]
pub fn against_plain_words(lifter: &str, both: &AgainstPlain, units: System) -> FigureWords {
    let study = &both.study;
    let [plain, hung] = [0, 1].map(|index| percent(both.end_effort(index)));
    let what = kind_word(both.last_kind());
    let [plain_items, hung_items] = [0, 1].map(|index| items_in_words(&both.setups[index], units));
    FigureWords {
        title: format!("A {what} loads the strong end: effort there {hung} instead of {plain}"),
        subtitle: format!(
            "{lifter}, {}: {hung_items} against {plain_items}",
            study.movement_title.to_lowercase(),
        ),
        footnote: format!(
            "Both loads take {} of what the lifter has at their hardest place. Flattening of effort over the range: \
             {} %.",
            percent(HARD_EFFORT),
            rounded(both.gained_percent(), 0)
        ),
        description: format!(
            "{} Effort from 80 to 90 % of the range is {hung} with the {what} and {plain} with plain weight.",
            study.told(units).strength_description(),
        ),
        caption: hung_caption(both.last_kind()).to_owned(),
    }
}

/// The kind as a bare word.
fn kind_word(kind: HungKind) -> &'static str {
    match kind {
        HungKind::Chain => "chain",
        HungKind::Both => "both",
        HungKind::Cam => "cam",
        HungKind::Plain | HungKind::Band => "band",
    }
}

/// Plain weight against a band or a cam on a lift whose strength falls: whether effort becomes more even.
#[must_use]
pub fn evener_words(lifter: &str, both: &AgainstPlain, units: System) -> FigureWords {
    let study = &both.study;
    let [plain, hung] = [0, 1].map(|index| percent(both.mean_effort(index)));
    let what = kind_word(both.last_kind());
    let lift = study.movement_title.to_lowercase();
    let gained = both.gained_percent();
    let more = if gained < 0.0 { "less" } else { "more" };
    let [plain_items, hung_items] = [0, 1].map(|index| items_in_words(&both.setups[index], units));
    let sign = if gained < 0.0 { "\u{2212}" } else { "" };
    FigureWords {
        title: format!("A {what} makes the {lift} {more} even: mean effort {hung} instead of {plain}"),
        subtitle: format!("{lifter}, {lift}: {hung_items} against {plain_items}"),
        footnote: format!(
            "Both loads take {} of what the lifter has at their hardest place. Flattening of effort over the range: \
             {sign}{} %.",
            percent(HARD_EFFORT),
            rounded(gained.abs(), 0)
        ),
        description: format!(
            "{} Mean effort over the range is {hung} with the {what} and {plain} with plain weight.",
            match both.last_kind() {
                HungKind::Cam => SAME_SHARE.to_owned(),
                _ => study.told(units).strength_description(),
            },
        ),
        caption: match both.last_kind() {
            HungKind::Cam => {
                "A cam changes the lever of the stack with the angle. This one is shaped after this lifter's own strength curve; \
                 a machine's is shaped after nobody's in particular."
            }
            kind if gained >= 0.0 => hung_caption(kind),
            _ => {
                "Where strength falls along the way, a band adds load just where the lifter has least: the bar must be lighter, and \
                 the strong start gets little to do."
            }
        }
        .to_owned(),
    }
}

/// What the effort under a setup goes by, beside its load.
#[must_use]
pub fn effort_under(setup: &str) -> String {
    format!("effort: {}", setup.to_lowercase())
}

fn hung_caption(kind: HungKind) -> &'static str {
    match kind {
        HungKind::Chain => {
            "A chain weighs more with every link that leaves the floor: its load grows in a straight line with \
             height, without the jerk of a band."
        }
        HungKind::Plain | HungKind::Band | HungKind::Both | HungKind::Cam => {
            "A band pulls harder the farther it is stretched: the load grows with the strength of the lifter. The \
             bar is lighter so that the hardest place is as hard as with plain weight."
        }
    }
}

/// What hangs, piece by piece.
fn items_in_words(setup: &Setup, units: System) -> String {
    let words: Vec<String> = setup
        .items
        .iter()
        .map(|item| item_in_words(item, units))
        .collect();
    words.join(" + ")
}

/// Effort under plain weight, chain, band and both.
#[must_use]
pub fn flattening_words(lifter: &str, all: &AgainstPlain) -> FigureWords {
    let study = &all.study;
    let told: Vec<String> = study
        .setups
        .iter()
        .zip(&all.kinds)
        .filter(|(_, kind)| **kind != HungKind::Plain)
        .map(|(setup, kind)| {
            let percent = rounded(setup.flattening_percent.unwrap_or(0.0), 0);
            format!("{} {percent} %", kind_word(*kind))
        })
        .collect();
    FigureWords {
        title: format!("Flattening against plain weight: {}", told.join(", ")),
        subtitle: format!(
            "{lifter}, {}: effort over the range, {} at every hardest place",
            study.movement_title.to_lowercase(),
            percent(HARD_EFFORT)
        ),
        footnote: "Flattening: by how much the spread of effort (standard deviation over mean) is smaller than with \
                   plain weight; 100 % would be a level line."
            .to_owned(),
        description: format!(
            "Effort over the {} for four loads of equal hardest place. Flattening against plain weight: {}.",
            study.axis,
            listed(&told)
        ),
        caption: "The flatter the line, the more of the range is trained hard. How much is gained depends on the lift and on the \
                  share of the load that bands and chains take."
            .to_owned(),
    }
}
