//! One setup of a gym, calculated exactly, with everything that a coach loads the bar from.
//!
//! In: a candidate of the search. Out: [`Picked`], or nothing where the exact figures miss a limit.

use super::pick_answer::Picked;
use super::solve::SolvedLift;
use crate::error::Result;
use crate::movement::PlaneForce;
use crate::overlay::spread;
use crate::resistance::{Item, LoadForce, Setup};
use crate::setups::{Candidate, Combination, Goal, Kernel, Loadings, Rack, Wish, steady};
use crate::units::Mass;

/// What exact calculation needs.
pub(super) struct Exact<'a> {
    pub(super) ground: &'a SolvedLift<'a>,
    pub(super) rack: &'a Rack,
    pub(super) loadings: &'a Loadings,
    pub(super) wish: &'a Wish,
    pub(super) kernel: &'a Kernel<'a>,
    /// Force of one kilogram of plain load at each sample.
    pub(super) plain: &'a [PlaneForce],
    /// Mass of the lifter where that is the load.
    pub(super) body: Mass,
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
    pub(super) fn setup(&self, combination: &Combination, loading: usize) -> Setup {
        let mut items = self.loadings.all()[loading].items();
        for hanging in combination.hangings() {
            let item = &self.rack.hangings[usize::from(*hanging)].item;
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

    /// A combination with its exact load, that load rounded down, and its score.
    ///
    /// `None` if no load fits, or a limit is missed.
    pub(super) fn settled(&self, candidate: &Candidate) -> Result<Option<Settled>> {
        let combination = candidate.combination;
        let hung = combination.hangings().len() as u32;
        let plates = self.wish.most_pieces.saturating_sub(hung);
        let (exact_kg, effort) = self.exact_load(&combination)?;
        let Some(mut loading) = self.loadings.floor(exact_kg, plates) else {
            return Ok(None);
        };
        if let Goal::Profile(_) = self.wish.goal {
            loading = loading.min(candidate.judged.loading as usize);
        }
        if self
            .kernel
            .gap_of(&combination, exact_kg, loading)
            .is_some()
        {
            return Ok(None);
        }
        Ok(Some(Settled {
            combination,
            exact_kg,
            spread: spread(&effort).unwrap_or(f64::INFINITY),
            loading,
            score: steady(self.score(&combination, exact_kg, loading, &effort)?),
            pieces: self.loadings.all()[loading].plates + hung,
        }))
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
            pieces: self.loadings.all()[loading].plates + combination.hangings().len() as u32,
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
            let heaviest = self.loadings.all().last();
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
        hangings.any(|h| {
            self.ground
                .is_askew(&self.rack.hangings[usize::from(*h)].force)
        })
    }

    /// Effort of a combination beside this much plain load, one a sample.
    fn effort(&self, combination: &Combination, plain_kg: f64) -> Result<Vec<f64>> {
        let kg = plain_kg + self.body.as_kg();
        let loads: Vec<LoadForce> = (0..self.plain.len())
            .map(|sample| {
                let one = self.plain[sample];
                let mut force = PlaneForce {
                    x_n: kg * one.x_n,
                    z_n: kg * one.z_n,
                };
                for hanging in combination.hangings() {
                    let more = self.rack.hangings[usize::from(*hanging)].force[sample];
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
        Ok(self.ground.effort_under(&loads)?.1)
    }

    fn score(
        &self,
        combination: &Combination,
        exact_kg: f64,
        loading: usize,
        effort: &[f64],
    ) -> Result<f64> {
        Ok(match &self.wish.goal {
            Goal::Flattest => spread(effort).unwrap_or(f64::INFINITY),
            Goal::MostLoad { at, .. } => {
                let load_kg = self.kernel.load_kg(combination, loading);
                -load_kg[((load_kg.len() - 1) as f64 * at).round() as usize]
            }
            Goal::Share { share, .. } => {
                (self.kernel.share_at_goal(combination, exact_kg) - share).abs()
            }
            Goal::Profile(points) => {
                let kg = self.loadings.all()[loading].total.as_kg();
                let effort = self.effort(combination, kg)?;
                let last = (effort.len() - 1) as f64;
                let off = effort.iter().enumerate().map(|(index, effort)| {
                    (effort - Wish::profile_at(points, index as f64 / last)).powi(2)
                });
                (off.sum::<f64>() / effort.len() as f64).sqrt()
            }
        })
    }

    /// Everything about a settled setup.
    pub(super) fn picked(&self, settled: &Settled) -> Result<Picked> {
        let setup = self.setup(&settled.combination, settled.loading);
        let loading = &self.loadings.all()[settled.loading];
        let load_kg = self.kernel.load_kg(&settled.combination, settled.loading);
        let last = load_kg.len() - 1;
        let mean_kg = load_kg.iter().sum::<f64>() / load_kg.len() as f64;
        Ok(Picked {
            study: self.ground.setup(&setup)?,
            loading: loading.clone(),
            exact_mass: Mass::from_kg(settled.exact_kg),
            flattening_percent: 100.0 * (1.0 - settled.spread / self.kernel.plain_spread()),
            loads: [0, last / 2, last].map(|sample| Mass::from_kg(load_kg[sample])),
            end_range: self.end_range(settled, load_kg[last]),
            mean_load: Mass::from_kg(mean_kg),
            share: self.kernel.share_of(&settled.combination, settled.loading),
            pieces: settled.pieces,
            hung: settled.combination.hangings().len() as u32,
            score: settled.score,
            setup,
        })
    }

    /// Load at the end when bands that are known by their label only pull less or more than it says.
    fn end_range(&self, settled: &Settled, load_kg: f64) -> [Mass; 2] {
        let mut range_kg = [load_kg; 2];
        for hanging in settled.combination.hangings() {
            let hanging = usize::from(*hanging);
            if let Item::Band(hung) = &self.rack.hangings[hanging].item {
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
