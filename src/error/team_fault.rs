//! What is wrong with the file of a team or one of its rows.
//!
//! In: quantities and names, where the fault arises. Out: facts that `narrative` puts into words.

use crate::units::{Length, Mass, QuantityFault};

/// What is wrong with the file of a team.
#[derive(Debug, Clone, PartialEq)]
pub enum TeamFault {
    /// The file has no header.
    Empty {
        /// The file as the user named it.
        file: String,
    },
    /// The file has a header and nobody in it.
    Nobody {
        /// The file as the user named it.
        file: String,
    },
    /// Nobody of a team has a plan: each sheet says why.
    NobodyPlanned {
        /// How many people.
        people: usize,
    },
    /// More plans than are made in one call.
    ManyPlans {
        /// How many the file asks for.
        asked: usize,
        /// How many are made.
        most: usize,
    },
    /// Two columns hold the same.
    ColumnTwice {
        /// The headings of both.
        headings: [String; 2],
    },
    /// A column that every team needs is not there.
    NoColumn {
        /// What it holds.
        column: TeamColumn,
        /// The headings there are.
        headings: Vec<String>,
    },
    /// No column holds strengths in the lift that is planned, or in any.
    NoLift {
        /// The lift; without one, any.
        movement: Option<String>,
        /// The lifts that columns hold.
        known: Vec<String>,
    },
    /// A name that stands further up.
    NameTwice {
        /// The name.
        name: String,
        /// The line where it stands first.
        first: usize,
    },
    /// A row cannot be read.
    Row {
        /// Line of the file, counted from 1.
        line: usize,
        /// What is wrong with it.
        fault: TeamRowFault,
    },
    /// More people than are planned for at once.
    TooMany {
        /// The most.
        most: usize,
    },
}

/// A column of a team's file that is no lift.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TeamColumn {
    /// The person.
    Name,
    /// Woman or man, in the sense of the published tables.
    Sex,
    /// Body mass.
    Mass,
    /// Standing height.
    Height,
    /// Months of steady training.
    TrainingMonths,
    /// Years of age.
    Age,
    /// Whether the person is injured or in pain.
    Injured,
    /// Whether the person is ill, unusually sore, or back from a break.
    Unwell,
}

impl TeamColumn {
    /// Every column.
    pub const ALL: [Self; 8] = [
        Self::Name,
        Self::Sex,
        Self::Mass,
        Self::Height,
        Self::TrainingMonths,
        Self::Age,
        Self::Injured,
        Self::Unwell,
    ];

    /// Its name in the header.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Name => "name",
            Self::Sex => "sex",
            Self::Mass => "mass",
            Self::Height => "height",
            Self::TrainingMonths => "training_months",
            Self::Age => "age",
            Self::Injured => "injured",
            Self::Unwell => "unwell",
        }
    }
}

/// What is wrong with one row of a team's file.
#[derive(Debug, Clone, PartialEq)]
pub enum TeamRowFault {
    /// A field that every row needs is empty.
    Missing(TeamColumn),
    /// More fields than the header has columns.
    TooManyFields {
        /// Fields of the row.
        fields: usize,
        /// Columns of the header.
        columns: usize,
    },
    /// No sex in the sense of the tables.
    NoSex {
        /// What stands in the field.
        written: String,
    },
    /// No quantity of the kind that the column holds.
    Quantity(QuantityFault),
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
        /// Least and most at that height.
        ends: (Mass, Mass),
    },
    /// No number of months or years.
    NoNumber {
        /// Of what.
        column: TeamColumn,
        /// What stands in the field.
        written: String,
    },
    /// Neither yes nor no.
    NoYesNo {
        /// Of what.
        column: TeamColumn,
        /// What stands in the field.
        written: String,
    },
    /// A load below nothing: what helps.
    WithHelp {
        /// The lift.
        movement: String,
        /// What was written.
        written: String,
    },
    /// Neither a 1RM nor a set.
    NoStrength {
        /// The lift.
        movement: String,
        /// What stands in the field.
        written: String,
    },
    /// A set of so many repetitions that no equation gives a 1RM.
    TooManyRepetitions {
        /// The lift.
        movement: String,
        /// Repetitions of the set.
        repetitions: u32,
        /// The most.
        most: u32,
    },
}
