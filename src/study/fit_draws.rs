//! Plausible versions of a fitted person: drawn near the most probable strengths, each weighed by the model itself.
//!
//! In: a fit. Out: [`FitDraws`]: versions that count alike, what is believed after the measurements, [`FitCheck`].

use super::fit_ground::{FitGround, Found};
use crate::error::{Error, PersonFault, Result};
use crate::numeric::{Belief, NormalDensity, NormalStream};
use nalgebra::{DMatrix, DVector};
use rayon::prelude::*;

/// How many are drawn.
const DRAWS: u64 = 256;
/// Where so many independent draws are not reached, they are drawn anew about those that there are,
const ENOUGH: f64 = 64.0;
/// at most so often, the first time counted.
const ROUNDS: u64 = 4;
/// How many versions are kept.
const VERSIONS: usize = 100;
/// Share of what was learned by which the draws scatter more, so that no plausible version is missed.
const WIDER: f64 = 0.05;
/// Steps to the most probable strength of a lift alone, the others given, after one on the straight line.
const CHORDS: usize = 1;
/// Step of the logarithm of strength over which the lift in motion is compared with the one held still.
const STEP: f64 = 0.05;
/// A group so much weaker than expected, in its deviations, limits every lift that it has a part in.
const FAR: f64 = 3.0;

/// How far the draws bear what is said.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FitCheck {
    /// How many were drawn.
    pub draws: usize,
    /// How many independent draws they are worth once each is weighed by the model.
    pub effective: f64,
    /// The largest distance of a maximum's middle from the most probable lifter's, in its own standard deviations.
    pub largest_shift: f64,
}

/// What draws say of a person.
pub(super) struct FitDraws {
    /// Middle and covariance of the strengths: of the draws where a measurement can tell, else as before.
    pub belief: Belief,
    /// Versions that count alike.
    pub versions: Vec<DVector<f64>>,
    /// The strengths that a measurement can tell something of.
    pub told_of: Vec<bool>,
    /// How many independent draws they are worth.
    pub effective: f64,
}

impl FitDraws {
    /// How many were drawn.
    pub const DRAWN: usize = DRAWS as usize;
}

/// Draws strengths and weighs each by what the model makes of it.
///
/// ```text
/// z ~ q = N(ẑ, Ĉ + κ (C − Ĉ)),     o | z ~ q = N(o*(z), s²),     1/s² = 1/τ² + Σ_i w_i²/v_i
/// weight ∝ p(z) p(o) Π_i exp(−½ (y_i − f_i(z, o))²/v_i)/(q(z) q(o|z)),        n = (Σ weight)²/Σ weight²
/// ```
/// | symbol     | meaning                                                                        |
/// | ---------- | ------------------------------------------------------------------------------ |
/// | `z, o`     | strength of the whole and of the groups; strength of a measured lift alone       |
/// | `ẑ, Ĉ, C`  | most probable `z`, its covariance there (Laplace) and before                     |
/// | `o*, τ`    | most probable `o` for this `z` (chord steps); its deviation before           |
/// | `w, y, v`  | slopes by `o`; measurements and variances of their errors                       |
/// | `f`        | what the model says; a maximum bends with strength as the lift does held still   |
/// | `n`        | independent draws that these are worth                                          |
///
/// A maximum is known to 5 %, a lift alone only to some 20 %: drawn together with the groups nearly every draw would
/// miss the measurements; drawn after them it meets them, and the weights carry only how plausible that strength is.
/// Where they are worth few, `ẑ` and `Ĉ` are taken from them and all are drawn anew (adaptive importance sampling).
/// **Shape.** A model that is straight gives all draws nearly one weight. **Source.** Importance sampling with an
/// importance function that is conditional on the measurements: Kong, Liu & Wong 1994, J. Am. Stat. Assoc. 89:278-288;
/// effective size: Kish 1965; adaptive: Cappé et al. 2004, J. Comput. Graph. Stat. 13:907-929; versions are taken by systematic resampling: Kitagawa 1996, J. Comput. Graph. Stat. 5:1-25
/// (all from memory). **Fails** where no version shows what was measured.
pub(super) fn fit_draws(ground: &FitGround, found: &Found, seed: u64) -> Result<FitDraws> {
    let mut sampler = Sampler::of(ground, found, seed)?;
    let mut best = sampler.weighed(0);
    for round in 1..ROUNDS {
        if best.effective >= ENOUGH {
            break;
        }
        sampler.aim_at(&best);
        let next = sampler.weighed(round);
        if next.effective > best.effective {
            best = next;
        }
    }
    if best.values.is_empty() {
        return Err(Error::bad(PersonFault::NotKept {
            movement: ground.data[0].movement().to_owned(),
        }));
    }
    let told_of = sampler.told_of();
    Ok(FitDraws {
        belief: belief_of(&ground.before, &best, &told_of),
        versions: resampled(&best.shares, VERSIONS)
            .into_iter()
            .map(|index| best.values[index].clone())
            .collect(),
        told_of,
        effective: best.effective,
    })
}

