//! Which wishes a plan heeds: an option that changes nothing in what is planned is refused, not passed over.
//!
//! In: the options that were typed, the methods, whether a block is planned. Out: the first option that nothing heeds.

use super::method::{METHODS, Method};
use super::request::SessionWishes;

/// A wish that not every plan heeds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Wished {
    /// The load of the session.
    Load,
    /// Number of sets.
    Sets,
    /// Repetitions of a set.
    Repetitions,
    /// All repetitions together.
    TotalRepetitions,
    /// Repetitions of a group.
    Group,
    /// Rest inside a cluster set.
    RestWithin,
    /// Repetitions in reserve.
    Reserve,
    /// Loss of velocity at which a set ends.
    VelocityLoss,
    /// Most sets in a week.
    SetsAWeek,
    /// Hardest effort of a setup.
    Effort,
    /// Days since the last overloaded lowering.
    LastOverload,
}

impl Wished {
    /// The wishes that are told.
    #[must_use]
    pub fn told(wishes: &SessionWishes) -> Vec<Self> {
        let all = [
            (Self::Load, wishes.load.is_some()),
            (Self::Sets, wishes.sets.is_some()),
            (Self::Repetitions, wishes.repetitions.is_some()),
            (Self::TotalRepetitions, wishes.total_repetitions.is_some()),
            (Self::Group, wishes.group.is_some()),
            (Self::RestWithin, wishes.rest_within.is_some()),
            (Self::Reserve, wishes.reserve.is_some()),
            (Self::VelocityLoss, wishes.velocity_loss.is_some()),
            (Self::SetsAWeek, wishes.sets_a_week.is_some()),
        ];
        let told = all.into_iter().filter(|(_, is_told)| *is_told);
        told.map(|(wished, _)| wished).collect()
    }

    /// The option that tells it, without dashes.
    #[must_use]
    pub const fn option(self) -> &'static str {
        match self {
            Self::Load => "load",
            Self::Sets => "sets",
            Self::Repetitions => "reps",
            Self::TotalRepetitions => "total-reps",
            Self::Group => "group",
            Self::RestWithin => "rest-within",
            Self::Reserve => "rir",
            Self::VelocityLoss => "velocity-loss",
            Self::SetsAWeek => "max-per-week",
            Self::Effort => "effort",
            Self::LastOverload => "last-overload",
        }
    }

    /// Whether the session of a method heeds it; in a block the weeks set load, sets and repetitions of straight sets, and a
    /// lighter day of straight sets stands beside every other method.
    #[must_use]
    pub const fn is_heeded(self, method: Method, in_block: bool) -> bool {
        use Method::{Bands, Chains, Clusters, OverloadedLowering, Pyramid, Straight};
        match self {
            Self::Load => {
                matches!(method, Pyramid | Clusters | OverloadedLowering)
                    || matches!(method, Straight) && !in_block
            }
            Self::Sets | Self::Repetitions => {
                matches!(method, Pyramid | OverloadedLowering | Bands | Chains)
                    || matches!(method, Straight) && !in_block
            }
            Self::TotalRepetitions | Self::Group | Self::RestWithin => {
                matches!(method, Clusters)
            }
            Self::Reserve => matches!(method, Straight | Pyramid | Bands | Chains) || in_block,
            Self::VelocityLoss => !matches!(method, OverloadedLowering) || in_block,
            Self::SetsAWeek => matches!(method, Straight | Bands | Chains) || in_block,
            Self::Effort => matches!(method, Bands | Chains),
            Self::LastOverload => matches!(method, OverloadedLowering),
        }
    }

    /// The methods that heed it, by name.
    #[must_use]
    pub fn heeding(self, in_block: bool) -> Vec<&'static str> {
        let heeding = METHODS
            .iter()
            .filter(|(method, _)| self.is_heeded(*method, in_block));
        heeding.map(|(_, name)| *name).collect()
    }
}
