//! Why a file of the user's is not read.
//!
//! In: its name, what the system says. Out: facts that `narrative` puts into words.

/// Why a file of the user's is not read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FileFault {
    /// The system does not give it.
    Unreadable {
        /// The file as the user named it.
        file: String,
        /// What the system says.
        cause: String,
    },
    /// A folder.
    Folder {
        /// The folder as the user named it.
        file: String,
    },
    /// A device or a pipe: it may never end.
    Endless {
        /// As the user named it.
        file: String,
    },
    /// More than is read.
    TooLarge {
        /// The file as the user named it.
        file: String,
        /// The most that is read, MB.
        most_mb: u64,
    },
    /// A line that is longer than a row of any table.
    LongLine {
        /// The file as the user named it.
        file: String,
        /// The line, counted from 1.
        line: usize,
        /// The most bytes of a line.
        most: usize,
    },
    /// Text of two bytes a letter, where one is meant.
    Utf16 {
        /// The file as the user named it.
        file: String,
    },
    /// No text.
    NotUtf8 {
        /// The file as the user named it.
        file: String,
        /// The first byte that is not, counted from 1.
        byte: usize,
    },
}
