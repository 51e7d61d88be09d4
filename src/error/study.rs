//! Why a question has no answer.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// Why a question has no answer.
#[derive(Debug, Clone, PartialEq)]
pub enum StudyFault {}
