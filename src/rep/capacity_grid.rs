//! Capacity at any position and speed: the pose's programme on a grid, with a smooth surface through it.
//!
//! In: poses, acting muscles, the load's direction. Out: [`CapacityGrid`], the generalised force that
//! full activation brings along the range, from fast lowering to fast lifting, and which joint limits.

use super::fibre_nodes::FibreNodes;
use super::range_table::hermite;
use crate::anatomy::Curves;
use crate::capacity::{Acting, FullyActive, MuscleAtPose, PlacedMuscle, Solver};
use crate::error::Result;
use crate::movement::{Measure, PlaneForce, Pose, Range};
use rayon::prelude::*;
use std::sync::Arc;

/// Speeds below and above zero, and how they spread: the last step is about e^spread over the count wider than the
/// first. Lengthening fibres are at their limit at a fiftieth of their greatest speed, so most of those nodes lie there;
/// in lifting, one muscle after the other stops following only at great speed.
const LOWERING_SPEEDS: usize = 12;
const LOWERING_SPREAD: f64 = 6.0;
const LIFTING_SPEEDS: usize = 26;
const LIFTING_SPREAD: f64 = 3.0;
/// Index of the speed 0 from which lifting speeds go up; the one before is 0 too.
const LIFTS_FROM: usize = LOWERING_SPEEDS + 1;
/// Lowering speed at the edge of the grid over the fastest lifting: lengthening fibres are long at
/// their limit there.
const SLOWEST_OVER_FASTEST: f64 = 0.5;
/// Share of the isometric force that is left at the fast edge of the grid.
const LEFT_AT_EDGE: f64 = 0.1;
/// No loaded limb is through its range in less than a fifteenth of a second.
const MOST_SPEED: f64 = 15.0;

/// The surface of capacity over range and speed.
#[derive(Debug, Clone)]
pub struct CapacityGrid {
    /// Places in the range, rising.
    ranges: Vec<f64>,
    /// Speeds along the range, 1/s, rising; 0 stands there twice, as the last of lowering and the first
    /// of lifting.
    speeds: Vec<f64>,
    /// Value, slope along the range, slope along the speed, mixed slope; speed by speed in each place.
    nodes: Vec<[f64; 4]>,
    /// Coordinate that limits at each node.
    limiting: Vec<u8>,
}

