//! A strength curve at several speeds of its joint, in words.
//!
//! In: the curve held still and the moving ones. Out: the words around their figure and their names.

use super::figure_words::FigureWords;
use super::places::sides_in_words;
use super::prose::{capital, percent};
use super::quantities::rounded;
use crate::study::{MovingStudy, Study};

/// The arrow of the axis is that of lifting.
const LOWERING_GOES_BACK: &str = " Lowering runs from right to left.";

/// The words around the figure.
#[must_use]
pub fn speed_words(lifter: &str, held: &Study, moving: &[MovingStudy]) -> FigureWords {
    let kept = |moving: &MovingStudy| percent(moving.study.class.peak / held.class.peak);
    let movement = held.movement_title.to_lowercase();
    let told: Vec<String> = moving
        .iter()
        .map(|one| {
            format!(
                "{}: peak {} of the isometric one",
                speed_in_words(one.speed_deg_s),
                kept(one)
            )
        })
        .collect();
    let fastest = moving.last();
    let words = FigureWords {
        title: format!(
            "At {} deg/s the {movement} keeps {} of its isometric peak",
            fastest.map_or_else(String::new, |one| rounded(one.speed_deg_s, 0)),
            fastest.map_or_else(String::new, kept)
        ),
        subtitle: format!("{lifter}, strength curve at constant speed of the joint"),
        footnote: format!(
            "{}{}",
            sides_in_words(held),
            if moving.iter().any(|one| one.speed_deg_s < 0.0) { LOWERING_GOES_BACK } else { "" }
        ),
        description: format!(
            "Strength curves of the {movement} over {} at four speeds. {}.",
            held.axis,
            capital(&told.join("; "))
        ),
        caption: "The force-velocity curve of the fibres moves the whole strength curve: lowering lifts it a little, faster \
                  lifting presses it down."
            .to_owned(),
    };
    let names: Vec<String> = moving
        .iter()
        .map(|one| speed_in_words(one.speed_deg_s))
        .collect();
    let curves = names.iter().zip(moving);
    let curves: Vec<(&str, &Study)> = curves
        .map(|(name, one)| (name.as_str(), &one.study))
        .collect();
    words.doubting(&curves)
}

/// Where a marked peak lies.
pub(crate) fn at_angle(degrees: f64) -> String {
    format!("at {} deg", rounded(degrees, 0))
}

/// What a joint's speed is called.
#[must_use]
pub(crate) fn speed_in_words(speed_deg_s: f64) -> String {
    let size = rounded(speed_deg_s.abs(), 0);
    if speed_deg_s < 0.0 {
        format!("lowering at {size} deg/s")
    } else if speed_deg_s > 0.0 {
        format!("lifting at {size} deg/s")
    } else {
        "held still".to_owned()
    }
}
