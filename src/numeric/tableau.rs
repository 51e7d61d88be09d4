//! The simplex steps of a linear programme, on a dense tableau.
//!
//! In: a scaled programme and a basis to start from. Out: a better basis, the best one, or the news
//! that there is none. The tableau gathers rounding errors, so its last basis is verified elsewhere.

use super::basis::{Basis, Resting, Vertex};
use super::equilibrate::Scaled;
use super::linear_programme::{MAX_COLUMNS, MAX_ROWS};

/// A reduced cost must promise more than this to be worth a step. Assumed, in scaled numbers.
const WORTHWHILE: f64 = 1e-11;
/// Entries below this are no pivots. Assumed, in scaled numbers.
const SMALLEST_PIVOT: f64 = 1e-9;
/// Artificial variables may sum up to this share of the right side in a feasible programme. Assumed.
const INFEASIBLE: f64 = 1e-9;
/// Ratios this close count as equal, and the larger pivot wins. Assumed.
const TIE: f64 = 1e-12;
/// Steps of no length before the first-index rule takes over.
const PATIENCE: usize = 20;

/// How a run of steps ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum End {
    Optimal,
    /// Phase 2: the objective has no limit. Phase 1: there is no feasible point.
    Unbounded,
    Stuck,
}

/// The tableau `B⁻¹A`, its basic values and its reduced costs.
pub(super) struct Tableau<'a> {
    scaled: &'a Scaled,
    basis: Basis,
    entries: [[f64; MAX_COLUMNS]; MAX_ROWS],
    reduced: [f64; MAX_COLUMNS],
    values: [f64; MAX_ROWS],
    basic_lower: [f64; MAX_ROWS],
    basic_upper: [f64; MAX_ROWS],
    iterations: usize,
}

/// Which basic variable stops the entering one, and how far that is.
struct Stop {
    /// `None`: the entering variable reaches its own other bound first.
    row: Option<usize>,
    length: f64,
}

impl<'a> Tableau<'a> {
    /// A tableau of this basis, to be filled by [`Self::fill_cold`] or [`Self::refresh`].
    pub fn blank(scaled: &'a Scaled, basis: Basis) -> Self {
        Self {
            scaled,
            basis,
            entries: [[0.0; MAX_COLUMNS]; MAX_ROWS],
            reduced: [0.0; MAX_COLUMNS],
            values: [0.0; MAX_ROWS],
            basic_lower: [0.0; MAX_ROWS],
            basic_upper: [0.0; MAX_ROWS],
            iterations: 0,
        }
    }

    /// Fills a blank tableau: all artificial variables basic and not negative.
    pub fn fill_cold(&mut self) {
        let columns = self.scaled.columns;
        let mut resting = [0.0; MAX_COLUMNS];
        for (j, value) in resting[..columns].iter_mut().enumerate() {
            *value = self.basis.resting_value(self.scaled, j);
        }
        for i in 0..self.scaled.rows {
            let row = &self.scaled.coefficients[i][..columns];
            let filled: f64 = row.iter().zip(&resting).map(|(a, x)| a * x).sum();
            let rest = self.scaled.right_side[i] - filled;
            let sign = if rest < 0.0 { -1.0 } else { 1.0 };
            self.values[i] = sign * rest;
            self.basic_upper[i] = f64::INFINITY;
            let target = self.entries[i][..columns].iter_mut();
            for ((entry, reduced), a) in target.zip(&mut self.reduced).zip(row) {
                *entry = sign * a;
                *reduced += *entry;
            }
        }
    }

    /// Computes every entry anew from the programme's own numbers.
    pub fn refresh(&mut self, vertex: &Vertex) {
        for j in 0..self.scaled.columns {
            if self.basis.resting[j] == Resting::Basic {
                continue;
            }
            let mut column = self.scaled.column(j);
            vertex.factors.solve(&mut column);
            for (row, entry) in self.entries[..self.scaled.rows].iter_mut().zip(column) {
                row[j] = entry;
            }
        }
        self.values = vertex.basic_values;
        self.reduced = vertex.reduced_costs;
        for i in 0..self.scaled.rows {
            let index = usize::from(self.basis.basic[i]);
            if index < MAX_COLUMNS {
                for (k, row) in self.entries[..self.scaled.rows].iter_mut().enumerate() {
                    row[index] = if k == i { 1.0 } else { 0.0 };
                }
            }
            self.set_bounds(i);
        }
    }

