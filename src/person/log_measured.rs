//! What a measurement says: the logarithm of a maximum, a force or a torque, and the variance of its error.
//!
//! In: what was told, the table of errors, the published equations. Out: [`LogMeasured`].

use super::person_table::PersonTable;
use crate::numeric::mean_and_deviation;
use crate::progress::estimate::estimate;
use crate::progress::published_equations::RepetitionEquations;
use crate::units::Mass;

/// A measured value: logarithm and variance of its error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LogMeasured {
    /// Logarithm of the value in SI (kg of a mass).
    pub log_value: f64,
    /// Variance of the logarithm's error.
    pub variance: f64,
}

/// The maximum that a lift or a set stands for; `total` is all that is lifted, the body with it where it is the load.
///
/// ```text
/// variance = s_1² + s_e² + (d·v·(r − 1))² + (d·q)²,      d = ln 1RM(r + 1) − ln 1RM(r)
/// ```
/// | symbol | meaning                                                      |
/// | ------ | ------------------------------------------------------------ |
/// | `s_1`  | error of a maximum that is tried                              |
/// | `s_e`  | deviation between the general equations                       |
/// | `d`    | what one repetition more is worth, `r` repetitions to failure |
/// | `v`    | how people differ in repetitions                              |
/// | `q`    | error of the reserve; 0 where none is told                    |
///
/// **Source.** Errors that know nothing of each other add up as variances; the numbers stand in the table.
/// **Fails.** `None` where no equation holds for so many repetitions.
#[must_use]
pub fn measured_lift(
    table: &PersonTable,
    equations: &RepetitionEquations,
    total: Mass,
    (repetitions, reserve): (u32, Option<f64>),
) -> Option<LogMeasured> {
    let left = reserve.unwrap_or(0.0);
    let of_set = estimate(equations, None, total, repetitions, left)?;
    let log_value = of_set.one_rm.as_kg().ln();
    let tried = table.one_rm.deviation.powi(2);
    if of_set.measured && reserve.is_none() {
        return Some(LogMeasured {
            log_value,
            variance: tried,
        });
    }
    let logs: Vec<f64> = of_set
        .guesses
        .iter()
        .filter(|guess| guess.equation.is_general() && guess.in_range)
        .map(|guess| guess.one_rm.as_kg().ln())
        .collect();
    let between = mean_and_deviation(&logs).map_or(0.0, |(_, deviation)| deviation);
    let fewer = (repetitions > 1)
        .then(|| estimate(equations, None, total, repetitions - 1, left))
        .flatten();
    let more = estimate(equations, None, total, repetitions + 1, left);
    let worth = match (more, fewer) {
        (Some(more), _) => more.one_rm.as_kg().ln() - log_value,
        (None, Some(fewer)) => log_value - fewer.one_rm.as_kg().ln(),
        (None, None) => 0.0,
    };
    let people = table.repetitions.deviation * (of_set.repetitions_to_failure - 1.0);
    let felt = reserve.map_or(0.0, |_| table.reserve.deviation);
    let variance = tried + between.powi(2) + (worth * people).powi(2) + (worth * felt).powi(2);
    Some(LogMeasured {
        log_value,
        variance,
    })
}

/// A force held at a place; `place_error` is what the model misses forces of one lift at different places by.
#[must_use]
pub fn measured_hold(table: &PersonTable, force_n: f64, place_error: f64) -> LogMeasured {
    LogMeasured {
        log_value: force_n.ln(),
        variance: table.hold.deviation.powi(2) + place_error.powi(2),
    }
}

/// A torque held on a dynamometer.
#[must_use]
pub fn measured_dynamometer(table: &PersonTable, torque_nm: f64) -> LogMeasured {
    LogMeasured {
        log_value: torque_nm.ln(),
        variance: table.dynamometer.deviation.powi(2),
    }
}
