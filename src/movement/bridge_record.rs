//! A bridge as a movement file gives it: the bench, how far the hips sink, friction.
//!
//! In: the field `path` of a movement's file. Out: [`BridgeRecord`], as data.

use crate::source::Source;
use crate::units::{Angle, Length};
use serde::{Deserialize, Serialize};

/// A bridge as a movement file gives it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BridgeRecord {
    /// Height above the floor of the trunk's joint line where the bench bears it.
    pub pivot_height: Length,
    /// Where the bench bears the trunk: share of its length from the hip.
    pub pivot: f64,
    /// Height of the hip joint above the floor at the start.
    pub start_hip_height: Length,
    /// Hip flexion at the end: a few degrees short of straight.
    pub end_hip: Angle,
    /// Flexion of the lower back, kept all the way.
    pub lumbar: Angle,
    /// Height of the bar's middle above the hip joint.
    pub bar_above_hip: Length,
    /// Friction between back and bench.
    pub bench_friction: f64,
    /// Friction between feet and floor.
    pub floor_friction: f64,
    /// Where these come from.
    pub source: Source,
}
