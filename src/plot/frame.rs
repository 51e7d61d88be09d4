//! What every figure has: its size and theme, the finding as title, a line below it, the source.
//!
//! In: a [`Look`] and a [`Heading`]. Out: a [`Frame`]: the scene with ground and headings drawn, the
//! body left for the chart, and the sizes of type and lines for that canvas.

use crate::draw::{Colours, Face, PixelPoint, Rect, Scene, Stroke, Text, Theme, lettering};
use crate::error::{Error, LeftOff, PlotFault, Result};
use std::str::FromStr;

/// Size of a picture in pixels.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Size {
    /// A lecture slide, 1920 × 1080.
    #[default]
    Slide,
    /// A printed page across, 1754 × 1240: A4 (ISO 216, 297 mm × 210 mm) at 150 dots an inch.
    Page,
    /// What a slide leaves below a title that is not part of the picture, 1920 × 930; type is as large as on a slide.
    UnderTitle,
    /// Any other size; made by [`Size::custom`], which checks it.
    Custom {
        /// Pixels across.
        width: u32,
        /// Pixels down.
        height: u32,
    },
}

/// Least and most pixels across, assumed: below it names of curves find no room beside them.
const WIDTHS: [u32; 2] = [640, 7680];
/// Least and most pixels down: below it a title, two rows of ticks and the titles of two panels leave less than
/// [`DATA_SHARE`] of the height to data, even without poses, note and subtitle (a test measures it).
const HEIGHTS: [u32; 2] = [400, 7680];
/// Narrowest and widest shape (width over height), assumed: a curve needs both directions.
const SHAPES: [f64; 2] = [0.6, 3.5];

impl Size {
    /// A size of one's own.
    ///
    /// # Errors
    /// If it is too small for readable letters, too large, or too narrow for a chart.
    pub fn custom(width: u32, height: u32) -> Result<Self> {
        let shape = f64::from(width) / f64::from(height.max(1));
        let fits = (WIDTHS[0]..=WIDTHS[1]).contains(&width)
            && (HEIGHTS[0]..=HEIGHTS[1]).contains(&height)
            && (SHAPES[0]..=SHAPES[1]).contains(&shape);
        if fits {
            return Ok(Self::Custom { width, height });
        }
        Err(Error::bad(PlotFault::SizeOutside {
            width,
            height,
            widths: WIDTHS,
            heights: HEIGHTS,
            shapes: SHAPES,
        }))
    }

    /// Width and height in pixels.
    #[must_use]
    pub fn pixels(self) -> (u32, u32) {
        match self {
            Self::Slide => (1920, 1080),
            Self::Page => (1754, 1240),
            Self::UnderTitle => (1920, 930),
            Self::Custom { width, height } => (width, height),
        }
    }
}

impl FromStr for Size {
    type Err = Error;

    fn from_str(text: &str) -> Result<Self> {
        let word = text.trim().to_ascii_lowercase();
        match word.as_str() {
            "slide" => return Ok(Self::Slide),
            "page" => return Ok(Self::Page),
            _ => {}
        }
        let sides = word.split_once(['x', '×']).and_then(|(width, height)| {
            Some((width.trim().parse().ok()?, height.trim().parse().ok()?))
        });
        match sides {
            Some((width, height)) => Self::custom(width, height),
            None => Err(Error::bad(PlotFault::UnknownSize(text.to_owned()))),
        }
    }
}

/// Size and theme of a figure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Look {
    /// Its size.
    pub size: Size,
    /// Light or dark.
    pub theme: Theme,
}

/// The words around a chart.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Heading {
    /// The finding, as one sentence; at most two lines are shown.
    pub title: String,
    /// Whose curve under which load; may be empty.
    pub subtitle: String,
    /// Source or caveat below the chart; may be empty.
    pub footnote: String,
    /// What the figure shows, in sentences, for those who cannot see it.
    pub description: String,
    /// Words before the farthest value of a curve that leaves the plot; without them it is not told.
    pub beyond: String,
    /// Words after the number of bars that found no room.
    pub left_out: String,
}

