//! Two-sided bars: what moves a result most (tornado).
//!
//! In: names and numbers. Out: a scene with the names at the left and the figures at the bars' ends.

use super::axis::{self, Axis, Plot};
use super::frame::{Frame, Heading, Look};
use super::words::WordBlock;
use crate::draw::scale::number;
use crate::draw::{Colour, Face, Rect, Scene, Stroke, Text, TextAnchor, lettering};
use crate::error::{Error, PlotFault, Plotted, Result};

/// One parameter of a tornado chart.
#[derive(Debug, Clone, PartialEq)]
pub struct Swing {
    /// The parameter.
    pub name: String,
    /// What happens to the result when it is lowered.
    pub lowered: f64,
    /// What happens to the result when it is raised.
    pub raised: f64,
}

impl Swing {
    /// The larger of the two changes, without sign.
    #[must_use]
    pub fn size(&self) -> f64 {
        self.lowered.abs().max(self.raised.abs())
    }
}

/// Two-sided bars by parameter, the strongest on top.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Tornado {
    /// The words around it.
    pub heading: Heading,
    /// What the bars measure: "Change of the greatest effort", "%".
    pub axis: Axis,
    /// What one side means: "parameter −10 %".
    pub lowered: String,
    /// What the other side means: "parameter +10 %".
    pub raised: String,
    /// Decimals of the figures at the bars' ends.
    pub decimals: usize,
    /// Whether the values are natural logarithms, read as factors.
    pub factors: bool,
    /// The parameters in any order.
    pub swings: Vec<Swing>,
}

/// A bar chart's rectangles: names at the left, bars at the right, equal rows.
pub(super) struct BarRows {
    plot: Plot,
    row: f64,
    shown: usize,
}

impl Tornado {
    /// The chart as a scene.
    ///
    /// # Errors
    /// If there is nothing to show or a figure is no number.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        let figures = self
            .swings
            .iter()
            .flat_map(|swing| [swing.lowered, swing.raised]);
        check(figures.clone(), &self.axis)?;
        let mut swings: Vec<&Swing> = self.swings.iter().collect();
        swings.sort_by(|a, b| b.size().total_cmp(&a.size()));
        let sides_named = !self.lowered.is_empty() || !self.raised.is_empty();
        let key = |frame: &Frame| match sides_named {
            true => lettering::line_step(frame.measures.label) + frame.measures.gap,
            false => 0.0,
        };
        let mut frame = Frame::roomy(look, &self.heading, |frame| rows_height(frame) - key(frame));
        let key = key(&frame);
        frame.body.top += key;
        let names: Vec<&str> = swings.iter().map(|swing| swing.name.as_str()).collect();
        let reach = reach_of(figures.clone());
        let room = widest(&frame, figures.map(|value| self.figure(value)));
        let sides = [reach[0] < 0.0, reach[1] > 0.0];
        let rows = laid_out(&mut frame, &self.axis, &names, reach, room, sides)?;
        if sides_named {
            self.draw_key(&mut frame, key);
        }
        for (index, swing) in swings.iter().take(rows.shown).enumerate() {
            self.draw_swing(&mut frame, &rows, index, swing);
        }
        draw_zero(&mut frame, &rows.plot);
        Ok(frame.scene)
    }

    /// Both bars of a parameter: in one line if they go either way, else one above the other.
    fn draw_swing(&self, frame: &mut Frame, rows: &BarRows, index: usize, swing: &Swing) {
        let band = rows.band(index, 0.62);
        let one_way = swing.lowered * swing.raised > 0.0;
        let (mut high, mut low) = (band, band);
        if one_way {
            high.bottom = band.centre()[1];
            low.top = band.centre()[1];
        }
        let bars = [(swing.lowered, high, 1), (swing.raised, low, 0)];
        for (value, bar, series) in bars {
            let colour = frame.colours.series_line(series);
            draw_bar(frame, &rows.plot, bar, value, colour);
        }
        // Two figures above each other need their height; else only the longer bar has one.
        let only_longer = one_way && band.height() < 2.2 * frame.measures.text;
        for (value, bar, _) in bars {
            if only_longer && value.abs() == swing.size() {
                self.draw_figure(frame, &rows.plot, band, value);
                return;
            }
            if !only_longer && value != 0.0 {
                self.draw_figure(frame, &rows.plot, bar, value);
            }
        }
    }

    fn figure(&self, value: f64) -> String {
        // Bars that all go one way are sizes, not changes.
        let changes = self.swings.iter().any(|swing| swing.lowered != 0.0);
        let plus = if value > 0.0 && changes { "+" } else { "" };
        let value = if self.factors { value.exp() } else { value };
        format!("{plus}{}", number(value, self.decimals))
    }

    fn draw_figure(&self, frame: &mut Frame, plot: &Plot, bar: Rect, value: f64) {
        let x = plot.x.px(value);
        let gap = 0.7 * frame.measures.gap;
        let (x, anchor) = if value < 0.0 {
            (x - gap, TextAnchor::End)
        } else {
            (x + gap, TextAnchor::Start)
        };
        let y = bar.centre()[1] + lettering::capitals(frame.measures.text) / 2.0;
        let ink = frame.colours.ink;
        let text = Text::new(
            [x, y],
            self.figure(value),
            frame.measures.text,
            Face::Regular,
            ink,
        );
        frame.scene.text(text.anchored(anchor));
    }

    /// What the two colours mean, over the bars: a swatch and words each.
    fn draw_key(&self, frame: &mut Frame, height: f64) {
        let size = frame.measures.label;
        let y = frame.body.top - height + lettering::rise(size);
        let swatch = lettering::capitals(size);
        let gap = frame.measures.gap;
        let mut x = frame.body.left;
        for (number, words) in [(1, &self.lowered), (0, &self.raised)] {
            let area = Rect::new(x, y - swatch, x + swatch, y);
            let colour = frame.colours.series_line(number);
            frame.scene.rounded_rectangle(area, swatch * 0.2, colour);
            let colour = frame.colours.series_label(number);
            let at = [x + swatch + 0.7 * gap, y];
            let most = frame.body.right - at[0];
            let words = lettering::shortened(words, size, Face::Bold, most);
            let text = Text::new(at, words, size, Face::Bold, colour);
            x = text.bounds().right + 3.0 * gap;
            frame.scene.text(text);
        }
    }
}

