//! Why a figure cannot be drawn.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// Why a figure cannot be drawn.
#[derive(Debug, Clone, PartialEq)]
pub enum FigureFault {}
