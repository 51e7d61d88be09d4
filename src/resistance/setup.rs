//! The complete load: every item together, at one place of the range.
//!
//! In: items. Out: the force that the load exerts on the lifter, the mass that moves with it, and
//! what each item contributes. Forces are of both sides together; in a movement with a dumb-bell in
//! each hand they are those of one hand.

use super::band::Hang;
use super::directions::{Direction, along_n, cosine, plus, unit};
use super::item::{Item, Situation};
use super::motion::Motion;
use super::weight::{Felt, Weight};
use crate::movement::{Carrier, LoadPoint, PlaneForce};
use crate::units::Mass;

/// A complete load.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Setup {
    /// What the setup is called; may be empty.
    pub name: String,
    /// Its items, in the order in which they are told.
    pub items: Vec<Item>,
    start_x_m: Option<f64>,
}

/// What a setup exerts at one place of the range.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct LoadForce {
    /// Force of the load on the lifter.
    pub force: PlaneForce,
    /// Its size along its own direction, N; negative where help outweighs the load.
    pub along_n: f64,
    /// Mass that is sped up along the path, kg.
    pub moving_mass_kg: f64,
    /// What each item contributes along the load's direction, N, negative where it helps; the sum is `along_n`.
    pub parts_n: Vec<f64>,
}

impl Setup {
    /// A setup of these items.
    #[must_use]
    pub fn new(name: impl Into<String>, items: Vec<Item>) -> Self {
        Self {
            name: name.into(),
            items,
            start_x_m: None,
        }
    }

    /// Plain weight and nothing else.
    #[must_use]
    pub fn plain(load: Mass) -> Self {
        Self::new("", vec![Item::Weight(Weight::Load(load))])
    }

    /// The same setup put up for a movement: anchors stand still, each at its offset from where the
    /// load starts, and bands whose hang was left open are hung single or doubled.
    ///
    /// A band is doubled if it would be slack at the start otherwise and stays within its safe
    /// stretch over the whole path when doubled. Without this call anchors ride along with the load.
    #[must_use]
    pub fn rigged_over(&self, points: &[LoadPoint]) -> Self {
        let mut rigged = self.clone();
        let Some(start) = points.first() else {
            return rigged;
        };
        rigged.start_x_m = Some(start.x_m);
        for item in &mut rigged.items {
            if let Item::Band(hung) = item
                && hung.hang == Hang::Auto
            {
                let distances = points
                    .iter()
                    .map(|point| hung.distance_m(point, rigged.start_x_m));
                let farthest_m = distances.fold(0.0, f64::max);
                let start_m = hung.distance_m(start, rigged.start_x_m);
                let slack = hung.band.stretch(start_m, Hang::Single) < 1.0;
                let safe = hung.band.stretch(farthest_m, Hang::Doubled) <= hung.band.safe_stretch();
                hung.hang = if slack && safe {
                    Hang::Doubled
                } else {
                    Hang::Single
                };
            }
        }
        rigged
    }

    /// The same setup with this plain load in the place of bar, plates and other plain weights; the
    /// lifter's own mass stays.
    #[must_use]
    pub fn with_plain_load(&self, load: Mass) -> Self {
        let mut changed = self.clone();
        changed.items.retain(|item| {
            matches!(item, Item::Weight(Weight::BodyMass(_))) || !matches!(item, Item::Weight(_))
        });
        changed.items.insert(0, Item::Weight(Weight::Load(load)));
        changed
    }

    /// Horizontal place of the load where the setup was put up, m.
    #[must_use]
    pub fn start_x_m(&self) -> Option<f64> {
        self.start_x_m
    }

    /// Force on the lifter and moving mass, without the parts: nothing is allocated.
    ///
    /// ```text
    /// F = Σ F_item,   help last, because a spotter's share is one of the sum of the rest
    /// ```
    /// **Shape.** A sum of implements exerts the sum of their forces (a spotter apart).
    /// **Source.** Statics. **Fails.** Never; `check_for` says beforehand what makes no sense.
    #[must_use]
    pub fn total_at(&self, point: &LoadPoint, carrier: &Carrier, motion: Motion) -> Felt {
        let at = Situation::new(&self.items, point, carrier, motion, self.start_x_m);
        let mut sum = Felt::default();
        for help in [false, true] {
            for item in self.items.iter().filter(|item| item.is_help() == help) {
                sum = added(sum, item.felt(&at, sum.force));
            }
        }
        sum
    }

