//! The simplex steps of a linear programme, on a dense tableau.
//!
//! In: a scaled programme and a basis to start from. Out: a better basis, the best one, or the news
//! that there is none. The tableau gathers rounding errors, so its last basis is verified elsewhere.

use super::basis::{Resting, SimplexBasis};
use super::equilibrate::Scaled;
use super::factors::subtract;
use super::linear_programme::{MAX_COLUMNS, MAX_ROWS};
use super::vertex::Vertex;

/// A slope must promise more than this to be worth a step, once steps have been taken since the
/// tableau was fresh. Assumed, in scaled numbers.
const WORTHWHILE: f64 = 1e-12;
/// Entries below this are no pivots. Assumed, in scaled numbers.
const SMALLEST_PIVOT: f64 = 1e-9;
/// An artificial variable at zero is exchanged only for an entry above this: below, its row is taken
/// for redundant. Assumed, in scaled numbers.
const SMALLEST_EXCHANGE: f64 = 1e-7;
/// Ratios this close count as equal, and the larger pivot wins. Assumed.
const TIE: f64 = 1e-12;
/// Steps of no length before the first-index rule takes over.
const PATIENCE: usize = 20;

/// How a run of steps ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Halt {
    /// What was sought is found: a feasible vertex, or the best one.
    Found,
    /// There is none: no feasible point, or no limit to the objective.
    Nowhere,
    /// Too many steps, or none that rounding leaves any trust in.
    Stuck,
}

/// What the steps are for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Aim {
    /// Phase 1: bring the basic values within their bounds.
    Feasible,
    /// Phase 2: raise the objective.
    Best,
}

/// The tableau `B⁻¹A`, its basic values and the slopes of what is sought.
pub(super) struct Tableau<'a> {
    scaled: &'a Scaled,
    basis: SimplexBasis,
    entries: [[f64; MAX_COLUMNS]; MAX_ROWS],
    /// Gain per unit of each column: reduced costs in phase 2.
    slopes: [f64; MAX_COLUMNS],
    values: [f64; MAX_ROWS],
    basic_lower: [f64; MAX_ROWS],
    basic_upper: [f64; MAX_ROWS],
    /// What a slope must promise: nothing in a fresh tableau, where rounding is already told apart.
    worthwhile: f64,
    iterations: usize,
}

/// Which basic variable stops the entering one, and how far that is.
struct Stop {
    /// `None`: the entering variable reaches its own other bound first.
    row: Option<usize>,
    length: f64,
    /// Where the stopping variable comes to rest.
    bound: Resting,
}

impl<'a> Tableau<'a> {
    /// A tableau of this basis, to be filled by [`Self::fill_cold`] or [`Self::refresh`].
    pub fn blank(scaled: &'a Scaled, basis: SimplexBasis) -> Self {
        Self {
            scaled,
            basis,
            entries: [[0.0; MAX_COLUMNS]; MAX_ROWS],
            slopes: scaled.cost,
            values: [0.0; MAX_ROWS],
            basic_lower: [0.0; MAX_ROWS],
            basic_upper: [0.0; MAX_ROWS],
            worthwhile: WORTHWHILE,
            iterations: 0,
        }
    }

