//! The card of a setup as a sheet to print.
//!
//! In: a [`PickAnswer`], its card, units. Out: [`PlanWords`] of one row, so that page and picture are those of a session.

use super::pick_card_words::{card_lines, family_name, repetitions_of_a_set, wished_effort};
use super::pick_choice_words::answer_lines;
use super::pick_words::maximum_in_words;
use super::plan_words::{PlanWords, SetRow};
use super::prose::percent;
use super::quantities::QuantityWords;
use super::setups::card_cautions;
use super::spotter_words::{calls, spotters};
use crate::anatomy::Training;
use crate::study::{PickAnswer, PickCard, Picked};
use crate::units::System;

/// Labels of the card that have a place of their own on the sheet.
const ELSEWHERE: [&str; 4] = ["setup", "load", "spotters", "again"];

/// The sheet's title and words.
#[must_use]
pub fn pick_sheet_words(
    pick: &PickAnswer,
    picked: &Picked,
    card: &PickCard,
    (training, units): (Training, System),
) -> (String, PlanWords) {
    let lines = card_lines(pick, picked, card, units);
    let of = |label: &str| {
        let line = lines.iter().find(|(known, _)| *known == label);
        line.map_or_else(String::new, |(_, words)| words.clone())
    };
    let setup = lines
        .iter()
        .filter(|(label, _)| !ELSEWHERE.contains(label))
        .map(|(label, words)| match *label {
            "" => words.clone(),
            label => format!("{label}: {words}"),
        });
    let total = picked.loaded.loading.total;
    let (hazards, others) = card_cautions(pick, training, units);
    let notes = pick.answers.iter().filter(|answer| *answer != picked);
    let words = PlanWords {
        athlete: None,
        date: None,
        movement: pick.study.movement_title.clone(),
        one_rm: maximum_in_words(pick, units),
        level: pick.study.lifter_title.clone(),
        amount: pick.gym_title.clone(),
        rows: vec![SetRow {
            name: "work".to_owned(),
            sets: 3,
            is_warm_up: false,
            load: units.mass(total),
            percent: percent(pick.safety.share_of(total + pick.safety.body))
                .trim_end_matches(" %")
                .to_owned(),
            how: of("load"),
            repetitions: repetitions_of_a_set(card),
            rest: "-".to_owned(),
            intent: of("felt"),
            has_notes: true,
            to_failure: None,
        }],
        setup: setup.collect(),
        frequency: wished_effort(pick),
        progression: String::new(),
        predicted: Vec::new(),
        notes: notes
            .map(|answer| answer_lines(pick, answer, units).join("; "))
            .collect(),
        spotters: card.spotting.as_ref().map(|who| spotters(who, units)),
        calls: card.spotting.as_ref().map(calls).unwrap_or_default(),
        hazards: hazards.clone(),
        cautions: hazards.into_iter().chain(others).collect(),
    };
    (family_name(pick, picked).to_owned(), words)
}
