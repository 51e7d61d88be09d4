//! Why a changed value changed a curve: arms, fibre lengths, forces and levers at three places.
//!
//! In: the studies before and after. Out: [`Cause`]s with figures, and sentences made of them.

use super::Study;
use crate::capacity::{Held, plain_direction};
use crate::movement::Measure;
use crate::units::rounded;

/// What happened at one place of the range, and through what, at the joint that gives way first.
///
/// ```text
/// λ = (r̄·F + rest)/h      ln(λ′/λ) = ln(r̄′/r̄) + ln(F′/F) − ln(h′/h) + rest
/// ```
/// | symbol | meaning                                                              | unit |
/// | ------ | -------------------------------------------------------------------- | ---- |
/// | `λ`    | capacity                                                             | N, N·m |
/// | `F`    | summed force of the muscles that lift at the joint                   | N    |
/// | `r̄`    | arm at which that force makes their torque                           | m    |
/// | `h`    | lever of the outside forces: torque of load and reactions about the joint per unit of capacity (1 where capacity is a torque) | m |
/// | `rest` | limb weight, passive joint, antagonists                              | –    |
///
/// **Source.** Balance of torques at one joint.
#[derive(Debug, Clone, PartialEq)]
pub struct Cause {
    /// Where: "at the start", "at the end", or a place between.
    pub place: &'static str,
    /// Place of the range.
    pub range: f64,
    /// Capacity after over before, as a logarithm.
    pub capacity_log: f64,
    /// The part of it that longer or shorter moment arms make.
    pub arm_log: f64,
    /// The part that more or less muscle force makes.
    pub force_log: f64,
    /// The part that the lever of load and reactions makes.
    pub lever_log: f64,
    /// What is left: limb weight, passive joint, antagonists.
    pub rest_log: f64,
    /// Mean fibre length of those muscles before and after, over the optimal length.
    pub fibre_norm: [f64; 2],
    /// The joint that gives way first, before and after.
    pub joints: [&'static str; 2],
    /// Whether it is the same coordinate that gives way, so that the parts explain the whole.
    pub is_same_limit: bool,
}

/// A change smaller than this is not told: a quarter of a per cent.
const TOLD: f64 = 0.0025;

/// Parts of a change that are told.
const MOST_TERMS: usize = 4;
/// Parts that are told where room is short.
const MOST_SHORT: usize = 2;
/// A rest larger than this, and than twice the change, means that joints share the limit (assumed).
const SHARED: f64 = 0.04;

/// The causes at start, peak or hardest place, and end.
#[must_use]
pub fn causes(before: &Study, after: &Study) -> Vec<Cause> {
    places(before)
        .into_iter()
        .filter_map(|(place, range)| cause(before, after, place, range))
        .collect()
}

/// Start, the place between that matters most, end.
fn places(study: &Study) -> Vec<(&'static str, f64)> {
    let between = |range: f64| range > 0.1 && range < 0.9;
    let sticking = study
        .setups
        .first()
        .and_then(|s| s.sticking)
        .map(|s| s.point_range);
    let mut places = vec![("at the start", 0.0)];
    if between(study.class.peak_range) {
        places.push(("at the peak", study.class.peak_range));
    } else if let Some(range) = sticking.filter(|range| between(*range)) {
        places.push(("at the hardest place", range));
    } else {
        places.push(("in the middle", 0.5));
    }
    places.push(("at the end", 1.0));
    places
}

/// Torque, force and fibre length of the muscles that lift at a joint.
struct LiftingMuscles {
    torque_nm: f64,
    force_n: f64,
    fibre_norm: f64,
}

fn lifting(held: &Held, joint: usize) -> LiftingMuscles {
    let way = held.muscle_torques_nm[joint].signum();
    let mut sum = LiftingMuscles {
        torque_nm: 0.0,
        force_n: 0.0,
        fibre_norm: 0.0,
    };
    for (muscle, activation) in held.muscles.iter().zip(&held.activations) {
        let force_n = muscle.passive_n + activation * muscle.active_n;
        let torque_nm = way * muscle.arms_m[joint] * force_n;
        if torque_nm > 0.0 {
            sum.torque_nm += torque_nm;
            sum.force_n += force_n;
            // Weighed by torque, so that the length told is that of the muscles that matter.
            sum.fibre_norm += torque_nm * muscle.state.length_norm;
        }
    }
    sum.fibre_norm /= sum.torque_nm.max(1.0e-9);
    sum
}

/// Lever of load and reactions together at a joint, m; 1 where capacity is a torque.
fn lever(study: &Study, index: usize, joint: usize) -> f64 {
    if study.range.measure == Measure::Torque {
        return 1.0;
    }
    let (pose, held) = (&study.range.poses[index], &study.capacity.held[index]);
    let way = plain_direction(study.range.carrier);
    let column = pose.load_jacobian[joint];
    let load_nm =
        held.capacity / study.range.sides.count() * (column.x * way.x_n + column.z * way.z_n);
    let reactions = pose.reactions.iter().zip(&held.reactions);
    let reactions_nm: f64 = reactions.map(|(r, value)| r.column[joint] * value).sum();
    (load_nm + reactions_nm).abs() / held.capacity
}

fn cause(before: &Study, after: &Study, place: &'static str, range: f64) -> Option<Cause> {
    let index = |study: &Study| {
        let last = study.range.poses.len() - 1;
        (range * last as f64).round() as usize
    };
    let (old, new) = (
        &before.capacity.held[index(before)],
        &after.capacity.held[index(after)],
    );
    let joint = old.limiting;
    let (was, is) = (lifting(old, joint), lifting(new, joint));
    let capacity_log = log_ratio(old.capacity, new.capacity)?;
    let arm_log = log_ratio(was.torque_nm / was.force_n, is.torque_nm / is.force_n)?;
    let force_log = log_ratio(was.force_n, is.force_n)?;
    let lever_log = -log_ratio(
        lever(before, index(before), joint),
        lever(after, index(after), joint),
    )?;
    Some(Cause {
        place,
        range,
        capacity_log,
        arm_log,
        force_log,
        lever_log,
        rest_log: capacity_log - arm_log - force_log - lever_log,
        fibre_norm: [was.fibre_norm, is.fibre_norm],
        joints: [before.joint(joint), after.joint(new.limiting)],
        is_same_limit: joint == new.limiting,
    })
}

fn log_ratio(before: f64, after: f64) -> Option<f64> {
    let ratio = after / before;
    (ratio.is_finite() && ratio > 0.0).then(|| ratio.ln())
}

/// Whether fibres of two lengths are told apart: the figures shown must differ too.
fn differ(was: f64, is: f64) -> bool {
    (100.0 * was).round() != (100.0 * is).round()
}

/// A logarithm as a change in per cent: "+10 %".
fn change(log: f64) -> String {
    let percent = 100.0 * log.exp_m1();
    let decimals = if percent.abs() < 10.0 { 1 } else { 0 };
    let text = rounded(percent, decimals);
    let sign = if percent > 0.0 && text != "0" {
        "+"
    } else {
        ""
    };
    format!("{sign}{text} %").replace('-', "\u{2212}")
}

impl Cause {
    /// What happened here and why: "at the end −6 %: longer arms (+9 %), but shorter fibres (…)".
    #[must_use]
    pub fn in_words(&self) -> String {
        if self.capacity_log.abs() < TOLD {
            return match self.terms().len() {
                0 | 1 => format!("{} nothing changes", self.place),
                _ => format!(
                    "{} hardly anything changes: {}",
                    self.place,
                    self.joined(MOST_TERMS, true)
                ),
            };
        }
        let words = format!("{} {}", self.place, change(self.capacity_log));
        let told = self.joined(MOST_TERMS, true);
        if told.is_empty() {
            words
        } else {
            format!("{words}: {told}")
        }
    }

