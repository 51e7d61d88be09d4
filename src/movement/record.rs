//! A movement as its model file gives it: path, technique, what it is measured in.
//!
//! In: a file of `models/movements/`. Out: [`Movement`], checked as far as one file can be.

use super::arm_record::ArmRecord;
use super::bridge_record::BridgeRecord;
use super::handling::Handling;
use super::leg_press_record::LegPressRecord;
use super::load_point::Carrier;
use super::protocol::Protocol;
use super::stance_record::{BarPlace, StanceRecord};
use super::sweep_record::SweepRecord;
use super::technique::{Technique, TechniqueValue};
use crate::anatomy::{Joint, Lifter};
use crate::error::{Error, Result, TechniqueFault, TechniqueKind};
use crate::source::Source;
use crate::units::Length;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A named movement.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Movement {
    /// What a person calls it, such as "Bench press".
    pub title: String,
    /// What the axis over the range says when the range is a distance: "bar above the chest".
    pub axis: String,
    /// Where the place of the sticking point is told from: "off the chest".
    pub away_from: String,
    /// How the load is taken.
    pub carrier: CarrierRecord,
    /// One limb, or both sides doubled.
    pub sides: Sides,
    /// What the strength curve is measured in.
    pub measure: Measure,
    /// How a maximum of it is done: start, turn and finish.
    #[serde(default)]
    pub protocol: Protocol,
    /// How it is handled in a weight room: its names, what catches the load, who helps.
    pub handling: Handling,
    /// Technique parameters by name.
    pub technique: BTreeMap<String, Technique>,
    /// How the body moves along the range.
    pub path: PathRecord,
    /// What limits the model of this movement, in one sentence.
    pub limits: String,
    /// Which published check stands behind it, in one sentence.
    pub checks: String,
}

/// One limb, or two.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Sides {
    /// One side alone.
    One,
    /// Both sides together; loads and forces are of both.
    Both,
}

impl Sides {
    /// How many sides share the load.
    #[must_use]
    pub fn count(self) -> f64 {
        match self {
            Self::One => 1.0,
            Self::Both => 2.0,
        }
    }
}

/// What the strength curve is measured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Measure {
    /// Force on the bar, handle or sled, of all sides together.
    Force,
    /// Torque at the moving joint, of one side.
    Torque,
}

/// How a movement takes its load, as the file gives it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum CarrierRecord {
    /// A bar.
    Bar,
    /// Dumb-bells; the load named is that of one hand.
    Dumbbell,
    /// A sled on rails; the angle is the technique parameter `sled_angle`.
    Sled,
    /// A machine lever.
    Lever {
        /// Distance of the pad from the joint.
        pad: Length,
        /// Radius of the cam that the stack's cable runs over.
        cam: Length,
        /// Where both come from.
        source: Source,
    },
    /// The lifter's own body, with or without added load.
    Body,
}

/// How the body moves along the range: the kinds of path.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum PathRecord {
    /// One joint moves through its range.
    Sweep(SweepRecord),
    /// The hand follows a path and a two-link arm gives the angles.
    Arm(ArmRecord),
    /// The foot follows a sled on rails and a two-link leg gives the angles.
    LegPress(LegPressRecord),
    /// On both feet with a bar over the middle of the foot.
    Stance(StanceRecord),
    /// Shoulders on a bench, feet on the floor, a bar on the hips.
    Bridge(BridgeRecord),
}

impl Movement {
    /// Whether one joint moves, as in curls, extensions and raises.
    #[must_use]
    pub const fn moves_one_joint(&self) -> bool {
        matches!(self.path, PathRecord::Sweep(_))
    }

    /// Whether another lift moves by the same kind of path, and about the same joint where one moves.
    #[must_use]
    pub fn moves_alike(&self, other: &Self) -> bool {
        match (&self.path, &other.path) {
            (PathRecord::Sweep(own), PathRecord::Sweep(other)) => {
                own.joint.joint() == other.joint.joint()
            }
            (own, other) => std::mem::discriminant(own) == std::mem::discriminant(other),
        }
    }

