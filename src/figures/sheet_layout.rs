//! Where everything stands on the one-page sheet of a session, and in which size of type it fits.
//!
//! In: a plan in words, a paper. Out: [`SheetLayout`]: marks at their places; type shrinks until everything, the
//! cautions included, stands on the page. The picture draws the marks, the HTML sheet takes the size.

use crate::draw::{Face, Rect, lettering};
use crate::narrative::plan_words::{PlanWords, SetRow};
use crate::narrative::sheet_labels::FILL_IN;
use crate::narrative::sheet_words::{
    CAUTIONS, COLUMN_HEADS, SheetBlock, blocks, sheet_facts, sheet_heading,
};

/// Paper of the sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// 210 mm × 297 mm (ISO 216).
    A4,
    /// 8.5 in × 11 in (ANSI/ASME Y14.1, from memory).
    Letter,
}

impl Paper {
    /// Width and height in pixels of 1/96 in, the pixel of the web.
    #[must_use]
    pub const fn pixels(self) -> (f64, f64) {
        match self {
            Self::A4 => (794.0, 1123.0),
            Self::Letter => (816.0, 1056.0),
        }
    }

    /// Its name in a style sheet.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "letter",
        }
    }
}

/// Margin of the page, px: 12 mm, what common printers leave white.
const MARGIN: f64 = 45.0;
/// Type of running text at its usual size, px (9.4 pt).
const TEXT: f64 = 12.5;
/// The same in points.
const TEXT_PT: f64 = 9.4;
/// Sizes that are tried, as shares of the usual one.
const SCALES: [f64; 11] = [
    1.18, 1.12, 1.06, 1.0, 0.95, 0.9, 0.86, 0.82, 0.78, 0.74, SMALLEST,
];
/// The smallest size that can be read, as a share of the usual one.
const SMALLEST: f64 = 0.7;

/// How dark a text is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum SheetInk {
    Plain,
    Muted,
    Warning,
}

/// One thing on the sheet.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum SheetMark {
    /// A line of text.
    Text {
        at: [f64; 2],
        content: String,
        size: f64,
        face: Face,
        ink: SheetInk,
    },
    /// A level rule.
    Rule {
        ends: (f64, f64),
        y: f64,
        width: f64,
    },
    /// An empty box to tick, from its upper left corner.
    TickBox { at: [f64; 2], side: f64 },
    /// The ground of a working set.
    Shade(Rect),
    /// The frame of the cautions.
    WarningFrame(Rect),
    /// A dot before a caution.
    WarningDot { at: [f64; 2], radius: f64 },
}

/// Everything on the sheet.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct SheetLayout {
    /// What stands where, in the order in which it is drawn.
    pub marks: Vec<SheetMark>,
    /// Size of type, as a share of the usual one.
    pub scale: f64,
    area: Rect,
    y: f64,
}

/// Size of the sheet's running text, pt; the smallest that can be read where the page is too small for it.
#[must_use]
pub fn sheet_type_pt(session: &str, words: &PlanWords, paper: Paper) -> f64 {
    let scale = sheet_layout(session, words, paper).map_or(SMALLEST, |layout| layout.scale);
    TEXT_PT * scale
}

/// The layout in the largest type that fits, if any does.
pub(super) fn sheet_layout(session: &str, words: &PlanWords, paper: Paper) -> Option<SheetLayout> {
    SCALES.into_iter().find_map(|scale| {
        let mut page = SheetLayout::new(paper, scale);
        let cautions = page.cautions_height(words);
        page.head(session, words);
        page.sets(&words.rows);
        page.columns(words);
        (page.y + page.em(0.8) + cautions <= page.area.bottom).then(|| {
            page.cautions(words, cautions);
            page
        })
    })
}

/// Height of a line to fill in by hand, em.
const BLANK_LINE: f64 = 1.75;

