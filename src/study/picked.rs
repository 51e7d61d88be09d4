//! One setup of a gym, calculated exactly, with everything that a coach loads the bar from.
//!
//! In: a candidate of the search. Out: [`Picked`], or nothing where the exact figures miss a limit.

use super::study::{Ground, SetupStudy, load_points};
use crate::error::Result;
use crate::movement::PlaneForce;
use crate::overlay::spread;
use crate::resistance::{Item, LoadForce, Motion, Setup};
use crate::setups::{Combination, Goal, Loadings, Rack, Wish, in_words};
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
    /// Share of the load at the end that bands and chains make.
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
            match items.iter_mut().find(|known| is_same_but_count(known, item)) {
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
    pub(super) fn settled(&self, combination: Combination, loading: usize) -> Result<Option<Settled>> {
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
        let setup = self.setup(&combination, at);
        Ok(self.is_within_limits(&setup).then(|| Settled {
            combination,
            loading: at,
            score: self.score(&setup, &effort),
            pieces: self.loadings.all()[at].plates + hung,
        }))
    }

    fn leans(&self, combination: &Combination) -> bool {
        combination.hangings().iter().any(|hanging| {
            self.ground.is_askew(&self.rack.hangings[usize::from(*hanging)].force)
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

    /// Load at a place of the range in kilograms of plain load.
    fn load_at(&self, setup: &Setup, range: f64) -> Mass {
        let loaded = self.ground.loaded(setup);
        self.kilograms(&loaded, range, |load, _| load.along_n)
    }

    /// Some force at a place of the range over that of one kilogram of plain load there.
    fn kilograms(&self, setup: &Setup, range: f64, force_n: impl Fn(&LoadForce, &Setup) -> f64) -> Mass {
        let points = load_points(&self.ground.range);
        let index = ((points.len() - 1) as f64 * range).round() as usize;
        let carrier = &self.ground.range.carrier;
        let rigged = setup.rigged_over(&points);
        let load = rigged.force_at(&points[index], carrier, Motion::Hold);
        let one = self.one_kilogram(setup, &points[index]);
        Mass::from_kg(force_n(&load, &rigged) / one.magnitude_n().max(f64::MIN_POSITIVE))
    }

    /// Force of one more kilogram beside the setup's sled and cam.
    fn one_kilogram(&self, setup: &Setup, point: &crate::movement::LoadPoint) -> PlaneForce {
        let machine: Vec<Item> = setup
            .items
            .iter()
            .filter(|item| matches!(item, Item::Sled(_) | Item::Cam(_)))
            .cloned()
            .collect();
        let without = Setup::new("", machine.clone());
        let mut items = machine;
        items.extend(Setup::plain(Mass::from_kg(1.0)).items);
        let with = Setup::new("", items);
        let at = |setup: &Setup| setup.total_at(point, &self.ground.range.carrier, Motion::Hold).force;
        let (with, without) = (at(&with), at(&without));
        PlaneForce {
            x_n: with.x_n - without.x_n,
            z_n: with.z_n - without.z_n,
        }
    }

    fn share_at(&self, setup: &Setup, range: f64) -> f64 {
        let points = load_points(&self.ground.range);
        let index = ((points.len() - 1) as f64 * range).round() as usize;
        let rigged = self.ground.loaded(setup).rigged_over(&points);
        rigged.share_at(&points[index], &self.ground.range.carrier, Motion::Hold)
    }

    fn is_within_limits(&self, setup: &Setup) -> bool {
        let share = self.share_at(setup, 1.0);
        let [least, most] = self.wish.share;
        let shares = least.is_none_or(|least| share >= least - SLACK)
            && most.is_none_or(|most| share <= most + SLACK);
        shares
            && self.wish.loads.iter().all(|limit| {
                let kg = self.load_at(setup, limit.at).as_kg();
                let slack = SLACK * kg.abs();
                limit.least.is_none_or(|least| kg >= least.as_kg() - slack)
                    && limit.most.is_none_or(|most| kg <= most.as_kg() + slack)
            })
    }

    fn score(&self, setup: &Setup, effort: &[f64]) -> f64 {
        match &self.wish.goal {
            Goal::Flattest => spread(effort).unwrap_or(f64::INFINITY),
            Goal::MostLoad { at, .. } => -self.load_at(setup, *at).as_kg(),
            Goal::Share { share, at } => (self.share_at(setup, *at) - share).abs(),
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
        let study = self.ground.setup(&setup)?;
        let loaded = self.ground.loaded(&setup);
        let loads = [0.0, 0.5, 1.0].map(|range| self.load_at(&setup, range));
        let carrier = self.ground.range.carrier;
        let points = load_points(&self.ground.range);
        let end = points[points.len() - 1];
        let spread = |pick: fn((f64, f64)) -> f64| {
            self.kilograms(&loaded, 1.0, |_, rigged| {
                pick(rigged.spread_at(&end, &carrier, Motion::Hold))
            })
        };
        Ok(Picked {
            plain_words: loading.words.clone(),
            hung_words: in_words(&setup.items),
            plain_mass: loading.mass,
            loads,
            end_range: [spread(|s| s.0), spread(|s| s.1)],
            mean_load: self.mean_load(&loaded),
            share: self.share_at(&setup, 1.0),
            pieces: settled.pieces,
            hung: settled.combination.hangings().len() as u32,
            score: settled.score,
            study,
            setup,
        })
    }

    fn mean_load(&self, loaded: &Setup) -> Mass {
        let points = load_points(&self.ground.range);
        let loads = self.loads(loaded);
        let kg = points.iter().zip(&loads).map(|(point, load)| {
            let one = self.one_kilogram(loaded, point).magnitude_n();
            load.along_n / one.max(f64::MIN_POSITIVE)
        });
        Mass::from_kg(kg.sum::<f64>() / points.len() as f64)
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
