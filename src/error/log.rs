//! What is wrong with a training log.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// What is wrong with a training log.
#[derive(Debug, Clone, PartialEq)]
pub enum LogFault {}
