//! Options that change nothing in a call: they are refused, since whoever typed them counts on them.
//!
//! In: what was typed. Out: nothing, or the fault with what the option is for.

use super::canonical::{LOOKS, OUTPUTS, is_typed};
use crate::error::{CommandFault, Error, Result};
use clap::ArgMatches;

/// Options of a sheet's paper.
const PAPER: &str = "paper";

/// Checks that options of pictures and sheets have a picture or sheet to change.
///
/// **Fails** with the first that has none.
pub fn check(program: &clap::Command, command: &str, matches: &ArgMatches) -> Result<()> {
    let own = program.find_subcommand(command);
    let arguments = own.into_iter().flat_map(clap::Command::get_arguments);
    let outputs: Vec<&clap::Arg> = arguments
        .filter(|argument| OUTPUTS.contains(&argument.get_id().as_str()))
        .collect();
    let is_given = |id: &str| is_typed(matches, id);
    let has_output = outputs
        .iter()
        .any(|argument| argument.is_positional() || is_given(argument.get_id().as_str()));
    let has_sheet = ["sheet", "team"].into_iter().any(is_given);
    for id in LOOKS {
        let is_idle = match id {
            PAPER => !has_sheet,
            _ => !has_output,
        };
        if is_idle && is_given(id) {
            let needed = outputs.iter().filter(|argument| match id {
                PAPER => argument.get_id() == "sheet",
                _ => true,
            });
            let long = needed.filter_map(|argument| argument.get_long());
            return Err(Error::bad(CommandFault::Idle {
                option: id.replace('_', "-"),
                needed: long.map(str::to_owned).collect(),
            }));
        }
    }
    Ok(())
}
