//! Blocks of words inside a chart: measured first, placed later.
//!
//! In: text, size, colour, greatest width. Out: a block with its extent, drawn into a rectangle.

use crate::draw::{Colour, Face, Rect, Scene, Text, TextAnchor, lettering};

/// A line of a block.
#[derive(Debug, Clone, PartialEq)]
struct BlockLine {
    content: String,
    face: Face,
    colour: Colour,
    width_px: f64,
}

/// Lines of one size that stand together.
#[derive(Debug, Clone, PartialEq)]
pub struct WordBlock {
    lines: Vec<BlockLine>,
    size: f64,
}

impl WordBlock {
    /// An empty block for lines of the given size.
    #[must_use]
    pub fn new(size: f64) -> Self {
        Self {
            lines: Vec::new(),
            size,
        }
    }

    /// The block with a text added, wrapped to `most` pixels and `most_lines` lines.
    #[must_use]
    pub fn with(
        mut self,
        text: &str,
        face: Face,
        colour: Colour,
        most: f64,
        most_lines: usize,
    ) -> Self {
        let fitted = lettering::fit(text, self.size, self.size, face, most, most_lines);
        let size = self.size;
        self.lines
            .extend(fitted.lines.into_iter().map(|content| BlockLine {
                width_px: lettering::width(&content, size, face),
                content,
                face,
                colour,
            }));
        self
    }

    /// A block of one text, its letters made smaller down to `least` pixels where it does not fit else.
    #[must_use]
    pub fn fitted(
        text: &str,
        [size, least]: [f64; 2],
        colour: Colour,
        most: f64,
        most_lines: usize,
    ) -> Self {
        let face = Face::Regular;
        let fitted = lettering::fit(text, size, least, face, most, most_lines);
        Self::new(fitted.size).with(text, face, colour, most, most_lines)
    }

    /// Whether nothing would be drawn.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.lines.is_empty()
    }

    /// Whether a line was cut off.
    #[must_use]
    pub fn is_cut(&self) -> bool {
        self.lines.iter().any(|line| line.content.ends_with('…'))
    }

    /// How many lines it has.
    #[must_use]
    pub fn line_count(&self) -> usize {
        self.lines.len()
    }

    /// Width of the longest line, pixels.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.lines
            .iter()
            .map(|line| line.width_px)
            .fold(0.0, f64::max)
    }

    /// Height of all lines, pixels.
    #[must_use]
    pub fn height(&self) -> f64 {
        let steps = self.lines.len().saturating_sub(1) as f64;
        lettering::rise(self.size)
            + lettering::fall(self.size)
            + steps * lettering::line_step(self.size)
    }

    /// The rectangle of the block around a middle.
    #[must_use]
    pub fn around(&self, x: f64, y: f64) -> Rect {
        let (half_width, half_height) = (self.width() / 2.0, self.height() / 2.0);
        Rect::new(
            x - half_width,
            y - half_height,
            x + half_width,
            y + half_height,
        )
    }

    /// Draws the lines into the rectangle from its top.
    pub fn draw(&self, scene: &mut Scene, area: &Rect, anchor: TextAnchor) {
        let x = match anchor {
            TextAnchor::Start => area.left,
            TextAnchor::Middle => area.centre()[0],
            TextAnchor::End => area.right,
        };
        let mut y = area.top + lettering::rise(self.size);
        for line in &self.lines {
            let text = Text::new(
                [x, y],
                line.content.clone(),
                self.size,
                line.face,
                line.colour,
            );
            scene.text(text.anchored(anchor));
            y += lettering::line_step(self.size);
        }
    }
}
