//! A waterfall: parts of a change one below the other, each beginning where the last one ended, and the whole.
//!
//! In: names and numbers. Out: a scene with the names at the left and the figures at the bars' ends.

use super::axis::Axis;
use super::bars::{BarRows, check, draw_zero, laid_out, reach_of, rows_height, widest};
use super::frame::{Frame, Heading, Look};
use crate::draw::scale::number;
use crate::draw::{Colour, Face, Rect, Scene, Stroke, Text, TextAnchor, lettering};
use crate::error::Result;

/// One part of a change.
#[derive(Debug, Clone, PartialEq)]
pub struct WaterfallStep {
    /// What it belongs to.
    pub name: String,
    /// How much it adds.
    pub part: f64,
}

/// Parts and their whole.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Waterfall {
    /// The words around it.
    pub heading: Heading,
    /// What the bars measure: "Change of the capacity", "N".
    pub axis: Axis,
    /// Decimals of the figures at the bars' ends.
    pub decimals: usize,
    /// The parts from top to bottom.
    pub steps: Vec<WaterfallStep>,
    /// What their sum is called.
    pub whole: String,
}

/// A bar from where to where, and its figure.
struct Bar {
    from: f64,
    to: f64,
    colour: Colour,
}

impl Waterfall {
    /// The chart as a scene.
    ///
    /// # Errors
    /// If there is nothing to show or a figure is no number.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        check(self.steps.iter().map(|step| step.part), &self.axis)?;
        let mut frame = Frame::roomy(look, &self.heading, rows_height);
        let bars = self.bars(&frame);
        let mut names: Vec<&str> = self.steps.iter().map(|step| step.name.as_str()).collect();
        names.push(&self.whole);
        let ends = bars.iter().flat_map(|bar| [bar.from, bar.to]);
        let room = widest(&frame, bars.iter().map(|bar| self.figure(bar)));
        let sides = [
            bars.iter().any(|bar| bar.to < bar.from),
            bars.iter().any(|bar| bar.to >= bar.from),
        ];
        let rows = laid_out(&mut frame, &self.axis, &names, reach_of(ends), room, sides)?;
        for (index, bar) in bars.iter().enumerate().take(rows.shown()) {
            self.draw_bar(&mut frame, &rows, index, bar);
        }
        draw_joins(&mut frame, &rows, &bars);
        draw_zero(&mut frame, rows.plot());
        Ok(frame.scene)
    }

    fn bars(&self, frame: &Frame) -> Vec<Bar> {
        let mut from = 0.0;
        let mut bars: Vec<Bar> = Vec::new();
        for step in &self.steps {
            let to = from + step.part;
            let colour = frame.colours.series_line(usize::from(step.part < 0.0));
            bars.push(Bar { from, to, colour });
            from = to;
        }
        bars.push(Bar {
            from: 0.0,
            to: from,
            colour: frame.colours.muted,
        });
        bars
    }

    fn figure(&self, bar: &Bar) -> String {
        let value = bar.to - bar.from;
        let plus = if value > 0.0 { "+" } else { "" };
        format!("{plus}{}", number(value, self.decimals))
    }

    fn draw_bar(&self, frame: &mut Frame, rows: &BarRows, index: usize, bar: &Bar) {
        let band = rows.band(index, 0.62);
        let x = |value: f64| rows.plot().x.px(value);
        let [left, right] = [bar.from.min(bar.to), bar.from.max(bar.to)].map(x);
        // A part too small to see keeps a stroke, so that its row is not taken for an empty one.
        let right = right.max(left + frame.measures.rule);
        let area = Rect::new(left, band.top, right, band.bottom);
        frame.scene.rectangle(area, bar.colour);
        let gap = 0.7 * frame.measures.gap;
        let (at, anchor) = if bar.to < bar.from {
            (left - gap, TextAnchor::End)
        } else {
            (right + gap, TextAnchor::Start)
        };
        let y = band.centre()[1] + lettering::capitals(frame.measures.text) / 2.0;
        let is_whole = index + 1 == self.steps.len() + 1;
        let face = if is_whole { Face::Bold } else { Face::Regular };
        let ink = frame.colours.ink;
        let text = Text::new([at, y], self.figure(bar), frame.measures.text, face, ink);
        frame.scene.text(text.anchored(anchor));
    }
}

/// Thin lines from the end of every bar to the beginning of the next.
fn draw_joins(frame: &mut Frame, rows: &BarRows, bars: &[Bar]) {
    let line = Stroke::solid(frame.colours.rule, frame.measures.rule);
    for index in 1..bars.len().min(rows.shown()) {
        let x = rows.plot().x.px(bars[index - 1].to);
        let (above, below) = (rows.band(index - 1, 0.62), rows.band(index, 0.62));
        frame
            .scene
            .line([x, above.bottom], [x, below.top], line.clone());
    }
}
