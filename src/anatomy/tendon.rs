//! The tendon in series with a muscle's fibres: rigid, or compliant where a muscle asks for it.

use crate::source::Source;
use crate::units::Length;
use serde::{Deserialize, Serialize};

/// How a muscle's tendon behaves.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
pub enum Tendon {
    /// Keeps its length whatever it bears.
    #[default]
    Rigid,
    /// Stretches with the force it bears.
    Compliant {
        /// Length at which it begins to bear force.
        slack_length: Length,
        /// Strain under the muscle's peak isometric force.
        strain_at_peak: f64,
        /// Where both come from.
        source: Source,
    },
}

impl Tendon {
    /// Strain under a share of the muscle's peak force: that of [`tendon_strain`], 0 where the tendon keeps its length.
    #[must_use]
    pub fn strain_under(&self, force: f64) -> f64 {
        match self {
            Self::Rigid => 0.0,
            Self::Compliant { strain_at_peak, .. } => tendon_strain(force, *strain_at_peak),
        }
    }
}

/// Thelen 2003: force share at the end of the toe.
pub const TOE_FORCE: f64 = 0.33;
/// Thelen 2003: shape of the toe.
pub const TOE_SHAPE: f64 = 3.0;
/// Thelen 2003: end of the toe over the strain at peak force.
pub const TOE_END: f64 = 0.609;
/// Thelen 2003: slope of the straight part times the strain at peak force.
pub const TENDON_SLOPE: f64 = 1.712;

/// Force of a tendon over the muscle's peak force at a strain.
///
/// ```text
/// toe     f = 0.33·(exp(3·e/e_toe) − 1)/(exp(3) − 1)     0 ≤ e ≤ e_toe,  e_toe = 0.609·e0
/// linear  f = (1.712/e0)·(e − e_toe) + 0.33              e > e_toe
/// ```
/// | symbol | meaning                         | unit | range |
/// | ------ | ------------------------------- | ---- | ----- |
/// | `e`    | strain, (length − slack)/slack  | –    | any   |
/// | `e0`   | strain at f = 1                 | –    | > 0   |
///
/// **Shape.** 0 when slack, exponential toe, then straight through f(e0) = 1 (to 0.2 %).
/// **Source.** Thelen 2003, J. Biomech. Eng. 125:70-77 (from memory). **Fails.** Never.
#[must_use]
// The published form, which tests hold the inverse to.
#[allow(dead_code)]
pub fn tendon_force(strain: f64, strain_at_peak: f64) -> f64 {
    let toe = TOE_END * strain_at_peak;
    if strain <= 0.0 {
        0.0
    } else if strain <= toe {
        TOE_FORCE * ((TOE_SHAPE * strain / toe).exp() - 1.0) / (TOE_SHAPE.exp() - 1.0)
    } else {
        TENDON_SLOPE / strain_at_peak * (strain - toe) + TOE_FORCE
    }
}

/// Strain at which a tendon bears a share of the muscle's peak force: the inverse of [`tendon_force`].
///
/// ```text
/// toe     e = (e_toe/3)·ln(1 + f·(exp(3) − 1)/0.33)     0 ≤ f ≤ 0.33
/// linear  e = e_toe + (f − 0.33)·e0/1.712               f > 0.33
/// ```
/// **Shape.** 0 without force, rising. **Source.** As [`tendon_force`]. **Fails.** Never.
#[must_use]
pub fn tendon_strain(force: f64, strain_at_peak: f64) -> f64 {
    let toe = TOE_END * strain_at_peak;
    if force <= 0.0 {
        0.0
    } else if force <= TOE_FORCE {
        toe / TOE_SHAPE * (force * (TOE_SHAPE.exp() - 1.0) / TOE_FORCE).ln_1p()
    } else {
        toe + (force - TOE_FORCE) * strain_at_peak / TENDON_SLOPE
    }
}
