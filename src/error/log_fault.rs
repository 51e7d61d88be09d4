//! What is wrong with a training log or one of its rows.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use super::person_fault::JudgedBy;
use crate::units::{Mass, QuantityFault, Speed};

/// What is wrong with a training log.
#[derive(Debug, Clone, PartialEq)]
pub enum LogFault {
    /// No invented log is called so.
    UnknownLog {
        /// The name.
        name: String,
        /// The names that there are.
        invented: &'static [&'static str],
    },
    /// A workbook of a spreadsheet, or an archive, in place of its text.
    Workbook {
        /// The file as the user named it.
        file: String,
    },
    /// The file has no header.
    Empty {
        /// The file as the user named it.
        file: String,
    },
    /// The file has a header and no sets.
    NoRows {
        /// The file as the user named it.
        file: String,
    },
    /// A log to fill in where nothing is filled in yet.
    NothingDone {
        /// The file as the user named it.
        file: String,
        /// Rows that wait.
        rows: usize,
    },
    /// Two columns hold the same.
    ColumnTwice {
        /// What both hold.
        column: LogColumn,
        /// The headings of both.
        headings: [String; 2],
    },
    /// A column that every log needs is not there.
    NoColumn {
        /// What it holds.
        column: LogColumn,
        /// A heading that is spelt nearly so.
        near: Option<String>,
        /// The headings there are.
        headings: Vec<String>,
    },
    /// Numbers without a unit, which the heading does not tell either.
    NoUnit {
        /// What they are.
        column: LogColumn,
        /// The heading.
        heading: String,
        /// The first of them.
        written: String,
    },
    /// A set that is dated long after today.
    Ahead {
        /// Line of the file, counted from 1.
        line: usize,
        /// Its day.
        day: String,
        /// Today.
        today: String,
    },
    /// A date that is two days.
    TwoDays {
        /// Line of the file, counted from 1.
        line: usize,
        /// The text.
        written: String,
        /// The day, if the day stands first; none if there is no such day.
        day_first: Option<String>,
        /// The day, if the month stands first; none if there is no such day.
        month_first: Option<String>,
    },
    /// Some dates prove one order, some the other.
    DatesDisagree {
        /// Line and text of one whose day stands first.
        day_first: (usize, String),
        /// Line and text of one whose month stands first.
        month_first: (usize, String),
    },
    /// A quote that opens and is never closed.
    OpenQuote {
        /// Line of the file, counted from 1.
        line: usize,
    },
    /// Several athletes, and none of them was named.
    SeveralAthletes(Vec<(String, usize)>),
    /// No set of the athlete that was named.
    NoSetOfAthlete {
        /// The athlete that was named.
        athlete: String,
        /// The athletes of the log with their number of sets; none where no column names them.
        athletes: Vec<(String, usize)>,
    },
    /// A row cannot be read.
    Row {
        /// Line of the file, counted from 1.
        line: usize,
        /// What is wrong with it.
        fault: LogRowFault,
        /// Whether nothing is told behind it.
        is_last: bool,
    },
    /// Many rows cannot be read.
    BadRows {
        /// The file as the user named it.
        file: String,
        /// How many.
        count: usize,
    },
    /// Bad rows beyond those that are told one by one.
    MoreRows(usize),
    /// No set at all.
    NoSets,
    /// Several lifts, and none of them was named.
    MixedLifts(Vec<(String, usize)>),
    /// No set of the lift that was named.
    NoSetOf {
        /// The lift that was named.
        lift: String,
        /// The lifts of the log with their number of sets.
        lifts: Vec<(String, usize)>,
    },
    /// Too few sessions for a trend.
    FewSessions {
        /// Sessions with a usable set.
        usable: usize,
        /// Fewest for a line.
        least: usize,
        /// Fewest for a verdict.
        for_verdict: usize,
    },
}

/// A column of a training log.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LogColumn {
    /// The day of the session.
    Date,
    /// The lift.
    Lift,
    /// The load with its unit.
    Load,
    /// Repetitions done.
    Repetitions,
    /// Mean velocity of the fastest repetition.
    Velocity,
    /// Repetitions left.
    Reserve,
    /// Sets of the row.
    Sets,
    /// Rating of perceived exertion, 10 for nothing left.
    Exertion,
    /// Who lifted.
    Athlete,
    /// The unit of the load.
    Unit,
    /// Anything.
    Note,
}

