//! What a small linear programme asks: few rows, some dozens of bounded variables.
//!
//! In: coefficients, right side, costs and bounds. Out: a checked [`Programme`]. Everything lies in arrays of one size,
//! so that filling one allocates nothing.

use crate::error::{Error, ProgrammeFault, ProgrammePart, Result};

/// The most rows a programme can have.
pub const MAX_ROWS: usize = 10;
/// The most columns (variables) a programme can have.
pub const MAX_COLUMNS: usize = 48;

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
            let most = MAX_ROWS;
            return Err(Error::bad(ProgrammeFault::Rows { asked: rows, most }));
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
        check_column(ProgrammePart::RightSide, right_side, self.rows)?;
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
            let most = MAX_COLUMNS;
            return Err(Error::bad(ProgrammeFault::Columns { most }));
        }
        if lower.is_nan() || upper.is_nan() || !cost.is_finite() {
            return Err(Error::bad(ProgrammeFault::ColumnNotNumbers {
                column,
                cost,
                lower,
                upper,
            }));
        }
        if coefficients.len() != self.rows || !coefficients.iter().all(|a| a.is_finite()) {
            check_column(ProgrammePart::Column(column), coefficients, self.rows)?;
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
    pub const fn rows(&self) -> usize {
        self.rows
    }

    /// The coefficient of a column in a row.
    #[must_use]
    pub const fn coefficient(&self, row: usize, column: usize) -> f64 {
        self.coefficients[row][column]
    }

    /// The right side of a row.
    #[must_use]
    pub const fn right_side(&self, row: usize) -> f64 {
        self.right_side[row]
    }
}

fn check_column(part: ProgrammePart, numbers: &[f64], rows: usize) -> Result<()> {
    if numbers.len() != rows {
        let given = numbers.len();
        return Err(Error::bad(ProgrammeFault::Length { part, rows, given }));
    }
    match numbers.iter().position(|number| !number.is_finite()) {
        Some(row) => Err(Error::bad(ProgrammeFault::NotFinite {
            part,
            row,
            value: numbers[row],
        })),
        None => Ok(()),
    }
}