    /// The same without figures behind the terms: "at the end −6 % (longer arms, but shorter fibres)".
    #[must_use]
    pub fn in_short(&self) -> String {
        let words = format!("{} {}", self.place, change(self.capacity_log));
        let told = self.joined(MOST_SHORT, false);
        if told.is_empty() {
            words
        } else {
            format!("{words} ({told})")
        }
    }

    /// That another joint, or the same one in another plane, gives way first.
    fn other_limit(&self) -> String {
        let [was, is] = self.joints;
        match (self.is_same_limit, was == is) {
            (true, _) => String::new(),
            (false, true) => format!("the {is} gives way in another plane"),
            (false, false) => format!("the {is} gives way first instead of the {was}"),
        }
    }

    /// The terms that matter, the largest first, as logarithm, words and figures.
    fn terms(&self) -> Vec<(f64, String, String)> {
        // Where two joints share the limit, parts at one of them are large, cancel and explain nothing.
        let is_shared = self.rest_log.abs() > SHARED.max(2.0 * self.capacity_log.abs());
        if !self.is_same_limit || is_shared {
            return Vec::new();
        }
        let [was, is] = self.fibre_norm;
        let fibre = match differ(was, is) {
            true if is > was => "longer fibres",
            true => "shorter fibres",
            false => "",
        };
        let force = match (fibre, self.force_log > 0.0) {
            ("", true) => "more muscle force".to_owned(),
            ("", false) => "less muscle force".to_owned(),
            (fibre, true) => format!("{fibre} with more force"),
            (fibre, false) => format!("{fibre} with less force"),
        };
        let lengths = if fibre.is_empty() {
            change(self.force_log)
        } else {
            format!(
                "{}, {} instead of {} % of their optimal length",
                change(self.force_log),
                rounded(100.0 * is, 0),
                rounded(100.0 * was, 0)
            )
        };
        let either = |log: f64, up: &str, down: &str| {
            let words = if log > 0.0 { up } else { down };
            (log, words.to_owned(), change(log))
        };
        let mut terms = vec![
            either(self.arm_log, "longer moment arms", "shorter moment arms"),
            (self.force_log, force, lengths),
            either(
                self.lever_log,
                "a shorter lever of the load",
                "a longer lever of the load",
            ),
            either(
                self.rest_log,
                "less taken by the body's own weight",
                "more taken by the body's own weight",
            ),
        ];
        terms.sort_by(|a, b| b.0.abs().total_cmp(&a.0.abs()));
        let least = TOLD.max(0.15 * terms[0].0.abs());
        terms.retain(|term| term.0.abs() >= least);
        terms
    }

    /// Terms joined by "and", or by "but" where they work against the one before.
    fn joined(&self, most: usize, with_figures: bool) -> String {
        let mut words = self.other_limit();
        let mut last = 0.0;
        for (log, name, figures) in self.terms().into_iter().take(most) {
            if !words.is_empty() {
                words += if log * last < 0.0 { ", but " } else { " and " };
            }
            last = log;
            words += &name;
            if with_figures {
                words += &format!(" ({figures})");
            }
        }
        words
    }
}