/// Sizes of type and lines for one canvas, in pixels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measures {
    /// One pixel of the slide, in pixels of this canvas.
    pub unit: f64,
    /// Title.
    pub title: f64,
    /// Line below the title.
    pub subtitle: f64,
    /// Direct labels.
    pub label: f64,
    /// Axis titles, tick labels, notes.
    pub text: f64,
    /// Source line.
    pub footnote: f64,
    /// Lines of data.
    pub line: f64,
    /// Axis lines and leaders.
    pub rule: f64,
    /// Usual distance between neighbours.
    pub gap: f64,
}

/// Share of the height that data get at the least.
pub const DATA_SHARE: f64 = 0.55;

/// Type never gets smaller than this share of its size on the slide: 0.36 × 36 px = 13 px, assumed
/// as the least that reads on a screen.
const LEAST_TYPE: f64 = 0.36;

/// Type of a printed page over that of the slide: 0.64 × 36 px at 150 dots an inch are 11 pt, read at arm's length.
const PAGE_TYPE: f64 = 0.64;

impl Measures {
    /// The sizes for a canvas whose lines have a share of their usual width.
    #[must_use]
    pub fn of(size: Size, weight: f64) -> Self {
        let (width, height) = size.pixels();
        let unit = match size {
            Size::UnderTitle => 1.0,
            _ => (f64::from(width) / 1920.0).min(f64::from(height) / 1080.0),
        };
        let type_unit = match size {
            Size::Page => PAGE_TYPE,
            Size::Slide | Size::UnderTitle | Size::Custom { .. } => unit.max(LEAST_TYPE),
        };
        Self {
            unit,
            title: 56.0 * type_unit,
            subtitle: 36.0 * type_unit,
            label: 40.0 * type_unit,
            text: 36.0 * type_unit,
            footnote: 36.0 * type_unit,
            line: 8.0 * type_unit,
            rule: 2.5 * type_unit * weight.sqrt(),
            gap: 12.0 * type_unit,
        }
    }
}

/// A figure in the making.
#[derive(Debug, Clone, PartialEq)]
pub struct Frame {
    /// The picture so far.
    pub scene: Scene,
    /// Its colours.
    pub colours: Colours,
    /// Its sizes.
    pub measures: Measures,
    /// The room left for the chart.
    pub body: Rect,
    /// Words before the farthest value of a curve that leaves the plot; may be empty.
    pub beyond: String,
    /// Words after the number of bars that found no room; may be empty.
    pub left_out: String,
}

impl Frame {
    /// Draws the ground and the words around the chart.
    #[must_use]
    pub fn new(look: Look, heading: &Heading) -> Self {
        Self::without(look, heading, &[])
    }

    /// Draws the ground and the words around the chart but those that are left off.
    #[must_use]
    pub fn without(look: Look, heading: &Heading, left_off: &[LeftOff]) -> Self {
        let (width, height) = look.size.pixels();
        let colours = look.theme.colours();
        let measures = Measures::of(look.size, colours.weight);
        let mut scene = Scene::new(f64::from(width), f64::from(height), colours.background);
        scene.title.clone_from(&heading.title);
        scene.description.clone_from(&heading.description);
        let side = 72.0 * measures.unit;
        let end = 24.0 * measures.unit;
        let body = Rect::new(side, end, scene.width - side, scene.height - end);
        let mut frame = Self {
            scene,
            colours,
            measures,
            body,
            beyond: heading.beyond.clone(),
            left_out: heading.left_out.clone(),
        };
        let kept =
            |what: LeftOff, words: &str| (!left_off.contains(&what)).then(|| words.to_owned());
        frame.draw_title(&heading.title);
        frame.draw_subtitle(&kept(LeftOff::Subtitle, &heading.subtitle).unwrap_or_default());
        frame.draw_footnote(&kept(LeftOff::Note, &heading.footnote).unwrap_or_default());
        frame
    }

