//! Setups of a gym, calculated exactly, with everything that a coach loads the bar from.
//!
//! In: candidates of the search, effort as the solved lift gives it. Out: [`Settled`] ones, in order, and each as a
//! [`LoadedSetup`]; those whose exact figures miss a limit fall out.

use super::band_failure::{BandFailure, BandsOverRange, band_failure};
use super::combination::Combination;
use super::judged::Candidate;
use super::kernel::Kernel;
use super::loaded_setup::LoadedSetup;
use super::score::{missing_steps, steady};
use super::wish::{Goal, Wish};
use crate::error::Result;
use crate::movement::PlaneForce;
use crate::numeric::range_mean;
use crate::overlay::spread;
use crate::resistance::{Item, LoadForce, Setup};
use crate::units::Mass;
use rayon::prelude::{IntoParallelRefIterator, ParallelIterator};

/// Effort at each place under given loads, as the solved lift calculates it.
pub type ExactEffort<'a> = dyn Fn(&[LoadForce]) -> Result<Vec<f64>> + Sync + 'a;

/// What exact calculation needs.
pub(super) struct Exact<'a> {
    pub(super) kernel: &'a Kernel<'a>,
    pub(super) effort_under: &'a ExactEffort<'a>,
}

/// Steps towards the exact load; one is enough where effort is straight in the load, and a lean of some
/// degrees bends it little.
const MOST_STEPS: usize = 6;

/// A setup with its load settled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Settled {
    pub(super) combination: Combination,
    /// The load that makes the hardest place exactly the wished effort, kg.
    pub(super) exact_kg: f64,
    /// Standard deviation of effort over its mean with that load.
    pub(super) spread: f64,
    /// Place of what is loaded in the list of loads.
    pub(super) loading: usize,
    pub(super) score: f64,
    pub(super) pieces: u32,
}

