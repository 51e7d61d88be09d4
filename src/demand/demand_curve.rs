//! Demand over the range: what the load asks for on the way up and on the way down.
//!
//! In: a setup and the load points of a movement. Out: both curves, each sample with its parts, and the
//! figures that a coach asks for (load at bottom, middle, top; share of bands and chains).

use super::pattern::put_up;
use crate::movement::{Carrier, LoadPoint};
use crate::resistance::{LoadForce, Motion, Setup};

/// Demand at one place of the range, held on the way up and on the way down.
#[derive(Debug, Clone, PartialEq)]
pub struct DemandSample {
    /// Position along the concentric phase, 0 to 1.
    pub range: f64,
    /// Lifting (at the speed asked for; 0 is holding).
    pub up: LoadForce,
    /// Lowering.
    pub down: LoadForce,
    /// Share of the load that bands and chains make on the way up.
    pub accommodating_share: f64,
    /// Lowest and highest load when nominally equal bands differ, N.
    pub spread_n: (f64, f64),
}

/// Demand over the whole range.
#[derive(Debug, Clone, PartialEq)]
pub struct DemandCurve {
    /// The setup as it was hung.
    pub setup: Setup,
    /// One sample a load point.
    pub samples: Vec<DemandSample>,
}

impl DemandCurve {
    /// Demand of a setup over load points, for a slow repetition.
    #[must_use]
    pub fn over(setup: &Setup, points: &[LoadPoint], carrier: &Carrier) -> Self {
        Self::at_speed(setup, points, carrier, 0.0)
    }

    /// Demand of a setup over load points when both ways are done at this speed along the path.
    ///
    /// **Shape.** At rest the way up is [`Motion::Hold`]; the way down is a slow lowering, in which
    /// bands give back less than they took and friction helps.
    /// **Fails.** Never; an empty list gives an empty curve.
    #[must_use]
    pub fn at_speed(
        setup: &Setup,
        points: &[LoadPoint],
        carrier: &Carrier,
        speed_m_s: f64,
    ) -> Self {
        let setup = put_up(setup, points);
        let up = Motion::from_speed(speed_m_s.abs());
        let down = Motion::Lower {
            speed_m_s: speed_m_s.abs(),
        };
        let samples = points
            .iter()
            .map(|point| DemandSample {
                range: point.range,
                up: setup.force_at(point, carrier, up),
                down: setup.force_at(point, carrier, down),
                accommodating_share: setup.share_at(point, carrier, up),
                spread_n: setup.spread_at(point, carrier, up),
            })
            .collect();
        Self { setup, samples }
    }
}
