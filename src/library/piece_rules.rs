//! What is unlikely about bands and chains; what is wrong with them they say when they are read.
//!
//! In: a band or a chain. Out: complaints, all of them doubts.

use super::complaint::{Complaint, Rules};
use crate::bounds::bounds;
use crate::error::{BrokenRule, Doubt};
use crate::resistance::{Band, BandPull, Chain};

/// A misfit above this share of the largest reading is told, % (assumed: a scale and a tape leave a tenth open).
const MISFIT_PERCENT: f64 = 10.0;

/// A band: its pull, and how well its readings go with the law of rubber.
pub(super) fn band(band: &Band) -> Vec<Complaint> {
    let mut rules = Rules::default();
    rules.within("pull", band.force_at_safe_stretch_n(), &bounds().band_pull);
    if let BandPull::Readings(fitted) = band.pull() {
        let readings = fitted.readings().iter();
        let largest_n = readings
            .map(|reading| reading.force.as_n())
            .fold(0.0, f64::max);
        let percent = 100.0 * fitted.misfit().as_n() / largest_n;
        if percent > MISFIT_PERCENT {
            rules.add("pull", BrokenRule::Doubt(Doubt::Misfit { percent }));
        }
    }
    rules.complaints
}

/// A chain: its mass a metre.
pub(super) fn chain(chain: &Chain) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let density_kg_m = chain.mass().as_kg() / chain.length().as_m();
    rules.within("links", density_kg_m, &bounds().chain_density);
    rules.complaints
}
