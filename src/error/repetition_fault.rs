//! Why a repetition or a maximum cannot be simulated.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use crate::units::{Duration, Length, Mass, Speed};

/// The stretches of time in a repetition that are asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TimedPart {
    /// The lowering.
    Lowering,
    /// The pause at the bottom.
    Pause,
}

/// Why there is no maximum.
#[derive(Debug, Clone, PartialEq)]
pub enum MaximumSearchFault {
    /// A maximum of a lowering that takes no time.
    NoLoweringTime,
    /// A loading step that no plate gives.
    LoadingStep {
        /// The step.
        step: Mass,
        /// The smallest there can be.
        least: Mass,
        /// The largest there can be.
        most: Mass,
    },
    /// Not even an empty bar is lifted.
    NothingLifted,
    /// A movement that lifts any load.
    NoLimit {
        /// How far was searched.
        highest: Mass,
    },
    /// A lift whose load goes down, so that weight helps it.
    WeightHelps {
        /// How far below its start the load ends.
        sinks: Length,
    },
    /// A known maximum that nobody has.
    KnownOutside {
        /// The load.
        load: Mass,
        /// The most that is lifted.
        most: Mass,
    },
    /// A known maximum that is none.
    NoneToScaleTo {
        /// The load.
        load: Mass,
    },
    /// A known maximum that no strength of this lifter gives.
    NoStrength {
        /// The maximum.
        load: Mass,
        /// The nearest that was reached.
        nearest: Mass,
    },
}

/// Why a repetition or a maximum cannot be simulated.
#[derive(Debug, Clone, PartialEq)]
pub enum RepetitionFault {
    /// Too few poses or directions of the load.
    TooFewPoses {
        /// How many poses.
        poses: usize,
        /// How many directions.
        directions: usize,
        /// The fewest there can be.
        least: usize,
    },
    /// A part of the range that is none, or too short.
    Part {
        /// Where it begins.
        from: f64,
        /// Where it ends.
        to: f64,
        /// The shortest there can be.
        shortest: f64,
    },
    /// A lowering or a pause that is too long or negative.
    Time {
        /// Which of the two.
        part: TimedPart,
        /// How long.
        time: Duration,
        /// The longest there can be.
        longest: Duration,
    },
    /// A lowering in so little time that the load would be faster than any.
    TooFast {
        /// The time.
        time: Duration,
        /// The shortest there can be.
        shortest: Duration,
        /// The largest speed that is taken for real.
        largest: Speed,
    },
    /// A step of the integration that is too short or too long.
    Step {
        /// The step.
        step: Duration,
        /// The shortest there can be.
        least: Duration,
        /// The longest there can be.
        most: Duration,
    },
    /// A maximum that there is none of.
    Maximum(MaximumSearchFault),
}
