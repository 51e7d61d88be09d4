//! Why a value cannot be set or read by its path.
//!
//! In: a path and a text. Out: [`SettingFault`].

use crate::error::Known;
use crate::units::QuantityFault;

/// Why a value cannot be set or read by its path.
#[derive(Debug, Clone, PartialEq)]
pub enum SettingFault {
    /// No path and value with a sign between them.
    NoSetting {
        /// What is written.
        written: String,
        /// Whether there is no sign between them at all.
        without_sign: bool,
    },
    /// One value is set twice.
    Twice {
        /// Path and text of the first.
        first: [String; 2],
        /// Those of the second.
        second: [String; 2],
    },
    /// No path begins so.
    NoSuchRoot {
        /// The path.
        path: String,
        /// Its first part.
        first: String,
        /// The first parts there are.
        known: Known,
    },
    /// A path of its first part only.
    RootOnly {
        /// The path.
        path: String,
    },
    /// A part of the path leads nowhere.
    Lost {
        /// The path.
        path: String,
        /// The part.
        step: String,
        /// The parts before it.
        walked: String,
        /// What stands there.
        at: PlaceOnPath,
    },
    /// The number at a path is none that can be read or varied.
    NoNumber {
        /// The path.
        path: String,
    },
    /// The path leads to a value, and the text does not fit there.
    Unfit {
        /// The path.
        path: String,
        /// Why.
        reason: SettingReason,
    },
    /// No value has a word in its path or its meaning.
    NotFound {
        /// The word.
        word: String,
    },
    /// The same fault, where another path was probably meant.
    MeantElsewhere {
        /// The fault.
        fault: Box<SettingFault>,
        /// The path that was meant.
        path: String,
    },
}

/// What stands where a path leads nowhere.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PlaceOnPath {
    /// A group with these names.
    Group(Known),
    /// A list up to this index.
    List {
        /// The last index.
        last: usize,
    },
    /// A single value.
    Single,
    /// The moment arms of a muscle that crosses the shoulder by a line: what sets that one is at this path.
    Line(String),
}

/// Why a text does not fit where its path leads.
#[derive(Debug, Clone, PartialEq)]
pub enum SettingReason {
    /// The types of the record refuse it.
    Refused(String),
    /// No quantity.
    Quantity(QuantityFault),
    /// The text does not fit there at all.
    DoesNotFit {
        /// The text.
        text: String,
    },
    /// None of the accepted words.
    NoSuchWord {
        /// The text.
        text: String,
        /// The words there are.
        known: Known,
    },
    /// A quantity with a plus, which could be a change or the value itself.
    UnclearChange {
        /// The text without the plus.
        value: String,
    },
    /// The path leads to a group with these names.
    IsGroup {
        /// The names, if they are known.
        names: Vec<String>,
    },
    /// The path leads to a list up to this index.
    IsList {
        /// The last index.
        last: usize,
    },
    /// Nothing stands there in this model.
    HasNoValue,
    /// The text holds a character that cannot be shown.
    Unprintable {
        /// The character's number.
        code: u32,
    },
    /// The text is too long to be shown.
    TooLong {
        /// Its letters.
        letters: usize,
        /// The most.
        most: usize,
    },
    /// No number.
    NoNumber {
        /// The text.
        text: String,
        /// The number that stands there.
        now: String,
    },
    /// A word stands there.
    IsWord {
        /// The word.
        word: String,
    },
    /// True or false stands there.
    IsBoolean {
        /// Which.
        now: bool,
        /// The text.
        text: String,
    },
    /// The movement needs the value.
    CannotBeFree,
    /// Left free, so a change has no number to change.
    IsFree,
    /// Neither length nor angle nor number.
    NoQuantity {
        /// The text.
        text: String,
    },
    /// A share without what it is one of.
    ShareWithoutUnit {
        /// The text.
        text: String,
        /// What it is one of: "shoulder breadths".
        unit: &'static str,
        /// The number that stands there.
        now: String,
    },
    /// A course over the joint angle.
    IsCourse,
}
