//! How good a combination of bands and chains is.
//!
//! In: sums of the pieces, the loads, the wish. Out: for a combination, the bar load that makes its hardest
//! place exactly the wished effort, that load rounded down to what can be loaded, and the score. Evenness
//! and shares are judged at the exact load, so that setups are compared when they are equally hard; load
//! and nearness to a profile are judged as loaded. Finer plates then never make an answer worse. Effort is
//! linear in the forces here; where a pull leans from plumb that is its tangent, and the exact calculation
//! has the last word on the finalists.

use super::buildable::Rack;
use super::loading::Loadings;
use super::ranking::Combination;
use super::sums::{END, Field, GOAL, Laid, Ruler, START, Sums, dot};
use super::wish::{Goal, Wish};
use crate::units::Mass;

/// Below this an effort of one kilogram is none: weights do not load that place, 1/kg.
const NO_EFFORT: f64 = 1.0e-9;

/// A rounding error is no excess.
const SLACK: f64 = 1.0e-9;

/// Samples are padded to a multiple of this, so that the inner loop has no rest.
pub(super) const LANES: usize = 8;

/// A combination judged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Judged {
    /// Smaller is better.
    pub score: f64,
    /// Standard deviation of effort over its mean at the exact load.
    pub spread: f64,
    /// Place of its load in the list of loads.
    pub loading: u32,
    /// Plates, bands and chains a side.
    pub pieces: u32,
    /// Mean load over the range as loaded, kg.
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
    loadings: &'a Loadings,
    wish: &'a Wish,
    body_kg: f64,
    /// What may be loaded at each place without any piece, kg, padded with infinity.
    pub(super) room: Vec<f64>,
    /// What each hanging takes of it, kg, padded with 0.
    pub(super) takes: Vec<Vec<f64>>,
    /// Load of each hanging at each place, kg.
    kg: Vec<Vec<f64>>,
    /// Sums of the body, the start of every combination.
    pub(super) start: Sums,
    pub(super) pieces: Vec<Sums>,
    /// Σ y_a·y_b of two hangings.
    products: Vec<f64>,
    /// Σ of the body's effort with each hanging's.
    with_body: Vec<f64>,
    samples: f64,
    /// Effort of one kilogram of plain load at each place.
    one_kg: Vec<f64>,
    /// Σ x, Σ x², Σ x·t, Σ t², with x the effort of one kilogram and t the profile.
    x: f64,
    xx: f64,
    xt: f64,
    tt: f64,
}

impl<'a> Kernel<'a> {
    /// Prepares a search.
    #[must_use]
    pub fn new(field: &Field, rack: &Rack, loadings: &'a Loadings, wish: &'a Wish) -> Self {
        let items = loadings
            .all()
            .first()
            .map_or(&[][..], |loading| &loading.items);
        let ruler = Ruler::new(field, wish, items);
        let body = ruler.body(field);
        let laid: Vec<Laid> = rack
            .hangings
            .iter()
            .map(|h| ruler.laid(field, &h.force))
            .collect();
        let products = laid
            .iter()
            .flat_map(|a| laid.iter().map(|b| dot(&a.effort, &b.effort)))
            .collect();
        let x = &ruler.x;
        // The body is part of the load, not of what bands and chains make of it.
        let start = Sums {
            added_kg: [0.0; 3],
            taken_kg: [0.0; 3],
            ..body.sums
        };
        Self {
            loadings,
            wish,
            body_kg: field.body.as_kg(),
            room: room(wish, x, &body.effort),
            takes: laid.iter().map(|piece| taken(&piece.effort, x)).collect(),
            start,
            pieces: laid.iter().map(|piece| piece.sums).collect(),
            products,
            with_body: laid
                .iter()
                .map(|piece| dot(&piece.effort, &body.effort))
                .collect(),
            samples: x.len() as f64,
            one_kg: x.clone(),
            x: x.iter().sum(),
            xx: dot(x, x),
            xt: dot(x, &ruler.profile),
            tt: dot(&ruler.profile, &ruler.profile),
            kg: laid.into_iter().map(|piece| piece.kg).collect(),
        }
    }

    /// Σ y_a·y_b of a hanging with those already in a combination and the body.
    pub(super) fn product(&self, combination: &[u16], piece: usize) -> f64 {
        let row = piece * self.pieces.len();
        let with = combination
            .iter()
            .map(|other| self.products[row + usize::from(*other)]);
        self.with_body[piece] + with.sum::<f64>()
    }

