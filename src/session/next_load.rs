//! The next load that a lifter goes on to.
//!
//! In: a [`SessionRequest`] and a load. Out: the next one that can be set up.

use super::request::SessionRequest;
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
