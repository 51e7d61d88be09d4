//! What must be known of a lift to read its log.
//!
//! In: the movement's record, by way of whoever asks. Out: plain data.

/// What must be known of a lift to read its log.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct LiftFacts {
    /// All general equations estimate its maximum too low.
    pub is_estimated_low: bool,
    /// The load of a set must hold the lifter's body mass.
    pub moves_body: bool,
}
