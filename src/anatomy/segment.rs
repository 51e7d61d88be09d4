//! Body segments: length, mass, centre of mass and moment of inertia.
//!
//! In: a published table (shares of body mass and of segment length). Out: [`Segment`] in SI.

use super::sex::Sex;
use crate::source::Source;
use crate::units::{Length, Mass};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The segments that the movements use.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SegmentName {
    /// Vertex to mid-gonion.
    Head,
    /// Mid-shoulder to mid-hip, without the head.
    Trunk,
    /// Shoulder joint centre to elbow joint centre.
    UpperArm,
    /// Elbow joint centre to wrist joint centre.
    Forearm,
    /// Wrist joint centre to the third knuckle.
    Hand,
    /// Hip joint centre to knee joint centre.
    Thigh,
    /// Knee joint centre to ankle joint centre.
    Shank,
    /// Heel to the tip of the longest toe.
    Foot,
}

impl SegmentName {
    /// Every segment.
    pub const ALL: [Self; 8] = [
        Self::Head,
        Self::Trunk,
        Self::UpperArm,
        Self::Forearm,
        Self::Hand,
        Self::Thigh,
        Self::Shank,
        Self::Foot,
    ];

    /// The name used in files and paths.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Head => "head",
            Self::Trunk => "trunk",
            Self::UpperArm => "upper_arm",
            Self::Forearm => "forearm",
            Self::Hand => "hand",
            Self::Thigh => "thigh",
            Self::Shank => "shank",
            Self::Foot => "foot",
        }
    }
}

/// One row of a published segment table.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SegmentRow {
    /// Share of body mass, %.
    pub mass_percent: f64,
    /// Mean length in the sample.
    pub length: Length,
    /// Centre of mass from the proximal end, % of the length.
    pub centre_of_mass_percent: f64,
    /// Radius of gyration about the transverse axis through the centre of mass, % of the length.
    pub gyration_percent: f64,
}

/// A published table of segments for one sex.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SegmentTable {
    /// Whose segments they are.
    #[serde(default)]
    pub sex: Option<Sex>,
    /// Mean height of the sample.
    pub sample_height: Length,
    /// Mean mass of the sample.
    pub sample_mass: Mass,
    /// The rows.
    pub rows: BTreeMap<SegmentName, SegmentRow>,
    /// Masses, centres and radii.
    pub source: Source,
    /// Lengths.
    pub length_source: Source,
    /// Breadths, heights and foot of the same sex, as shares of standing height.
    pub breadths: Breadths,
}

/// Sizes beside the segments, as shares of standing height.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Breadths {
    /// Distance between the acromia (biacromial breadth).
    pub biacromial: f64,
    /// Source of the biacromial breadth.
    pub biacromial_source: Source,
    /// Distance between the shoulder joint centres.
    pub shoulder_joints: f64,
    /// Source of the shoulder breadth.
    pub shoulder_source: Source,
    /// Height of the chest under the bar above the shoulder joint centre, lying on a bench.
    pub chest_above_shoulder: f64,
    /// Source of the chest height.
    pub chest_source: Source,
    /// Distance between the hip joint centres.
    pub hip_joints: f64,
    /// Source of the hip breadth.
    pub hip_source: Source,
    /// Height of the joint between spine and pelvis (L5/S1) above the hip joints.
    pub hip_to_lumbar: f64,
    /// Source of that height.
    pub lumbar_source: Source,
    /// Height of the ankle joint above the sole.
    pub ankle_height: f64,
    /// Horizontal distance from the heel to the ankle joint.
    pub heel_to_ankle: f64,
    /// Horizontal distance from the ankle joint to the ball of the foot.
    pub ankle_to_ball: f64,
    /// Source of the foot's measures.
    pub foot_source: Source,
}

/// One segment of one lifter (one side for limbs).
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Segment {
    /// Length between its joint centres.
    pub length: Length,
    /// Mass.
    pub mass: Mass,
    /// Centre of mass from the proximal end, share of the length.
    pub centre_of_mass: f64,
    /// Radius of gyration about the centre of mass, share of the length.
    pub gyration: f64,
}

impl Segment {
    /// Moment of inertia about the transverse axis through the centre of mass, kg·m².
    #[must_use]
    pub fn inertia_kg_m2(&self) -> f64 {
        self.mass.as_kg() * (self.gyration * self.length.as_m()).powi(2)
    }
}
