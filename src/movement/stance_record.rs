//! A stance as a movement file gives it: where the bar is, how the ankle bends, the last pose.
//!
//! In: the field `path` of a movement's file. Out: [`StanceRecord`], as data.

use super::leg_in_space::Feet;
use crate::source::Source;
use crate::units::{Angle, Length};
use serde::{Deserialize, Serialize};

/// A stance as a movement file gives it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StanceRecord {
    /// Where the bar is on the body.
    pub bar: BarPlace,
    /// Key poses of the ankle (the shank's lean from upright as seen from the side): place in the range,
    /// and the share of its way that is still to go.
    pub ankle_course: Vec<(f64, f64)>,
    /// Lean of the shank at the end of the range.
    pub end_ankle: Angle,
    /// Knee flexion at the end of the range: a few degrees short of straight.
    pub end_knee: Angle,
    /// Flexion of the lower back at the start, from standing; it straightens evenly over the range.
    pub lumbar: Angle,
    /// Flexion of the lower back at the end.
    pub end_lumbar: Angle,
    /// Place of the bar along the foot, from heel (0) to toe (1).
    pub bar_over: f64,
    /// Where the key poses come from.
    pub source: Source,
}

/// Where the bar is on the body, and what that says about the lowest pose.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum BarPlace {
    /// On the back; technique `bar_position`, `depth` and `knee_travel`.
    OnBack {
        /// High on the back.
        high: BackPlace,
        /// Low on the back.
        low: BackPlace,
        /// Lean of the shank from upright over knee flexion in the lowest pose; of feet that point
        /// forward, dorsiflexion over knee flexion.
        ankle_per_knee: f64,
        /// Where the feet stand.
        feet: Feet,
    },
    /// In the hands of straight arms; technique `stance`.
    InHands {
        /// Height of the bar's middle above the floor at the start.
        start_height: Length,
        /// What fingers and shoulder blades add to the arm.
        reach: Length,
        /// How far the shoulders are in front of the bar at the start: lean of the arms from plumb.
        start_arms: Angle,
        /// Key poses of the arms: place in the range, and lean as a share of that at the start.
        arms_course: Vec<(f64, f64)>,
        /// The hands outside the legs.
        conventional: Box<LiftOff>,
        /// The hands between the legs.
        sumo: Box<LiftOff>,
    },
}

/// How a style of lifting from the floor begins.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LiftOff {
    /// Where the feet stand.
    pub feet: Feet,
    /// Lean of the shank from upright as seen from the side.
    pub start_ankle: Angle,
    /// Where the lean comes from.
    pub source: Source,
}

/// A place on the back, in shares of the trunk's length (hip joint to shoulder joint).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BackPlace {
    /// Distance from the hip along the trunk.
    pub along: f64,
    /// Distance behind the line from hip to shoulder.
    pub behind: f64,
}
