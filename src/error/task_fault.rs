//! What is wrong in a file of tasks for the live page.
//!
//! In: lines of the file. Out: facts that `narrative` puts into words.

/// What is wrong in a file of tasks.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TaskFault {
    /// There is no task in it.
    Empty,
    /// A line begins with none of the words that lines begin with.
    UnknownWord {
        /// Number of the line.
        line: usize,
        /// What it begins with.
        word: String,
        /// The words.
        known: &'static [&'static str],
    },
    /// A line with a character that cannot be shown.
    Hidden {
        /// Number of the line.
        line: usize,
        /// The number of the character.
        code: u32,
    },
    /// A line before the first task.
    BeforeTask {
        /// Number of the line.
        line: usize,
    },
    /// A task without its start or its goal.
    Incomplete {
        /// Number of the line where the task begins.
        line: usize,
        /// What is missing.
        word: &'static str,
    },
    /// A goal that is no key, sign and value.
    Goal {
        /// Number of the line.
        line: usize,
        /// The goal.
        text: String,
        /// The keys that there are.
        known: &'static [&'static str],
    },
    /// A start that is no address of the page.
    Start {
        /// Number of the line.
        line: usize,
        /// The start.
        text: String,
    },
    /// A goal's word that no class or no joint has.
    GoalWord {
        /// Number of the line.
        line: usize,
        /// The word.
        word: String,
        /// Those that there are.
        known: Vec<&'static str>,
    },
    /// A word of a start that no address has.
    StartWord {
        /// Number of the line.
        line: usize,
        /// The word.
        word: String,
    },
    /// A start of another version of the page.
    StartVersion {
        /// Number of the line.
        line: usize,
        /// The version.
        version: String,
        /// The one that there is.
        known: u32,
    },
    /// A start that says something twice.
    StartTwice {
        /// Number of the line.
        line: usize,
        /// What it says twice, as its key.
        key: String,
    },
    /// A second line of a kind in one task.
    SecondLine {
        /// Number of the line.
        line: usize,
        /// What it begins with.
        word: String,
        /// Number of the first.
        first: usize,
    },
    /// A line with nothing behind its word.
    NoText {
        /// Number of the line.
        line: usize,
        /// What it begins with.
        word: String,
    },
    /// A start with another lift than the page is frozen on.
    OtherLift {
        /// Number of the line.
        line: usize,
        /// Its lift.
        lift: String,
        /// The page's lift.
        frozen: String,
    },
    /// A goal that is met where the task starts.
    MetAtStart {
        /// Number of the goal's line.
        line: usize,
    },
    /// A goal that none of the states tried meets.
    NeverMet {
        /// Number of the goal's line.
        line: usize,
        /// How many states were tried.
        tried: usize,
    },
    /// More lines than a page's tasks have.
    TooManyLines {
        /// Most lines.
        most: usize,
    },
    /// More than the page shows.
    TooMany {
        /// Most tasks.
        most: usize,
    },
    /// A text that is longer than the page shows.
    TooLong {
        /// Number of the line.
        line: usize,
        /// Most letters.
        most: usize,
    },
}

impl TaskFault {
    /// Number of the line that is wrong, if it is one line.
    #[must_use]
    pub fn line(&self) -> Option<usize> {
        match self {
            Self::Empty | Self::TooMany { .. } | Self::TooManyLines { .. } => None,
            Self::UnknownWord { line, .. }
            | Self::Hidden { line, .. }
            | Self::BeforeTask { line }
            | Self::Incomplete { line, .. }
            | Self::Goal { line, .. }
            | Self::Start { line, .. }
            | Self::GoalWord { line, .. }
            | Self::StartWord { line, .. }
            | Self::StartVersion { line, .. }
            | Self::StartTwice { line, .. }
            | Self::SecondLine { line, .. }
            | Self::NoText { line, .. }
            | Self::OtherLift { line, .. }
            | Self::MetAtStart { line }
            | Self::NeverMet { line, .. }
            | Self::TooLong { line, .. } => Some(*line),
        }
    }
}
