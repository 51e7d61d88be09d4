//! Why a session is not planned.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// Why a session is not planned.
#[derive(Debug, Clone, PartialEq)]
pub enum SessionFault {}
