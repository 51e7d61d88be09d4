//! Capacity at any position and speed: the pose's programme on a grid, with a smooth surface through it.
//!
//! In: the nodes of a grid. Out: [`CapacityGrid`], the generalised force that full activation brings along the range,
//! from fast lowering to fast lifting, and which joint limits. A node is solved when a motion first comes near it: one
//! lift passes few of them.

use super::grid_nodes::{GridNodes, LIFTS_FROM};
use super::range_table::hermite;
use std::sync::{Arc, OnceLock};

/// The surface of capacity over range and speed.
#[derive(Debug)]
pub struct CapacityGrid {
    /// Places in the range, rising.
    ranges: Vec<f64>,
    /// Speeds along the range, 1/s, rising; 0 stands there twice, as the last of lowering and the first
    /// of lifting.
    speeds: Vec<f64>,
    /// Value, slope along the range, slope along the speed, mixed slope; speed by speed in each place.
    nodes: Vec<OnceLock<[f64; 4]>>,
    from: GridSource,
}

/// Where nodes come from.
#[derive(Debug)]
enum GridSource {
    Solved(GridNodes),
    /// The weighted mean of grids on the same places and speeds.
    MeanOf(Vec<(f64, Arc<CapacityGrid>)>),
}

impl CapacityGrid {
    /// The surface through some nodes.
    pub(super) fn through(nodes: GridNodes) -> Self {
        Self::of(
            nodes.ranges(),
            nodes.speeds().to_vec(),
            GridSource::Solved(nodes),
        )
    }

    fn of(ranges: Vec<f64>, speeds: Vec<f64>, from: GridSource) -> Self {
        Self {
            nodes: vec![OnceLock::new(); ranges.len() * speeds.len()],
            ranges,
            speeds,
            from,
        }
    }

    /// The weighted mean of grids on the same places and speeds; joints that limit are those of the first.
    ///
    /// ```text
    /// f = Σ w_k·f_k          Σ w_k = 1
    /// ```
    /// **Shape.** Linear in every grid. **Source.** Capacity is a concave, piecewise linear function of the muscles'
    /// forces, since a linear programme's optimum is one of its limits. **Fails.** Never.
    pub(super) fn mean_of(parts: Vec<(f64, Arc<Self>)>) -> Option<Self> {
        let (_, first) = parts.first()?;
        let (ranges, speeds) = (first.ranges.clone(), first.speeds.clone());
        Some(Self::of(ranges, speeds, GridSource::MeanOf(parts)))
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
            let node = self.node(i + di, j + dj);
            let (s_value, s_slope) = (hs[di], hs[2 + di]);
            sum += hv[dj] * (node[0] * s_value + node[1] * s_slope)
                + hv[2 + dj] * (node[2] * s_value + node[3] * s_slope);
            if beyond != 0.0 && (j + dj == 0 || j + dj + 1 == self.speeds.len()) {
                slope += node[2] * s_value + node[3] * s_slope;
            }
        }
        sum + slope * beyond
    }

    /// Value and slopes at a place and speed of the grid.
    fn node(&self, i: usize, j: usize) -> [f64; 4] {
        *self.nodes[i * self.speeds.len() + j].get_or_init(|| match &self.from {
            GridSource::Solved(nodes) => self.with_slopes(nodes, i, j),
            GridSource::MeanOf(parts) => {
                let mut mean = [0.0; 4];
                for (weight, grid) in parts {
                    for (sum, value) in mean.iter_mut().zip(grid.node(i, j)) {
                        *sum += weight * value;
                    }
                }
                mean
            }
        })
    }

    /// A node with its slopes; over the speed each side of zero for itself: fibres resist lengthening more steeply than
    /// they yield in shortening.
    fn with_slopes(&self, nodes: &GridNodes, i: usize, j: usize) -> [f64; 4] {
        let value = |i: usize, j: usize| nodes.at(i, j).0;
        let side = if j < LIFTS_FROM {
            0..LIFTS_FROM
        } else {
            LIFTS_FROM..self.speeds.len()
        };
        let (first, speeds) = (side.start, &self.speeds[side]);
        let over_speed = |i: usize| {
            nodes
                .last_slope(i, j)
                .unwrap_or_else(|| slope_of(speeds, |k| value(i, first + k), j - first))
        };
        [
            value(i, j),
            slope_of(&self.ranges, |k| value(k, j), i),
            over_speed(i),
            slope_of(&self.ranges, over_speed, i),
        ]
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
        self.limiting(nearest(&self.ranges, s), nearest(&self.speeds, speed))
    }

    fn limiting(&self, i: usize, j: usize) -> usize {
        match &self.from {
            GridSource::Solved(nodes) => usize::from(nodes.at(i, j).1),
            GridSource::MeanOf(parts) => parts.first().map_or(0, |(_, grid)| grid.limiting(i, j)),
        }
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

/// Slope at a place of a row of values by the parabola through it and its neighbours.
fn slope_of(x: &[f64], y: impl Fn(usize) -> f64, place: usize) -> f64 {
    let last = x.len() - 1;
    let rise = |k: usize| (y(k + 1) - y(k)) / (x[k + 1] - x[k]);
    let inner = |k: usize| {
        let (left, right) = (x[k] - x[k - 1], x[k + 1] - x[k]);
        (rise(k - 1) * right + rise(k) * left) / (left + right)
    };
    match place {
        0 => 2.0 * rise(0) - inner(1),
        k if k == last => 2.0 * rise(last - 1) - inner(last - 1),
        k => inner(k),
    }
}
