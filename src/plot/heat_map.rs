//! A map of one quantity over two others: as cells with figures, or as a field with contour lines.
//!
//! In: two axes, a value for each pair. Out: a scene with a colour bar at the right.

use super::axis::{self, Axis, Plot};
use super::frame::{Frame, Heading, Look};
use super::heat_field::{Fine, position, stepped};
use super::heat_labels;
use super::line_chart::Marker;
use super::panel;
use super::words::Words;
use crate::draw::scale::{Scale, number};
use crate::draw::{Anchor, Colour, Colours, Face, Rect, Scene, Stroke, lettering, ramp};
use crate::error::{Error, Result};

/// How the map is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum MapStyle {
    /// A smooth field with labelled contour lines.
    #[default]
    Field,
    /// One cell a value, with its figure where there is room.
    Cells,
}

/// A map over two axes.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct HeatMap {
    /// The words around it.
    pub heading: Heading,
    /// The level axis.
    pub x: Axis,
    /// The upright axis.
    pub y: Axis,
    /// Places on the level axis, rising.
    pub xs: Vec<f64>,
    /// Places on the upright axis, rising.
    pub ys: Vec<f64>,
    /// Values, one row for each place on the upright axis; missing where there is no answer.
    pub values: Vec<Vec<Option<f64>>>,
    /// What the colours mean.
    pub colour: Axis,
    /// Decimals of figures in cells.
    pub decimals: usize,
    /// What a missing value means: "cannot be reached"; may be empty.
    pub missing: String,
    /// Marked points.
    pub markers: Vec<Marker>,
    /// How the map is drawn.
    pub style: MapStyle,
}

/// Colours of the map, from the least to the greatest value.
struct Colouring {
    range: [f64; 2],
    missing: Colour,
}

impl Colouring {
    fn of(&self, value: Option<f64>) -> Colour {
        match value {
            Some(value) => ramp((value - self.range[0]) / (self.range[1] - self.range[0])),
            None => self.missing,
        }
    }
}

/// Rectangles across a field.
const COLUMNS: usize = 144;
/// Rectangles up a field.
const ROWS: usize = 80;

