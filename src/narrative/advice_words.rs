//! What bands and chains do to a lift at all, and what helps where they do not, in words.
//!
//! In: [`Advice`], the units asked for. Out: sentences; none where bands or chains do well.

use super::quantities::{QuantityWords, rounded};
use crate::error::{Advice, Instead, Means, Remedy};
use crate::units::{Length, System};

/// The advice, sentence by sentence.
#[must_use]
pub(crate) fn advice_sentences(advice: &Advice, units: System) -> Vec<String> {
    let last = match &advice.instead {
        Instead::NotSought => return Vec::new(),
        Instead::NothingSetUp => None,
        Instead::MachineOnly => Some(
            "What would help is a machine for this lift whose cam or lever follows the lifter's strength.".to_owned()
        ),
        Instead::Tried(none) if none.is_empty() => {
            Some("No cable or hinged arm that was tried evens this lift out either.".to_owned())
        }
        Instead::Tried(list) => {
            let list: Vec<String> = list.iter().map(|remedy| remedy_in_words(remedy, units)).collect();
            Some(format!("What helps instead: {}.", list.join("; ")))
        }
    };
    let added = advice.best_added_percent.map_or_else(
        || {
            "No pair of bands or chains that adds load can be hung here within the limits."
                .to_owned()
        },
        added_in_words,
    );
    let helping = advice.best_helping_percent.map(helping_in_words);
    [Some(added), helping, last].into_iter().flatten().collect()
}

fn added_in_words(percent: f64) -> String {
    if percent < -0.5 {
        format!(
            "Bands anchored below and chains make this lift less even: they add load towards the end, where the effort is already greatest. The best pair costs {} %.",
            rounded(-percent, 0)
        )
    } else {
        format!(
            "Bands anchored below and chains flatten this lift by {} % at best with one pair.",
            rounded(percent, 0)
        )
    }
}

fn helping_in_words(percent: f64) -> String {
    if percent < -0.5 {
        format!(
            "A band that takes load away costs {} % at best: it slackens as the load rises and helps least where help is wanted.",
            rounded(-percent, 0)
        )
    } else {
        format!(
            "A band that takes load away (anchored above or aside) flattens it by {} % at best.",
            rounded(percent, 0)
        )
    }
}

fn remedy_in_words(remedy: &Remedy, units: System) -> String {
    let means = match remedy.means {
        Means::Cable { height, offset } => {
            format!(
                "a cable to a pulley {}, {}",
                high(height, units),
                aside(offset, units)
            )
        }
        Means::HingedBar { height, offset } => format!(
            "a bar hinged at one end {}, {}, its plates at the other end",
            high(height, units),
            aside(offset, units)
        ),
        Means::FittedCam => "a machine whose cam follows the lifter's strength".to_owned(),
    };
    format!(
        "{means} (flattens by {} %)",
        rounded(remedy.flattening_percent, 0)
    )
}

fn high(height: Length, units: System) -> String {
    if height.as_m() == 0.0 {
        "on the floor".to_owned()
    } else {
        format!("{} high", units.tape(height))
    }
}

fn aside(offset: Length, units: System) -> String {
    match offset.as_m() {
        0.0 => "straight above or below the start".to_owned(),
        ahead if ahead > 0.0 => format!("{} ahead (or outward)", units.tape(offset)),
        _ => format!("{} behind (or inward)", units.tape(-offset)),
    }
}
