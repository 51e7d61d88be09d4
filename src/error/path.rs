//! Why a movement cannot be traced or posed.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// Why a movement cannot be traced or posed.
#[derive(Debug, Clone, PartialEq)]
pub enum PathFault {}
