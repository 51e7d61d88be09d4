//! Arguments in one form: long names, in the order in which a command defines them, nothing but what was typed, and
//! nothing that names or replaces an output.
//!
//! In: a command's definition and what was typed. Out: words that give the same output when they are typed again.

use crate::grammar::OwnBandText;
use clap::{Arg, ArgAction, ArgMatches, parser::ValueSource};
use std::path::{Component, Path};

/// Options that name a file or folder to write.
pub const OUTPUTS: [&str; 8] = [
    "why_figure",
    "output",
    "over_time",
    "animation",
    "fatigue",
    "loads",
    "sheet",
    "picture",
];

/// Options that write more files beside an output, or replace files.
pub const BESIDE: [&str; 3] = ["words", "data", "force"];

/// Options that only pictures and sheets follow.
pub const LOOKS: [&str; 4] = ["size", "theme", "live_text", "paper"];

/// Options that only printed tables follow.
const PRINTS: [&str; 4] = ["format", "detail", "curves", "provenance"];

/// Options of a setup; `versus` stands between setups.
const SETUP: [&str; 5] = ["load", "band", "chain", "item", "setup"];

/// A command, an option and the flag that it brings: the picture of `max` needs the velocities, so they are printed too.
const BROUGHT: [(&str, &str, &str); 1] = [("max", "output", "velocities")];

/// Arguments that may be the path of a file.
const PATHS: [&str; 8] = [
    "movement",
    "lifter",
    "gym",
    "log",
    "velocities",
    "setup",
    "team",
    "tasks",
];

/// What the arguments are to give again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WantedOutput {
    /// What is printed.
    Printed,
    /// A picture or sheet.
    Drawn,
    /// The table that goes beside a picture: of the setup of this number, where there are several.
    Table(Option<usize>),
    /// The table that `--data` writes, as the command prints it with its record.
    Data,
}

impl WantedOutput {
    /// Whether it is rows of CSV.
    fn is_table(self) -> bool {
        matches!(self, Self::Table(_) | Self::Data)
    }

    /// Whether an option has a part in what is wanted.
    fn needs(self, id: &str) -> bool {
        let others: &[&str] = match self {
            Self::Printed => &LOOKS,
            Self::Drawn => &PRINTS,
            Self::Table(_) => &[
                "size",
                "theme",
                "live_text",
                "paper",
                "format",
                "detail",
                "curves",
                "provenance",
            ],
            Self::Data => &["size", "theme", "live_text", "paper", "provenance"],
        };
        ![&OUTPUTS, &BESIDE[..], &["models"], others]
            .concat()
            .contains(&id)
    }
}

/// The arguments of a command behind its name.
pub fn arguments(
    definition: &clap::Command,
    matches: &ArgMatches,
    wanted: WantedOutput,
) -> Vec<String> {
    let mut words = Vec::new();
    let mut is_setup_told = false;
    for argument in definition.get_arguments() {
        let id = argument.get_id().as_str();
        if SETUP.contains(&id) || id == "versus" {
            if !is_setup_told {
                is_setup_told = true;
                words.extend(setup_words(definition, matches, wanted));
            }
        } else if wanted == WantedOutput::Data && id == "format" {
            words.extend(["--format", "csv"].map(str::to_owned));
        } else if wanted.needs(id)
            && !(wanted.is_table() && is_not_in_tables(definition, id))
            && (is_typed(matches, id) || is_brought(definition, matches, id))
        {
            words.extend(argument_words(argument, matches));
        }
    }
    words
}

/// Options that the CSV of a command does not follow: its table has no hardest part.
const NOT_IN_TABLES: [(&str, &str); 2] = [("curve", "region_share"), ("vary", "region_share")];

fn is_not_in_tables(definition: &clap::Command, id: &str) -> bool {
    NOT_IN_TABLES.contains(&(definition.get_name(), id))
}

/// Whether an option that was typed brings a flag with it.
fn is_brought(definition: &clap::Command, matches: &ArgMatches, flag: &str) -> bool {
    let command = definition.get_name();
    let mut brought = BROUGHT.iter();
    brought
        .any(|(of, option, brings)| *of == command && *brings == flag && is_typed(matches, option))
}

