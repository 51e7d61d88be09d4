//! The lifter: a body of segments and muscles, made from a short record and published tables.
//!
//! In: a [`LifterRecord`] of `models/lifters/` and the tables it names. Out: [`Lifter`], every value
//! resolved, so that any of them can be set by its path.

use super::curves::Curves;
use super::joint::Dof;
use super::muscle::Muscle;
use super::passive_joint::PassiveJoint;
use super::person_scatter::PersonScatter;
use super::segment::{Segment, SegmentName};
use super::sex::Sex;
use crate::source::Source;
use crate::units::{Length, Mass};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// How long and how regularly the lifter has trained.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Training {
    /// No resistance training, or none for several years.
    Novice,
    /// About half a year of steady training.
    Intermediate,
    /// Years of training.
    Advanced,
}

/// A lifter as the model file gives it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LifterRecord {
    /// What a person calls this lifter.
    pub title: String,
    /// Whether the lifter is made up.
    pub invented: bool,
    /// Which tables apply.
    pub sex: Sex,
    /// Standing height.
    pub height: Length,
    /// Body mass.
    pub body_mass: Mass,
    /// Training status.
    pub training: Training,
    /// Months of steady training, where they are known.
    #[serde(default)]
    pub training_months: Option<f64>,
    /// Age in years, where it is known.
    #[serde(default)]
    pub age_years: Option<f64>,
    /// Name of the segment table.
    pub segments: String,
    /// Name of the muscle table.
    pub muscles: String,
    /// Name of the fibre curves.
    pub curves: String,
    /// Lengths of this lifter's own segments, which take the place of the table's and are not scaled.
    #[serde(default)]
    pub lengths: BTreeMap<SegmentName, Length>,
    /// Another lifter of the library whose strength factors hold where this one has none of its own.
    #[serde(default)]
    pub strength_like: Option<String>,
    /// Factor on the peak force of each strength group, named after the group.
    #[serde(default)]
    pub strength: BTreeMap<String, f64>,
    /// Where each strength factor comes from, named after the group ("*" for all others).
    #[serde(default)]
    pub strength_sources: BTreeMap<String, Source>,
    /// Factor on all peak forces beyond what body mass explains.
    pub strength_scale: f64,
    /// Where a factor of 1 on all peak forces comes from: not where height and mass do.
    #[serde(default)]
    pub strength_scale_source: Option<Source>,
    /// Factor on all peak forces in one lift alone, by the name of the movement: practice, technique, and what the model
    /// of that lift misses for this person. Only a fit to measurements has one.
    #[serde(default)]
    pub lift_strength: BTreeMap<String, f64>,
    /// How well the strengths are known, where they were fitted to measurements.
    #[serde(default)]
    pub scatter: Option<PersonScatter>,
    /// Source of height, mass and scale.
    pub source: Source,
}

/// Breadths and heights of one lifter, m.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Build {
    /// Distance between the acromia.
    pub biacromial_breadth: Length,
    /// Distance between the shoulder joint centres.
    pub shoulder_breadth: Length,
    /// Height of the chest under the bar above the shoulder joint centre, lying.
    pub chest_height: Length,
    /// Distance between the hip joint centres.
    pub hip_breadth: Length,
    /// Distance from the hip joint up to the joint between spine and pelvis (L5/S1).
    pub hip_to_lumbar: Length,
    /// Height of the ankle joint above the sole.
    pub ankle_height: Length,
    /// Horizontal distance from the heel to the ankle joint.
    pub heel_to_ankle: Length,
    /// Horizontal distance from the ankle joint to the ball of the foot.
    pub ankle_to_ball: Length,
}

impl Build {
    /// Every size with the name of its field.
    #[must_use]
    pub fn sizes(&self) -> [(&'static str, Length); 8] {
        [
            ("biacromial_breadth", self.biacromial_breadth),
            ("shoulder_breadth", self.shoulder_breadth),
            ("chest_height", self.chest_height),
            ("hip_breadth", self.hip_breadth),
            ("hip_to_lumbar", self.hip_to_lumbar),
            ("ankle_height", self.ankle_height),
            ("heel_to_ankle", self.heel_to_ankle),
            ("ankle_to_ball", self.ankle_to_ball),
        ]
    }
}

/// A whole lifter with every value resolved; limbs and muscles are those of one side.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lifter {
    /// Name in the library.
    pub name: String,
    /// What a person calls this lifter.
    pub title: String,
    /// Whether the lifter is made up.
    pub invented: bool,
    /// Sex in the sense of the tables.
    pub sex: Sex,
    /// Training status.
    pub training: Training,
    /// Standing height.
    pub height: Length,
    /// Body mass.
    pub body_mass: Mass,
    /// The segments.
    pub segments: BTreeMap<SegmentName, Segment>,
    /// Breadths and heights.
    pub build: Build,
    /// The muscles of one side.
    pub muscles: BTreeMap<String, Muscle>,
    /// Passive resistance of the joints; one without an entry has none.
    pub joints: BTreeMap<Dof, PassiveJoint>,
    /// The fibre curves.
    pub curves: Curves,
}

impl LifterRecord {
    /// Factor on all peak forces in a lift.
    #[must_use]
    pub fn strength_in(&self, movement: &str) -> f64 {
        self.lift_strength.get(movement).copied().unwrap_or(1.0)
    }
}

impl Lifter {
    /// The same lifter with every peak force multiplied.
    #[must_use]
    pub fn stronger(mut self, factor: f64) -> Self {
        for muscle in self.muscles.values_mut() {
            muscle.peak_force = muscle.peak_force * factor;
        }
        self
    }

    /// One segment of the lifter.
    ///
    /// # Panics
    /// Never for a lifter from the library: tables with a segment missing are refused there.
    #[must_use]
    pub fn segment(&self, name: SegmentName) -> Segment {
        *self
            .segments
            .get(&name)
            .expect("segment tables are checked for completeness when a lifter is built")
    }
}
