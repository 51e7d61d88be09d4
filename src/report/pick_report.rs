//! A ranking of setups as text for people.
//!
//! In: a [`PickAnswer`]. Out: what to put on the bar and hang on it, loads in both units, what changes where, why
//! the first wins, what else stands out, cautions.

use super::table::narrow_table;
use super::wrapping::wrapped;
use crate::anatomy::Training;
use crate::narrative::advice_words::advice_sentences;
use crate::narrative::fibre_words::{fibre_note, fibre_warning_lines};
use crate::narrative::hanging::hangs_explained;
use crate::narrative::pick_card_words::{card_head, card_lines};
use crate::narrative::pick_choice_words::{CHOICE_HEAD, answer_lines};
use crate::narrative::pick_words::{
    CAUTIONS_HEAD, LEFT_OUT_HEAD, PICKED_HEADS, RECIPES_HEAD, front_head, front_line, how_to_read,
    pick_head, picked_cells, recipe,
};
use crate::narrative::reasons::why_first;
use crate::narrative::setups::{card_cautions, left_out_in_words, pick_cautions};
use crate::resistance::Item;
use crate::study::{PickAnswer, PickCard};
use crate::units::System;

/// Marks a line about what is dangerous today.
pub(super) const HAZARD: &str = "! ";

/// The card of the setup that is advised, then one answer of each other kind.
#[must_use]
pub fn pick_card_text(
    pick: &PickAnswer,
    card: Option<&PickCard>,
    training: Training,
    units: System,
) -> String {
    let mut lines: Vec<String> = Vec::new();
    for head in card_head(pick, units) {
        lines.extend(wrapped("", &head));
    }
    let (hazards, others) = card_cautions(pick, training, units);
    lines.extend(hazards.iter().flat_map(|words| wrapped(HAZARD, words)));
    lines.push(String::new());
    if let (Some(first), Some(card)) = (pick.answers.first(), card) {
        for (label, words) in card_lines(pick, first, card, units) {
            lines.extend(wrapped(&format!("{label:<10}"), &words));
        }
        lines.push(String::new());
    }
    if pick.answers.len() > 1 {
        lines.push(CHOICE_HEAD.to_owned());
    }
    for answer in pick.answers.iter().skip(1) {
        for (index, words) in answer_lines(pick, answer, units).iter().enumerate() {
            let head = if index == 0 { "- " } else { "    " };
            lines.extend(wrapped(head, words));
        }
    }
    for words in advice_sentences(&pick.advice, units) {
        lines.extend(wrapped("", &words));
    }
    lines.push(String::new());
    lines.push(CAUTIONS_HEAD.to_owned());
    lines.extend(others.iter().flat_map(|caution| wrapped("- ", caution)));
    if let Some(note) = fibre_note(&pick.study) {
        lines.extend(wrapped("", &note));
    }
    lines.join("\n") + "\n"
}

/// The ranking as text for people.
#[must_use]
pub fn ranking_table(pick: &PickAnswer, training: Training, units: System) -> String {
    let mut lines = sentences(&pick_head(pick, units));
    lines.push(String::new());
    lines.push(numbers_table(pick, units));
    lines.extend(sentences(&how_to_read(pick, units)));
    lines.push(String::new());
    lines.extend(recipes(pick, units));
    lines.push(String::new());
    lines.extend(wrapped("", &why_first(pick, units)));
    lines.extend(sentences(&advice_sentences(&pick.advice, units)));
    lines.push(String::new());
    lines.extend(wrapped("", &front_head(pick)));
    let front = pick.front.iter();
    let front = front.flat_map(|picked| wrapped("  - ", &front_line(pick, picked, units)));
    lines.extend(front);
    lines.extend(sentences(&fibre_warning_lines(&pick.study)));
    if !pick.left_out.is_empty() {
        lines.push(String::new());
        lines.push(LEFT_OUT_HEAD.to_owned());
        let left_out = pick.left_out.iter();
        lines.extend(left_out.flat_map(|one| wrapped("  - ", &left_out_in_words(one, units))));
    }
    lines.push(String::new());
    lines.push(CAUTIONS_HEAD.to_owned());
    let cautions = pick_cautions(pick, training, units);
    lines.extend(cautions.iter().flat_map(|caution| wrapped("  - ", caution)));
    lines.join("\n") + "\n"
}

/// Each sentence in lines of a terminal.
fn sentences(all: &[String]) -> Vec<String> {
    all.iter().flat_map(|words| wrapped("", words)).collect()
}

fn numbers_table(pick: &PickAnswer, units: System) -> String {
    let ranked = pick.ranked.iter().enumerate();
    let rows = ranked.map(|(index, picked)| picked_cells(pick, index + 1, picked, units));
    let table = narrow_table(&PICKED_HEADS, rows.collect(), 1);
    table.trim_end_matches('\n').to_owned()
}

/// How every ranked setup is loaded, its number in front.
fn recipes(pick: &PickAnswer, units: System) -> Vec<String> {
    let mut lines = vec![RECIPES_HEAD.to_owned()];
    for (index, picked) in pick.ranked.iter().enumerate() {
        for (piece, line) in recipe(pick, picked, units).into_iter().enumerate() {
            let head = match piece {
                0 => format!("{:>3}  ", index + 1),
                _ => "     ".to_owned(),
            };
            lines.extend(wrapped(&head, &line));
        }
    }
    let setups = pick.ranked.iter();
    let items: Vec<&Item> = setups.flat_map(|p| &p.loaded.setup.items).collect();
    let explained = hangs_explained(&items);
    lines.extend(
        explained
            .iter()
            .flat_map(|words| wrapped("  ", &format!("{words}."))),
    );
    lines
}
