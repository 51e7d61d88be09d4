//! Small linear programmes: few rows, some dozens of bounded variables, thousands of solves.
//!
//! In: a [`Programme`] and, if there is one, the [`Basis`] of a neighbouring solve. Out: the
//! optimum with its dual values, or why there is none. Everything lies in arrays on the stack: a
//! solve allocates nothing.
//!
//! Sources: bounded-variable primal simplex in two phases, Dantzig 1963, *Linear Programming and
//! Extensions*, ch. 18; first-index rule against cycling, Bland 1977, Math. Oper. Res. 2:103-107
//! (both from memory).

use super::basis::{Basis, Vertex};
use super::equilibrate::Scaled;
use super::tableau::{End, Tableau};
use crate::error::{Error, Result};

/// The most rows a programme can have.
pub const MAX_ROWS: usize = 10;
/// The most columns (variables) a programme can have.
pub const MAX_COLUMNS: usize = 48;

/// How many rounds of both phases, each but the first on a fresh tableau, before we give up.
const ROUNDS: usize = 5;

/// A linear programme with equality rows and bounded columns.
///
/// ```text
/// maximise    c · x
/// subject to  A x = b,   lower ≤ x ≤ upper
/// ```
/// | symbol           | meaning                         | range                       |
/// | ---------------- | ------------------------------- | --------------------------- |
/// | `A`              | one column of coefficients each | finite                      |
/// | `b`              | right side                      | finite                      |
/// | `c`              | cost, what one unit is worth    | finite                      |
/// | `lower`, `upper` | bounds; infinite = none         | not NaN; may cross: then no answer |
///
/// An inequality row takes a column of its own that fills the gap (cost 0, lower bound 0).
///
/// ```
/// use torquill::numeric::{Programme, solve};
/// // maximise 3x + 2y with x + y = 4, 0 ≤ x ≤ 3, y free
/// let mut programme = Programme::new(1)?;
/// programme.set_right_side(&[4.0])?;
/// programme.add_column(3.0, 0.0, 3.0, &[1.0])?;
/// programme.add_column(2.0, f64::NEG_INFINITY, f64::INFINITY, &[1.0])?;
/// let best = solve(&programme, None)?;
/// assert_eq!(best.values(), [3.0, 1.0]);
/// assert_eq!(best.objective(), 11.0);
/// assert_eq!(best.duals(), [2.0]); // one more on the right side is worth 2
/// # Ok::<(), torquill::error::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Programme {
    pub(super) rows: usize,
    pub(super) columns: usize,
    pub(super) coefficients: [[f64; MAX_COLUMNS]; MAX_ROWS],
    pub(super) right_side: [f64; MAX_ROWS],
    pub(super) cost: [f64; MAX_COLUMNS],
    pub(super) lower: [f64; MAX_COLUMNS],
    pub(super) upper: [f64; MAX_COLUMNS],
}

impl Programme {
    /// A programme with this many rows, a right side of zeroes and no column yet.
    ///
    /// # Errors
    /// No row at all, or more than [`MAX_ROWS`].
    pub fn new(rows: usize) -> Result<Self> {
        let mut programme = Self {
            rows: 0,
            columns: 0,
            coefficients: [[0.0; MAX_COLUMNS]; MAX_ROWS],
            right_side: [0.0; MAX_ROWS],
            cost: [0.0; MAX_COLUMNS],
            lower: [0.0; MAX_COLUMNS],
            upper: [0.0; MAX_COLUMNS],
        };
        programme.clear(rows)?;
        Ok(programme)
    }

    /// Forgets all columns and starts again with this many rows, in the same memory.
    ///
    /// # Errors
    /// As [`Programme::new`].
    pub fn clear(&mut self, rows: usize) -> Result<()> {
        if !(1..=MAX_ROWS).contains(&rows) {
            return Err(Error::bad(format!(
                "a linear programme needs 1 to {MAX_ROWS} rows, not {rows}"
            )));
        }
        self.rows = rows;
        self.columns = 0;
        self.right_side = [0.0; MAX_ROWS];
        Ok(())
    }

