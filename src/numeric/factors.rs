//! The basis matrix of a linear programme as a product of two triangles.
//!
//! In: a scaled programme and a basis. Out: solutions of systems with that matrix or its transpose.
//! Gaussian elimination with row exchanges (textbook).

use super::basis::SimplexBasis;
use super::equilibrate::Scaled;
use super::linear_programme::{MAX_COLUMNS, MAX_ROWS};

/// A pivot of the factorisation below this share of the largest entry means "singular". Assumed.
const SINGULAR: f64 = 1e-11;

/// The basis matrix as a product of triangles, rows exchanged so that pivots are large.
pub(super) struct Factors {
    size: usize,
    triangles: [[f64; MAX_ROWS]; MAX_ROWS],
    order: [usize; MAX_ROWS],
}

impl Factors {
    /// The factors of a basis, or `None` when its columns depend on each other.
    pub fn of(scaled: &Scaled, basis: &SimplexBasis) -> Option<Self> {
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
    pub fn solve_transposed(&self, right: &mut [f64; MAX_ROWS]) {
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

/// `target −= share · row`, entry by entry.
pub(super) fn subtract(target: &mut [f64; MAX_COLUMNS], row: &[f64], share: f64) {
    for (entry, pivot) in target[..row.len()].iter_mut().zip(row) {
        *entry -= share * pivot;
    }
}
