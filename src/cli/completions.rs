//! `torquill completions SHELL`: a completion script on standard output.

use super::output;
use crate::error::Result;
use clap::Args;
use clap_complete::Shell;

/// CompletionsArguments of `completions`.
#[derive(Debug, Args)]
#[command(
    after_help = "Example:\n  torquill completions bash > ~/.local/share/bash-completion/completions/torquill"
)]
pub struct CompletionsArguments {
    /// Shell to write the script for
    shell: Shell,
}

/// Runs the command.
pub fn run(arguments: &CompletionsArguments, command: &mut clap::Command) -> Result<()> {
    let mut script = Vec::new();
    clap_complete::generate(arguments.shell, command, "torquill", &mut script);
    output::print(&String::from_utf8_lossy(&script))
}
