//! What of a fibre's curves is used: the lengths that a muscle passes in a lift, and what speed costs.
//!
//! In: a lift of one joint, a lifter's fibre curves. Out: [`FibreUse`], [`SpeedCost`].

use super::muscles::muscle_parts;
use super::question::Study;
use crate::anatomy::ForceVelocity;

/// The lengths that the strongest muscle of a lift passes.
#[derive(Debug, Clone, PartialEq)]
pub struct FibreUse {
    /// The muscle.
    pub muscle: String,
    /// The lift's title.
    pub lift: String,
    /// The shortest, % of the optimal length.
    pub from_percent: f64,
    /// The longest, % of the optimal length.
    pub to_percent: f64,
}

impl FibreUse {
    /// The lengths of the strongest muscle at the first joint of a lift.
    #[must_use]
    pub fn of(study: &Study) -> Self {
        let strongest = &muscle_parts(study, 0)[0];
        let lengths = || strongest.fibre_norm.iter().copied();
        Self {
            muscle: strongest.name.clone(),
            lift: study.movement_title.clone(),
            from_percent: 100.0 * lengths().fold(f64::INFINITY, f64::min),
            to_percent: 100.0 * lengths().fold(0.0, f64::max),
        }
    }
}

/// The speed at which the fall of force is told, share of the fastest shortening: about that of a
/// brisk repetition (assumed, for the title only).
const TOLD_SPEED: f64 = 0.25;

/// Fastest lengthening that is shown, share of the fastest shortening.
const LENGTHENING: f64 = -0.5;

/// What speed costs a fibre in a person, and an isolated one.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpeedCost {
    /// The curve of a voluntary effort.
    pub voluntary: ForceVelocity,
    /// The curve of an isolated fibre.
    pub isolated: ForceVelocity,
    /// The speed that is told, share of the fastest shortening.
    pub speed: f64,
    /// Force left at that speed, isometric = 1.
    pub left: f64,
    /// Force of a voluntary effort in the fastest lengthening shown.
    pub voluntary_lengthening: f64,
    /// Force of an isolated fibre there.
    pub isolated_lengthening: f64,
}

impl SpeedCost {
    /// What speed costs on a curve.
    #[must_use]
    pub fn of(voluntary: ForceVelocity) -> Self {
        let isolated = ForceVelocity {
            voluntary_share: 1.0,
            ..voluntary
        };
        Self {
            voluntary,
            isolated,
            speed: TOLD_SPEED,
            left: voluntary.at(TOLD_SPEED),
            voluntary_lengthening: voluntary.at(LENGTHENING),
            isolated_lengthening: isolated.at(LENGTHENING),
        }
    }
}
