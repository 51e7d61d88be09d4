//! A ranking of setups as text for people.
//!
//! In: a [`PickAnswer`]. Out: what to put on the bar and hang on it, loads in both units, what changes where, why
//! the first wins, what else stands out, cautions.

use super::table::table;
use crate::anatomy::Training;
use crate::movement::Carrier;
use crate::narrative::advice::advice_sentences;
use crate::narrative::hanging::{hangs_explained, hung_in_words, hung_pieces};
use crate::narrative::loads::loading_in_words;
use crate::narrative::places::{place_in_words, region_in_words};
use crate::narrative::quantities::{mass_in, rounded};
use crate::narrative::reasons::why_first;
use crate::narrative::setups::{goal_in_words, left_out_in_words, pick_cautions};
use crate::resistance::Item;
use crate::setups::Goal;
use crate::study::{PickAnswer, Picked};
use crate::units::{Mass, System};

/// The ranking as text for people.
#[must_use]
pub fn ranking_table(pick: &PickAnswer, training: Training, units: System) -> String {
    let mut text = head(pick, units);
    text += &numbers_table(pick, &pick.ranked, units);
    text += &how_to_read(pick, units);
    text += &short_of_plates(pick, units);
    text += "\nHow to load them\n";
    for (index, picked) in pick.ranked.iter().enumerate() {
        text += &recipe(pick, index + 1, picked, units);
    }
    let items: Vec<&Item> = pick
        .ranked
        .iter()
        .flat_map(|p| &p.loaded.setup.items)
        .collect();
    for words in hangs_explained(&items) {
        text += &format!("  {words}.\n");
    }
    text += &format!("\n{}\n", why_first(pick, units));
    for sentence in advice_sentences(&pick.advice) {
        text += &format!("{sentence}\n");
    }
    text += &front_table(pick, units);
    if !pick.left_out.is_empty() {
        text += "\nLeft out\n";
        for left_out in &pick.left_out {
            text += &format!("  {}\n", left_out_in_words(left_out, units));
        }
    }
    text += "\nCautions\n";
    for sentence in pick_cautions(pick, training, units) {
        text += &format!("  - {sentence}\n");
    }
    text
}

/// What the figures of the table are of.
fn how_to_read(pick: &PickAnswer, units: System) -> String {
    let whose = match pick.study.range.carrier {
        Carrier::Body => format!(
            "Loads count the body, {}, with what hangs from it",
            mass_in(units, pick.study.body_mass)
        ),
        Carrier::Dumbbell => "Loads are of one hand".to_owned(),
        Carrier::Lever { .. } => {
            "Loads are told as the weight on the stack that feels the same".to_owned()
        }
        Carrier::Bar | Carrier::Sled { .. } => {
            "Loads are of both sides together, bar, plates, bands and chains".to_owned()
        }
    };
    format!(
        "{whose}, as loaded: rounded down to what there is. Flattening compares setups that are equally hard, at exactly {} % at the hardest place.\n",
        rounded(100.0 * pick.wish.effort, 1)
    )
}

/// A sentence where the gym's loads end well below the wished effort.
fn short_of_plates(pick: &PickAnswer, units: System) -> String {
    let first = &pick.ranked[0];
    let hardest = first.study.sticking.map_or(0.0, |s| s.max_effort);
    if hardest > 0.85 * pick.wish.effort || matches!(pick.wish.goal, Goal::Profile(_)) {
        return String::new();
    }
    format!(
        "This gym cannot load number 1 exactly: {} would be wanted, {} is the nearest below, so its effort stays at {} %.\n",
        mass_in(units, first.loaded.exact_mass),
        mass_in(units, first.loaded.loading.total),
        rounded(100.0 * hardest, 0)
    )
}

fn head(pick: &PickAnswer, units: System) -> String {
    let [least, most] = pick.wish.share;
    let percent = |share: f64| format!("{} %", rounded(100.0 * share, 1));
    let shares = match (least, most) {
        (None, None) => String::new(),
        (Some(least), None) => format!("; at least {} from bands and chains", percent(least)),
        (None, Some(most)) => format!("; at most {} from bands and chains", percent(most)),
        (Some(least), Some(most)) => {
            format!(
                "; {} to {} from bands and chains",
                percent(least),
                percent(most)
            )
        }
    };
    let mut text = format!(
        "{}, {}, {}\nGoal: {}; hardest effort {}{shares}; at most {} a side, {} with the plates.\n",
        pick.study.movement_title,
        pick.study.lifter_title,
        pick.gym_title,
        goal_in_words(&pick.wish),
        percent(pick.wish.effort),
        counted(
            pick.wish.most_hung.into(),
            "band or chain",
            "bands and chains"
        ),
        counted(pick.wish.most_pieces.into(), "piece", "pieces")
    );
    text += &format!(
        "Searched {} of bands and chains with {}: {}; {}.\n",
        counted(pick.counts.combinations, "combination", "combinations"),
        counted(pick.counts.loads, "load", "loads"),
        counted(pick.counts.buildable(), "setup", "setups"),
        counted(pick.counts.fitting, "combination fits", "combinations fit")
    );
    text += &match &pick.plain {
        Some(plain) => format!(
            "Plain weight for comparison: {} ({}), {}.\n\n",
            both(plain.loaded.loading.total, units),
            loading_in_words(&plain.loaded.loading),
            sticking_words(pick, plain, units)
        ),
        None => "Plain weight for comparison: even the lightest load is too heavy.\n\n".to_owned(),
    };
    text
}

