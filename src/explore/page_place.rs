//! One place of the range: what holds there, muscle by muscle, and the body.
//!
//! In: what was solved, a place. Out: [`PagePlace`].

use super::shown_chart::{BesideChart, ChartWish, ShownChart};
use super::solved_state::SolvedState;
use crate::error::Result;
use crate::figures::{BodyPicture, body_picture, live_arms, live_lengths, live_moments};
use crate::narrative::page_words::place_in_words;
use crate::report::{Sample, sample};
use crate::study::{LIVING_LENGTHS, lifting_sign};
use serde::Serialize;

/// What holds at a place.
#[derive(Debug, Serialize)]
pub(super) struct PagePlace {
    sample: usize,
    words: String,
    numbers: Sample,
    /// Whether each muscle's fibres have a length that living ones have.
    is_living: Vec<bool>,
    /// Each muscle's moment arm at the joint asked for, m, positive where it works with the lift.
    arms_m: Vec<f64>,
    /// What its force makes of that arm, N·m.
    torques_nm: Vec<f64>,
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
    let held = &study.capacity.held[index];
    let muscles = held.muscles.iter();
    let lifting = lifting_sign(study, joint);
    let arms_m: Vec<f64> = muscles.clone().map(|m| lifting * m.arms_m[joint]).collect();
    let forces = muscles.clone().zip(&held.activations);
    let forces = forces.map(|(muscle, active)| muscle.passive_n + active * muscle.active_n);
    Ok(PagePlace {
        sample: index,
        words: place_in_words(study, index, units),
        numbers: sample(study, study.setups.first(), index, true),
        is_living: muscles
            .map(|muscle| (shortest..=longest).contains(&muscle.state.length_norm))
            .collect(),
        torques_nm: forces
            .zip(&arms_m)
            .map(|(force, arm)| force * arm)
            .collect(),
        arms_m,
        body: body_picture(study, index),
        beside: chart.as_ref().map(ShownChart::of).transpose()?,
    })
}
