//! The most probable parameters and how sure they are.
//!
//! ```text
//! minimise  sum of ((y_i - f_i(x))/s_i)^2 + sum of z_k^2,    x from z as in `body`
//! C = (J'J + 1)^-1 over z at the minimum
//! ```
//! `y` targets, `s` their standard deviations, `f` the model, `z` parameters in prior standard deviations.

use super::body::Bodies;
use super::problem::{Problem, Target};
use super::quantity::Laboratory;
use nalgebra::{DMatrix, DVector};
use std::collections::BTreeSet;
use std::path::Path;
use torquill::anatomy::Lifter;

/// Steps for slopes, in prior standard deviations: a line that begins to touch its ball bends the sum of squares
/// sharply, and a search sticks in such a bend until it looks farther or less far.
const LOOKS: [f64; 5] = [0.03, 0.1, 0.01, 0.03, 1e-3];
/// Steps no longer than this end a search.
const SETTLED: f64 = 1e-9;
/// The farthest one step goes, in prior standard deviations.
const FARTHEST: f64 = 1.0;
/// The most steps of one search.
const MOST_STEPS: usize = 60;
/// A search that gains less than this of the sum of squares in a step ends.
const LITTLE: f64 = 1e-7;

/// What the fit found.
#[derive(Debug)]
pub struct Answer {
    pub bodies: Bodies,
    /// Parameters, in prior standard deviations from the prior.
    pub z: Vec<f64>,
    /// Their covariance.
    pub covariance: DMatrix<f64>,
    /// What the model says of the targets, in their order.
    pub fitted: Vec<f64>,
    pub steps: usize,
}

impl Answer {
    /// Man and woman as fitted.
    pub fn lifters(&self) -> [Lifter; 2] {
        self.bodies
            .lifters(&self.z)
            .expect("the answer was built before")
    }
}

/// Everything that is evaluated again and again.
#[derive(Debug)]
pub struct Search<'a> {
    problem: &'a Problem,
    pub bodies: Bodies,
    targets: Vec<&'a Target>,
    /// Numbers of the targets that each parameter reaches.
    reached: Vec<Vec<usize>>,
}

impl<'a> Search<'a> {
    pub fn of(problem: &'a Problem, root: &Path) -> Result<Self, String> {
        let bodies = Bodies::of(problem, root)?;
        let targets: Vec<&Target> = problem.targets.targets.values().collect();
        let lifters = bodies.lifters(&vec![0.0; bodies.names.len()])?;
        let laboratory = Laboratory {
            lifters: &lifters,
            targets: &problem.targets,
        };
        let looks_at: Vec<BTreeSet<String>> = targets
            .iter()
            .map(|target| laboratory.muscles(&target.quantity))
            .collect();
        let touched = bodies.touched(&lifters[0]);
        let reached = touched
            .iter()
            .map(|touched| {
                let meets = |looked: &BTreeSet<String>| {
                    touched.contains("*") || !touched.is_disjoint(looked)
                };
                (0..targets.len())
                    .filter(|index| meets(&looks_at[*index]))
                    .collect()
            })
            .collect();
        Ok(Self {
            problem,
            bodies,
            targets,
            reached,
        })
    }

    /// What the model says of these targets.
    fn values(&self, z: &[f64], which: &[usize]) -> Result<Vec<f64>, String> {
        let lifters = self.bodies.lifters(z)?;
        let laboratory = Laboratory {
            lifters: &lifters,
            targets: &self.problem.targets,
        };
        let value = |index: &usize| laboratory.value(&self.targets[*index].quantity);
        Ok(which.iter().map(value).collect())
    }

    pub fn all_values(&self, z: &[f64]) -> Result<Vec<f64>, String> {
        let all: Vec<usize> = (0..self.targets.len()).collect();
        self.values(z, &all)
    }

    fn residual(&self, index: usize, value: f64) -> f64 {
        residual(self.targets[index], value)
    }

    /// Both sums of squares.
    fn squares(&self, z: &[f64], values: &[f64]) -> f64 {
        let misfit: f64 = values
            .iter()
            .enumerate()
            .map(|(index, value)| self.residual(index, *value).powi(2))
            .sum();
        misfit + z.iter().map(|z| z * z).sum::<f64>()
    }

