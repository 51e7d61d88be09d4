//! Solves small linear programmes, thousands of times.
//!
//! In: a [`Programme`] and, if there is one, the [`SimplexBasis`] of a neighbouring solve. Out: the
//! optimum with its dual values, or why there is none. Everything lies in arrays on the stack: a
//! solve allocates nothing.
//!
//! Sources: bounded-variable primal simplex in two phases, Dantzig 1963, *Linear Programming and
//! Extensions*, ch. 18; first-index rule against cycling, Bland 1977, Math. Oper. Res. 2:103-107
//! (both from memory).

use super::basis::SimplexBasis;
use super::equilibrate::Scaled;
use super::linear_programme::{MAX_COLUMNS, MAX_ROWS, Programme};
use super::tableau::{Halt, Tableau};
use super::vertex::Vertex;
use crate::error::{Error, ProgrammeFault};

/// How many rounds of both phases, each but the first on a fresh tableau, before we give up.
const ROUNDS: usize = 5;

/// Why a linear programme has no answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Failure {
    /// No choice of the variables satisfies all rows and bounds.
    Infeasible,
    /// The objective can grow for ever.
    Unbounded,
    /// Rounding errors kept us from an answer that could be verified.
    Stalled,
}

impl From<Failure> for ProgrammeFault {
    fn from(failure: Failure) -> Self {
        match failure {
            Failure::Infeasible => Self::Infeasible,
            Failure::Unbounded => Self::Unbounded,
            Failure::Stalled => Self::Stalled,
        }
    }
}

impl From<Failure> for Error {
    fn from(failure: Failure) -> Self {
        Self::no_answer(ProgrammeFault::from(failure))
    }
}

/// The optimum of a [`Programme`], at a vertex.
#[derive(Debug, Clone, PartialEq)]
pub struct Solution {
    rows: usize,
    columns: usize,
    values: [f64; MAX_COLUMNS],
    duals: [f64; MAX_ROWS],
    basis: SimplexBasis,
}

impl Solution {
    /// The value of each variable, within its bounds.
    #[must_use]
    pub fn values(&self) -> &[f64] {
        &self.values[..self.columns]
    }

    /// The dual value of each row: change of the objective per unit more on its right side.
    #[must_use]
    pub fn duals(&self) -> &[f64] {
        &self.duals[..self.rows]
    }

    /// The basis of the optimum, a start for the next programme of the same shape.
    #[must_use]
    pub fn basis(&self) -> &SimplexBasis {
        &self.basis
    }

    /// The solution at a vertex, back in the caller's units; [`Failure::Stalled`] when numbers near the
    /// end of the machine's range overflow on the way.
    fn verified(
        programme: &Programme,
        scaled: &Scaled,
        vertex: &Vertex,
        basis: SimplexBasis,
    ) -> std::result::Result<Self, Failure> {
        let mut solution = Self {
            rows: programme.rows,
            columns: programme.columns,
            values: [0.0; MAX_COLUMNS],
            duals: [0.0; MAX_ROWS],
            basis,
        };
        let (mut size, mut objective) = (0.0, 0.0);
        for column in 0..programme.columns {
            let value = vertex.values[column] * scaled.column_factor[column];
            let value = value
                .max(programme.lower[column])
                .min(programme.upper[column]);
            let unit = scaled.column_factor[column] * scaled.cost_factor;
            let reduced = vertex.reduced_costs[column] / unit;
            solution.values[column] = value;
            objective += programme.cost[column] * value;
            size += reduced.abs();
        }
        for row in 0..programme.rows {
            let dual = vertex.duals[row] * scaled.row_factor[row] / scaled.cost_factor;
            solution.duals[row] = dual;
            size += dual.abs();
        }
        if (size + objective).is_finite() {
            Ok(solution)
        } else {
            Err(Failure::Stalled)
        }
    }
}

/// Solves a programme; with the basis of a neighbour it usually needs no step at all.
///
/// # Algorithm
/// 1. Scale rows, columns and cost by powers of two, which changes no digit.
/// 2. Start from the old basis, factored anew; without one, or if its columns now depend on each
///    other, from one artificial variable a row, which may only be zero.
/// 3. If that vertex is feasible and optimal, it is the answer.
/// 4. Phase 1: bring basic values within their bounds by steps that lower the sum of the distances
///    outside; then exchange artificial variables; those that stay mark redundant rows.
/// 5. Phase 2: the largest reduced cost enters; the first index after a run of steps of no length.
/// 6. Factor the last basis from the programme's own numbers, compute values, duals and reduced
///    costs anew and verify them. If they fail, or if there seems to be no answer, build the tableau
///    from them and repeat from step 4; what a fresh tableau says at once is final.
///
/// # Errors
/// See [`Failure`]. An old basis of another shape is passed over, not an error.
pub fn solve(
    programme: &Programme,
    warm: Option<&SimplexBasis>,
) -> std::result::Result<Solution, Failure> {
    let (lower, upper) = (&programme.lower, &programme.upper);
    if (0..programme.columns).any(|j| is_empty(lower[j], upper[j])) {
        return Err(Failure::Infeasible);
    }
    let mut scaled = Scaled::blank(programme);
    scaled.fill(programme);
    if let Some(basis) = warm.filter(|basis| basis.fits(&scaled)) {
        match solve_from(programme, &scaled, basis) {
            None | Some(Err(Failure::Stalled)) => {}
            Some(result) => return result,
        }
    }
    let mut tableau = Tableau::blank(&scaled, SimplexBasis::artificial(&scaled));
    tableau.fill_cold();
    finish(programme, &scaled, &mut tableau)
}

fn is_empty(lower: f64, upper: f64) -> bool {
    lower > upper || lower == f64::INFINITY || upper == f64::NEG_INFINITY
}

/// The answer reached from an old basis; `None` when its columns depend on each other now.
fn solve_from(
    programme: &Programme,
    scaled: &Scaled,
    old: &SimplexBasis,
) -> Option<std::result::Result<Solution, Failure>> {
    let basis = old.at_bounds_of(scaled);
    let vertex = Vertex::of(scaled, &basis)?;
    if vertex.is_feasible && vertex.is_optimal {
        return Some(Solution::verified(programme, scaled, &vertex, basis));
    }
    let mut tableau = Tableau::blank(scaled, basis);
    tableau.refresh(&vertex);
    Some(finish(programme, scaled, &mut tableau))
}

/// Both phases from a filled tableau, then verification on fresh numbers.
fn finish(
    programme: &Programme,
    scaled: &Scaled,
    tableau: &mut Tableau,
) -> std::result::Result<Solution, Failure> {
    for round in 0..ROUNDS {
        let before = tableau.iterations();
        let (mut end, mut failure) = (tableau.find_feasible(), Failure::Infeasible);
        if end == Halt::Found {
            (end, failure) = (tableau.find_best(), Failure::Unbounded);
        }
        let is_fresh = round > 0 && tableau.iterations() == before;
        if end == Halt::Nowhere && is_fresh {
            return Err(failure);
        }
        let Some(vertex) = Vertex::of(scaled, tableau.basis()) else {
            return Err(Failure::Stalled);
        };
        if end != Halt::Nowhere && vertex.is_feasible && vertex.is_optimal {
            return Solution::verified(programme, scaled, &vertex, *tableau.basis());
        }
        tableau.refresh(&vertex);
    }
    Err(Failure::Stalled)
}
