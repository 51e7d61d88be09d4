//! A map as a scene: a smooth field with labelled contour lines and a colour bar at the right.
//!
//! In: a [`HeatMap`] and a look. Out: a scene.

use super::axis::{self, Plot};
use super::frame::{Frame, Look};
use super::heat_field::{Fine, stepped};
use super::heat_labels;
use super::heat_map::HeatMap;
use super::panel;
use crate::draw::scale::Scale;
use crate::draw::{Colour, Colours, Face, Layer, Rect, Scene, TextAnchor, lettering};
use crate::error::{Error, PlotFault, Plotted, Result};

/// Colours of the map, from the least to the greatest value.
struct Colouring {
    range: [f64; 2],
    missing: Colour,
    colours: Colours,
}

impl Colouring {
    fn of(&self, value: Option<f64>) -> Colour {
        match value {
            Some(value) => {
                let share = (value - self.range[0]) / (self.range[1] - self.range[0]);
                self.colours.map_colour(share)
            }
            None => self.missing,
        }
    }
}

/// Ticks of the colour bar, at most.
const BAR_TICKS: usize = 6;
/// Colour strips of the colour bar.
const BAR_STRIPS: i32 = 64;
/// Rectangles across a field.
const COLUMNS: usize = 144;
/// Rectangles up a field.
const ROWS: usize = 80;

/// Rectangles of plot and colour bar with their ticks.
struct MapPlan {
    area: Rect,
    bar: Rect,
    y_ticks: Vec<(f64, String)>,
    bar_ticks: Vec<(f64, String)>,
}

impl HeatMap {
    /// The map as a scene.
    ///
    /// # Errors
    /// If rows and columns do not match the axes, places do not rise, or there is no value at all.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        self.check()?;
        let mut frame = Frame::roomy(look, &self.heading, |frame| {
            let [top, bottom] = plot_ends(frame);
            bottom - top
        });
        let colouring = Colouring {
            range: self.colour.upright_range(self.value_range(), BAR_TICKS),
            missing: missing_colour(&frame),
            colours: frame.colours.clone(),
        };
        let plot = self.draw_axes(&mut frame, &colouring)?;
        frame.scene.plots.push(plot.area);
        let fine = Fine::of(self);
        frame.scene.begin(Layer::Region);
        draw_field(&mut frame, &plot, &colouring, &fine);
        frame.scene.begin(Layer::Label);
        let levels = self.colour.labelled_ticks(colouring.range, BAR_TICKS);
        let ground = |level: f64| colouring.of(Some(level));
        let lines = fine.contour_lines(&plot, &ground, &levels);
        heat_labels::draw(&mut frame, &plot, &lines, &self.markers);
        self.draw_markers(&mut frame, &plot);
        Ok(frame.scene)
    }

    /// Where plot and colour bar stand.
    fn plan(&self, frame: &Frame, colouring: &Colouring) -> Result<MapPlan> {
        let (text, gap) = (frame.measures.text, frame.measures.gap);
        let [top, bottom] = plot_ends(frame);
        let count = axis::upright_tick_count(bottom - top, text);
        let y_ticks = self.y.labelled_ticks(ends(&self.ys), count);
        let bar_ticks = self.colour.labelled_ticks(colouring.range, BAR_TICKS);
        let bar_column = axis::upright_column_width(frame, &bar_ticks) + 5.5 * gap;
        let left = frame.body.left + axis::upright_column_width(frame, &y_ticks);
        let area = Rect::new(left, top, frame.body.right - bar_column, bottom);
        if area.height() < 3.0 * text || area.width() < 6.0 * text {
            return Err(Error::bad(PlotFault::TooSmall(Plotted::Map)));
        }
        Ok(MapPlan {
            area,
            bar: Rect::new(area.right + 2.2 * gap, top, area.right + 4.5 * gap, bottom),
            y_ticks,
            bar_ticks,
        })
    }

    /// Axes, axis titles and colour bar.
    fn draw_axes(&self, frame: &mut Frame, colouring: &Colouring) -> Result<Plot> {
        let plan = self.plan(frame, colouring)?;
        let plot = Plot::new(plan.area, ends(&self.xs), ends(&self.ys))?;
        axis::draw_upright_labels(frame, &plot, &plan.y_ticks);
        let count = axis::level_tick_count(plan.area.width(), frame.measures.text);
        let x_ticks = self.x.labelled_ticks(ends(&self.xs), count);
        axis::draw_level_ticks(frame, &plot, &x_ticks, true);
        let baseline = frame.body.top + lettering::rise(frame.measures.text);
        self.draw_titles(frame, &plot, baseline);
        draw_bar(frame, &plan.bar, colouring, &plan.bar_ticks)?;
        Ok(plot)
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
        frame.scene.text(colour_title.anchored(TextAnchor::End));
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
            .anchored(TextAnchor::End);
        let x = label.bounds().left - 0.8 * frame.measures.gap - swatch;
        let area = Rect::new(x, baseline - swatch, x + swatch, baseline);
        let colour = missing_colour(frame);
        frame.scene.rounded_rectangle(area, 0.2 * swatch, colour);
        frame.scene.text(label);
    }

    /// A point in the field for each marker.
    fn draw_markers(&self, frame: &mut Frame, plot: &Plot) {
        let (ink, background) = (frame.colours.ink, frame.colours.background);
        let radius = panel::marker_radius(frame);
        for marker in &self.markers {
            let at = plot.px(marker.at);
            for (share, colour) in [(1.5, background), (1.15, ink), (0.45, background)] {
                frame.scene.disc(at, radius * share, colour);
            }
        }
    }
}

