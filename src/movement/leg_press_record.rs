//! A leg press as a movement file gives it: knee angles at both ends, the seat, friction.
//!
//! In: the field `path` of a movement's file. Out: [`LegPressRecord`], as data.

use crate::source::Source;
use crate::units::{Angle, Length};
use serde::{Deserialize, Serialize};

/// A leg press as a movement file gives it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LegPressRecord {
    /// Knee flexion at the start.
    pub start_knee: Angle,
    /// Knee flexion at the end: a few degrees short of straight.
    pub end_knee: Angle,
    /// Angle between the rails and the line from hip to shoulder on the back pad.
    pub back: Angle,
    /// Flexion of the lower back on the pad, which turns the pelvis under.
    pub lumbar: Angle,
    /// Height of the hip joint above the floor.
    pub seat_height: Length,
    /// Friction between sole and plate.
    pub friction: f64,
    /// Where these come from.
    pub source: Source,
}
