//! The functions of the package for Python are those of the program's own definitions.
//!
//! In: the definitions of all commands. Out: `python/torquill/commands.py`; `UPDATE=1` writes it.

use clap::builder::{PossibleValue, ValueParser};
use clap::{Arg, ArgAction, Command};
use std::any::TypeId;
use std::fmt::Write;

/// What a function returns.
#[derive(Clone, Copy, PartialEq)]
enum Returned {
    Tables,
    /// Tables of a command whose output is a file of a lifter, not a picture.
    Lifter,
    Figure,
    Lecture,
    Page,
    Text,
}

/// The commands that become functions.
const COMMANDS: &[(&str, Returned)] = &[
    ("movements", Returned::Tables),
    ("curve", Returned::Tables),
    ("explain", Returned::Page),
    ("figure", Returned::Figure),
    ("vary", Returned::Tables),
    ("rep", Returned::Tables),
    ("max", Returned::Tables),
    ("plan", Returned::Tables),
    ("progress", Returned::Tables),
    ("fit", Returned::Lifter),
    ("pick", Returned::Tables),
    ("lecture", Returned::Lecture),
    ("parameters", Returned::Tables),
    ("sources", Returned::Tables),
    ("show", Returned::Text),
    ("check", Returned::Text),
];

/// Options that make a picture.
const PICTURES: &[&str] = &[
    "output",
    "why_figure",
    "over_time",
    "animation",
    "fatigue",
    "loads",
];

/// Whether an option of a command that returns tables makes a picture.
fn is_picture(id: &str, returned: Returned) -> bool {
    match returned {
        Returned::Tables => PICTURES.contains(&id),
        Returned::Lifter => id == "picture",
        _ => false,
    }
}

/// Options that a function does not have: what it returns is neither printed nor written beside a picture.
fn is_left_out(id: &str, returned: Returned) -> bool {
    let of_figure =
        returned == Returned::Figure && ["output", "words", "data", "force"].contains(&id);
    let of_page = returned == Returned::Page && id == "format";
    let of_all = ["help", "version", "format", "provenance"].contains(&id);
    of_all || of_figure || of_page
}

const HEAD: &str = "\"\"\"One function a command of the program, made from its own definitions.