/// Widths of the table's columns in em of running text; the one without a width takes the rest.
const WIDTHS: [f64; 9] = [5.4, 6.4, 4.4, 6.6, 6.4, 0.0, 3.4, 3.0, 3.4];

/// Place of a text: left edge, width, upper edge.
type TextArea = (f64, f64, f64);

impl SheetLayout {
    fn new(paper: Paper, scale: f64) -> Self {
        let (width, height) = paper.pixels();
        Self {
            marks: Vec::new(),
            scale,
            area: Rect::new(MARGIN, MARGIN, width - MARGIN, height - MARGIN),
            y: MARGIN,
        }
    }

    /// A multiple of the size of running text.
    fn em(&self, times: f64) -> f64 {
        times * TEXT * self.scale
    }

    fn write(&mut self, at: [f64; 2], content: &str, size: f64, face: Face, ink: SheetInk) {
        self.marks.push(SheetMark::Text {
            at,
            content: content.to_owned(),
            size,
            face,
            ink,
        });
    }

    /// Wrapped lines from `left` on, below `top`; returns the lower edge.
    fn paragraph(&mut self, area: TextArea, content: &str, size: f64, ink: SheetInk) -> f64 {
        let (left, width, top) = area;
        let mut y = top;
        for line in lettering::wrap(content, size, Face::Regular, width) {
            let at = [left, y + lettering::rise(size)];
            self.write(at, &line, size, Face::Regular, ink);
            y += lettering::line_step(size);
        }
        y
    }

    fn rule(&mut self, left: f64, right: f64, y: f64, width: f64) {
        let ends = (left, right);
        self.marks.push(SheetMark::Rule { ends, y, width });
    }

    /// Title, whose session it is, lines to fill in.
    fn head(&mut self, session: &str, words: &PlanWords) {
        let size = self.em(2.1);
        let title = sheet_heading(session, words);
        let (left, width) = (self.area.left, self.area.width());
        let fitted = lettering::fit(&title, size, 0.6 * size, Face::Bold, width, 1);
        let size = fitted.size;
        let line = fitted.lines.first().cloned().unwrap_or_default();
        let at = [left, self.y + lettering::rise(size)];
        self.write(at, &line, size, Face::Bold, SheetInk::Plain);
        self.y += lettering::line_step(size) + self.em(0.2);
        let area = (left, width, self.y);
        self.y = self.paragraph(area, &sheet_facts(words), self.em(1.0), SheetInk::Muted);
        for hazard in &words.hazards {
            let (area, hazard) = ((left, width, self.y), format!("! {hazard}"));
            self.y = self.paragraph(area, &hazard, self.em(1.0), SheetInk::Warning);
        }
        self.y += self.em(1.5);
        let third = width / FILL_IN.len() as f64;
        for (index, name) in FILL_IN.iter().enumerate() {
            let from = left + third * index as f64;
            let small = self.em(0.92);
            self.write([from, self.y], name, small, Face::Regular, SheetInk::Muted);
            let start = from + lettering::width(name, small, Face::Regular) + self.em(0.5);
            let end = from + third - self.em(1.2);
            self.rule(start, end, self.y + 2.0, 1.0);
            if let Some(known) = words.filled_in(index) {
                let size = self.em(1.15);
                let (room, least) = (end - start, 0.6 * size);
                let fitted = lettering::fit(known, size, least, Face::Bold, room, 1);
                let line = fitted.lines.first().cloned().unwrap_or_default();
                self.write(
                    [start, self.y],
                    &line,
                    fitted.size,
                    Face::Bold,
                    SheetInk::Plain,
                );
            }
        }
        self.y += self.em(1.1);
    }

    /// Left edges and widths of the columns.
    fn places(&self) -> Vec<(f64, f64)> {
        let fixed: f64 = WIDTHS.iter().map(|width| self.em(*width)).sum();
        let rest = self.area.width() - fixed;
        let mut left = self.area.left;
        let place = |width: &f64| {
            let width = if *width > 0.0 { self.em(*width) } else { rest };
            let place = (left, width);
            left += width;
            place
        };
        WIDTHS.iter().map(place).collect()
    }