    /// Sets the right side, one number a row.
    ///
    /// # Errors
    /// Not one number a row, or one that is not finite.
    pub fn set_right_side(&mut self, right_side: &[f64]) -> Result<()> {
        check_column("the right side", right_side, self.rows)?;
        self.right_side[..self.rows].copy_from_slice(right_side);
        Ok(())
    }

    /// Adds a variable and returns its index; `coefficients` has one number a row.
    ///
    /// # Errors
    /// More than [`MAX_COLUMNS`] columns, not one coefficient a row, or a number that is none.
    pub fn add_column(
        &mut self,
        cost: f64,
        lower: f64,
        upper: f64,
        coefficients: &[f64],
    ) -> Result<usize> {
        let column = self.columns;
        if column == MAX_COLUMNS {
            return Err(Error::bad(format!(
                "a linear programme takes at most {MAX_COLUMNS} columns"
            )));
        }
        if lower.is_nan() || upper.is_nan() || !cost.is_finite() {
            return Err(Error::bad(format!(
                "column {column} of a linear programme has cost {cost} and bounds {lower} to {upper}: not all are numbers"
            )));
        }
        if coefficients.len() != self.rows || !coefficients.iter().all(|a| a.is_finite()) {
            check_column(&format!("column {column}"), coefficients, self.rows)?;
        }
        self.cost[column] = cost;
        self.lower[column] = lower;
        self.upper[column] = upper;
        for (row, &coefficient) in self.coefficients.iter_mut().zip(coefficients) {
            row[column] = coefficient;
        }
        self.columns = column + 1;
        Ok(column)
    }

    /// How many rows there are.
    #[must_use]
    pub fn rows(&self) -> usize {
        self.rows
    }

    /// How many columns (variables) there are.
    #[must_use]
    pub fn columns(&self) -> usize {
        self.columns
    }
}

fn check_column(what: &str, numbers: &[f64], rows: usize) -> Result<()> {
    if numbers.len() != rows {
        return Err(Error::bad(format!(
            "{what} of a linear programme with {rows} rows has {} numbers",
            numbers.len()
        )));
    }
    match numbers.iter().position(|number| !number.is_finite()) {
        Some(row) => Err(Error::bad(format!(
            "{what} of a linear programme has {} in row {row}, which is no finite number",
            numbers[row]
        ))),
        None => Ok(()),
    }
}

/// Why a linear programme has no answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum Failure {
    /// No choice of the variables satisfies all rows and bounds.
    #[error("no choice of the variables satisfies every row and every bound")]
    Infeasible,
    /// The objective can grow for ever.
    #[error("the objective can grow without limit: some variable lacks a bound")]
    Unbounded,
    /// Rounding errors kept us from an answer that could be verified.
    #[error("rounding errors kept the linear programme from an answer that could be verified")]
    Stalled,
}

impl From<Failure> for Error {
    fn from(failure: Failure) -> Self {
        Self::no_answer(format!("linear programme: {failure}"))
    }
}

/// The optimum of a [`Programme`], at a vertex.
#[derive(Debug, Clone, PartialEq)]
pub struct Solution {
    pub(super) rows: usize,
    pub(super) columns: usize,
    pub(super) values: [f64; MAX_COLUMNS],
    pub(super) duals: [f64; MAX_ROWS],
    pub(super) reduced_costs: [f64; MAX_COLUMNS],
    objective: f64,
    basis: Basis,
    iterations: usize,
    is_warm: bool,
}

impl Solution {
    /// The value of each variable, within its bounds.
    #[must_use]
    pub fn values(&self) -> &[f64] {
        &self.values[..self.columns]
    }

    /// The largest value of `c · x`.
    #[must_use]
    pub fn objective(&self) -> f64 {
        self.objective
    }

