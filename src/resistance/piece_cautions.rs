//! What to watch for in the pieces of a setup: overstretched, slack, worn or uneven ones.
//!
//! In: a setup put up for a movement and the movement's load points. Out: [`PieceCaution`]s. Limits: a loop band's
//! safe stretch (`band.rs`); 5 % between left and right (assumed: more than plates differ).

use super::item::{HungBand, HungChain, Item};
use super::motion::Motion;
use super::setup::Setup;
use super::weight::{HangingSide, Weight};
use crate::movement::{Carrier, Helping, LoadPoint};
use crate::units::{Force, Length, STANDARD_GRAVITY_M_S2};

/// Difference between left and right that is worth a word, as a share of the larger.
const UNEVEN_SHARE: f64 = 0.05;

/// What to watch for in one piece, or in all of them together.
#[derive(Debug, Clone, PartialEq)]
pub enum PieceCaution {
    /// A band is stretched beyond what is safe.
    Overstretched {
        /// What the band is called.
        band: String,
        /// Largest length over rest length.
        stretch: f64,
        /// Length at which it is just taut as it hangs.
        taut: Length,
        /// Largest length over rest length that is safe.
        safe: f64,
    },
    /// A band adds nothing anywhere.
    Slack {
        /// What the band is called.
        band: String,
    },
    /// A band adds nothing over part of the range.
    PartlySlack {
        /// What the band is called.
        band: String,
    },
    /// A band is worn.
    Worn {
        /// What the band is called.
        band: String,
        /// Share of its pull that is lost.
        lost: f64,
    },
    /// A chain never leaves the floor.
    ChainLies {
        /// What the chain is called.
        chain: String,
    },
    /// A chain hangs free over the whole range.
    ChainHangsFree {
        /// What the chain is called.
        chain: String,
    },
    /// Left and right differ.
    Uneven {
        /// The largest difference.
        difference: Force,
        /// That difference over the larger side.
        share: f64,
    },
    /// The load moves by itself the way it is to be moved.
    Helps(Helping),
    /// Help takes more than the whole load.
    Overhelped {
        /// Share of the range over which it does.
        range: f64,
    },
}

impl Setup {
    /// What to watch for over these load points, in a fixed order.
    ///
    /// Expects a setup that was put up with [`Setup::rigged_over`].
    #[must_use]
    pub fn piece_cautions(&self, points: &[LoadPoint], carrier: &Carrier) -> Vec<PieceCaution> {
        let mut cautions = Vec::new();
        for item in &self.items {
            match item {
                Item::Band(hung) => cautions.extend(self.watch_band(hung, points)),
                Item::Chain(hung) => cautions.extend(watch_chain(hung, points)),
                _ => {}
            }
        }
        cautions.extend(self.uneven(points, carrier));
        cautions.extend(self.overhelped(points, carrier));
        cautions.extend(self.helps(points, carrier).map(PieceCaution::Helps));
        cautions
    }

    fn watch_band(&self, hung: &HungBand, points: &[LoadPoint]) -> Vec<PieceCaution> {
        let band = || hung.band.name().to_owned();
        let stretch_at = |point| hung.stretch(point, self.start_x_m());
        let stretches: Vec<f64> = points.iter().map(stretch_at).collect();
        let most = stretches.iter().copied().fold(0.0, f64::max);
        let mut cautions = Vec::new();
        if most > hung.band.safe_stretch() {
            cautions.push(PieceCaution::Overstretched {
                band: band(),
                stretch: most,
                taut: Length::from_m(hung.band.taut_length_m(hung.hang)),
                safe: hung.band.safe_stretch(),
            });
        }
        if most <= 1.0 && !points.is_empty() {
            cautions.push(PieceCaution::Slack { band: band() });
        } else if stretches.iter().any(|stretch| *stretch <= 1.0) {
            cautions.push(PieceCaution::PartlySlack { band: band() });
        }
        if hung.band.worn() > 0.0 {
            cautions.push(PieceCaution::Worn {
                band: band(),
                lost: hung.band.worn(),
            });
        }
        cautions
    }

