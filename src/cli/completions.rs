//! `torquill completions SHELL`: what a shell needs so that it asks the program for candidates.

use super::completing::ASKED_BY;
use super::output;
use crate::error::Result;
use clap::Args;
use clap_complete::Shell;
use clap_complete::env::Shells;

/// CompletionsArguments of `completions`.
#[derive(Debug, Args)]
#[command(after_long_help = "Examples:
  torquill completions bash
  torquill completions fish > torquill.fish

Names of movements, lifters, gyms, bands and chains are completed, those of
--models too, and paths of parameters step by step. Put the line for your shell
into its start-up file:
  bash        source <(torquill completions bash)
  zsh         source <(torquill completions zsh)
  fish        torquill completions fish | source")]
pub struct CompletionsArguments {
    /// Shell to write the script for
    shell: Shell,
}

/// Runs the command.
pub fn run(arguments: &CompletionsArguments) -> Result<()> {
    let mut script = Vec::new();
    if let Some(shell) = Shells::builtins().completer(&arguments.shell.to_string()) {
        // Writing into memory does not fail.
        let _ = shell.write_registration(ASKED_BY, "torquill", "torquill", "torquill", &mut script);
    }
    output::print(&String::from_utf8_lossy(&script))
}
