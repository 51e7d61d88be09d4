//! What a training log says of a person: of every lift the set of its last session that tells the highest maximum.
//!
//! In: which log and whose sets, the person's body mass. Out: [`ToldMeasurement`]s like those that options tell.

use super::log_study::{LogChoice, log_of};
use super::log_trend::check_shown;
use super::possible_rows::without_impossible;
use crate::error::{Error, PersonFault, Result};
use crate::library::Library;
use crate::movement::Carrier;
use crate::person::{ToldMeasure, ToldMeasurement};
use crate::progress::estimate::{MOST_REPETITIONS, estimate};
use crate::progress::published_equations::RepetitionEquations;
use crate::progress::training_log::{Log, LogEntry};
use crate::progress::unconfirmed::{Jump, without_jumps};
use crate::units::Mass;

/// What a log tells of a person.
#[derive(Debug, Clone, PartialEq)]
pub struct MeasuredInLog {
    /// The measurements.
    pub told: Vec<ToldMeasurement>,
    /// The log as it was read.
    pub log: Log,
    /// Sets that do not count: far more than the days before explain.
    pub jumps: Vec<Jump>,
}

/// The measurements of a log.
///
/// A set counts if it says how many repetitions were left, and if it counts for the trend of a lift; of a lift, those of the
/// last day with such a set, since strength is today's. **Fails** as reading the log does, where a set stands for what
/// nobody lifts, and where no set of a known lift tells a maximum.
pub fn measured_in_log(
    library: &Library,
    choice: &LogChoice,
    body_mass: Mass,
) -> Result<MeasuredInLog> {
    let mut log = log_of(library, choice)?;
    let known = library.movements();
    let published = &library.published()?.estimates;
    let equations = &published.repetitions;
    let mut told = Vec::new();
    let mut jumps = Vec::new();
    for (lift, _) in log.lifts() {
        if !known.contains(&lift) {
            continue;
        }
        let judge = |log: &Log| -> Result<_> {
            let (counted, slips) = without_jumps(log, published);
            let best = best_set(&counted, equations);
            let shown = slips.iter().map(|slip| (slip.set.line, slip.one_rm));
            let of_best = best.iter().map(|(one_rm, set)| (set.line, *one_rm));
            check_shown(library, &lift, shown.chain(of_best))?;
            Ok((slips, best))
        };
        // A log counts the body with the load where the lift moves it, or leaves it out in every row.
        let body = match library.movement(&lift)?.carrier()? {
            Carrier::Body => body_mass,
            _ => Mass::ZERO,
        };
        let (of_lift, _) = log.of_lift(Some(&lift))?.holding_body(body);
        let already = of_lift.skipped.len();
        let (judged, (slips, best)) = without_impossible(of_lift, choice.bad_rows, judge)?;
        log.skipped.extend(judged.skipped.into_iter().skip(already));
        jumps.extend(slips);
        let Some((_, best)) = best else {
            continue;
        };
        told.push(told_of(&best, best.load - body));
    }
    if told.is_empty() {
        return Err(Error::bad(PersonFault::NothingInLog {
            log: choice.name.clone(),
            lifts: log.lifts(),
        }));
    }
    Ok(MeasuredInLog { told, log, jumps })
}

/// Of the last day with a set that tells a maximum, the set that tells the highest, and that.
fn best_set(log: &Log, equations: &RepetitionEquations) -> Option<(Mass, LogEntry)> {
    log.by_day().into_iter().rev().find_map(|(_, sets)| {
        let each = sets.iter().filter_map(|set| {
            let reserve = set.reserve?;
            let most = f64::from(set.repetitions) + reserve;
            if set.repetitions == 0 || most > MOST_REPETITIONS {
                return None;
            }
            let found = estimate(equations, None, set.load, set.repetitions, reserve)?;
            Some((found.one_rm, set))
        });
        let best = each.max_by(|a, b| a.0.as_kg().total_cmp(&b.0.as_kg()));
        best.map(|(one_rm, set)| (one_rm, set.clone()))
    })
}

/// The set as the option for lifts would tell it.
fn told_of(set: &LogEntry, load: Mass) -> ToldMeasurement {
    let reserve = set.reserve.unwrap_or(0.0);
    ToldMeasurement {
        written: format!(
            "{}={} kg×{}@rir{reserve}",
            set.lift,
            (100.0 * load.as_kg()).round() / 100.0,
            set.repetitions
        ),
        movement: set.lift.clone(),
        measure: ToldMeasure::Lift {
            load,
            repetitions: Some(set.repetitions),
            reserve: set.reserve,
        },
    }
}
