//! How a lift is handled in a weight room: what it is called, what catches the load, who stands by.
//!
//! In: the field `handling` of a movement's file. Out: [`Handling`], from which cautions, spotters, refusals
//! and the matching of training logs follow, so that a copy of a lift under another name is the same lift.

use crate::source::Source;
use serde::{Deserialize, Serialize};

/// How a lift is handled.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Handling {
    /// Names that training logs and publications give this lift: "squat", "back squat".
    pub called: Vec<String>,
    /// Lifts without a file of their own whose training logs have the same limits: "chin-up" for the pull-up.
    #[serde(default)]
    pub logs_alike: Vec<String>,
    /// Whether one bar may join the hands of a lift with dumb-bells.
    #[serde(default)]
    pub bar_joins_hands: bool,
    /// What catches the load when the lifter loses it.
    pub catch: Catch,
    /// Whether the bar comes down on the body of somebody who lies: what catches it below that saves nobody.
    #[serde(default)]
    pub comes_down_on_body: bool,
    /// Who spots a load that can be lifted.
    pub spotter: SpotterRule,
    /// Whether more than 1RM can be handed over for lowering, and who brings it back.
    pub overload: Handover,
    /// Whether the lift ends when the back rounds, so that lifters are told to watch it.
    pub rounding_back: bool,
    /// How the general equations from repetitions to a 1RM do for this lift.
    pub general_equations: EquationBias,
    /// Where all this comes from.
    pub source: Source,
}

/// What catches a load that is lost.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Catch {
    /// Safety arms of a rack: the bar is over the face or on the back.
    SafetyArms,
    /// The stops of a sled.
    SledStops,
    /// Nothing has to: the load stands, hangs, or is put down.
    Nothing,
}

/// Who spots a load that can be lifted.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum SpotterRule {
    /// A spotter does not belong there.
    Nobody,
    /// One up to a heaviness, then two, one at each end of the bar.
    OneOrTwo {
        /// Where the one stands.
        place: SpotterPlace,
        /// Share of 1RM from which there are two.
        two_from: f64,
        /// Whether the bar is handed to the lifter at the start.
        hand_off: bool,
    },
}

/// Where a single spotter stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum SpotterPlace {
    /// Behind the head of the bench.
    BehindHead,
    /// Close behind the lifter's trunk.
    BehindTrunk,
}

/// Whether more than 1RM can be handed over for lowering.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Handover {
    /// It can: so many helpers bring it back.
    Yes {
        /// How many.
        helpers: u32,
        /// Where they stand.
        stand: HelperPlace,
        /// How the load comes back up.
        back: WayBack,
    },
    /// Nothing is added: the body alone is lowered after it came up another way.
    BodyOnly {
        /// How it comes up.
        back: WayBack,
    },
    /// It cannot.
    No(NoHandover),
}

/// Where those stand who bring back more than 1RM.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum HelperPlace {
    /// One at each end of the bar, one in the middle.
    BarEndsAndMiddle,
    /// One at each side of the sled.
    SledSides,
    /// Beside the lifter.
    Beside,
    /// At the machine's lever.
    Lever,
    /// One at each dumb-bell.
    Dumbbells,
}

/// How more than 1RM comes back up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum WayBack {
    /// Spotters lift the bar.
    SpottersLift,
    /// It stands on safety arms until helpers have taken plates off; then the lifter brings up what is left.
    OffArms,
    /// Helpers push the sled.
    HelpersPush,
    /// Helpers lift the dumb-bells.
    HelpersLift,
    /// A helper moves the machine's lever.
    HelperMovesLever,
    /// The lifter steps up on a box.
    StepUp,
    /// The lifter rises with the help of the hands.
    OwnHands,
}

/// Why nobody can hand more than 1RM over.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum NoHandover {
    /// Spotters cannot hold the bar at the top beside the lifter.
    NoRoomBeside,
    /// The lifter is bent over.
    BentOver,
    /// The bar is over the head of a lifter who stands.
    OverHead,
    /// The bar lies on the hips of a lifter on the floor.
    OnHips,
}

/// How the general equations from repetitions to a 1RM do for a lift.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum EquationBias {
    /// As well as for any.
    Fair,
    /// All of them come out too low.
    TooLow,
}

impl Handling {
    /// Whether the lift goes by this name, hyphens, underscores and capitals apart.
    #[must_use]
    pub fn is_called(&self, lift: &str) -> bool {
        let lift = lift_name(lift);
        self.called.iter().any(|name| lift_name(name) == lift)
    }

    /// Whether more than the 1RM may be felt near the end of the lift: not over the head or on the hips, where nobody
    /// can take the load and it cannot be put down (common practice).
    #[must_use]
    pub const fn may_feel_above_one_rm(&self) -> bool {
        !matches!(
            self.overload,
            Handover::No(NoHandover::OverHead | NoHandover::OnHips)
        )
    }

    /// Whether bands from above are hung in this lift: not on a bar over the hips, which lies outside the rack, nor in rows
    /// (common practice).
    #[must_use]
    pub const fn is_under_a_rack(&self) -> bool {
        !matches!(
            self.overload,
            Handover::No(NoHandover::OnHips | NoHandover::BentOver)
        )
    }

    /// Whether a load that gets too much is put down where the lifter stands.
    #[must_use]
    pub const fn is_put_down(&self) -> bool {
        matches!(
            self.overload,
            Handover::No(NoHandover::NoRoomBeside | NoHandover::BentOver)
        )
    }

    /// Whether a training log of this name has the limits of this lift.
    #[must_use]
    pub fn reads_log_of(&self, lift: &str) -> bool {
        let name = lift_name(lift);
        self.is_called(lift) || self.logs_alike.iter().any(|alike| lift_name(alike) == name)
    }
}

/// The form in which names of lifts are compared: "Bench Press" and "bench_press" are "bench-press".
#[must_use]
pub fn lift_name(written: &str) -> String {
    let words: Vec<String> = written
        .split(|c: char| c.is_whitespace() || c == '_' || c == '-')
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect();
    words.join("-")
}