/// Draws with their shares of all weight.
struct Weighed {
    values: Vec<DVector<f64>>,
    shares: Vec<f64>,
    /// How many independent draws they are worth.
    effective: f64,
}

impl Weighed {
    fn of(drawn: Vec<(DVector<f64>, f64)>) -> Self {
        let logs = drawn.iter().map(|(_, log)| *log);
        let largest = logs.fold(f64::NEG_INFINITY, f64::max);
        let drawn = drawn.into_iter().filter(|(_, log)| log.is_finite());
        let (values, logs): (Vec<_>, Vec<f64>) = drawn.unzip();
        let weights: Vec<f64> = logs.iter().map(|log| (log - largest).exp()).collect();
        let sum: f64 = weights.iter().sum();
        let squares: f64 = weights.iter().map(|weight| weight * weight).sum();
        Self {
            values,
            shares: weights.iter().map(|weight| weight / sum).collect(),
            effective: if squares > 0.0 {
                sum * sum / squares
            } else {
                0.0
            },
        }
    }

    /// Their middle and covariance.
    fn moments(&self, count: usize) -> Belief {
        let mut mean = DVector::zeros(count);
        for (values, share) in self.values.iter().zip(&self.shares) {
            mean += values * *share;
        }
        let mut covariance = DMatrix::zeros(count, count);
        for (values, share) in self.values.iter().zip(&self.shares) {
            let from = values - &mean;
            covariance += &from * from.transpose() * *share;
        }
        Belief { mean, covariance }
    }
}

/// Middle and covariance of weighed draws, but of what nothing tells of, the belief before.
fn belief_of(before: &Belief, drawn: &Weighed, told_of: &[bool]) -> Belief {
    let mut belief = drawn.moments(before.mean.len());
    for (a, of_a) in told_of.iter().enumerate() {
        if !of_a {
            belief.mean[a] = before.mean[a];
        }
        for (b, of_b) in told_of.iter().enumerate() {
            if !(*of_a && *of_b) {
                belief.covariance[(a, b)] = before.covariance[(a, b)];
            }
        }
    }
    belief
}

/// The places of so many draws that count alike, in order: at equal steps of the summed shares.
fn resampled(shares: &[f64], count: usize) -> Vec<usize> {
    let mut summed = 0.0;
    let mut places = Vec::with_capacity(count);
    for (index, share) in shares.iter().enumerate() {
        summed += share;
        while places.len() < count && (places.len() as f64 + 0.5) / (count as f64) <= summed {
            places.push(index);
        }
    }
    // Rounding may leave the last one out.
    places.resize(count, shares.len() - 1);
    places
}

/// What draws are made with.
struct Sampler<'a> {
    ground: &'a FitGround,
    found: &'a Found,
    seed: u64,
    /// How many numbers are the whole and the groups.
    leading: usize,
    prior: NormalDensity,
    /// What the shared strengths are drawn from.
    near: Belief,
    proposal: NormalDensity,
    /// What each measurement would be held still by the most probable lifter.
    still: Vec<f64>,
    /// How much more each gains by strength in motion than held still.
    gains: Vec<f64>,
}

impl<'a> Sampler<'a> {
    fn of(ground: &'a FitGround, found: &'a Found, seed: u64) -> Result<Self> {
        let leading = ground.factors.shared();
        let prior = ground.before.leading(leading);
        let mut near = found.belief.leading(leading);
        near.covariance += (&prior.covariance - &near.covariance) * WIDER;
        let mode = &found.belief.mean;
        let mut stronger = mode.clone();
        stronger[0] += STEP;
        let held = |values: &DVector<f64>| -> Result<Vec<f64>> {
            let each = ground.data.iter();
            each.map(|datum| datum.reckoned_still(&ground.lifts, &ground.factors, values))
                .collect()
        };
        let (still, beside) = (held(mode)?, held(&stronger)?);
        let each = found.slopes.iter().zip(still.iter().zip(&beside));
        let gains = each.map(|(slopes, (still, beside))| {
            let held = (beside - still) / STEP;
            if held.abs() > 1.0e-9 {
                slopes[0] / held
            } else {
                1.0
            }
        });
        Ok(Self {
            ground,
            found,
            seed,
            leading,
            prior: NormalDensity::of(&prior),
            proposal: NormalDensity::of(&near),
            near,
            gains: gains.collect(),
            still,
        })
    }

    /// The draws of a round.
    fn weighed(&self, round: u64) -> Weighed {
        let numbers = (round * DRAWS..(round + 1) * DRAWS).into_par_iter();
        Weighed::of(numbers.filter_map(|number| self.drawn(number)).collect())
    }

