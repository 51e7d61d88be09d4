//! How well an answer of a linear programme satisfies the conditions of an optimum.
//!
//! In: a programme as plain lists and a solution. Out: three numbers that are all zero at an exact optimum; with
//! them nobody needs to trust the solver.

use microlp::{ComparisonOp, OptimizationDirection, Problem};
use torquill::numeric::{Programme, Solution};

/// Rows and columns as plain lists, from which either solver is fed.
#[derive(Debug, Clone)]
pub struct Instance {
    pub right_side: Vec<f64>,
    /// Cost, lower bound, upper bound, coefficients.
    pub columns: Vec<(f64, f64, f64, Vec<f64>)>,
}

impl Instance {
    pub fn programme(&self) -> Programme {
        let mut programme = Programme::new(self.right_side.len()).unwrap();
        programme.set_right_side(&self.right_side).unwrap();
        for (cost, lower, upper, coefficients) in &self.columns {
            programme
                .add_column(*cost, *lower, *upper, coefficients)
                .unwrap();
        }
        programme
    }

    /// The answer of the other solver.
    pub fn reference(&self) -> Result<f64, microlp::Error> {
        let mut problem = Problem::new(OptimizationDirection::Maximize);
        let variables: Vec<_> = self
            .columns
            .iter()
            .map(|(cost, lower, upper, _)| problem.add_var(*cost, (*lower, *upper)))
            .collect();
        for (row, right) in self.right_side.iter().enumerate() {
            let terms: Vec<_> = variables
                .iter()
                .zip(&self.columns)
                .map(|(&variable, column)| (variable, column.3[row]))
                .collect();
            problem.add_constraint(&terms, ComparisonOp::Eq, *right);
        }
        let outcome = problem.solve()?;
        Ok(outcome
            .into_solution()
            .expect("no limit was set")
            .objective())
    }

    /// The value `c · x` of an answer.
    pub fn objective(&self, solution: &Solution) -> f64 {
        let pairs = self.columns.iter().zip(solution.values());
        pairs.map(|(column, x)| column.0 * x).sum()
    }

    /// Reduced costs of the columns, `d = c − Aᵀ·duals`; zero where rounding alone made them.
    pub fn reduced_costs(&self, duals: &[f64]) -> Vec<f64> {
        self.columns
            .iter()
            .map(|(cost, _, _, coefficients)| {
                let (mut reduced, mut size) = (*cost, cost.abs());
                for (a, y) in coefficients.iter().zip(duals) {
                    reduced -= a * y;
                    size += (a * y).abs();
                }
                if reduced.abs() <= 1e-11 * size {
                    0.0
                } else {
                    reduced
                }
            })
            .collect()
    }
}

/// By how much, relative to the numbers added up, each condition of an optimum is missed.
///
/// ```text
/// primal     max_i |A x − b|_i / (|b_i| + Σ_j |a_ij x_j| + max_j |a_ij|)
///            and max_j (distance of x_j outside its bounds) / (1 + |bound|)
/// dual       max_j d_j / (|c_j| + Σ_i |a_ij y_i| + max |c|) over d_j > 0 without an upper bound,
///            and the same for d_j < 0 without a lower one,   d = c − Aᵀ y
/// slackness  Σ_j [max(d_j, 0)(upper_j − x_j) + max(−d_j, 0)(x_j − lower_j)] / (Σ_j |c_j x_j| + max |c|)
/// ```
/// | symbol | meaning                              |
/// | ------ | ------------------------------------ |
/// | `x`    | values of the variables              |
/// | `y`    | dual values of the rows              |
///
/// **Shape.** Never negative; the last terms of the divisors stand for an error of one unit of a
/// variable or of the cost, so that zero over zero does not occur in a row with coefficients.
/// **Source.** Karush-Kuhn-Tucker conditions of a linear programme (textbook); the sum of the
/// slackness terms is the gap between the primal and the dual objective.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Residuals {
    /// Rows and bounds: does the answer satisfy the programme?
    pub primal: f64,
    /// Dual values: have the reduced costs signs that the bounds permit?
    pub dual: f64,
    /// Complementary slackness: is each variable with a reduced cost at its bound?
    pub slackness: f64,
}

impl Residuals {
    /// The largest of the three.
    pub fn worst(&self) -> f64 {
        self.primal.max(self.dual).max(self.slackness)
    }
}

/// The residuals of the optimality conditions; see [`Residuals`].
pub fn residuals(instance: &Instance, solution: &Solution) -> Residuals {
    let reduced = instance.reduced_costs(solution.duals());
    let bounds = (0..instance.columns.len()).map(|j| outside_bounds(instance, solution, j));
    let in_rows = (0..instance.right_side.len()).map(|i| row_residual(instance, solution, i));
    let largest_cost = largest(instance.columns.iter().map(|column| column.0.abs()));
    let unbounded =
        (0..reduced.len()).map(|j| unbounded(instance, solution, (j, reduced[j]), largest_cost));
    Residuals {
        primal: largest(in_rows.chain(bounds)),
        dual: largest(unbounded),
        slackness: slackness(instance, solution, &reduced, largest_cost),
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

fn row_residual(instance: &Instance, solution: &Solution, row: usize) -> f64 {
    let right = instance.right_side[row];
    let (mut sum, mut size, mut top) = (-right, right.abs(), 0.0_f64);
    for (column, x) in instance.columns.iter().zip(solution.values()) {
        let a = column.3[row];
        sum += a * x;
        size += (a * x).abs();
        top = top.max(a.abs());
    }
    share(sum.abs(), size + top)
}

fn outside_bounds(instance: &Instance, solution: &Solution, column: usize) -> f64 {
    let x = solution.values()[column];
    let (_, lower, upper, _) = instance.columns[column];
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

fn unbounded(
    instance: &Instance,
    solution: &Solution,
    (j, reduced): (usize, f64),
    largest_cost: f64,
) -> f64 {
    let (cost, lower, upper, coefficients) = &instance.columns[j];
    let terms = coefficients.iter().zip(solution.duals());
    let size = cost.abs() + largest_cost + terms.map(|(a, y)| (a * y).abs()).sum::<f64>();
    let open =
        (reduced > 0.0 && *upper == f64::INFINITY) || (reduced < 0.0 && *lower == -f64::INFINITY);
    if open {
        share(reduced.abs(), size)
    } else {
        0.0
    }
}

fn slackness(instance: &Instance, solution: &Solution, reduced: &[f64], largest_cost: f64) -> f64 {
    let (mut gap, mut size) = (0.0, largest_cost);
    for ((column, &x), &reduced) in instance.columns.iter().zip(solution.values()).zip(reduced) {
        size += (column.0 * x).abs();
        let bound = if reduced > 0.0 { column.2 } else { column.1 };
        // A reduced cost towards a bound that is not there counts as a dual residual.
        if reduced != 0.0 && bound.is_finite() {
            gap += (reduced * (bound - x)).abs();
        }
    }
    share(gap, size)
}
