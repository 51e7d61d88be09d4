//! What is wrong with a lifter, a muscle, a segment.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

/// What is wrong with a lifter, a muscle, a segment.
#[derive(Debug, Clone, PartialEq)]
pub enum BodyFault {
    /// A segment table that lacks a segment.
    NoSegment {
        /// Name of the table.
        table: String,
        /// Name of the segment.
        segment: &'static str,
    },
    /// A strength factor for a group that no muscle belongs to.
    UnknownGroup {
        /// Name of the group.
        group: String,
        /// The groups there are.
        known: Vec<String>,
    },
    /// A moment-arm polynomial without a coefficient, or with its ends in the wrong order.
    ArmPolynomial,
    /// A muscle without a reference pose for its fibre length.
    NoReference,
}
