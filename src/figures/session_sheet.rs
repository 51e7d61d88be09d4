//! The one-page sheet of a session as a picture: what the lifter and the coach hold in their hands.
//!
//! In: a plan in words, a paper. Out: a scene that fills exactly one page; type shrinks until everything,
//! the cautions included, stands on it.

use crate::draw::{Colours, Face, Rect, Scene, Stroke, Text, Theme, lettering};
use crate::error::{Error, FigureFault, Result};
use crate::narrative::plan_words::{PlanWords, SetRow};

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
/// Sizes that are tried, as shares of the usual one.
const SCALES: [f64; 11] = [
    1.18, 1.12, 1.06, 1.0, 0.95, 0.9, 0.86, 0.82, 0.78, 0.74, 0.7,
];

/// The sheet, and the share of the usual type size that it took.
///
/// **Fails** when the session is too long for one page in letters that can be read.
pub fn session_sheet(title: &str, words: &PlanWords, paper: Paper) -> Result<(Scene, f64)> {
    for scale in SCALES {
        let mut page = SheetPage::new(title, words, paper, scale);
        let cautions = page.cautions_height(words);
        page.head(title, words);
        page.sets(&words.rows);
        page.columns(words);
        if page.y + page.em(0.8) + cautions <= page.area.bottom {
            page.cautions(words, cautions);
            return Ok((page.scene, scale));
        }
    }
    Err(Error::no_answer(FigureFault::PageFull))
}

/// Columns of the table: title, width in em of running text; the one without a width takes the rest.
const COLUMNS: [(&str, f64); 7] = [
    ("Set", 5.6),
    ("Load", 6.4),
    ("% 1RM", 4.4),
    ("Repetitions", 6.8),
    ("Rest", 6.6),
    ("How to load", 0.0),
    ("Done", 7.6),
];

struct SheetPage {
    scene: Scene,
    colours: Colours,
    area: Rect,
    scale: f64,
    y: f64,
}

impl SheetPage {
    fn new(title: &str, words: &PlanWords, paper: Paper, scale: f64) -> Self {
        let (width, height) = paper.pixels();
        let colours = Theme::Light.colours();
        let mut scene = Scene::new(width, height, colours.background);
        scene.title = format!("{}: {title}", words.movement);
        scene.description = described(words);
        Self {
            scene,
            colours,
            area: Rect::new(MARGIN, MARGIN, width - MARGIN, height - MARGIN),
            scale,
            y: MARGIN,
        }
    }

    /// A multiple of the size of running text.
    fn em(&self, times: f64) -> f64 {
        times * TEXT * self.scale
    }

    fn write(&mut self, at: [f64; 2], content: &str, size: f64, face: Face, colour: Ink) {
        let colour = self.ink(colour);
        self.scene.text(Text::new(at, content, size, face, colour));
    }

    fn ink(&self, ink: Ink) -> crate::draw::Colour {
        match ink {
            Ink::Plain => self.colours.ink,
            Ink::Muted => self.colours.muted,
            Ink::Warning => self.colours.series_label(1),
        }
    }

    /// Wrapped lines from `left` on, below `top`; returns the lower edge.
    fn paragraph(&mut self, area: (f64, f64, f64), content: &str, size: f64, ink: Ink) -> f64 {
        let (left, width, top) = area;
        let mut y = top;
        for line in lettering::wrap(content, size, Face::Regular, width) {
            self.write(
                [left, y + lettering::rise(size)],
                &line,
                size,
                Face::Regular,
                ink,
            );
            y += lettering::line_step(size);
        }
        y
    }

    fn rule(&mut self, left: f64, right: f64, y: f64, width: f64) {
        let stroke = Stroke::solid(self.colours.rule, width);
        self.scene.line([left, y], [right, y], stroke);
    }