    /// The dual value of each row: change of the objective per unit more on its right side.
    #[must_use]
    pub fn duals(&self) -> &[f64] {
        &self.duals[..self.rows]
    }

    /// The reduced cost of each variable, `c − Aᵀ·duals`: change of the objective per unit by which
    /// its bound moves up. Positive only at an upper bound, negative only at a lower one.
    #[must_use]
    pub fn reduced_costs(&self) -> &[f64] {
        &self.reduced_costs[..self.columns]
    }

    /// The basis of the optimum, a start for the next programme of the same shape.
    #[must_use]
    pub fn basis(&self) -> &Basis {
        &self.basis
    }

    /// How many simplex steps were taken; 0 when the old basis was still the best.
    #[must_use]
    pub fn iterations(&self) -> usize {
        self.iterations
    }

    /// Whether the answer was reached from the old basis.
    #[must_use]
    pub fn is_warm(&self) -> bool {
        self.is_warm
    }

    /// The solution at a vertex, back in the caller's units; [`Failure::Stalled`] when numbers near the
    /// end of the machine's range overflow on the way.
    fn verified(
        programme: &Programme,
        scaled: &Scaled,
        vertex: &Vertex,
        basis: Basis,
    ) -> std::result::Result<Self, Failure> {
        let mut solution = Self {
            rows: programme.rows,
            columns: programme.columns,
            values: [0.0; MAX_COLUMNS],
            duals: [0.0; MAX_ROWS],
            reduced_costs: [0.0; MAX_COLUMNS],
            objective: 0.0,
            basis,
            iterations: 0,
            is_warm: false,
        };
        let mut size = 0.0;
        for column in 0..programme.columns {
            let value = vertex.values[column] * scaled.column_factor[column];
            let value = value
                .max(programme.lower[column])
                .min(programme.upper[column]);
            let unit = scaled.column_factor[column] * scaled.cost_factor;
            let reduced = vertex.reduced_costs[column] / unit;
            solution.values[column] = value;
            solution.objective += programme.cost[column] * value;
            solution.reduced_costs[column] = reduced;
            size += reduced.abs();
        }
        for row in 0..programme.rows {
            let dual = vertex.duals[row] * scaled.row_factor[row] / scaled.cost_factor;
            solution.duals[row] = dual;
            size += dual.abs();
        }
        if (size + solution.objective).is_finite() {
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
    warm: Option<&Basis>,
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
    let mut tableau = Tableau::blank(&scaled, Basis::artificial(&scaled));
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
    old: &Basis,
) -> Option<std::result::Result<Solution, Failure>> {
    let basis = old.at_bounds_of(scaled);
    let vertex = Vertex::of(scaled, &basis)?;
    let mut result = if vertex.is_feasible && vertex.is_optimal {
        Solution::verified(programme, scaled, &vertex, basis)
    } else {
        let mut tableau = Tableau::blank(scaled, basis);
        tableau.refresh(&vertex);
        finish(programme, scaled, &mut tableau)
    };
    if let Ok(solution) = &mut result {
        solution.is_warm = true;
    }
    Some(result)
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
        if end == End::Found {
            (end, failure) = (tableau.find_best(), Failure::Unbounded);
        }
        let is_fresh = round > 0 && tableau.iterations() == before;
        if end == End::Nowhere && is_fresh {
            return Err(failure);
        }
        let Some(vertex) = Vertex::of(scaled, tableau.basis()) else {
            return Err(Failure::Stalled);
        };
        if end != End::Nowhere && vertex.is_feasible && vertex.is_optimal {
            let mut result = Solution::verified(programme, scaled, &vertex, *tableau.basis());
            if let Ok(solution) = &mut result {
                solution.iterations = tableau.iterations();
            }
            return result;
        }
        tableau.refresh(&vertex);
    }
    Err(Failure::Stalled)
}
