//! Why the first setup wins, and what it changes against plain weight.
//!
//! In: the first setup, plain weight, the wish. Out: a sentence or two.

use super::pick_words::load_or_help;
use super::quantities::{QuantityWords, rounded, with_minus};
use super::shared_phrases::range_place;
use crate::setups::Goal;
use crate::study::{PickAnswer, Picked};
use crate::units::{Mass, System};

/// Loads that differ by less are told as equal, kg.
const SAME_KG: f64 = 0.05;

/// Below this share of plain weight's effort a setup is not as hard.
const AS_HARD: f64 = 0.9;

/// Why the first setup wins.
#[must_use]
pub fn why_first(pick: &PickAnswer, units: System) -> String {
    let won = won(pick);
    let first = &pick.ranked[0];
    let Some(plain) = &pick.plain else {
        return format!(
            "Number 1 is first because {won} (flattening {} %).",
            with_minus(&rounded(first.loaded.flattening_percent, 0))
        );
    };
    if first.loaded.hung == 0 {
        return format!(
            "Number 1 is first because {won}: no band or chain of this gym does better than plain weight."
        );
    }
    format!(
        "Number 1 is first because {won}: {}. {}.",
        evenness(first.loaded.flattening_percent),
        against_plain(pick, plain, first, units)
    )
}

fn won(pick: &PickAnswer) -> String {
    match &pick.wish.goal {
        Goal::Flattest if is_only_nearest(pick) => {
            "it evens effort out most of those that this gym can load as near to the wished effort"
                .to_owned()
        }
        Goal::Flattest => "it evens effort out most".to_owned(),
        Goal::MostLoad { at, .. } => {
            format!("it allows the most load at {}", range_place(*at))
        }
        Goal::Share { share, at } => format!(
            "its share of bands and chains at {} is nearest to {} %",
            range_place(*at),
            rounded(100.0 * share, 0)
        ),
        Goal::Profile(_) => "its effort is nearest to the profile".to_owned(),
    }
}

/// Whether another one is flatter, which the gym's loads leave further below the wished effort.
fn is_only_nearest(pick: &PickAnswer) -> bool {
    let first = &pick.ranked[0].loaded;
    let is_flatter = |other: &Picked| {
        other.loaded.flattening_percent.round() > first.flattening_percent.round()
            && other.loaded.missing_steps > first.missing_steps
    };
    pick.ranked.iter().any(is_flatter)
}

fn evenness(percent: f64) -> String {
    match percent.round() as i64 {
        0 => "as even as plain weight".to_owned(),
        whole if whole > 0 => format!("{whole} % flatter than plain weight"),
        whole => format!("{} % less even than plain weight", -whole),
    }
}

/// What changes at start, end and hardest place.
fn against_plain(pick: &PickAnswer, plain: &Picked, first: &Picked, units: System) -> String {
    let change = |index: usize| {
        let kg = first.loaded.loads[index].as_kg() - plain.loaded.loads[index].as_kg();
        match kg {
            kg if kg.abs() < SAME_KG => "as heavy".to_owned(),
            kg if kg < 0.0 => format!("{} lighter", units.mass(Mass::from_kg(-kg))),
            kg => format!("{} heavier", units.mass(Mass::from_kg(kg))),
        }
    };
    let mut words = format!(
        "Against {} of plain weight{} it is {} at the start and {} at the end",
        load_or_help(plain.loaded.loading.total, units),
        as_hard(pick, plain, first),
        change(0),
        change(2)
    );
    if let (Some(before), Some(after)) = (plain.study.sticking, first.study.sticking)
        && (before.point_range - after.point_range).abs() > 0.02
    {
        words += &format!(
            ", and the hardest place moves from {} to {}",
            pick.study.told(units).place(before.point_range),
            pick.study.told(units).place(after.point_range)
        );
    }
    words
}

/// How hard both are as loaded.
fn as_hard(pick: &PickAnswer, plain: &Picked, first: &Picked) -> String {
    let (before, after) = (pick.hardest(plain), pick.hardest(first));
    if before.min(after) > AS_HARD * before.max(after) {
        return " at the same hardest effort".to_owned();
    }
    format!(
        " ({} % at its hardest place, number 1 only {} % with what this gym can load)",
        rounded(100.0 * before, 0),
        rounded(100.0 * after, 0)
    )
}