/// What is known before a grid is solved.
#[derive(Debug, Clone, Copy)]
pub(super) enum KnownFibres<'a> {
    /// Nothing.
    Nothing,
    /// Fibres of the same body in the same poses, used if the grid's own speeds are theirs.
    OfSameBody(&'a Arc<FibreNodes>),
    /// Such fibres, with whose speeds the grid is to stand.
    OnItsSpeeds(&'a Arc<FibreNodes>),
}

/// What one node holds: generalised force along the range and the limiting coordinate.
type Node = (f64, u8);

/// One place at all speeds.
#[derive(Debug)]
struct Column {
    nodes: Vec<Node>,
    /// Index and slope over the speed of the last nodes before speeds without an answer.
    ends: Vec<(usize, f64)>,
}

impl CapacityGrid {
    /// Solves the programme at every node, one place after the other in parallel.
    ///
    /// `places` are indices into the range's poses; `directions` the load's unit force at each pose. Fibres of the same
    /// body, solved before for muscles of other strength, are used where the speeds agree.
    /// Each place starts from a fresh solver, so the answer does not depend on the number of threads.
    ///
    /// **Fails** where a pose cannot be held still; at lifting speeds that no muscle follows, force falls straight on to
    /// what the relaxed limb does, at lowering speeds that no activation keeps in balance what the last one held.
    pub(super) fn build(
        acting: &Acting,
        range: &Range,
        places: &[usize],
        directions: &[PlaneForce],
        passive: &[f64],
        known: KnownFibres<'_>,
    ) -> Result<(Self, Arc<FibreNodes>)> {
        let speeds = match known {
            KnownFibres::OnItsSpeeds(fibres) => fibres.speeds().to_vec(),
            _ => speeds_up_to(fastest(acting, range, places, directions, passive)?),
        };
        let fibres = match known {
            KnownFibres::OnItsSpeeds(fibres) | KnownFibres::OfSameBody(fibres)
                if fibres.speeds() == speeds =>
            {
                Arc::clone(fibres)
            }
            _ => {
                let poses: Vec<&Pose> = places.iter().map(|&place| &range.poses[place]).collect();
                Arc::new(FibreNodes::of(acting, &poses, &speeds))
            }
        };
        let columns: Vec<Column> = places
            .par_iter()
            .enumerate()
            .map(|(column, &place)| {
                let pose = &range.poses[place];
                let at = (directions[place], passive[place]);
                GridColumn::new(acting, range, pose, at)?.over(&speeds, &fibres, column)
            })
            .collect::<Result<_>>()?;
        let ranges: Vec<f64> = places.iter().map(|&i| range.poses[i].load.range).collect();
        let limiting = columns.iter().flat_map(|column| &column.nodes);
        let grid = Self {
            nodes: with_slopes(&ranges, &speeds, &columns),
            limiting: limiting.map(|node| node.1).collect(),
            ranges,
            speeds,
        };
        Ok((grid, fibres))
    }

    /// The weighted mean of grids on the same places and speeds; joints that limit are those of the first.
    ///
    /// ```text
    /// f = Σ w_k·f_k          Σ w_k = 1
    /// ```
    /// **Shape.** Linear in every grid. **Source.** Capacity is a concave, piecewise linear function of the muscles'
    /// forces, since a linear programme's optimum is one of its limits. **Fails.** Never.
    pub(super) fn mean_of(parts: &[(f64, &Self)]) -> Option<Self> {
        let ((weight, first), others) = parts.split_first()?;
        let mut mean = (*first).clone();
        for node in &mut mean.nodes {
            *node = node.map(|value| weight * value);
        }
        for (weight, grid) in others {
            for (sum, node) in mean.nodes.iter_mut().zip(&grid.nodes) {
                for (sum, value) in sum.iter_mut().zip(node) {
                    *sum += weight * value;
                }
            }
        }
        Some(mean)
    }

    /// Generalised force of full activation at a place and speed, N·m per unit of range.
    ///
    /// ```text
    /// Q(s, ṡ) = Σ_ij f_ij·H_i(s)·H_j(ṡ)      f: value, ∂f/∂s, ∂f/∂ṡ, ∂²f/∂s∂ṡ at the cell's four nodes
    /// ```
    /// **Shape.** C¹; passes through every node; straight on beyond the edges of speed.
    /// **Source.** Bicubic Hermite interpolation (textbook). **Fails.** Never.
    #[must_use]
    pub fn at(&self, s: f64, speed: f64) -> f64 {
        let (edge, beyond) = self.inside(speed);
        let (i, hs) = cell(&self.ranges, s);
        let (j, hv) = cell(&self.speeds, edge);
        let mut sum = 0.0;
        let mut slope = 0.0;
        for (di, dj) in [(0, 0), (0, 1), (1, 0), (1, 1)] {
            let node = &self.nodes[(i + di) * self.speeds.len() + j + dj];
            let (s_value, s_slope) = (hs[di], hs[2 + di]);
            sum += hv[dj] * (node[0] * s_value + node[1] * s_slope)
                + hv[2 + dj] * (node[2] * s_value + node[3] * s_slope);
            if beyond != 0.0 && (j + dj == 0 || j + dj + 1 == self.speeds.len()) {
                slope += node[2] * s_value + node[3] * s_slope;
            }
        }
        sum + slope * beyond
    }

    /// The speed held inside the grid, and how far beyond the edge it was.
    fn inside(&self, speed: f64) -> (f64, f64) {
        let (first, last) = self.edges();
        let edge = speed.clamp(first, last);
        (edge, speed - edge)
    }

    /// Speeds along the range (1/s) between which the programme was solved: of lowering and of lifting.
    #[must_use]
    pub fn edges(&self) -> (f64, f64) {
        (self.speeds[0], self.speeds[self.speeds.len() - 1])
    }

    /// Index of the coordinate that limits nearest to a place and speed.
    #[must_use]
    pub fn limiting_at(&self, s: f64, speed: f64) -> usize {
        let nearest = |nodes: &[f64], x: f64| {
            let (cell, _) = cell(nodes, x);
            if x - nodes[cell] > nodes[cell + 1] - x {
                cell + 1
            } else {
                cell
            }
        };
        let (i, j) = (nearest(&self.ranges, s), nearest(&self.speeds, speed));
        usize::from(self.limiting[i * self.speeds.len() + j])
    }
}

/// The cell of `x` and Hermite's cubics in it, those of the slopes times the cell's width.
#[inline]
fn cell(nodes: &[f64], x: f64) -> (usize, [f64; 4]) {
    let last = nodes.len() - 2;
    let index = nodes.partition_point(|node| *node <= x);
    let index = index.saturating_sub(1).min(last);
    let width = nodes[index + 1] - nodes[index];
    let h = hermite((x - nodes[index]) / width);
    (index, [h[0], h[1], width * h[2], width * h[3]])
}

/// One place of the range at all speeds.
struct GridColumn<'a> {
    solver: Solver<'a>,
    pose: &'a Pose,
    muscles: Vec<PlacedMuscle<'a>>,
    curves: &'a Curves,
    direction: PlaneForce,
    measure: Measure,
    passive: f64,
}

