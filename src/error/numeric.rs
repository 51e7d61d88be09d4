//! What the mathematics cannot do.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// What the mathematics cannot do.
#[derive(Debug, Clone, PartialEq)]
pub enum NumericFault {}