/// Upper and lower edge of the field.
fn plot_ends(frame: &Frame) -> [f64; 2] {
    let text = frame.measures.text;
    let row = lettering::line_step(text);
    [
        frame.body.top + row + 0.3 * frame.measures.gap + lettering::capitals(text) / 2.0,
        frame.body.bottom - axis::level_row_height(frame) - row,
    ]
}

fn missing_colour(frame: &Frame) -> Colour {
    frame.colours.grid.mixed(frame.colours.rule, 0.25)
}

fn ends(places: &[f64]) -> [f64; 2] {
    [places[0], places[places.len() - 1]]
}

/// Flat rectangles on whole pixels, neighbours of one colour joined.
fn draw_field(frame: &mut Frame, plot: &Plot, colouring: &Colouring, fine: &Fine) {
    let area = plot.area;
    let x_at = |column: usize| (area.left + area.width() * column as f64 / COLUMNS as f64).round();
    let y_at = |row: usize| (area.bottom - area.height() * row as f64 / ROWS as f64).round();
    for row in 0..ROWS {
        let colour_at = |column: usize| {
            let x = plot.x.at((column as f64 + 0.5) / COLUMNS as f64);
            let y = plot.y.at((row as f64 + 0.5) / ROWS as f64);
            let value = fine.value_at([x, y]);
            colouring.of(value.map(|value| stepped(value, colouring.range)))
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

/// The colour bar with its ticks.
fn draw_bar(
    frame: &mut Frame,
    bar: &Rect,
    colouring: &Colouring,
    ticks: &[(f64, String)],
) -> Result<()> {
    let strips = f64::from(BAR_STRIPS);
    let y_at = |step: i32| (bar.bottom - bar.height() * f64::from(step) / strips).round();
    for step in 0..BAR_STRIPS {
        let strip = Rect::new(bar.left, y_at(step + 1), bar.right, y_at(step));
        let colour = colouring
            .colours
            .map_colour((f64::from(step) + 0.5) / strips);
        frame.scene.rectangle(strip, colour);
    }
    let scale = Scale::new(colouring.range, [bar.bottom, bar.top])?;
    let gap = frame.measures.gap;
    for (value, label) in ticks {
        let y = scale.px(*value);
        let tick = frame.rule();
        frame
            .scene
            .line([bar.right, y], [bar.right + 0.5 * gap, y], tick);
        let baseline = y + lettering::capitals(frame.measures.text) / 2.0;
        let text = frame.axis_text([bar.right + gap, baseline], label);
        frame.scene.text(text);
    }
    Ok(())
}
