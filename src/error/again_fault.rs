//! Why what a file says of its own making cannot be done again.
//!
//! In: names and texts, where the fault arises. Out: facts that `narrative` puts into words.

/// What is wrong with the bytes of a picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PictureDamage {
    /// It ends before its end.
    CutShort {
        /// Bytes that are there.
        bytes: usize,
    },
    /// A part of it does not give the checksum that goes with it.
    CheckSum {
        /// The byte at which the part begins, counted from 1.
        byte: usize,
    },
}

/// Why what a file says of its own making cannot be done again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AgainFault {
    /// The file does not say how it was made.
    SaysNothing {
        /// The file.
        file: String,
    },
    /// A workbook, which says it on a sheet that is not read.
    Workbook {
        /// The file.
        file: String,
    },
    /// What it says cannot be read.
    Broken {
        /// The file.
        file: String,
        /// What the reader says.
        cause: String,
    },
    /// It is a picture that is not as it was written.
    Damaged {
        /// The file.
        file: String,
        /// What is wrong with it.
        damage: PictureDamage,
    },
    /// The command that it shows is another than the arguments that would be run.
    TwoCommands {
        /// The command, as a person reads it.
        shown: String,
        /// The arguments, as they would be typed.
        run: String,
    },
    /// It was made by another program.
    OtherProgram {
        /// The file.
        file: String,
    },
    /// It names another movement or lifter than its arguments do.
    Contradicts {
        /// What it names.
        named: String,
        /// What its arguments name.
        asked: String,
    },
    /// The new file exists already.
    NewIsThere {
        /// The file.
        file: String,
    },
    /// A command that does more than to read and compute.
    Command {
        /// Its name.
        command: String,
        /// Those that may be run.
        allowed: &'static [&'static str],
    },
    /// Its arguments are none of the command.
    Arguments {
        /// What the reader of arguments says.
        cause: String,
    },
    /// An argument that writes or replaces files, or names a folder of models.
    Writes {
        /// Its long name.
        option: String,
    },
    /// More work than a file may ask for.
    TooMuch {
        /// How many people it asks for.
        people: usize,
        /// How many a file may ask for.
        most: usize,
    },
    /// A path that leaves the present folder.
    Outside {
        /// The path.
        path: String,
    },
    /// The file was made with model files that are not given.
    ModelsDue {
        /// Their names.
        names: Vec<String>,
    },
    /// A picture needs a file to go to.
    OutputDue,
}
