//! What is wrong with the trace of a bar, or with a velocity.
//!
//! In: names and numbers, where the fault arises. Out: facts that `narrative` puts into words.

/// Why a trace or a velocity says nothing of a person.
#[derive(Debug, Clone, PartialEq)]
pub enum TraceFault {
    /// A text that names no two columns.
    NoTwoColumns {
        /// The text.
        written: String,
    },
    /// Columns that the file has not.
    NoColumns {
        /// The file.
        file: String,
        /// The names that were asked for.
        written: String,
        /// What stands in its first row.
        seen: Vec<String>,
    },
    /// Time that runs backward.
    Backward {
        /// The file.
        file: String,
        /// The line.
        line: usize,
    },
    /// Too few rows.
    TooShort {
        /// The file.
        file: String,
        /// Rows with a time and a position.
        rows: usize,
        /// The fewest.
        least: usize,
    },
    /// A way that no bar goes.
    NoWay {
        /// The file.
        file: String,
        /// The way, m.
        way_m: f64,
    },
    /// A trace in which nothing is lifted.
    NothingLifted {
        /// The file.
        file: String,
    },
    /// A lift whose velocities nobody published over the load.
    NoEquation {
        /// The lift.
        movement: String,
        /// Lifts that have an equation.
        known: Vec<String>,
    },
    /// A velocity outside those that the equation was made on.
    OutsideEquation {
        /// The lift.
        movement: String,
        /// The velocity, m/s.
        velocity_m_s: f64,
    },
    /// A file of velocities without one of a known lift.
    NoVelocities {
        /// The file.
        file: String,
    },
}
