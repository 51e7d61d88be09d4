//! Numbers among the words of a command line: a negative one reaches its option, and a count that is none is told plainly.
//!
//! In: words, the program's definition. Out: words in which no negative value is taken for an option; readers of counts,
//! shares and percents for the definitions.

use super::texts;
use crate::narrative::faults::in_one_line;
use crate::narrative::number_hints::{COUNT_DUE, NUMBER_DUE, PERCENT_DUE, count_too_large};
use crate::units::System;
use clap::builder::ValueParser;
use clap::{Arg, Command};
use std::any::TypeId;
use std::ffi::{OsStr, OsString};
use std::num::{IntErrorKind, ParseIntError};
use std::str::FromStr;

/// The words with every negative value joined to the option before it: `--age -3` becomes `--age=-3`.
///
/// Only words that begin like a number, and only behind a long option that takes a value.
pub fn joined(program: &Command, words: Vec<OsString>) -> Vec<OsString> {
    let command = words
        .iter()
        .skip(1)
        .filter_map(|word| word.to_str())
        .find_map(|word| program.find_subcommand(word));
    let takes_value = |word: &OsStr| {
        let name = word.to_str().and_then(|word| word.strip_prefix("--"));
        let own = command.into_iter().flat_map(Command::get_arguments);
        let mut all = own.chain(program.get_arguments());
        let known = name.and_then(|name| all.find(|arg| is_called(arg, name)));
        known.is_some_and(|arg| arg.get_action().takes_values())
    };
    let mut joined: Vec<OsString> = Vec::with_capacity(words.len());
    for word in words {
        let before = joined.last().map(OsString::as_os_str);
        let joins = is_negative(&word) && before.is_some_and(takes_value);
        match joined.last_mut() {
            Some(before) if joins => {
                before.push("=");
                before.push(word);
            }
            _ => joined.push(word),
        }
    }
    joined
}

fn is_called(arg: &Arg, name: &str) -> bool {
    let aliases = arg.get_all_aliases().unwrap_or_default();
    arg.get_long() == Some(name) || aliases.contains(&name)
}

/// Whether a word begins like a negative number: "-3", "-.5 kg", "-20 %".
fn is_negative(word: &OsStr) -> bool {
    let rest = word.to_str().and_then(|word| word.strip_prefix('-'));
    let digits = rest.map(|rest| rest.trim_start_matches('.'));
    digits.is_some_and(|digits| digits.starts_with(|sign: char| sign.is_ascii_digit()))
}

/// The commands with counts that are read in our words.
#[must_use]
pub fn counted(command: Command) -> Command {
    in_words(command).mut_subcommands(in_words)
}

fn in_words(command: Command) -> Command {
    command.mut_args(|arg| match counts(arg.get_value_parser()) {
        Some(reader) if arg.get_action().takes_values() => arg.value_parser(reader),
        _ => arg,
    })
}

/// The reader for a count of the same type; none for anything else.
fn counts(reader: &ValueParser) -> Option<ValueParser> {
    let is = |of: TypeId| reader.type_id() == of;
    match () {
        () if is(TypeId::of::<u32>()) => Some(ValueParser::new(count::<u32>)),
        () if is(TypeId::of::<u64>()) => Some(ValueParser::new(count::<u64>)),
        () if is(TypeId::of::<usize>()) => Some(ValueParser::new(count::<usize>)),
        () => None,
    }
}

fn count<T: FromStr<Err = ParseIntError> + Bounded>(text: &str) -> Result<T, String> {
    let number = text.trim().parse::<T>();
    number.map_err(|fault| match fault.kind() {
        IntErrorKind::PosOverflow => count_too_large(&T::MOST.to_string()),
        _ => COUNT_DUE.to_owned(),
    })
}

/// A kind of count with a largest one.
trait Bounded {
    /// The largest.
    const MOST: u64;
}

impl Bounded for u32 {
    const MOST: u64 = Self::MAX as u64;
}

impl Bounded for u64 {
    const MOST: u64 = Self::MAX;
}

impl Bounded for usize {
    const MOST: u64 = Self::MAX as u64;
}

/// Reads a share, "80%" or "0.8", for a definition.
///
/// **Fails** as [`texts::share`], in its words.
pub fn share(text: &str) -> Result<f64, String> {
    texts::share(text).map_err(|error| in_one_line(&error, System::Metric))
}

/// Reads a percentage, "5%" or "5", for a definition.
///
/// **Fails** for what is no number.
pub fn percent(text: &str) -> Result<f64, String> {
    let digits = text.trim().trim_end_matches('%').trim_end();
    let number = digits.parse::<f64>().ok();
    number
        .filter(|number| number.is_finite())
        .ok_or_else(|| PERCENT_DUE.to_owned())
}

/// Reads a number, for a definition.
///
/// **Fails** for what is none.
pub fn number(text: &str) -> Result<f64, String> {
    let number = text.trim().parse::<f64>().ok();
    number
        .filter(|number| number.is_finite())
        .ok_or_else(|| NUMBER_DUE.to_owned())
}
