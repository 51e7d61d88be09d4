//! Why a question has no answer.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use super::{OutcomeFault, PickFault};
use crate::units::{Angle, Force, Length, Mass, QuantityFault, Torque};

/// A figure by which curves are compared.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Compared {
    /// The heaviest weight that can be held at every place.
    #[default]
    Held,
    /// The greatest capacity.
    Peak,
    /// Capacity at the start.
    Start,
    /// Capacity at the end.
    End,
}

/// Why a text names no evenly spaced values.
#[derive(Debug, Clone, PartialEq)]
pub enum SpacingFault {
    /// What stands behind the colon is no whole number.
    CountUnreadable,
    /// Too few or too many values.
    Count {
        /// How many were asked for.
        count: usize,
        /// The most.
        most: usize,
    },
    /// An end is no number with a unit.
    EndUnreadable {
        /// The end.
        text: String,
    },
    /// The ends have different units.
    Units {
        /// Unit of the first end.
        from: String,
        /// Unit of the last end.
        to: String,
    },
    /// Both ends are alike.
    EndsAlike,
}

/// Why a question has no answer.
#[derive(Debug, Clone, PartialEq)]
pub enum StudyFault {
    /// A setup cannot be laid over a lift.
    Lift(LiftFault),
    /// A text gives a parameter no values.
    Values(ValuesFault),
    /// Values cannot be compared.
    Comparison(ComparisonFault),
    /// A maximum, or a share of it, is none.
    Maximum(MaximumFault),
    /// A gym has no setup for a lift.
    Pick(PickFault),
    /// A repetition does not end as it was meant to.
    Outcome(OutcomeFault),
}

/// What a lifter lacks to hold the limbs alone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Lacking {
    /// A force at the load, of both sides together.
    Force(Force),
    /// A torque of one side.
    Torque(Torque),
}

/// Why a setup cannot be laid over a lift.
#[derive(Debug, Clone, PartialEq)]
pub enum LiftFault {
    /// The setup asks for more than wished even without weight.
    HardWithoutWeight {
        /// The effort that was wished, 1 = all the lifter has.
        target: f64,
    },
    /// Even the heaviest load that is looked for asks for less than wished.
    EasyWithAnyWeight {
        /// The effort that was wished.
        target: f64,
        /// The heaviest load.
        most: Mass,
    },
    /// The load pulls where the lift has no strength.
    NotHeld {
        /// Place of the range.
        range: f64,
        /// Name of the movement.
        movement: String,
    },
    /// The lifter cannot hold the limbs alone at a place of the range.
    TooWeak {
        /// Place of the range.
        range: f64,
        /// The joint that gives way, by its name in model files.
        joint: &'static str,
        /// What lacks there.
        lacking: Lacking,
    },
    /// The lifter holds no load at a place of the range, so that nothing can be hung.
    HoldsNothing {
        /// Place of the range.
        range: f64,
    },
    /// Nothing hangs on the bar that plain weight could be compared with.
    NothingToCompare,
    /// The setup asks for nothing, so no plain weight is as hard.
    AsksForNothing,
    /// A place by its travel, in a movement of one joint.
    PlaceIsAnAngle,
    /// A place by an angle, in a movement of a bar or sled.
    PlaceIsATravel,
    /// A travel that the load does not make.
    TravelOutside {
        /// What was asked for.
        asked: Length,
        /// The whole way.
        most: Length,
    },
    /// An angle that the joint does not reach.
    AngleOutside {
        /// What was asked for.
        asked: Angle,
        /// The least angle of the range.
        least: Angle,
        /// The greatest.
        most: Angle,
    },
}

/// Why a text gives a parameter no values.
#[derive(Debug, Clone, PartialEq)]
pub enum ValuesFault {
    /// A text of values gives too few or too many.
    Count {
        /// The text.
        text: String,
        /// Path of the parameter.
        path: String,
        /// How many values it gives.
        count: usize,
        /// The fewest.
        least: usize,
        /// The most.
        most: usize,
    },
    /// A text of values names one twice.
    Twice {
        /// The text.
        text: String,
        /// The value.
        value: String,
    },
    /// A value is empty.
    Empty,
    /// A relative change has no sign.
    ChangeWithoutSign {
        /// The value.
        text: String,
        /// The number in it.
        number: String,
    },
    /// A range of values is none.
    Spacing {
        /// The range as it was given.
        text: String,
        /// Why.
        why: SpacingFault,
    },
}

/// Why values cannot be compared.
#[derive(Debug, Clone, PartialEq)]
pub enum ComparisonFault {
    /// A parameter that has no part in the lift.
    NotInLift {
        /// Path of the parameter.
        path: String,
        /// What the movement is called.
        movement: String,
        /// The joints that move in it.
        joints: Vec<&'static str>,
        /// Names of the movements in which it has a part.
        others: Vec<String>,
    },
    /// More poses than fit in memory.
    TooManyPoses {
        /// Curves that are compared.
        curves: usize,
        /// Samples of each.
        samples: usize,
        /// Samples with which so many curves fit.
        fitting: usize,
    },
    /// More poses with all of their muscles than fit in memory.
    TooDetailed {
        /// Samples that were asked for.
        samples: usize,
        /// The most.
        most: usize,
    },
    /// More poses of invented people than anybody waits for.
    TooManyInvented {
        /// People that were asked for.
        people: usize,
        /// Samples of each.
        samples: usize,
        /// Samples with which so many people are reckoned.
        fitting: usize,
    },
    /// A map of one parameter against itself.
    VariedAgainstItself {
        /// Path of the parameter.
        path: String,
    },
    /// Two values of a map are one.
    SameValue {
        /// The first.
        first: String,
        /// The other.
        other: String,
        /// Path of the parameter.
        path: String,
    },
    /// The movement cannot be done with any pair of values.
    NoPair,
    /// A ranking by too small or too large a change.
    RankAmount {
        /// The change, %.
        percent: f64,
        /// The least, %.
        least_percent: f64,
        /// The most, %.
        most_percent: f64,
    },
    /// The movement as it is has no such figure.
    NothingToRank {
        /// The figure.
        compared: Compared,
    },
    /// With the changed value there is no such figure.
    NoFigureWithIt {
        /// The figure.
        compared: Compared,
    },
}

/// Why a maximum, or a share of it, is none.
#[derive(Debug, Clone, PartialEq)]
pub enum MaximumFault {
    /// A text is neither a mass nor a share.
    LoadUnreadable {
        /// Why it is no mass.
        fault: QuantityFault,
    },
    /// A text is no share of a maximum.
    ShareUnreadable {
        /// The text.
        text: String,
    },
    /// A share of the maximum is less than the lifter's own body.
    LessThanBody {
        /// The share that was asked for.
        share: f64,
        /// The share that the body is.
        body_share: f64,
    },
    /// The lifter does not lift the own body, and does with help.
    BodyNotLifted {
        /// What the lifter is called.
        lifter: String,
        /// The least counterweight with which one repetition succeeds.
        counterweight: Mass,
    },
    /// A group of invented lifters is too small or too large.
    GroupSize {
        /// How many were asked for.
        count: usize,
        /// The most.
        most: usize,
    },
    /// A group is to be shared into more parts than it has people.
    MorePartsThanPeople {
        /// Parts.
        parts: usize,
        /// People.
        people: usize,
    },
    /// Nobody in a group of invented lifters has a maximum.
    NobodyInGroup,
    /// It was stopped before anybody with a maximum was reckoned.
    GroupStopped,
}