impl HeatMap {
    /// The map as a scene.
    ///
    /// # Errors
    /// If rows and columns do not match the axes, places do not rise, or there is no value at all.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        self.check()?;
        let mut frame = Frame::new(look, &self.heading);
        let colouring = Colouring {
            range: self.colour.upright_range(self.value_range(), 6),
            missing: frame.colours.grid.mixed(frame.colours.rule, 0.25),
        };
        let plot = self.draw_axes(&mut frame, &colouring)?;
        match self.style {
            MapStyle::Field => {
                let fine = Fine::of(self);
                self.draw_field(&mut frame, &plot, &colouring, &fine);
                let levels = self.colour.labelled_ticks(colouring.range, 6);
                let lines = fine.contour_lines(&plot, colouring.range, &levels);
                heat_labels::draw(&mut frame, &plot, &lines, &self.markers);
            }
            MapStyle::Cells => self.draw_cells(&mut frame, &plot, &colouring),
        }
        self.draw_markers(&mut frame, &plot);
        Ok(frame.scene)
    }

    fn check(&self) -> Result<()> {
        let rises = |places: &[f64]| {
            places.len() > 1
                && places.iter().all(|place| place.is_finite())
                && places.windows(2).all(|pair| pair[0] < pair[1])
        };
        for (axis, places) in [(&self.x, &self.xs), (&self.y, &self.ys)] {
            if !rises(places) {
                return Err(Error::bad(format!(
                    "the places on `{}` must be two or more rising numbers",
                    axis.quantity
                )));
            }
        }
        let fits = self.values.len() == self.ys.len()
            && self.values.iter().all(|row| row.len() == self.xs.len());
        if !fits {
            return Err(Error::bad(format!(
                "a map of {} by {} places needs as many values",
                self.xs.len(),
                self.ys.len()
            )));
        }
        let mut values = self.values.iter().flatten().flatten();
        if values.clone().any(|value| !value.is_finite()) {
            return Err(Error::bad(format!(
                "a value of `{}` is no number",
                self.colour.quantity
            )));
        }
        match values.next() {
            Some(_) => Ok(()),
            None => Err(Error::no_answer(format!(
                "no value of `{}` to draw",
                self.colour.quantity
            ))),
        }
    }

    fn value_range(&self) -> [f64; 2] {
        let values = self.values.iter().flatten().flatten();
        values.fold([f64::INFINITY, f64::NEG_INFINITY], |reach, value| {
            [reach[0].min(*value), reach[1].max(*value)]
        })
    }

    /// Edges of the cells on an axis: halfway between the places, and as far beyond the last ones.
    fn edges(places: &[f64]) -> Vec<f64> {
        let mut edges = vec![places[0] - (places[1] - places[0]) / 2.0];
        edges.extend(
            places
                .windows(2)
                .map(|pair| f64::midpoint(pair[0], pair[1])),
        );
        let last = places.len() - 1;
        edges.push(places[last] + (places[last] - places[last - 1]) / 2.0);
        edges
    }

    fn ranges(&self) -> [[f64; 2]; 2] {
        [&self.xs, &self.ys].map(|places| match self.style {
            MapStyle::Field => [places[0], places[places.len() - 1]],
            MapStyle::Cells => {
                let edges = Self::edges(places);
                [edges[0], edges[edges.len() - 1]]
            }
        })
    }

    /// Axes, axis titles and colour bar.
    fn draw_axes(&self, frame: &mut Frame, colouring: &Colouring) -> Result<Plot> {
        let text = frame.measures.text;
        let gap = frame.measures.gap;
        let row = lettering::line_step(text);
        let [x_range, y_range] = self.ranges();
        let top = frame.body.top + row + gap + lettering::capitals(text) / 2.0;
        let bottom = frame.body.bottom - axis::level_row_height(frame) - row;
        let count = axis::upright_tick_count(bottom - top, text);
        let y_ticks = self.ticks(&self.y, &self.ys, y_range, count);
        let bar_ticks = self.colour.labelled_ticks(colouring.range, 6);
        let bar_column = axis::upright_column_width(frame, &bar_ticks) + 5.5 * gap;
        let left = frame.body.left + axis::upright_column_width(frame, &y_ticks);
        let area = Rect::new(left, top, frame.body.right - bar_column, bottom);
        if area.height() < 3.0 * text || area.width() < 6.0 * text {
            return Err(
                Error::bad("the figure is too small for a map").hint("choose a larger size")
            );
        }
        let plot = Plot::new(area, x_range, y_range)?;
        axis::draw_upright_labels(frame, &plot, &y_ticks);
        let count = axis::level_tick_count(area.width(), text);
        let x_ticks = self.ticks(&self.x, &self.xs, x_range, count);
        axis::draw_level_ticks(frame, &plot, &x_ticks, true);
        let baseline = frame.body.top + lettering::rise(text);
        self.draw_titles(frame, &plot, baseline);
        let bar = Rect::new(area.right + 2.2 * gap, top, area.right + 4.5 * gap, bottom);
        draw_bar(frame, &bar, colouring, &bar_ticks)?;
        Ok(plot)
    }

    /// Ticks at the places themselves for cells, at round values for a field.
    fn ticks(
        &self,
        axis: &Axis,
        places: &[f64],
        range: [f64; 2],
        most: usize,
    ) -> Vec<(f64, String)> {
        if self.style == MapStyle::Field || !axis.ticks.is_empty() || places.len() > 2 * most {
            return axis.labelled_ticks(range, most);
        }
        let digits = panel::digits_for(range);
        let label = |place: &f64| (*place, crate::draw::scale::short_number(*place, digits));
        places.iter().map(label).collect()
    }

    fn draw_titles(&self, frame: &mut Frame, plot: &Plot, baseline: f64) {
        let text = frame.measures.text;
        let most = 0.48 * frame.body.width();
        let words = |title: &str| lettering::shortened(title, text, Face::Regular, most);
        let y_title = frame.axis_text([frame.body.left, baseline], &words(&self.y.title()));
        let colour_at = [frame.body.right, baseline];
        let colour_title = frame.axis_text(colour_at, &words(&self.colour.title()));
        let below = plot.area.bottom + axis::level_row_height(frame) + lettering::rise(text);
        let x_title = frame.axis_text([plot.area.left, below], &words(&self.x.title()));
        let x_right = x_title.bounds().right;
        frame.scene.text(y_title);
        frame.scene.text(colour_title.anchored(Anchor::End));
        frame.scene.text(x_title);
        if !self.missing.is_empty() && self.values.iter().flatten().any(Option::is_none) {
            self.draw_missing_key(frame, x_right, below);
        }
    }

    /// What the colour of missing values means, right of the level axis' title.
    fn draw_missing_key(&self, frame: &mut Frame, left: f64, baseline: f64) {
        let text = frame.measures.text;
        let swatch = lettering::capitals(text);
        let start = left + 3.0 * frame.measures.gap + swatch;
        let most = frame.body.right - start - frame.measures.gap;
        let words = lettering::shortened(&self.missing, text, Face::Regular, most);
        let label = frame
            .axis_text([frame.body.right, baseline], &words)
            .anchored(Anchor::End);
        let x = label.bounds().left - 0.8 * frame.measures.gap - swatch;
        let area = Rect::new(x, baseline - swatch, x + swatch, baseline);
        let colour = frame.colours.grid.mixed(frame.colours.rule, 0.25);
        frame.scene.rounded_rectangle(area, 0.2 * swatch, colour);
        frame.scene.text(label);
    }

    fn draw_cells(&self, frame: &mut Frame, plot: &Plot, colouring: &Colouring) {
        let seam = frame.measures.rule * 0.4;
        for (row, values) in self.values.iter().enumerate() {
            for (column, value) in values.iter().enumerate() {
                let cell = self.cell(plot, column, row).grown(-seam);
                let colour = colouring.of(*value);
                frame.scene.rectangle(cell, colour);
                if let Some(value) = value {
                    self.draw_figure(frame, plot, &cell, *value, colour);
                }
            }
        }
    }

    /// A point in a field, a frame around a cell.
    fn draw_markers(&self, frame: &mut Frame, plot: &Plot) {
        let Colours {
            ink, background, ..
        } = frame.colours;
        let line = frame.measures.line;
        for marker in &self.markers {
            let at = plot.px(marker.at);
            if self.style == MapStyle::Field {
                let radius = panel::marker_radius(frame);
                for (share, colour) in [(1.5, background), (1.15, ink), (0.45, background)] {
                    frame.scene.disc(at, radius * share, colour);
                }
                continue;
            }
            let column = position(&Self::edges(&self.xs), marker.at[0]).0;
            let row = position(&Self::edges(&self.ys), marker.at[1]).0;
            let cell = self.cell(plot, column, row).grown(-0.4 * line);
            for (width, colour) in [(1.7 * line, background), (0.8 * line, ink)] {
                let corners = vec![
                    [cell.left, cell.top],
                    [cell.right, cell.top],
                    [cell.right, cell.bottom],
                    [cell.left, cell.bottom],
                    [cell.left, cell.top],
                ];
                frame.scene.polyline(corners, Stroke::solid(colour, width));
            }
        }
    }

    /// The rectangle of a cell.
    fn cell(&self, plot: &Plot, column: usize, row: usize) -> Rect {
        let (x_edges, y_edges) = (Self::edges(&self.xs), Self::edges(&self.ys));
        let [left, bottom] = plot.px([x_edges[column], y_edges[row]]);
        let [right, top] = plot.px([x_edges[column + 1], y_edges[row + 1]]);
        Rect::new(left, top, right, bottom)
    }

    /// The figure of a cell, under the words of a point marked in it, as far as there is room.
    fn draw_figure(&self, frame: &mut Frame, plot: &Plot, cell: &Rect, value: f64, ground: Colour) {
        let size = frame.measures.text;
        let ink = heat_labels::ink_on(ground);
        let figure = number(value, self.decimals);
        let marked = self
            .markers
            .iter()
            .find(|marker| cell.holds(plot.px(marker.at)));
        let name = marked.map_or("", |marker| marker.text.as_str());
        let plain = Words::new(size).with(&figure, Face::Regular, ink, f64::MAX, 1);
        let named = Words::new(size)
            .with(name, Face::Bold, ink, f64::MAX, 1)
            .with(&figure, Face::Regular, ink, f64::MAX, 1);
        let [x, y] = cell.centre();
        let room = cell.grown(-0.3 * size);
        for words in [named, plain] {
            let area = words.around(x, y);
            if room.contains(&area) {
                words.draw(&mut frame.scene, &area, Anchor::Middle);
                return;
            }
        }
    }

    /// Flat rectangles on whole pixels, neighbours of one colour joined.
    fn draw_field(&self, frame: &mut Frame, plot: &Plot, colouring: &Colouring, fine: &Fine) {
        let area = plot.area;
        let x_at =
            |column: usize| (area.left + area.width() * column as f64 / COLUMNS as f64).round();
        let y_at = |row: usize| (area.bottom - area.height() * row as f64 / ROWS as f64).round();
        for row in 0..ROWS {
            let colour_at = |column: usize| {
                let x = plot.x.at((column as f64 + 0.5) / COLUMNS as f64);
                let y = plot.y.at((row as f64 + 0.5) / ROWS as f64);
                colouring.of(fine
                    .value_at([x, y])
                    .map(|value| stepped(value, colouring.range)))
            };
            let mut start = 0;
            let mut colour = colour_at(0);
            for column in 1..=COLUMNS {
                let next = (column < COLUMNS).then(|| colour_at(column));
                if next != Some(colour) {
                    let run = Rect::new(x_at(start), y_at(row + 1), x_at(column), y_at(row));
                    frame.scene.rectangle(run, colour);
                    start = column;
                    colour = next.unwrap_or(colour);
                }
            }
        }
    }
}

/// The colour bar with its ticks.
fn draw_bar(
    frame: &mut Frame,
    bar: &Rect,
    colouring: &Colouring,
    ticks: &[(f64, String)],
) -> Result<()> {
    let steps = 64;
    for step in 0..steps {
        let y_at =
            |step: i32| (bar.bottom - bar.height() * f64::from(step) / f64::from(steps)).round();
        let strip = Rect::new(bar.left, y_at(step + 1), bar.right, y_at(step));
        frame
            .scene
            .rectangle(strip, ramp((f64::from(step) + 0.5) / f64::from(steps)));
    }
    let scale = Scale::new(colouring.range, [bar.bottom, bar.top])?;
    let gap = frame.measures.gap;
    for (value, label) in ticks {
        let y = scale.px(*value);
        let tick = Stroke::solid(frame.colours.rule, frame.measures.rule);
        frame
            .scene
            .line([bar.right, y], [bar.right + 0.5 * gap, y], tick);
        let at = [
            bar.right + gap,
            y + lettering::capitals(frame.measures.text) / 2.0,
        ];
        let text = frame.axis_text(at, label);
        frame.scene.text(text);
    }
    Ok(())
}
