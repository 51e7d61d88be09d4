//! What is wrong in a model file or a path of a value.
//!
//! In: names, paths and values, where the fault arises. Out: facts that `narrative` puts into words.

mod broken_rule;
mod doubt;
mod extends_fault;
mod setting_fault;
mod shelf;
mod text_fault;

pub use broken_rule::{
    BodyRule, BrokenRule, CurveRule, MuscleRule, PathRule, RuleFault, TechniqueNumber,
    TechniqueRule,
};
pub use doubt::{Doubt, JointTorque};
pub use extends_fault::ExtendsFault;
pub use setting_fault::{PlaceOnPath, SettingFault, SettingReason};
pub use shelf::Shelf;
pub use text_fault::{ExpectedType, FoundValue, SyntaxFault, TextFault, TypeFault};

use super::Known;

/// What is wrong in a model file or a path of a value.
#[derive(Debug, Clone, PartialEq)]
pub enum ModelFault<Inner> {
    /// The user's folder cannot be read.
    UnreadableFolder {
        /// The folder.
        folder: String,
        /// What the system says.
        why: String,
    },
    /// A folder of model files whose name is nearly that of a kind.
    MisspeltFolder {
        /// The folder.
        folder: String,
        /// The kinds' folders.
        known: Known,
    },
    /// The user's folder holds no folder of model files.
    NoModelFolder {
        /// The folder.
        folder: String,
    },
    /// No file of a kind has that name.
    NoSuchFile {
        /// The kind.
        shelf: Shelf,
        /// The name.
        name: String,
        /// The names there are.
        known: Known,
    },
    /// A source names a publication that is not listed.
    NoSuchPublication {
        /// The key.
        key: String,
        /// The keys that could have been meant.
        known: Known,
    },
    /// A training log where a model file is wanted.
    IsLog {
        /// The file.
        file: String,
    },
    /// Nothing in a file tells what kind it is.
    NoKind {
        /// The file.
        file: String,
    },
    /// What a file extends is not to be had.
    Extends(ExtendsFault),
    /// A text is no record.
    Text(TextFault),
    /// A value breaks a rule.
    Rule(RuleFault<Inner>),
    /// A value cannot be set or read by its path.
    Setting(SettingFault),
}
