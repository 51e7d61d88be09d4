//! Options that change nothing in a call: they are refused, since whoever typed them counts on them.
//!
//! In: what was typed. Out: nothing, or the fault with what the option is for.

use super::canonical::{LOOKS, OUTPUTS, is_typed};
use crate::error::{CommandFault, Error, Result};
use clap::ArgMatches;

/// Options of a sheet's paper.
const PAPER: &str = "paper";

/// Options that change pictures, not sheets or pages.
const PICTURED: [&str; 3] = ["size", "theme", "live_text"];

/// Checks that options of pictures and sheets have a picture or sheet to change, and leave to replace a file to be replaced.
///
/// **Fails** with the first that has none.
pub fn check(program: &clap::Command, command: &str, matches: &ArgMatches) -> Result<()> {
    let own = program.find_subcommand(command);
    let arguments = own.into_iter().flat_map(clap::Command::get_arguments);
    let outputs: Vec<&clap::Arg> = arguments
        .filter(|argument| OUTPUTS.contains(&argument.get_id().as_str()))
        .collect();
    let is_given = |id: &str| is_typed(matches, id);
    let is_written =
        |argument: &clap::Arg| argument.is_positional() || is_given(argument.get_id().as_str());
    let is_picture = |argument: &clap::Arg| match argument.get_id().as_str() {
        "sheet" => false,
        "output" => command != "fit" && !is_given("team"),
        _ => true,
    };
    let has_sheet = ["sheet", "team"].into_iter().any(is_given);
    for id in LOOKS.into_iter().chain(["force"]).filter(|id| is_given(id)) {
        let of_it = |argument: &&&clap::Arg| match id {
            PAPER => argument.get_id() == "sheet",
            _ => !PICTURED.contains(&id) || is_picture(argument),
        };
        let needed = outputs.iter().filter(of_it);
        let is_idle = match id {
            PAPER => !has_sheet,
            "force" => !(is_given("data") || outputs.iter().any(|argument| is_written(argument))),
            _ => !needed.clone().any(|argument| is_written(argument)),
        };
        if is_idle {
            let long = needed.filter_map(|argument| argument.get_long());
            let mut needed: Vec<String> = long.map(str::to_owned).collect();
            let has_data = own.is_some_and(|own| {
                let mut arguments = own.get_arguments();
                arguments.any(|argument| argument.get_id() == "data")
            });
            if id == "force" && has_data {
                needed.push("data".to_owned());
            }
            return Err(Error::bad(CommandFault::Idle {
                option: id.replace('_', "-"),
                needed,
            }));
        }
    }
    check_live_text(&outputs, matches)
}

/// Letters stay letters in SVG alone.
///
/// **Fails** where every picture is a PNG.
fn check_live_text(outputs: &[&clap::Arg], matches: &ArgMatches) -> Result<()> {
    let typed = outputs
        .iter()
        .filter_map(|argument| {
            matches
                .try_get_raw(argument.get_id().as_str())
                .ok()
                .flatten()
        })
        .flatten();
    let is_png = |path: &std::ffi::OsStr| {
        let ending = std::path::Path::new(path).extension();
        ending.is_some_and(|ending| ending.eq_ignore_ascii_case("png"))
    };
    let mut typed = typed.peekable();
    if is_typed(matches, "live_text") && typed.peek().is_some() && typed.all(is_png) {
        return Err(Error::bad(CommandFault::Idle {
            option: "live-text".to_owned(),
            needed: Vec::new(),
        }));
    }
    Ok(())
}