    pub fn basis(&self) -> &Basis {
        &self.basis
    }

    pub fn iterations(&self) -> usize {
        self.iterations
    }

    /// Phase 1: drives the artificial variables to zero and, where it can, out of the basis.
    pub fn find_feasible(&mut self) -> End {
        let size = self.values[..self.scaled.rows]
            .iter()
            .zip(&self.scaled.right_side)
            .fold(0.0_f64, |top, (rest, right)| {
                top.max(rest.abs()).max(right.abs())
            });
        if self.improve() == End::Stuck {
            return End::Stuck;
        }
        if self.artificial_sum() > INFEASIBLE * size {
            return End::Unbounded;
        }
        self.drive_out_artificials();
        self.reduced = self.scaled.cost;
        for i in 0..self.scaled.rows {
            let index = usize::from(self.basis.basic[i]);
            if index < MAX_COLUMNS && self.scaled.cost[index] != 0.0 {
                let row = &self.entries[i][..self.scaled.columns];
                subtract(&mut self.reduced, row, self.scaled.cost[index]);
            }
            self.set_bounds(i);
        }
        End::Optimal
    }

    /// Phase 2: steps until no reduced cost promises more.
    pub fn find_best(&mut self) -> End {
        self.improve()
    }

    fn improve(&mut self) -> End {
        let limit = self.iterations + 100 + 10 * (self.scaled.rows + self.scaled.columns);
        let mut idle = 0;
        while self.iterations < limit {
            let by_index = idle > PATIENCE;
            let Some(entering) = self.entering(by_index) else {
                return End::Optimal;
            };
            let upward = match self.basis.resting[entering] {
                Resting::Lower => true,
                Resting::Upper => false,
                _ => self.reduced[entering] > 0.0,
            };
            let stop = self.stop(entering, upward, by_index);
            if stop.length == f64::INFINITY {
                return End::Unbounded;
            }
            idle = if stop.length > TIE { 0 } else { idle + 1 };
            self.step(entering, upward, &stop);
            self.iterations += 1;
        }
        End::Stuck
    }

    /// The column with the largest promise, or with the first index that has one.
    fn entering(&self, by_index: bool) -> Option<usize> {
        let mut best = None;
        let mut best_promise = WORTHWHILE;
        for j in 0..self.scaled.columns {
            let promise = match self.basis.resting[j] {
                Resting::Lower => self.reduced[j],
                Resting::Upper => -self.reduced[j],
                Resting::Free => self.reduced[j].abs(),
                Resting::Fixed | Resting::Basic => continue,
            };
            if promise > best_promise {
                best = Some(j);
                if by_index {
                    break;
                }
                best_promise = promise;
            }
        }
        best
    }

    fn stop(&self, entering: usize, upward: bool, by_index: bool) -> Stop {
        let mut stop = Stop {
            row: None,
            length: self.scaled.upper[entering] - self.scaled.lower[entering],
        };
        let mut best_pivot = 0.0;
        for i in 0..self.scaled.rows {
            let pivot = self.entries[i][entering];
            let fall = if upward { pivot } else { -pivot };
            let room = if fall > SMALLEST_PIVOT {
                self.values[i] - self.basic_lower[i]
            } else if fall < -SMALLEST_PIVOT {
                self.basic_upper[i] - self.values[i]
            } else {
                continue;
            };
            if room == f64::INFINITY {
                continue;
            }
            let length = room.max(0.0) / fall.abs();
            let tie = TIE * (1.0 + length);
            let is_better = if stop.row.is_none() || (length - stop.length).abs() > tie {
                length < stop.length
            } else if by_index {
                stop.row
                    .is_some_and(|row| self.basis.basic[i] < self.basis.basic[row])
            } else {
                fall.abs() > best_pivot
            };
            if is_better {
                best_pivot = fall.abs();
                stop = Stop {
                    row: Some(i),
                    length,
                };
            }
        }
        stop
    }

