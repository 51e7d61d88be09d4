//! What is wrong in a model file or a path of a value.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// What is wrong in a model file or a path of a value.
#[derive(Debug, Clone, PartialEq)]
pub enum ModelFault {}
