//! What each other kind of setup buys and costs beside the one on the card.
//!
//! In: a [`PickAnswer`], one of its setups, units. Out: lines.

use super::hanging::hung_by_name;
use super::pick_card_words::{and_of_one_rm, family_name, on_the_bar};
use super::prose::{capital, counted_noun, percent};
use super::quantities::QuantityWords;
use crate::session::spotting::beyond_one_rm;
use crate::setups::{LeftByBands, LoadedOn};
use crate::study::{PickAnswer, Picked};
use crate::units::System;

/// The head of the other kinds of setup.
pub const CHOICE_HEAD: &str = "The choice";

/// A kind of setup as an answer: its name with what it weighs, what it buys and costs.
#[must_use]
pub fn answer_lines(pick: &PickAnswer, picked: &Picked, units: System) -> [String; 2] {
    let loaded = &picked.loaded;
    let mut what = on_the_bar(pick, picked, units);
    for piece in hung_by_name(&loaded.setup.items, &pick.anchors, units) {
        what += &format!(" + {piece}");
    }
    [
        format!("{}: {what}", capital(family_name(pick, picked))),
        format!(
            "buys: {}; costs: {}",
            buys(picked, units),
            costs(pick, picked, units)
        ),
    ]
}

fn buys(picked: &Picked, units: System) -> String {
    let loaded = &picked.loaded;
    if loaded.loading.on == LoadedOn::Counterweight {
        return "a whole repetition where the body alone is too much".to_owned();
    }
    if loaded.hung == 0 {
        return "nothing to hang or to fail".to_owned();
    }
    let even = match loaded.flattening_percent.round() as i64 {
        0 => "as even as plain weight".to_owned(),
        whole if whole > 0 => format!("{whole} % more even"),
        whole => format!("{} % less even", -whole),
    };
    let [start, _, end] = loaded.loads.map(|load| units.mass(load));
    format!("{even}, from {start} to {end}")
}

fn costs(pick: &PickAnswer, picked: &Picked, units: System) -> String {
    let loaded = &picked.loaded;
    if loaded.hung == 0 {
        let hardest = picked
            .study
            .sticking
            .map(|s| pick.study.told(units).region(&s));
        return hardest.map_or_else(
            || "nothing".to_owned(),
            |region| format!("hard from {region} only"),
        );
    }
    let hang = format!("{} a side", counted_noun(loaded.hung, "piece"));
    let Some(failure) = &loaded.failure else {
        return hang;
    };
    if failure.grows {
        let over = pick.safety.share_of(failure.after_all) > 1.0;
        let arms = pick
            .safety
            .arms
            .filter(|_| over)
            .map_or_else(String::new, |height| {
                let spotters = beyond_one_rm(&pick.handling);
                format!(
                    "; safety arms at {} and {spotters} spotters",
                    units.tape(height)
                )
            });
        format!(
            "{hang}; if the bands go, {} are left{}{}{arms}",
            units.mass(failure.after_all),
            and_of_one_rm(pick, failure.after_all),
            behind(pick, picked)
        )
    } else {
        format!(
            "{hang}; if one goes, {} less on that side",
            units.mass(failure.one_side)
        )
    }
}

/// That a setup leaves more than what is advised first does; nothing where that leaves as much.
fn behind(pick: &PickAnswer, picked: &Picked) -> String {
    let left = |picked: &Picked| pick.safety.left_of(picked.loaded.failure.as_ref());
    let first = pick.answers.first().map(left);
    if left(picked) > LeftByBands::Finished && first == Some(LeftByBands::Finished) {
        let failure = pick.answers[0]
            .loaded
            .failure
            .filter(|failure| failure.grows);
        let told = failure.map_or_else(
            || "no band helps".to_owned(),
            |failure| percent(pick.safety.share_of(failure.after_all)),
        );
        format!(" ({told} in what is advised first)")
    } else {
        String::new()
    }
}