impl Exact<'_> {
    /// The setup of a combination with a load.
    fn setup(&self, combination: &Combination, loading: usize) -> Setup {
        let mut items = self.kernel.loadings.all()[loading].items();
        for hanging in combination.hangings() {
            let item = &self.kernel.rack.hangings[usize::from(*hanging)].item;
            match items
                .iter_mut()
                .find(|known| is_same_but_count(known, item))
            {
                Some(known) => count_up(known),
                None => items.push(item.clone()),
            }
        }
        Setup::new("", items)
    }

    /// The candidates with their loads settled exactly, in order; those that miss a limit fall out.
    pub(super) fn settled(&self, candidates: &[Candidate]) -> Result<Vec<Settled>> {
        let all = candidates
            .par_iter()
            .map(|candidate| self.settled_one(candidate))
            .collect::<Result<Vec<_>>>()?;
        let mut settled: Vec<Settled> = all.into_iter().flatten().collect();
        settled.sort_by(|a, b| {
            let score = a.score.total_cmp(&b.score);
            score
                .then(a.pieces.cmp(&b.pieces))
                .then(a.combination.cmp(&b.combination))
        });
        Ok(settled)
    }

    /// A combination with its exact load, that load rounded down, and its score.
    ///
    /// `None` if no load fits, or a limit is missed.
    fn settled_one(&self, candidate: &Candidate) -> Result<Option<Settled>> {
        let combination = candidate.combination;
        let hung = combination.hangings().len() as u32;
        let plates = self.kernel.wish.most_pieces.saturating_sub(hung);
        let (exact_kg, effort) = self.exact_load(&combination)?;
        let Some(mut loading) = self.kernel.loadings.floor(exact_kg, plates, hung) else {
            return Ok(None);
        };
        if let Goal::Profile(_) = self.kernel.wish.goal {
            loading = loading.min(candidate.judged.loading as usize);
        }
        if self
            .kernel
            .gap_of(&combination, exact_kg, loading)
            .is_some()
            || self.leaves_too_much(&combination, loading)
            || self.is_felt_too_much(&combination, loading)
        {
            return Ok(None);
        }
        Ok(Some(Settled {
            combination,
            exact_kg,
            spread: spread(&effort).unwrap_or(f64::INFINITY),
            loading,
            score: steady(self.score(&combination, exact_kg, loading, &effort)?),
            pieces: self.kernel.loadings.all()[loading].plates + hung,
        }))
    }

    /// What is left when bands of a combination give way.
    fn failure(&self, combination: &Combination, loading: usize) -> Option<BandFailure> {
        let mut counted: Vec<(usize, u32)> = Vec::new();
        for hanging in combination.hangings().iter().map(|h| usize::from(*h)) {
            match counted.iter_mut().find(|(known, _)| *known == hanging) {
                Some((_, count)) => *count += 1,
                None => counted.push((hanging, 1)),
            }
        }
        let is_band = |(hanging, _): &&(usize, u32)| {
            matches!(self.kernel.rack.hangings[*hanging].item, Item::Band(_))
        };
        let pulls: Vec<(Vec<f64>, u32)> = counted
            .iter()
            .filter(is_band)
            .map(|(hanging, count)| {
                let one = self.kernel.kg[*hanging].iter();
                (one.map(|kg| kg * f64::from(*count)).collect(), *count)
            })
            .collect();
        let bands: Vec<BandsOverRange<'_>> = pulls
            .iter()
            .map(|(kg, a_side)| BandsOverRange {
                kg,
                a_side: *a_side,
            })
            .collect();
        let plain_kg = self.kernel.loadings.all()[loading].total.as_kg();
        band_failure(plain_kg, &self.kernel.load_kg(combination, loading), &bands)
    }

    /// Whether more is left than may be when every band that helps is gone.
    fn leaves_too_much(&self, combination: &Combination, loading: usize) -> bool {
        let Some(most_kg) = self.kernel.most_left_kg else {
            return false;
        };
        let failure = self.failure(combination, loading);
        failure.is_some_and(|failure| failure.grows && failure.after_all.as_kg() > most_kg + 1.0e-6)
    }

    /// Whether pieces that add load make more of it somewhere than may be felt.
    fn is_felt_too_much(&self, combination: &Combination, loading: usize) -> bool {
        let Some(most_kg) = self.kernel.most_felt_kg else {
            return false;
        };
        let plain_kg = self.kernel.loadings.all()[loading].total.as_kg() + self.kernel.body_kg;
        let felt_kg = self.kernel.load_kg(combination, loading);
        let most = felt_kg.into_iter().fold(0.0, f64::max);
        most > most_kg + 1.0e-6 && most > plain_kg + 1.0e-6
    }

    /// Any load beside a combination, whatever the limits say: for comparison and for misses.
    pub(super) fn as_loaded(&self, combination: Combination, loading: usize) -> Result<Settled> {
        let (exact_kg, effort) = self.exact_load(&combination)?;
        Ok(Settled {
            combination,
            exact_kg,
            spread: spread(&effort).unwrap_or(f64::INFINITY),
            loading,
            score: f64::INFINITY,
            pieces: self.kernel.loadings.all()[loading].plates
                + combination.hangings().len() as u32,
        })
    }

    /// The plain load that makes the hardest place exactly the wished effort, kg, and effort with it.
    ///
    /// ```text
    /// W ← W + min_i (e_i allowed − e_i(W)) / x_i          x = effort of one kilogram of plain load
    /// ```
    /// **Shape.** Right at once where no pull leans. **Source.** Newton's method on the tightest place.
    fn exact_load(&self, combination: &Combination) -> Result<(f64, Vec<f64>)> {
        let mut kg = self.kernel.exact_kg(combination);
        if !kg.is_finite() {
            let heaviest = self.kernel.loadings.all().last();
            kg = heaviest.map_or(0.0, |loading| loading.total.as_kg());
        }
        let mut effort = self.effort(combination, kg)?;
        if !self.leans(combination) {
            return Ok((kg, effort));
        }
        for _ in 0..MOST_STEPS {
            let step_kg = self.kernel.room_kg(&effort);
            if !step_kg.is_finite() || step_kg.abs() <= 1.0e-9 * kg.abs() {
                break;
            }
            kg += step_kg;
            effort = self.effort(combination, kg)?;
        }
        Ok((kg, effort))
    }

    fn leans(&self, combination: &Combination) -> bool {
        let mut hangings = combination.hangings().iter();
        self.kernel.bends
            && hangings.any(|h| {
                let force = &self.kernel.rack.hangings[usize::from(*h)].force;
                force.iter().any(|force| force.leans())
            })
    }

    /// Effort of a combination beside this much plain load, one a sample.
    fn effort(&self, combination: &Combination, plain_kg: f64) -> Result<Vec<f64>> {
        let kg = plain_kg + self.kernel.body_kg;
        let loads: Vec<LoadForce> = (0..self.kernel.plain.len())
            .map(|sample| {
                let one = self.kernel.plain[sample];
                let mut force = PlaneForce {
                    x_n: kg * one.x_n,
                    z_n: kg * one.z_n,
                };
                for hanging in combination.hangings() {
                    let more = self.kernel.rack.hangings[usize::from(*hanging)].force[sample];
                    force.x_n += more.x_n;
                    force.z_n += more.z_n;
                }
                let forward = force.x_n * one.x_n + force.z_n * one.z_n >= 0.0;
                let size_n = force.magnitude_n();
                LoadForce {
                    force,
                    along_n: if forward { size_n } else { -size_n },
                    ..LoadForce::default()
                }
            })
            .collect();
        (self.effort_under)(&loads)
    }

    fn score(
        &self,
        combination: &Combination,
        exact_kg: f64,
        loading: usize,
        effort: &[f64],
    ) -> Result<f64> {
        Ok(match &self.kernel.wish.goal {
            Goal::Flattest => {
                let missing = f64::from(self.missing(combination, exact_kg, loading));
                spread(effort).map_or(f64::INFINITY, |spread| spread + missing)
            }
            Goal::MostLoad { at, .. } => {
                let load_kg = self.kernel.load_kg(combination, loading);
                -load_kg[((load_kg.len() - 1) as f64 * at).round() as usize]
            }
            Goal::Share { share, .. } => {
                (self.kernel.share_at_goal(combination, exact_kg) - share).abs()
            }
            Goal::Profile(points) => {
                let kg = self.kernel.loadings.all()[loading].total.as_kg();
                let effort = self.effort(combination, kg)?;
                let last = (effort.len() - 1) as f64;
                let off = effort.iter().enumerate().map(|(index, effort)| {
                    (effort - Wish::profile_at(points, index as f64 / last)).powi(2)
                });
                range_mean(&off.collect::<Vec<_>>()).sqrt()
            }
        })
    }

    /// How many steps the loads fall short of the wished effort.
    fn missing(&self, combination: &Combination, exact_kg: f64, loading: usize) -> u32 {
        let kg = self.kernel.loadings.all()[loading].total.as_kg();
        let load_kg = self.kernel.load_kg(combination, loading);
        let mean_kg = load_kg.iter().sum::<f64>() / load_kg.len() as f64;
        missing_steps(exact_kg, kg, mean_kg + exact_kg - kg)
    }

    /// Everything that a coach loads the bar from.
    pub(super) fn loaded(&self, settled: &Settled) -> LoadedSetup {
        let load_kg = self.kernel.load_kg(&settled.combination, settled.loading);
        let last = load_kg.len() - 1;
        LoadedSetup {
            setup: self.setup(&settled.combination, settled.loading),
            loading: self.kernel.loadings.all()[settled.loading].clone(),
            exact_mass: Mass::from_kg(settled.exact_kg),
            flattening_percent: self.flattening_percent(settled),
            loads: [0, last / 2, last].map(|sample| Mass::from_kg(load_kg[sample])),
            end_range: self.end_range(settled, load_kg[last]),
            mean_load: Mass::from_kg(self.mean_kg(settled)),
            share: self.kernel.share_of(&settled.combination, settled.loading),
            share_at_goal: self.kernel.share_at_goal(
                &settled.combination,
                self.kernel.loadings.all()[settled.loading].total.as_kg(),
            ),
            pieces: settled.pieces,
            hung: settled.combination.hangings().len() as u32,
            family: self.kernel.family(&settled.combination),
            failure: self.failure(&settled.combination, settled.loading),
            missing_steps: self.missing(&settled.combination, settled.exact_kg, settled.loading),
            score: settled.score,
        }
    }

    /// Flattening against plain weight, both with their exact loads, %.
    pub(super) fn flattening_percent(&self, settled: &Settled) -> f64 {
        100.0 * (1.0 - settled.spread / self.kernel.plain_spread())
    }

    /// Mean load over the range, kg.
    pub(super) fn mean_kg(&self, settled: &Settled) -> f64 {
        let load_kg = self.kernel.load_kg(&settled.combination, settled.loading);
        load_kg.iter().sum::<f64>() / load_kg.len() as f64
    }

    /// Load at the end when bands that are known by their label only pull less or more than it says.
    fn end_range(&self, settled: &Settled, load_kg: f64) -> [Mass; 2] {
        let mut range_kg = [load_kg; 2];
        for hanging in settled.combination.hangings() {
            let hanging = usize::from(*hanging);
            if let Item::Band(hung) = &self.kernel.rack.hangings[hanging].item {
                let kg = self.kernel.end_kg(hanging).abs();
                let (low_kg, high_kg) = hung.band.spread_n(kg);
                range_kg[0] -= kg - low_kg;
                range_kg[1] += high_kg - kg;
            }
        }
        range_kg.map(Mass::from_kg)
    }
}

fn is_same_but_count(a: &Item, b: &Item) -> bool {
    match (a, b) {
        (Item::Band(a), Item::Band(b)) => {
            a.band == b.band && a.anchor == b.anchor && a.hang == b.hang && a.side == b.side
        }
        (Item::Chain(a), Item::Chain(b)) => {
            a.chain == b.chain && a.hang == b.hang && a.floor == b.floor && a.side == b.side
        }
        _ => false,
    }
}

fn count_up(item: &mut Item) {
    match item {
        Item::Band(hung) => hung.count += 1,
        Item::Chain(hung) => hung.count += 1,
        _ => {}
    }
}