impl<'a> GridColumn<'a> {
    /// A place with the load's direction there and the generalised force of the relaxed limb.
    fn new(
        acting: &'a Acting,
        range: &Range,
        pose: &'a Pose,
        (direction, passive): (PlaneForce, f64),
    ) -> Result<Self> {
        let solver = Solver::new(acting, range.measure, range.sides)?;
        Ok(Self {
            muscles: acting.placed(pose),
            curves: &acting.curves,
            solver,
            pose,
            direction,
            measure: range.measure,
            passive,
        })
    }

    /// What is held at a speed, with fibres that are solved here.
    fn at_speed(&mut self, speed: f64) -> Result<Node> {
        let curves = self.curves;
        let muscles = self.muscles.iter().map(|muscle| muscle.at(curves, speed));
        self.held(muscles.collect())
    }

    /// What is held at a speed of the grid, with fibres that are known.
    fn node(&mut self, fibres: &[FullyActive]) -> Result<Node> {
        let muscles = self.muscles.iter().zip(fibres);
        self.held(
            muscles
                .map(|(muscle, active)| muscle.doing(active))
                .collect(),
        )
    }

    fn held(&mut self, muscles: Vec<MuscleAtPose>) -> Result<Node> {
        let held = self
            .solver
            .solve_muscles(muscles, self.pose, self.direction)?;
        let lever = lever_of(self.pose, self.direction, self.measure);
        Ok((held.capacity * lever, held.limiting as u8))
    }

    /// From standing still to fast lifting, then back and to fast lowering: each from its neighbour.
    fn over(&mut self, speeds: &[f64], fibres: &FibreNodes, column: usize) -> Result<Column> {
        let mut nodes = vec![(self.passive, 0); speeds.len()];
        let mut ends: Vec<(usize, f64)> = Vec::new();
        let mut is_answered = true;
        for index in LIFTS_FROM..speeds.len() {
            match self.node(fibres.at(column, index)) {
                Ok(node) => {
                    nodes[index] = node;
                    is_answered = true;
                }
                Err(_) if index > LIFTS_FROM => {
                    if is_answered {
                        ends.push((
                            index - 1,
                            self.slope_before(index - 1, speeds, nodes[index - 1].0),
                        ));
                        is_answered = false;
                    }
                    nodes[index] = self.beyond(index, speeds, nodes[index - 1], &ends);
                }
                Err(error) => return Err(error),
            }
        }
        nodes[LIFTS_FROM - 1] = nodes[LIFTS_FROM];
        for index in (0..LIFTS_FROM - 1).rev() {
            // No faster lowering is kept in balance: what the last one held, which lengthening fibres are at their limit of.
            let slower = nodes[index + 1];
            nodes[index] = self.node(fibres.at(column, index)).unwrap_or(slower);
        }
        Ok(Column { nodes, ends })
    }

    /// Slope over the speed just before the last node with an answer; 0 where that is the one at rest.
    ///
    /// One muscle after the other stops following in the last cells before the programme has no answer, and bends it
    /// there: a parabola through the nodes on both sides, of which one is no answer, would miss the bend.
    fn slope_before(&mut self, last: usize, speeds: &[f64], held: f64) -> f64 {
        /// How far before, share of the cell: farther than rounding reaches, nearer than two muscles stop.
        const NEAR: f64 = 0.02;
        if last == LIFTS_FROM {
            return 0.0;
        }
        let step = NEAR * (speeds[last] - speeds[last - 1]);
        let before = self.at_speed(speeds[last] - step);
        before.map_or(0.0, |(before, _)| ((held - before) / step).min(0.0))
    }

    /// Straight on, with the slope of the last answer, where the programme has none: the hands cannot pull a bar down on a grip that
    /// only friction holds sideways. Never below what the relaxed limb does.
    fn beyond(
        &self,
        index: usize,
        speeds: &[f64],
        (last, joint): Node,
        ends: &[(usize, f64)],
    ) -> Node {
        let slope = ends.last().map_or(0.0, |end| end.1);
        let on = last + slope * (speeds[index] - speeds[index - 1]);
        (on.max(self.passive).min(last), joint)
    }
}