    /// The frame of the first of these, from everything to without note and subtitle, in which a chart leaves data
    /// their share of the height; the last one where none does.
    ///
    /// `plots` is the height that the chart gives to data in the body of a frame.
    #[must_use]
    pub fn roomy(look: Look, heading: &Heading, plots: impl Fn(&Self) -> f64) -> Self {
        let choices: [&[LeftOff]; 3] = [&[], &[LeftOff::Note], &[LeftOff::Note, LeftOff::Subtitle]];
        let mut frame = Self::new(look, heading);
        for left_off in choices {
            frame = Self::without(look, heading, left_off);
            let is_there = |what: &&LeftOff| match what {
                LeftOff::Note => !heading.footnote.trim().is_empty(),
                LeftOff::Subtitle => !heading.subtitle.trim().is_empty(),
                LeftOff::Poses => false,
            };
            frame.scene.left_off = left_off.iter().filter(is_there).copied().collect();
            if plots(&frame) >= DATA_SHARE * frame.scene.height {
                break;
            }
        }
        frame
    }

    /// Title at the top left, bold, at most two lines; made smaller before it is cut.
    fn draw_title(&mut self, title: &str) {
        if title.trim().is_empty() {
            return;
        }
        let size = self.measures.title;
        let width = self.body.width();
        // A little smaller on one line leaves the chart more room than two lines would.
        let one_line = lettering::fit(title, size, size * 0.75, Face::Bold, width, 1);
        let fitted = if one_line.lines.iter().any(|line| line.ends_with('…')) {
            lettering::fit(title, size * 0.86, size * 0.68, Face::Bold, width, 2)
        } else {
            one_line
        };
        self.draw_block(
            &fitted.lines,
            fitted.size,
            1.18,
            Face::Bold,
            self.colours.ink,
        );
    }

    fn draw_subtitle(&mut self, subtitle: &str) {
        if subtitle.trim().is_empty() {
            self.body.top += self.measures.gap;
            return;
        }
        let size = self.measures.subtitle;
        let fitted = lettering::fit(subtitle, size, size, Face::Regular, self.body.width(), 2);
        self.body.top += 0.1 * size;
        let muted = self.colours.muted;
        self.draw_block(&fitted.lines, fitted.size, 1.22, Face::Regular, muted);
        self.body.top += 0.8 * self.measures.gap;
    }

    /// Lines from the top of the body, which begins below them afterwards.
    fn draw_block(
        &mut self,
        lines: &[String],
        size: f64,
        step: f64,
        face: Face,
        colour: crate::draw::Colour,
    ) {
        for line in lines {
            self.body.top += step * size;
            let at = [self.body.left, self.body.top - 0.26 * size];
            self.scene
                .text(Text::new(at, line.clone(), size, face, colour));
        }
    }

    fn draw_footnote(&mut self, footnote: &str) {
        if footnote.trim().is_empty() {
            return;
        }
        let size = self.measures.footnote;
        let fitted = lettering::fit(footnote, size, size, Face::Regular, self.body.width(), 2);
        let step = 1.18 * fitted.size;
        let mut y = self.body.bottom - lettering::fall(fitted.size);
        for line in fitted.lines.iter().rev() {
            let at = [self.body.left, y];
            let text = Text::new(
                at,
                line.clone(),
                fitted.size,
                Face::Regular,
                self.colours.muted,
            );
            self.scene.text(text);
            y -= step;
        }
        self.body.bottom -= step * fitted.lines.len() as f64 + 0.6 * self.measures.gap;
    }

    /// A thin line in the colour of axis lines.
    #[must_use]
    pub fn rule(&self) -> Stroke {
        Stroke::solid(self.colours.rule, self.measures.rule)
    }

    /// A level text in the size and colour of axis text.
    #[must_use]
    pub fn axis_text(&self, at: PixelPoint, content: &str) -> Text {
        Text::new(
            at,
            content,
            self.measures.text,
            Face::Regular,
            self.colours.muted,
        )
    }
}
