//! The words of a command line before anything reads them: each can be shown, and none fills a screen.
//!
//! In: the words behind the program's name. Out: nothing, or the first word that is refused.

use crate::bounds::first_hidden;
use crate::error::{CommandFault, Error, Result};
use std::ffi::OsStr;

/// Most letters of a word; paths of files have up to 4096.
const MOST_LETTERS: usize = 5000;

/// Checks the words of a command.
///
/// **Fails** with the first word that holds a character which a terminal would obey, or that is too long.
pub fn check<'a>(words: impl IntoIterator<Item = &'a OsStr>) -> Result<()> {
    for (index, word) in words.into_iter().enumerate() {
        let (word, place) = (word.to_string_lossy(), index + 1);
        let letters = word.chars().count();
        if letters > MOST_LETTERS {
            return Err(Error::bad(CommandFault::LongWord {
                letters,
                most: MOST_LETTERS,
                place,
            }));
        }
        if let Some(code) = first_hidden(&word) {
            return Err(Error::bad(CommandFault::HiddenSign { code, place }));
        }
    }
    Ok(())
}
