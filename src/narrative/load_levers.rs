//! The load's moment arm about the joint that limits: why a curve climbs, and what holds the body in a valley.
//!
//! In: a study. Out: where one joint limits while the load's lever about it shrinks; the sentences of the body's weight.

use super::doubt_words::LESS_SURE_HERE;
use super::fibre_words::is_doubted;
use super::limit_words::gives_way;
use super::prose::percent;
use super::quantities::rounded;
use super::shown_units::ShownUnits;
use crate::movement::Measure;
use crate::study::{FreeBody, FreeJoint, Study};
use crate::units::System;

/// Part of the growth (of its logarithm) that a lever explains where it is called the most of it.
const MOSTLY: f64 = 0.5;

/// The joint that limits, with the load's lever about it, at a sample under all that is held.
fn joint_at(study: &Study, row: usize, sample: usize) -> FreeJoint {
    FreeBody::of(study, None, sample).joints[row]
}

/// A lever, as shown.
fn shown(lever_m: f64, units: System) -> String {
    rounded(units.length_unit().of(lever_m), 1)
}

/// Lever of the load about the joint that limits, over the longest stretch in which one joint does.
pub(crate) struct ShrinkingLever {
    /// The joint.
    pub(crate) joint: &'static str,
    /// Ends of the stretch, share of the range.
    ends: [f64; 2],
    /// The lever there, m.
    levers_m: [f64; 2],
    /// Whether the ground's or the plate's push is in it.
    with_push: bool,
}

impl ShrinkingLever {
    /// The lever that explains most of the growth of what is held; none where it does not, or where nothing grows.
    pub(crate) fn of(study: &Study) -> Option<Self> {
        if study.range.measure != Measure::Force {
            return None;
        }
        let held = &study.capacity.held;
        let (mut from, mut longest) = (0, [0, 0]);
        for at in 0..held.len() {
            if held[at].limiting != held[from].limiting {
                from = at;
            }
            if at - from > longest[1] - longest[0] {
                longest = [from, at];
            }
        }
        let row = held[longest[0]].limiting;
        let levers_m = longest.map(|at| joint_at(study, row, at).lever_m);
        let gained = (held[longest[1]].capacity / held[longest[0]].capacity).ln();
        let shrunk = (levers_m[0] / levers_m[1]).ln();
        let last = (held.len() - 1) as f64;
        let pushes = |at: &usize| !study.range.poses[*at].reactions.is_empty();
        (gained > 0.0 && shrunk > MOSTLY * gained).then(|| Self {
            with_push: longest.iter().any(pushes),
            joint: study.joint(row),
            ends: longest.map(|at| at as f64 / last),
            levers_m,
        })
    }

    /// What it is the lever of.
    pub(crate) fn of_what(&self) -> &'static str {
        match self.with_push {
            true => "lever of load and push",
            false => "load's moment arm there",
        }
    }

    /// Which joint limits longest, and how its lever shrinks.
    pub(crate) fn sentence(&self, units: System) -> String {
        format!(
            " The {} limits longest: the {} shrinks, {} of the way.",
            self.joint,
            self.of_what(),
            self.in_words(units)
        )
    }

    /// "26.8 to 9.7 cm from 5 % to 100 %".
    pub(crate) fn in_words(&self, units: System) -> String {
        let [long, short] = self.levers_m.map(|lever| shown(lever, units));
        let [from, to] = self.ends.map(percent);
        let unit = units.length_unit().symbol;
        format!("{long} to {short} {unit} from {from} to {to}")
    }
}

/// The sample of the weakest place between two stronger ones.
fn valley(study: &Study) -> usize {
    let last = study.range.poses.len() - 1;
    (study.class.trough_range * last as f64).round() as usize
}

/// A load as on the axis.
fn load(study: &Study, newtons: f64, units: System) -> String {
    let unit = units.load_unit(study.range.measure);
    format!("{} {}", rounded(unit.of(newtons), 0), unit.symbol)
}

/// What is held in the valley beside the body's weight, below the title.
pub(crate) fn held_in_valley(study: &Study, units: System) -> String {
    let at = valley(study);
    format!(
        "; in the valley{} {} is held, body weight is {}",
        match is_doubted(study, study.class.trough_range) {
            true => LESS_SURE_HERE,
            false => "",
        },
        load(study, study.capacity.held[at].capacity, units),
        load(study, study.setups[0].values[at], units)
    )
}

/// The first sample from which on something holds to the end; nothing where it does not hold at the end.
fn from_then_on(last: usize, is_so: impl Fn(usize) -> bool) -> Option<usize> {
    (0..=last).rev().take_while(|at| is_so(*at)).last()
}

/// How the load's lever about the joint that limits in the valley shrinks to the end; nothing where it does not, or turns the joint
/// the other way with as much.
pub(crate) fn shrinks_behind_valley(study: &Study, units: System) -> Option<String> {
    let last = study.range.poses.len() - 1;
    let at = valley(study);
    let row = study.capacity.held[at].limiting;
    let levers_m = [at, last].map(|sample| joint_at(study, row, sample).lever_m);
    (levers_m[1] < levers_m[0]).then(|| {
        let [long, short] = levers_m.map(|lever| shown(lever, units));
        let unit = units.length_unit().symbol;
        let joint = study.joint(row);
        format!(
            "On the rise the load's moment arm about the {joint} shrinks from {long} to {short} {unit}."
        )
    })
}

/// What the body's weight is beside the curve, and the load's lever at the joint that limits in the valley.
pub(crate) fn body_beside(study: &Study, units: System) -> String {
    let last = study.range.poses.len() - 1;
    let at = valley(study);
    let held = &study.capacity.held;
    let row = held[at].limiting;
    let range = |sample: usize| percent(sample as f64 / last as f64);
    let unit = units.length_unit().symbol;
    let lever = |sample: usize| {
        format!(
            "{} {unit}",
            shown(joint_at(study, row, sample).lever_m, units)
        )
    };
    let pulls_up = |sample: usize| {
        let joint = joint_at(study, row, sample);
        joint.by_flexors == (joint.load_nm > 0.0)
    };
    let values = &study.setups[0].values;
    let mut beyond = (0..=last).filter(|at| values[*at] > held[*at].capacity);
    let weight = load(study, values[at], units);
    let in_valley = load(study, held[at].capacity, units);
    let first = beyond.next();
    let beside = match (first, beyond.next_back().or(first)) {
        (Some(from), Some(to)) => format!(
            "The body weighs {weight}, more than is held from {} to {} of the range; in the valley that is {in_valley}.",
            range(from),
            range(to)
        ),
        _ => format!(
            "The body weighs {weight}, less than the {in_valley} that are held in the valley."
        ),
    };
    let side = from_then_on(last, |sample| pulls_up(sample) != pulls_up(at));
    let side = side.map_or_else(String::new, |from| {
        format!(", on the other side of the joint from {} on", range(from))
    });
    // Of a joint's directions now one limits, now another.
    let end = study.joint(held[last].limiting);
    let other = from_then_on(last, |sample| {
        end != study.joint(row) && study.joint(held[sample].limiting) == end
    });
    let other = other.map_or_else(String::new, |from| {
        format!("; from {} on the {} limits most", range(from), end)
    });
    format!(
        " {beside} There {}; the load's moment arm about the {} is {} in the valley and {} at the end{side}{other}.",
        gives_way(study, at),
        study.joint(row),
        lever(at),
        lever(last)
    )
}
