//! How well an answer of a linear programme satisfies the conditions of an optimum.
//!
//! In: a programme and a solution. Out: three numbers that are all zero at an exact optimum; with
//! them nobody needs to trust the solver.

use super::linear_programme::{Programme, Solution};

/// By how much, relative to the numbers added up, each condition of an optimum is missed.
///
/// ```text
/// primal     max_i |A x − b|_i / (|b_i| + Σ_j |a_ij x_j| + max_j |a_ij|)
///            and max_j (distance of x_j outside its bounds) / (1 + |bound|)
/// dual       max_j |c − Aᵀ y − d|_j / (|c_j| + Σ_i |a_ij y_i| + max |c|)
///            and the same for d_j > 0 without an upper bound, d_j < 0 without a lower one
/// slackness  Σ_j [max(d_j, 0)(upper_j − x_j) + max(−d_j, 0)(x_j − lower_j)] / (Σ_j |c_j x_j| + max |c|)
/// ```
/// | symbol | meaning                              |
/// | ------ | ------------------------------------ |
/// | `x`    | values of the variables              |
/// | `y`    | dual values of the rows              |
/// | `d`    | reduced costs of the variables       |
///
/// **Shape.** Never negative; the last terms of the divisors stand for an error of one unit of a
/// variable or of the cost, so that zero over zero does not occur in a row with coefficients.
/// **Source.** Karush-Kuhn-Tucker conditions of a linear programme (textbook); the sum of the
/// slackness terms is the gap between the primal and the dual objective.
/// **Fails.** Never; a solution of another programme gives large residuals, not an error.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Residuals {
    /// Rows and bounds: does the answer satisfy the programme?
    pub primal: f64,
    /// Dual values: do they explain every variable's cost, with signs that the bounds permit?
    pub dual: f64,
    /// Complementary slackness: is each variable with a reduced cost at its bound?
    pub slackness: f64,
}

impl Residuals {
    /// The largest of the three.
    #[must_use]
    pub fn worst(&self) -> f64 {
        self.primal.max(self.dual).max(self.slackness)
    }
}

/// The residuals of the optimality conditions; see [`Residuals`].
#[must_use]
pub fn residuals(programme: &Programme, solution: &Solution) -> Residuals {
    let columns = programme.columns.min(solution.columns);
    let rows = programme.rows.min(solution.rows);
    if columns < programme.columns || rows < programme.rows {
        let none = f64::INFINITY;
        return Residuals {
            primal: none,
            dual: none,
            slackness: none,
        };
    }
    let bounds = (0..columns).map(|j| outside_bounds(programme, solution, j));
    let in_rows = (0..rows).map(|i| row_residual(programme, solution, i));
    let largest_cost = largest(programme.cost[..columns].iter().map(|c| c.abs()));
    Residuals {
        primal: largest(in_rows.chain(bounds)),
        dual: largest((0..columns).map(|j| dual_residual(programme, solution, j, largest_cost))),
        slackness: slackness(programme, solution, largest_cost),
    }
}

/// The largest of some numbers that are not negative; a NaN counts as infinite.
fn largest(numbers: impl Iterator<Item = f64>) -> f64 {
    numbers.fold(0.0, |top, x| {
        if x.is_nan() {
            f64::INFINITY
        } else {
            x.max(top)
        }
    })
}

fn share(miss: f64, size: f64) -> f64 {
    if miss == 0.0 { 0.0 } else { miss / size }
}

fn row_residual(programme: &Programme, solution: &Solution, row: usize) -> f64 {
    let right = programme.right_side[row];
    let (mut sum, mut size, mut top) = (-right, right.abs(), 0.0_f64);
    for (a, x) in programme.coefficients[row].iter().zip(solution.values()) {
        sum += a * x;
        size += (a * x).abs();
        top = top.max(a.abs());
    }
    share(sum.abs(), size + top)
}

fn outside_bounds(programme: &Programme, solution: &Solution, column: usize) -> f64 {
    let x = solution.values[column];
    let (lower, upper) = (programme.lower[column], programme.upper[column]);
    if x < lower {
        (lower - x) / (1.0 + lower.abs())
    } else if x > upper {
        (x - upper) / (1.0 + upper.abs())
    } else if x.is_nan() {
        f64::INFINITY
    } else {
        0.0
    }
}

fn dual_residual(programme: &Programme, solution: &Solution, j: usize, largest_cost: f64) -> f64 {
    let reduced = solution.reduced_costs[j];
    let mut sum = programme.cost[j] - reduced;
    let mut size = programme.cost[j].abs() + largest_cost;
    for (row, y) in programme.coefficients.iter().zip(solution.duals()) {
        sum -= row[j] * y;
        size += (row[j] * y).abs();
    }
    let unbounded = (reduced > 0.0 && programme.upper[j] == f64::INFINITY)
        || (reduced < 0.0 && programme.lower[j] == f64::NEG_INFINITY);
    let sign = if unbounded { reduced.abs() } else { 0.0 };
    share(sum.abs().max(sign), size)
}

fn slackness(programme: &Programme, solution: &Solution, largest_cost: f64) -> f64 {
    let (mut gap, mut size) = (0.0, largest_cost);
    for (j, (&x, &reduced)) in solution
        .values()
        .iter()
        .zip(solution.reduced_costs())
        .enumerate()
    {
        size += (programme.cost[j] * x).abs();
        let bound = if reduced > 0.0 {
            programme.upper[j]
        } else {
            programme.lower[j]
        };
        // A reduced cost towards a bound that is not there counts as a dual residual.
        if reduced != 0.0 && bound.is_finite() {
            gap += (reduced * (bound - x)).abs();
        }
    }
    share(gap, size)
}
