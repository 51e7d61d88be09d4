//! The recipe of a fit: measurements of one person to the most probable strengths, and how sure they are.
//!
//! In: a [`PersonAsked`], the library. Out: [`PersonFit`].

use super::datum_outcome::{DatumOutcome, outcomes};
use super::fit_draws::{FitCheck, FitDraws, fit_draws};
use super::fit_ground::{FitGround, RATIO};
use super::person_asked::PersonAsked;
use super::person_forecast::{LiftForecast, NextTest, forecasts, next_tests};
use super::traced_beside::{TraceBeside, traces_beside};
use crate::anatomy::LifterRecord;
use crate::error::Result;
use crate::library::Library;
use crate::numeric::Belief;
use crate::person::{PersonFactors, StrengthFactor};
use nalgebra::DVector;

/// A number of the fit before and after, as a logarithm.
#[derive(Debug, Clone, PartialEq)]
pub struct MovedFactor {
    /// Which.
    pub factor: StrengthFactor,
    /// Most probable logarithm and its deviation before anything was measured.
    pub before: (f64, f64),
    /// The same after.
    pub after: (f64, f64),
}

/// A person after the fit.
#[derive(Debug, Clone, PartialEq)]
pub struct PersonFit {
    /// Who, and what was measured.
    pub asked: PersonAsked,
    /// The lifter's record with the most probable strengths; how well they are known is in `belief`.
    pub record: LifterRecord,
    /// The numbers that moved.
    pub factors: PersonFactors,
    /// The most probable of them, those of the record, as logarithms beside the reference.
    pub most_probable: DVector<f64>,
    /// What is believed of them after the measurements, middle and covariance of the versions that were weighed.
    pub belief: Belief,
    /// Plausible versions that count alike.
    pub versions: Vec<DVector<f64>>,
    /// Every number before and after.
    pub moved: Vec<MovedFactor>,
    /// Every measurement.
    pub data: Vec<DatumOutcome>,
    /// Every lift of the library.
    pub lifts: Vec<LiftForecast>,
    /// Traces beside the same loads lifted by the most probable lifter.
    pub traces: Vec<TraceBeside>,
    /// Measurements that could be done, the most telling first.
    pub next: Vec<NextTest>,
    /// How far the versions bear what is said.
    pub check: FitCheck,
    /// Steps of the search.
    pub steps: usize,
    /// Root mean square of the logarithm by which the model misses the ratio of two lifts; intervals count it.
    pub ratio_missed: f64,
}

/// Fits the strengths of a person.
///
/// ```text
/// maximise  −½ Σ_i (y_i − f_i(x))²/v_i − ½ (x − m)ᵀ C⁻¹ (x − m)
/// x ← the belief (m, C) given  y_i − f_i(x) + J_i x = J_i x′ + error of variance v_i,      until f does not change
/// ```
/// | symbol   | meaning                                                            |
/// | -------- | ------------------------------------------------------------------ |
/// | `x`      | logarithms of strengths: whole, groups, single lifts                |
/// | `m, C`   | the belief before ([`crate::person::prior`])                                       |
/// | `y, v`   | logarithm of a measurement, variance of its error                   |
/// | `f, J`   | what the simulated lifter shows, and its slopes                     |
///
/// **Shape.** What no measurement reaches keeps its scatter. **Source.** Gauss-Newton steps to the most probable values,
/// halved where they overshoot, and the normal distribution there (Laplace; textbook); intervals are of draws about it
/// that the model weighs: [`fit_draws`]. **Fails** where a measurement does not fit its movement, contradicts another of
/// the same lift, is none that such a person shows, or is of a lift that such a body cannot do.
pub fn fit_person(asked: &PersonAsked, library: &Library) -> Result<PersonFit> {
    asked.check(library)?;
    let ground = FitGround::of(asked, library)?;
    ground.check_contradictions()?;
    let found = ground.fitted()?;
    let mode = &found.belief.mean;
    let draws = fit_draws(&ground, &found, asked.seed)?;
    let lifts = forecasts(&ground, mode, &draws, asked.seed, library)?;
    let shifts = lifts
        .iter()
        .map(|lift| (lift.above / lift.deviation.max(1.0e-9)).abs());
    Ok(PersonFit {
        record: record(&ground, mode),
        moved: moved(&ground, &draws.belief),
        data: outcomes(&ground, &found, &lifts),
        factors: ground.factors.clone(),
        traces: traces_beside(&asked.traces, &ground.lifts, &ground.factors, mode),
        next: next_tests(&lifts, library)?,
        check: FitCheck {
            draws: FitDraws::DRAWN,
            effective: draws.effective,
            largest_shift: shifts.fold(0.0, f64::max),
        },
        belief: draws.belief,
        versions: draws.versions,
        steps: found.steps,
        ratio_missed: library.misses()?.of(RATIO),
        most_probable: found.belief.mean,
        asked: asked.clone(),
        lifts,
    })
}

/// The person's record with these logarithms of factors on the reference.
fn record(ground: &FitGround, values: &DVector<f64>) -> LifterRecord {
    let mut record = ground.lifts[0].model.record.clone();
    record.strength_scale *= values[0].exp();
    for (factor, value) in ground.factors.all().iter().zip(values.iter()) {
        match factor {
            StrengthFactor::Whole => {}
            StrengthFactor::Group(group) => {
                let strength = record.strength.entry(group.clone()).or_insert(1.0);
                *strength *= value.exp();
            }
            StrengthFactor::Lift(lift) => {
                // What nothing was measured of stays at 1.
                if value.abs() > 1.0e-6 {
                    record.lift_strength.insert(lift.clone(), value.exp());
                }
            }
        }
    }
    record
}

/// Every number before and after.
fn moved(ground: &FitGround, after: &Belief) -> Vec<MovedFactor> {
    let at =
        |belief: &Belief, k: usize| (belief.mean[k], belief.covariance[(k, k)].max(0.0).sqrt());
    let factors = ground.factors.all().iter().enumerate();
    factors
        .map(|(k, factor)| MovedFactor {
            factor: factor.clone(),
            before: at(&ground.before, k),
            after: at(after, k),
        })
        .collect()
}
