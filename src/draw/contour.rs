//! Lines of equal value through a grid of values.
//!
//! In: a grid, some of whose values may be missing. Out: lines in grid coordinates, each chained
//! from cell to cell, by marching squares (Lorensen & Cline 1987, SIGGRAPH 21:163-169, in the plane).

use std::collections::{BTreeMap, BTreeSet};

/// A value for each node, row by row; missing where there is none.
pub type ContourGrid = [Vec<Option<f64>>];

/// An edge of a cell: the node it starts at (column, row) and whether it runs upwards.
type Edge = (usize, usize, bool);

/// The lines on which the grid takes the value `level`, as points (column, row) with fractions.
///
/// Closed lines end with their first point. Cells with a missing corner carry no line.
#[must_use]
pub fn contours(grid: &ContourGrid, level: f64) -> Vec<Vec<[f64; 2]>> {
    let mut links: BTreeMap<Edge, Vec<Edge>> = BTreeMap::new();
    for row in 0..grid.len().saturating_sub(1) {
        for column in 0..grid[row].len().saturating_sub(1) {
            for (one, other) in cell_segments(grid, column, row, level) {
                links.entry(one).or_default().push(other);
                links.entry(other).or_default().push(one);
            }
        }
    }
    // Open lines first, from their ends; what is left over is closed.
    let ends = links.iter().filter(|(_, next)| next.len() == 1);
    let starts: Vec<Edge> = ends
        .map(|(edge, _)| *edge)
        .chain(links.keys().copied())
        .collect();
    let mut seen: BTreeSet<Edge> = BTreeSet::new();
    let mut lines = Vec::new();
    for start in starts {
        if seen.insert(start) {
            let line = walk(&links, start, &mut seen);
            lines.push(
                line.iter()
                    .map(|edge| crossing(grid, *edge, level))
                    .collect(),
            );
        }
    }
    lines
}

fn walk(links: &BTreeMap<Edge, Vec<Edge>>, start: Edge, seen: &mut BTreeSet<Edge>) -> Vec<Edge> {
    let mut line = vec![start];
    let mut now = start;
    while let Some(next) = links[&now].iter().find(|edge| !seen.contains(*edge)) {
        seen.insert(*next);
        line.push(*next);
        now = *next;
    }
    if line.len() > 2 && links[&now].contains(&start) {
        line.push(start);
    }
    line
}

/// The grid with `factor` steps between neighbours, led smoothly through its values in both
/// directions (Catmull & Rom 1974); missing where a value that it needs is missing.
#[must_use]
pub fn refined(grid: &ContourGrid, factor: usize) -> Vec<Vec<Option<f64>>> {
    let wide: Vec<Vec<Option<f64>>> = grid.iter().map(|row| refined_line(row, factor)).collect();
    let columns = wide.first().map_or(0, Vec::len);
    let tall: Vec<Vec<Option<f64>>> = (0..columns)
        .map(|column| {
            let line: Vec<Option<f64>> = wide.iter().map(|row| row[column]).collect();
            refined_line(&line, factor)
        })
        .collect();
    let rows = tall.first().map_or(0, Vec::len);
    (0..rows)
        .map(|row| tall.iter().map(|line| line[row]).collect())
        .collect()
}

fn refined_line(line: &[Option<f64>], factor: usize) -> Vec<Option<f64>> {
    let value = |index: Option<usize>| index.and_then(|index| line.get(index).copied().flatten());
    let mut fine = Vec::with_capacity(line.len() * factor);
    for index in 0..line.len().saturating_sub(1) {
        fine.push(line[index]);
        for step in 1..factor {
            let t = step as f64 / factor as f64;
            let between = line[index].zip(line[index + 1]).map(|(q, r)| {
                // Without a further neighbour the line runs on straight.
                let p = value(index.checked_sub(1)).unwrap_or(2.0 * q - r);
                let s = value(Some(index + 2)).unwrap_or(2.0 * r - q);
                q + 0.5
                    * t
                    * (r - p + t * (2.0 * p - 5.0 * q + 4.0 * r - s + t * (3.0 * (q - r) + s - p)))
            });
            fine.push(between);
        }
    }
    fine.extend(line.last());
    fine
}

/// The pairs of edges that the line connects inside one cell.
fn cell_segments(grid: &ContourGrid, column: usize, row: usize, level: f64) -> Vec<(Edge, Edge)> {
    let node = |column: usize, row: usize| grid[row].get(column).copied().flatten();
    let corners = [
        node(column, row),
        node(column + 1, row),
        node(column + 1, row + 1),
        node(column, row + 1),
    ];
    let [Some(a), Some(b), Some(c), Some(d)] = corners else {
        return Vec::new();
    };
    let low: Edge = (column, row, false);
    let right: Edge = (column + 1, row, true);
    let high: Edge = (column, row + 1, false);
    let left: Edge = (column, row, true);
    let above = [a, b, c, d].map(|value| value >= level);
    let middle_above = (a + b + c + d) / 4.0 >= level;
    match above {
        [true, true, true, true] | [false, false, false, false] => Vec::new(),
        [true, false, false, false] | [false, true, true, true] => vec![(left, low)],
        [false, true, false, false] | [true, false, true, true] => vec![(low, right)],
        [false, false, true, false] | [true, true, false, true] => vec![(right, high)],
        [false, false, false, true] | [true, true, true, false] => vec![(high, left)],
        [true, true, false, false] | [false, false, true, true] => vec![(left, right)],
        [true, false, false, true] | [false, true, true, false] => vec![(low, high)],
        // Saddles: the middle decides which corners belong together.
        [true, false, true, false] if middle_above => vec![(low, right), (high, left)],
        [true, false, true, false] => vec![(left, low), (right, high)],
        [false, true, false, true] if middle_above => vec![(left, low), (right, high)],
        [false, true, false, true] => vec![(low, right), (high, left)],
    }
}

/// Where the level lies on an edge.
fn crossing(grid: &ContourGrid, edge: Edge, level: f64) -> [f64; 2] {
    let (column, row, upwards) = edge;
    let (next_column, next_row) = if upwards {
        (column, row + 1)
    } else {
        (column + 1, row)
    };
    let value = |column: usize, row: usize| grid[row][column].unwrap_or(level);
    let (from, to) = (value(column, row), value(next_column, next_row));
    let share = if from == to {
        0.5
    } else {
        ((level - from) / (to - from)).clamp(0.0, 1.0)
    };
    if upwards {
        [column as f64, row as f64 + share]
    } else {
        [column as f64 + share, row as f64]
    }
}
