//! Fibres that leave the lengths at which living muscle works: where a curve rests on the edge of its data.
//!
//! In: a [`Study`]. Out: [`FibreWarning`], one a muscle and stretch of the range.

use super::question::Study;
use crate::capacity::Held;

/// Lengths between which fibres are measured in living people, optimal lengths. Assumed: sarcomeres of living arms
/// and legs run from about 2 to 4 micrometres with an optimum near 2.7, and below half of the optimum the thick
/// filaments meet the ends of the sarcomere (Walker & Schrodt 1974, Gordon et al. 1966).
pub const LIVING_LENGTHS: (f64, f64) = (0.5, 1.6);

/// Share of what the active muscles could make about a joint from which a muscle matters (assumed: less than a
/// tenth does not change how a curve reads).
const SHARE_THAT_MATTERS: f64 = 0.1;

/// A stretch of the range in which a muscle that matters has fibres of a length that no living one is known at.
#[derive(Debug, Clone, PartialEq)]
pub struct FibreWarning {
    /// The muscle.
    pub muscle: String,
    /// First and last place of the stretch.
    pub range: (f64, f64),
    /// The length farthest out, optimal lengths.
    pub length_norm: f64,
    /// The muscle's greatest share in the stretch.
    pub share: f64,
}

/// The warnings of a study, the muscles in order of their names.
///
/// ```text
/// share_i = max over joints j of  a_i·F0_i·|r_ij| / Σ_k a_k·F0_k·|r_kj|      k, i: pull the way that is asked at j
/// ```
/// | symbol | meaning                                      | unit |
/// | ------ | -------------------------------------------- | ---- |
/// | `a`    | activation that holds the capacity           | –    |
/// | `F0`   | peak force, whatever is left of it at this length | N |
/// | `r`    | moment arm                                   | m    |
///
/// **Shape.** Peak forces, not those at this length: a fibre too short to make force would else never be told.
/// **Source.** Definition of the model. **Fails.** Never.
#[must_use]
pub fn fibre_warnings(study: &Study) -> Vec<FibreWarning> {
    let curve = &study.capacity;
    let (shortest, longest) = LIVING_LENGTHS;
    let last = (curve.held.len().max(2) - 1) as f64;
    let mut found: Vec<FibreWarning> = Vec::new();
    for (index, name) in curve.muscles.iter().enumerate() {
        let mut open: Option<FibreWarning> = None;
        for (sample, held) in curve.held.iter().enumerate() {
            let length_norm = held.muscles[index].state.length_norm;
            let is_out = !(shortest..=longest).contains(&length_norm);
            // The share is dear, and most fibres are never out.
            let share = match is_out {
                true => share_of(held, &curve.peak_forces_n, index),
                false => 0.0,
            };
            if share < SHARE_THAT_MATTERS {
                found.extend(open.take());
                continue;
            }
            let at = sample as f64 / last;
            let warning = open.get_or_insert_with(|| FibreWarning {
                muscle: name.clone(),
                range: (at, at),
                length_norm,
                share,
            });
            warning.range.1 = at;
            warning.share = warning.share.max(share);
            if outside(length_norm) > outside(warning.length_norm) {
                warning.length_norm = length_norm;
            }
        }
        found.extend(open);
    }
    found
}

/// The stretches of the range in which fibres that matter leave the living lengths, in order; those that overlap or lie at
/// neighbouring samples are taken together.
#[must_use]
pub fn doubted_stretches(study: &Study) -> Vec<[f64; 2]> {
    let step = sample_step(study);
    let mut all: Vec<[f64; 2]> = fibre_warnings(study)
        .iter()
        .map(|warning| [warning.range.0, warning.range.1])
        .collect();
    all.sort_by(|a, b| a[0].total_cmp(&b[0]));
    let mut joined: Vec<[f64; 2]> = Vec::new();
    for [from, to] in all {
        match joined.last_mut() {
            Some(last) if from <= last[1] + 1.5 * step => last[1] = last[1].max(to),
            _ => joined.push([from, to]),
        }
    }
    joined
}

/// The same as they are drawn: half a sample longer at both ends, so that one place alone is seen too.
#[must_use]
pub fn hollow_stretches(study: &Study) -> Vec<[f64; 2]> {
    as_drawn(&doubted_stretches(study), study.capacity.held.len())
}

/// The stretches in which the lengths of one line, one a sample, leave the living ones: a figure of lengths is as sure as
/// the lengths that it draws.
#[must_use]
pub fn beyond_living(lengths_norm: &[f64]) -> Vec<[f64; 2]> {
    let (shortest, longest) = LIVING_LENGTHS;
    let last = (lengths_norm.len().max(2) - 1) as f64;
    // As figures tell lengths: in whole percent.
    let shown = |length: f64| (100.0 * length).round() / 100.0;
    let is_out = |at: &usize| !(shortest..=longest).contains(&shown(lengths_norm[*at]));
    let mut stretches: Vec<[f64; 2]> = Vec::new();
    for at in (0..lengths_norm.len()).filter(is_out) {
        let place = at as f64 / last;
        match stretches.last_mut() {
            Some(open) if place <= open[1] + 1.5 / last => open[1] = place,
            _ => stretches.push([place, place]),
        }
    }
    stretches
}

/// Stretches as they are drawn, half a sample longer at both ends.
#[must_use]
pub fn as_drawn(stretches: &[[f64; 2]], samples: usize) -> Vec<[f64; 2]> {
    let half = 0.5 / (samples.max(2) - 1) as f64;
    let longer = |[from, to]: &[f64; 2]| [(from - half).max(0.0), (to + half).min(1.0)];
    stretches.iter().map(longer).collect()
}

/// Distance of neighbouring samples, share of the range.
fn sample_step(study: &Study) -> f64 {
    1.0 / (study.capacity.held.len().max(2) - 1) as f64
}

/// How far outside the living lengths, as a ratio.
fn outside(length_norm: f64) -> f64 {
    let (shortest, longest) = LIVING_LENGTHS;
    (length_norm / longest).max(shortest / length_norm.max(1.0e-9))
}

/// The share of one muscle in what the active ones could make, at the joint where it is greatest.
fn share_of(held: &Held, peak_forces_n: &[f64], index: usize) -> f64 {
    let joints = held.muscle_torques_nm.len();
    let pull = |muscle: usize, joint: usize| {
        let sense = held.muscle_torques_nm[joint].signum();
        let arm_m = (held.muscles[muscle].arms_m[joint] * sense).max(0.0);
        held.activations[muscle] * peak_forces_n[muscle] * arm_m
    };
    (0..joints)
        .map(|joint| {
            let all: f64 = (0..peak_forces_n.len()).map(|k| pull(k, joint)).sum();
            if all > 0.0 {
                pull(index, joint) / all
            } else {
                0.0
            }
        })
        .fold(0.0, f64::max)
}
