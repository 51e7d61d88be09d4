//! What bands and chains do to a lift at all, and what helps where they do not, in words.
//!
//! In: [`Advice`]. Out: sentences; none where bands or chains do well.

use super::quantities::rounded;
use crate::error::{Advice, Instead, Means, Remedy};
use crate::units::Length;

/// The advice, sentence by sentence.
#[must_use]
pub(crate) fn advice_sentences(advice: &Advice) -> Vec<String> {
    let last = match &advice.instead {
        Instead::NotSought => return Vec::new(),
        Instead::MachineOnly => {
            "What would help is a machine for this lift whose cam or lever follows the lifter's strength.".to_owned()
        }
        Instead::Tried(none) if none.is_empty() => {
            "No cable or hinged arm that was tried evens this lift out either.".to_owned()
        }
        Instead::Tried(list) => {
            let list: Vec<String> = list.iter().map(remedy_in_words).collect();
            format!("What helps instead: {}.", list.join("; "))
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
    [Some(added), helping, Some(last)]
        .into_iter()
        .flatten()
        .collect()
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

fn remedy_in_words(remedy: &Remedy) -> String {
    let means = match remedy.means {
        Means::Cable { height, offset } => {
            format!("a cable to a pulley {}, {}", high(height), aside(offset))
        }
        Means::HingedBar { height, offset } => format!(
            "a bar hinged at one end {}, {}, its plates at the other end",
            high(height),
            aside(offset)
        ),
        Means::FittedCam => "a machine whose cam follows the lifter's strength".to_owned(),
    };
    format!(
        "{means} (flattens by {} %)",
        rounded(remedy.flattening_percent, 0)
    )
}

fn high(height: Length) -> String {
    if height.as_m() == 0.0 {
        "on the floor".to_owned()
    } else {
        format!("{} cm high", rounded(height.as_cm(), 0))
    }
}

fn aside(offset: Length) -> String {
    match offset.as_cm() {
        0.0 => "straight above or below the start".to_owned(),
        cm if cm > 0.0 => format!("{} cm ahead (or outward)", rounded(cm, 0)),
        cm => format!("{} cm behind (or inward)", rounded(-cm, 0)),
    }
}
