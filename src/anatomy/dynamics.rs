//! How a lifter's muscles answer in time: activation, force after stretch, a careful end of the range.
//!
//! In: a record of `models/curves/`. Out: [`Dynamics`], the constants that `rep` moves a bar with.

use crate::source::Source;
use crate::units::Duration;
use serde::{Deserialize, Serialize};

/// Constants of a repetition in time, shared by all muscles of a lifter.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Dynamics {
    /// Time constant with which activation rises towards the drive of the nerves.
    pub activation_rise: Duration,
    /// Time constant with which it falls.
    pub activation_fall: Duration,
    /// Source of both.
    pub activation_source: Source,
    /// Time constant with which the nerves' own drive rises in a voluntary effort.
    pub drive_rise: Duration,
    /// Its source.
    pub drive_source: Source,
    /// Gain of force, as a share, per whole range of active lengthening (before it decays).
    pub enhancement: f64,
    /// Source of the gain.
    pub enhancement_source: Source,
    /// Time in which half of the gain is lost.
    pub enhancement_half_life: Duration,
    /// Source of that time.
    pub half_life_source: Source,
    /// Rate at which what is active tires, 1/s: share of the strength in use that is lost a second.
    pub tiring_per_s: f64,
    /// Its source.
    pub tiring_source: Source,
    /// Share of what letting go and the antagonists could slow a load with that a lifter plans to end a fast
    /// lift with.
    pub stop_share: f64,
    /// Its source.
    pub stop_source: Source,
}
