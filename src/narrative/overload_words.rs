//! Lowering more than the 1RM in words: its limits, and what becomes of the bar.
//!
//! In: [`LoweringRemark`]s, units. Out: sentences.

use super::quantities::{QuantityWords, rounded};
use super::shared_phrases::whose_limit;
use super::spotter_words::lost_bar;
use crate::session::lowering_remark::{LoweringLimit, LoweringRemark};
use crate::units::System;

/// The sentence of a remark.
pub(super) fn of_lowering(remark: &LoweringRemark, units: System) -> String {
    match remark {
        LoweringRemark::Limit(limit) => limit_of_lowering(limit, units),
        LoweringRemark::MeasuredLimit(limit) => format!(
            "People were measured at {} × 1RM ({}): a finding of a study, no load for this session.",
            limit.ratio,
            whose_limit(limit.who.as_deref())
        ),
        LoweringRemark::LowEnd(range) => format!(
            "The 1RM is {}, {} to {} hold four in five: the limit of the lowering is that of {}, so that every load holds there \
             too.",
            units.mass(range.simulated),
            units.mass(range.low),
            units.mass(range.high),
            units.mass(range.careful())
        ),
        LoweringRemark::FewLowerings { customary } => format!(
            "Fewer than the customary {} to {} repetitions: more would not keep a reserve in the fatigue model.",
            customary.0, customary.1
        ),
        LoweringRemark::BelowWindow => {
            "The load is below the customary 105 % of 1RM: this lifter lowers no more than that with a reserve."
                .to_owned()
        }
        LoweringRemark::AboveWindow => {
            "The load is above the customary 105 to 110 % of 1RM.".to_owned()
        }
        LoweringRemark::Lost(lost) => lost_bar(*lost, units),
        LoweringRemark::NoMuscleDamage => {
            "The fatigue model knows nothing of muscle damage: soreness and loss of strength over the next days are not in it."
                .to_owned()
        }
    }
}

fn limit_of_lowering(limit: &LoweringLimit, units: System) -> String {
    format!(
        "Limit of the lowering: {} ({} × 1RM, {}).",
        units.mass(limit.most),
        rounded(limit.ratio, 2),
        whose_limit(limit.who.as_deref())
    )
}
