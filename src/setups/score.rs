//! How good a combination of bands and chains is, from sums that are kept up as pieces are added.
//!
//! In: what one newton does to effort at each place of the range, the hangings, the loads, the wish. Out:
//! for a combination, the bar load that makes its hardest place the wished effort, rounded down to what
//! can be loaded, and its score. Effort is linear in the forces here; where a pull leans from plumb that
//! is its tangent, and the exact calculation has the last word on the finalists.

use super::buildable::Rack;
use super::loading::Loadings;
use super::wish::{Goal, Wish};
use crate::movement::{Carrier, LoadPoint, PlaneForce};
use crate::resistance::{Item, Motion, Setup, Sled, Weight};
use crate::units::Mass;

/// What setups are laid over: where the load moves and what force costs there.
#[derive(Debug, Clone, PartialEq)]
pub struct Field {
    /// The load's places, evenly over the range.
    pub points: Vec<LoadPoint>,
    /// How the movement takes its load.
    pub carrier: Carrier,
    /// Effort that one newton forward and one newton upward on the lifter make at each place, 1/N.
    pub effort_per_n: Vec<[f64; 2]>,
    /// The lifter's own mass where the body is the load, else nothing.
    pub body: Mass,
}

impl Field {
    /// Effort that a force makes at a place.
    fn effort(&self, index: usize, force: PlaneForce) -> f64 {
        let [x, z] = self.effort_per_n[index];
        x * force.x_n + z * force.z_n
    }

    /// Force of one kilogram of plain load at each place.
    fn plain(&self, friction: f64) -> Vec<PlaneForce> {
        let mut items = vec![Item::Weight(Weight::Load(Mass::from_kg(1.0)))];
        if let Ok(sled) = Sled::new(Mass::ZERO, friction) {
            items.push(Item::Sled(sled));
        }
        let setup = Setup::new("", items).rigged_over(&self.points);
        let at = |point| setup.total_at(point, &self.carrier, Motion::Hold).force;
        self.points.iter().map(at).collect()
    }
}

/// Places of the range whose load is watched: end, goal, limits.
const WATCHED: usize = 6;

/// Below this an effort of one kilogram is none: weights do not load that place, 1/kg.
const NO_EFFORT: f64 = 1.0e-9;

/// Samples are padded to a multiple of this, so that the inner loop has no rest.
pub(super) const LANES: usize = 8;

/// What one piece adds to the sums.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Sums {
    /// Σ y, with y the effort that the pieces make.
    effort: f64,
    /// Σ x·y, with x the effort that one kilogram makes.
    cross: f64,
    /// Σ y².
    square: f64,
    /// Σ y·t, with t the profile.
    profile: f64,
    /// Mean load over the range, kg.
    mean_kg: f64,
    /// Load at the watched places, kg.
    watched_kg: [f64; WATCHED],
}

impl Sums {
    /// These sums with one more piece, whose products with those already there sum to `product`.
    pub(super) fn with(&self, piece: &Self, product: f64) -> Self {
        let mut watched_kg = self.watched_kg;
        for (sum, more) in watched_kg.iter_mut().zip(&piece.watched_kg) {
            *sum += more;
        }
        Self {
            effort: self.effort + piece.effort,
            cross: self.cross + piece.cross,
            square: self.square + piece.square + 2.0 * product,
            profile: self.profile + piece.profile,
            mean_kg: self.mean_kg + piece.mean_kg,
            watched_kg,
        }
    }
}

/// A combination judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Judged {
    /// Smaller is better.
    pub score: f64,
    /// Standard deviation of effort over its mean.
    pub spread: f64,
    /// Place of its load in the list of loads.
    pub loading: u32,
    /// Plates, bands and chains a side.
    pub pieces: u32,
    /// Mean load over the range, kg.
    pub mean_kg: f64,
}

/// Why a combination is not possible, and how far it is from being so.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gap {
    /// Which limit it misses most.
    pub limit: Limit,
    /// By how much, as a share of the limit; for ordering.
    pub size: f64,
    /// What it has, kg or a share.
    pub has: f64,
    /// What the limit asks for, in the same unit.
    pub needs: f64,
    /// Place of its load in the list of loads; of the lightest one where none fits.
    pub loading: u32,
}

