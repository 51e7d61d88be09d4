//! A capacity below nothing, as a joint has it that is to turn faster than its muscles carry the limb.
//!
//! In: a [`Study`]. Out: a sentence a stretch of the range.

use super::prose::{capital, percent};
use crate::capacity::Pace;
use crate::study::Study;

/// The stretches in lines of warning.
#[must_use]
pub(crate) fn negative_lines(study: &Study) -> Vec<String> {
    let told = negative(study).into_iter();
    told.map(|sentence| format!("warning: {sentence}"))
        .collect()
}

/// The same as sentences behind others; nothing where every place holds something.
#[must_use]
pub(crate) fn negative_sentences(study: &Study) -> String {
    let told = negative(study).into_iter();
    told.map(|sentence| format!(" {}.", capital(&sentence)))
        .collect()
}

fn negative(study: &Study) -> Vec<String> {
    let why = match study.pace {
        Pace::Isometric => "the muscles do not hold the limb alone",
        Pace::Linear(_) | Pace::Angular(_) => {
            "at that speed the muscles do not even carry the limb, and something would have to help it along"
        }
    };
    let samples = study.range.poses.iter().zip(&study.capacity.held);
    let mut stretches: Vec<(f64, f64)> = Vec::new();
    let mut is_open = false;
    for (pose, held) in samples {
        let (place, is_negative) = (pose.load.range, held.capacity < 0.0);
        match stretches.last_mut() {
            Some(last) if is_negative && is_open => last.1 = place,
            _ if is_negative => stretches.push((place, place)),
            _ => {}
        }
        is_open = is_negative;
    }
    let stretch = |(from, to): (f64, f64)| {
        let (from, to) = (percent(from), percent(to));
        let place = if from == to {
            format!("at {from}")
        } else {
            format!("from {from} to {to}")
        };
        format!("{place} of the range the capacity is below nothing: {why}")
    };
    stretches.into_iter().map(stretch).collect()
}
