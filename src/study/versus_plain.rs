//! The same lifter with and without bands or chains, at the same hardest effort: what they do to the lift.
//!
//! In: a question, a setup, how heavy it is. Out: [`VersusPlain`], both repetitions and their differences.

use super::load_for_effort::load_for_effort;
use super::question::Question;
use super::rep_study::{Heaviness, RepStudy, repetition};
use crate::error::{Error, LiftFault, Result};
use crate::rep::RepOptions;
use crate::resistance::Setup;

/// Two repetitions of one lifter.
#[derive(Debug, Clone, PartialEq)]
pub struct VersusPlain {
    /// With everything that hangs on the bar.
    pub with: RepStudy,
    /// With plain weight whose hardest place is as hard.
    pub plain: RepStudy,
    /// The hardest effort that both share.
    pub effort: f64,
}

/// Figures of one repetition that bands and chains change.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LiftShape {
    /// Greatest velocity of the lift, m/s (or rad/s).
    pub peak_velocity: f64,
    /// Place of the greatest velocity in the range.
    pub peak_range: f64,
    /// Length of the sticking region in time, s; 0 without one.
    pub region_s: f64,
    /// First and last place of the sticking region in the range.
    pub region: Option<(f64, f64)>,
    /// Least velocity behind the first peak.
    pub slowest: Option<f64>,
    /// Mean velocity over the last fifth of the way, m/s (or rad/s).
    pub end_velocity: f64,
    /// Mean of what the load asks for over the last fifth of the way, N (or N·m).
    pub end_demand: f64,
    /// Time of the lift, s.
    pub time_s: f64,
    /// Mean velocity of the lift.
    pub mean_velocity: f64,
}

/// Lifts a setup, then plain weight that is as hard at its hardest place.
///
/// **Fails** as [`repetition`], and where the setup is plain itself or asks for nothing.
pub fn versus_plain(
    question: &Question<'_>,
    template: &Setup,
    heaviness: Heaviness,
    options: &RepOptions,
) -> Result<VersusPlain> {
    if template.items.is_empty() {
        return Err(Error::bad(LiftFault::NothingToCompare));
    }
    let with = repetition(question, template, heaviness, options)?;
    let effort = with.still.setups[0]
        .sticking
        .map(|sticking| sticking.max_effort)
        .ok_or_else(|| Error::no_answer(LiftFault::AsksForNothing))?;
    let load = load_for_effort(question, &Setup::default(), effort)?;
    let plain = repetition(question, &Setup::default(), Heaviness::Load(load), options)?;
    Ok(VersusPlain {
        with,
        plain,
        effort,
    })
}

impl LiftShape {
    /// The shape of a repetition's lift; none where nothing was lifted to the end.
    #[must_use]
    pub fn of(rep: &RepStudy) -> Option<Self> {
        let figures = rep.trace.lift.filter(|_| rep.trace.is_lifted())?;
        let lift = rep.trace.lifting();
        let peak = lift
            .iter()
            .max_by(|a, b| a.velocity.total_cmp(&b.velocity))?;
        let last = lift.last()?;
        let begin = rep.options.to - 0.2 * (rep.options.to - rep.options.from);
        let end = &lift[lift.partition_point(|sample| sample.range < begin)..];
        let first = end.first()?;
        let time_s = (last.time_s - first.time_s).max(1.0e-9);
        Some(Self {
            peak_velocity: peak.velocity,
            peak_range: peak.range,
            region_s: rep.trace.sticking.map_or(0.0, |s| s.duration_s()),
            region: rep
                .trace
                .sticking
                .map(|s| (s.first_peak.range, s.minimum.range)),
            slowest: rep.trace.sticking.map(|s| s.minimum.velocity),
            end_velocity: (last.position - first.position) / time_s,
            end_demand: end.iter().map(|s| s.demand).sum::<f64>() / end.len() as f64,
            time_s: figures.time_s,
            mean_velocity: figures.mean_velocity,
        })
    }
}
