//! Every measurement beside what the fit says of it, and what all the others say.
//!
//! In: a fit. Out: [`DatumOutcome`].

use super::fit_ground::{FOUR_IN_FIVE, FitGround, Found};
use super::person_forecast::LiftForecast;
use crate::numeric::Observation;

/// A measurement beside what the fit says.
#[derive(Debug, Clone, PartialEq)]
pub struct DatumOutcome {
    /// The measurement.
    pub text: String,
    /// Its movement.
    pub movement: String,
    /// The measured value in SI: kg of all that is lifted, N or N·m.
    pub measured: f64,
    /// Deviation of its logarithm.
    pub error: f64,
    /// What the fitted lifter shows, in the same unit.
    pub fitted: f64,
    /// What all other measurements say of it, and the deviation of the logarithm with its own error; what people of that
    /// kind show where it is the only one.
    pub others: (f64, f64),
    /// The person's own mass where it is lifted with the load, kg.
    pub body_kg: f64,
    /// Whether it is a maximum or a set.
    pub is_lift: bool,
    /// Whether it is a torque about a joint.
    pub is_torque: bool,
}

impl DatumOutcome {
    /// How far it stands from what the others say, in standard deviations.
    #[must_use]
    pub fn deviations(&self) -> f64 {
        (self.measured / self.others.0).ln() / self.others.1
    }

    /// Whether it is outside the interval that holds four in five.
    #[must_use]
    pub fn is_apart(&self) -> bool {
        self.deviations().abs() > FOUR_IN_FIVE
    }
}

/// Every measurement; `lifts` tell what people of that kind show, who are drawn, where there is no other one.
pub(super) fn outcomes(
    ground: &FitGround,
    found: &Found,
    lifts: &[LiftForecast],
) -> Vec<DatumOutcome> {
    let seen = ground.observations(&found.reckoned, &found.slopes, &found.belief.mean);
    let each = ground.data.iter().enumerate();
    each.map(|(k, datum)| {
        let rest: Vec<Observation> = seen
            .iter()
            .enumerate()
            .filter(|(other, _)| *other != k)
            .map(|(_, seen)| seen.clone())
            .collect();
        let without = ground.before.given(&rest);
        let (expected, variance) = without.along(&found.slopes[k]);
        let at_fit = found.slopes[k].dot(&found.belief.mean);
        let others = found.reckoned[k] + expected - at_fit;
        let is_alone = rest.is_empty() && datum.is_lift();
        let mut same = lifts.iter();
        let people = same.find(|lift| is_alone && lift.movement == datum.movement());
        let (others, variance) = people.map_or((others, variance), |lift| {
            (lift.before.0.ln(), lift.before.1.powi(2))
        });
        let lift = ground
            .lifts
            .iter()
            .find(|lift| lift.movement == datum.movement());
        DatumOutcome {
            text: datum.told.written.clone(),
            movement: datum.movement().to_owned(),
            measured: datum.measured.log_value.exp(),
            error: datum.measured.variance.sqrt(),
            fitted: found.reckoned[k].exp(),
            others: (others.exp(), (variance + datum.measured.variance).sqrt()),
            body_kg: lift.map_or(0.0, |lift| lift.body.as_kg()),
            is_lift: datum.is_lift(),
            is_torque: datum.is_torque(),
        }
    })
    .collect()
}
