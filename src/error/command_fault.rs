//! What is wrong with the arguments of a command.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use super::AgainFault;
use crate::units::QuantityFault;

/// What is wrong with the arguments of a command, or with where its output is to go.
#[derive(Debug, Clone, PartialEq)]
pub enum CommandFault {
    /// Standard output cannot be written.
    StandardOutput {
        /// What the system says.
        cause: String,
    },
    /// A word of the command line that a terminal or a picture cannot show.
    HiddenSign {
        /// The number of the character.
        code: u32,
        /// Which word it is, counted from 1 behind the program's name.
        place: usize,
    },
    /// A word of the command line that is longer than any that means something.
    LongWord {
        /// Its letters.
        letters: usize,
        /// The most.
        most: usize,
        /// Which word it is, counted from 1 behind the program's name.
        place: usize,
    },
    /// A folder is named where a file is due.
    TargetIsFolder {
        /// The folder.
        folder: String,
        /// A file in it.
        example: String,
    },
    /// A device or a pipe is named where a file is due.
    TargetIsDevice {
        /// It.
        file: String,
    },
    /// The folder of a file is not there.
    NoFolder {
        /// The folder.
        folder: String,
    },
    /// Two options name one file to write.
    SameTarget {
        /// The file.
        file: String,
        /// The options that name it.
        options: [String; 2],
    },
    /// A file to write is one that the command reads.
    TargetIsRead {
        /// The file.
        file: String,
    },
    /// A file exists that may not be replaced unasked.
    TargetExists {
        /// The file.
        file: String,
    },
    /// Files of a set are there and were not to be replaced.
    SetExists {
        /// The first of them.
        file: String,
        /// How many others.
        others: usize,
    },
    /// A file is named where a folder is due.
    TargetIsFile {
        /// The file.
        file: String,
    },
    /// A folder cannot be made.
    FolderNotMade {
        /// The folder.
        folder: String,
        /// What the system says.
        cause: String,
    },
    /// A file cannot be written.
    Unwritable {
        /// The file.
        file: String,
        /// What the system says.
        cause: String,
    },
    /// An option that changes nothing where nothing is lowered.
    IdleUnlowered {
        /// The option.
        option: String,
    },
    /// What is compared is asked for, of one parameter that is not ranked.
    IdleMeasure,
    /// An option that changes nothing in this call.
    Idle {
        /// The option, without dashes.
        option: String,
        /// The options of which it needs one.
        needed: Vec<String>,
    },
    /// A file whose ending says something else than what would stand in it.
    OtherEnding {
        /// The file.
        file: String,
        /// What would stand in it.
        holds: FileForm,
    },
    /// An option's text or value is none of its kind, or lacks another option.
    Option(OptionFault),
    /// Options of a repetition do not go together.
    Repetition(RepetitionOptions),
    /// What a file says of its making cannot be done again.
    Again(AgainFault),
    /// A file that is no picture.
    NoPicture {
        /// The file.
        file: String,
        /// The same with an ending that is one.
        as_png: String,
    },
    /// A file that is no table.
    NoDataFile {
        /// The file.
        file: String,
        /// The same with an ending that is one.
        as_csv: String,
    },
    /// A file that is no sheet.
    NoSheet {
        /// The file.
        file: String,
    },
    /// A file that is no model file.
    NoModelFile {
        /// The file.
        file: String,
    },
    /// Several sessions for a picture that holds one.
    ManySessions {
        /// How many.
        sessions: usize,
    },
}

/// What stands in a file that a command prints into.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FileForm {
    /// JSON.
    Json,
    /// A table with commas.
    Csv,
    /// Plain text.
    Text,
    /// Markdown.
    Markdown,
    /// A page of HTML.
    Page,
    /// Text, Markdown or a page, by the ending.
    Sheet,
}

impl FileForm {
    /// The endings of files that hold it, the usual one first.
    #[must_use]
    pub const fn endings(self) -> &'static [&'static str] {
        match self {
            Self::Json => &[".json"],
            Self::Csv => &[".csv"],
            Self::Text => &[".txt"],
            Self::Markdown => &[".md", ".markdown"],
            Self::Page => &[".html", ".htm"],
            Self::Sheet => &[".txt", ".md", ".html"],
        }
    }
}

/// Options of a repetition that do not go together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RepetitionOptions {
    /// More pictures than one were asked for of a comparison with plain weight.
    ComparisonPictures,
    /// An animated picture was to become another file than an SVG.
    AnimationNotSvg,
}

/// What is wrong with the text or the value of an option.
#[derive(Debug, Clone, PartialEq)]
pub enum OptionFault {
    /// A number that is a share only with a sign of percent.
    ForgottenPercent {
        /// The text as typed.
        text: String,
        /// The number in it.
        number: f64,
    },
    /// No share.
    NoShare(String),
    /// No part of a number of parts.
    NoPart(String),
    /// No range of shares.
    NoShares(String),
    /// No place of the range.
    NoPlace(String),
    /// No place of a pose.
    NoPosePlace(String),
    /// A place of a pose that is no distance.
    NoTravel(QuantityFault),
    /// No limit of a load.
    NoLoadLimit(String),
    /// A range whose first end is above the second, or places of a profile that do not rise.
    ReversedRange(String),
    /// An option that the goal of a search does not heed.
    NotOfGoal {
        /// The option, without dashes.
        option: &'static str,
        /// The goal that heeds it.
        goal: &'static str,
    },
    /// Bands or chains asked for where none may hang.
    OnlyOfNone {
        /// The word of --only.
        word: String,
    },
    /// No point of a profile.
    NoProfilePoint(String),
    /// The goal of a profile without its profile.
    NoProfile,
    /// The goal of a share without its share.
    NoShareForGoal,
    /// One of several setups is empty.
    EmptySetup,
    /// More setups than can be told apart.
    ManySetups {
        /// How many.
        asked: usize,
        /// The most.
        most: usize,
    },
    /// A setup from a file and from options at once.
    FileAndOptions,
    /// The share from which the sticking region counts is out of range.
    RegionShare(f64),
    /// A list of no setups.
    NoneListed,
    /// Parameters and their values do not pair up.
    UnpairedValues {
        /// How many parameters.
        parameters: usize,
        /// How many lists of values.
        lists: usize,
    },
    /// An option of bands and chains beside one by which none is hung.
    NothingHung {
        /// The option, without dashes.
        option: String,
        /// What hangs none, as it is typed.
        by: String,
    },
    /// Reasons are asked for of two parameters at once.
    WhyOfMany,
    /// No speed.
    NoSpeed(QuantityFault),
}
