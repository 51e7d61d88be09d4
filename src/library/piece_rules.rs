//! What is unlikely about bands, chains and gyms; what is wrong with them they say when they are read.
//!
//! In: a band, a chain, a gym. Out: complaints, all of them doubts.

use super::complaint::{Complaint, Rules};
use super::records::stem;
use crate::bounds::{Bound, bounds};
use crate::error::{BrokenRule, Doubt};
use crate::resistance::{Band, BandPull, Chain};
use crate::setups::GymFile;

/// A misfit above this share of the largest reading is told, % (assumed: a scale and a tape leave a tenth open).
const MISFIT_PERCENT: f64 = 10.0;

/// A band: its pull, how thick it is, and how well its readings go with the law of rubber.
pub(super) fn band(band: &Band) -> Vec<Complaint> {
    let mut rules = Rules::default();
    if let BandPull::Dimensions {
        width_m,
        thickness_m,
        ..
    } = band.pull()
        && thickness_m > width_m
    {
        rules.add("pull.thickness", BrokenRule::Doubt(Doubt::ThickerThanWide));
    }
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

/// A band or a chain is called as its file, by which the library knows it.
pub(super) fn of_its_file(file: &str, name: &str) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let stem = stem(file);
    if stem != name {
        let file = stem.to_owned();
        rules.add("name", BrokenRule::Doubt(Doubt::OtherName { file }));
    }
    rules.complaints
}

/// A gym: pieces that cannot be paired, and gear of a size that one does not meet.
pub(super) fn gym(gym: &GymFile) -> Vec<Complaint> {
    let mut rules = Rules::default();
    if gym.title.trim().is_empty() {
        rules.add("title", BrokenRule::Empty);
    }
    // Single plates hang from a belt.
    let plates = gym.plates.iter().map(|plates| plates.count);
    if !gym.belt {
        paired("plates", plates, &mut rules);
    }
    paired(
        "bands",
        gym.bands.iter().map(|bands| bands.count),
        &mut rules,
    );
    paired(
        "chains",
        gym.chains.iter().map(|chains| chains.count),
        &mut rules,
    );
    let bounds = bounds();
    let mut unlikely = |path: String, value: f64, bound: &Bound| {
        if let Some(range) = bound.unlikely(value) {
            rules.add(path, BrokenRule::Doubt(Doubt::Unlikely(range)));
        }
    };
    for (index, bar) in gym.bars.iter().enumerate() {
        unlikely(
            format!("bars.{index}.mass"),
            bar.mass.as_kg(),
            &bounds.bar_mass,
        );
    }
    if let Some(collar) = gym.collars {
        unlikely("collars".to_owned(), collar.as_kg(), &bounds.collar_mass);
    }
    if let Some(arms) = gym.safety_arms {
        let bound = &bounds.safety_arm_height;
        unlikely("safety_arms.lowest".to_owned(), arms.lowest.as_m(), bound);
        unlikely("safety_arms.highest".to_owned(), arms.highest.as_m(), bound);
    }
    for (name, anchor) in &gym.anchors {
        let path = format!("anchors.{name}.height");
        unlikely(path, anchor.height().as_m(), &bounds.anchor_height);
    }
    for (index, chains) in gym.chains.iter().enumerate() {
        for (place, leader) in chains.leaders.iter().enumerate() {
            let path = format!("chains.{index}.leaders.{place}");
            unlikely(path, leader.as_m(), &bounds.leader_length);
        }
    }
    rules.complaints
}

/// An odd piece of a list is of no use on a bar.
fn paired(list: &str, counts: impl Iterator<Item = u32>, rules: &mut Rules) {
    for (index, count) in counts.enumerate() {
        if count % 2 == 1 {
            let lone = BrokenRule::Doubt(Doubt::Lone { count });
            rules.add(format!("{list}.{index}.count"), lone);
        }
    }
}