fn sticking_words(pick: &PickAnswer, picked: &Picked, units: System) -> String {
    picked.study.sticking.map_or_else(
        || "which asks for nothing".to_owned(),
        |s| {
            format!(
                "hardest {} ({} %), sticking region {}",
                place_in_words(&pick.study, s.point_range, units),
                rounded(100.0 * s.max_effort, 0),
                region(pick, picked, units)
            )
        },
    )
}

/// The sticking region, or that there is none.
fn region(pick: &PickAnswer, picked: &Picked, units: System) -> String {
    picked.study.sticking.map_or_else(
        || "none".to_owned(),
        |s| region_in_words(&pick.study, &s, units),
    )
}

fn numbers_table(pick: &PickAnswer, list: &[Picked], units: System) -> String {
    let header = [
        "#",
        "flattening",
        "load at start",
        "middle",
        "end",
        "bands, chains",
        "hardest effort",
        "sticking region",
        "pieces a side",
    ];
    let cells = list.iter().enumerate().map(|(index, picked)| {
        let mut row = vec![
            (index + 1).to_string(),
            format!("{} %", rounded(picked.loaded.flattening_percent, 1)),
        ];
        row.extend(picked.loaded.loads.map(|load| both(load, units)));
        row.push(format!("{} %", rounded(100.0 * picked.loaded.share, 0)));
        row.push(picked.study.sticking.map_or("-".to_owned(), |s| {
            format!("{} %", rounded(100.0 * s.max_effort, 1))
        }));
        row.push(region(pick, picked, units));
        row.push(picked.loaded.pieces.to_string());
        row
    });
    table(&header, cells.collect(), 1)
}

/// A mass in both units, the chosen one first.
fn both(mass: Mass, units: System) -> String {
    let other = match units {
        System::Metric => System::Us,
        System::Us => System::Metric,
    };
    format!("{} ({})", mass_in(units, mass), mass_in(other, mass))
}

fn recipe(pick: &PickAnswer, rank: usize, picked: &Picked, units: System) -> String {
    let mut text = format!(
        "{rank:>3}  {}: {}\n",
        both(picked.loaded.loading.total, units),
        loading_in_words(&picked.loaded.loading)
    );
    for piece in hung_pieces(&picked.loaded.setup.items, &pick.anchors, units) {
        text += &format!("     {piece}\n");
    }
    let [low, high] = picked.loaded.end_range;
    if (high.as_kg() - low.as_kg()).abs() > 0.05 {
        text += &format!(
            "     load at the end {} to {} if the bands differ from their label\n",
            mass_in(units, low),
            mass_in(units, high)
        );
    }
    text
}

fn front_table(pick: &PickAnswer, units: System) -> String {
    let mut text = format!(
        "\nNon-dominated setups: no other is at once as even, as heavy and as simple ({} of {})\n",
        pick.front.len(),
        pick.front_size
    );
    let header = [
        "pieces a side",
        "flattening",
        "mean load",
        "bar and plates",
        "bands and chains",
    ];
    let cells = pick.front.iter().map(|picked| {
        vec![
            picked.loaded.pieces.to_string(),
            format!("{} %", rounded(picked.loaded.flattening_percent, 0)),
            both(picked.loaded.mean_load, units),
            loading_in_words(&picked.loaded.loading),
            hung_in_words(&picked.loaded.setup.items, &pick.anchors, units),
        ]
    });
    text += &table(&header, cells.collect(), header.len());
    text
}

/// A number with the word for one or for many.
fn counted(number: u64, one: &str, many: &str) -> String {
    format!(
        "{} {}",
        grouped(number),
        if number == 1 { one } else { many }
    )
}

/// 1234567 as "1 234 567".
fn grouped(number: u64) -> String {
    let digits = number.to_string();
    let mut words = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            words.push(' ');
        }
        words.push(digit);
    }
    words
}