    /// What the setup exerts at a load point, with what each item contributes.
    ///
    /// Held still, bands pull as in lifting and friction resists as in lifting ([`Motion::Hold`]).
    #[must_use]
    pub fn force_at(&self, point: &LoadPoint, carrier: &Carrier, motion: Motion) -> LoadForce {
        let at = Situation::new(&self.items, point, carrier, motion, self.start_x_m);
        let mut sum = Felt::default();
        let mut felt = vec![Felt::default(); self.items.len()];
        for help in [false, true] {
            for (index, item) in self.items.iter().enumerate() {
                if item.is_help() == help {
                    felt[index] = item.felt(&at, sum.force);
                    sum = added(sum, felt[index]);
                }
            }
        }
        let direction = self.direction_of(sum.force, &at, &felt);
        LoadForce {
            force: sum.force,
            along_n: along_n(sum.force, direction),
            moving_mass_kg: sum.moving_mass_kg,
            parts_n: felt
                .iter()
                .map(|felt| along_n(felt.force, direction))
                .collect(),
        }
    }

    /// The load's own direction: along the total, pointing the way its weights pull, or against the
    /// path where there are none, so that a load turned round by help counts negative.
    fn direction_of(&self, total: PlaneForce, at: &Situation, felt: &[Felt]) -> Direction {
        let mut weights = PlaneForce::default();
        for (item, felt) in self.items.iter().zip(felt) {
            if matches!(
                item,
                Item::Weight(_)
                    | Item::Chain(_)
                    | Item::Sled(_)
                    | Item::Lever(_)
                    | Item::EccentricOnly(_)
            ) {
                weights = plus(weights, felt.force);
            }
        }
        let nominal = unit(weights.x_n, weights.z_n).unwrap_or((-at.lifting.0, -at.lifting.1));
        match unit(total.x_n, total.z_n) {
            None => nominal,
            Some(direction) if cosine(direction, nominal) < 0.0 => (-direction.0, -direction.1),
            Some(direction) => direction,
        }
    }

    /// Share of the load that bands and chains make here, 0 to 1; 0 where nothing is loaded.
    #[must_use]
    pub fn share_at(&self, point: &LoadPoint, carrier: &Carrier, motion: Motion) -> f64 {
        let load = self.force_at(point, carrier, motion);
        let accommodating: f64 = self
            .items
            .iter()
            .zip(&load.parts_n)
            .filter(|(item, _)| item.is_accommodating())
            .map(|(_, part_n)| part_n)
            .sum();
        if load.along_n > 0.0 {
            accommodating / load.along_n
        } else {
            0.0
        }
    }

    /// Mass of its plain weights: both sides together, one hand for dumb-bells.
    #[must_use]
    pub fn plain_mass(&self, carrier: &Carrier) -> Mass {
        let masses_kg = self.items.iter().map(|item| match item {
            Item::Weight(weight) => weight.mass_kg(carrier),
            Item::Sled(sled) => sled.mass().as_kg(),
            _ => 0.0,
        });
        Mass::from_kg(masses_kg.sum())
    }

    /// Lowest and highest size of the load when nominally equal bands differ as measured, N.
    #[must_use]
    pub fn spread_at(&self, point: &LoadPoint, carrier: &Carrier, motion: Motion) -> (f64, f64) {
        let load = self.force_at(point, carrier, motion);
        let (mut low_n, mut high_n) = (load.along_n, load.along_n);
        for (item, part_n) in self.items.iter().zip(&load.parts_n) {
            if let Item::Band(hung) = item {
                let (low, high) = hung.band.spread_n(part_n.abs());
                low_n -= part_n.abs() - low;
                high_n += high - part_n.abs();
            }
        }
        (low_n, high_n)
    }
}

fn added(a: Felt, b: Felt) -> Felt {
    Felt {
        force: plus(a.force, b.force),
        moving_mass_kg: a.moving_mass_kg + b.moving_mass_kg,
    }
}
