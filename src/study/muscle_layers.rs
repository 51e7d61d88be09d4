//! Muscles of one joint taken together: layers of torque, the farthest of them, force times arm.
//!
//! In: a lift of one joint. Out: few enough parts for a figure, and where each is greatest.

use super::muscles::{MusclePart, muscle_parts};
use super::question::Study;

/// Most muscles that stay readable beside each other, assumed.
const MOST_MUSCLES: usize = 5;
/// Layers of a stack; what is left over is taken together.
const MOST_LAYERS: usize = 3;

/// The muscles that make most of the torque.
#[must_use]
pub fn strongest_muscles(study: &Study) -> Vec<MusclePart> {
    let mut parts = muscle_parts(study, 0);
    parts.truncate(MOST_MUSCLES);
    parts
}

/// The strongest muscles of a lift of one joint, and the rest as one.
#[must_use]
pub fn muscle_layers(study: &Study) -> Vec<MusclePart> {
    muscle_layers_at(study, 0)
}

/// The same at any moving joint.
#[must_use]
pub fn muscle_layers_at(study: &Study, joint: usize) -> Vec<MusclePart> {
    let mut parts = muscle_parts(study, joint);
    if parts.len() > MOST_LAYERS + 1 {
        let rest = parts.split_off(MOST_LAYERS);
        parts.push(together(&rest));
    }
    parts
}

/// Sums over muscles, sample by sample.
fn sum(parts: &[MusclePart], values: fn(&MusclePart) -> &Vec<f64>) -> Vec<f64> {
    (0..values(&parts[0]).len())
        .map(|index| parts.iter().map(|part| values(part)[index]).sum())
        .collect()
}

fn together(parts: &[MusclePart]) -> MusclePart {
    let force_n = sum(parts, |part| &part.force_n);
    let torque_nm = sum(parts, |part| &part.torque_nm);
    let lengths = sum(parts, |part| &part.fibre_norm);
    let many = parts.len() as f64;
    let arms = torque_nm
        .iter()
        .zip(&force_n)
        .map(|(t, f)| t / f.max(1.0e-9));
    MusclePart {
        name: String::new(),
        heads: 1,
        others: parts.len(),
        arm_m: arms.collect(),
        fibre_norm: lengths.iter().map(|length| length / many).collect(),
        force_n,
        torque_nm,
    }
}

/// The sample of the greatest value, the first of equals.
#[must_use]
pub fn sample_of_peak(values: &[f64]) -> usize {
    (0..values.len())
        .max_by(|a, b| values[*a].total_cmp(&values[*b]).then(b.cmp(a)))
        .unwrap_or(0)
}

/// The muscle that goes farthest in some value, and where.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MuscleExtreme<'a> {
    /// The muscle.
    pub part: &'a MusclePart,
    /// The sample.
    pub sample: usize,
    /// The value.
    pub value: f64,
}

impl<'a> MuscleExtreme<'a> {
    /// The greatest value over all muscles and samples.
    #[must_use]
    pub fn greatest(parts: &'a [MusclePart], values: fn(&MusclePart) -> &Vec<f64>) -> Self {
        Self::farthest(parts, values, |value, best| value > best)
    }

    /// The least value over all muscles and samples.
    #[must_use]
    pub fn least(parts: &'a [MusclePart], values: fn(&MusclePart) -> &Vec<f64>) -> Self {
        Self::farthest(parts, values, |value, best| value < best)
    }

    fn farthest(
        parts: &'a [MusclePart],
        values: fn(&MusclePart) -> &Vec<f64>,
        is_farther: fn(f64, f64) -> bool,
    ) -> Self {
        let mut best = Self {
            part: &parts[0],
            sample: 0,
            value: values(&parts[0])[0],
        };
        for part in parts {
            for (sample, value) in values(part).iter().copied().enumerate() {
                if is_farther(value, best.value) {
                    best = Self {
                        part,
                        sample,
                        value,
                    };
                }
            }
        }
        best
    }
}

/// Force and torque of all muscles of a joint, and the arm at which the one makes the other.
#[derive(Debug, Clone, PartialEq)]
pub struct ForceAndArm {
    /// Summed force, N, one a sample.
    pub force_n: Vec<f64>,
    /// Mean moment arm, m.
    pub arm_m: Vec<f64>,
    /// Summed torque, N·m.
    pub torque_nm: Vec<f64>,
}

impl ForceAndArm {
    /// All muscles that work with the movement at its first joint.
    #[must_use]
    pub fn of(study: &Study) -> Self {
        let parts = muscle_parts(study, 0);
        let force_n = sum(&parts, |part| &part.force_n);
        let torque_nm = sum(&parts, |part| &part.torque_nm);
        Self {
            arm_m: torque_nm.iter().zip(&force_n).map(|(t, f)| t / f).collect(),
            force_n,
            torque_nm,
        }
    }

    /// Samples at which force, arm and torque are greatest.
    #[must_use]
    pub fn peaks(&self) -> [usize; 3] {
        [&self.force_n, &self.arm_m, &self.torque_nm].map(|values| sample_of_peak(values))
    }
}
