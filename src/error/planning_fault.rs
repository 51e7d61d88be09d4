//! Why the ground of a session cannot be laid.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use super::DateFault;
use crate::units::Mass;

/// Why the ground of a session cannot be laid.
#[derive(Debug, Clone, PartialEq)]
pub enum PlanFault {
    /// An effort outside what is planned for.
    EffortOutside {
        /// The effort, 1 = all the lifter has.
        effort: f64,
    },
    /// An age that cannot be.
    AgeOutside {
        /// Years.
        years: f64,
    },
    /// Months of training that cannot be.
    MonthsOutside {
        /// Months.
        months: f64,
        /// The most.
        most: f64,
    },
    /// A 1RM that nobody has.
    OneRmOutside {
        /// The 1RM.
        one_rm: Mass,
        /// The most.
        most: Mass,
    },
    /// A loss of velocity that ends no set or every one.
    LossOutside {
        /// The share.
        share: f64,
    },
    /// Repetitions in reserve that nobody counts.
    ReserveOutside {
        /// The repetitions.
        reserve: u32,
        /// The most.
        most: usize,
    },
    /// A week without a set.
    NoSetsAWeek,
    /// More repetitions of one lift than a session is planned with.
    ManyRepetitions {
        /// The sets asked for.
        sets: u32,
        /// Their repetitions.
        repetitions: u32,
        /// The most of all sets together.
        most: u32,
    },
    /// More sets in a session than in its week.
    SetsAboveWeek {
        /// Sets of the session.
        sets: u32,
        /// Most sets of a week.
        most: u32,
    },
    /// Pieces were named, and none that the method is about.
    OtherPieces {
        /// Bands or chains.
        method: &'static str,
    },
    /// A wish that nothing heeds in what is planned.
    Unheeded {
        /// The option, without dashes.
        option: &'static str,
        /// What is planned.
        planned: Vec<&'static str>,
        /// Whether that is a block.
        in_block: bool,
        /// The methods that heed it.
        heeding: Vec<&'static str>,
    },
    /// A block of all methods.
    BlockOfAll,
    /// A first day of a block that is no date.
    NoStart(DateFault),
    /// A day of a single session, with no log whose age it could tell.
    StartOfNothing,
    /// A plan that begins before its log ends.
    StartInLog {
        /// Its first day.
        start: String,
        /// The log's last day.
        last: String,
    },
    /// The last day of a log shows less than half of the days before.
    LogEndsInFall {
        /// The line of its best set.
        line: usize,
        /// The load of that.
        load: Mass,
        /// The 1RM that it stands for.
        one_rm: Mass,
        /// The best of the days before.
        before: Mass,
    },
    /// Nobody knows what is left of the strength of a log that ended so long ago.
    LogTellsNothing {
        /// Its last day.
        last: String,
        /// Days from there to the plan.
        days: i32,
    },
    /// The 1RM of a log is less than the body that its loads should hold.
    LogBelowBody {
        /// The log's 1RM.
        one_rm: Mass,
        /// The body.
        body: Mass,
    },
    /// Bands or chains were named for a method without them.
    PiecesWithoutMethod,
    /// No strength of the lifter gives the 1RM, so nobody knows what bands and chains would do to it.
    NobodyOfOneRm {
        /// The 1RM.
        one_rm: Mass,
    },
    /// Neither pieces nor a gym to take them from.
    NoPieces {
        /// Bands or chains.
        method: String,
    },
}
