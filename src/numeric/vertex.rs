//! The vertex that a basis of a linear programme stands for.
//!
//! In: a scaled programme and a basis. Out: values, dual values and reduced costs, always computed from the programme's
//! own numbers through a fresh factorisation.

use super::basis::{Resting, SimplexBasis};
use super::equilibrate::Scaled;
use super::factors::Factors;
use super::linear_programme::{MAX_COLUMNS, MAX_ROWS};

/// A reduced cost of the wrong sign below this share of what was added up is rounding. Assumed: far
/// above rounding, far below 1e-9.
const TOLERANCE: f64 = 1e-11;
/// A reduced cost below this share of the largest dual value is rounding too. Assumed.
const ROUNDING: f64 = 1e-14;

/// The vertex of a basis: everything known about it, in scaled numbers.
pub(super) struct Vertex {
    pub factors: Factors,
    pub values: [f64; MAX_COLUMNS],
    /// Values of the basic variables, artificial ones included, in the order of the basis.
    pub basic_values: [f64; MAX_ROWS],
    pub duals: [f64; MAX_ROWS],
    pub reduced_costs: [f64; MAX_COLUMNS],
    /// Whether all values lie within their bounds, but for rounding.
    pub is_feasible: bool,
    /// Whether no reduced cost promises a better objective, but for rounding.
    pub is_optimal: bool,
}

impl Vertex {
    /// The vertex of a basis, or `None` when its columns depend on each other or its numbers overflow.
    pub fn of(scaled: &Scaled, basis: &SimplexBasis) -> Option<Self> {
        let mut vertex = Self {
            factors: Factors::of(scaled, basis)?,
            values: [0.0; MAX_COLUMNS],
            basic_values: [0.0; MAX_ROWS],
            duals: [0.0; MAX_ROWS],
            reduced_costs: [0.0; MAX_COLUMNS],
            is_feasible: true,
            is_optimal: true,
        };
        vertex.find_values(scaled, basis);
        vertex.find_reduced_costs(scaled, basis);
        let numbers = vertex.basic_values.iter().chain(&vertex.duals);
        numbers.sum::<f64>().is_finite().then_some(vertex)
    }

    fn find_values(&mut self, scaled: &Scaled, basis: &SimplexBasis) {
        let (rows, columns) = (scaled.rows, scaled.columns);
        for j in 0..columns {
            self.values[j] = basis.resting_value(scaled, j);
        }
        let mut rest = scaled.right_side;
        for (rest, row) in rest.iter_mut().zip(&scaled.coefficients[..rows]) {
            let row = &row[..columns];
            *rest -= row
                .iter()
                .zip(&self.values)
                .map(|(a, x)| a * x)
                .sum::<f64>();
        }
        self.basic_values = rest;
        self.factors.solve(&mut self.basic_values);
        self.refine_values(scaled, basis, rest);
        for (&index, &value) in basis.basic[..rows].iter().zip(&self.basic_values) {
            let index = usize::from(index);
            if index < MAX_COLUMNS {
                self.values[index] = value;
            }
        }
        self.move_within_bounds(scaled, basis);
    }

    /// Moves values that lie outside by rounding to their bounds, if the rows permit it.
    fn move_within_bounds(&mut self, scaled: &Scaled, basis: &SimplexBasis) {
        let (values, basic_values) = (self.values, self.basic_values);
        let mut is_close = true;
        for (&index, value) in basis.basic[..scaled.rows]
            .iter()
            .zip(&mut self.basic_values)
        {
            let index = usize::from(index);
            is_close &= scaled.excess(index, *value) == 0.0;
            *value = scaled.within_bounds(index, *value);
            if index < MAX_COLUMNS {
                self.values[index] = *value;
            }
        }
        self.is_feasible = is_close || scaled.is_satisfied(&self.values);
        if !self.is_feasible {
            (self.values, self.basic_values) = (values, basic_values);
        }
    }

    fn find_reduced_costs(&mut self, scaled: &Scaled, basis: &SimplexBasis) {
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
        self.refine_duals(scaled, basis);
        let largest = self.duals[..rows]
            .iter()
            .fold(1.0_f64, |top, y| top.max(y.abs()));
        self.reduced_costs = scaled.cost;
        for (&dual, row) in self.duals[..rows].iter().zip(&scaled.coefficients) {
            for (reduced, a) in self.reduced_costs[..columns].iter_mut().zip(row) {
                *reduced -= dual * a;
            }
        }
        self.judge(scaled, basis, largest);
    }

    /// Whether a reduced cost promises more; those that are rounding become zero.
    fn judge(&mut self, scaled: &Scaled, basis: &SimplexBasis, largest: f64) {
        for j in 0..scaled.columns {
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
                let (summed, column_size) = self.summed(scaled, j);
                if promise <= (TOLERANCE * summed).max(ROUNDING * largest * column_size) {
                    self.reduced_costs[j] = 0.0;
                } else {
                    self.is_optimal = false;
                }
            }
        }
    }

    /// One correction from what `B x = rest` still misses, after which each row is satisfied to
    /// rounding of its own terms, however small (Skeel 1980, Math. Comput. 35:817-832, from memory).
    fn refine_values(&mut self, scaled: &Scaled, basis: &SimplexBasis, mut miss: [f64; MAX_ROWS]) {
        for (&index, &value) in basis.basic[..scaled.rows].iter().zip(&self.basic_values) {
            let index = usize::from(index);
            if index < MAX_COLUMNS {
                for (miss, row) in miss.iter_mut().zip(&scaled.coefficients[..scaled.rows]) {
                    *miss -= row[index] * value;
                }
            } else {
                miss[index - MAX_COLUMNS] -= value;
            }
        }
        self.factors.solve(&mut miss);
        for (value, correction) in self.basic_values.iter_mut().zip(miss) {
            *value += correction;
        }
    }

    /// The same correction for `Bᵀ y = c`.
    fn refine_duals(&mut self, scaled: &Scaled, basis: &SimplexBasis) {
        let mut miss = [0.0; MAX_ROWS];
        for (miss, &index) in miss.iter_mut().zip(&basis.basic[..scaled.rows]) {
            let index = usize::from(index);
            *miss = if index < MAX_COLUMNS {
                let terms = self.duals.iter().zip(&scaled.coefficients[..scaled.rows]);
                scaled.cost[index] - terms.map(|(y, row)| y * row[index]).sum::<f64>()
            } else {
                -self.duals[index - MAX_COLUMNS]
            };
        }
        self.factors.solve_transposed(&mut miss);
        for (dual, correction) in self.duals.iter_mut().zip(miss) {
            *dual += correction;
        }
    }

    /// Sum of the sizes of all that made up a reduced cost, and sum of the sizes of its column.
    fn summed(&self, scaled: &Scaled, column: usize) -> (f64, f64) {
        let (mut terms, mut entries) = (scaled.cost[column].abs(), 0.0);
        for (dual, row) in self.duals[..scaled.rows].iter().zip(&scaled.coefficients) {
            terms += (dual * row[column]).abs();
            entries += row[column].abs();
        }
        (terms, entries)
    }
}