    /// Fills a blank tableau whose basis is all artificial variables.
    pub fn fill_cold(&mut self) {
        let columns = self.scaled.columns;
        let mut resting = [0.0; MAX_COLUMNS];
        for (j, value) in resting[..columns].iter_mut().enumerate() {
            *value = self.basis.resting_value(self.scaled, j);
        }
        for (i, row) in self.scaled.coefficients[..self.scaled.rows]
            .iter()
            .enumerate()
        {
            let filled: f64 = row.iter().zip(&resting).map(|(a, x)| a * x).sum();
            self.values[i] = self.scaled.right_side[i] - filled;
            self.entries[i] = *row;
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
        self.slopes = vertex.reduced_costs;
        self.worthwhile = 0.0;
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

    pub fn basis(&self) -> &SimplexBasis {
        &self.basis
    }

    pub fn iterations(&self) -> usize {
        self.iterations
    }

    /// Phase 1: brings all basic values within their bounds, and artificial variables out of the basis.
    pub fn find_feasible(&mut self) -> Halt {
        if (0..self.scaled.rows).all(|i| self.excess(i) == 0.0) {
            return Halt::Found;
        }
        let end = self.improve(Aim::Feasible);
        if end == Halt::Found {
            self.drive_out_artificials();
        }
        self.find_reduced_costs();
        end
    }

    /// Phase 2: steps until no reduced cost promises more.
    pub fn find_best(&mut self) -> Halt {
        self.improve(Aim::Best)
    }

    fn improve(&mut self, aim: Aim) -> Halt {
        let limit = self.iterations + 100 + 10 * (self.scaled.rows + self.scaled.columns);
        let mut idle = 0;
        while self.iterations < limit {
            if aim == Aim::Feasible && !self.find_repair_slopes() {
                return Halt::Found;
            }
            let by_index = idle > PATIENCE;
            let Some(entering) = self.entering(by_index) else {
                return match aim {
                    Aim::Feasible => Halt::Nowhere,
                    Aim::Best => Halt::Found,
                };
            };
            let upward = match self.basis.resting[entering] {
                Resting::Lower => true,
                Resting::Upper => false,
                _ => self.slopes[entering] > 0.0,
            };
            let stop = self.stop(entering, upward, by_index, aim);
            if stop.length == f64::INFINITY {
                return match aim {
                    Aim::Feasible => Halt::Stuck,
                    Aim::Best => Halt::Nowhere,
                };
            }
            idle = if stop.length > TIE { 0 } else { idle + 1 };
            self.step(entering, upward, &stop);
            self.iterations += 1;
            self.worthwhile = WORTHWHILE;
        }
        Halt::Stuck
    }

    /// Slopes of the sum of all distances outside the bounds, with the sign of a gain; `false` when
    /// nothing lies outside.
    fn find_repair_slopes(&mut self) -> bool {
        let columns = self.scaled.columns;
        let mut slopes = [0.0; MAX_COLUMNS];
        let mut is_outside = false;
        for i in 0..self.scaled.rows {
            let excess = self.excess(i);
            if excess != 0.0 {
                is_outside = true;
                subtract(&mut slopes, &self.entries[i][..columns], -excess.signum());
            }
        }
        if is_outside {
            self.slopes = slopes;
            self.worthwhile = WORTHWHILE;
        }
        is_outside
    }

    fn find_reduced_costs(&mut self) {
        self.slopes = self.scaled.cost;
        for i in 0..self.scaled.rows {
            let index = usize::from(self.basis.basic[i]);
            if index < MAX_COLUMNS && self.scaled.cost[index] != 0.0 {
                let row = &self.entries[i][..self.scaled.columns];
                subtract(&mut self.slopes, row, self.scaled.cost[index]);
            }
        }
    }

    fn excess(&self, row: usize) -> f64 {
        let index = usize::from(self.basis.basic[row]);
        self.scaled.excess(index, self.values[row])
    }

    /// The column with the largest promise, or with the first index that has one.
    fn entering(&self, by_index: bool) -> Option<usize> {
        let mut best = None;
        let mut best_promise = self.worthwhile;
        for j in 0..self.scaled.columns {
            let promise = match self.basis.resting[j] {
                Resting::Lower => self.slopes[j],
                Resting::Upper => -self.slopes[j],
                Resting::Free => self.slopes[j].abs(),
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

    fn stop(&self, entering: usize, upward: bool, by_index: bool, aim: Aim) -> Stop {
        let mut stop = Stop {
            row: None,
            length: self.scaled.upper[entering] - self.scaled.lower[entering],
            bound: Resting::Basic,
        };
        let mut best_pivot = 0.0;
        for i in 0..self.scaled.rows {
            let pivot = self.entries[i][entering];
            if pivot.abs() <= SMALLEST_PIVOT {
                continue;
            }
            let Some((bound, room)) = self.room(i, (pivot > 0.0) == upward, aim) else {
                continue;
            };
            let length = room.max(0.0) / pivot.abs();
            let tie = TIE * (1.0 + length);
            let is_better = if stop.row.is_none() || (length - stop.length).abs() > tie {
                length < stop.length
            } else if by_index {
                stop.row
                    .is_some_and(|row| self.basis.basic[i] < self.basis.basic[row])
            } else {
                pivot.abs() > best_pivot
            };
            if is_better {
                best_pivot = pivot.abs();
                stop = Stop {
                    row: Some(i),
                    length,
                    bound,
                };
            }
        }
        stop
    }

    /// How far a basic variable can move and where it stops; `None` when nothing stops it. One that
    /// lies outside its bounds stops where it comes within them.
    fn room(&self, row: usize, falls: bool, aim: Aim) -> Option<(Resting, f64)> {
        let value = self.values[row];
        let excess = match aim {
            Aim::Feasible => self.excess(row),
            Aim::Best => 0.0,
        };
        let (bound, room) = if falls {
            if excess > 0.0 {
                (Resting::Upper, value - self.basic_upper[row])
            } else if excess < 0.0 {
                return None;
            } else {
                (Resting::Lower, value - self.basic_lower[row])
            }
        } else if excess < 0.0 {
            (Resting::Lower, self.basic_lower[row] - value)
        } else if excess > 0.0 {
            return None;
        } else {
            (Resting::Upper, self.basic_upper[row] - value)
        };
        (room < f64::INFINITY).then_some((bound, room))
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
                self.leave(row, stop.bound);
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
        let share = self.slopes[entering];
        subtract(&mut self.slopes, &pivot_row[..columns], share);
        self.slopes[entering] = 0.0;
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

    /// Exchanges artificial variables at zero for columns, without moving the point.
    fn drive_out_artificials(&mut self) {
        for row in 0..self.scaled.rows {
            if usize::from(self.basis.basic[row]) < MAX_COLUMNS {
                continue;
            }
            let mut best = None;
            let mut best_pivot = SMALLEST_EXCHANGE;
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
