//! A basis of a linear programme, and the vertex it stands for.
//!
//! In: which columns are basic and at which bound the others rest. Out: values, dual values and
//! reduced costs, always computed from the programme's own numbers through a fresh factorisation.

use super::equilibrate::Scaled;
use super::linear_programme::{MAX_COLUMNS, MAX_ROWS};

/// How far, in scaled numbers and relative to what was added up, a value may leave its bound or a
/// reduced cost may have the wrong sign. Assumed: far above rounding, far below 1e-9.
const TOLERANCE: f64 = 1e-11;
/// A pivot of the factorisation below this share of the largest entry means "singular". Assumed.
const SINGULAR: f64 = 1e-11;

/// Where a column stands that is not basic, or that it is basic.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Resting {
    Lower,
    Upper,
    /// No bound at all: rests at zero.
    Free,
    /// Both bounds are one number: never moves.
    Fixed,
    Basic,
}

impl Resting {
    /// The resting place nearest to the wish that these bounds permit.
    pub fn at(lower: f64, upper: f64, wish: Self) -> Self {
        if lower == upper {
            Self::Fixed
        } else if wish == Self::Upper && upper.is_finite() {
            Self::Upper
        } else if lower.is_finite() {
            Self::Lower
        } else if upper.is_finite() {
            Self::Upper
        } else {
            Self::Free
        }
    }
}

/// Which columns are basic and where the others rest: the memory of one solve for the next.
///
/// A basic index of `MAX_COLUMNS + i` stands for the artificial variable of row `i`; it stays
/// basic, at zero, when that row is redundant.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Basis {
    pub(super) rows: usize,
    pub(super) columns: usize,
    pub(super) basic: [u8; MAX_ROWS],
    pub(super) resting: [Resting; MAX_COLUMNS],
}

impl Basis {
    /// Whether this column is basic, that is, free to lie between its bounds.
    #[must_use]
    pub fn is_basic(&self, column: usize) -> bool {
        column < self.columns && self.resting[column] == Resting::Basic
    }

    pub(super) fn fits(&self, scaled: &Scaled) -> bool {
        self.rows == scaled.rows && self.columns == scaled.columns
    }

    /// All rows held by their artificial variables, every column at the bound nearest zero.
    pub(super) fn artificial(scaled: &Scaled) -> Self {
        let mut basis = Self {
            rows: scaled.rows,
            columns: scaled.columns,
            basic: std::array::from_fn(|row| (MAX_COLUMNS + row) as u8),
            resting: [Resting::Lower; MAX_COLUMNS],
        };
        for j in 0..scaled.columns {
            let (lower, upper) = (scaled.lower[j], scaled.upper[j]);
            let wish = if upper.abs() < lower.abs() {
                Resting::Upper
            } else {
                Resting::Lower
            };
            basis.resting[j] = Resting::at(lower, upper, wish);
        }
        basis
    }

    /// The same basis with resting places that the present bounds permit.
    pub(super) fn at_bounds_of(&self, scaled: &Scaled) -> Self {
        let mut basis = *self;
        for j in 0..scaled.columns {
            if basis.resting[j] != Resting::Basic {
                basis.resting[j] = Resting::at(scaled.lower[j], scaled.upper[j], basis.resting[j]);
            }
        }
        basis
    }

    /// The value at which a column rests that is not basic.
    pub(super) fn resting_value(&self, scaled: &Scaled, column: usize) -> f64 {
        match self.resting[column] {
            Resting::Lower | Resting::Fixed => scaled.lower[column],
            Resting::Upper => scaled.upper[column],
            Resting::Free | Resting::Basic => 0.0,
        }
    }
}

/// The vertex of a basis: everything known about it, in scaled numbers.
pub(super) struct Vertex {
    pub factors: Factors,
    pub values: [f64; MAX_COLUMNS],
    /// Values of the basic variables, artificial ones included, in the order of the basis.
    pub basic_values: [f64; MAX_ROWS],
    pub duals: [f64; MAX_ROWS],
    pub reduced_costs: [f64; MAX_COLUMNS],
    /// Largest violation of a bound, over the tolerance.
    excess: f64,
    /// Largest reduced cost of the wrong sign, over the tolerance.
    promise: f64,
}

impl Vertex {
    /// The vertex of a basis, or `None` when its columns depend on each other or its numbers overflow.
    pub fn of(scaled: &Scaled, basis: &Basis) -> Option<Self> {
        let mut vertex = Self {
            factors: Factors::of(scaled, basis)?,
            values: [0.0; MAX_COLUMNS],
            basic_values: [0.0; MAX_ROWS],
            duals: [0.0; MAX_ROWS],
            reduced_costs: [0.0; MAX_COLUMNS],
            excess: 0.0,
            promise: 0.0,
        };
        vertex.find_values(scaled, basis);
        vertex.find_reduced_costs(scaled, basis);
        let numbers = vertex.basic_values.iter().chain(&vertex.duals);
        numbers.sum::<f64>().is_finite().then_some(vertex)
    }

    /// Whether all values lie within their bounds, but for rounding.
    pub fn is_feasible(&self) -> bool {
        self.excess <= TOLERANCE
    }

    /// Whether no reduced cost promises a better objective, but for rounding.
    pub fn is_optimal(&self) -> bool {
        self.promise <= TOLERANCE
    }

