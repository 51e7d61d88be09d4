//! `torquill manual -o DIR`: a manual page for the program and for every command, made from the same help.

use super::folder::{check_folder, check_names, write_into};
use super::output;
use crate::error::Result;
use clap::{Args, Command};
use clap_mangen::Man;
use std::path::PathBuf;

/// ManualArguments of `manual`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill manual > torquill.1
  torquill manual -o man/man1

With the pages in ~/.local/share/man/man1, `man torquill-curve` shows the help
of `torquill curve`.")]
pub struct ManualArguments {
    /// Folder to write a page for every command into; made if it is not there
    ///
    /// Without it the program's own page goes to standard output.
    #[arg(short, long, value_name = "DIR")]
    output: Option<PathBuf>,
    /// Replace files that exist
    #[arg(long)]
    force: bool,
}

/// Runs the command.
pub fn run(arguments: &ManualArguments, command: Command) -> Result<()> {
    let pages = pages(command);
    let Some(folder) = &arguments.output else {
        let own = pages.first().map(|(_, page)| page.as_slice());
        return output::print(&String::from_utf8_lossy(own.unwrap_or_default()));
    };
    check_folder(folder)?;
    let names: Vec<String> = pages.iter().map(|(name, _)| name.clone()).collect();
    check_names(folder, &names, arguments.force)?;
    write_into(folder, &pages)
}

/// The pages with their file names, the program's own first.
fn pages(command: Command) -> Vec<(String, Vec<u8>)> {
    let mut command = command.disable_help_subcommand(true);
    command.build();
    let of_commands: Vec<Command> = command.get_subcommands().cloned().collect();
    std::iter::once(command)
        .chain(of_commands)
        .map(page)
        .collect()
}

fn page(command: Command) -> (String, Vec<u8>) {
    let page = Man::new(command);
    let mut bytes = Vec::new();
    // Writing into memory does not fail.
    let _ = page.render(&mut bytes);
    (page.get_filename(), bytes)
}