    /// Slopes of the residuals by the parameters, from two sides.
    fn slopes(&self, z: &[f64], look: f64) -> Result<DMatrix<f64>, String> {
        let columns: Vec<(Vec<f64>, Vec<f64>)> = {
            use rayon::prelude::*;
            let side = |k: usize, step: f64| {
                let mut moved = z.to_vec();
                moved[k] += step;
                self.values(&moved, &self.reached[k])
            };
            (0..z.len())
                .into_par_iter()
                .map(|k| Ok((side(k, look)?, side(k, -look)?)))
                .collect::<Result<_, String>>()?
        };
        let mut slopes = DMatrix::zeros(self.targets.len(), z.len());
        for (k, (above, below)) in columns.iter().enumerate() {
            for (row, index) in self.reached[k].iter().enumerate() {
                let rise = self.residual(*index, above[row]) - self.residual(*index, below[row]);
                slopes[(*index, k)] = rise / (2.0 * look);
            }
        }
        Ok(slopes)
    }

    /// A place to start from.
    pub fn state(&self, z: Vec<f64>) -> Result<State, String> {
        let values = self.all_values(&z)?;
        let squares = self.squares(&z, &values);
        Ok(State { z, values, squares })
    }

    /// Goes downhill until a step gains next to nothing (Levenberg 1944, Marquardt 1963); returns the steps taken.
    pub fn descend(&self, state: &mut State, look: f64, most: usize) -> Result<usize, String> {
        let mut damping = 1e-2;
        for steps in 1..=most {
            let mut slopes = self.slopes(&state.z, look)?;
            loop {
                let tried = self.step_with(&state.z, &state.values, slopes, damping);
                slopes = tried.slopes;
                let longest = tried.step.amax();
                let part = (FARTHEST / longest).min(1.0);
                let moved = state.z.iter().zip(tried.step.iter());
                let next = self.state(moved.map(|(z, step)| z + part * step).collect())?;
                let gain = state.squares - next.squares;
                if gain >= 0.0 {
                    *state = next;
                    damping = (damping * 0.2).max(1e-12);
                    if longest < SETTLED || gain < LITTLE * state.squares {
                        return Ok(steps);
                    }
                    break;
                }
                damping *= 4.0;
                if longest < SETTLED || damping > 1e6 {
                    return Ok(steps);
                }
            }
        }
        Ok(most)
    }

    fn step_with(&self, z: &[f64], values: &[f64], slopes: DMatrix<f64>, damping: f64) -> Step {
        let residuals =
            DVector::from_fn(values.len(), |index, _| self.residual(index, values[index]));
        let curvature = slopes.tr_mul(&slopes) + DMatrix::identity(z.len(), z.len());
        let gradient = slopes.tr_mul(&residuals) + DVector::from_column_slice(z);
        let damped = &curvature + DMatrix::from_diagonal(&curvature.diagonal()) * damping;
        let step = damped
            .cholesky()
            .expect("a sum of squares and one is positive")
            .solve(&-gradient);
        Step {
            step,
            curvature,
            slopes,
        }
    }
}

/// One step of a search.
#[derive(Debug)]
struct Step {
    step: DVector<f64>,
    curvature: DMatrix<f64>,
    slopes: DMatrix<f64>,
}

/// Where a search is.
#[derive(Debug, Clone)]
pub struct State {
    /// Parameters, in prior standard deviations from their priors.
    pub z: Vec<f64>,
    /// What the model says of the targets.
    pub values: Vec<f64>,
    /// Both sums of squares.
    pub squares: f64,
}

/// Distance of a value from its target in standard deviations; 0 inside an interval.
pub fn residual(target: &Target, value: f64) -> f64 {
    let nearest = match target.to {
        Some(to) => value.clamp(target.value.min(to), target.value.max(to)),
        None => target.value,
    };
    (value - nearest) / target.deviation
}

/// The parameters with the least sum of squares, from the priors.
pub fn most_probable(problem: &Problem, root: &Path) -> Result<Answer, String> {
    let search = Search::of(problem, root)?;
    let mut state = search.state(vec![0.0; search.bodies.names.len()])?;
    let mut steps = 0;
    for look in LOOKS {
        steps += search.descend(&mut state, look, MOST_STEPS)?;
    }
    let slopes = search.slopes(&state.z, LOOKS[0])?;
    let last = search.step_with(&state.z, &state.values, slopes, 0.0);
    let covariance = last
        .curvature
        .try_inverse()
        .ok_or("the curvature has no inverse")?;
    Ok(Answer {
        bodies: search.bodies,
        z: state.z,
        covariance,
        fitted: state.values,
        steps,
    })
}
