//! What velocities say of a person's maxima: those of a log, those of a bar's trace.
//!
//! In: a log with velocities; a lift, its load and a trace. Out: [`ToldMeasurement`]s like those that options tell, and
//! [`TracedLift`] with every repetition that was found.

use super::log_study::{LogChoice, log_of};
use crate::error::{Error, Result, TraceFault};
use crate::library::Library;
use crate::person::{ToldMeasure, ToldMeasurement, ToldTrace};
use crate::progress::bar_trace::BarTrace;
use crate::progress::log_profile::velocity_profile;
use crate::progress::traced_repetitions::{TracedRepetition, traced_repetitions};
use crate::progress::training_log::Log;
use crate::progress::velocity_equations::one_rm_from_velocity;
use crate::units::{Mass, Speed};

/// The repetitions of a trace.
#[derive(Debug, Clone, PartialEq)]
pub struct TracedLift {
    /// What was told.
    pub told: ToldTrace,
    /// Rows without two numbers.
    pub left_out: usize,
    /// Every repetition, in order.
    pub repetitions: Vec<TracedRepetition>,
}

impl TracedLift {
    /// Reads a trace and finds its repetitions.
    ///
    /// **Fails** as [`BarTrace::read`], and where nothing is lifted.
    pub fn of(library: &Library, told: &ToldTrace, columns: &str) -> Result<Self> {
        let (file, text) = library.trace_text(&told.file)?;
        let trace = BarTrace::read(&file, &text, columns)?;
        let repetitions = traced_repetitions(&trace);
        if repetitions.is_empty() {
            return Err(Error::bad(TraceFault::NothingLifted { file }));
        }
        Ok(Self {
            told: told.clone(),
            left_out: trace.left_out,
            repetitions,
        })
    }

    /// The fastest repetition: the one that was lifted as fast as possible and before others tired.
    #[must_use]
    pub fn fastest(&self) -> &TracedRepetition {
        let first = &self.repetitions[0];
        let each = self.repetitions.iter();
        each.fold(first, |best, one| {
            if one.mean_velocity > best.mean_velocity {
                one
            } else {
                best
            }
        })
    }

    /// The maximum that its mean velocity stands for.
    ///
    /// **Fails** where no equation was published for the lift or the velocity.
    pub fn measurement(&self, library: &Library) -> Result<ToldMeasurement> {
        let velocity = self.fastest().mean_velocity;
        let measure = by_equation(library, &self.told.movement, self.told.load, velocity)?;
        Ok(ToldMeasurement {
            written: written(&self.told.movement, self.told.load, velocity),
            movement: self.told.movement.clone(),
            measure,
        })
    }
}

/// "squat=80 kg@0.6 m/s".
fn written(movement: &str, load: Mass, velocity: Speed) -> String {
    let two = |value: f64| (100.0 * value).round() / 100.0;
    let (load, velocity) = (two(load.as_kg()), two(velocity.as_m_s()));
    format!("{movement}={load} kg@{velocity} m/s")
}

/// The measurements of a log with velocities, and the log as it was read: of each lift the maximum that its own line of load
/// and velocity leads to, where the log gives one, else that of its heaviest measured load by a published equation.
///
/// **Fails** as reading the log does, and where no velocity says anything.
pub fn measured_in_velocities(
    library: &Library,
    file: &str,
) -> Result<(Vec<ToldMeasurement>, Log)> {
    let choice = LogChoice {
        name: file.to_owned(),
        ..LogChoice::default()
    };
    let log = log_of(library, &choice)?;
    let known = library.movements();
    let mut told = Vec::new();
    for (lift, _) in log.lifts() {
        let of_lift = log.of_lift(Some(&lift))?;
        if known.contains(&lift) && of_lift.entries.iter().any(|set| set.velocity.is_some()) {
            told.push(by_log(library, &lift, &of_lift)?);
        }
    }
    if told.is_empty() {
        let file = file.to_owned();
        return Err(Error::bad(TraceFault::NoVelocities { file }));
    }
    Ok((told, log))
}

