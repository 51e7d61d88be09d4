//! The way of one muscle along its fibres' own curves while a lift is done.
//!
//! In: a lift of one joint, held still and moving. Out: [`FibreTrack`].

use super::lecture_questions::MovingStudy;
use super::muscle_layers::sample_of_peak;
use super::muscles::{families_at, muscle_parts, name_of};
use super::question::Study;
use crate::anatomy::Curves;

/// Lengths and speeds of the strongest muscle's fibres over the range of a lift.
#[derive(Debug, Clone, PartialEq)]
pub struct FibreTrack {
    /// The muscle.
    pub muscle: String,
    /// The fibres' curves.
    pub curves: Curves,
    /// Fibre length over the optimal one, one a sample; of several heads the mean.
    pub lengths: Vec<f64>,
    /// Shortening speed over the fastest one while the joint turns, one a sample.
    pub speeds: Vec<f64>,
    /// The sample at which the lift is weakest.
    pub weakest: usize,
}

/// Share of the samples at either end of the range in which a marked place counts as that end (assumed: its mark would cover
/// the end's).
const END_SHARE: f64 = 1.0 / 12.0;

impl FibreTrack {
    /// The sample at which the fibres shorten fastest, the first of several.
    #[must_use]
    pub fn fastest(&self) -> usize {
        sample_of_peak(&self.speeds)
    }

    /// Whether a sample is neither the start nor the end, nor next to them.
    #[must_use]
    pub fn is_between(&self, sample: usize) -> bool {
        let last = self.speeds.len().saturating_sub(1);
        let edge = (END_SHARE * last as f64) as usize;
        sample > edge && sample < last - edge
    }

    /// The strongest muscle at the first joint of a lift.
    #[must_use]
    pub fn of(held: &Study, moving: &MovingStudy, curves: &Curves) -> Self {
        let strongest = &muscle_parts(held, 0)[0];
        let groups = families_at(held, 0);
        let named = |heads: &&Vec<usize>| name_of(held, heads) == strongest.name;
        let heads = groups.iter().find(named);
        let speed = |sample: &crate::capacity::Held| {
            let heads = heads.map_or(&[][..], Vec::as_slice);
            let speeds = heads
                .iter()
                .map(|head| sample.muscles[*head].state.velocity_norm);
            speeds.sum::<f64>() / heads.len().max(1) as f64
        };
        let weakness: Vec<f64> = held.capacity.values().iter().map(|value| -value).collect();
        Self {
            muscle: strongest.name.clone(),
            curves: curves.clone(),
            lengths: strongest.fibre_norm.clone(),
            speeds: moving.study.capacity.held.iter().map(speed).collect(),
            weakest: sample_of_peak(&weakness),
        }
    }
}
