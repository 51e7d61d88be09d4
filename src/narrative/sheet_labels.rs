//! The lines of a printed sheet that are filled in by hand where they are not known.
//!
//! In: nothing. Out: their names, in order.

/// Who trains.
pub const NAME: &str = "Name";
/// The day of the session.
pub const DATE: &str = "Date";

/// Lines to fill in by hand.
pub const FILL_IN: [&str; 4] = [NAME, DATE, "Coach", "Pain 0-10"];
