//! The joints that the fatigue model knows.
//!
//! In: nothing. Out: [`FatigueJoint`], a key of the published rates.

use serde::Deserialize;

/// The joints with published rates, and the stand-ins.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Deserialize)]
pub enum FatigueJoint {
    /// Ankle.
    Ankle,
    /// Knee.
    Knee,
    /// Hip: none was published.
    Hip,
    /// Trunk.
    Trunk,
    /// Shoulder.
    Shoulder,
    /// Elbow.
    Elbow,
    /// Grip of the hand.
    HandGrip,
    /// Any other: the published general values.
    General,
}