impl BarRows {
    /// The plot that all rows share.
    pub(super) const fn plot(&self) -> &Plot {
        &self.plot
    }

    /// How many rows found room.
    pub(super) const fn shown(&self) -> usize {
        self.shown
    }

    /// The rectangle of a row's bar.
    pub(super) fn band(&self, index: usize, share: f64) -> Rect {
        let middle = self.plot.area.top + (index as f64 + 0.5) * self.row;
        let half = self.row * share / 2.0;
        Rect::new(
            self.plot.area.left,
            middle - half,
            self.plot.area.right,
            middle + half,
        )
    }
}

/// Whether there is something to draw and every figure is a number.
pub(super) fn check(mut figures: impl Iterator<Item = f64> + Clone, axis: &Axis) -> Result<()> {
    let (of, quantity) = (Plotted::Bars, axis.quantity.clone());
    if figures.clone().next().is_none() {
        return Err(Error::no_answer(PlotFault::Nothing { of, quantity }));
    }
    if figures.any(|value| !value.is_finite()) {
        return Err(Error::bad(PlotFault::NoNumber { of, quantity }));
    }
    Ok(())
}

/// Room that figures need beside their bars, pixels.
pub(super) fn widest(frame: &Frame, texts: impl Iterator<Item = String>) -> f64 {
    texts
        .map(|text| lettering::width(&text, frame.measures.text, Face::Bold))
        .fold(0.0, f64::max)
        + 1.4 * frame.measures.gap
}

/// Height that rows of bars have in the body.
pub(super) fn rows_height(frame: &Frame) -> f64 {
    let below = axis::level_row_height(frame) + lettering::line_step(frame.measures.text);
    frame.body.height() - below
}

/// Rows, names and axis; `room` pixels are kept for figures on the sides that have bars.
pub(super) fn laid_out(
    frame: &mut Frame,
    axis: &Axis,
    names: &[&str],
    reach: [f64; 2],
    room: f64,
    sides: [bool; 2],
) -> Result<BarRows> {
    let size = frame.measures.label;
    let height = rows_height(frame);
    let fitting = (height / (1.35 * lettering::line_step(size)))
        .floor()
        .max(1.0) as usize;
    let shown = names.len().min(fitting);
    let row = height / shown as f64;
    let blocks = name_blocks(frame, &names[..shown], row);
    let widest = blocks.iter().map(WordBlock::width).fold(0.0, f64::max);
    let right = frame.body.left + widest;
    let bottom = frame.body.top + row * shown as f64;
    let left = right + 1.6 * frame.measures.gap;
    let area = Rect::new(left, frame.body.top, frame.body.right, bottom);
    let range = with_room(reach, area.width(), room, sides);
    let plot = Plot::new(area, range, [0.0, 1.0])?;
    frame.scene.plots.push(area);
    for (index, words) in blocks.iter().enumerate() {
        let y = area.top + (index as f64 + 0.5) * row;
        let at = words.around(right - words.width() / 2.0, y);
        words.draw(&mut frame.scene, &at, TextAnchor::End);
    }
    draw_level_axis(frame, axis, &plot, names.len() - shown);
    Ok(BarRows { plot, row, shown })
}

