//! Why a text is no quantity, as facts.
//!
//! In: what [`super::Dimension::read`] meets. Out: an enum that `narrative` puts into words. The readers of model files
//! pass on nothing but texts, so a fault also travels as one: a mark and the fault as JSON behind it.

use serde::{Deserialize, Serialize};
use std::fmt;

/// The kinds of quantity that are read from text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum QuantityKind {
    /// A length or a distance.
    Length,
    /// A mass.
    Mass,
    /// A force.
    Force,
    /// A torque about a joint axis.
    Torque,
    /// An angle.
    Angle,
    /// A speed along a path.
    Speed,
    /// The speed of a joint.
    AngularSpeed,
    /// A stretch of time.
    Duration,
    /// A force per area.
    Stress,
    /// A mass per length.
    LinearDensity,
}

/// Why a text is no quantity of the kind that was asked for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum QuantityFault {
    /// Nothing is written.
    Nothing {
        /// What was asked for.
        kind: QuantityKind,
    },
    /// It does not begin with a number, or something behind the first part does not.
    NoNumber {
        /// What was asked for.
        kind: QuantityKind,
        /// The whole text.
        text: String,
    },
    /// A number without a unit.
    NoUnit {
        /// What was asked for.
        kind: QuantityKind,
        /// The whole text.
        text: String,
    },
    /// A decimal comma.
    DecimalComma {
        /// What was asked for.
        kind: QuantityKind,
        /// The whole text.
        text: String,
    },
    /// A unit that this kind is not written in.
    UnknownUnit {
        /// What was asked for.
        kind: QuantityKind,
        /// The whole text.
        text: String,
        /// The unit as written.
        unit: String,
        /// The units of this kind, SI first.
        known: Vec<String>,
    },
    /// Several quantities in one text.
    Several {
        /// What was asked for.
        kind: QuantityKind,
        /// The whole text.
        text: String,
    },
    /// Infinite, or no number at all.
    NotFinite {
        /// What was asked for.
        kind: QuantityKind,
        /// The whole text.
        text: String,
    },
    /// Outside what a quantity of this kind can be here.
    OutOfBounds {
        /// What was asked for.
        kind: QuantityKind,
        /// The whole text.
        text: String,
        /// The smallest accepted value in the SI unit.
        least: f64,
        /// The largest accepted value in the SI unit.
        most: f64,
        /// The SI unit.
        unit: String,
    },
}

const FAULT_MARK: &str = "torquill-quantity-fault:";
const KIND_MARK: &str = "torquill-quantity:";

impl QuantityKind {
    /// The kind that a reader of files was asked for, from the text that a quantity gives as its expectation.
    #[must_use]
    pub fn from_expectation(text: &str) -> Option<Self> {
        let json = text.strip_prefix(KIND_MARK)?;
        serde_json::from_str(json).ok()
    }

    /// What a quantity tells a reader of files that it expects.
    pub(super) fn write_expectation(self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{KIND_MARK}\"{self:?}\"")
    }
}

impl QuantityFault {
    /// The fault that travelled through a reader of files as its message.
    #[must_use]
    pub fn from_serde_message(message: &str) -> Option<Self> {
        serde_json::from_str(message.strip_prefix(FAULT_MARK)?).ok()
    }
}

impl fmt::Display for QuantityFault {
    /// For machines: the form that [`QuantityFault::from_serde_message`] reads back.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let json = serde_json::to_string(self).map_err(|_| fmt::Error)?;
        write!(f, "{FAULT_MARK}{json}")
    }
}

impl std::error::Error for QuantityFault {}