Do not edit: `UPDATE=1 cargo test --test suite -- python_commands` writes this file.
Quantities are texts with their unit (\"80 kg\", \"60 cm\", \"30 deg\"); answers are in SI with the unit at the end of each
name, and models/DATA.md says what every name means.
\"\"\"

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from typing import Any, Literal

from . import _call
from ._call import Figure, Page

Path = str | os.PathLike[str]
";

/// A name that Python takes: `from` is a word of its own.
fn name_of(argument: &Arg) -> String {
    let id = argument.get_id().as_str();
    match id {
        "from" => "from_".to_owned(),
        id => id.to_owned(),
    }
}

fn is_flag(argument: &Arg) -> bool {
    matches!(argument.get_action(), ArgAction::SetTrue)
}

fn is_list(argument: &Arg) -> bool {
    matches!(argument.get_action(), ArgAction::Append)
}

/// The type of a value that is none of a list.
fn plain_type(argument: &Arg) -> String {
    let parser: &ValueParser = argument.get_value_parser();
    let words: Vec<PossibleValue> = argument.get_possible_values();
    let is = |id: TypeId| parser.type_id() == id;
    if !words.is_empty() {
        let words: Vec<String> = words
            .iter()
            .map(|word| format!("\"{}\"", word.get_name()))
            .collect();
        return format!("Literal[{}]", words.join(", "));
    }
    if is(TypeId::of::<f64>()) {
        "float".to_owned()
    } else if [
        TypeId::of::<usize>(),
        TypeId::of::<u32>(),
        TypeId::of::<u64>(),
    ]
    .into_iter()
    .any(is)
    {
        "int".to_owned()
    } else if is(TypeId::of::<std::path::PathBuf>()) {
        "Path".to_owned()
    } else {
        "str".to_owned()
    }
}

/// The default of an option as Python writes it.
fn default_of(argument: &Arg) -> Option<String> {
    let value = argument
        .get_default_values()
        .first()?
        .to_string_lossy()
        .into_owned();
    Some(match plain_type(argument).as_str() {
        "float" | "int" => value,
        _ => format!("\"{value}\""),
    })
}

/// Type and default of a parameter.
fn typed(argument: &Arg, returned: Returned) -> (String, Option<String>) {
    let id = argument.get_id().as_str();
    let plain = plain_type(argument);
    if id == "versus" {
        return (
            "Sequence[Mapping[str, Any]]".to_owned(),
            Some("()".to_owned()),
        );
    }
    if is_flag(argument) {
        return ("bool".to_owned(), Some("False".to_owned()));
    }
    if is_picture(id, returned) {
        return ("Path | bool | None".to_owned(), Some("None".to_owned()));
    }
    if id == "output" {
        return ("Path | None".to_owned(), Some("None".to_owned()));
    }
    if is_list(argument) {
        let mapping = if id == "set" {
            " | Mapping[str, str]"
        } else {
            ""
        };
        return (
            format!("{plain} | Sequence[{plain}]{mapping}"),
            Some("()".to_owned()),
        );
    }
    match default_of(argument) {
        Some(default) => (plain, Some(default)),
        None if argument.is_required_set() => (plain, None),
        None => (format!("{plain} | None"), Some("None".to_owned())),
    }
}

/// Help in one paragraph.
fn help_of(argument: &Arg) -> String {
    let help = argument.get_long_help().or(argument.get_help());
    let text = help.map(ToString::to_string).unwrap_or_default();
    let parts: Vec<String> = text
        .split("\n\n")
        .map(|part| part.split_whitespace().collect::<Vec<_>>().join(" "))
        .map(|part| part.trim_end_matches('.').to_owned())
        .collect();
    parts.join(". ").replace('\\', "\\\\")
}

/// What stands in the docstring of a parameter.
fn told(argument: &Arg, returned: Returned) -> String {
    let id = argument.get_id().as_str();
    let mut text = help_of(argument);
    if id == "versus" {
        text = "Further setups to compare with, each a mapping of load, band, chain, item, setup"
            .to_owned();
    } else if is_picture(id, returned) {
        text += "; True for a Figure under this name in the answer";
    } else if id == "set" {
        text += "; or a mapping of paths to values";
    }
    let values: Vec<String> = argument
        .get_value_names()
        .filter(|_| {
            !is_flag(argument) && argument.get_possible_values().is_empty() && id != "versus"
        })
        .into_iter()
        .flatten()
        .map(ToString::to_string)
        .filter(|name| !argument.is_positional() && !name.is_empty())
        .collect();
    match values.first() {
        Some(value) => format!("{text} ({value})"),
        None => text,
    }
}

fn returns(returned: Returned) -> (&'static str, &'static str) {
    match returned {
        Returned::Tables | Returned::Lifter => (
            "dict[str, Any]",
            "the keys of the program's JSON; every list of objects is a dict of NumPy columns",
        ),
        Returned::Figure => (
            "Figure",
            "the figure as SVG, with caption, alternative text and data",
        ),
        Returned::Lecture => (
            "dict[str, Figure]",
            "the figures by name, with caption, alternative text and data",
        ),
        Returned::Page => ("Page", "the page as HTML"),
        Returned::Text => ("str", "what the program prints"),
    }
}

/// One function.
fn function(command: &Command, returned: Returned) -> String {
    let name = command.get_name();
    let arguments: Vec<&Arg> = command
        .get_arguments()
        .filter(|argument| !is_left_out(argument.get_id().as_str(), returned))
        .collect();
    let (places, options): (Vec<&Arg>, Vec<&Arg>) = arguments
        .iter()
        .copied()
        .partition(|argument| argument.is_positional());
    let parameter = |argument: &&Arg| match typed(argument, returned) {
        (kind, None) => format!("    {}: {kind},\n", name_of(argument)),
        (kind, Some(default)) => format!("    {}: {kind} = {default},\n", name_of(argument)),
    };
    let (kind, answer) = returns(returned);
    let about = command
        .get_about()
        .map(ToString::to_string)
        .unwrap_or_default();
    let mut text = format!("\n\ndef {name}(\n");
    text.extend(places.iter().map(parameter));
    text += "    *,\n";
    text.extend(options.iter().map(parameter));
    let _ = write!(
        text,
        ") -> {kind}:\n    \"\"\"{}.\n\n",
        about.trim_end_matches('.')
    );
    for argument in &arguments {
        let _ = writeln!(
            text,
            "    :param {}: {}.",
            name_of(argument),
            told(argument, returned)
        );
    }
    let _ = write!(
        text,
        "    :returns: {answer}.\n    \"\"\"\n    options: list[_call.Option] = [\n"
    );
    for argument in &arguments {
        let written = match argument.get_long() {
            Some(long) => format!("--{long}"),
            None => String::new(),
        };
        let value = name_of(argument);
        let _ = match default_of(argument).filter(|_| !is_list(argument) && !is_flag(argument)) {
            Some(default) => writeln!(text, "        (\"{written}\", {value}, {default}),"),
            None => writeln!(text, "        (\"{written}\", {value}, None),"),
        };
    }
    text += "    ]\n";
    let pictures: Vec<String> = arguments
        .iter()
        .filter(|argument| is_picture(argument.get_id().as_str(), returned))
        .map(|argument| format!("\"--{}\"", argument.get_long().unwrap_or_default()))
        .collect();
    text += &match returned {
        Returned::Tables | Returned::Lifter if pictures.is_empty() => {
            format!("    return _call.table(\"{name}\", options)\n")
        }
        Returned::Tables | Returned::Lifter => format!(
            "    return _call.table(\"{name}\", options, [{}])\n",
            pictures.join(", ")
        ),
        Returned::Figure => "    return _call.figure(options)\n".to_owned(),
        Returned::Lecture => "    return _call.lecture(options)\n".to_owned(),
        Returned::Page => format!("    return _call.page(\"{name}\", options)\n"),
        Returned::Text => format!("    return _call.text(\"{name}\", options)\n"),
    };
    text
}

#[test]
fn regress_the_functions_for_python_are_the_commands() {
    let mut program = torquill::cli::definitions();
    program.build();
    let mut text = HEAD.to_owned();
    let names: Vec<String> = COMMANDS
        .iter()
        .map(|(name, _)| format!("    \"{name}\",\n"))
        .collect();
    let _ = write!(text, "\n__all__ = [\n{}]\n", names.concat());
    for (name, returned) in COMMANDS {
        let command = program
            .find_subcommand(name)
            .expect("the command is defined");
        text += &function(command, *returned);
    }
    let place = concat!(env!("CARGO_MANIFEST_DIR"), "/python/torquill/commands.py");
    if std::env::var_os("UPDATE").is_some() {
        std::fs::write(place, &text).expect("the file can be written");
    }
    let there = std::fs::read_to_string(place).unwrap_or_default();
    assert!(
        there == text,
        "commands.py is not that of the definitions: UPDATE=1 writes it"
    );
    // What is left out leads elsewhere: how a call is repeated, completions, manual pages.
    let all: Vec<&str> = program.get_subcommands().map(Command::get_name).collect();
    let left: Vec<&&str> = all
        .iter()
        .filter(|name| COMMANDS.iter().all(|(known, _)| known != *name))
        .collect();
    assert_eq!(
        left,
        [
            &"explore",
            &"gym",
            &"again",
            &"completions",
            &"manual",
            &"help"
        ]
    );
}

#[test]
fn law_a_call_inside_prints_nothing_and_returns_what_the_program_prints() {
    for line in [
        "curve biceps-curl --format json",
        "curve biceps-curl --load x",
        "curve",
        "--version",
        "rep bench-press --load 300kg",
    ] {
        let words: Vec<String> = line.split(' ').map(str::to_owned).collect();
        let inside = torquill::cli::call_inside(&words);
        let borrowed: Vec<&str> = words.iter().map(String::as_str).collect();
        let outside = crate::calling::call(&borrowed);
        assert_eq!(i32::from(inside.status), outside.status, "{line}");
        assert_eq!(
            (inside.stdout, inside.stderr),
            (outside.out, outside.complaint),
            "{line}"
        );
    }
}
