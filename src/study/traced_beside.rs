//! A bar's trace beside the same load lifted by the fitted lifter.
//!
//! In: traces, the person's lifts, the most probable lifter. Out: [`TraceBeside`].

use super::person_lifts::PersonLift;
use super::person_velocity::TracedLift;
use crate::person::PersonFactors;
use nalgebra::DVector;

/// A trace and what the fitted lifter does with its load.
#[derive(Debug, Clone, PartialEq)]
pub struct TraceBeside {
    /// The trace.
    pub traced: TracedLift,
    /// Mean velocity of the simulated lift, m/s; none where the lifter does not lift it.
    pub mean_velocity_m_s: Option<f64>,
    /// The simulated sticking region, places as shares of the way.
    pub sticking: Option<[f64; 2]>,
}

/// Every trace beside its simulated lift.
pub(super) fn traces_beside(
    traces: &[TracedLift],
    lifts: &[PersonLift],
    factors: &PersonFactors,
    values: &DVector<f64>,
) -> Vec<TraceBeside> {
    let each = traces.iter().map(|traced| {
        let lift = lifts
            .iter()
            .find(|lift| lift.movement == traced.told.movement);
        let done = lift.and_then(|lift| {
            let lifter = lift.lifter(factors, values);
            lift.lifted(&lifter, traced.told.load).ok()
        });
        TraceBeside {
            traced: traced.clone(),
            mean_velocity_m_s: done
                .as_ref()
                .and_then(|done| Some(done.lift?.mean_velocity)),
            sticking: done
                .and_then(|done| done.sticking)
                .map(|region| [region.first_peak.range, region.minimum.range]),
        }
    });
    each.collect()
}
