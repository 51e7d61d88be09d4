//! Words for: what is wrong with a lifter, a muscle, a segment.

use super::Told;
use crate::error::BodyFault;

/// The fault in words.
pub(super) fn told(fault: &BodyFault) -> Told {
    match fault {
        BodyFault::NoSegment { table, segment } => Told::new(format!(
            "segment table `{table}` lacks the segment `{segment}`"
        )),
        BodyFault::UnknownGroup { group, known } => Told::new(format!(
            "`strength` names the group `{group}`, which no muscle belongs to"
        ))
        .hint(format!("known groups: {}", known.join(", "))),
        BodyFault::ArmPolynomial => Told::new(
            "a moment-arm polynomial needs at least one coefficient and `from` below `to`",
        ),
        BodyFault::NoReference => Told::new("a muscle has no reference pose for its fibre length"),
    }
}
