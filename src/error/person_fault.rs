//! What is wrong with what is told of a person, or why no strengths follow from it.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use super::trace_fault::TraceFault;
use crate::units::{Angle, Length, Mass};

/// An option that tells something of a person.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PersonOption {
    /// A maximum or a set.
    Lift,
    /// A held force.
    Hold,
    /// A held torque.
    Dynamometer,
    /// The length of a limb.
    Limb,
    /// The trace of a bar.
    Trace,
}

/// Who a 1RM is judged by.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum JudgedBy {
    /// People of the sex, size and training that was told.
    Kind,
    /// Trained men: nothing was told, and it is too much.
    TrainedMen,
    /// Untrained women: nothing was told, and it is too little.
    UntrainedWomen,
}

/// What is wrong with what is told of a person.
#[derive(Debug, Clone, PartialEq)]
pub enum PersonFault {
    /// A text that an option does not understand.
    Unreadable {
        /// The option.
        option: PersonOption,
        /// The text.
        written: String,
    },
    /// Repetitions in reserve without repetitions.
    ReserveAlone {
        /// The text.
        written: String,
    },
    /// A lift that no movement is called.
    NoSuchLift {
        /// The name.
        written: String,
        /// The movements there are.
        known: Vec<String>,
    },
    /// A limb that no body has.
    NoSuchLimb {
        /// The name.
        written: String,
        /// The limbs there are.
        known: Vec<&'static str>,
    },
    /// One measurement, told twice: a second one of the same would make it count for more than it is.
    MeasuredTwice {
        /// The text.
        written: String,
    },
    /// A limb that is told twice.
    LimbTwice {
        /// The limb.
        limb: &'static str,
        /// Both lengths.
        lengths: (Length, Length),
    },
    /// A limb out of proportion.
    OddLimb {
        /// The limb.
        limb: &'static str,
        /// Its length as told.
        length: Length,
        /// Its usual length at that height.
        usual: Length,
    },
    /// A load that nobody lifts.
    NoLoad {
        /// The lift.
        movement: String,
        /// The load.
        load: Mass,
    },
    /// More repetitions than tell a maximum.
    TooManyRepetitions {
        /// The lift.
        movement: String,
        /// Repetitions done and left.
        to_failure: f64,
        /// The most.
        most: f64,
    },
    /// A force or a torque of nothing.
    NothingHeld {
        /// The text.
        written: String,
    },
    /// A maximum below the bar alone.
    BelowTheBar {
        /// The lift.
        movement: String,
        /// The load.
        load: Mass,
        /// The lightest bar.
        bar: Mass,
    },
    /// A held force in a movement that turns one joint, or a torque in one that moves a load.
    WrongMeasure {
        /// The movement.
        movement: String,
        /// Which option.
        option: PersonOption,
    },
    /// A height that the lift does not pass.
    NoSuchHeight {
        /// The movement.
        movement: String,
        /// The height asked for.
        height: Length,
        /// The whole way of the load.
        way: Length,
    },
    /// An angle that the movement does not pass.
    NoSuchAngle {
        /// The movement.
        movement: String,
        /// The angle asked for.
        angle: Angle,
        /// Its ends.
        ends: (Angle, Angle),
    },
    /// A measurement that no adult of that size and training has.
    Impossible {
        /// The text.
        written: String,
        /// The measured value over what was expected.
        over_expected: f64,
        /// Standard deviations from what was expected.
        deviations: f64,
    },
    /// A 1RM that nobody of a kind has.
    ImpossibleOneRm {
        /// Line of the log whose set shows it, if it is of a log.
        line: Option<usize>,
        /// Whose it is, where several people are told of.
        who: Option<String>,
        /// Name of the movement.
        movement: String,
        /// The 1RM.
        one_rm: Mass,
        /// The 1RM over what was expected.
        over_expected: f64,
        /// Standard deviations from what was expected.
        deviations: f64,
        /// Who it is judged by.
        judged_by: JudgedBy,
    },
    /// A lift whose poses no plausible strength keeps in a body of that size.
    NotKept {
        /// The movement.
        movement: String,
    },
    /// Two measurements of one lift that cannot both be right.
    Contradict {
        /// Their texts.
        written: [String; 2],
        /// The larger over the smaller.
        ratio: f64,
    },
    /// A height that no adult has.
    OddHeight {
        /// The height.
        height: Length,
        /// Least and most.
        ends: (Length, Length),
    },
    /// A mass that no adult of that height has.
    OddMass {
        /// The mass.
        mass: Mass,
        /// Least and most.
        ends: (Mass, Mass),
    },
    /// An age at which the tables do not hold.
    NoAdult {
        /// The age, years.
        age: f64,
        /// The least.
        least: f64,
    },
    /// An age that nobody reaches.
    NoAge {
        /// The age, years.
        age: f64,
        /// The most.
        most: f64,
    },
    /// Training that began before anybody trains.
    LongerThanLife {
        /// The age, years.
        age: f64,
        /// The months of training.
        months: f64,
    },
    /// Months of training that are none.
    NoMonths {
        /// The months.
        months: f64,
    },
    /// What is wrong with a trace or a velocity.
    Trace(TraceFault),
    /// A name that is none.
    NoName,
    /// A name with a sign that names do not have.
    NameSign {
        /// The name.
        name: String,
        /// The first such sign.
        sign: char,
    },
    /// A name that is longer than what is shown.
    LongName {
        /// Its letters.
        letters: usize,
        /// The most that are shown.
        most: usize,
    },
    /// Nothing was measured.
    NothingMeasured,
    /// A log in which no set tells a maximum.
    NothingInLog {
        /// Name or path of the log.
        log: String,
        /// The lifts of the log, each with its number of sets.
        lifts: Vec<(String, usize)>,
    },
    /// A lifter whose file says nothing of how well its strengths are known.
    NoScatter {
        /// The lifter.
        lifter: String,
    },
}