    /// Title, whose session it is, lines to fill in.
    fn head(&mut self, title: &str, words: &PlanWords) {
        let size = self.em(2.1);
        let heading = format!("{}: {}", words.movement, title.replace('-', " "));
        let width = self.area.width();
        let fitted = lettering::fit(&heading, size, 0.6 * size, Face::Bold, width, 1);
        let size = fitted.size;
        let line = fitted.lines.first().cloned().unwrap_or_default();
        let left = self.area.left;
        self.write(
            [left, self.y + lettering::rise(size)],
            &line,
            size,
            Face::Bold,
            Ink::Plain,
        );
        self.y += lettering::line_step(size) + self.em(0.2);
        let facts = format!(
            "{}; {}; {}; {}",
            words.one_rm, words.level, words.amount, words.frequency
        );
        let text = self.em(1.0);
        self.y = self.paragraph((left, width, self.y), &facts, text, Ink::Muted);
        self.y += self.em(1.5);
        let third = width / 3.0;
        for (index, name) in ["Name", "Date", "Coach"].iter().enumerate() {
            let from = left + third * index as f64;
            let small = self.em(0.92);
            self.write([from, self.y], name, small, Face::Regular, Ink::Muted);
            let start = from + lettering::width(name, small, Face::Regular) + self.em(0.5);
            self.rule(start, from + third - self.em(1.2), self.y + 2.0, 1.0);
        }
        self.y += self.em(1.1);
    }

    /// Left edges and widths of the columns.
    fn places(&self) -> Vec<(f64, f64)> {
        let fixed: f64 = COLUMNS.iter().map(|(_, width)| self.em(*width)).sum();
        let rest = self.area.width() - fixed;
        let mut left = self.area.left;
        COLUMNS
            .iter()
            .map(|(_, width)| {
                let width = if *width > 0.0 { self.em(*width) } else { rest };
                let place = (left, width);
                left += width;
                place
            })
            .collect()
    }

