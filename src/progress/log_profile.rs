//! The load-velocity profile of one lifter, from the velocities of a log.
//!
//! In: a [`Log`] of one lift, the published velocities of a true 1RM. Out: a [`VelocityProfile`], or why the log gives
//! none.

use super::day::Day;
use super::published_equations::{VelocityAtOneRm, VelocityEquations};
use super::training_log::{Log, LogEntry};
use crate::numeric::linear_regression;
use crate::units::{Mass, Speed};

/// Weeks before the last measured set that count: strength changes, and a profile is of one strength (assumed).
pub const PROFILE_WEEKS: f64 = 8.0;

/// Fewest sets with a velocity (assumed: a line of two numbers and two to judge it by).
pub const FEWEST_MEASURED: usize = 4;

/// The lightest load must be this much below the heaviest, share of the heaviest (assumed: nearer loads differ in
/// velocity by little more than a day does).
pub const LEAST_SPREAD: f64 = 0.15;

/// A straight line of load over mean velocity, and the 1RM it leads to.
#[derive(Debug, Clone, PartialEq)]
pub struct VelocityProfile<'a> {
    /// Sets with a velocity.
    pub sets: usize,
    /// Day of the first of them.
    pub from: Day,
    /// Day of the last of them.
    pub to: Day,
    /// Lightest and heaviest load.
    pub loads: (Mass, Mass),
    /// Load at which the line has no velocity, kg.
    pub intercept_kg: f64,
    /// Change of the load with velocity, kg per m/s; negative.
    pub slope_kg_s_m: f64,
    /// Share of the variance that the line explains.
    pub r_squared: f64,
    /// The 1RM it leads to, where a velocity of a true 1RM was published for the lift.
    pub one_rm: Option<ProfiledMaximum<'a>>,
}

/// The load of a profile at the velocity of a true 1RM.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ProfiledMaximum<'a> {
    /// The load.
    pub load: Mass,
    /// Standard error of the line there.
    pub error: Mass,
    /// The published velocity.
    pub at: &'a VelocityAtOneRm,
}

/// Why a log with velocities gives no profile.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NoProfile {
    /// Too few sets.
    FewSets(usize),
    /// The loads are too near each other: share of the heaviest between them.
    NarrowLoads(f64),
    /// Heavier loads are no slower.
    NotFalling,
}

/// The profile of the last [`PROFILE_WEEKS`]; `None` if no set has a velocity.
///
/// ```text
/// load = a + b v          1RM = a + b v₁
/// error = s √(1/n + (v₁ − v̄)² / Σ(v − v̄)²),   s² = Σ(load − line)² / (n − 2)
/// ```
/// | symbol | meaning                                        | unit      | range |
/// | ------ | ---------------------------------------------- | --------- | ----- |
/// | `v`    | mean velocity of a set's fastest repetition    | m/s       |       |
/// | `b`    | slope                                          | kg·s/m    | < 0   |
/// | `v₁`   | published mean velocity of a true 1RM          | m/s       |       |
/// | `n`    | sets                                           | –         | ≥ 4   |
///
/// **Shape.** Straight; within a lifter load and velocity are on a line from about 30 % of 1RM on.
/// **Source.** Jidovtseff et al. 2011, J Strength Cond Res 25:267-270, extrapolates that line to a 1RM (from memory);
/// least squares (textbook).
/// **Fails.** With the reason, where sets are few, loads near each other, or heavier loads no slower.
#[must_use]
pub fn velocity_profile<'a>(
    log: &Log,
    published: &'a VelocityEquations,
) -> Option<Result<VelocityProfile<'a>, NoProfile>> {
    let last = log.entries.iter().rfind(|set| set.velocity.is_some())?.day;
    let recent = log
        .entries
        .iter()
        .filter(|set| set.velocity.is_some() && last.weeks_since(set.day) <= PROFILE_WEEKS);
    let mut sets: Vec<&LogEntry> = recent.collect();
    // A row that stands for several sets was measured once.
    sets.dedup_by_key(|set| set.line);
    Some(of_sets(&sets, published))
}

fn of_sets<'a>(
    sets: &[&LogEntry],
    published: &'a VelocityEquations,
) -> Result<VelocityProfile<'a>, NoProfile> {
    let points: Vec<(f64, f64)> = sets
        .iter()
        .filter_map(|set| Some((set.velocity?.as_m_s(), set.load.as_kg())))
        .collect();
    let (Some(first), Some(last)) = (sets.first(), sets.last()) else {
        return Err(NoProfile::FewSets(0));
    };
    if points.len() < FEWEST_MEASURED {
        return Err(NoProfile::FewSets(points.len()));
    }
    let loads = || points.iter().map(|point| point.1);
    let lightest = loads().fold(f64::INFINITY, f64::min);
    let heaviest = loads().fold(0.0, f64::max);
    let spread = 1.0 - lightest / heaviest;
    if spread < LEAST_SPREAD {
        return Err(NoProfile::NarrowLoads(spread));
    }
    let line = linear_regression(&points)
        .ok()
        .filter(|line| line.slope < 0.0)
        .ok_or(NoProfile::NotFalling)?;
    let at = published
        .at_one_rm
        .iter()
        .find(|at| at.movement == first.lift);
    let one_rm = at.map(|at| ProfiledMaximum {
        load: Mass::from_kg((line.intercept + line.slope * at.mean.as_m_s()).max(0.0)),
        error: Mass::from_kg(error_at(&points, (line.intercept, line.slope), at.mean)),
        at,
    });
    Ok(VelocityProfile {
        sets: points.len(),
        from: first.day,
        to: last.day,
        loads: (Mass::from_kg(lightest), Mass::from_kg(heaviest)),
        intercept_kg: line.intercept,
        slope_kg_s_m: line.slope,
        r_squared: line.r_squared,
        one_rm,
    })
}

/// Standard error of the line at a velocity, kg.
fn error_at(points: &[(f64, f64)], (intercept, slope): (f64, f64), at: Speed) -> f64 {
    let n = points.len() as f64;
    let mean = points.iter().map(|point| point.0).sum::<f64>() / n;
    let across: f64 = points.iter().map(|point| (point.0 - mean).powi(2)).sum();
    let left: f64 = points
        .iter()
        .map(|point| (point.1 - intercept - slope * point.0).powi(2))
        .sum();
    let away = at.as_m_s() - mean;
    (left / (n - 2.0) * (1.0 / n + away * away / across)).sqrt()
}
