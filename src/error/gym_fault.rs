//! What is wrong with a gym, a wish, or a search for setups.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use crate::units::{Length, Mass};

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

/// A part of a gym that is told in a text.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum GymPart {
    /// Bars with their masses.
    Bars,
    /// Plates, how many of each mass.
    Plates,
    /// One collar of the pair.
    Collars,
    /// Dumb-bells in pairs.
    Dumbbells,
    /// Kettlebells in pairs.
    Kettlebells,
    /// Bars for curls.
    CurlBars,
    /// Weight stack of its machines.
    Stack,
    /// Sled of its leg press.
    Sled,
    /// Safety arms of its rack.
    SafetyArms,
    /// Bands, how many of each.
    Bands,
    /// Chains, how many of each.
    Chains,
    /// Where bands can be tied.
    Anchors,
}

impl GymPart {
    /// Every part, in the order of the file.
    pub const ALL: [Self; 12] = [
        Self::Bars,
        Self::Plates,
        Self::Collars,
        Self::Dumbbells,
        Self::Kettlebells,
        Self::CurlBars,
        Self::Stack,
        Self::Sled,
        Self::SafetyArms,
        Self::Bands,
        Self::Chains,
        Self::Anchors,
    ];
}

/// Numbers of a wish that have bounds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WishSize {
    /// Effort at the hardest place.
    HardestEffort,
    /// Share of bands and chains.
    Share,
    /// A place of the range.
    Place,
    /// Effort of a profile.
    ProfileEffort,
}

/// What is wrong with a value of a gym file.
#[derive(Debug, Clone, PartialEq)]
pub enum GymSlip {
    /// A name that stands there before.
    NameTwice(String),
    /// A plate that stands there before.
    PlateTwice,
    /// A mass that such a piece does not have.
    OddMass {
        /// The mass.
        mass: Mass,
        /// The smallest one.
        least: Mass,
        /// The largest one.
        most: Mass,
    },
    /// A bar, a piece or an anchor without a name.
    NoName,
    /// Safety arms that no rack has.
    OddArms,
    /// A friction that rails do not have.
    OddFriction(f64),
    /// A count that is not taken for real.
    OddCount {
        /// The count.
        count: u32,
        /// The largest one.
        most: u32,
    },
    /// More kinds than are searched.
    TooManyKinds {
        /// How many there are.
        kinds: usize,
        /// How many are searched.
        most: usize,
    },
    /// A leader that no chain has.
    OddLeader {
        /// Its length.
        length: Length,
        /// The longest one.
        most: Length,
    },
    /// A name that the library does not know.
    UnknownPiece {
        /// The name.
        name: String,
        /// The nearest name, if one is near.
        near: Option<String>,
        /// All names.
        known: Vec<String>,
    },
    /// Nothing to load a lift with.
    OwnsNothing,
}

/// What is wrong with a wish.
#[derive(Debug, Clone, PartialEq)]
pub enum WishFault {
    /// A number of a wish outside its bounds.
    Outside {
        /// Which number.
        size: WishSize,
        /// Its value.
        value: f64,
        /// The smallest one.
        least: f64,
        /// The largest one.
        most: f64,
    },
    /// A least share above the most one.
    SharesCross {
        /// The least share.
        least: f64,
        /// The most share.
        most: f64,
    },
    /// More bands and chains a side than can be searched.
    TooManyHung {
        /// How many were asked for.
        asked: u32,
        /// How many can be searched.
        most: u32,
    },
    /// Two limits of the load at one place.
    LimitTwice {
        /// The place, 0 to 1.
        place: f64,
    },
    /// More limits of the load than are kept.
    TooManyLimits {
        /// How many are kept.
        most: usize,
    },
    /// A profile of effort with fewer than two points.
    ShortProfile,
    /// A place of a profile that does not rise.
    ProfileFalls {
        /// The place.
        place: f64,
        /// The one before it.
        before: f64,
    },
}

/// Why a load cannot be made.
#[derive(Debug, Clone, PartialEq)]
pub enum LoadingFault {
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

/// Why setups are not searched.
#[derive(Debug, Clone, PartialEq)]
pub enum SearchFault {
    /// A word for what may be used that names nothing of the gym.
    NothingCalled {
        /// The word.
        word: String,
        /// What the gym is called.
        gym: String,
        /// What it has.
        known: Vec<String>,
    },
    /// A kind of pieces that the gym has none of.
    NoneOfKind {
        /// "bands" or "chains".
        kind: String,
        /// What the gym is called.
        gym: String,
    },
    /// More ways of hanging than can be searched.
    TooManyHangings {
        /// How many there are.
        hangings: usize,
        /// How many can be searched.
        most: usize,
    },
    /// There are more combinations than can be searched.
    TooManyWays {
        /// Bands and chains a side that were allowed.
        most_hung: u32,
        /// The most combinations.
        most: u64,
    },
    /// The search was stopped from outside.
    Stopped,
}

/// What is wrong with a gym, a wish, or a search for setups.
#[derive(Debug, Clone, PartialEq)]
pub enum GymFault {
    /// A text that tells no part of a gym.
    NoPart {
        /// Which part.
        part: GymPart,
        /// The text.
        written: String,
    },
    /// A value of a gym file.
    InFile {
        /// Path of the value, such as `bands.2.name`; empty for the whole file.
        path: String,
        /// What is wrong with it.
        slip: GymSlip,
    },
    /// A wish.
    Wish(WishFault),
    /// A load.
    Loading(LoadingFault),
    /// A search.
    Search(SearchFault),
}
