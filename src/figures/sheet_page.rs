//! A page of paper on which words are set from the top: lines, paragraphs, rules, boxes.
//!
//! In: a paper, a size of type. Out: a scene that fills exactly one page.

use crate::draw::{Colour, Colours, Face, Rect, Scene, Stroke, Text, Theme, lettering};

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

/// How dark a text is.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Ink {
    /// As the title.
    Plain,
    /// As notes.
    Muted,
    /// As cautions.
    Warning,
}

/// Size, weight and colour of words on the page.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Style {
    /// Size in pixels.
    pub size: f64,
    /// Regular or bold.
    pub face: Face,
    /// How dark.
    pub ink: Ink,
}

/// Left edge and width of a column, px.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Column {
    /// Left edge.
    pub left: f64,
    /// Width.
    pub width: f64,
}

/// A page in the making.
pub(crate) struct SheetPage {
    /// The picture so far.
    pub scene: Scene,
    /// Its colours.
    pub colours: Colours,
    /// The page inside its margins.
    pub area: Rect,
    /// Where the next thing begins.
    pub y: f64,
    scale: f64,
}

impl SheetPage {
    /// An empty page with type of a share of the usual size.
    pub fn new(paper: Paper, scale: f64) -> Self {
        let (width, height) = paper.pixels();
        let colours = Theme::Light.colours();
        Self {
            scene: Scene::new(width, height, colours.background),
            colours,
            area: Rect::new(MARGIN, MARGIN, width - MARGIN, height - MARGIN),
            scale,
            y: MARGIN,
        }
    }

    /// A multiple of the size of running text.
    pub fn em(&self, times: f64) -> f64 {
        times * TEXT * self.scale
    }

    /// Words of a multiple of the size of running text.
    pub fn style(&self, times: f64, face: Face, ink: Ink) -> Style {
        Style {
            size: self.em(times),
            face,
            ink,
        }
    }

    /// One line whose top is at the point.
    pub fn write(&mut self, left: f64, top: f64, content: &str, style: Style) {
        self.write_at([left, top + lettering::rise(style.size)], content, style);
    }

    /// One line whose baseline begins at the point.
    pub fn write_at(&mut self, at: [f64; 2], content: &str, style: Style) {
        let colour = self.colour(style.ink);
        self.scene
            .text(Text::new(at, content, style.size, style.face, colour));
    }

    fn colour(&self, ink: Ink) -> Colour {
        match ink {
            Ink::Plain => self.colours.ink,
            Ink::Muted => self.colours.muted,
            Ink::Warning => self.colours.series_label(1),
        }
    }

    /// Wrapped lines in a column below `top`; returns the lower edge.
    pub fn paragraph(&mut self, column: Column, top: f64, content: &str, style: Style) -> f64 {
        let mut y = top;
        for line in lettering::wrap(content, style.size, style.face, column.width) {
            self.write(column.left, y, &line, style);
            y += lettering::line_step(style.size);
        }
        y
    }

    /// A level line.
    pub fn rule(&mut self, from: f64, to: f64, y: f64, width: f64) {
        let stroke = Stroke::solid(self.colours.rule, width);
        self.scene.line([from, y], [to, y], stroke);
    }

    /// The outline of a rectangle.
    pub fn outline(&mut self, area: Rect, stroke: Stroke) {
        let corners = vec![
            [area.left, area.top],
            [area.right, area.top],
            [area.right, area.bottom],
            [area.left, area.bottom],
            [area.left, area.top],
        ];
        self.scene.polyline(corners, stroke);
    }
}
