//! What is wrong with an implement or a setup.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words. The readers of model
//! files pass on nothing but texts, so a fault also travels as one: a mark and the fault as RON behind it.

use crate::units::{Angle, Force, Length};
use serde::{Deserialize, Serialize};
use std::fmt;

/// The kinds of implement.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum ImplementKind {
    /// All of the plain weight in one figure.
    Load,
    /// An empty bar.
    Bar,
    /// Equal plates in pairs.
    Plates,
    /// A plate on one side.
    OnePlate,
    /// A pair of collars.
    Collars,
    /// A dumb-bell in each hand.
    Dumbbell,
    /// Plates on a belt.
    Belt,
    /// The lifter's own mass.
    BodyMass,
    /// Elastic bands.
    Band,
    /// Chains.
    Chain,
    /// A weight stack on a cable.
    Cable,
    /// The cam of a machine.
    Cam,
    /// Plates on a turning arm.
    Lever,
    /// A sled on rails.
    Sled,
    /// Load of the lowering phase.
    Lowering,
    /// A partner's help.
    Spotter,
    /// A weight that takes load away.
    Counterweight,
}

/// Sizes of implements that have bounds, in SI units or as shares.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum ImplementSize {
    /// Length of a band before anything pulls, m.
    RestLength,
    /// Share of a band's pull lost to wear.
    Worn,
    /// Largest length over rest length of a band.
    SafeStretch,
    /// Share of the stored energy that a band keeps.
    LossShare,
    /// Width of a band's strand, m.
    Width,
    /// Thickness of a band's layer, m.
    Thickness,
    /// Handle travel over stack travel.
    CableRatio,
    /// Share of a cable's pull lost in its pulleys.
    CableFriction,
    /// Radius of a cam, m.
    CamRadius,
    /// Arm of a lever's plates, m.
    LoadedArm,
    /// Friction of rails over normal force.
    RailFriction,
    /// Force of a spotter, N.
    SpotterForce,
    /// Share of the load that a spotter takes.
    SpotterShare,
    /// Force of a partner who pushes down, N.
    Push,
    /// Length of a chain's leader, m.
    LeaderLength,
    /// Mass of a chain's leader, kg.
    LeaderMass,
    /// Mass of a chain a metre, kg/m.
    MassPerMetre,
    /// Wire of a link, m.
    Wire,
    /// Inside width of a link, m.
    InsideWidth,
    /// Inside length of a link, m.
    Pitch,
    /// Length of a chain, m.
    ChainLength,
    /// Pull of a band at its largest stretch, N.
    BandPull,
    /// Plain weight in one figure, kg.
    LoadMass,
    /// All plain weights of a setup, kg.
    TotalMass,
    /// Items of a setup.
    SetupItems,
    /// Mass of a bar, kg.
    BarMass,
    /// Mass of a plate, kg.
    PlateMass,
    /// Pairs of equal plates.
    PlatePairs,
    /// Mass of both collars, kg.
    CollarMass,
    /// Mass of a dumb-bell, kg.
    DumbbellMass,
    /// Mass of a stack or a counterweight, kg.
    StackMass,
    /// Mass that is hung on for the lowering, kg.
    LoweringMass,
    /// Direction of a cable, degrees.
    CableDirection,
}

/// Why an implement makes no sense on a movement.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Unfit {
    /// A cam turns with a machine's lever.
    NoLever,
    /// A lever's arm turns with a pad.
    NoPad,
    /// A sled runs on rails.
    NoRails,
    /// What is worn, where the load is held.
    HeldNotWorn,
    /// A bar's gear, where there is a dumb-bell in each hand.
    DumbbellInEachHand,
    /// One side named, where one hand is computed.
    OneHand,
    /// Another weight, where the load is a sled.
    LoadIsSled,
    /// A cable, where the load is a sled.
    SledOnCable,
    /// A lever, where the load is a sled.
    SledOnLever,
    /// A chain, where a machine's pad turns on its arc.
    ChainOnPad,
    /// Another weight, where the load is a stack.
    LoadIsStack,
    /// A sled, where a machine's lever turns.
    LeverOnRails,
    /// A pivot of its own, where the pad turns about the joint.
    OwnPivot,
    /// An arm, where the body is the load.
    BodyOnArm,
}

/// What is wrong with a cam.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum CamFault {
    /// A cam with a profile and to be fitted.
    InTwoWays,
    /// A cam without a point.
    WithoutPoint,
    /// A cam's angle that does not rise.
    AngleFalls {
        /// The angle.
        angle: Angle,
        /// The one before it.
        before: Angle,
    },
    /// As many capacities as angles are needed to fit a cam.
    FitCounts {
        /// Capacities given.
        capacities: usize,
        /// Angles given.
        angles: usize,
    },
    /// A capacity that a cam cannot follow.
    Capacity(f64),
    /// A cam that follows a capacity and would be too small where that is least.
    FitTooSmall {
        /// The radius there.
        smallest: Length,
        /// The smallest that a cam can have.
        least: Length,
        /// The smallest mean radius with which the cam can be.
        mean_at_least: Length,
    },
}

