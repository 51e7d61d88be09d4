//! The muscles that hold a lift at the joint of which most is asked, over the whole range.
//!
//! In: a study of any lift. Out: [`LoadHolders`]: layers whose sum is the moment of all muscles at the joint.

use super::asked_torques::asked_torques_nm;
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
}

impl LoadHolders {
    /// The joint of which most is asked where the lift is weakest.
    #[must_use]
    pub fn of(study: &Study) -> Self {
        let weakness: Vec<f64> = study.capacity.values().iter().map(|value| -value).collect();
        let weakest = sample_of_peak(&weakness);
        let asked: Vec<f64> = asked_torques_nm(study, None, weakest);
        let sizes: Vec<f64> = asked.iter().map(|moment| moment.abs()).collect();
        let joint = sample_of_peak(&sizes);
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
            layers,
        }
    }
}
