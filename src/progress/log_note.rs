//! What was understood of a log that its reader may not expect.
//!
//! In: the reading of a file. Out: [`LogNote`]s, each told once.

use crate::error::DateOrder;

/// What was understood of a log.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LogNote {
    /// Headings of columns that are not read.
    ColumnsIgnored(Vec<String>),
    /// Velocities that are left out, because the heading of their column tells no unit.
    SpeedWithoutUnit(String),
    /// Lifts of the log that were not asked for, with their number of sets.
    OtherLifts(Vec<(String, usize)>),
    /// Dates of two numbers are read in this order, because a line proves it.
    DatesProved {
        /// The order.
        order: DateOrder,
        /// A line that can be read in no other.
        line: usize,
        /// Its date.
        written: String,
    },
    /// Lifts that are written otherwise than they are called here.
    LiftsRenamed(Vec<(String, String)>),
    /// Repetitions in reserve follow from a rating of perceived exertion.
    ReserveByExertion,
    /// Rows of a sheet to fill in where nothing is filled in yet.
    NotDoneYet(usize),
    /// Rows stand for several sets.
    SetsByRepetitions,
}