    /// Whether left and right differ: plates, bands and chains at their heaviest place.
    fn uneven(&self, points: &[LoadPoint], carrier: &Carrier) -> Option<PieceCaution> {
        let mut worst = (0.0, 0.0);
        for point in points {
            let sides = self.sides_n(point, carrier);
            if difference(sides) > difference(worst) {
                worst = sides;
            }
        }
        let larger = worst.0.max(worst.1);
        let is_uneven = difference(worst) > UNEVEN_SHARE * larger && larger > 0.0;
        is_uneven.then(|| PieceCaution::Uneven {
            difference: Force::from_n(difference(worst)),
            share: difference(worst) / larger,
        })
    }

    /// What hangs on the left and on the right at a load point, N.
    fn sides_n(&self, point: &LoadPoint, carrier: &Carrier) -> (f64, f64) {
        let mut sides = (0.0, 0.0);
        for item in &self.items {
            let (both_n, side) = self.size_and_side(item, point, carrier);
            match side {
                HangingSide::Left => sides.0 += both_n,
                HangingSide::Right => sides.1 += both_n,
                HangingSide::Both | HangingSide::Middle => {
                    sides.0 += both_n / 2.0;
                    sides.1 += both_n / 2.0;
                }
            }
        }
        sides
    }

    fn size_and_side(
        &self,
        item: &Item,
        point: &LoadPoint,
        carrier: &Carrier,
    ) -> (f64, HangingSide) {
        match item {
            Item::Band(hung) => (hung.pull_n(point, self.start_x_m(), carrier), hung.side),
            Item::Chain(hung) => (
                hung.mass_kg(point, carrier) * STANDARD_GRAVITY_M_S2,
                hung.side,
            ),
            Item::Weight(Weight::OnePlate { mass, side }) => (mass.weight().as_n(), *side),
            Item::Weight(weight) => (
                weight.mass_kg(carrier) * STANDARD_GRAVITY_M_S2,
                HangingSide::Both,
            ),
            _ => (0.0, HangingSide::Both),
        }
    }

    /// Where a free load helps the lift; a sled and a lever are guided, and a body has no other way.
    fn helps(&self, points: &[LoadPoint], carrier: &Carrier) -> Option<Helping> {
        if !matches!(carrier, Carrier::Bar | Carrier::Dumbbell) {
            return None;
        }
        Helping::of(points.iter().map(|point| {
            let load = self.force_at(point, carrier, Motion::Hold);
            // Help that outweighs the load is told as such.
            let sign = load.along_n.signum();
            sign * (load.force.x_n * point.dx_ds_m + load.force.z_n * point.dz_ds_m)
        }))
    }

    fn overhelped(&self, points: &[LoadPoint], carrier: &Carrier) -> Option<PieceCaution> {
        let carried = |point: &LoadPoint| self.force_at(point, carrier, Motion::Hold).along_n;
        let lifted_off = points.iter().filter(|point| carried(point) < 0.0).count();
        (lifted_off > 0).then(|| PieceCaution::Overhelped {
            range: lifted_off as f64 / points.len() as f64,
        })
    }
}

fn difference(sides: (f64, f64)) -> f64 {
    f64::abs(sides.0 - sides.1)
}

fn watch_chain(hung: &HungChain, points: &[LoadPoint]) -> Option<PieceCaution> {
    let off_floor = |point: &LoadPoint| {
        hung.chain
            .hanging_at(point.z_m - hung.floor.as_m(), hung.hang)
    };
    let is_picked_up = |point| off_floor(point).picked_up_kg_m > 0.0;
    if points.is_empty() || points.iter().any(is_picked_up) {
        return None;
    }
    let chain = hung.chain.name().to_owned();
    let whole_kg = hung.chain.mass().as_kg();
    Some(
        if points
            .iter()
            .all(|point| off_floor(point).mass_kg < whole_kg)
        {
            PieceCaution::ChainLies { chain }
        } else {
            PieceCaution::ChainHangsFree { chain }
        },
    )
}
