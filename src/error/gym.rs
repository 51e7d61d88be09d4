//! What is wrong with a gym, a wish, or a search for setups.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use crate::units::Mass;

/// What a load is made with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LoadingGear {
    /// A bar with plates.
    Bar,
    /// Dumb-bells.
    Dumbbells,
    /// A machine with a weight stack.
    Stack,
    /// A sled on rails.
    Sled,
}

/// What is wrong with a gym, a wish, or a search for setups.
#[derive(Debug, Clone, PartialEq)]
pub enum GymFault {
    /// The gym has nothing that the movement is loaded with.
    Lacks {
        /// What the gym is called.
        gym: String,
        /// What the movement takes.
        gear: LoadingGear,
    },
    /// Even the lightest load is heavier than what was asked for.
    BelowLightest {
        /// What was asked for.
        asked: Mass,
        /// The lightest load.
        lightest: Mass,
    },
    /// There are more combinations than can be searched.
    TooManyWays {
        /// Bands and chains a side that were allowed.
        most_hung: u32,
        /// The most combinations.
        most: u64,
    },
    /// What was asked for is no load.
    NoLoad {
        /// What was asked for.
        asked: Mass,
    },
    /// Heavier than any lift is planned for.
    BeyondAnyLift {
        /// What was asked for.
        asked: Mass,
        /// The heaviest that is planned.
        most: Mass,
    },
}
