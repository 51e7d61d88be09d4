//! What is lowered, held and lifted over the range of a lift, beside the maximum and a load beyond it.
//!
//! In: a question. Out: [`ThreeCapacities`].

use super::question::{Question, Study};
use super::rep_study::maximum;
use super::solve::study;
use crate::capacity::Pace;
use crate::error::Result;
use crate::rep::RepOptions;
use crate::resistance::Setup;
use crate::units::{Mass, STANDARD_GRAVITY_M_S2};

/// Speed of lowering and lifting, m/s: about that of the bar in a maximal bench press (assumed).
pub const SLOW_M_S: f64 = 0.15;
/// A load beyond the maximum, as a share of it: within what is planned for overloaded lowering (assumed).
pub const BEYOND: f64 = 1.1;

/// Three strength curves of one lifter and lift.
#[derive(Debug, Clone, PartialEq)]
pub struct ThreeCapacities {
    /// Lowering slowly.
    pub lowered: Study,
    /// Held still.
    pub held: Study,
    /// Lifting slowly.
    pub lifted: Study,
    /// The heaviest plain load that is lifted from start to end.
    pub one_rm: Mass,
}

impl ThreeCapacities {
    /// The three curves of a lift that is measured in force.
    ///
    /// **Fails** if a curve cannot be computed or nothing is lifted.
    pub fn of(question: &Question<'_>) -> Result<Self> {
        let at = |pace| {
            study(
                &Question {
                    pace,
                    ..question.clone()
                },
                &[],
            )
        };
        let (one_rm, _) = maximum(
            question,
            &Setup::default(),
            &RepOptions::usual_for(question.movement),
        )?;
        Ok(Self {
            lowered: at(Pace::Linear(-SLOW_M_S))?,
            held: at(Pace::Isometric)?,
            lifted: at(Pace::Linear(SLOW_M_S))?,
            one_rm: one_rm.load,
        })
    }

    /// Weight of the maximum, N.
    #[must_use]
    pub fn one_rm_n(&self) -> f64 {
        self.one_rm.as_kg() * STANDARD_GRAVITY_M_S2
    }

    /// Weight of the load beyond it, N.
    #[must_use]
    pub fn beyond_n(&self) -> f64 {
        BEYOND * self.one_rm_n()
    }

    /// Least capacity of a curve, N.
    #[must_use]
    pub fn least_n(study: &Study) -> f64 {
        let values = study.capacity.values();
        values.into_iter().fold(f64::INFINITY, f64::min)
    }
}