/// A limit that can be missed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Limit {
    /// Even the lightest load is too heavy beside these pieces.
    LightestLoad,
    /// Too small a share of bands and chains.
    LeastShare,
    /// Too large a share of bands and chains.
    MostShare,
    /// Too little load at the place of this limit.
    LeastLoad(usize),
    /// Too much load at the place of this limit.
    MostLoad(usize),
}

/// Everything that judging needs, made once for a search.
#[derive(Debug, Clone)]
pub struct Kernel<'a> {
    pub(super) loadings: &'a Loadings,
    wish: &'a Wish,
    /// What may be loaded at each place without any piece, kg, padded with infinity.
    pub(super) room: Vec<f64>,
    /// What each hanging takes of it, kg, padded with 0.
    pub(super) takes: Vec<Vec<f64>>,
    /// Sums of the body, the start of every combination.
    pub(super) start: Sums,
    pub(super) pieces: Vec<Sums>,
    /// Σ y_a·y_b of two hangings.
    products: Vec<f64>,
    /// Σ of the body's effort with each hanging's.
    with_body: Vec<f64>,
    samples: f64,
    x: f64,
    xx: f64,
    xt: f64,
    tt: f64,
    limits_at: Vec<usize>,
}

/// Places in [`Sums::watched_kg`]: the end of the range, the goal's place, then the limits.
const END: usize = 0;
const GOAL: usize = 1;
const FIRST_LIMIT: usize = 2;

impl<'a> Kernel<'a> {
    /// Prepares a search.
    #[must_use]
    pub fn new(field: &Field, rack: &Rack, loadings: &'a Loadings, wish: &'a Wish) -> Self {
        let friction = loadings.all().first().map_or(0.0, |loading| friction_of(&loading.items));
        let plain = field.plain(friction);
        let count = field.points.len();
        let x: Vec<f64> = (0..count).map(|i| field.effort(i, plain[i])).collect();
        let watched = watched(wish, count);
        let profile = profile(wish, &field.points);
        let sums = |force: &dyn Fn(usize) -> PlaneForce| {
            let y: Vec<f64> = (0..count).map(|i| field.effort(i, force(i))).collect();
            let kg: Vec<f64> = (0..count).map(|i| along_kg(force(i), plain[i])).collect();
            (sums_of(&y, &x, &profile, &kg, &watched), y)
        };
        let body_kg = field.body.as_kg();
        let body = |i: usize| PlaneForce {
            x_n: body_kg * plain[i].x_n,
            z_n: body_kg * plain[i].z_n,
        };
        let (start, body_y) = sums(&body);
        let all: Vec<(Sums, Vec<f64>)> = rack.hangings.iter().map(|h| sums(&|i| h.force[i])).collect();
        let dot = |a: &[f64], b: &[f64]| -> f64 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
        let products = all.iter().flat_map(|a| all.iter().map(|b| dot(&a.1, &b.1))).collect();
        Self {
            loadings,
            wish,
            room: room(wish, &x, &body_y),
            takes: all.iter().map(|(_, y)| taken(y, &x)).collect(),
            start,
            pieces: all.iter().map(|(sums, _)| *sums).collect(),
            products,
            with_body: all.iter().map(|(_, y)| dot(y, &body_y)).collect(),
            samples: count as f64,
            x: x.iter().sum(),
            xx: dot(&x, &x),
            xt: dot(&x, &profile),
            tt: dot(&profile, &profile),
            limits_at: watched,
        }
    }

    /// Σ y_a·y_b of a hanging with those already in a combination and the body.
    pub(super) fn product(&self, combination: &[u16], piece: usize) -> f64 {
        let row = piece * self.pieces.len();
        let with = combination.iter().map(|other| self.products[row + usize::from(*other)]);
        self.with_body[piece] + with.sum::<f64>()
    }

    /// The most plain load that keeps every place within the wished effort, kg.
    #[must_use]
    pub fn most_plain_kg(&self) -> f64 {
        self.room.iter().copied().fold(f64::INFINITY, f64::min)
    }

    /// Flattening by one hanging beside the load that it leaves room for, %; `None` if no load fits.
    #[must_use]
    pub fn flattening_of_one(&self, hanging: usize) -> Option<f64> {
        let sums = self.start.with(&self.pieces[hanging], self.product(&[], hanging));
        let left = self.room.iter().zip(&self.takes[hanging]).map(|(room, takes)| room - takes);
        let index = self.loadings.floor(left.fold(f64::INFINITY, f64::min), u32::MAX)?;
        let spread = self.spread(self.loadings.all()[index].mass.as_kg(), &sums);
        Some(100.0 * (1.0 - spread / self.plain_spread()))
    }

