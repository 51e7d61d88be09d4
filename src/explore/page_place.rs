//! One place of the range: what holds there, muscle by muscle, and the body.
//!
//! In: what was solved, a place. Out: [`PagePlace`].

use super::shown_chart::{BesideChart, ChartWish, ShownChart};
use super::solved_state::SolvedState;
use crate::error::Result;
use crate::figures::{BodyPicture, body_picture, live_arms, live_lengths, live_moments};
use crate::narrative::page_words::place_in_words;
use crate::report::{Sample, sample};
use crate::study::LIVING_LENGTHS;
use serde::Serialize;

/// What holds at a place.
#[derive(Debug, Serialize)]
pub(super) struct PagePlace {
    sample: usize,
    words: String,
    numbers: Sample,
    /// Whether each muscle's fibres have a length that living ones have.
    is_living: Vec<bool>,
    body: BodyPicture,
    beside: Option<ShownChart>,
}

/// What holds at the sample nearest to a place; a place of no range is cut to it.
pub(super) fn place(now: &SolvedState, wish: &ChartWish, at: f64) -> Result<PagePlace> {
    let (study, units) = (&now.study, now.units());
    let last = study.range.poses.len() - 1;
    let at = if at.is_finite() {
        at.clamp(0.0, 1.0)
    } else {
        0.0
    };
    let index = (at * last as f64).round() as usize;
    let look = wish.look(wish.beside_size);
    let joints = study.range.poses[0].coordinates.len();
    let joint = wish.joint.min(joints - 1);
    let chart = match wish.beside {
        BesideChart::Nothing => None,
        BesideChart::Lengths => {
            let curves = &now.model.lifter.curves;
            Some(live_lengths(study, curves, (index, wish.muscle), look)?)
        }
        BesideChart::Arms => Some(live_arms(study, joint, units, look)?),
        BesideChart::Moments => Some(live_moments(study, joint, units, look)?),
    };
    let (shortest, longest) = LIVING_LENGTHS;
    let muscles = study.capacity.held[index].muscles.iter();
    Ok(PagePlace {
        sample: index,
        words: place_in_words(study, index, units),
        numbers: sample(study, study.setups.first(), index, true),
        is_living: muscles
            .map(|muscle| (shortest..=longest).contains(&muscle.state.length_norm))
            .collect(),
        body: body_picture(study, index),
        beside: chart.as_ref().map(ShownChart::of).transpose()?,
    })
}
