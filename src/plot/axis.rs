//! Axes: quantity and unit, range, ticks and a light grid.
//!
//! In: an [`Axis`] and the data's range. Out: a [`Plot`] (two scales and their rectangle) and its
//! axes drawn into a frame.

use super::frame::Frame;
use crate::draw::scale::{self, Scale};
use crate::draw::{Face, Layer, PixelPoint, Rect, Stroke, TextAnchor, lettering};
use crate::error::Result;

/// How far an axis reaches.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub enum Extent {
    /// As far as the data.
    Data,
    /// From zero to the data's end: right for loads and forces.
    #[default]
    FromZero,
    /// From zero to this value; curves that leave are marked.
    FromZeroTo(f64),
    /// Exactly this; curves that leave are marked.
    Exactly([f64; 2]),
}

/// One axis.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Axis {
    /// What is shown: "Force at the bar".
    pub quantity: String,
    /// Its unit: "N"; empty if it has none.
    pub unit: String,
    /// How far it reaches.
    pub extent: Extent,
    /// Ticks with words of their own; empty for round numbers.
    pub ticks: Vec<(f64, String)>,
    /// Which way time goes along it, if it does.
    pub time: Time,
}

/// Which way time goes along a level axis; it always runs from left to right.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Time {
    /// The axis is no way and no time.
    #[default]
    None,
    /// Values rise with time.
    Rising,
    /// Values fall with time, so the axis runs from its greatest value to its least.
    Falling,
}

impl Axis {
    /// An axis from zero to the data's end.
    #[must_use]
    pub fn new(quantity: impl Into<String>, unit: impl Into<String>) -> Self {
        Self {
            quantity: quantity.into(),
            unit: unit.into(),
            ..Self::default()
        }
    }

    /// The same axis with another extent.
    #[must_use]
    pub fn reaching(mut self, extent: Extent) -> Self {
        self.extent = extent;
        self
    }

    /// The same axis along which time goes this way.
    #[must_use]
    pub fn timed(mut self, time: Time) -> Self {
        self.time = time;
        self
    }

    /// Quantity and unit: "Force at the bar (N)".
    #[must_use]
    pub fn title(&self) -> String {
        if self.unit.is_empty() {
            self.quantity.clone()
        } else {
            format!("{} ({})", self.quantity, self.unit)
        }
    }

    /// The title cut to a width in pixels; what is cut is the quantity, never the unit.
    #[must_use]
    pub fn title_within(&self, size: f64, most: f64) -> String {
        let wide = |words: &str| lettering::width(words, size, Face::Regular);
        let title = self.title();
        let unit = format!(" ({})", self.unit);
        if self.unit.is_empty() || wide(&title) <= most || wide(&unit) >= most {
            return lettering::shortened(&title, size, Face::Regular, most);
        }
        lettering::shortened(&self.quantity, size, Face::Regular, most - wide(&unit)) + &unit
    }

    /// The range for an upright axis, rounded out to ticks where the extent leaves it open.
    #[must_use]
    pub fn upright_range(&self, data: [f64; 2], most_ticks: usize) -> [f64; 2] {
        match self.extent {
            Extent::Data => scale::rounded_out(data, most_ticks),
            Extent::FromZero => {
                scale::rounded_out([data[0].min(0.0), data[1].max(0.0)], most_ticks)
            }
            Extent::FromZeroTo(top) => [
                scale::rounded_out([data[0].min(0.0), top], most_ticks)[0],
                top,
            ],
            Extent::Exactly(range) => range,
        }
    }

    /// The range for a level axis: the data's own, so that curves begin at the edge.
    #[must_use]
    pub fn level_range(&self, data: [f64; 2]) -> [f64; 2] {
        match self.extent {
            Extent::Exactly(range) => range,
            Extent::FromZeroTo(end) => [data[0].min(0.0), end],
            _ if data[0] == data[1] => scale::rounded_out(data, 5),
            _ => data,
        }
    }