impl LogColumn {
    /// Every column.
    pub const ALL: [Self; 11] = [
        Self::Date,
        Self::Lift,
        Self::Load,
        Self::Repetitions,
        Self::Velocity,
        Self::Reserve,
        Self::Sets,
        Self::Exertion,
        Self::Athlete,
        Self::Unit,
        Self::Note,
    ];

    /// Its name in the header.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Date => "date",
            Self::Lift => "lift",
            Self::Load => "load",
            Self::Repetitions => "repetitions",
            Self::Velocity => "velocity",
            Self::Reserve => "reserve",
            Self::Sets => "sets",
            Self::Exertion => "rpe",
            Self::Athlete => "athlete",
            Self::Unit => "unit",
            Self::Note => "note",
        }
    }
}

/// What is wrong with one row of a training log.
#[derive(Debug, Clone, PartialEq)]
pub enum LogRowFault {
    /// A field that every row needs is empty.
    Missing(LogColumn),
    /// More fields than the header has columns.
    TooManyFields {
        /// Fields of the row.
        fields: usize,
        /// Columns of the header.
        columns: usize,
    },
    /// No date.
    Date(DateFault),
    /// No lift.
    NoLift {
        /// What stands in the field.
        written: String,
    },
    /// A set that stands for a 1RM which nobody has.
    ImpossibleOneRm {
        /// Name of the movement.
        movement: String,
        /// The 1RM.
        one_rm: Mass,
        /// The 1RM over what is expected of them.
        over_expected: f64,
        /// Standard deviations from it.
        deviations: f64,
        /// Who it is judged by.
        judged_by: JudgedBy,
    },
    /// No quantity of the kind that the column holds.
    Quantity(QuantityFault),
    /// Nothing was lifted.
    NoLoad {
        /// What stands in the field.
        written: String,
    },
    /// More than anybody lifts.
    TooHeavy {
        /// What stands in the field.
        written: String,
        /// The most that is read.
        most: Mass,
    },
    /// More repetitions than a strength set has.
    TooManyRepetitions {
        /// Repetitions of the row.
        count: u32,
        /// The most that is read.
        most: u32,
    },
    /// No number of repetitions.
    NoRepetitions {
        /// What stands in the field.
        written: String,
    },
    /// No mean velocity of a lift.
    NoVelocity {
        /// What stands in the field.
        written: String,
        /// Slowest that is read.
        slowest: Speed,
        /// Fastest that is read.
        fastest: Speed,
    },
    /// A unit in its own column that is another than the heading of the loads names.
    UnitAgainstHeading {
        /// The unit in the field.
        written: String,
        /// The one in the heading.
        heading: String,
    },
    /// A reserve and a rating that tell different sets.
    ReserveAgainstExertion {
        /// Repetitions in reserve, as told.
        reserve: f64,
        /// The rating, as told.
        rating: f64,
    },
    /// No number of repetitions in reserve.
    NoReserve {
        /// What stands in the field.
        written: String,
    },
    /// No rating of perceived exertion that stands for repetitions in reserve.
    NoExertion {
        /// What stands in the field.
        written: String,
    },
    /// No number of sets.
    NoSets {
        /// What stands in the field.
        written: String,
        /// The most that is read.
        most: u32,
    },
    /// A comma that may part decimals or thousands.
    CommaTwoWays {
        /// What stands in the field.
        written: String,
    },
}

/// What stands first in a date such as 1/8/2024.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DateOrder {
    /// The day: 1 August.
    DayFirst,
    /// The month: 8 January.
    MonthFirst,
}

/// Why a text is no day of the calendar.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum DateFault {
    /// Another order or separator.
    Form {
        /// The text.
        written: String,
    },
    /// A year that no log is of.
    Year {
        /// The text.
        written: String,
        /// Its year.
        year: i32,
        /// First and last year that are read.
        years: (i32, i32),
    },
    /// A month that does not exist.
    Month {
        /// The text.
        written: String,
        /// Its month.
        month: u32,
    },
    /// Three numbers of two digits of which the first or the last may be the year.
    ShortYear {
        /// The text.
        written: String,
        /// The day, if the first is the year.
        year_first: String,
        /// The day, if the last is the year.
        year_last: String,
    },
    /// A day that its month does not have.
    Day {
        /// The text.
        written: String,
        /// Days of that month.
        days: u32,
    },
}
