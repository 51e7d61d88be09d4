//! Words for: what is wrong with the file of a team or one of its rows.

use super::height_told::{ADULTS, no_height};
use super::{Told, quantity_told};
use crate::error::{TeamColumn, TeamFault, TeamRowFault};
use crate::narrative::prose::counted_noun;
use crate::narrative::quantities::QuantityWords;
use crate::units::{QuantityFault, System};

/// What is wrong with a row, in one sentence without its line.
#[must_use]
pub fn team_row_in_words(faults: &[TeamRowFault], units: System) -> String {
    let told: Vec<String> = faults
        .iter()
        .map(|fault| row(fault, units).message)
        .collect();
    told.join("; ")
}

/// The fault in words.
pub(super) fn told(fault: &TeamFault, units: System) -> Told {
    match fault {
        TeamFault::Empty { file } => Told::new(format!("{file} is empty")).hint(HEADER),
        TeamFault::NobodyPlanned { people } => Told::new(match people {
            1 => "nothing is planned for the one person of the team".to_owned(),
            _ => format!("nothing is planned for any of {people} people"),
        })
        .hint("each sheet says why"),
        TeamFault::Nobody { file } => Told::new(format!("{file} has a header and nobody in it")),
        TeamFault::ColumnTwice {
            headings: [first, second],
        } => Told::new(format!("`{first}` and `{second}` hold the same"))
            .hint("take one of them out, or give it another heading"),
        TeamFault::NoColumn { column, .. } => {
            Told::new(format!("the team has no column `{}`", column.name()))
                .hint(holds(*column))
                .hint(HEADER)
        }
        TeamFault::NoLift { movement, known } => no_lift(movement.as_ref(), known),
        TeamFault::NameTwice { name, first } => {
            Told::new(format!("`{name}` stands in line {first} already"))
                .hint("give people of one name something to tell them apart")
        }
        TeamFault::Row { line, fault } => {
            let mut told = row(fault, units);
            told.message = format!("line {line}: {}", told.message);
            told.hint("--skip-bad-rows plans for everybody else")
        }
        TeamFault::ManyPlans { asked, most } => Told::new(format!(
            "the team asks for {asked} plans, one for each person and lift; at most {most} are made in one call"
        ))
        .hint("name one lift in place of `all`, or plan for a part of the team at a time"),
        TeamFault::TooMany { most } => Told::new(format!("more than {most} people are no team"))
            .hint("plan for a part of them at a time"),
    }
}

const HEADER: &str = "a team begins with a header such as: name, sex, mass (kg), height (cm), training_months, squat (kg)";

fn no_lift(movement: Option<&String>, known: &[String]) -> Told {
    match movement {
        Some(movement) => Told::new(format!("the team has no column for the {movement}"))
            .hint(format!("its lifts: {}", known.join(", "))),
        None => Told::new("no column of the team holds a lift").hint(format!(
            "name columns after lifts, such as `squat (kg)`; lifts: {}",
            known.join(", ")
        )),
    }
}

const fn holds(column: TeamColumn) -> &'static str {
    match column {
        TeamColumn::Name => "it holds who it is",
        TeamColumn::Sex => {
            "it holds `woman` or `man`: which published tables of the body are taken"
        }
        TeamColumn::Mass => "it holds the body mass, unit in the cell or the heading",
        TeamColumn::Height => "it holds the height, unit in the cell or the heading",
        TeamColumn::TrainingMonths => "it holds months of steady training, empty for none",
        TeamColumn::Age => "it holds years",
        TeamColumn::Injured | TeamColumn::Unwell => "it holds `yes` or `no`, empty for no",
    }
}

fn row(fault: &TeamRowFault, units: System) -> Told {
    match fault {
        TeamRowFault::Missing(column) => {
            Told::new(format!("the row has no {}", column.name())).hint(holds(*column))
        }
        TeamRowFault::TooManyFields { fields, columns } => {
            let fields = counted_noun(*fields, "field");
            Told::new(format!("the row has {fields}, the header {columns}"))
                .hint("write decimals with a point, or put a field with a comma in quotes")
        }
        TeamRowFault::NoSex { written } => Told::new(format!("`{written}` names no table"))
            .hint("write `woman` or `man` (w, f, m)"),
        TeamRowFault::Quantity(fault @ QuantityFault::NoUnit { .. }) => quantity_told::told(fault)
            .hint("the unit may stand in the heading: `mass (kg)`, `height (cm)`, `squat (kg)`"),
        TeamRowFault::Quantity(fault) => quantity_told::told(fault),
        TeamRowFault::OddHeight {
            height,
            ends: (least, most),
        } => no_height(*height, (*least, *most), units),
        TeamRowFault::OddMass {
            mass,
            ends: (least, most),
        } => Told::new(format!(
            "{} is no body mass of an adult of that height ({} to {})",
            units.mass(*mass),
            units.mass(*least),
            units.mass(*most)
        ))
        .hint(ADULTS),
        TeamRowFault::NoNumber { column, written } => Told::new(format!(
            "`{written}` is no {}",
            match column {
                TeamColumn::Age => "age in years",
                _ => "number of months",
            }
        )),
        TeamRowFault::NoYesNo { column, written } => Told::new(format!(
            "`{written}` in the column `{}` is neither yes nor no",
            column.name()
        ))
        .hint("write `yes` or `no`; an empty cell is no"),
        TeamRowFault::WithHelp { movement, written } => Told::new(format!(
            "`{written}` of the {movement} is less than nothing: a load that helps is no 1RM"
        ))
        .hint(
            "a 1RM of the body is what hangs on it, 0 kg or more; leave the cell empty for a session that finds it, and let who \
             cannot do one yet use a band or a machine that helps",
        ),
        TeamRowFault::NoStrength { movement, written } => {
            Told::new(format!("`{written}` is no 1RM of the {movement}")).hint(STRENGTH)
        }
        TeamRowFault::TooManyRepetitions {
            movement,
            repetitions,
            most,
        } => Told::new(format!(
            "{repetitions} repetitions of the {movement} give no 1RM (at most {most})"
        ))
        .hint("leave the cell empty for a session that finds it"),
    }
}

const STRENGTH: &str =
    "write \"140 kg\", a set such as \"100 kg x 5\", or nothing for a session that finds it";
