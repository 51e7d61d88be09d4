//! What there is to know of lowering more than the 1RM, as facts: limits, and what becomes of a bar whose lowering is lost.
//!
//! In: what [`super::overload`] found out. Out: [`LoweringRemark`].

use super::strength::SimulatedRange;
use crate::units::Mass;

/// How much more than 1RM can be lowered, and on what that rests.
#[derive(Debug, Clone, PartialEq)]
pub struct LoweringLimit {
    /// The most that can be lowered under control.
    pub most: Mass,
    /// Eccentric over concentric, loads with the body where it is part of them.
    pub ratio: f64,
    /// The lift and the people it was measured on; `None` where it is the simulated lifter's own.
    pub who: Option<String>,
}

/// What there is to know of lowering more than 1RM.
#[derive(Debug, Clone, PartialEq)]
pub enum LoweringRemark {
    /// The limit a lowering is planned against.
    Limit(LoweringLimit),
    /// What a measured ratio would make of the limit, beside the simulated lifter's own.
    MeasuredLimit(LoweringLimit),
    /// How far off the 1RM may be: the limit is that of the low end.
    LowEnd(SimulatedRange),
    /// Fewer lowerings than the customary ones.
    FewLowerings {
        /// Fewest and most customary ones.
        customary: (u32, u32),
    },
    /// A load below the customary window, since more keeps no reserve.
    BelowWindow,
    /// A load above the customary window.
    AboveWindow,
    /// What becomes of a bar whose lowering is lost.
    Lost(LostBar),
    /// The fatigue model knows no muscle damage.
    NoMuscleDamage,
}

/// What becomes of a bar whose lowering is lost.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LostBar {
    /// Helpers hold all of it.
    Held {
        /// How many.
        helpers: u32,
        /// What falls to each.
        each: Mass,
    },
    /// It stands on the safety arms until plates are off, as it does after every lowering.
    OnArms {
        /// Helpers who would have to hold it.
        helpers: u32,
        /// What would fall to each.
        each: Mass,
        /// The most that each is taken to hold.
        most: Mass,
        /// The load that the lifter brings up from the arms.
        left: Mass,
    },
}