/// The maximum that the velocities of one lift lead to.
///
/// ```text
/// variance = s_1² + (e/M)² + (b δ/M)²
/// ```
/// | symbol  | meaning                                                       |
/// | ------- | --------------------------------------------------------------- |
/// | `s_1`   | error of a maximum that is tried, which the equations were held to |
/// | `M, e`  | the maximum; standard error of the line there, kg                 |
/// | `b, δ`  | slope of the line, kg s/m; how people differ in the velocity at it |
///
/// **Source.** Errors that know nothing of each other add up as variances; [`velocity_profile`].
fn by_log(library: &Library, lift: &str, log: &Log) -> Result<ToldMeasurement> {
    let equations = &library.published()?.estimates.velocity;
    let table = library.person_table()?;
    let line = velocity_profile(log, equations).and_then(std::result::Result::ok);
    let own = line.and_then(|line| {
        let found = line.one_rm?;
        let max_kg = found.load.as_kg();
        let apart = found
            .at
            .deviation
            .map_or(table.velocity.deviation, Speed::as_m_s);
        let errors = [found.error.as_kg(), line.slope_kg_s_m * apart];
        let squares: f64 = errors.iter().map(|error| (error / max_kg).powi(2)).sum();
        (max_kg > 0.0).then(|| ToldMeasurement {
            written: format!("{lift}={}×velocity", line.sets),
            movement: lift.to_owned(),
            measure: ToldMeasure::Velocity {
                one_rm: found.load,
                deviation: (table.one_rm.deviation.powi(2) + squares).sqrt(),
            },
        })
    });
    if let Some(own) = own {
        return Ok(own);
    }
    let measured = log.entries.iter();
    let measured = measured.filter_map(|set| Some((set.load, set.velocity?)));
    let heaviest = measured.max_by(|a, b| a.0.as_kg().total_cmp(&b.0.as_kg()));
    let Some((load, velocity)) = heaviest else {
        let file = lift.to_owned();
        return Err(Error::bad(TraceFault::NoVelocities { file }));
    };
    Ok(ToldMeasurement {
        written: written(lift, load, velocity),
        movement: lift.to_owned(),
        measure: by_equation(library, lift, load, velocity)?,
    })
}

/// The maximum that one load and its mean velocity stand for, by the lift's published equation.
///
/// ```text
/// variance = s_1² + (e/p)² + (p′ δ/p)²
/// ```
/// `p` and `p′` are share of the maximum and its slope by the velocity, `e` the equation's standard error, `δ` the error
/// of a measured velocity. **Source.** As for a log.
fn by_equation(
    library: &Library,
    movement: &str,
    load: Mass,
    velocity: Speed,
) -> Result<ToldMeasure> {
    let equations = &library.published()?.estimates.velocity;
    let table = library.person_table()?;
    let Some(equation) = equations.usual_for(movement) else {
        let mut known: Vec<String> = Vec::new();
        for equation in &equations.equations {
            if !known.contains(&equation.movement) {
                known.push(equation.movement.clone());
            }
        }
        return Err(Error::bad(TraceFault::NoEquation {
            movement: movement.to_owned(),
            known,
        }));
    };
    let Some(one_rm) = one_rm_from_velocity(equations, movement, load, velocity) else {
        return Err(Error::bad(TraceFault::OutsideEquation {
            movement: movement.to_owned(),
            velocity_m_s: velocity.as_m_s(),
        }));
    };
    let share = load.as_kg() / one_rm.as_kg();
    let of_lift = equations.equations.iter();
    let mut of_lift = of_lift.filter(|one| one.movement == movement);
    let told = of_lift.find_map(|one| one.error_percent);
    let error = told.map_or(table.velocity_equation.deviation, |percent| percent / 100.0);
    let slope = (2.0 * equation.a * velocity.as_m_s() + equation.b) / 100.0;
    let errors = [error, slope * table.velocity.deviation];
    let squares: f64 = errors.iter().map(|error| (error / share).powi(2)).sum();
    Ok(ToldMeasure::Velocity {
        one_rm,
        deviation: (table.one_rm.deviation.powi(2) + squares).sqrt(),
    })
}
