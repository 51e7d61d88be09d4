//! What a piece adds to load and effort, as sums over the range that are kept up as pieces are added.
//!
//! In: what one newton does to effort at each place, the hangings, the wish. Out: for the body and every
//! hanging its effort, its load in kilograms, and [`Sums`].

use super::cost_field::CostField;
use super::wish::{Goal, MOST_LIMITS, Wish, sample_at};
use crate::movement::PlaneForce;
use crate::numeric::range_mean;

/// Places at which shares of the load are told: start, end, and where the goal looks.
pub(super) const START: usize = 0;
/// The end of the range among the shares.
pub(super) const END: usize = 1;
/// The goal's place among the shares.
pub(super) const GOAL: usize = 2;

/// Sums over the range of one piece or a combination; samples at its ends count half, as they stand for half a step.
///
/// | field    | sum                                                                   |
/// | -------- | --------------------------------------------------------------------- |
/// | `effort` | Σ y, with y the effort that the pieces make at a place                |
/// | `cross`  | Σ x·y, with x the effort that one kilogram of plain load makes        |
/// | `square` | Σ y²                                                                  |
/// | `profile`| Σ y·t, with t the wished effort                                       |
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Sums {
    pub(super) effort: f64,
    pub(super) cross: f64,
    pub(super) square: f64,
    pub(super) profile: f64,
    /// Mean load, kg.
    pub(super) mean_kg: f64,
    /// Load at the goal's place, kg.
    pub(super) goal_kg: f64,
    /// Load at the places of the limits, kg.
    pub(super) limits_kg: [f64; MOST_LIMITS],
    /// What pieces add at the places of shares, kg.
    pub(super) added_kg: [f64; 3],
    /// What pieces take away at the places of shares, kg.
    pub(super) taken_kg: [f64; 3],
}

impl Sums {
    /// These sums with one more piece, whose products with those already there sum to `product`.
    pub(super) fn with(&self, piece: &Self, product: f64) -> Self {
        Self {
            effort: self.effort + piece.effort,
            cross: self.cross + piece.cross,
            square: self.square + piece.square + 2.0 * product,
            profile: self.profile + piece.profile,
            mean_kg: self.mean_kg + piece.mean_kg,
            goal_kg: self.goal_kg + piece.goal_kg,
            limits_kg: added(self.limits_kg, piece.limits_kg),
            added_kg: added(self.added_kg, piece.added_kg),
            taken_kg: added(self.taken_kg, piece.taken_kg),
        }
    }
}

fn added<const N: usize>(mut a: [f64; N], b: [f64; N]) -> [f64; N] {
    for (sum, more) in a.iter_mut().zip(b) {
        *sum += more;
    }
    a
}

/// The range as sums see it.
pub(super) struct Ruler {
    /// Effort of one kilogram of plain load at each place.
    pub(super) x: Vec<f64>,
    /// Wished effort at each place; 0 without a profile.
    pub(super) profile: Vec<f64>,
    /// Force of one kilogram of plain load at each place.
    pub(super) plain: Vec<PlaneForce>,
    goal: usize,
    limits: Vec<usize>,
}

/// One piece over the range.
pub(super) struct Laid {
    /// Effort that it makes at each place.
    pub(super) effort: Vec<f64>,
    /// Its load at each place, kg.
    pub(super) kg: Vec<f64>,
    pub(super) sums: Sums,
}

impl Ruler {
    pub(super) fn new(field: &CostField, wish: &Wish, rail_friction: f64) -> Self {
        let plain = field.one_kilogram(rail_friction);
        let count = field.points.len();
        let goal = match wish.goal {
            Goal::MostLoad { at, .. } | Goal::Share { at, .. } => at,
            Goal::Flattest | Goal::Profile(_) => 1.0,
        };
        let profile = match &wish.goal {
            Goal::Profile(points) => field
                .points
                .iter()
                .map(|p| Wish::profile_at(points, p.range))
                .collect(),
            _ => vec![0.0; count],
        };
        Self {
            x: (0..count).map(|i| field.effort(i, plain[i])).collect(),
            profile,
            plain,
            goal: sample_at(goal, count),
            limits: wish
                .loads
                .iter()
                .map(|limit| sample_at(limit.at, count))
                .collect(),
        }
    }

    /// The body as a piece.
    pub(super) fn body(&self, field: &CostField) -> Laid {
        let kg = field.body.as_kg();
        let force: Vec<PlaneForce> = self
            .plain
            .iter()
            .map(|one| PlaneForce {
                x_n: kg * one.x_n,
                z_n: kg * one.z_n,
            })
            .collect();
        self.laid(field, &force)
    }

    /// A piece by its force at each place.
    pub(super) fn laid(&self, field: &CostField, force: &[PlaneForce]) -> Laid {
        let effort: Vec<f64> = force
            .iter()
            .enumerate()
            .map(|(i, force)| field.effort(i, *force))
            .collect();
        let kg: Vec<f64> = force
            .iter()
            .zip(&self.plain)
            .map(|(f, one)| along_kg(*f, *one))
            .collect();
        let last = kg.len() - 1;
        let shares = [0, last, self.goal].map(|i| {
            let size_kg =
                force[i].magnitude_n() / self.plain[i].magnitude_n().max(f64::MIN_POSITIVE);
            let point = &field.points[i];
            let lifts = force[i].x_n * point.dx_ds_m + force[i].z_n * point.dz_ds_m > 0.0;
            if lifts {
                (0.0, size_kg)
            } else {
                (size_kg, 0.0)
            }
        });
        let mut limits_kg = [0.0; MOST_LIMITS];
        for (limit, sample) in limits_kg.iter_mut().zip(&self.limits) {
            *limit = kg[*sample];
        }
        let sums = Sums {
            effort: total(&effort),
            cross: dot(&effort, &self.x),
            square: dot(&effort, &effort),
            profile: dot(&effort, &self.profile),
            mean_kg: kg.iter().sum::<f64>() / kg.len() as f64,
            goal_kg: kg[self.goal],
            limits_kg,
            added_kg: shares.map(|share| share.0),
            taken_kg: shares.map(|share| share.1),
        };
        Laid { effort, kg, sums }
    }
}

/// Σ a over the range.
pub(super) fn total(a: &[f64]) -> f64 {
    range_mean(a) * steps(a)
}

/// Σ a·b over the range.
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let products: Vec<f64> = a.iter().zip(b).map(|(a, b)| a * b).collect();
    total(&products)
}

/// How many steps of the range lie between the samples.
pub(super) fn steps(samples: &[f64]) -> f64 {
    samples.len().saturating_sub(1).max(1) as f64
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
