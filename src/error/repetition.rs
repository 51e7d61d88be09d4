//! Why a repetition or a maximum cannot be simulated.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// Why a repetition or a maximum cannot be simulated.
#[derive(Debug, Clone, PartialEq)]
pub enum RepetitionFault {}
