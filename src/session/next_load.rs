//! The next load that a lifter goes on to.
//!
//! In: a [`SessionRequest`] and a load. Out: the next one that can be set up.

use super::far_step::FarStep;
use super::request::SessionRequest;
use crate::error::Result;
use crate::setups::LoadUse;
use crate::units::Mass;

/// The next load that can be set up and is heavier by at least the smaller step.
pub(super) fn next_load(request: &SessionRequest, load: Mass) -> Option<Mass> {
    let least = request.published.straight.step.percent.0 / 100.0;
    let least = load + (load + request.lift.body) * least;
    // An empty bar with its collars on is loaded for bands and chains only.
    let plain = request.loading.all().iter();
    let plain = plain.filter(|loading| loading.use_for != LoadUse::Pieces);
    let all = plain.map(|loading| loading.total);
    all.filter(|total| *total >= least)
        .min_by(|a, b| a.as_kg().total_cmp(&b.as_kg()))
}

/// The way to the next load where it is farther than the larger step: so many repetitions at this load first as show, by the
/// chart, the strength for `then` repetitions of that one, the reserve kept in both.
///
/// **Fails** as the chart does.
pub(super) fn far_step(
    request: &SessionRequest,
    load: Mass,
    (then, reserve): (u32, u32),
) -> Result<Option<FarStep>> {
    let body = request.lift.body;
    let Some(next) = next_load(request, load) else {
        return Ok(None);
    };
    let more = (next + body).as_kg() / (load + body).as_kg();
    let percent = 100.0 * (more - 1.0);
    if percent <= request.published.straight.step.percent.1 {
        return Ok(None);
    }
    let chart = request.chart()?;
    let (fewest, most) = chart.range();
    let taken = chart.share_at(f64::from(then + reserve).clamp(fewest, most))?;
    let shown_by = chart.allowed_at(taken / more);
    Ok(Some(FarStep {
        next,
        percent,
        then,
        shown_by: shown_by.map(|to_failure| to_failure.saturating_sub(reserve)),
        most: (most as u32).saturating_sub(reserve),
    }))
}