    /// Spread of plain weight, with which flattening compares.
    #[must_use]
    pub fn plain_spread(&self) -> f64 {
        self.spread(1.0, &Sums::default())
    }

    /// Standard deviation over mean of effort, from the sums.
    fn spread(&self, kg: f64, sums: &Sums) -> f64 {
        let mean = (kg * self.x + sums.effort) / self.samples;
        if mean <= 0.0 {
            return f64::INFINITY;
        }
        let square = (kg * kg * self.xx + 2.0 * kg * sums.cross + sums.square) / self.samples;
        (square - mean * mean).max(0.0).sqrt() / mean
    }

    /// Judges a combination whose room for plain load is `most_kg`.
    ///
    /// **Fails** with the limit that it misses most.
    pub(super) fn judge(&self, most_kg: f64, sums: &Sums, hung: u32) -> Result<Judged, Gap> {
        let plates = self.wish.most_pieces.saturating_sub(hung);
        let Some(mut index) = self.loadings.floor(most_kg, plates) else {
            let lightest_kg = self.loadings.lightest_kg();
            return Err(Gap {
                limit: Limit::LightestLoad,
                size: (lightest_kg - most_kg) / lightest_kg.max(1.0),
                has: lightest_kg,
                needs: most_kg,
                loading: 0,
            });
        };
        if let Goal::Profile(_) = self.wish.goal {
            index = self.nearest_to_profile(index, sums, plates);
        }
        let loading = &self.loadings.all()[index];
        let kg = loading.mass.as_kg();
        self.gap(index, kg, sums).map_or(Ok(()), Err)?;
        let spread = self.spread(kg, sums);
        Ok(Judged {
            score: self.score(kg, sums, spread),
            spread,
            loading: index as u32,
            pieces: loading.plates + hung,
            mean_kg: kg + sums.mean_kg,
        })
    }

    /// The load, at most that of `index`, whose effort is nearest to the profile: the distance is a
    /// parabola of the load, so it lies next to the parabola's vertex.
    fn nearest_to_profile(&self, index: usize, sums: &Sums, plates: u32) -> usize {
        let vertex_kg = (self.xt - sums.cross) / self.xx;
        let below = self.loadings.floor(vertex_kg, plates).unwrap_or(0);
        let above = self.loadings.above(below, plates).unwrap_or(below);
        let kg = |index: usize| self.loadings.all()[index].mass.as_kg();
        let nearer = if kg(above) - vertex_kg < vertex_kg - kg(below) { above } else { below };
        nearer.min(index)
    }

    fn score(&self, kg: f64, sums: &Sums, spread: f64) -> f64 {
        match &self.wish.goal {
            Goal::Flattest => spread,
            Goal::MostLoad { .. } => -(kg + sums.watched_kg[GOAL]),
            Goal::Share { share, .. } => (self.share(kg, sums, GOAL) - share).abs(),
            Goal::Profile(_) => {
                let off = self.tt - 2.0 * (kg * self.xt + sums.profile)
                    + kg * kg * self.xx
                    + 2.0 * kg * sums.cross
                    + sums.square;
                (off.max(0.0) / self.samples).sqrt()
            }
        }
    }

    /// Share of the load that bands and chains make at a watched place.
    fn share(&self, kg: f64, sums: &Sums, place: usize) -> f64 {
        let whole_kg = kg + sums.watched_kg[place];
        if whole_kg > 0.0 {
            (sums.watched_kg[place] - self.start.watched_kg[place]) / whole_kg
        } else {
            0.0
        }
    }

