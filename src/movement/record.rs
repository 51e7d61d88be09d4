//! A movement as its model file gives it: path, technique, what it is measured in.
//!
//! In: a file of `models/movements/`. Out: [`Movement`], checked as far as one file can be.

use super::arm::ArmRecord;
use super::bridge::BridgeRecord;
use super::handling::Handling;
use super::leg_press::LegPressRecord;
use super::load_point::Carrier;
use super::stance::StanceRecord;
use super::sweep::SweepRecord;
use crate::anatomy::Lifter;
use crate::error::{Error, Result};
use crate::source::Source;
use crate::units::{Angle, Length};
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
    /// Whether a repetition begins with lowering or from a hold at the bottom.
    #[serde(default)]
    pub begins: Begins,
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

/// What a usual repetition begins with.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Begins {
    /// The load is taken over at the top and lowered first, as from a rack.
    #[default]
    Lowering,
    /// The load is lifted from the bottom first, as from the floor or a dead hang.
    Lifting,
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

/// One technique parameter.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Technique {
    /// Its value.
    pub value: TechniqueValue,
    /// Smallest accepted value (not for choices).
    #[serde(default)]
    pub least: Option<TechniqueValue>,
    /// Largest accepted value (not for choices).
    #[serde(default)]
    pub most: Option<TechniqueValue>,
    /// What it means, in one sentence.
    pub meaning: String,
    /// Where the value comes from.
    pub source: Source,
}

/// The value of a technique parameter.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum TechniqueValue {
    /// A length such as a grip width.
    Length(Length),
    /// An angle such as a sled's.
    Angle(Angle),
    /// A length as a multiple of the biacromial breadth.
    OfShoulders(f64),
    /// A share or factor.
    Number(f64),
    /// One of several words.
    Choice {
        /// The word that holds.
        now: String,
        /// All accepted words.
        of: Vec<String>,
    },
    /// Left to the model.
    Free,
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
            _ => Err(wrong_kind(name, "a length such as \"60 cm\"")),
        }
    }

    /// A technique parameter that is an angle, rad; `None` when it is left free.
    ///
    /// **Fails** if the movement lacks it or it is of another kind.
    pub fn angle_rad(&self, name: &str) -> Result<Option<f64>> {
        match &self.technique(name)?.value {
            TechniqueValue::Angle(angle) => Ok(Some(angle.as_rad())),
            TechniqueValue::Free => Ok(None),
            _ => Err(wrong_kind(name, "an angle such as \"30 deg\"")),
        }
    }

    /// A technique parameter that is one of several words.
    ///
    /// **Fails** if the movement lacks it, it is of another kind, or the word is not one of them.
    pub fn choice(&self, name: &str) -> Result<&str> {
        match &self.technique(name)?.value {
            TechniqueValue::Choice { now, of } if of.contains(now) => Ok(now),
            TechniqueValue::Choice { now, of } => {
                Err(Error::bad(format!("technique.{name} cannot be `{now}`"))
                    .hint(format!("it is one of: {}", of.join(", "))))
            }
            _ => Err(wrong_kind(name, "a word")),
        }
    }

    fn technique(&self, name: &str) -> Result<&Technique> {
        let found = self.technique.get(name).ok_or_else(|| {
            let known: Vec<&str> = self.technique.keys().map(String::as_str).collect();
            Error::bad(format!(
                "{} has no technique parameter `{name}`",
                self.title
            ))
            .hint(format!("it has: {}", known.join(", ")))
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

impl Technique {
    fn check(&self, name: &str) -> Result<()> {
        let outside = |least: String, most: String, value: String| {
            Err(Error::bad(format!(
                "technique.{name} = {value} is outside what the model accepts ({least} to {most})"
            ))
            .hint(self.meaning.clone()))
        };
        match (&self.value, &self.least, &self.most) {
            (
                TechniqueValue::Length(value),
                Some(TechniqueValue::Length(least)),
                Some(TechniqueValue::Length(most)),
            ) if value < least || value > most => {
                let cm = |l: &Length| format!("{} cm", crate::units::rounded(l.as_cm(), 1));
                outside(cm(least), cm(most), cm(value))
            }
            (
                TechniqueValue::Angle(value),
                Some(TechniqueValue::Angle(least)),
                Some(TechniqueValue::Angle(most)),
            ) if value < least || value > most => {
                let deg = |a: &Angle| format!("{} deg", crate::units::rounded(a.as_deg(), 1));
                outside(deg(least), deg(most), deg(value))
            }
            (
                TechniqueValue::Number(value),
                Some(TechniqueValue::Number(least)),
                Some(TechniqueValue::Number(most)),
            ) if !(*least..=*most).contains(value) => {
                outside(least.to_string(), most.to_string(), value.to_string())
            }
            _ => Ok(()),
        }
    }
}

fn wrong_kind(name: &str, expected: &str) -> Error {
    Error::bad(format!("technique.{name} must be {expected}"))
}