/// Why readings of a band allow no fit.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum BandFitFault {
    /// A reading of a band that cannot be.
    OddReading {
        /// Length of the band.
        length: Length,
        /// Its pull.
        force: Force,
    },
    /// A band that pulls clearly less where it is longer.
    PullFalls {
        /// The shorter length, and the pull there.
        shorter: (Length, Force),
        /// The longer length, and the pull there.
        longer: (Length, Force),
    },
    /// Too few readings with a pull, or all at one length.
    TooFewReadings {
        /// How many there are.
        pulling: usize,
    },
    /// More readings than anybody takes of a band.
    TooManyReadings {
        /// How many there are.
        readings: usize,
        /// The most that are fitted.
        most: usize,
    },
    /// A rest length at which the band already pulls.
    RestBeyondPull {
        /// The rest length.
        rest: Length,
        /// The shortest length with a pull.
        shortest: Length,
    },
    /// Two readings and no rest length.
    RestUnknown,
    /// A slack reading longer than one with a pull.
    SlackBeyondPull {
        /// The longest slack length.
        slack: Length,
        /// The shortest length with a pull.
        shortest: Length,
    },
}

/// What is wrong with an implement or a setup.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum ImplementFault {
    /// A size that no such implement has.
    Outside {
        /// Which size.
        size: ImplementSize,
        /// Its value.
        value: f64,
        /// The smallest one.
        least: f64,
        /// The largest one.
        most: f64,
    },
    /// A band of so many layers.
    Layers(u32),
    /// A band of so many strands.
    Strands(u32),
    /// An anchor at a height that no gym has.
    AnchorHeight(Length),
    /// An anchor at an offset that no gym has.
    AnchorOffset(Length),
    /// A leader with a mass and no length.
    MassOfNoLeader,
    /// A cam that cannot be.
    Cam(CamFault),
    /// A text that is neither a force nor a mass.
    NoPull(String),
    /// Readings that allow no fit.
    Fit(BandFitFault),
    /// An implement that makes no sense on a movement.
    MakesNoSense {
        /// The implement.
        kind: ImplementKind,
        /// The movement.
        movement: String,
        /// Why.
        why: Unfit,
    },
    /// Several of what a machine has once.
    Repeated {
        /// The implement.
        kind: ImplementKind,
        /// How many there are.
        times: usize,
    },
}

impl From<CamFault> for ImplementFault {
    fn from(fault: CamFault) -> Self {
        Self::Cam(fault)
    }
}

impl From<BandFitFault> for ImplementFault {
    fn from(fault: BandFitFault) -> Self {
        Self::Fit(fault)
    }
}

const FAULT_MARK: &str = "torquill-implement-fault:";

impl ImplementFault {
    /// The fault that travelled through a reader of files as its message.
    #[must_use]
    pub fn from_serde_message(message: &str) -> Option<Self> {
        ron::from_str(message.strip_prefix(FAULT_MARK)?).ok()
    }

    /// The field of a record that it is about, if it is about one alone.
    #[must_use]
    pub fn field(&self) -> Option<&'static str> {
        let size = match self {
            Self::Outside { size, .. } => size,
            Self::AnchorHeight(_) => return Some("height"),
            Self::AnchorOffset(_) => return Some("offset"),
            Self::Fit(
                BandFitFault::TooFewReadings { .. }
                | BandFitFault::TooManyReadings { .. }
                | BandFitFault::RestUnknown,
            ) => {
                return Some("pull");
            }
            _ => return None,
        };
        match size {
            ImplementSize::RestLength => Some("rest_length"),
            ImplementSize::Worn => Some("worn"),
            ImplementSize::SafeStretch => Some("safe_stretch"),
            ImplementSize::LossShare => Some("loss"),
            ImplementSize::Width => Some("width"),
            ImplementSize::Thickness => Some("thickness"),
            ImplementSize::RailFriction => Some("friction"),
            ImplementSize::Wire => Some("wire"),
            ImplementSize::InsideWidth => Some("inside_width"),
            ImplementSize::Pitch => Some("pitch"),
            ImplementSize::BandPull => Some("pull"),
            _ => None,
        }
    }

    /// The text that is refused, if it is a text alone.
    #[must_use]
    pub fn text(&self) -> Option<&str> {
        match self {
            Self::NoPull(text) => Some(text),
            _ => None,
        }
    }

    /// The length of the reading of a band that it is about, if it is about one.
    #[must_use]
    pub const fn reading(&self) -> Option<Length> {
        let Self::Fit(fault) = self else {
            return None;
        };
        match fault {
            BandFitFault::OddReading { length, .. } => Some(*length),
            BandFitFault::PullFalls { longer, .. } => Some(longer.0),
            BandFitFault::RestBeyondPull { shortest, .. }
            | BandFitFault::SlackBeyondPull { shortest, .. } => Some(*shortest),
            BandFitFault::TooFewReadings { .. }
            | BandFitFault::TooManyReadings { .. }
            | BandFitFault::RestUnknown => None,
        }
    }
}

impl fmt::Display for ImplementFault {
    /// For machines: the form that [`ImplementFault::from_serde_message`] reads back.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let ron = ron::to_string(self).map_err(|_| fmt::Error)?;
        write!(f, "{FAULT_MARK}{ron}")
    }
}

impl std::error::Error for ImplementFault {}
