//! Why a pose holds nothing, or has no capacity.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// Why a pose holds nothing, or has no capacity.
#[derive(Debug, Clone, PartialEq)]
pub enum HoldFault {}
