//! Why the live page's question cannot be put to the model.
//!
//! In: names and texts, where the fault arises. Out: facts that `narrative` puts into words.

use super::TaskFault;

/// Why the live page's question cannot be put to the model.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum PageFault {
    /// A question that cannot be read.
    Unreadable {
        /// What the reader says.
        cause: String,
    },
    /// A text that is longer than any the page makes.
    TooLong {
        /// Letters of it.
        letters: usize,
        /// Most that are read.
        most: usize,
    },
    /// More texts of a kind than the page makes.
    TooMany {
        /// How many there are.
        count: usize,
        /// Most that are read.
        most: usize,
    },
    /// A file where a name of the library belongs.
    NotByFile {
        /// The text.
        text: String,
    },
    /// A drawn curve without numbers enough to be one.
    NoCurve,
    /// A file of tasks that is wrong.
    Task(TaskFault),
    /// A name of a group of dials that is none.
    Group {
        /// The name.
        name: String,
        /// Those that there are.
        known: &'static [&'static str],
    },
    /// A file to write that is no page by its ending.
    NoPage {
        /// The file.
        file: String,
    },
    /// Model files of one's own, which the page's module does not hold.
    OwnModels,
    /// Nothing was solved yet that could be told.
    NothingSolved,
}
