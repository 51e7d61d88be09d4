//! The smooth field of a map: its values on a finer grid, and the lines of equal value through it.
//!
//! In: a [`HeatMap`]. Out: values anywhere on it and [`ContourLine`]s in pixels.

use super::axis::Plot;
use super::heat_labels::ContourLine;
use super::heat_map::HeatMap;
use crate::draw::Colour;
use crate::draw::contour::{contours, refined};

/// Colour steps of a field; neighbours differ by less than the eye notices on a slide.
const STEPS: f64 = 100.0;

/// The values on a finer grid, led smoothly through the given ones.
pub struct Fine {
    xs: Vec<f64>,
    ys: Vec<f64>,
    values: Vec<Vec<Option<f64>>>,
}

impl Fine {
    /// The finer grid of a map.
    pub fn of(map: &HeatMap) -> Self {
        // Enough nodes for smooth lines, no more than drawing needs.
        let factor = (80 / map.xs.len().min(map.ys.len())).clamp(1, 8);
        let between = |places: &[f64]| -> Vec<f64> {
            let places: Vec<Option<f64>> = places.iter().copied().map(Some).collect();
            refined(&[places], factor)
                .concat()
                .into_iter()
                .flatten()
                .collect()
        };
        Self {
            xs: between(&map.xs),
            ys: between(&map.ys),
            values: refined(&map.values, factor),
        }
    }

    /// The value at a point of the two axes, linear between the four values around.
    pub fn value_at(&self, at: [f64; 2]) -> Option<f64> {
        let (column, across) = position(&self.xs, at[0]);
        let (row, up) = position(&self.ys, at[1]);
        let value = |row: usize, column: usize| self.values[row][column];
        let low = value(row, column)? * (1.0 - across) + value(row, column + 1)? * across;
        let high = value(row + 1, column)? * (1.0 - across) + value(row + 1, column + 1)? * across;
        Some(low * (1.0 - up) + high * up)
    }

    /// Lines of equal value in pixels with their figures.
    pub fn contour_lines(
        &self,
        plot: &Plot,
        ground: &dyn Fn(f64) -> Colour,
        levels: &[(f64, String)],
    ) -> Vec<ContourLine> {
        let place = |places: &[f64], at: f64| {
            let index = (at.floor() as usize).min(places.len() - 2);
            places[index] + (at - index as f64) * (places[index + 1] - places[index])
        };
        let mut lines = Vec::new();
        for (level, label) in levels {
            for line in contours(&self.values, *level) {
                let to_px =
                    |at: &[f64; 2]| plot.px([place(&self.xs, at[0]), place(&self.ys, at[1])]);
                lines.push(ContourLine {
                    label: label.clone(),
                    ground: ground(*level),
                    points: line.iter().map(to_px).collect(),
                });
            }
        }
        lines
    }
}

/// The value moved to the middle of its colour step.
pub fn stepped(value: f64, range: [f64; 2]) -> f64 {
    let step = (range[1] - range[0]) / STEPS;
    range[0] + ((value - range[0]) / step).round() * step
}

/// The interval that holds a value, and how far into it.
fn position(places: &[f64], value: f64) -> (usize, f64) {
    let index = places
        .partition_point(|place| *place <= value)
        .clamp(1, places.len() - 1)
        - 1;
    let share = (value - places[index]) / (places[index + 1] - places[index]);
    (index, share.clamp(0.0, 1.0))
}