/// Generalised force along the range per unit of capacity.
///
/// ```text
/// Q = λ·(−w · dx/ds)  [N → N·m per range]       Q = τ·|dq/ds|  [N·m → N·m per range]
/// ```
/// `w` unit direction of the load, `x` its point, `q` the angle that a movement measured in torque turns.
/// **Source.** Principle of virtual work: the load that could be held does the work of what holds it.
pub(super) fn lever_of(pose: &Pose, direction: PlaneForce, measure: Measure) -> f64 {
    match measure {
        Measure::Torque => pose.coordinates[0].slope_rad.abs(),
        Measure::Force => -(direction.x_n * pose.load.dx_ds_m + direction.z_n * pose.load.dz_ds_m),
    }
}

/// Speed along the range (1/s) at which the muscles carry a tenth of what they hold in mid-range.
fn fastest(
    acting: &Acting,
    range: &Range,
    places: &[usize],
    directions: &[PlaneForce],
    passive: &[f64],
) -> Result<f64> {
    let middle = places[places.len() / 2];
    let at = (directions[middle], passive[middle]);
    let mut column = GridColumn::new(acting, range, &range.poses[middle], at)?;
    let (held, _) = column.at_speed(0.0)?;
    let mut is_over = |speed: f64| match column.at_speed(speed) {
        Ok((force, _)) => force - passive[middle] <= LEFT_AT_EDGE * (held - passive[middle]),
        Err(_) => true,
    };
    let mut high = 1.0;
    while high < MOST_SPEED && !is_over(high) {
        high *= 1.25;
    }
    Ok(high.min(MOST_SPEED))
}

/// Speeds on both sides of zero, close together there.
fn speeds_up_to(fastest: f64) -> Vec<f64> {
    let place = |k: usize, count: usize, edge: f64, spread: f64| {
        edge * (spread * k as f64 / count as f64).sinh() / spread.sinh()
    };
    let slowest = SLOWEST_OVER_FASTEST * fastest;
    let below = (0..=LOWERING_SPEEDS)
        .rev()
        .map(|k| 0.0 - place(k, LOWERING_SPEEDS, slowest, LOWERING_SPREAD));
    let above = (0..=LIFTING_SPEEDS).map(|k| place(k, LIFTING_SPEEDS, fastest, LIFTING_SPREAD));
    below.chain(above).collect()
}

/// Slopes over the speed, each side of zero for itself: fibres resist lengthening more steeply than
/// they yield in shortening.
fn slopes_over_speed(speeds: &[f64], row: &[f64]) -> Vec<f64> {
    let lift = LIFTS_FROM;
    let mut slopes = slopes_of(&speeds[..lift], &row[..lift]);
    slopes.extend(slopes_of(&speeds[lift..], &row[lift..]));
    slopes
}

/// Slopes of a row of values by the parabola through each point and its neighbours.
fn slopes_of(x: &[f64], y: &[f64]) -> Vec<f64> {
    let last = x.len() - 1;
    let rise = |k: usize| (y[k + 1] - y[k]) / (x[k + 1] - x[k]);
    let inner = |k: usize| {
        let (left, right) = (x[k] - x[k - 1], x[k + 1] - x[k]);
        (rise(k - 1) * right + rise(k) * left) / (left + right)
    };
    (0..=last)
        .map(|k| match k {
            0 => 2.0 * rise(0) - inner(1),
            k if k == last => 2.0 * rise(last - 1) - inner(last - 1),
            k => inner(k),
        })
        .collect()
}

fn with_slopes(ranges: &[f64], speeds: &[f64], columns: &[Column]) -> Vec<[f64; 4]> {
    let row = |column: &Column| column.nodes.iter().map(|node| node.0).collect();
    let values: Vec<Vec<f64>> = columns.iter().map(row).collect();
    let over_speed: Vec<Vec<f64>> = values
        .iter()
        .zip(columns)
        .map(|(row, column)| {
            let mut slopes = slopes_over_speed(speeds, row);
            for (index, slope) in &column.ends {
                slopes[*index] = *slope;
            }
            slopes
        })
        .collect();
    let over_range = |table: &[Vec<f64>]| -> Vec<Vec<f64>> {
        (0..speeds.len())
            .map(|j| {
                let row: Vec<f64> = table.iter().map(|column| column[j]).collect();
                slopes_of(ranges, &row)
            })
            .collect()
    };
    let (along, mixed) = (over_range(&values), over_range(&over_speed));
    let mut nodes = Vec::with_capacity(ranges.len() * speeds.len());
    for (i, row) in values.iter().enumerate() {
        for (j, value) in row.iter().enumerate() {
            nodes.push([*value, along[j][i], over_speed[i][j], mixed[j][i]]);
        }
    }
    nodes
}
