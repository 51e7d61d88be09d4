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
    /// Whether it goes on where the line before it ends.
    goes_on: bool,
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
        self.push(fitted.lines, face, colour);
        self
    }

    fn push(&mut self, lines: Vec<String>, face: Face, colour: Colour) {
        let size = self.size;
        let lines = lines.into_iter().map(|content| BlockLine {
            width_px: lettering::width(&content, size, face),
            content,
            face,
            colour,
            goes_on: false,
        });
        self.lines.extend(lines);
    }

    /// The block with words that go on in its last line.
    #[must_use]
    pub fn going_on(mut self, text: &str, face: Face, colour: Colour) -> Self {
        let content = format!(" {text}");
        self.lines.push(BlockLine {
            width_px: lettering::width(&content, self.size, face),
            content,
            face,
            colour,
            goes_on: true,
        });
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
        let mut block = Self::new(fitted.size);
        block.push(fitted.lines, face, colour);
        block
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
        self.lines.iter().filter(|line| !line.goes_on).count()
    }

    /// Width of the longest line, pixels.
    #[must_use]
    pub fn width(&self) -> f64 {
        let mut widest: f64 = 0.0;
        let mut own = 0.0;
        for line in &self.lines {
            own = if line.goes_on { own } else { 0.0 } + line.width_px;
            widest = widest.max(own);
        }
        widest
    }

    /// Width of a line from a part of it on, with what goes on behind it.
    fn width_from(&self, part: usize) -> f64 {
        let behind = self.lines[part + 1..].iter();
        let behind = behind.take_while(|line| line.goes_on);
        self.lines[part].width_px + behind.map(|line| line.width_px).sum::<f64>()
    }

    /// Height of all lines, pixels.
    #[must_use]
    pub fn height(&self) -> f64 {
        let steps = self.line_count().saturating_sub(1) as f64;
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
        let share = match anchor {
            TextAnchor::Start => 0.0,
            TextAnchor::Middle => 0.5,
            TextAnchor::End => 1.0,
        };
        let mut left = area.left;
        let mut y = area.top + lettering::rise(self.size) - lettering::line_step(self.size);
        for (part, line) in self.lines.iter().enumerate() {
            let goes_on = |part: usize| self.lines.get(part).is_some_and(|line| line.goes_on);
            let (size, face, colour) = (self.size, line.face, line.colour);
            if !line.goes_on {
                y += lettering::line_step(size);
                left = area.left + share * (area.width() - self.width_from(part));
            }
            if line.goes_on || goes_on(part + 1) {
                // The letters of words that go on begin behind the gap between words.
                let gap = lettering::width(" ", size, face);
                let indent = if line.goes_on { gap } else { 0.0 };
                let at = [left + indent, y];
                scene.text(Text::new(at, line.content.trim_start(), size, face, colour));
                left += line.width_px;
            } else {
                let at = [area.left + share * area.width(), y];
                let text = Text::new(at, line.content.clone(), size, face, colour);
                scene.text(text.anchored(anchor));
            }
        }
    }
}
