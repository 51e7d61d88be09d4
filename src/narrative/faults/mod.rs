//! Faults in words: message, label of the marked stretch, next moves; one file a room.
//!
//! In: a [`Fault`] and the units that the user asked for. Out: [`Told`].

mod again_told;
mod body_told;
mod command_told;
mod figure_told;
mod file_told;
mod grammar_told;
mod gym_told;
mod height_told;
mod hold_told;
mod implement_told;
mod known_told;
mod log_told;
mod lowering_told;
mod model_body;
mod model_doubt;
mod model_movement;
mod model_rule;
mod model_setting;
mod model_text;
mod model_told;
mod numeric_told;
mod odd_maximum_told;
mod outcome_told;
mod page_told;
mod path_told;
mod person_told;
mod pick_told;
mod planning_told;
mod quantity_told;
mod repetition_told;
pub(crate) mod session_told;
mod study_told;
mod team_told;
mod told;
mod trace_told;

pub use log_told::log_row_in_words;
pub use team_told::team_row_in_words;
pub use told::Told;

use crate::error::{Error, Fault, What};
use crate::narrative::prose::counted_noun;
use crate::units::System;

/// A fault in words, quantities in the units asked for.
#[must_use]
pub fn told(fault: &Fault, units: System) -> Told {
    of(&fault.what, units)
}

/// An error where it is told beside something else: its faults line by line, next moves behind them.
#[must_use]
pub fn in_one_line(error: &Error, units: System) -> String {
    let lines = error.faults().iter().map(|fault| {
        let told = told(fault, units);
        let place = fault.place.as_ref().map(|place| {
            let (line, column) = place.start;
            format!(" ({}:{line}:{column})", place.file)
        });
        let hints = told.hints.iter().map(|hint| format!("; {hint}"));
        told.message + &place.unwrap_or_default() + &hints.collect::<String>()
    });
    lines.collect::<Vec<String>>().join("\n")
}

/// Why something is not done, where other things are: the faults without the next moves, which are of single commands.
#[must_use]
pub fn reasons(error: &Error, units: System) -> String {
    let reasons = error.faults().iter();
    let reasons: Vec<String> = reasons.map(|fault| told(fault, units).message).collect();
    reasons.join("; ")
}

/// What stands for faults that are not shown.
#[must_use]
pub fn more_faults(count: usize) -> String {
    format!("and {}", counted_noun(count, "more fault"))
}

/// What is wrong, in words, quantities in the units asked for.
fn of(what: &What, units: System) -> Told {
    match what {
        What::Quantity(fault) => quantity_told::told(fault),
        What::Numeric(fault) => numeric_told::told(fault),
        What::Body(fault) => body_told::told(fault),
        What::Path(fault) => path_told::told(fault, units),
        What::Hold(fault) => hold_told::told(fault),
        What::Repetition(fault) => repetition_told::told(fault, units),
        What::Implement(fault) => implement_told::told(fault, units),
        What::Grammar(fault) => grammar_told::told(fault, units, of),
        What::Gym(fault) => gym_told::told(fault, units),
        What::File(fault) => file_told::told(fault),
        What::Log(fault) => log_told::told(fault, units),
        What::Plan(fault) => planning_told::told(fault, units),
        What::Session(fault) => session_told::told(fault, units),
        What::Model(fault) => model_told::told(fault, units, told),
        What::Study(fault) => study_told::told(fault, units),
        What::Team(fault) => team_told::told(fault, units),
        What::Person(fault) => person_told::told(fault, units),
        What::Figure(fault) => figure_told::told(fault, units, of),
        What::Page(fault) => page_told::told(fault),
        What::Command(fault) => command_told::told(fault, units),
    }
}
