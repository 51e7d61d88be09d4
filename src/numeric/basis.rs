//! Which columns of a linear programme are basic, and at which bound the others rest.
//!
//! In: a scaled programme. Out: a basis to start from, and the memory of one solve for the next.

use super::equilibrate::Scaled;
use super::linear_programme::{MAX_COLUMNS, MAX_ROWS};

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
pub struct SimplexBasis {
    pub(super) rows: usize,
    pub(super) columns: usize,
    pub(super) basic: [u8; MAX_ROWS],
    pub(super) resting: [Resting; MAX_COLUMNS],
}

impl SimplexBasis {
    /// Whether the basis belongs to a programme of this shape.
    pub(super) fn fits(&self, scaled: &Scaled) -> bool {
        self.rows == scaled.rows && self.columns == scaled.columns
    }

    /// Whether the same columns are basic and the others rest at the same bounds: the same conditions bind.
    #[must_use]
    pub fn binds_like(&self, other: &Self) -> bool {
        let columns = self.columns.min(MAX_COLUMNS);
        (self.rows, self.columns) == (other.rows, other.columns)
            && self.resting[..columns] == other.resting[..columns]
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
