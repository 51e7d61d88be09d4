//! What plausible versions of a person lift in one lift, and where each finds it hardest.
//!
//! In: a fit's versions. Out: [`LiftSpread`].

use super::fit_draws::FitDraws;
use super::fit_ground::FitGround;
use super::person_lifts::PersonLift;
use crate::error::Result;
use crate::numeric::mean_and_deviation;
use nalgebra::DVector;

/// A lift over the versions of a person.
pub(super) struct LiftSpread {
    /// Logarithm of the maximum of the most probable lifter, the body with it, kg.
    pub log_total: f64,
    /// What the middle of the versions lies above it.
    pub above: f64,
    /// Deviation of the logarithm of the maximum, the lift's own strength with it.
    pub deviation: f64,
    /// What each version lifts beside the middle; nothing of one that cannot keep a pose.
    pub beside: Vec<f64>,
    /// What the lift's own strength scatters the logarithm of its maximum by before anything is measured, as a variance.
    alone: f64,
    /// The same where nothing was measured of it, else none.
    pub own: f64,
    /// Where the most probable lifter finds it hardest, 0 to 1.
    pub range: f64,
    /// Where the versions do.
    pub places: Vec<f64>,
    /// Logarithm of what the most probable lifter holds still, kg.
    still: f64,
    /// What the maximum in motion gains for what the lift held still gains.
    gain: f64,
}

impl LiftSpread {
    /// The versions in a lift.
    ///
    /// ```text
    /// f(x) = f(x̂) + g·(h(x) − h(x̂)),     σ² = variance of f over the versions + (τ·∂f/∂x)²
    /// ```
    /// | symbol | meaning                                                          |
    /// | ------ | ---------------------------------------------------------------- |
    /// | `f, h` | logarithm of the maximum in motion; of what is held still          |
    /// | `x̂, x` | most probable strengths, a version                                |
    /// | `g`    | what `f` gains for what `h` gains, all muscles stronger            |
    /// | `τ`    | scatter of the lift's own strength, where nothing was measured of it |
    ///
    /// **Shape.** Bends as the lift held still does. **Source.** Own: a maximum in motion takes forty times as long to
    /// reckon. **Fails** where the most probable lifter cannot do the lift.
    pub fn of(
        lift: &PersonLift,
        ground: &FitGround,
        mode: &DVector<f64>,
        draws: &FitDraws,
    ) -> Result<Self> {
        let strength = lift.strength(&ground.factors, mode);
        let log_total = lift.log_maximum(&strength)?;
        let (still, range) = lift.log_held(&strength)?;
        let by_strength = lift.gain(&ground.factors, mode, &|strength| {
            lift.log_maximum(strength)
        })?;
        let held = lift.still_gain(&ground.factors, mode)?;
        let place = ground.factors.lift(&lift.movement);
        let before = place.map_or(0.0, |place| ground.before.covariance[(place, place)]);
        let alone = by_strength * by_strength * before;
        let untold = place.filter(|place| !draws.told_of[*place]);
        let own = untold.map_or(0.0, |_| alone);
        let mut spread = Self {
            log_total,
            above: 0.0,
            deviation: 0.0,
            beside: Vec::new(),
            alone,
            own,
            range,
            places: Vec::new(),
            still,
            gain: if held.abs() > 1.0e-9 {
                by_strength / held
            } else {
                1.0
            },
        };
        let shown: Vec<Option<(f64, f64)>> = draws
            .versions
            .iter()
            .map(|version| {
                let mut version = version.clone();
                if let Some(place) = untold {
                    version[place] = 0.0;
                }
                spread.shown(lift, ground, &version)
            })
            .collect();
        let logs: Vec<f64> = shown.iter().flatten().map(|(log, _)| *log).collect();
        let (above, deviation) = mean_and_deviation(&logs).unwrap_or((0.0, 0.0));
        spread.above = above;
        spread.deviation = (deviation * deviation + own).sqrt();
        spread.places = shown.iter().flatten().map(|(_, place)| *place).collect();
        let each = shown.iter();
        spread.beside = each
            .map(|shown| shown.map_or(0.0, |(log, _)| log - above))
            .collect();
        Ok(spread)
    }

    /// What one of these strengths lifts beside the most probable lifter, as a logarithm, and where it is hardest.
    fn shown(
        &self,
        lift: &PersonLift,
        ground: &FitGround,
        values: &DVector<f64>,
    ) -> Option<(f64, f64)> {
        let held = lift.log_held(&lift.strength(&ground.factors, values));
        let (still, place) = held.ok()?;
        Some((self.gain * (still - self.still), place))
    }

    /// Middle beside the most probable lifter and deviation of people's maxima, the scatter of the lift alone with it.
    pub fn of_people(
        &self,
        lift: &PersonLift,
        ground: &FitGround,
        people: &[DVector<f64>],
    ) -> (f64, f64) {
        let shown = people
            .iter()
            .filter_map(|person| self.shown(lift, ground, person));
        let logs: Vec<f64> = shown.map(|(log, _)| log).collect();
        let (middle, deviation) = mean_and_deviation(&logs).unwrap_or((0.0, 0.0));
        (middle, (deviation * deviation + self.alone).sqrt())
    }
}