    fn sets(&mut self, rows: &[SetRow]) {
        let places = self.places();
        let small = self.em(0.86);
        for (head, (left, _)) in COLUMN_HEADS.iter().zip(&places) {
            let at = [left + self.em(0.4), self.y + lettering::rise(small)];
            self.write(at, head, small, Face::Bold, SheetInk::Muted);
        }
        self.y += lettering::line_step(small) + self.em(0.2);
        self.rule(self.area.left, self.area.right, self.y, 1.6);
        for row in rows {
            self.set(row, &places);
        }
        self.y += self.em(0.9);
    }

    fn set(&mut self, row: &SetRow, places: &[(f64, f64)]) {
        let top = self.y;
        let pad = self.em(if row.is_warm_up { 0.22 } else { 0.42 });
        let size = self.em(if row.is_warm_up { 0.96 } else { 1.06 });
        let ink = if row.is_warm_up {
            SheetInk::Muted
        } else {
            SheetInk::Plain
        };
        // Its height is known only after the text, so the ground goes in before it.
        let ground = self.marks.len();
        let bottom = self.cells(row, places, (top, pad, size, ink));
        let (left, width) = (places[5].0 + self.em(0.4), places[5].1 - self.em(0.8));
        let mut y = self.paragraph((left, width, top + pad), &row.how, size, ink);
        if !row.is_warm_up || row.has_notes {
            let small = self.em(0.84);
            y = self.paragraph((left, width, y), &row.intent, small, SheetInk::Muted);
        }
        let blanks = self.blanks(row, &places[6..], top + pad, size);
        self.y = f64::max(bottom, y).max(blanks) + pad;
        if !row.is_warm_up {
            let area = Rect::new(self.area.left, top, self.area.right, self.y);
            self.marks.insert(ground, SheetMark::Shade(area));
        }
        self.rule(self.area.left, self.area.right, self.y, 0.7);
    }

    /// The cells beside the plates; returns the lower edge of the longest.
    fn cells(
        &mut self,
        row: &SetRow,
        places: &[(f64, f64)],
        (top, pad, size, ink): (f64, f64, f64, SheetInk),
    ) -> f64 {
        let face = if row.is_warm_up {
            Face::Regular
        } else {
            Face::Bold
        };
        let percent = row.shown_percent();
        let cells = [
            (&row.name, Face::Regular),
            (&row.load, face),
            (&percent, Face::Regular),
            (&row.repetitions, face),
            (&row.rest, Face::Regular),
        ];
        let mut bottom = top;
        for ((content, face), (left, width)) in cells.into_iter().zip(places) {
            let mut y = top + pad;
            for line in lettering::wrap(content, size, face, width - self.em(0.6)) {
                let at = [left + self.em(0.4), y + lettering::rise(size)];
                self.write(at, &line, size, face, ink);
                y += lettering::line_step(size);
            }
            bottom = f64::max(bottom, y);
        }
        bottom
    }

    /// A box to tick for a warm-up; for each working set a line to fill in under every blank. Returns the lower edge.
    fn blanks(&mut self, row: &SetRow, places: &[(f64, f64)], top: f64, size: f64) -> f64 {
        if row.is_warm_up {
            let at = [places[0].0 + self.em(0.4), top];
            self.marks.push(SheetMark::TickBox {
                at,
                side: 0.95 * size,
            });
            return top;
        }
        let step = self.em(BLANK_LINE);
        for set in 1..=row.sets {
            let y = top + step * set as f64 - self.em(0.35);
            for (left, width) in places {
                self.rule(left + self.em(0.4), left + width - self.em(0.2), y, 0.9);
            }
        }
        top + step * row.sets as f64
    }

