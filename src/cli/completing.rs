//! What a shell offers while a command is typed: names from the library, paths of parameters, files.
//!
//! In: the words typed so far. Out: candidates. The library is that of `--models` where it stands among the words.

use super::options;
use crate::library::{Library, Shelf, assemble, numeric_paths};
use clap::Command;
use clap_complete::CompleteEnv;
use clap_complete::engine::{
    ArgValueCompleter, CompletionCandidate, PathCompleter, ValueCompleter,
};
use std::collections::BTreeSet;
use std::ffi::OsStr;
use std::path::Path;

/// The variable through which a shell asks for candidates.
pub const ASKED_BY: &str = "TORQUILL_COMPLETE";

/// Answers a shell that asks for candidates; `false` where none asks.
///
/// **Fails** for an unknown shell, or if standard output is closed.
pub fn answered(command: fn() -> Command) -> clap::error::Result<bool> {
    let folder = std::env::current_dir().ok();
    CompleteEnv::with_factory(|| with_candidates(command()))
        .var(ASKED_BY)
        .try_complete(std::env::args_os(), folder.as_deref())
}

/// The command with what is offered for its values.
fn with_candidates(command: Command) -> Command {
    command.mut_subcommands(|own| {
        own.mut_args(|argument| match completer(argument.get_id().as_str()) {
            Some(completer) => argument.add(completer),
            None => argument,
        })
    })
}

/// What completes the value of an option or place.
fn completer(id: &str) -> Option<ArgValueCompleter> {
    Some(match id {
        "movement" | "frozen" | "about" => {
            ArgValueCompleter::new(|typed: &OsStr| names(Shelf::Movements, typed))
        }
        "lifter" => ArgValueCompleter::new(|typed: &OsStr| or_files(Shelf::Lifters, typed)),
        "gym" => ArgValueCompleter::new(|typed: &OsStr| or_files(Shelf::Gyms, typed)),
        "band" => ArgValueCompleter::new(|typed: &OsStr| names(Shelf::Bands, typed)),
        "chain" => ArgValueCompleter::new(|typed: &OsStr| names(Shelf::Chains, typed)),
        "set" => ArgValueCompleter::new(|typed: &OsStr| paths(typed, "=")),
        "param" => ArgValueCompleter::new(|typed: &OsStr| paths(typed, "")),
        _ => return None,
    })
}

/// Words of the command line, and the value of an option among them.
fn typed_words() -> Vec<String> {
    std::env::args().collect()
}

fn value_of(words: &[String], option: &str) -> Option<String> {
    let glued = format!("{option}=");
    let beside = words.windows(2).find(|pair| pair[0] == option);
    let beside = beside.map(|pair| pair[1].clone());
    let glued = words.iter().find_map(|word| word.strip_prefix(&glued));
    beside.or_else(|| glued.map(str::to_owned))
}

/// The library that the command will use; the built-in one where the folder cannot be read.
fn library(words: &[String]) -> Library {
    let folder = value_of(words, "--models");
    let read = options::library(folder.as_deref().map(Path::new));
    read.unwrap_or_else(|_| Library::built_in())
}

fn candidates(typed: &OsStr, names: impl IntoIterator<Item = String>) -> Vec<CompletionCandidate> {
    let typed = typed.to_string_lossy();
    let fitting = names.into_iter().filter(|name| name.starts_with(&*typed));
    fitting.map(CompletionCandidate::new).collect()
}

fn names(shelf: Shelf, typed: &OsStr) -> Vec<CompletionCandidate> {
    candidates(typed, library(&typed_words()).names(shelf))
}

fn or_files(shelf: Shelf, typed: &OsStr) -> Vec<CompletionCandidate> {
    let mut offered = names(shelf, typed);
    let files = PathCompleter::any().filter(|path| path.extension().is_some_and(|e| e == "ron"));
    offered.extend(files.complete(typed));
    offered
}

/// Paths of parameters, one step at a time: those that begin as typed, up to their next dot.
fn paths(typed: &OsStr, behind: &str) -> Vec<CompletionCandidate> {
    let typed_text = typed.to_string_lossy();
    let steps: BTreeSet<String> = all_paths()
        .into_iter()
        .filter(|path| path.starts_with(&*typed_text))
        .map(|path| {
            let dot = path[typed_text.len()..].find('.');
            dot.map_or_else(
                || format!("{path}{behind}"),
                |dot| path[..=typed_text.len() + dot].to_owned(),
            )
        })
        .collect();
    candidates(typed, steps)
}

/// Every path that can be set for the movement among the words, or for any.
fn all_paths() -> BTreeSet<String> {
    let words = typed_words();
    let library = library(&words);
    let lifter = value_of(&words, "--lifter").unwrap_or_else(|| "reference-man".to_owned());
    let movements = library.movements();
    let named: Vec<&String> = movements
        .iter()
        .filter(|name| words.contains(name))
        .collect();
    let asked = if named.is_empty() {
        movements.iter().collect()
    } else {
        named
    };
    let models = asked.into_iter();
    models
        .filter_map(|name| assemble(&library, &lifter, name, &[]).ok())
        .flat_map(|model| {
            let technique = model.movement.technique.keys();
            let mut paths: Vec<String> = technique.map(|t| format!("technique.{t}")).collect();
            paths.extend(numeric_paths(&model).into_iter().map(|number| number.path));
            // A moment arm is meant by its own path: its scale stands for the whole course.
            let arms = paths.iter().filter_map(|path| path.strip_suffix(".scale"));
            let arms: Vec<String> = arms.map(str::to_owned).collect();
            paths.extend(arms);
            paths
        })
        .collect()
}