/// The names of the rows, on two lines where the row is tall enough.
fn name_blocks(frame: &Frame, names: &[&str], row: f64) -> Vec<WordBlock> {
    let size = frame.measures.text;
    let most = 0.44 * frame.body.width();
    let lines = if row > 2.6 * size { 2 } else { 1 };
    let block = |name: &&str| {
        WordBlock::new(size).with(name, Face::Regular, frame.colours.ink, most, lines)
    };
    names.iter().map(block).collect()
}

/// Upright grid lines, the axis and its title.
fn draw_level_axis(frame: &mut Frame, axis: &Axis, plot: &Plot, left_out: usize) {
    let most = axis::level_tick_count(plot.area.width(), frame.measures.text);
    let ticks = axis.labelled_ticks(plot.x.range(), most);
    let grid = Stroke::solid(frame.colours.grid, frame.measures.rule * 0.8);
    for (value, _) in &ticks {
        let x = plot.x.px(*value);
        let ends = [[x, plot.area.top], [x, plot.area.bottom]];
        frame.scene.line(ends[0], ends[1], grid.clone());
    }
    axis::draw_level_ticks(frame, plot, &ticks, true);
    draw_axis_title(frame, axis, plot, left_out);
}

/// From the least to the greatest figure, zero included.
pub(super) fn reach_of(figures: impl Iterator<Item = f64>) -> [f64; 2] {
    figures.fold([0.0, 0.0], |reach, value| {
        [reach[0].min(value), reach[1].max(value)]
    })
}

/// The data's range opened by the room that the figures need beside the longest bars.
fn with_room(reach: [f64; 2], width: f64, room: f64, sides: [bool; 2]) -> [f64; 2] {
    let extent = (reach[1] - reach[0]).max(f64::MIN_POSITIVE);
    let many = sides.iter().filter(|side| **side).count() as f64;
    let bars = (width - many * room).max(0.3 * width);
    let more = extent * room / bars;
    let extent = if reach[0] == reach[1] { 1.0 } else { 0.0 };
    [
        // A negative bar without a figure beside it still keeps off the names.
        reach[0] * 1.08 - if sides[0] { more } else { 0.0 },
        reach[1] + if sides[1] { more } else { 0.0 } + extent,
    ]
}

fn draw_axis_title(frame: &mut Frame, axis: &Axis, plot: &Plot, left_out: usize) {
    let size = frame.measures.text;
    let y = plot.area.bottom + axis::level_row_height(frame) + lettering::rise(size);
    let mut title = axis.title();
    if left_out > 0 {
        title = format!("{title}; {left_out} {}", frame.left_out);
    }
    let most = frame.body.right - frame.body.left;
    let words = lettering::shortened(&title, size, Face::Regular, most);
    let half = lettering::width(&words, size, Face::Regular) / 2.0;
    let middle = plot.area.centre()[0];
    let x = middle.clamp(
        frame.body.left + half,
        (frame.body.right - half).max(frame.body.left + half),
    );
    let text = frame.axis_text([x, y], &words).anchored(TextAnchor::Middle);
    frame.scene.text(text);
}

fn draw_bar(frame: &mut Frame, plot: &Plot, band: Rect, value: f64, colour: Colour) {
    let (zero, end) = (plot.x.px(0.0), plot.x.px(value));
    let bar = Rect::new(zero.min(end), band.top, zero.max(end), band.bottom);
    frame.scene.rectangle(bar, colour);
}

/// The upright line at zero.
pub(super) fn draw_zero(frame: &mut Frame, plot: &Plot) {
    let x = plot.x.px(0.0);
    let line = Stroke::solid(frame.colours.ink, frame.measures.rule * 1.2);
    frame
        .scene
        .line([x, plot.area.top], [x, plot.area.bottom], line);
}
