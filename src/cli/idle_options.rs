//! Options that change nothing in a call: they are refused, since whoever typed them counts on them.
//!
//! In: what was typed. Out: nothing, or the fault with what the option is for.

use super::canonical::{LOOKS, OUTPUTS, is_typed};
use super::options::Format;
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
    check_live_text(&outputs, matches)?;
    check_provenance(command, matches)
}

/// Commands whose pictures, sheets and tables say how they were made, asked or not.
const SIGNING: [&str; 8] = [
    "fit", "lecture", "max", "pick", "plan", "progress", "rep", "vary",
];

/// How it was made is said over CSV and in JSON, by files and below a worked pose; a table for people has no place for it.
///
/// **Fails** where nothing that comes out could say it.
fn check_provenance(command: &str, matches: &ArgMatches) -> Result<()> {
    let is_signed = |id: &str| is_typed(matches, id) && SIGNING.contains(&command);
    let has_files = command == "again"
        || command == "figure"
        || command == "explain"
        || is_typed(matches, "data")
        || OUTPUTS.into_iter().any(is_signed);
    let format = matches.try_get_one::<Format>("format").ok().flatten();
    let says_it = has_files || format.is_some_and(|format| *format != Format::Table);
    if says_it || !matches.get_flag("provenance") {
        return Ok(());
    }
    let needed = ["format csv", "format json", "data"].map(str::to_owned);
    Err(Error::bad(CommandFault::Idle {
        option: "provenance".to_owned(),
        needed: needed.into_iter().filter(|_| format.is_some()).collect(),
    }))
}

/// Options of which one is due where an option is of what hangs on the bar.
pub const NEEDS_A_LOAD: [&str; 4] = ["load", "band", "item", "setup"];

/// The share from which a place belongs to the hardest part changes nothing where there is none.
///
/// **Fails** where it was typed and `heeds` says that nothing follows it.
pub fn check_region_share(matches: &ArgMatches, heeds: bool, needed: &[&str]) -> Result<()> {
    if heeds || !is_typed(matches, "region_share") {
        return Ok(());
    }
    Err(Error::bad(CommandFault::Idle {
        option: "region-share".to_owned(),
        needed: needed.iter().map(|one| (*one).to_owned()).collect(),
    }))
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
