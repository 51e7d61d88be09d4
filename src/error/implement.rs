//! What is wrong with an implement or its text.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// What is wrong with an implement or its text.
#[derive(Debug, Clone, PartialEq)]
pub enum ImplementFault {}
