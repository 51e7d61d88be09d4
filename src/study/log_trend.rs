//! The trend of a log of one lift; refused where its best session is nobody's.
//!
//! In: a log of one lift. Out: a [`Trend`].

use super::possible_maximum::check_of_anybody;
use crate::error::{PersonFault, Result, What};
use crate::library::Library;
use crate::progress::training_log::Log;
use crate::progress::trend::{Trend, trend};
use crate::units::Mass;

/// The trend of a log of one lift, read with what the lift's movement says.
pub(super) fn trend_of<'a>(library: &'a Library, log: &Log) -> Result<Trend<'a>> {
    let lift = log.entries.first().map_or("", |entry| &entry.lift);
    let facts = library.lift_facts(lift);
    let found = trend(log, facts, &library.published()?.estimates)?;
    let is_known = library.movements().iter().any(|name| name == lift);
    if is_known {
        check_best(library, lift, &found)?;
    }
    Ok(Trend {
        title: is_known
            .then(|| library.movement(lift).ok())
            .flatten()
            .map(|movement| movement.title),
        ..found
    })
}

/// Refuses a log whose best session nobody shows: a digit or a unit of that line is wrong.
fn check_best(library: &Library, lift: &str, trend: &Trend<'_>) -> Result<()> {
    let best = &trend.sessions[trend.best];
    let jumps = trend.jumps.iter().map(|jump| (jump.set.line, jump.one_rm));
    check_shown(
        library,
        lift,
        jumps.chain([(best.set.line, best.estimate.one_rm)]),
    )
}

/// Refuses the highest of these maxima, each with the line of its set, where nobody has it.
pub(super) fn check_shown(
    library: &Library,
    lift: &str,
    shown: impl Iterator<Item = (usize, Mass)>,
) -> Result<()> {
    let highest = shown.max_by(|a, b| a.1.as_kg().total_cmp(&b.1.as_kg()));
    let Some((set_line, one_rm)) = highest else {
        return Ok(());
    };
    let checked = check_of_anybody(library, lift, one_rm);
    checked.map_err(|error| {
        error.each(|mut fault| {
            if let What::Person(PersonFault::ImpossibleOneRm { line, .. }) = &mut fault.what {
                *line = Some(set_line);
            }
            fault
        })
    })
}