    /// Ticks inside a range with their labels.
    #[must_use]
    pub fn labelled_ticks(&self, range: [f64; 2], most: usize) -> Vec<(f64, String)> {
        let slack = (range[1] - range[0]) * 1e-6;
        let inside = |value: f64| value >= range[0] - slack && value <= range[1] + slack;
        if !self.ticks.is_empty() {
            let own = self.ticks.iter().filter(|(value, _)| inside(*value));
            return own.cloned().collect();
        }
        let values = scale::ticks(range, most);
        let decimals = scale::decimals_of_step(scale::tick_step(range, most));
        values
            .into_iter()
            .map(|value| {
                let decimals = if value == 0.0 { 0 } else { decimals };
                (value, scale::number(value, decimals))
            })
            .collect()
    }
}

/// Two scales over a rectangle.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plot {
    /// The rectangle between the axes.
    pub area: Rect,
    /// Scale across.
    pub x: Scale,
    /// Scale upwards.
    pub y: Scale,
}

impl Plot {
    /// Scales over the rectangle.
    ///
    /// # Errors
    /// If a range is empty or no number.
    pub fn new(area: Rect, x_range: [f64; 2], y_range: [f64; 2]) -> Result<Self> {
        Ok(Self {
            area,
            x: Scale::new(x_range, [area.left, area.right])?,
            y: Scale::new(y_range, [area.bottom, area.top])?,
        })
    }

    /// The same with the level axis running from its greatest value to its least, where time does.
    ///
    /// # Errors
    /// If the range is empty or no number.
    pub fn along(mut self, axis: &Axis) -> Result<Self> {
        if axis.time == Time::Falling {
            self.x = Scale::new(self.x.range(), [self.area.right, self.area.left])?;
        }
        Ok(self)
    }

    /// Two values of the level axis in pixels, from left to right, cut to the plot.
    #[must_use]
    pub fn stretch_px(&self, ends: [f64; 2]) -> [f64; 2] {
        let [one, other] = ends.map(|end| self.x.px(end));
        let [from, to] = [one.min(other), one.max(other)];
        [from.max(self.area.left), to.min(self.area.right)]
    }

    /// A point of data in pixels.
    #[must_use]
    pub fn px(&self, point: [f64; 2]) -> PixelPoint {
        [self.x.px(point[0]), self.y.px(point[1])]
    }

    /// Points of data in pixels.
    #[must_use]
    pub fn all_px(&self, points: &[[f64; 2]]) -> Vec<PixelPoint> {
        points.iter().map(|point| self.px(*point)).collect()
    }
}

/// How many ticks an upright axis of this height can carry.
#[must_use]
pub fn upright_tick_count(height: f64, text: f64) -> usize {
    ((height / (text * 2.4)) as usize).clamp(2, 7)
}

/// How many ticks a level axis of this width can carry.
#[must_use]
pub fn level_tick_count(width: f64, text: f64) -> usize {
    ((width / (text * 5.0)) as usize).clamp(2, 9)
}

/// Grid lines and labels of the upright axis.
pub fn draw_upright(frame: &mut Frame, plot: &Plot, ticks: &[(f64, String)]) {
    let before = frame.scene.begin(Layer::Axis);
    let grid = Stroke::solid(frame.colours.grid, frame.measures.rule * 0.8);
    for (value, _) in ticks {
        let y = plot.y.px(*value);
        if (y - plot.area.bottom).abs() > 1.0 {
            let [from, to] = [[plot.area.left, y], [plot.area.right, y]];
            frame.scene.line(from, to, grid.clone());
        }
    }
    draw_upright_labels(frame, plot, ticks);
    frame.scene.begin(before);
}

/// Room between an upright axis and its labels, in gaps: for a ring that marks a curve's beginning, with its rim.
const LABEL_GAP: f64 = 1.8;

/// Labels of the upright axis alone.
pub fn draw_upright_labels(frame: &mut Frame, plot: &Plot, ticks: &[(f64, String)]) {
    let text = frame.measures.text;
    for (value, label) in ticks {
        let y = plot.y.px(*value);
        let at = [
            plot.area.left - LABEL_GAP * frame.measures.gap,
            y + lettering::capitals(text) / 2.0,
        ];
        let words = frame.axis_text(at, label).anchored(TextAnchor::End);
        frame.scene.text(words);
    }
}

