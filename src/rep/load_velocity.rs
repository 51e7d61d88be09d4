//! Mean velocity over load: from light loads to the maximum, with a line through it.
//!
//! In: a model, a setup, its maximum. Out: [`LoadVelocity`].

use super::one_rep_max::{OneRepMax, load_at_share, with_load};
use super::rep_model::RepModel;
use super::rep_options::RepOptions;
use crate::error::Result;
use crate::numeric::{RegressionLine, linear_regression};
use crate::resistance::Setup;
use crate::units::Mass;
use rayon::prelude::*;

/// One load of the profile.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadPace {
    /// Share of the maximum, 1 = all of it.
    pub share: f64,
    /// The load.
    pub load: Mass,
    /// Way over time of the lift, m/s (or rad/s).
    pub mean_velocity: f64,
    /// The same over the propulsive part.
    pub mean_propulsive_velocity: f64,
}

/// Mean velocity over load.
#[derive(Debug, Clone, PartialEq)]
pub struct LoadVelocity {
    /// The maximum that shares refer to.
    pub one_rm: OneRepMax,
    /// One row a load, light to heavy; loads that are not lifted are left out, and shares that the
    /// lifter's own body alone is more than.
    pub rows: Vec<LoadPace>,
    /// Line of the share over the mean velocity, where two rows at least are there.
    pub line: Option<RegressionLine>,
}

impl RepModel {
    /// Lifts these shares of a maximum, each with full effort.
    ///
    /// **Fails** as [`RepModel::run`].
    pub fn load_velocity(
        &self,
        template: &Setup,
        one_rm: OneRepMax,
        shares: &[f64],
        options: &RepOptions,
    ) -> Result<LoadVelocity> {
        let rows: Vec<Option<LoadPace>> = shares
            .par_iter()
            .map(|&share| {
                let Some(load) = load_at_share(template, one_rm, share) else {
                    return Ok(None);
                };
                let trace = self.run(&with_load(template, load), options)?;
                let lifted = trace.lift.filter(|_| trace.is_lifted());
                Ok(lifted.map(|figures| LoadPace {
                    share,
                    load,
                    mean_velocity: figures.mean_velocity,
                    mean_propulsive_velocity: figures.mean_propulsive_velocity,
                }))
            })
            .collect::<Result<_>>()?;
        let rows: Vec<LoadPace> = rows.into_iter().flatten().collect();
        let points: Vec<(f64, f64)> = rows
            .iter()
            .map(|row| (row.mean_velocity, row.share))
            .collect();
        let line = linear_regression(&points).ok();
        Ok(LoadVelocity { one_rm, rows, line })
    }
}
