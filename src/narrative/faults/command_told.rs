//! Words for what is wrong with the arguments of a command, or with where its output is to go.

use super::Told;
use crate::error::{CommandFault, RepetitionOptions};
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &CommandFault, _units: System) -> Told {
    match fault {
        CommandFault::StandardOutput { cause } => {
            Told::new(format!("standard output cannot be written: {cause}"))
        }
        CommandFault::TargetIsFolder { folder, example } => {
            Told::new(format!("`{folder}` is a folder, not a file"))
                .hint(format!("name a file in it, such as {example}"))
        }
        CommandFault::NoFolder { folder } => {
            Told::new(format!("the folder `{folder}` does not exist"))
                .hint("make it first, or write elsewhere")
        }
        CommandFault::TargetExists { file } => Told::new(format!("`{file}` exists already"))
            .hint("add --force to replace it, or name another file"),
        CommandFault::SetExists { file, others } => {
            Told::new(format!("`{file}` exists already{}", and_more(*others)))
                .hint("add --force to replace them, or name another folder")
        }
        CommandFault::TargetIsFile { file } => {
            Told::new(format!("`{file}` is a file, not a folder"))
                .hint("name a folder; it is made if it is not there")
        }
        CommandFault::FolderNotMade { folder, cause } => {
            Told::new(format!("the folder `{folder}` cannot be made: {cause}"))
                .hint("check its parent and your permissions, or write elsewhere")
        }
        CommandFault::NoPicture { file, as_png } => no_picture(file, as_png),
        CommandFault::NoSheet { file } => {
            Told::new(format!("`{file}` is no sheet that can be written"))
                .hint("sheets end in .html, .svg or .png")
        }
        CommandFault::ManySessions { sessions } => many_sessions(*sessions),
        CommandFault::Repetition(options) => of_repetition(*options),
        CommandFault::Unwritable { file, cause } => {
            Told::new(format!("`{file}` cannot be written: {cause}"))
                .hint("check the folder's permissions and free space, or write elsewhere")
        }
    }
}

fn no_picture(file: &str, as_png: &str) -> Told {
    Told::new(format!("`{file}` does not end in .svg or .png")).hint(format!("write {as_png}"))
}

fn many_sessions(sessions: usize) -> Told {
    Told::new(format!(
        "a picture holds one session, and these are {sessions}"
    ))
    .hint("end the sheet's name in .html: a page for each session")
}

fn of_repetition(options: RepetitionOptions) -> Told {
    match options {
        RepetitionOptions::ComparisonAsCsv => {
            Told::new("--versus-plain gives a table or JSON, not CSV")
                .hint("--format json holds the samples of both repetitions")
        }
        RepetitionOptions::ComparisonPictures => {
            Told::new("--versus-plain draws one picture, over the way")
                .hint("give it with -o; leave out --over-time and --animation")
        }
        RepetitionOptions::AnimationNotSvg => {
            Told::new("an animated picture is an .svg file").hint("--animation rep.svg")
        }
    }
}

fn and_more(others: usize) -> String {
    match others {
        0 => String::new(),
        many => format!(", and {many} more of the files to write"),
    }
}
