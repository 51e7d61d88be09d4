//! What is wrong with a lifter, a muscle, a segment.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// What is wrong with a lifter, a muscle, a segment.
#[derive(Debug, Clone, PartialEq)]
pub enum BodyFault {}
