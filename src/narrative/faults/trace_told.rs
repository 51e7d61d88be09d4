//! Words for: what is wrong with the trace of a bar, or with a velocity.

use super::Told;
use crate::error::TraceFault;
use crate::narrative::prose::counted_noun;
use crate::narrative::quantities::rounded;

/// The fault in words.
pub(super) fn told(fault: &TraceFault) -> Told {
    match fault {
        TraceFault::NoTwoColumns { written } => {
            Told::new(format!("`{written}` does not name two columns"))
                .hint("write the column of time and that of position: --columns time,position")
        }
        TraceFault::NoColumns {
            file,
            written,
            seen,
        } => Told::new(format!("{file} has no columns {written}")).hint(format!(
            "its first row has: {}; units stand behind the name (position_mm, time [ms]), else they are seconds and metres",
            seen.join(", ")
        )),
        TraceFault::Backward { file, line } => {
            Told::new(format!("time runs backward in line {line} of {file}"))
                .hint("keep one recording a file, in the order of time")
        }
        TraceFault::TooShort { file, rows, least } => Told::new(format!(
            "{file} has {} with a time and a position: too few for a repetition ({least})",
            counted_noun(*rows, "row")
        )),
        TraceFault::NoWay { file, way_m } => Told::new(format!(
            "the bar of {file} goes {} m from its lowest to its highest place, which no lift does",
            rounded(*way_m, 2)
        ))
        .hint("say the unit behind the column's name, such as position_mm"),
        TraceFault::NothingLifted { file } => {
            Told::new(format!("no repetition was found in {file}"))
                .hint("heights grow upward; the recording holds the lift from its lowest place to its end")
        }
        TraceFault::NoEquation { movement, known } => Told::new(format!(
            "velocities of the {movement} say nothing of its maximum here: no equation was published"
        ))
        .hint(format!("lifts with one: {}", known.join(", "))),
        TraceFault::OutsideEquation {
            movement,
            velocity_m_s,
        } => Told::new(format!(
            "{} m/s is outside the velocities that the equation of the {movement} was made on",
            rounded(*velocity_m_s, 2)
        ))
        .hint("record a heavier load, lifted as fast as possible, or look at the unit"),
        TraceFault::NoVelocities { file } => {
            Told::new(format!("{file} has no velocity of a lift that is known"))
                .hint("a row tells date, lift, load, repetitions and velocity (0.45 m/s)")
        }
    }
}
