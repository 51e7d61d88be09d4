//! The hand's path as a movement file gives it: places of the hand, posture of the trunk.
//!
//! In: the field `path` of a movement's file. Out: [`ArmRecord`], as data.

use crate::source::Source;
use crate::units::{Angle, Length};
use serde::{Deserialize, Serialize};

/// The hand's path as a movement file gives it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ArmRecord {
    /// How the trunk lies or stands.
    pub posture: Posture,
    /// Where the elbow points.
    pub elbow: ElbowPlace,
    /// Whether the hand carries the load or the body hangs from the hand.
    pub hand: Hand,
    /// Height of the shoulder joint above the floor.
    pub shoulder_height: ArmPlace,
    /// Where the hand is at the start.
    pub start: HandPlace,
    /// Where the hand is at the end.
    pub end: HandPlace,
    /// Elbow flexion of a straight arm at the lockout end.
    pub lockout_elbow: Angle,
    /// How far the shoulder blades are drawn back at the end beyond what they do with the arm.
    #[serde(default)]
    pub blades_drawn_back: Angle,
    /// Friction between hand and bar along the bar.
    pub friction: f64,
    /// Where places, lockout and friction come from.
    pub source: Source,
}

/// Where the elbow points in the pose in which it is bent most.
///
/// On the whole way the elbow keeps to that side of the line from shoulder to hand.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ElbowPlace {
    /// The end of the range at which the elbow is bent most.
    pub bent: BentEnd,
    /// Technique parameter: how far the upper arm is turned there from straight out to the side toward
    /// forward (upright) or the feet (lying, bent over).
    pub turned: String,
}

/// An end of the range.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum BentEnd {
    /// The start of the concentric phase.
    Start,
    /// Its end.
    End,
}

/// Whether the hand carries the load or the body hangs from the hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Hand {
    /// The load pulls the hand down.
    Carries,
    /// The hand holds still and the body, with the load, hangs from it.
    Hangs,
}

/// Where the hand is, seen from the shoulder joint.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HandPlace {
    /// Forward (upright) or toward the feet (lying).
    pub forward: ArmPlace,
    /// Upward.
    pub up: ArmPlace,
}

/// One coordinate of a place.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum ArmPlace {
    /// A length.
    Fixed(Length),
    /// A share of standing height.
    OfHeight(f64),
    /// The lifter's chest height above the shoulder, lying.
    Chest,
    /// A technique parameter; when it is free, the bar is where the tucked elbow is under it.
    Technique(String),
    /// As far up (or out) as the straight arm reaches.
    Lockout,
    /// As far forward as the straight arm that hangs plumb.
    Plumb,
    /// Of the hips, as a share of standing height, with what the leaning trunk adds up to the shoulder.
    OverHips(f64),
}

/// How the trunk lies or stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Posture {
    /// On the back, on a bench; forward is toward the feet.
    Lying,
    /// Standing, sitting or hanging upright; forward is to the front. The technique parameter
    /// `torso_angle`, if there is one, leans the trunk back.
    Upright,
    /// Bent over; forward is along the trunk toward the feet, up is to the front of the body. The
    /// technique parameter `torso_angle` is the trunk's angle above the level.
    Bent,
}
