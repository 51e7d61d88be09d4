//! One setup of a gym, calculated exactly, with everything that a coach loads the bar from.
//!
//! In: a candidate of the search. Out: [`Picked`], or nothing where the exact figures miss a limit.

use super::study::{Ground, SetupStudy, load_points};
use crate::error::Result;
use crate::overlay::spread;
use crate::resistance::{Item, LoadForce, Motion, Setup};
use crate::setups::{Combination, Goal, Gym, Kernel, Loadings, Rack, Wish, hung_in_words, steady};
use crate::units::Mass;

/// A setup that the gym can build, with its figures.
#[derive(Debug, Clone, PartialEq)]
pub struct Picked {
    /// The setup.
    pub setup: Setup,
    /// Bar and plates in words.
    pub plain_words: String,
    /// Bands and chains in words.
    pub hung_words: String,
    /// Mass of the plain load: bar, collars, plates; one hand for dumb-bells.
    pub plain_mass: Mass,
    /// Load at start, middle and end of the range.
    pub loads: [Mass; 3],
    /// Lowest and highest load at the end when bands of one label differ as measured.
    pub end_range: [Mass; 2],
    /// Mean load over the range.
    pub mean_load: Mass,
    /// Share of bands and chains at start or end: of the load what they add, of the weight what they take.
    pub share: f64,
    /// Plates, bands and chains a side.
    pub pieces: u32,
    /// Bands and chains a side.
    pub hung: u32,
    /// What it is ranked by; smaller is better.
    pub score: f64,
    /// Demand, effort, sticking region, flattening.
    pub study: SetupStudy,
}

/// What exact calculation needs.
pub(super) struct Exact<'a> {
    pub(super) ground: &'a Ground<'a>,
    pub(super) rack: &'a Rack,
    pub(super) loadings: &'a Loadings,
    pub(super) wish: &'a Wish,
    pub(super) kernel: &'a Kernel<'a>,
    pub(super) gym: &'a Gym,
}

/// A rounding error is no excess of effort or share.
const SLACK: f64 = 1.0e-9;

/// A setup with its load settled: the place of the load, and score.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Settled {
    pub(super) combination: Combination,
    pub(super) loading: usize,
    pub(super) score: f64,
    pub(super) pieces: u32,
}

impl Exact<'_> {
    /// The setup of a combination with a load.
    pub(super) fn setup(&self, combination: &Combination, loading: usize) -> Setup {
        let mut items = self.loadings.all()[loading].items.clone();
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

    /// The heaviest load with which no place is harder than wished, found from the search's answer.
    ///
    /// Where the pull leans, the search was a tangent, so the neighbouring loads are tried. `None` if no
    /// load fits, or a limit is missed.
    pub(super) fn settled(
        &self,
        combination: Combination,
        loading: usize,
    ) -> Result<Option<Settled>> {
        let hung = combination.hangings().len() as u32;
        let plates = self.wish.most_pieces.saturating_sub(hung);
        let mut at = loading;
        let mut effort = self.effort(&combination, at)?;
        if self.is_too_hard(&effort) {
            loop {
                let Some(lighter) = self.loadings.below(at, plates) else {
                    return Ok(None);
                };
                at = lighter;
                effort = self.effort(&combination, at)?;
                if !self.is_too_hard(&effort) {
                    break;
                }
            }
        } else if self.leans(&combination) && !matches!(self.wish.goal, Goal::Profile(_)) {
            while let Some(heavier) = self.loadings.above(at, plates) {
                let more = self.effort(&combination, heavier)?;
                if self.is_too_hard(&more) {
                    break;
                }
                (at, effort) = (heavier, more);
            }
        }
        let fits = self.kernel.gap_of(&combination, at).is_none();
        Ok(fits.then(|| Settled {
            combination,
            loading: at,
            score: steady(self.score(&combination, at, &effort)),
            pieces: self.loadings.all()[at].plates + hung,
        }))
    }

    fn leans(&self, combination: &Combination) -> bool {
        combination.hangings().iter().any(|hanging| {
            self.ground
                .is_askew(&self.rack.hangings[usize::from(*hanging)].force)
        })
    }

    fn effort(&self, combination: &Combination, loading: usize) -> Result<Vec<f64>> {
        let setup = self.ground.loaded(&self.setup(combination, loading));
        Ok(self.ground.effort_under(&self.loads(&setup))?.1)
    }

    fn loads(&self, setup: &Setup) -> Vec<LoadForce> {
        let points = load_points(&self.ground.range);
        let rigged = setup.rigged_over(&points);
        let at = |point| rigged.force_at(point, &self.ground.range.carrier, Motion::Hold);
        points.iter().map(at).collect()
    }

    fn is_too_hard(&self, effort: &[f64]) -> bool {
        let last = (effort.len() - 1) as f64;
        let limit_at = match self.wish.goal {
            Goal::MostLoad { limit_at, .. } => limit_at.map(|at| (at * last).round() as usize),
            _ => None,
        };
        effort.iter().enumerate().any(|(index, effort)| {
            let allowed = match limit_at {
                Some(at) if at != index => self.wish.effort.max(1.0),
                _ => self.wish.effort,
            };
            *effort > allowed * (1.0 + SLACK)
        })
    }

    fn score(&self, combination: &Combination, loading: usize, effort: &[f64]) -> f64 {
        match &self.wish.goal {
            Goal::Flattest => spread(effort).unwrap_or(f64::INFINITY),
            Goal::MostLoad { at, .. } => {
                let load_kg = self.kernel.load_kg(combination, loading);
                -load_kg[((load_kg.len() - 1) as f64 * at).round() as usize]
            }
            Goal::Share { share, .. } => {
                (self.kernel.share_at_goal(combination, loading) - share).abs()
            }
            Goal::Profile(points) => {
                let last = (effort.len() - 1) as f64;
                let off = effort.iter().enumerate().map(|(index, effort)| {
                    (effort - Wish::profile_at(points, index as f64 / last)).powi(2)
                });
                (off.sum::<f64>() / effort.len() as f64).sqrt()
            }
        }
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
            plain_words: loading.words.clone(),
            hung_words: hung_in_words(&setup.items, self.gym),
            plain_mass: loading.mass,
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