    /// Draws from now on about weighed draws, half of the spread theirs and half of it as it was.
    fn aim_at(&mut self, drawn: &Weighed) {
        if drawn.values.is_empty() {
            return;
        }
        let theirs = drawn.moments(self.ground.before.mean.len());
        let theirs = theirs.leading(self.leading);
        self.near = Belief {
            mean: theirs.mean,
            covariance: (&theirs.covariance + &self.near.covariance) * 0.5,
        };
        self.proposal = NormalDensity::of(&self.near);
    }

    /// What the model says of a measurement; none where these strengths cannot keep a pose.
    fn value(&self, index: usize, values: &DVector<f64>) -> Option<f64> {
        let (ground, datum) = (self.ground, &self.ground.data[index]);
        let still = datum.reckoned_still(&ground.lifts, &ground.factors, values);
        let beyond = still.ok()? - self.still[index];
        Some(self.found.reckoned[index] + self.gains[index] * beyond)
    }

    /// What the model would say of a measurement, were it straight.
    fn on_the_line(&self, index: usize, values: &DVector<f64>) -> f64 {
        let step = values - &self.found.belief.mean;
        self.found.reckoned[index] + self.found.slopes[index].dot(&step)
    }

    /// The measurements that a number is the lift's own strength of.
    fn data_of(&self, place: usize) -> Vec<usize> {
        let each = self.found.slopes.iter().enumerate();
        let of = each.filter(|(_, slopes)| slopes[place] != 0.0);
        of.map(|(index, _)| index).collect()
    }

    /// The numbered draw and the logarithm of its weight; none where it cannot have shown what was measured.
    fn drawn(&self, number: u64) -> Option<(DVector<f64>, f64)> {
        let before = &self.ground.before;
        let mut stream = NormalStream::new(self.seed, number);
        let noise = DVector::from_fn(self.leading, |_, _| stream.next());
        let head = self.proposal.at(&noise);
        let mut log_weight = self.prior.log_density(&head) - self.proposal.log_density(&head);
        let mut values = before.mean.clone();
        values.rows_mut(0, self.leading).copy_from(&head);
        for place in self.leading..values.len() {
            let variance = before.covariance[(place, place)];
            let noise = stream.next();
            let data = self.data_of(place);
            if data.is_empty() || variance <= 0.0 {
                values[place] = variance.max(0.0).sqrt() * noise;
                continue;
            }
            let deviation = self.to_most_probable(&mut values, place, &data)?;
            values[place] += deviation * noise;
            log_weight += 0.5 * (noise * noise - values[place] * values[place] / variance);
        }
        for (index, datum) in self.ground.data.iter().enumerate() {
            let miss = datum.measured.log_value - self.value(index, &values)?;
            log_weight -= 0.5 * miss * miss / datum.measured.variance;
        }
        Some((values, log_weight))
    }

    /// Sets a lift's own strength to what is most probable, the shared ones given; its deviation then.
    fn to_most_probable(
        &self,
        values: &mut DVector<f64>,
        place: usize,
        data: &[usize],
    ) -> Option<f64> {
        let mut precision = 1.0 / self.ground.before.covariance[(place, place)];
        for index in data {
            let slope = self.found.slopes[*index][place];
            precision += slope * slope / self.ground.data[*index].measured.variance;
        }
        values[place] = self.found.belief.mean[place];
        for step in 0..=CHORDS {
            let mut pull = 0.0;
            for index in data {
                let measured = &self.ground.data[*index].measured;
                let slope = self.found.slopes[*index][place];
                // The first step is on the straight line about the most probable strengths, which costs nothing.
                let told = match step {
                    0 => self.on_the_line(*index, values),
                    _ => self.value(*index, values)?,
                };
                let miss = measured.log_value - told;
                pull += slope * (miss + slope * values[place]) / measured.variance;
            }
            values[place] = pull / precision;
        }
        Some(1.0 / precision.sqrt())
    }

    /// The numbers that a measurement can tell something of: the whole, groups with a part in what was measured, and
    /// measured lifts.
    fn told_of(&self) -> Vec<bool> {
        let mode = &self.found.belief.mean;
        let count = self.ground.data.len();
        let at_mode: Vec<Option<f64>> = (0..count).map(|index| self.value(index, mode)).collect();
        (0..mode.len())
            .into_par_iter()
            .map(|place| {
                if place >= self.leading {
                    return !self.data_of(place).is_empty();
                }
                let mut weaker = mode.clone();
                weaker[place] -= FAR * self.ground.before.covariance[(place, place)].sqrt();
                (0..count).any(|index| self.value(index, &weaker) != at_mode[index])
            })
            .collect()
    }
}
