//! The muscles that hold a lift at the joint that gives way first, over the whole range.
//!
//! In: a study of any lift. Out: [`LoadHolders`]: layers whose sum is the moment of all muscles at the joint.

use super::asked_torques::asked_torques_nm;
use super::muscle_layers::{layers_at, sample_of_peak};
use super::muscles::{MusclePart, muscle_torque_nm};
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
    /// The joint that gives way first where the lift is weakest.
    #[must_use]
    pub fn of(study: &Study) -> Self {
        let weakness: Vec<f64> = study.capacity.values().iter().map(|value| -value).collect();
        let weakest = sample_of_peak(&weakness);
        let joint = study.capacity.held[weakest].limiting;
        let layers = layers_at(study, joint);
        let samples = 0..study.range.poses.len();
        let sum = |at: usize| layers.iter().map(|layer| layer.torque_nm[at]).sum();
        let way = muscle_torque_nm(study, joint)[weakest].signum();
        let lifting = study.capacity.held[weakest].muscle_torques_nm[joint].signum() * way;
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
