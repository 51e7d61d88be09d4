//! Why a gym has no setup for a lift, and what would help.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use crate::units::{Length, Mass};

/// Why a gym has no setup for a lift.
#[derive(Debug, Clone, PartialEq)]
pub enum PickFault {
    /// No combination was even near.
    NothingMet {
        /// What the gym is called.
        gym: String,
    },
    /// No setup keeps every limit.
    NoneFits {
        /// What the gym is called.
        gym: String,
        /// The one that comes nearest.
        nearest: Box<NearestSetup>,
    },
    /// What fits can be held, but the simulation lifts none of it.
    NotLifted {
        /// What the gym is called.
        gym: String,
        /// The effort that was wished.
        effort: f64,
        /// Effort of the 1RM with plain weight at its hardest place.
        one_rm_effort: f64,
    },
    /// Plain weight is more even than anything of this kind.
    PlainIsBetter {
        /// What was to be hung: `bands` or `chains`.
        pieces: String,
        /// What the gym is called.
        gym: String,
        /// Name of the movement.
        movement: String,
        /// What would help.
        advice: Advice,
    },
}

/// The setup that comes nearest to the limits.
#[derive(Debug, Clone, PartialEq)]
pub struct NearestSetup {
    /// Its plain load.
    pub plain: PlainLoad,
    /// Its bands and chains.
    pub hung: Vec<HungPair>,
    /// What it misses most.
    pub shortfall: Shortfall,
    /// Whether it misses other limits besides.
    pub misses_more: bool,
}

/// A plain load as a person puts it together; discs are a side, of a belt all of them.
#[derive(Debug, Clone, PartialEq)]
pub enum PlainLoad {
    /// A bar with discs.
    Bar {
        /// What the bar is called.
        name: String,
        /// Its mass, empty.
        mass: Mass,
        /// Mass of one collar, where some are used.
        collar: Option<Mass>,
        /// Mass of a disc and how many of it.
        discs: Vec<(Mass, u32)>,
    },
    /// A dumb-bell in each hand.
    Dumbbell(Mass),
    /// A kettlebell in each hand.
    Kettlebell(Mass),
    /// A bar that both hands hold, with discs.
    CurlBar {
        /// What the bar is called.
        name: String,
        /// Its mass, empty.
        mass: Mass,
        /// Mass of one collar, where some are used.
        collar: Option<Mass>,
        /// Mass of a disc and how many of it.
        discs: Vec<(Mass, u32)>,
    },
    /// A weight stack.
    Stack(Mass),
    /// A sled on rails.
    Sled {
        /// Its mass, empty.
        mass: Mass,
        /// Mass of a disc and how many of it.
        discs: Vec<(Mass, u32)>,
    },
    /// Discs on a belt.
    Belt {
        /// Mass of a disc and how many of it.
        discs: Vec<(Mass, u32)>,
    },
    /// The body alone.
    Body,
    /// The body with this counterweight.
    Counterweight(Mass),
}

/// How a loop is hung between anchor and load.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LoopWay {
    /// As it is.
    Single,
    /// Folded in half.
    Doubled,
    /// Pulled through itself round the anchor.
    Choked,
}

/// A pair of bands or chains, one on each side.
#[derive(Debug, Clone, PartialEq)]
pub enum HungPair {
    /// Bands.
    Band {
        /// How many a side.
        count: u32,
        /// What the band is called.
        name: String,
        /// What the gym calls the anchor.
        anchor: String,
        /// Height of the anchor.
        height: Length,
        /// How far ahead of the start it stands.
        offset: Length,
        /// How the loop is hung.
        way: LoopWay,
    },
    /// Chains.
    Chain {
        /// How many a side.
        count: u32,
        /// What the chain is called.
        name: String,
        /// Whether both ends are on the bar.
        is_double_looped: bool,
        /// Length of the leader; nothing without one.
        leader: Length,
    },
}

/// Which limit is missed, and by how much.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shortfall {
    /// Even the lightest load is too hard.
    TooHard {
        /// Effort at the hardest place.
        effort: f64,
        /// The effort that was wished.
        wished: f64,
        /// The most that is advised to this lifter; nothing where any is.
        most: Option<f64>,
        /// Whether the body is the load.
        is_body: bool,
        /// Whether legs lift it.
        with_legs: bool,
    },
    /// Bands from above carry all of the weight.
    AllCarried {
        /// The weight.
        weight: Mass,
        /// What the bands carry.
        carried: Mass,
    },
    /// More is left than may be when every band that helps is gone.
    LeftWhenBandsGo {
        /// What is left.
        left: Mass,
        /// The most that may be.
        most: Mass,
    },
    /// More is felt somewhere than the 1RM, where that may not be.
    FeltAboveOneRm {
        /// What is felt.
        felt: Mass,
        /// The most that may be.
        most: Mass,
    },
    /// Pieces that help and pieces that add load hang at once.
    BothWays,
    /// Too small a share of bands and chains.
    LeastShare {
        /// The share.
        has: f64,
        /// The least.
        needs: f64,
    },
    /// Too large a share of bands and chains.
    MostShare {
        /// The share.
        has: f64,
        /// The most.
        needs: f64,
    },
    /// Too little load at a place.
    LeastLoad {
        /// Place of the range.
        at: f64,
        /// The load.
        has: Mass,
        /// The least.
        needs: Mass,
    },
    /// Too much load at a place.
    MostLoad {
        /// Place of the range.
        at: f64,
        /// The load.
        has: Mass,
        /// The most.
        needs: Mass,
    },
}

/// What bands and chains do to a lift, and what would help where they do not.
#[derive(Debug, Clone, PartialEq)]
pub struct Advice {
    /// Best flattening by one pair of bands or chains that only adds load, %.
    pub best_added_percent: Option<f64>,
    /// Best flattening by one pair that takes load away, %.
    pub best_helping_percent: Option<f64>,
    /// What flattens this lift instead.
    pub instead: Instead,
}

/// What flattens a lift in the place of bands and chains.
#[derive(Debug, Clone, PartialEq)]
pub enum Instead {
    /// Not looked for, since bands or chains do.
    NotSought,
    /// Implements that were tried and do it, the best first; none where none does.
    Tried(Vec<Remedy>),
    /// Nothing that anybody sets up in the place of a bar on the chest or the back.
    NothingSetUp,
    /// Nothing but a machine takes this load.
    MachineOnly,
}

/// An implement that flattens a lift.
#[derive(Debug, Clone, PartialEq)]
pub struct Remedy {
    /// Flattening against plain weight, %.
    pub flattening_percent: f64,
    /// The implement.
    pub means: Means,
}

/// An implement in the place of weights; places are above the floor and ahead of the load's start.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Means {
    /// A cable to a pulley.
    Cable {
        /// Height of the pulley.
        height: Length,
        /// How far ahead it stands.
        offset: Length,
    },
    /// A bar hinged at one end.
    HingedBar {
        /// Height of the hinge.
        height: Length,
        /// How far ahead it stands.
        offset: Length,
    },
    /// A machine whose cam follows the lifter's strength.
    FittedCam,
}
