//! Words about a ranking that table, CSV and JSON share: the goal, the cautions.
//!
//! In: a [`PickAnswer`], who lifts. Out: sentences; the disclaimer always stands first among the cautions.

use crate::anatomy::Training;
use crate::movement::Carrier;
use crate::resistance::Item;
use crate::setups::{Goal, Uses, Wish, cautions, place_in_words};
use crate::study::{PickAnswer, load_points};
use crate::units::{System, rounded};

/// The goal in words.
#[must_use]
pub fn goal_in_words(wish: &Wish) -> String {
    match &wish.goal {
        Goal::Flattest => "flattest effort".to_owned(),
        Goal::MostLoad { at, limit_at: None } => format!("most load at {}", place_in_words(*at)),
        Goal::MostLoad {
            at,
            limit_at: Some(limit),
        } => {
            format!(
                "most load at {} with the effort held at {}",
                place_in_words(*at),
                place_in_words(*limit)
            )
        }
        Goal::Share { share, at } => {
            format!(
                "{} % of the load at {} from bands and chains",
                rounded(100.0 * share, 1),
                place_in_words(*at)
            )
        }
        Goal::Profile(points) => {
            let points: Vec<String> = points
                .iter()
                .map(|(s, e)| format!("{} % at {}", rounded(100.0 * e, 0), place_in_words(*s)))
                .collect();
            format!("effort nearest to {}", points.join(", "))
        }
    }
}

/// The usual cautions, and those of the ranked setups themselves, each once.
#[must_use]
pub fn all_cautions(pick: &PickAnswer, training: Training, units: System) -> Vec<String> {
    let items = || pick.ranked.iter().flat_map(|picked| &picked.setup.items);
    let uses = Uses {
        bar: pick.study.range.carrier == Carrier::Bar,
        bands: items().any(|item| matches!(item, Item::Band(_))),
        chains: items().any(|item| matches!(item, Item::Chain(_))),
        novice: training == Training::Novice,
    };
    let mut said: Vec<String> = cautions(uses).into_iter().map(str::to_owned).collect();
    said.extend(own_cautions(pick, units));
    said
}

/// What to watch for in single setups, with the numbers of those that it concerns.
fn own_cautions(pick: &PickAnswer, units: System) -> Vec<String> {
    let points = load_points(&pick.study.range);
    let mut concerned: Vec<(String, Vec<String>)> = Vec::new();
    for (index, picked) in pick.ranked.iter().enumerate() {
        let setup = &picked.study.demand.setup;
        let own = setup.cautions(&points, &pick.study.range.carrier, units);
        for sentence in own.into_iter().filter(|sentence| !is_usual(sentence)) {
            let number = (index + 1).to_string();
            match concerned.iter_mut().find(|(known, _)| *known == sentence) {
                Some((_, numbers)) => numbers.push(number),
                None => concerned.push((sentence, vec![number])),
            }
        }
    }
    let told = concerned.into_iter().map(|(sentence, numbers)| {
        let word = if numbers.len() == 1 {
            "Number"
        } else {
            "Numbers"
        };
        format!("{word} {}: {sentence}", numbers.join(", "))
    });
    told.collect()
}

/// Whether a setup's own caution says what the usual ones already do.
fn is_usual(sentence: &str) -> bool {
    sentence.contains("Look over every band") || sentence.contains("computed from its dimensions")
}