    /// Whether hips, knees or ankles lift.
    #[must_use]
    pub fn lifts_with_legs(&self) -> bool {
        match &self.path {
            PathRecord::Sweep(sweep) => {
                let joint = sweep.joint.joint();
                matches!(joint, Joint::Hip | Joint::Knee | Joint::Ankle)
            }
            PathRecord::Arm(_) => false,
            PathRecord::LegPress(_) | PathRecord::Stance(_) | PathRecord::Bridge(_) => true,
        }
    }

    /// Whether the load starts on the floor.
    #[must_use]
    pub fn starts_on_floor(&self) -> bool {
        match &self.path {
            PathRecord::Stance(stance) => matches!(stance.bar, BarPlace::InHands { .. }),
            PathRecord::Sweep(_)
            | PathRecord::Arm(_)
            | PathRecord::LegPress(_)
            | PathRecord::Bridge(_) => false,
        }
    }

    /// A technique parameter that is a length, m; `None` when it is left free.
    ///
    /// **Fails** if the movement lacks it or it is of another kind.
    pub fn length_m(&self, name: &str, lifter: &Lifter) -> Result<Option<f64>> {
        match &self.technique(name)?.value {
            TechniqueValue::Length(length) => Ok(Some(length.as_m())),
            TechniqueValue::OfShoulders(share) => {
                Ok(Some(share * lifter.build.biacromial_breadth.as_m()))
            }
            TechniqueValue::Free => Ok(None),
            _ => Err(wrong_kind(name, TechniqueKind::Length)),
        }
    }

    /// A technique parameter that is an angle, rad; `None` when it is left free.
    ///
    /// **Fails** if the movement lacks it or it is of another kind.
    pub fn angle_rad(&self, name: &str) -> Result<Option<f64>> {
        match &self.technique(name)?.value {
            TechniqueValue::Angle(angle) => Ok(Some(angle.as_rad())),
            TechniqueValue::Free => Ok(None),
            _ => Err(wrong_kind(name, TechniqueKind::Angle)),
        }
    }

    /// A technique parameter that is one of several words.
    ///
    /// **Fails** if the movement lacks it, it is of another kind, or the word is not one of them.
    pub fn choice(&self, name: &str) -> Result<&str> {
        match &self.technique(name)?.value {
            TechniqueValue::Choice { now, of } if of.contains(now) => Ok(now),
            TechniqueValue::Choice { now, of } => Err(Error::bad(TechniqueFault::Word {
                technique: name.to_owned(),
                word: now.clone(),
                known: of.clone(),
            })),
            _ => Err(wrong_kind(name, TechniqueKind::Word)),
        }
    }

    fn technique(&self, name: &str) -> Result<&Technique> {
        let found = self.technique.get(name).ok_or_else(|| {
            Error::bad(TechniqueFault::Missing {
                movement: self.title.clone(),
                technique: name.to_owned(),
                known: self.technique.keys().cloned().collect(),
            })
        })?;
        found.check(name)?;
        Ok(found)
    }

    /// Checks every technique parameter against its accepted range.
    ///
    /// **Fails** with the first one that is outside, naming the range.
    pub fn check_technique(&self) -> Result<()> {
        self.technique
            .iter()
            .try_for_each(|(name, technique)| technique.check(name))
    }

    /// The carrier in SI.
    ///
    /// **Fails** if a sled's angle is missing from the technique.
    pub fn carrier(&self) -> Result<Carrier> {
        Ok(match &self.carrier {
            CarrierRecord::Bar => Carrier::Bar,
            CarrierRecord::Dumbbell => Carrier::Dumbbell,
            CarrierRecord::Sled => Carrier::Sled {
                angle_rad: self.angle_rad("sled_angle")?.unwrap_or(0.0),
            },
            CarrierRecord::Lever { pad, cam, .. } => Carrier::Lever {
                pad_m: pad.as_m(),
                cam_m: cam.as_m(),
            },
            CarrierRecord::Body => Carrier::Body,
        })
    }
}

fn wrong_kind(name: &str, expected: TechniqueKind) -> Error {
    let technique = name.to_owned();
    Error::bad(TechniqueFault::Kind {
        technique,
        expected,
    })
}
