//! Everything that judging needs, summed up once for a search.
//!
//! In: the field, the rack, the loads, the wish. Out: [`Kernel`]: room for plain load at each place, what
//! each hanging takes of it, sums over the range; and loads, shares and spread of a combination.

use super::buildable::Rack;
use super::combination::Combination;
use super::cost_field::CostField;
use super::loadings::Loadings;
use super::safety_limits::SafetyLimits;
use super::sums::{Laid, Ruler, Sums, dot, steps, total};
use super::wish::Wish;
use crate::movement::PlaneForce;
use crate::units::Mass;

/// Below this an effort of one kilogram is none: weights do not load that place, 1/kg.
const NO_EFFORT: f64 = 1.0e-9;

/// Samples are padded to a multiple of this, so that the inner loop has no rest.
pub(super) const LANES: usize = 8;

/// Everything that judging needs, made once for a search.
#[derive(Debug, Clone)]
pub struct Kernel<'a> {
    pub(super) rack: &'a Rack,
    pub(super) loadings: &'a Loadings,
    pub(super) wish: &'a Wish,
    /// The most that may be left when every band that helps is gone, body included, kg.
    pub(super) most_left_kg: Option<f64>,
    /// The most that may be felt with pieces that add load, body included, kg.
    pub(super) most_felt_kg: Option<f64>,
    /// Whether pieces that help and pieces that add load may hang at once.
    pub(super) both_ways: bool,
    pub(super) body_kg: f64,
    /// What may be loaded at each place without any piece, kg, padded with infinity.
    pub(super) room: Vec<f64>,
    /// What each hanging takes of it, kg, padded with 0.
    pub(super) takes: Vec<Vec<f64>>,
    /// Load of each hanging at each place, kg.
    pub(super) kg: Vec<Vec<f64>>,
    /// Sums of the body, the start of every combination.
    pub(super) start: Sums,
    pub(super) pieces: Vec<Sums>,
    /// Σ y_a·y_b of two hangings.
    pub(super) products: Vec<f64>,
    /// Σ of the body's effort with each hanging's.
    pub(super) with_body: Vec<f64>,
    /// Steps of the range, of which sums over it have so many.
    pub(super) steps: f64,
    /// Force of one kilogram of plain load at each place.
    pub(super) plain: Vec<PlaneForce>,
    /// Whether effort depends on how far a pull leans.
    pub(super) bends: bool,
    /// Effort of one kilogram of plain load at each place.
    pub(super) one_kg: Vec<f64>,
    /// Σ x, Σ x², Σ x·t, Σ t², with x the effort of one kilogram and t the profile.
    pub(super) x: f64,
    pub(super) xx: f64,
    pub(super) xt: f64,
    pub(super) tt: f64,
}

impl<'a> Kernel<'a> {
    /// Prepares a search.
    #[must_use]
    pub fn new(
        field: &CostField,
        rack: &'a Rack,
        loadings: &'a Loadings,
        wish: &'a Wish,
        (safety, both_ways): (Option<&SafetyLimits>, bool),
    ) -> Self {
        let ruler = Ruler::new(field, wish, loadings.rail_friction());
        let body = ruler.body(field);
        let laid: Vec<Laid> = rack
            .hangings
            .iter()
            .map(|h| ruler.laid(field, &h.force))
            .collect();
        let x = &ruler.x;
        Self {
            rack,
            bends: field.bends,
            plain: ruler.plain.clone(),
            loadings,
            wish,
            most_left_kg: safety.and_then(SafetyLimits::most_left).map(Mass::as_kg),
            most_felt_kg: safety.and_then(SafetyLimits::most_felt).map(Mass::as_kg),
            both_ways,
            body_kg: field.body.as_kg(),
            room: room(wish, x, &body.effort),
            takes: laid.iter().map(|piece| taken(&piece.effort, x)).collect(),
            // The body is part of the load, not of what bands and chains make of it.
            start: Sums {
                added_kg: [0.0; 3],
                taken_kg: [0.0; 3],
                ..body.sums
            },
            pieces: laid.iter().map(|piece| piece.sums).collect(),
            products: products(&laid, &laid),
            with_body: products(&laid, std::slice::from_ref(&body)),
            steps: steps(x),
            one_kg: x.clone(),
            x: total(x),
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
    pub(super) fn room_kg(&self, effort: &[f64]) -> f64 {
        let places = effort.iter().zip(&self.one_kg).enumerate();
        let left =
            places
                .filter(|(_, (_, one))| **one > NO_EFFORT)
                .map(|(index, (effort, one))| {
                    (self.wish.allowed(index, self.one_kg.len()) - effort) / one
                });
        left.fold(f64::INFINITY, f64::min)
    }

    /// The most plain load that keeps every place within the wished effort, kg.
    pub(super) fn most_plain_kg(&self) -> f64 {
        self.room.iter().copied().fold(f64::INFINITY, f64::min)
    }

    /// Load of a combination with a plain load at each place, kg of plain load.
    pub(super) fn load_kg(&self, combination: &Combination, loading: usize) -> Vec<f64> {
        let plain_kg = self.loadings.all()[loading].total.as_kg() + self.body_kg;
        let mut load = vec![plain_kg; self.one_kg.len()];
        for hanging in combination.hangings() {
            for (sum, kg) in load.iter_mut().zip(&self.kg[usize::from(*hanging)]) {
                *sum += kg;
            }
        }
        load
    }

    /// Load of a hanging at the end of the range, kg of plain load.
    pub(super) fn end_kg(&self, hanging: usize) -> f64 {
        self.kg[hanging].last().copied().unwrap_or(0.0)
    }

    /// The most plain load beside a combination that keeps every place within the wished effort, kg, by the
    /// tangent.
    pub(super) fn exact_kg(&self, combination: &Combination) -> f64 {
        let mut room = self.room.clone();
        for hanging in combination.hangings() {
            for (left, takes) in room.iter_mut().zip(&self.takes[usize::from(*hanging)]) {
                *left -= takes;
            }
        }
        room.into_iter().fold(f64::INFINITY, f64::min)
    }

    pub(super) fn sums_of(&self, combination: &Combination) -> Sums {
        let hangings = combination.hangings();
        (0..hangings.len()).fold(self.start, |sums, index| {
            let piece = usize::from(hangings[index]);
            sums.with(&self.pieces[piece], self.product(&hangings[..index], piece))
        })
    }
}

/// Σ y_a·y_b of every piece of one list with every piece of another.
fn products(all: &[Laid], others: &[Laid]) -> Vec<f64> {
    let pairs = all
        .iter()
        .flat_map(|a| others.iter().map(move |b| dot(&a.effort, &b.effort)));
    pairs.collect()
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
