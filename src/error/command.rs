//! What is wrong with the arguments of a command.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// What is wrong with the arguments of a command.
#[derive(Debug, Clone, PartialEq)]
pub enum CommandFault {}
