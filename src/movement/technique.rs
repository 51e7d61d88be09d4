//! Technique parameters of a movement: how wide the grip, how deep the squat.
//!
//! In: the field `technique` of a movement's file. Out: values, checked against what the model accepts.

use crate::error::{Error, Outside, Result, TechniqueFault, TechniqueRange};
use crate::source::Source;
use crate::units::{Angle, Length};
use serde::{Deserialize, Serialize};

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

impl Technique {
    /// Checks the value against its accepted range; `name` is told with the fault.
    pub(super) fn check(&self, name: &str) -> Result<()> {
        let outside = |range: TechniqueRange| {
            Err(Error::bad(TechniqueFault::Outside {
                technique: name.to_owned(),
                range,
                meaning: self.meaning.clone(),
            }))
        };
        match (&self.value, &self.least, &self.most) {
            (
                &TechniqueValue::Length(value),
                &Some(TechniqueValue::Length(least)),
                &Some(TechniqueValue::Length(most)),
            ) if value < least || value > most => {
                outside(TechniqueRange::Length(Outside { value, least, most }))
            }
            (
                &TechniqueValue::Angle(value),
                &Some(TechniqueValue::Angle(least)),
                &Some(TechniqueValue::Angle(most)),
            ) if value < least || value > most => {
                outside(TechniqueRange::Angle(Outside { value, least, most }))
            }
            (
                &TechniqueValue::Number(value),
                &Some(TechniqueValue::Number(least)),
                &Some(TechniqueValue::Number(most)),
            ) if !(least..=most).contains(&value) => {
                outside(TechniqueRange::Number(Outside { value, least, most }))
            }
            _ => Ok(()),
        }
    }
}
