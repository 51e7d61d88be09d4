//! One invented lifter of many around one: body and strengths drawn as people differ.
//!
//! In: a lifter, how strongly people differ, seed and number. Out: a lifter who depends on nothing else.

use crate::anatomy::{Lifter, SegmentName};
use crate::person::Scatter;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use std::collections::BTreeMap;

/// One lifter of a group, and the factor on strength.
///
/// ```text
/// height × e^(σ_h·z)   length × height·e^(σ_l·z)   mass × height^b·e^(σ_m·z)
/// fibre, arm × length  passive torque × mass      force × mass/length·e^(σ_s·z)·e^(σ_g·z)
/// ```
/// `z` standard normal, drawn anew for each quantity; `σ`, `b` are those of [`Scatter`]. **Source.** The scaling of a
/// lifter's file (see [`crate::anatomy`]).
#[must_use]
pub fn invented(lifter: &Lifter, scatter: &Scatter, seed: u64, number: usize) -> (Lifter, f64) {
    let mut draw = Draws::new(seed, number);
    let mut one = lifter.clone();
    let height = draw.factor(scatter.height);
    let mass = height.powf(scatter.mass_by_height) * draw.factor(scatter.mass);
    let strength = draw.factor(scatter.strength);
    let lengths: BTreeMap<SegmentName, f64> = one
        .segments
        .keys()
        .map(|name| (*name, height * draw.factor(scatter.segment)))
        .collect();
    scale_body(&mut one, height, mass, &lengths);
    let mut groups: BTreeMap<String, f64> = BTreeMap::new();
    for muscle in one.muscles.values_mut() {
        let group = *groups
            .entry(muscle.group.clone())
            .or_insert_with(|| draw.factor(scatter.group));
        // Volume grows with mass: a longer muscle of the same mass is thinner.
        let size = lengths[&muscle.along];
        muscle.peak_force = muscle.peak_force * (mass * strength * group / size);
        muscle.optimal_fibre_length = muscle.optimal_fibre_length * size;
        for arm in muscle.moment_arm.values_mut() {
            arm.scale *= size;
        }
        if let Some(line) = &mut muscle.shoulder {
            line.scale *= size;
        }
    }
    (one, strength)
}

/// Height, lengths, masses and passive torques of another size.
fn scale_body(one: &mut Lifter, height: f64, mass: f64, lengths: &BTreeMap<SegmentName, f64>) {
    one.height = one.height * height;
    one.body_mass = one.body_mass * mass;
    for (name, segment) in &mut one.segments {
        segment.length = segment.length * lengths[name];
        segment.mass = segment.mass * mass;
    }
    let build = &mut one.build;
    for length in [
        &mut build.biacromial_breadth,
        &mut build.shoulder_breadth,
        &mut build.chest_height,
        &mut build.hip_breadth,
        &mut build.hip_to_lumbar,
        &mut build.ankle_height,
        &mut build.heel_to_ankle,
        &mut build.ankle_to_ball,
    ] {
        *length = *length * height;
    }
    for joint in one.joints.values_mut() {
        joint.low_torque = joint.low_torque * mass;
        joint.high_torque = joint.high_torque * mass;
    }
}

/// A stream of standard normal numbers.
struct Draws(ChaCha8Rng);

impl Draws {
    fn new(seed: u64, number: usize) -> Self {
        let mut stream = ChaCha8Rng::seed_from_u64(seed);
        stream.set_stream(number as u64);
        Self(stream)
    }

    /// e^(σ·z); `z` by Box and Muller 1958, cut at three standard deviations.
    fn factor(&mut self, deviation: f64) -> f64 {
        let radius = (-2.0 * (1.0 - self.0.random::<f64>()).max(1.0e-300).ln()).sqrt();
        let z = radius * (std::f64::consts::TAU * self.0.random::<f64>()).cos();
        (deviation * z.clamp(-3.0, 3.0)).exp()
    }
}