    /// Two columns of blocks.
    fn columns(&mut self, words: &PlanWords) {
        let gap = self.em(2.0);
        let width = (self.area.width() - gap) / 2.0;
        let (from, top) = (self.area.left, self.y);
        let [left, right] = blocks(words);
        let first = self.blocks((from, width, top), &left);
        let second = self.blocks((from + width + gap, width, top), &right);
        self.y = f64::max(first, second);
    }

    fn blocks(&mut self, (left, width, top): TextArea, blocks: &[SheetBlock]) -> f64 {
        let mut y = top;
        let (head, text) = (self.em(1.0), self.em(0.9));
        for block in blocks {
            let at = [left, y + lettering::rise(head)];
            self.write(at, block.title, head, Face::Bold, SheetInk::Plain);
            y += lettering::line_step(head) + self.em(0.1);
            for line in &block.lines {
                y = self.paragraph((left, width, y), line, text, SheetInk::Plain) + self.em(0.22);
            }
            y += self.em(0.5);
        }
        y
    }

    /// Cautions in two columns, split where both are about as long.
    fn caution_lines(&self, words: &PlanWords) -> (Vec<Vec<String>>, f64) {
        let width = (self.area.width() - self.em(4.0)) / 2.0;
        let text = self.em(0.86);
        let wrap =
            |caution: &String| lettering::wrap(caution, text, Face::Regular, width - self.em(0.9));
        (words.other_cautions().map(wrap).collect(), width)
    }

    fn split(paragraphs: &[Vec<String>]) -> usize {
        let count = |part: &[Vec<String>]| part.iter().map(Vec::len).sum::<usize>();
        (0..=paragraphs.len())
            .min_by_key(|at| count(&paragraphs[..*at]).max(count(&paragraphs[*at..])))
            .unwrap_or(paragraphs.len())
    }

    fn cautions_height(&self, words: &PlanWords) -> f64 {
        let (paragraphs, _) = self.caution_lines(words);
        let at = Self::split(&paragraphs);
        let height = |part: &[Vec<String>]| {
            let lines: usize = part.iter().map(Vec::len).sum();
            lines as f64 * lettering::line_step(self.em(0.86)) + part.len() as f64 * self.em(0.2)
        };
        let longest = f64::max(height(&paragraphs[..at]), height(&paragraphs[at..]));
        longest + lettering::line_step(self.em(1.0)) + self.em(1.7)
    }

    /// The box at the foot of the page.
    fn cautions(&mut self, words: &PlanWords, height: f64) {
        let (paragraphs, width) = self.caution_lines(words);
        let at = Self::split(&paragraphs);
        let (left, right) = (self.area.left, self.area.right);
        let (top, bottom) = (self.area.bottom - height, self.area.bottom);
        let frame = Rect::new(left, top, right, bottom);
        self.marks.push(SheetMark::WarningFrame(frame));
        let head = self.em(1.0);
        let inner = left + self.em(1.0);
        let mut y = top + self.em(0.7);
        let place = [inner, y + lettering::rise(head)];
        self.write(place, CAUTIONS, head, Face::Bold, SheetInk::Warning);
        y += lettering::line_step(head) + self.em(0.2);
        self.caution_column((inner, y), &paragraphs[..at]);
        let second = inner + (width + self.em(2.0));
        self.caution_column((second, y), &paragraphs[at..]);
    }

    fn caution_column(&mut self, (from, top): (f64, f64), paragraphs: &[Vec<String>]) {
        let text = self.em(0.86);
        let mut y = top;
        for lines in paragraphs {
            let at = [from + self.em(0.2), y + 0.62 * text];
            let radius = 0.12 * text;
            self.marks.push(SheetMark::WarningDot { at, radius });
            for line in lines {
                let place = [from + self.em(0.9), y + lettering::rise(text)];
                self.write(place, line, text, Face::Regular, SheetInk::Plain);
                y += lettering::line_step(text);
            }
            y += self.em(0.2);
        }
    }
}
