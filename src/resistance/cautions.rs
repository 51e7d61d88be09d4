//! What to watch for in a setup: overstretched, slack, worn or uneven pieces.
//!
//! In: a setup put up for a movement and the movement's load points. Out: sentences. Limits: a loop
//! band's safe stretch (`band.rs`); 5 % between left and right (assumed: more than plates differ).

use super::band::{Pull, SPREAD_OF_EQUAL_BANDS};
use super::item::{HungBand, HungChain, Item};
use super::setup::Setup;
use super::weight::{Side, Weight};
use crate::movement::{Carrier, LoadPoint};
use crate::resistance::Motion;
use crate::units::{Length, STANDARD_GRAVITY_M_S2, System, rounded};

/// Difference between left and right that is worth a sentence, as a share of the larger.
const UNEVEN_SHARE: f64 = 0.05;

impl Setup {
    /// Sentences about what to watch for over these load points, in a fixed order.
    ///
    /// Expects a setup that was put up with [`Setup::rigged_over`].
    #[must_use]
    pub fn cautions(&self, points: &[LoadPoint], carrier: &Carrier, units: System) -> Vec<String> {
        let mut cautions = Vec::new();
        for item in &self.items {
            match item {
                Item::Band(hung) => self.watch_band(hung, points, units, &mut cautions),
                Item::Chain(hung) => watch_chain(hung, points, &mut cautions),
                _ => {}
            }
        }
        cautions.extend(self.uneven(points, carrier));
        cautions.extend(self.overhelped(points, carrier));
        if self.items.iter().any(|item| matches!(item, Item::Band(_))) {
            cautions.push(
                "Look over every band before use and retire one with nicks, cracks or pale streaks; \
                 a new band is stiffer for its first pulls, so stretch it a few times before measuring."
                    .to_owned(),
            );
        }
        cautions
    }

    fn watch_band(
        &self,
        hung: &HungBand,
        points: &[LoadPoint],
        units: System,
        cautions: &mut Vec<String>,
    ) {
        let name = hung.band.name();
        let stretches: Vec<f64> = points
            .iter()
            .map(|p| hung.stretch(p, self.start_x_m()))
            .collect();
        let most = stretches.iter().copied().fold(0.0, f64::max);
        if most > hung.band.safe_stretch() {
            let rest = Length::from_m(hung.band.taut_length_m(hung.hang));
            cautions.push(format!(
                "{name} is stretched to {} times its rest length of {}: more than {} is not safe; use a longer or a wider band.",
                rounded(most, 2),
                units.short_length(rest),
                rounded(hung.band.safe_stretch(), 2)
            ));
        }
        if most <= 1.0 && !points.is_empty() {
            cautions.push(format!(
                "{name} stays slack over the whole range and adds nothing: double it, or move its anchor further away."
            ));
        } else if stretches.iter().any(|stretch| *stretch <= 1.0) {
            cautions.push(format!("{name} is slack over part of the range."));
        }
        if hung.band.worn() > 0.0 {
            cautions.push(format!(
                "{name} is worn and counted {} % weaker.",
                rounded(100.0 * hung.band.worn(), 0)
            ));
        }
        if matches!(hung.band.pull(), Pull::Dimensions { .. }) {
            cautions.push(format!(
                "{name} is computed from its dimensions: bands of one label differ by {}-{} %, so measure yours.",
                rounded(100.0 * SPREAD_OF_EQUAL_BANDS.0, 0),
                rounded(100.0 * SPREAD_OF_EQUAL_BANDS.1, 0)
            ));
        }
    }

    /// A sentence if left and right differ: plates, bands and chains at their heaviest place.
    fn uneven(&self, points: &[LoadPoint], carrier: &Carrier) -> Option<String> {
        let mut worst = (0.0, 0.0);
        for point in points {
            let mut sides = (0.0, 0.0);
            for item in &self.items {
                let (both_n, side) = self.size_and_side(item, point, carrier);
                match side {
                    Side::Left => sides.0 += both_n,
                    Side::Right => sides.1 += both_n,
                    Side::Both | Side::Middle => {
                        sides.0 += both_n / 2.0;
                        sides.1 += both_n / 2.0;
                    }
                }
            }
            if difference(sides) > difference(worst) {
                worst = sides;
            }
        }
        let larger = worst.0.max(worst.1);
        (difference(worst) > UNEVEN_SHARE * larger && larger > 0.0).then(|| {
            format!(
                "Left and right differ by up to {} N ({} %): hang the same on both sides.",
                rounded(difference(worst), 0),
                rounded(100.0 * difference(worst) / larger, 0)
            )
        })
    }

    fn size_and_side(&self, item: &Item, point: &LoadPoint, carrier: &Carrier) -> (f64, Side) {
        match item {
            Item::Band(hung) => {
                let one_n = hung
                    .band
                    .force_n(hung.distance_m(point, self.start_x_m()), hung.hang);
                (one_n * hung.side.pieces(hung.count, carrier), hung.side)
            }
            Item::Chain(hung) => (
                hung.mass_kg(point, carrier) * STANDARD_GRAVITY_M_S2,
                hung.side,
            ),
            Item::Weight(Weight::OnePlate { mass, side }) => (mass.weight().as_n(), *side),
            Item::Weight(weight) => (weight.mass_kg(carrier) * STANDARD_GRAVITY_M_S2, Side::Both),
            _ => (0.0, Side::Both),
        }
    }

    fn overhelped(&self, points: &[LoadPoint], carrier: &Carrier) -> Option<String> {
        let carried = |point: &LoadPoint| self.force_at(point, carrier, Motion::Hold).along_n;
        let lifted_off = points.iter().filter(|point| carried(point) < 0.0).count();
        (lifted_off > 0).then(|| {
            format!(
                "Help outweighs the load over {} % of the range: the load would rise by itself there.",
                rounded(100.0 * lifted_off as f64 / points.len() as f64, 0)
            )
        })
    }
}

fn difference(sides: (f64, f64)) -> f64 {
    f64::abs(sides.0 - sides.1)
}

fn watch_chain(hung: &HungChain, points: &[LoadPoint], cautions: &mut Vec<String>) {
    let name = hung.chain.name();
    let off_floor = |point: &LoadPoint| {
        hung.chain
            .hanging_at(point.z_m - hung.floor.as_m(), hung.hang)
    };
    let picked_up = points
        .iter()
        .any(|point| off_floor(point).picked_up_kg_m > 0.0);
    if points.is_empty() || picked_up {
        return;
    }
    let lies = points
        .iter()
        .all(|point| off_floor(point).mass_kg < hung.chain.mass().as_kg());
    cautions.push(if lies {
        format!("{name} lies on the floor over the whole range and adds nothing: shorten its leader.")
    } else {
        format!("{name} hangs free over the whole range and is plain weight: lengthen its leader, and it may swing.")
    });
}
