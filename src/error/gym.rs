//! What is wrong with a gym, a wish, or a search for setups.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// What is wrong with a gym, a wish, or a search for setups.
#[derive(Debug, Clone, PartialEq)]
pub enum GymFault {}
