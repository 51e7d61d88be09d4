//! Words for: why a file of the user's is not read.

use super::Told;
use crate::error::FileFault;

/// The fault in words.
pub(super) fn told(fault: &FileFault) -> Told {
    match fault {
        FileFault::Unreadable { file, cause } => {
            Told::new(format!("cannot read `{file}`: {cause}"))
                .hint("give the path of a file that is there and may be read")
        }
        FileFault::Folder { file } => Told::new(format!("cannot read `{file}`: it is a folder"))
            .hint("name a file in it; a folder of model files is given by --models"),
        FileFault::Endless { file } => Told::new(format!(
            "cannot read `{file}`: it is a device or a pipe and may never end"
        ))
        .hint("write its text into a file first"),
        FileFault::TooLarge { file, most_mb } => Told::new(format!(
            "cannot read `{file}`: it is larger than {most_mb} MB"
        ))
        .hint("nothing that this program reads is so large: is it the right file?"),
        FileFault::LongLine { file, line, most } => Told::new(format!(
            "line {line} of `{file}` is longer than {most} bytes, so this is no table"
        ))
        .hint("export it again, one row a line"),
        FileFault::Utf16 { file } => Told::new(format!(
            "`{file}` is UTF-16, which spreadsheets call Unicode text"
        ))
        .hint("save the sheet as CSV UTF-8 and give that file"),
        FileFault::NotUtf8 { file, byte } => {
            Told::new(format!("`{file}` is no text: byte {byte} is not UTF-8"))
                .hint("save it as UTF-8 text")
        }
    }
}
