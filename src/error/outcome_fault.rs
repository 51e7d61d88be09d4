//! Why a repetition does not end as it was meant to.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use crate::units::{Angle, Length, Mass};

/// Why a repetition does not end as it was meant to.
#[derive(Debug, Clone, PartialEq)]
pub struct OutcomeFault {
    /// What happened instead.
    pub end: FailedEnd,
    /// The maximum with the same setup, if there is one.
    pub maximum: Option<Mass>,
}

/// What happened to a load that was not lifted.
#[derive(Debug, Clone, PartialEq)]
pub enum FailedEnd {
    /// It did not leave the start.
    StuckAtStart,
    /// It stopped on the way.
    Stops(StopPlace),
    /// It was thrown to the end, where it cannot be held.
    NotHeld(StopPlace),
    /// It got away in lowering.
    GetsAway(StopPlace),
    /// What helps outweighs it, so it went up by itself.
    Rises,
}

/// Where a load stopped.
#[derive(Debug, Clone, PartialEq)]
pub struct StopPlace {
    /// Way or angle.
    pub at: StopPosition,
    /// Where that is told from, such as "off the chest".
    pub away_from: String,
}

/// Way of the load, or angle of the joint that moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum StopPosition {
    /// Way of the load.
    Way(Length),
    /// Angle of the joint.
    Joint(Angle),
}