/// Line, tick marks and labels of the level axis; returns the boxes of the labels drawn.
///
/// Labels that would touch their neighbour or leave the canvas are left out.
pub fn draw_level(frame: &mut Frame, plot: &Plot, axis: &Axis, labels: bool) -> Vec<Rect> {
    let count = level_tick_count(plot.area.width(), frame.measures.text);
    let ticks = axis.labelled_ticks(plot.x.range(), count);
    draw_level_ticks(frame, plot, &ticks, labels)
}

/// [`draw_level`] with ticks chosen by the caller.
pub fn draw_level_ticks(
    frame: &mut Frame,
    plot: &Plot,
    ticks: &[(f64, String)],
    labels: bool,
) -> Vec<Rect> {
    let before = frame.scene.begin(Layer::Axis);
    let rule = frame.rule();
    let area = plot.area;
    let ends = [[area.left, area.bottom], [area.right, area.bottom]];
    frame.scene.line(ends[0], ends[1], rule.clone());
    let mut boxes: Vec<Rect> = Vec::new();
    for (value, label) in ticks {
        let x = plot.x.px(*value);
        let foot = area.bottom + frame.measures.gap * 0.7;
        frame.scene.line([x, area.bottom], [x, foot], rule.clone());
        if !labels {
            continue;
        }
        let words = level_label(frame, x, area.bottom, label);
        let own = words.bounds();
        let clear = own.grown(frame.measures.gap * 0.6);
        let on_canvas = own.left >= 0.0 && own.right <= frame.scene.width;
        if on_canvas && !boxes.iter().any(|other| other.overlaps(&clear)) {
            boxes.push(own);
            frame.scene.text(words);
        }
    }
    frame.scene.begin(before);
    boxes
}

/// An arrowhead at the right end of a level axis along which time goes.
pub fn draw_time_arrow(frame: &mut Frame, plot: &Plot, axis: &Axis) {
    if axis.time == Time::None {
        return;
    }
    let before = frame.scene.begin(Layer::Axis);
    let [x, y] = [plot.area.right, plot.area.bottom];
    let gap = frame.measures.gap;
    let head = vec![
        [x + 1.1 * gap, y],
        [x - 0.2 * gap, y - 0.6 * gap],
        [x - 0.2 * gap, y + 0.6 * gap],
    ];
    let colour = frame.colours.muted;
    frame.scene.polygon(head, colour);
    frame.scene.begin(before);
}

/// The title of an upright axis, level above its upper end, cut to the body's width.
#[must_use]
pub fn upright_title(frame: &Frame, axis: &Axis, baseline: f64) -> crate::draw::Text {
    let most = frame.body.width();
    let words = axis.title_within(frame.measures.text, most);
    frame.axis_text([frame.body.left, baseline], &words)
}

/// Room between a level axis and its tick labels: clear of the lowest upright label, half of which hangs below the axis.
fn level_gap(frame: &Frame) -> f64 {
    let text = frame.measures.text;
    lettering::capitals(text) / 2.0 + lettering::fall(text) + 0.05 * frame.measures.gap
}

fn level_label(frame: &Frame, x: f64, bottom: f64, label: &str) -> crate::draw::Text {
    let y = bottom + level_gap(frame) + lettering::rise(frame.measures.text);
    frame.axis_text([x, y], label).anchored(TextAnchor::Middle)
}

/// Height of the row of tick labels below a level axis.
#[must_use]
pub fn level_row_height(frame: &Frame) -> f64 {
    level_gap(frame) + lettering::line_step(frame.measures.text)
}

/// Width of the column of tick labels beside an upright axis, with its gap.
#[must_use]
pub fn upright_column_width(frame: &Frame, ticks: &[(f64, String)]) -> f64 {
    let widest = ticks
        .iter()
        .map(|(_, label)| lettering::width(label, frame.measures.text, Face::Regular))
        .fold(0.0, f64::max);
    widest + LABEL_GAP * frame.measures.gap
}