    fn find_values(&mut self, scaled: &Scaled, basis: &Basis) {
        let (rows, columns) = (scaled.rows, scaled.columns);
        for j in 0..columns {
            self.values[j] = basis.resting_value(scaled, j);
        }
        let mut rest = scaled.right_side;
        let mut size = 1.0_f64;
        for (rest, row) in rest.iter_mut().zip(&scaled.coefficients[..rows]) {
            size = size.max(rest.abs());
            let row = &row[..columns];
            *rest -= row
                .iter()
                .zip(&self.values)
                .map(|(a, x)| a * x)
                .sum::<f64>();
        }
        self.factors.solve(&mut rest);
        self.basic_values = rest;
        for (&index, &value) in basis.basic[..rows].iter().zip(&rest) {
            let index = usize::from(index);
            let excess = if index < MAX_COLUMNS {
                self.values[index] = value;
                (scaled.lower[index] - value).max(value - scaled.upper[index])
            } else {
                value.abs()
            };
            self.excess = self.excess.max(excess / size.max(value.abs()));
        }
    }

    fn find_reduced_costs(&mut self, scaled: &Scaled, basis: &Basis) {
        let (rows, columns) = (scaled.rows, scaled.columns);
        for (dual, &index) in self.duals.iter_mut().zip(&basis.basic[..rows]) {
            let index = usize::from(index);
            *dual = if index < MAX_COLUMNS {
                scaled.cost[index]
            } else {
                0.0
            };
        }
        self.factors.solve_transposed(&mut self.duals);
        let size = self.duals[..rows]
            .iter()
            .fold(1.0_f64, |top, y| top.max(y.abs()));
        self.reduced_costs = scaled.cost;
        for (&dual, row) in self.duals[..rows].iter().zip(&scaled.coefficients) {
            for (reduced, a) in self.reduced_costs[..columns].iter_mut().zip(row) {
                *reduced -= dual * a;
            }
        }
        for j in 0..columns {
            let reduced = self.reduced_costs[j];
            let promise = match basis.resting[j] {
                Resting::Lower => reduced,
                Resting::Upper => -reduced,
                Resting::Free => reduced.abs(),
                Resting::Fixed => continue,
                Resting::Basic => {
                    self.reduced_costs[j] = 0.0;
                    continue;
                }
            };
            if promise > 0.0 {
                self.promise = self.promise.max(promise / size);
                if promise <= TOLERANCE * size {
                    self.reduced_costs[j] = 0.0;
                }
            }
        }
    }
}

/// The basis matrix as a product of triangles, rows exchanged so that pivots are large.
pub(super) struct Factors {
    size: usize,
    triangles: [[f64; MAX_ROWS]; MAX_ROWS],
    order: [usize; MAX_ROWS],
}

impl Factors {
    fn of(scaled: &Scaled, basis: &Basis) -> Option<Self> {
        let size = scaled.rows;
        let mut matrix = [[0.0; MAX_ROWS]; MAX_ROWS];
        for (k, &index) in basis.basic[..size].iter().enumerate() {
            let index = usize::from(index);
            if index < MAX_COLUMNS {
                for (line, row) in matrix[..size].iter_mut().zip(&scaled.coefficients) {
                    line[k] = row[index];
                }
            } else {
                matrix[index - MAX_COLUMNS][k] = 1.0;
            }
        }
        Self::of_matrix(matrix, size)
    }

    fn of_matrix(mut matrix: [[f64; MAX_ROWS]; MAX_ROWS], size: usize) -> Option<Self> {
        let mut order: [usize; MAX_ROWS] = std::array::from_fn(|row| row);
        for k in 0..size {
            let mut best = k;
            for i in k + 1..size {
                if matrix[i][k].abs() > matrix[best][k].abs() {
                    best = i;
                }
            }
            if matrix[best][k].abs() < SINGULAR {
                return None;
            }
            matrix.swap(k, best);
            order.swap(k, best);
            let pivot_row = matrix[k];
            let inverse = 1.0 / pivot_row[k];
            for line in &mut matrix[k + 1..size] {
                let share = line[k] * inverse;
                line[k] = share;
                for (entry, pivot) in line[k + 1..size].iter_mut().zip(&pivot_row[k + 1..size]) {
                    *entry -= share * pivot;
                }
            }
        }
        Some(Self {
            size,
            triangles: matrix,
            order,
        })
    }

    /// Replaces `right` by the solution `w` of `B w = right`.
    pub fn solve(&self, right: &mut [f64; MAX_ROWS]) {
        let size = self.size;
        let mut w = [0.0; MAX_ROWS];
        for i in 0..size {
            let line = &self.triangles[i];
            let mut sum = right[self.order[i]];
            for k in 0..i {
                sum -= line[k] * w[k];
            }
            w[i] = sum;
        }
        for i in (0..size).rev() {
            let line = &self.triangles[i];
            let mut sum = w[i];
            for k in i + 1..size {
                sum -= line[k] * w[k];
            }
            w[i] = sum / line[i];
        }
        *right = w;
    }

    /// Replaces `right` by the solution `y` of `Bᵀ y = right`.
    fn solve_transposed(&self, right: &mut [f64; MAX_ROWS]) {
        let size = self.size;
        let mut w = *right;
        for i in 0..size {
            w[i] /= self.triangles[i][i];
            for k in i + 1..size {
                w[k] -= self.triangles[i][k] * w[i];
            }
        }
        for i in (1..size).rev() {
            for k in 0..i {
                w[k] -= self.triangles[i][k] * w[i];
            }
        }
        for (&row, &value) in self.order[..size].iter().zip(&w) {
            right[row] = value;
        }
    }
}
