//! Words for why what a file says of its own making cannot be done again.

use super::Told;
use crate::error::{AgainFault, PictureDamage};

/// The fault in words.
pub(super) fn told(fault: &AgainFault) -> Told {
    match fault {
        AgainFault::SaysNothing { file } => Told::new(format!(
            "`{file}` does not say how it was made"
        ))
        .hint("JSON, SVG, PNG and --data files of this program do; printed CSV does with --provenance"),
        AgainFault::Workbook { file } => Told::new(format!(
            "`{file}` is a workbook: its sheet `provenance` says how it was made, but sheets are not read here"
        ))
        .hint("run the command of that sheet again, or write the table with --data FILE.csv, which can be made again"),
        AgainFault::Broken { file, cause } => Told::new(format!(
            "what `{file}` says of its making cannot be read: {cause}"
        ))
        .hint("copy the file again from where it came from, or type the command that is meant"),
        AgainFault::Damaged { file, damage } => damaged(file, *damage),
        AgainFault::TwoCommands { shown, run } => Told::new(format!(
            "the file shows the command `{}` and would run `{}`",
            short(shown),
            short(run)
        ))
        .hint("somebody changed it: type the command that is meant"),
        AgainFault::OtherProgram { file } => {
            Told::new(format!("`{file}` was made by another program"))
                .hint("what torquill wrote itself can be made again")
        }
        AgainFault::Contradicts { named, asked } => Told::new(format!(
            "the file says that it is of `{named}`, and its arguments ask for `{asked}`"
        ))
        .hint("somebody changed it: type the command that is meant"),
        AgainFault::NewIsThere { file } => Told::new(format!("`{file}` exists already"))
            .hint("name a file that is not there: a call done again replaces nothing"),
        AgainFault::Arguments { cause } => {
            Told::new(format!("the file's arguments cannot be run: {cause}"))
                .hint("type the command that is meant: somebody changed the file, or another version had other options")
        }
        refused => of_refused(refused),
    }
}

/// A picture whose bytes are not those that were written.
fn damaged(file: &str, damage: PictureDamage) -> Told {
    let told = match damage {
        PictureDamage::CutShort { bytes } => {
            format!(
                "`{file}` is cut off: it ends after {bytes} bytes, in the middle of the picture"
            )
        }
        PictureDamage::CheckSum { byte } => format!(
            "`{file}` is damaged: the part that begins at byte {byte} does not give its checksum"
        ),
    };
    Told::new(told)
        .hint("copy the file again from where it came from, or type the command that is meant")
}

/// As much of a text as a line holds.
fn short(text: &str) -> String {
    const LETTERS: usize = 200;
    match text.chars().nth(LETTERS) {
        None => text.to_owned(),
        Some(_) => text.chars().take(LETTERS).chain(['…']).collect(),
    }
}

/// What the file asks for and may not.
fn of_refused(fault: &AgainFault) -> Told {
    match fault {
        AgainFault::Command { command, allowed } => Told::new(format!(
            "the file asks for `{command}`, which is not run from a file"
        ))
        .hint(format!(
            "only commands that read and compute are: {}",
            allowed.join(", ")
        )),
        AgainFault::Writes { option } => Told::new(format!(
            "the file asks for --{option}, which is given by hand or not at all"
        ))
        .hint("name the new file yourself: torquill again FILE -o NEW"),
        AgainFault::TooMuch { people, most } => Told::new(format!(
            "the file asks for {people} invented people; a file may ask for {most}"
        ))
        .hint("type the command yourself if that is meant: it says how it was made at its head"),
        AgainFault::Outside { path } => Told::new(format!(
            "the file asks for `{path}`, outside the present folder"
        ))
        .hint("go to the folder that holds what it needs"),
        AgainFault::ModelsDue { names } => Told::new(format!(
            "the file was made with other model files: {}",
            names.join(", ")
        ))
        .hint("give their folder again: torquill again FILE --models DIR"),
        _ => Told::new("the file is a picture, and its copy needs a name")
            .hint("torquill again FILE -o NEW"),
    }
}