    /// How much more plain load makes the tightest place exactly as hard as wished, from effort at each place.
    #[must_use]
    pub fn room_kg(&self, effort: &[f64]) -> f64 {
        let places = effort.iter().zip(&self.one_kg).enumerate();
        let left =
            places
                .filter(|(_, (_, one))| **one > NO_EFFORT)
                .map(|(index, (effort, one))| {
                    (self.wish.allowed(index, self.one_kg.len()) - effort) / one
                });
        left.fold(f64::INFINITY, f64::min)
    }

    /// Spread of plain weight, with which flattening compares.
    #[must_use]
    pub fn plain_spread(&self) -> f64 {
        self.spread(1.0, &Sums::default())
    }

    /// The most plain load that keeps every place within the wished effort, kg.
    #[must_use]
    pub fn most_plain_kg(&self) -> f64 {
        self.room.iter().copied().fold(f64::INFINITY, f64::min)
    }

    /// Flattening by one hanging beside the load that it leaves room for, %, and its share.
    ///
    /// **Fails** with the limit that it misses.
    pub fn one(&self, hanging: usize) -> Result<(f64, f64), Gap> {
        let sums = self
            .start
            .with(&self.pieces[hanging], self.product(&[], hanging));
        let left = self
            .room
            .iter()
            .zip(&self.takes[hanging])
            .map(|(room, takes)| room - takes);
        let judged = self.judge(left.fold(f64::INFINITY, f64::min), &sums, 1)?;
        let kg = self.loadings.all()[judged.loading as usize].mass.as_kg();
        let flattening = 100.0 * (1.0 - judged.spread / self.plain_spread());
        Ok((flattening, self.share(kg, &sums)))
    }

    /// Load of a combination with a plain load at each place, kg of plain load.
    #[must_use]
    pub fn load_kg(&self, combination: &Combination, loading: usize) -> Vec<f64> {
        let plain_kg = self.loadings.all()[loading].mass.as_kg() + self.body_kg;
        let mut load = vec![plain_kg; self.samples as usize];
        for hanging in combination.hangings() {
            for (sum, kg) in load.iter_mut().zip(&self.kg[usize::from(*hanging)]) {
                *sum += kg;
            }
        }
        load
    }

    /// Load of a hanging at the end of the range, kg of plain load.
    #[must_use]
    pub fn end_kg(&self, hanging: usize) -> f64 {
        self.kg[hanging].last().copied().unwrap_or(0.0)
    }

    /// Share of bands and chains in a combination with a plain load, at start or end, whichever is larger.
    #[must_use]
    pub fn share_of(&self, combination: &Combination, loading: usize) -> f64 {
        self.share(
            self.loadings.all()[loading].mass.as_kg(),
            &self.sums_of(combination),
        )
    }

    /// Share of bands and chains at the goal's place beside this much plain load.
    #[must_use]
    pub fn share_at_goal(&self, combination: &Combination, plain_kg: f64) -> f64 {
        self.share_at(plain_kg, &self.sums_of(combination), GOAL)
    }

    /// The most plain load beside a combination that keeps every place within the wished effort, kg, by the
    /// tangent.
    #[must_use]
    pub fn exact_kg(&self, combination: &Combination) -> f64 {
        let mut room = self.room.clone();
        for hanging in combination.hangings() {
            for (left, takes) in room.iter_mut().zip(&self.takes[usize::from(*hanging)]) {
                *left -= takes;
            }
        }
        room.into_iter().fold(f64::INFINITY, f64::min)
    }

    /// The limit that a combination misses most, at its exact load or as loaded, if any.
    #[must_use]
    pub fn gap_of(&self, combination: &Combination, exact_kg: f64, loading: usize) -> Option<Gap> {
        self.gap(exact_kg, loading, &self.sums_of(combination))
    }

