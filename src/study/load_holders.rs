//! The muscles that hold a lift at the joint of which most is asked, over the whole range.
//!
//! In: a study of any lift. Out: [`LoadHolders`]: layers whose sum is the moment of all muscles at the joint.

use super::asked_torques::asked_torques_nm;
use super::limited_stretch::limits_at;
use super::muscle_layers::{muscle_layers_at, sample_of_peak};
use super::muscles::MusclePart;
use super::question::Study;

/// Who holds the heaviest load of each place at one joint.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadHolders {
    /// The joint's coordinate.
    pub joint: usize,
    /// The sample at which the lift is weakest.
    pub weakest: usize,
    /// The strongest muscles, and the rest as one.
    pub layers: Vec<MusclePart>,
    /// Moment of all muscles that lift, N·m, one a sample.
    pub total_nm: Vec<f64>,
    /// What load and limbs ask of the joint, N·m, one a sample.
    pub asked_nm: Vec<f64>,
    /// Whether the joint limits, one a sample: elsewhere its muscles may share their moment otherwise, and the programme
    /// takes the sharing with the least summed activation.
    pub limits: Vec<bool>,
}

impl LoadHolders {
    /// The joint of which most is asked where the lift is weakest, among those that limit there.
    #[must_use]
    pub fn of(study: &Study) -> Self {
        let weakness: Vec<f64> = study.capacity.values().iter().map(|value| -value).collect();
        let weakest = sample_of_peak(&weakness);
        let asked: Vec<f64> = asked_torques_nm(study, None, weakest);
        let limits = |joint: usize| limits_at(study, joint)[weakest];
        let none_limits = !(0..asked.len()).any(limits);
        let sizes =
            asked
                .iter()
                .enumerate()
                .map(|(joint, moment)| match none_limits || limits(joint) {
                    true => moment.abs(),
                    false => 0.0,
                });
        let joint = sample_of_peak(&sizes.collect::<Vec<f64>>());
        let layers = muscle_layers_at(study, joint);
        let samples = 0..study.range.poses.len();
        let sum = |at: usize| layers.iter().map(|layer| layer.torque_nm[at]).sum();
        let held = study.capacity.held.iter();
        let lifting = held
            .map(|held| held.muscle_torques_nm[joint])
            .sum::<f64>()
            .signum();
        Self {
            joint,
            weakest,
            total_nm: samples.clone().map(sum).collect(),
            asked_nm: samples
                .map(|at| lifting * asked_torques_nm(study, None, at)[joint])
                .collect(),
            limits: limits_at(study, joint),
            layers,
        }
    }

    /// Stretches of the range in which the joint does not limit, from half a sample before to half a sample behind them.
    #[must_use]
    pub fn undetermined(&self) -> Vec<[f64; 2]> {
        let last = (self.limits.len().max(2) - 1) as f64;
        let mut from = 0;
        let mut stretches = Vec::new();
        for run in self.limits.chunk_by(|a, b| a == b) {
            let to = from + run.len() - 1;
            if !run[0] {
                let ends = [from as f64 - 0.5, to as f64 + 0.5];
                stretches.push(ends.map(|end| (end / last).clamp(0.0, 1.0)));
            }
            from = to + 1;
        }
        stretches
    }
}