/// The words of every setup, those of several with `--versus` between them.
fn setup_words(
    definition: &clap::Command,
    matches: &ArgMatches,
    wanted: WantedOutput,
) -> Vec<String> {
    let setups = setups(definition, matches);
    match wanted {
        WantedOutput::Table(Some(number)) => setups.into_iter().nth(number).unwrap_or_default(),
        _ => setups.join(&"--versus".to_owned()),
    }
}

/// The options of every setup: those before the first `--versus`, those behind it, and so on.
pub fn setups(definition: &clap::Command, matches: &ArgMatches) -> Vec<Vec<String>> {
    let borders = places(matches, "versus");
    let mut setups = vec![Vec::new(); borders.len() + 1];
    for argument in definition.get_arguments() {
        let id = argument.get_id().as_str();
        if SETUP.contains(&id) && is_typed(matches, id) {
            for (value, place) in values(matches, id).into_iter().zip(places(matches, id)) {
                let number = borders.iter().filter(|border| **border < place).count();
                setups[number].extend([long(argument), value]);
            }
        }
    }
    setups
}

fn places(matches: &ArgMatches, id: &str) -> Vec<usize> {
    if !is_typed(matches, id) {
        return Vec::new();
    }
    matches.indices_of(id).into_iter().flatten().collect()
}

/// Whether an argument was typed, not left at its default.
pub fn is_typed(matches: &ArgMatches, id: &str) -> bool {
    let is_known = matches.try_contains_id(id).is_ok();
    is_known && matches.value_source(id) == Some(ValueSource::CommandLine)
}

/// The values of an argument as typed, paths in the form that goes out.
pub fn values(matches: &ArgMatches, id: &str) -> Vec<String> {
    let raw = matches.try_get_raw(id).ok().flatten();
    let typed = raw
        .into_iter()
        .flatten()
        .map(|value| value.to_string_lossy().into_owned());
    typed.map(|value| portable_value(id, value)).collect()
}

fn argument_words(argument: &Arg, matches: &ArgMatches) -> Vec<String> {
    let id = argument.get_id().as_str();
    if matches!(argument.get_action(), ArgAction::SetTrue) {
        return vec![long(argument)];
    }
    let values = values(matches, id).into_iter();
    if argument.is_positional() {
        return values.collect();
    }
    values.flat_map(|value| [long(argument), value]).collect()
}

fn long(argument: &Arg) -> String {
    format!("--{}", argument.get_long().unwrap_or_default())
}

/// A value in which a path is in the form that goes out.
fn portable_value(id: &str, value: String) -> String {
    if PATHS.contains(&id) {
        return portable(&value);
    }
    match file_inside(id, &value) {
        Some(file) => value.replace(&file, &portable(&file)),
        None => value,
    }
}

/// The file of readings in the value of `--band`, or that of a trace.
fn file_inside(id: &str, value: &str) -> Option<String> {
    if id == "traces" {
        let (_, file) = value.split_once('@')?;
        return Some(file.trim().to_owned());
    }
    let band = OwnBandText::of(value).filter(|_| id == "band")?;
    band.file().map(str::to_owned)
}

/// A path that leads no one to the folders of a machine: one that stays below the present folder as it is, of any
/// other the file's name.
#[must_use]
pub fn portable(path: &str) -> String {
    if stays_below(path) {
        return path.to_owned();
    }
    let name = Path::new(path).file_name();
    name.map_or_else(String::new, |name| name.to_string_lossy().into_owned())
}

/// Whether a path neither begins at a root nor climbs.
#[must_use]
pub fn stays_below(path: &str) -> bool {
    let mut parts = Path::new(path).components();
    !path.contains('\\')
        && parts.all(|part| matches!(part, Component::Normal(_) | Component::CurDir))
}

/// Every path of a file among the arguments, as typed.
pub fn paths(matches: &ArgMatches) -> Vec<String> {
    let raw = |id: &str| -> Vec<String> {
        let values = matches.try_get_raw(id).ok().flatten();
        let values = values.into_iter().flatten();
        values
            .map(|value| value.to_string_lossy().into_owned())
            .collect()
    };
    let named = PATHS.iter().flat_map(|id| raw(id));
    let inside = ["band", "traces"].into_iter().flat_map(|id| {
        let values = raw(id).into_iter();
        values.filter_map(move |value| file_inside(id, &value))
    });
    named.chain(inside).collect()
}
