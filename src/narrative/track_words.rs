//! A lift on its fibres' own curves, in words.
//!
//! In: the track of a muscle. Out: the words around its figures.

use super::fibre_words::SMOOTHER;
use super::figure_words::FigureWords;
use super::prose::percent;
use super::speed_words::speed_in_words;
use crate::study::{FibreTrack, MovingStudy, Study};

/// The whole length-tension curve.
pub(crate) const ALL_LENGTHS: &str = "every length";
/// The whole force-velocity curve.
pub(crate) const ALL_SPEEDS: &str = "every speed";
/// The stretch that is used.
pub(crate) const THIS_LIFT: &str = "this lift";
/// Where the lift begins.
pub(crate) const START: &str = "start";
/// Where it ends.
pub(crate) const END: &str = "end";
/// Where it is weakest.
pub(crate) const WEAKEST: &str = "weakest place";
/// Where its fibres shorten fastest.
pub(crate) const FASTEST: &str = "fastest fibres";

/// First and last of a track, in percent.
fn ends(values: &[f64]) -> [String; 2] {
    [values.first(), values.last()].map(|value| percent(value.copied().unwrap_or_default()))
}

/// The track on force over length.
pub(crate) fn length_track_words(study: &Study, track: &FibreTrack) -> FigureWords {
    let forces: Vec<f64> = track
        .lengths
        .iter()
        .map(|l| track.curves.active.at(*l))
        .collect();
    let ([from, to], [first, last]) = (ends(&track.lengths), ends(&forces));
    let movement = study.movement_title.to_lowercase();
    let words = FigureWords {
        title: format!(
            "The {} takes the {} from {from} to {to} of its optimal length",
            movement, track.muscle
        ),
        subtitle: format!("{}, active force of the muscle's fibres", study.lifter_title),
        footnote: format!("Held still, fully active. {SMOOTHER}"),
        description: format!(
            "Active force over fibre length with the stretch of it that the {} of the {movement} uses: {first} of the greatest force at the start, \
             {last} at the end.",
            track.muscle
        ),
        caption: "A lift moves its muscles along a piece of the length-tension curve; the moment arm of the muscle and the length of its \
                  fibres say how long the piece is. The foot of the curve below half of the optimal length is the model's."
            .to_owned(),
    };
    words.doubting_lengths(std::iter::once((
        study.movement_title.clone(),
        track.lengths.as_slice(),
    )))
}

/// How the numbers of the marked places are read: where the fibres are fastest in between, the lift comes back along the curve.
fn way_along(track: &FibreTrack) -> String {
    match track.is_between(track.fastest()) {
        true => {
            "The lift runs along the curve from 1 to 2, and back to 3. Force: held still = 100 %."
        }
        false => "The lift runs along the curve from 1 to 2. Force: held still = 100 %.",
    }
    .to_owned()
}

/// The track on force over speed.
pub(crate) fn speed_track_words(moving: &MovingStudy, track: &FibreTrack) -> FigureWords {
    let forces: Vec<f64> = track
        .speeds
        .iter()
        .map(|v| track.curves.velocity.at(*v))
        .collect();
    let least = forces.iter().copied().fold(f64::INFINITY, f64::min);
    let most = forces.iter().copied().fold(0.0, f64::max);
    let [first, last] = ends(&track.speeds);
    let fastest = percent(track.speeds.iter().copied().fold(0.0, f64::max));
    let study = &moving.study;
    let movement = study.movement_title.to_lowercase();
    FigureWords {
        title: format!(
            "{} leaves the {} {} to {} of its isometric force",
            super::prose::capital(&speed_in_words(moving.speed_deg_s)),
            track.muscle,
            percent(least),
            percent(most)
        ),
        subtitle: format!("{}, {movement} at constant speed of the joint", study.lifter_title),
        footnote: way_along(track),
        description: format!(
            "Force over speed of shortening with the stretch of it that the {} of the {movement} uses: from {first} of the fastest speed at \
             the start to {last} at the end, {fastest} where its fibres are fastest.",
            track.muscle
        ),
        caption: "A joint that turns at constant speed does not shorten its muscles at constant speed: where the moment arm is long, the fibres are fast."
            .to_owned(),
    }
}
