//! Intervals one below the other: what was known before as a thin bar, what is known now as a thick one with its middle.
//!
//! In: names and numbers. Out: a scene with the names at the left and the middles' figures at the bars' right ends.

use super::axis::Axis;
use super::bars::{BarRows, check, draw_zero, laid_out, reach_of, widest};
use super::frame::{Frame, Heading, Look};
use crate::draw::scale::number;
use crate::draw::{Colour, Face, Rect, Scene, Stroke, Text, TextAnchor, lettering};
use crate::error::Result;

/// One value with its intervals.
#[derive(Debug, Clone, PartialEq)]
pub struct IntervalRow {
    /// What it is of.
    pub name: String,
    /// Ends of the interval before.
    pub before: [f64; 2],
    /// Lower end, middle and upper end now.
    pub now: [f64; 3],
    /// Whether it was measured itself.
    pub is_measured: bool,
}

/// Intervals from top to bottom.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct IntervalChart {
    /// The words around it.
    pub heading: Heading,
    /// What the bars measure.
    pub axis: Axis,
    /// What the three kinds of bar are: measured, expected, before.
    pub key: [String; 3],
    /// Decimals of the figures.
    pub decimals: usize,
    /// The rows.
    pub rows: Vec<IntervalRow>,
}

impl IntervalChart {
    /// The chart as a scene.
    ///
    /// # Errors
    /// If there is nothing to show or a figure is no number.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        let ends = self.rows.iter().flat_map(|row| {
            let [low, middle, high] = row.now;
            [row.before[0], row.before[1], low, middle, high]
        });
        check(ends.clone(), &self.axis)?;
        let mut frame = Frame::new(look, &self.heading);
        let key = lettering::line_step(frame.measures.text) + frame.measures.gap;
        frame.body.top += key;
        let names: Vec<&str> = self.rows.iter().map(|row| row.name.as_str()).collect();
        let room = widest(&frame, self.rows.iter().map(|row| self.figure(row)));
        let reach = reach_of(ends);
        let rows = laid_out(&mut frame, &self.axis, &names, reach, room, [false, true])?;
        self.draw_key(&mut frame, key);
        for (index, row) in self.rows.iter().take(rows.shown()).enumerate() {
            self.draw_row(&mut frame, &rows, index, row);
        }
        if reach[0] < 0.0 {
            draw_zero(&mut frame, rows.plot());
        }
        Ok(frame.scene)
    }

    fn figure(&self, row: &IntervalRow) -> String {
        number(row.now[1], self.decimals)
    }

    fn draw_row(&self, frame: &mut Frame, rows: &BarRows, index: usize, row: &IntervalRow) {
        let x = |value: f64| rows.plot().x.px(value);
        let (thick, thin) = (rows.band(index, 0.52), rows.band(index, 0.14));
        let [low, middle, high] = row.now.map(x);
        let [from, to] = row.before.map(x);
        let grey = frame.colours.rule;
        frame
            .scene
            .rectangle(Rect::new(from, thin.top, to, thin.bottom), grey);
        let colour = row_colour(frame, row.is_measured);
        frame
            .scene
            .rectangle(Rect::new(low, thick.top, high, thick.bottom), colour);
        let ink = frame.colours.ink;
        let line = Stroke::solid(ink, 2.0 * frame.measures.rule);
        frame
            .scene
            .line([middle, thick.top], [middle, thick.bottom], line);
        let y = thick.centre()[1] + lettering::capitals(frame.measures.text) / 2.0;
        let at = [high.max(to) + 0.7 * frame.measures.gap, y];
        let face = if row.is_measured {
            Face::Bold
        } else {
            Face::Regular
        };
        let text = Text::new(at, self.figure(row), frame.measures.text, face, ink);
        frame.scene.text(text.anchored(TextAnchor::Start));
    }

    /// What the bars are, over them: a swatch and words each.
    fn draw_key(&self, frame: &mut Frame, height: f64) {
        let size = frame.measures.text;
        let y = frame.body.top - height + lettering::rise(size);
        let swatch = lettering::capitals(size);
        let gap = frame.measures.gap;
        let mut x = frame.body.left;
        let colours = [
            row_colour(frame, true),
            row_colour(frame, false),
            frame.colours.rule,
        ];
        for (words, colour) in self.key.iter().zip(colours) {
            let area = Rect::new(x, y - swatch, x + 1.6 * swatch, y);
            frame.scene.rectangle(area, colour);
            let at = [area.right + 0.7 * gap, y];
            let most = frame.body.right - at[0];
            let words = lettering::shortened(words, size, Face::Regular, most);
            let text = Text::new(at, words, size, Face::Regular, frame.colours.ink);
            x = text.bounds().right + 2.5 * gap;
            frame.scene.text(text);
        }
    }
}

fn row_colour(frame: &Frame, is_measured: bool) -> Colour {
    let number = usize::from(is_measured);
    frame.colours.series_line(number).with_opacity(0.75)
}
