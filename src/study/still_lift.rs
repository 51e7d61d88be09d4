//! A lift held still by people of many strengths: poses, muscles and load once, capacities for each.
//!
//! In: lifter and movement, a setup; then other strengths. Out: capacities and the hardest place.

use super::lift_strength::LiftStrength;
use super::solve::{load_points, load_torque_nm};
use crate::capacity::{Acting, StrengthRange};
use crate::demand::DemandCurve;
use crate::error::{Error, LiftFault, Result};
use crate::library::Model;
use crate::movement::{Measure, Range, trace};
use crate::overlay::effort;
use crate::resistance::Setup;

/// The lift.
#[derive(Debug, Clone)]
pub(super) struct StillLift {
    movement: String,
    range: Range,
    strengths: StrengthRange,
    /// Names of the acting muscles.
    muscles: Vec<String>,
    /// What the setup asks for at every pose, N or N·m.
    demanded: Vec<f64>,
}

impl StillLift {
    /// A lift with a setup whose pull does not lean.
    ///
    /// **Fails** where the lift cannot be traced.
    pub fn of(model: &Model, setup: &Setup, samples: usize) -> Result<Self> {
        let range = trace(&model.movement, &model.lifter, samples)?;
        let acting = Acting::of(&model.lifter, &range.poses)?;
        let muscles = acting.muscles.iter().map(|muscle| muscle.name.clone());
        Ok(Self {
            movement: model.movement_name.clone(),
            strengths: StrengthRange::of(&acting, &range),
            muscles: muscles.collect(),
            demanded: demanded(&range, setup),
            range,
        })
    }

    /// Capacity at every pose of the same body with other strengths, N or N·m.
    ///
    /// **Fails** where no activation keeps a pose.
    pub fn capacities(&self, strength: &LiftStrength) -> Result<Vec<f64>> {
        let muscles = self.muscles.iter();
        let factors: Vec<f64> = muscles.map(|name| strength.of(name)).collect();
        self.strengths.capacities(&self.range, &factors)
    }

    /// The greatest effort with such strengths under the setup, and where that is, 0 to 1.
    ///
    /// **Fails** where a pose cannot be kept, or holds nothing but itself.
    pub fn hardest(&self, strength: &LiftStrength) -> Result<(f64, f64)> {
        let capacities = self.capacities(strength)?;
        let mut hardest = (0.0, 0.0);
        let last = (capacities.len() - 1).max(1) as f64;
        for (index, (demanded, capacity)) in self.demanded.iter().zip(&capacities).enumerate() {
            let effort = effort(*demanded, *capacity);
            if effort > hardest.0 {
                hardest = (effort, index as f64 / last);
            }
        }
        if hardest.0.is_finite() {
            return Ok(hardest);
        }
        Err(Error::no_answer(LiftFault::NotHeld {
            range: hardest.1,
            movement: self.movement.clone(),
        }))
    }
}

/// What a setup asks for on the way up at every pose, in the unit of the capacity.
fn demanded(range: &Range, setup: &Setup) -> Vec<f64> {
    let demand = DemandCurve::over(setup, &load_points(range), &range.carrier);
    let each = demand.samples.iter().zip(&range.poses);
    each.map(|(sample, pose)| match range.measure {
        Measure::Force => sample.up.along_n,
        Measure::Torque => load_torque_nm(pose, sample.up.force, range),
    })
    .collect()
}