    fn sets(&mut self, rows: &[SetRow]) {
        let places = self.places();
        let small = self.em(0.86);
        for ((head, _), (left, _)) in COLUMNS.iter().zip(&places) {
            let at = [left + self.em(0.4), self.y + lettering::rise(small)];
            self.write(at, head, small, Face::Bold, Ink::Muted);
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
        // Drawn after its height is known, so the ground goes in before the text.
        let ground = self.scene.shapes.len();
        let (face, ink) = if row.is_warm_up {
            (Face::Regular, Ink::Muted)
        } else {
            (Face::Bold, Ink::Plain)
        };
        let mut bottom = top;
        let percent = format!("{} %", row.percent);
        let cells = [
            (&row.name, Face::Regular),
            (&row.load, face),
            (&percent, Face::Regular),
            (&row.repetitions, face),
            (&row.rest, Face::Regular),
        ];
        for ((content, face), (left, width)) in cells.into_iter().zip(places) {
            let mut y = top + pad;
            for line in lettering::wrap(content, size, face, width - self.em(0.6)) {
                let at = [left + self.em(0.4), y + lettering::rise(size)];
                self.write(at, &line, size, face, ink);
                y += lettering::line_step(size);
            }
            bottom = f64::max(bottom, y);
        }
        let (left, width) = (places[5].0 + self.em(0.4), places[5].1 - self.em(0.8));
        let mut y = self.paragraph((left, width, top + pad), &row.how, size, ink);
        if !row.is_warm_up || row.intent.contains(';') {
            let small = self.em(0.84);
            y = self.paragraph((left, width, y), &row.intent, small, Ink::Muted);
        }
        self.boxes(row.sets, places[6], top + pad, size);
        self.y = f64::max(bottom, y) + pad;
        if !row.is_warm_up {
            let area = Rect::new(self.area.left, top, self.area.right, self.y);
            self.scene.rectangle(area, self.colours.shade);
            if let Some(shade) = self.scene.shapes.pop() {
                self.scene.shapes.insert(ground, shade);
            }
        }
        self.rule(self.area.left, self.area.right, self.y, 0.7);
    }

    /// A box to tick for each set of the row.
    fn boxes(&mut self, sets: usize, place: (f64, f64), top: f64, size: f64) {
        let side = 0.95 * size;
        for index in 0..sets {
            let left = place.0 + self.em(0.4) + index as f64 * 1.4 * side;
            let (right, bottom) = (left + side, top + side + 1.0);
            let corners = vec![
                [left, top + 1.0],
                [right, top + 1.0],
                [right, bottom],
                [left, bottom],
                [left, top + 1.0],
            ];
            self.scene
                .polyline(corners, Stroke::solid(self.colours.muted, 1.0));
        }
    }

    /// Two columns: how it is done at the left, who helps and what to expect at the right.
    fn columns(&mut self, words: &PlanWords) {
        let gap = self.em(2.0);
        let width = (self.area.width() - gap) / 2.0;
        let top = self.y;
        let mut left: Vec<(&str, Vec<String>)> = Vec::new();
        if !words.setup.is_empty() {
            left.push(("Setup", words.setup.clone()));
        }
        left.push(("Going on", vec![words.progression.clone()]));
        left.push(("Good to know", words.notes.clone()));
        let mut right: Vec<(&str, Vec<String>)> = Vec::new();
        if let Some(spotters) = &words.spotters {
            let mut lines = vec![spotters.clone()];
            let calls = words.calls.iter();
            lines.extend(calls.map(|(word, meaning)| format!("\u{201c}{word}\u{201d}: {meaning}")));
            right.push(("Spotters and their words", lines));
        }
        right.push(("Predicted", words.predicted.clone()));
        let from = self.area.left;
        let first = self.blocks((from, width, top), &left);
        let second = self.blocks((from + width + gap, width, top), &right);
        self.y = f64::max(first, second);
    }

    fn blocks(
        &mut self,
        (left, width, top): (f64, f64, f64),
        blocks: &[(&str, Vec<String>)],
    ) -> f64 {
        let mut y = top;
        let (head, text) = (self.em(1.0), self.em(0.9));
        for (title, lines) in blocks.iter().filter(|(_, lines)| !lines.is_empty()) {
            self.write(
                [left, y + lettering::rise(head)],
                title,
                head,
                Face::Bold,
                Ink::Plain,
            );
            y += lettering::line_step(head) + self.em(0.1);
            for line in lines.iter().filter(|line| !line.is_empty()) {
                y = self.paragraph((left, width, y), line, text, Ink::Plain) + self.em(0.22);
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
        (words.cautions.iter().map(wrap).collect(), width)
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
        let corners = vec![
            [left, top],
            [right, top],
            [right, bottom],
            [left, bottom],
            [left, top],
        ];
        let warning = self.colours.series_line(1);
        self.scene.polyline(corners, Stroke::solid(warning, 1.8));
        let (head, text) = (self.em(1.0), self.em(0.86));
        let inner = left + self.em(1.0);
        let mut y = top + self.em(0.7);
        self.write(
            [inner, y + lettering::rise(head)],
            "Cautions",
            head,
            Face::Bold,
            Ink::Warning,
        );
        y += lettering::line_step(head) + self.em(0.2);
        for (column, part) in [&paragraphs[..at], &paragraphs[at..]]
            .into_iter()
            .enumerate()
        {
            let from = inner + column as f64 * (width + self.em(2.0));
            let mut line_y = y;
            for lines in part {
                let dot = [from + self.em(0.2), line_y + 0.62 * text];
                self.scene.disc(dot, 0.12 * text, warning);
                for line in lines {
                    let place = [from + self.em(0.9), line_y + lettering::rise(text)];
                    self.write(place, line, text, Face::Regular, Ink::Plain);
                    line_y += lettering::line_step(text);
                }
                line_y += self.em(0.2);
            }
        }
    }
}

/// How dark a text is.
#[derive(Debug, Clone, Copy)]
enum Ink {
    Plain,
    Muted,
    Warning,
}

/// The sheet in sentences, for those who cannot see it.
fn described(words: &PlanWords) -> String {
    let sets = words
        .rows
        .iter()
        .filter(|row| !row.is_warm_up)
        .map(|row| {
            format!(
                "set {}: {}, {} repetitions",
                row.name, row.load, row.repetitions
            )
        })
        .collect::<Vec<_>>()
        .join("; ");
    format!(
        "{}. {sets}. Cautions: {}",
        words.one_rm,
        words.cautions.join(" ")
    )
}
