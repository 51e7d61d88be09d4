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