    fn sums_of(&self, combination: &Combination) -> Sums {
        let hangings = combination.hangings();
        (0..hangings.len()).fold(self.start, |sums, index| {
            let piece = usize::from(hangings[index]);
            sums.with(&self.pieces[piece], self.product(&hangings[..index], piece))
        })
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
        let exact_kg = if most_kg.is_finite() { most_kg } else { kg };
        if let Some(gap) = self.gap(exact_kg, index, sums) {
            return Err(gap);
        }
        let spread = self.spread(exact_kg, sums);
        Ok(Judged {
            score: steady(self.score(exact_kg, kg, sums, spread)),
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
        let Some(below) = self.loadings.floor(vertex_kg, plates) else {
            return self.loadings.lightest(plates).unwrap_or(index).min(index);
        };
        let above = self.loadings.above(below, plates).unwrap_or(below);
        let kg = |index: usize| self.loadings.all()[index].mass.as_kg();
        let nearer = if kg(above) - vertex_kg < vertex_kg - kg(below) {
            above
        } else {
            below
        };
        nearer.min(index)
    }

    fn score(&self, exact_kg: f64, kg: f64, sums: &Sums, spread: f64) -> f64 {
        match &self.wish.goal {
            Goal::Flattest => spread,
            Goal::MostLoad { .. } => -(kg + sums.goal_kg),
            Goal::Share { share, .. } => (self.share_at(exact_kg, sums, GOAL) - share).abs(),
            Goal::Profile(_) => {
                let off = self.tt - 2.0 * (kg * self.xt + sums.profile)
                    + kg * kg * self.xx
                    + 2.0 * kg * sums.cross
                    + sums.square;
                (off.max(0.0) / self.samples).sqrt()
            }
        }
    }

    /// The larger share of start and end.
    fn share(&self, kg: f64, sums: &Sums) -> f64 {
        self.share_at(kg, sums, START)
            .max(self.share_at(kg, sums, END))
    }

    /// Share of the load that pieces add, or of the weight that they take away, whichever is larger.
    ///
    /// ```text
    /// share = max( A/(W + A), H/W )        A added, H taken away, W plain load with the body, all in kg
    /// ```
    /// **Shape.** 0 without pieces; A/(W + A) is what studies report for bands and chains. Pieces that
    /// pull against each other do not cancel. **Fails.** Infinite help on no weight is infinite.
    fn share_at(&self, kg: f64, sums: &Sums, place: usize) -> f64 {
        let (added, taken) = (sums.added_kg[place], sums.taken_kg[place]);
        let weight = kg + self.body_kg;
        let of = |part: f64, whole: f64| if part > 0.0 { part / whole } else { 0.0 };
        of(added, weight + added).max(of(taken, weight))
    }

    /// The limit that is missed most, at the exact load or as loaded, if any. What both keep, every load
    /// between them keeps too: each limit is a bound of something that only rises or falls with the load.
    fn gap(&self, exact_kg: f64, index: usize, sums: &Sums) -> Option<Gap> {
        let kg = self.loadings.all()[index].mass.as_kg();
        let loaded = self.gap_at(kg, index, sums);
        let exact = match self.wish.goal {
            Goal::Profile(_) => None,
            _ => self.gap_at(exact_kg, index, sums),
        };
        loaded
            .into_iter()
            .chain(exact)
            .max_by(|a, b| a.size.total_cmp(&b.size))
    }

    fn gap_at(&self, kg: f64, index: usize, sums: &Sums) -> Option<Gap> {
        let share = self.share(kg, sums);
        let mut worst: Option<Gap> = None;
        let mut miss = |limit: Limit, size: f64, has: f64, needs: f64| {
            if size > SLACK && worst.is_none_or(|known| size > known.size) {
                worst = Some(Gap {
                    limit,
                    size,
                    has,
                    needs,
                    loading: index as u32,
                });
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
            let has = kg + sums.limits_kg[place];
            if let Some(least) = limit.least.map(Mass::as_kg) {
                miss(
                    Limit::LeastLoad(place),
                    (least - has) / least.max(1.0),
                    has,
                    least,
                );
            }
            if let Some(most) = limit.most.map(Mass::as_kg) {
                miss(
                    Limit::MostLoad(place),
                    (has - most) / most.max(1.0),
                    has,
                    most,
                );
            }
        }
        worst
    }
}

/// A score without its rounding errors, so that equal setups tie and the simpler one comes first.
#[must_use]
pub fn steady(score: f64) -> f64 {
    (score * 1.0e9).round() / 1.0e9 + 0.0
}

/// What may be loaded at each place: (effort allowed − effort of the body) / effort of a kilogram.
fn room(wish: &Wish, x: &[f64], body: &[f64]) -> Vec<f64> {
    let free = |i: usize| {
        if x[i] > NO_EFFORT {
            (wish.allowed(i, x.len()) - body[i]) / x[i]
        } else {
            f64::INFINITY
        }
    };
    let mut room: Vec<f64> = (0..x.len()).map(free).collect();
    room.resize(x.len().next_multiple_of(LANES), f64::INFINITY);
    room
}

/// Effort of a hanging in kilograms of plain load at each place; nothing where weights do not load.
fn taken(effort: &[f64], x: &[f64]) -> Vec<f64> {
    let kg = effort
        .iter()
        .zip(x)
        .map(|(y, x)| if *x > NO_EFFORT { y / x } else { 0.0 });
    let mut taken: Vec<f64> = kg.collect();
    taken.resize(x.len().next_multiple_of(LANES), 0.0);
    taken
}
