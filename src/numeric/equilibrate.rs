//! Brings the numbers of a linear programme to one size, so that one tolerance fits them all.
//!
//! In: a programme in the caller's units. Out: the same programme with every row and every column
//! multiplied by a power of two, which is exact, so that its largest entry lies between 1 and 2.

use super::linear_programme::{MAX_COLUMNS, MAX_ROWS, Programme};

/// How far, in scaled numbers and relative to its size, a value may lie outside its bounds before a
/// step is spent on it. Assumed, far above rounding.
const OUTSIDE: f64 = 1e-11;
/// How far a row may be missed, relative to the sizes of what is added up in it. Assumed, below 1e-9.
const MISSED: f64 = 1e-10;

/// A programme in scaled numbers and the way back.
///
/// ```text
/// â_ij = r_i a_ij s_j,   b̂_i = r_i b_i,   x̂_j = x_j / s_j,   ĉ_j = k c_j s_j
/// x_j = s_j x̂_j,   y_i = ŷ_i r_i / k,   d_j = d̂_j / (s_j k)
/// ```
pub(super) struct Scaled {
    pub rows: usize,
    pub columns: usize,
    pub coefficients: [[f64; MAX_COLUMNS]; MAX_ROWS],
    pub right_side: [f64; MAX_ROWS],
    pub cost: [f64; MAX_COLUMNS],
    pub lower: [f64; MAX_COLUMNS],
    pub upper: [f64; MAX_COLUMNS],
    /// `r` of the equations above.
    pub row_factor: [f64; MAX_ROWS],
    /// `s` of the equations above.
    pub column_factor: [f64; MAX_COLUMNS],
    /// `k` of the equations above.
    pub cost_factor: f64,
}

impl Scaled {
    /// The shape of a programme, not yet filled. Made in place and then filled, because returning a
    /// filled one by value copies 6 kB, a tenth of a solve.
    pub fn blank(programme: &Programme) -> Self {
        Self {
            rows: programme.rows,
            columns: programme.columns,
            coefficients: [[0.0; MAX_COLUMNS]; MAX_ROWS],
            right_side: [0.0; MAX_ROWS],
            cost: [0.0; MAX_COLUMNS],
            lower: [0.0; MAX_COLUMNS],
            upper: [0.0; MAX_COLUMNS],
            row_factor: [1.0; MAX_ROWS],
            column_factor: [1.0; MAX_COLUMNS],
            cost_factor: 1.0,
        }
    }

    /// Takes over the numbers of the programme it was made for.
    pub fn fill(&mut self, programme: &Programme) {
        let (rows, columns) = (self.rows, self.columns);
        let mut largest = [0.0; MAX_COLUMNS];
        for i in 0..rows {
            let source = &programme.coefficients[i][..columns];
            let factor = factor_for(largest_of(source));
            self.row_factor[i] = factor;
            self.right_side[i] = programme.right_side[i] * factor;
            let target = &mut self.coefficients[i][..columns];
            for ((to, &from), top) in target.iter_mut().zip(source).zip(&mut largest) {
                *to = from * factor;
                *top = larger(*top, to.abs());
            }
        }
        self.scale_columns(programme, &largest);
    }

    fn scale_columns(&mut self, programme: &Programme, largest: &[f64; MAX_COLUMNS]) {
        let columns = self.columns;
        for (j, &top) in largest[..columns].iter().enumerate() {
            let factor = factor_for(top);
            self.column_factor[j] = factor;
            self.lower[j] = programme.lower[j] / factor;
            self.upper[j] = programme.upper[j] / factor;
            self.cost[j] = programme.cost[j] * factor;
        }
        for row in &mut self.coefficients[..self.rows] {
            for (entry, factor) in row[..columns].iter_mut().zip(&self.column_factor) {
                *entry *= factor;
            }
        }
        self.cost_factor = factor_for(largest_of(&self.cost[..columns]));
        for cost in &mut self.cost[..columns] {
            *cost *= self.cost_factor;
        }
    }

    /// By how much a basic value lies above its bounds (positive) or below (negative); 0 within them
    /// and within what rounding explains.
    pub fn excess(&self, index: usize, value: f64) -> f64 {
        let excess = value - self.within_bounds(index, value);
        if excess.abs() <= OUTSIDE * larger(1.0, value.abs()) {
            0.0
        } else {
            excess
        }
    }

    /// The value moved to its nearer bound if it lies outside. Index `MAX_COLUMNS + i` is the
    /// artificial variable of row `i`, which may only be zero.
    pub fn within_bounds(&self, index: usize, value: f64) -> f64 {
        if index < MAX_COLUMNS {
            value.max(self.lower[index]).min(self.upper[index])
        } else {
            0.0
        }
    }

    /// Whether these values satisfy every row but for rounding.
    pub fn is_satisfied(&self, values: &[f64; MAX_COLUMNS]) -> bool {
        let mut rows = self.coefficients[..self.rows].iter().zip(&self.right_side);
        rows.all(|(row, &right)| {
            let (mut miss, mut size) = (right, 1.0 + right.abs());
            for (a, x) in row[..self.columns].iter().zip(values) {
                miss -= a * x;
                size += (a * x).abs();
            }
            miss.abs() <= MISSED * size
        })
    }

    /// The coefficients of one column, one a row.
    pub fn column(&self, j: usize) -> [f64; MAX_ROWS] {
        let mut column = [0.0; MAX_ROWS];
        for (entry, row) in column.iter_mut().zip(&self.coefficients[..self.rows]) {
            *entry = row[j];
        }
        column
    }
}

fn larger(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

fn largest_of(numbers: &[f64]) -> f64 {
    numbers.iter().fold(0.0, |top, x| larger(top, x.abs()))
}

/// The power of two that brings `size` between 1 and 2; 1 for zero.
pub fn factor_for(size: f64) -> f64 {
    const MANTISSA_BITS: u32 = 52;
    const EXPONENT_OF_ONE: u64 = 1023;
    if size == 0.0 {
        return 1.0;
    }
    let exponent = (size.to_bits() >> MANTISSA_BITS).clamp(1, 2 * EXPONENT_OF_ONE - 1);
    f64::from_bits((2 * EXPONENT_OF_ONE - exponent) << MANTISSA_BITS)
}