    /// The limit that a load misses most, if any.
    fn gap(&self, index: usize, kg: f64, sums: &Sums) -> Option<Gap> {
        let share = self.share(kg, sums, END);
        let mut worst: Option<Gap> = None;
        let mut miss = |limit: Limit, size: f64, has: f64, needs: f64| {
            if size > 0.0 && worst.is_none_or(|known| size > known.size) {
                worst = Some(Gap { limit, size, has, needs, loading: index as u32 });
            }
        };
        let [least, most] = self.wish.share;
        if let Some(least) = least {
            miss(Limit::LeastShare, least - share, share, least);
        }
        if let Some(most) = most {
            miss(Limit::MostShare, share - most, share, most);
        }
        for (place, limit) in self.wish.loads.iter().enumerate() {
            let has = kg + sums.watched_kg[FIRST_LIMIT + place];
            if let Some(least) = limit.least.map(Mass::as_kg) {
                miss(Limit::LeastLoad(place), (least - has) / least.max(1.0), has, least);
            }
            if let Some(most) = limit.most.map(Mass::as_kg) {
                miss(Limit::MostLoad(place), (has - most) / most.max(1.0), has, most);
            }
        }
        worst
    }

    /// The samples whose load is watched.
    #[must_use]
    pub fn watched(&self) -> &[usize] {
        &self.limits_at
    }
}

fn friction_of(items: &[Item]) -> f64 {
    items
        .iter()
        .find_map(|item| match item {
            Item::Sled(sled) => Some(sled.friction()),
            _ => None,
        })
        .unwrap_or(0.0)
}

/// A force in kilograms of plain load: its part along the plain load's pull over that of one kilogram.
fn along_kg(force: PlaneForce, plain: PlaneForce) -> f64 {
    let square = plain.x_n * plain.x_n + plain.z_n * plain.z_n;
    if square > 0.0 {
        (force.x_n * plain.x_n + force.z_n * plain.z_n) / square
    } else {
        0.0
    }
}

/// The sample nearest to a place of the range.
pub(super) fn sample_at(range: f64, count: usize) -> usize {
    ((count - 1) as f64 * range).round() as usize
}

fn watched(wish: &Wish, count: usize) -> Vec<usize> {
    let goal = match wish.goal {
        Goal::MostLoad { at, .. } | Goal::Share { at, .. } => at,
        Goal::Flattest | Goal::Profile(_) => 1.0,
    };
    let limits = wish.loads.iter().map(|limit| limit.at);
    [1.0, goal].into_iter().chain(limits).map(|range| sample_at(range, count)).collect()
}

fn profile(wish: &Wish, points: &[LoadPoint]) -> Vec<f64> {
    match &wish.goal {
        Goal::Profile(profile) => points.iter().map(|p| Wish::profile_at(profile, p.range)).collect(),
        _ => vec![0.0; points.len()],
    }
}

fn sums_of(y: &[f64], x: &[f64], profile: &[f64], kg: &[f64], watched: &[usize]) -> Sums {
    let dot = |a: &[f64], b: &[f64]| -> f64 { a.iter().zip(b).map(|(a, b)| a * b).sum() };
    let mut watched_kg = [0.0; WATCHED];
    for (sum, sample) in watched_kg.iter_mut().zip(watched) {
        *sum = kg[*sample];
    }
    Sums {
        effort: y.iter().sum(),
        cross: dot(y, x),
        square: dot(y, y),
        profile: dot(y, profile),
        mean_kg: kg.iter().sum::<f64>() / kg.len() as f64,
        watched_kg,
    }
}

/// What may be loaded at each place: (effort allowed − effort of the body) / effort of a kilogram.
fn room(wish: &Wish, x: &[f64], body_y: &[f64]) -> Vec<f64> {
    let limit_at = match wish.goal {
        Goal::MostLoad { limit_at, .. } => limit_at.map(|at| sample_at(at, x.len())),
        _ => None,
    };
    let allowed = |sample: usize| match limit_at {
        Some(at) if at != sample => wish.effort.max(1.0),
        _ => wish.effort,
    };
    let mut room: Vec<f64> = (0..x.len())
        .map(|i| {
            if x[i] > NO_EFFORT {
                (allowed(i) - body_y[i]) / x[i]
            } else {
                f64::INFINITY
            }
        })
        .collect();
    room.resize(x.len().next_multiple_of(LANES), f64::INFINITY);
    room
}

/// Effort of a hanging in kilograms of plain load at each place; nothing where weights do not load.
fn taken(y: &[f64], x: &[f64]) -> Vec<f64> {
    let kg = y.iter().zip(x).map(|(y, x)| if *x > NO_EFFORT { y / x } else { 0.0 });
    let mut taken: Vec<f64> = kg.collect();
    taken.resize(x.len().next_multiple_of(LANES), 0.0);
    taken
}