    fn step(&mut self, entering: usize, upward: bool, stop: &Stop) {
        let from = self.basis.resting_value(self.scaled, entering);
        let change = if upward { stop.length } else { -stop.length };
        for (value, row) in self.values[..self.scaled.rows]
            .iter_mut()
            .zip(&self.entries)
        {
            *value -= change * row[entering];
        }
        match stop.row {
            Some(row) => {
                let falls = (self.entries[row][entering] > 0.0) == upward;
                self.leave(
                    row,
                    if falls {
                        Resting::Lower
                    } else {
                        Resting::Upper
                    },
                );
                self.enter(row, entering, from + change);
            }
            None => {
                self.basis.resting[entering] = if upward {
                    Resting::Upper
                } else {
                    Resting::Lower
                };
            }
        }
    }

    fn leave(&mut self, row: usize, wish: Resting) {
        let leaving = usize::from(self.basis.basic[row]);
        if leaving < MAX_COLUMNS {
            let (lower, upper) = (self.scaled.lower[leaving], self.scaled.upper[leaving]);
            self.basis.resting[leaving] = Resting::at(lower, upper, wish);
        }
    }

    fn enter(&mut self, row: usize, entering: usize, value: f64) {
        let columns = self.scaled.columns;
        let inverse = 1.0 / self.entries[row][entering];
        for entry in &mut self.entries[row][..columns] {
            *entry *= inverse;
        }
        self.entries[row][entering] = 1.0;
        let pivot_row = self.entries[row];
        for (i, line) in self.entries[..self.scaled.rows].iter_mut().enumerate() {
            let share = line[entering];
            if i != row && share != 0.0 {
                subtract(line, &pivot_row[..columns], share);
                line[entering] = 0.0;
            }
        }
        let share = self.reduced[entering];
        subtract(&mut self.reduced, &pivot_row[..columns], share);
        self.reduced[entering] = 0.0;
        self.basis.basic[row] = entering as u8;
        self.basis.resting[entering] = Resting::Basic;
        self.values[row] = value;
        self.set_bounds(row);
    }

    /// Bounds of the variable that is basic in this row; an artificial one must stay at zero.
    fn set_bounds(&mut self, row: usize) {
        let index = usize::from(self.basis.basic[row]);
        let (lower, upper) = if index < MAX_COLUMNS {
            (self.scaled.lower[index], self.scaled.upper[index])
        } else {
            (0.0, 0.0)
        };
        self.basic_lower[row] = lower;
        self.basic_upper[row] = upper;
    }

    fn artificial_sum(&self) -> f64 {
        let rows = 0..self.scaled.rows;
        rows.filter(|&i| usize::from(self.basis.basic[i]) >= MAX_COLUMNS)
            .map(|i| self.values[i].abs())
            .sum()
    }

    /// Exchanges artificial variables at zero for columns, without moving the point.
    fn drive_out_artificials(&mut self) {
        for row in 0..self.scaled.rows {
            if usize::from(self.basis.basic[row]) < MAX_COLUMNS {
                continue;
            }
            let mut best = None;
            let mut best_pivot = SMALLEST_PIVOT;
            for j in 0..self.scaled.columns {
                let pivot = self.entries[row][j].abs();
                if self.basis.resting[j] != Resting::Basic && pivot > best_pivot {
                    best = Some(j);
                    best_pivot = pivot;
                }
            }
            if let Some(entering) = best {
                let value = self.basis.resting_value(self.scaled, entering);
                self.enter(row, entering, value);
            }
        }
    }
}

/// `target −= share · row`, entry by entry.
fn subtract(target: &mut [f64; MAX_COLUMNS], row: &[f64], share: f64) {
    for (entry, pivot) in target[..row.len()].iter_mut().zip(row) {
        *entry -= share * pivot;
    }
}
