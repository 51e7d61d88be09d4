//! The scene: a picture as a list of shapes in pixels, which knows no device and no file format.
//!
//! In: shapes from whoever draws. Out: the same shapes, in the order of drawing, for the writers
//! ([`super::svg()`], [`super::png()`]). The origin is the top left
//! corner, x to the right, y downwards.

use super::colour::Colour;
use super::lettering::{self, Face};
use crate::error::LeftOff;

/// A point in pixels: x to the right, y downwards.
pub type PixelPoint = [f64; 2];

/// An upright rectangle in pixels.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rect {
    /// Left edge.
    pub left: f64,
    /// Upper edge.
    pub top: f64,
    /// Right edge.
    pub right: f64,
    /// Lower edge.
    pub bottom: f64,
}

impl Rect {
    /// A rectangle from its four edges.
    #[must_use]
    pub const fn new(left: f64, top: f64, right: f64, bottom: f64) -> Self {
        Self {
            left,
            top,
            right,
            bottom,
        }
    }

    /// Extent from left to right.
    #[must_use]
    pub fn width(&self) -> f64 {
        self.right - self.left
    }

    /// Extent from top to bottom.
    #[must_use]
    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }

    /// The middle.
    #[must_use]
    pub fn centre(&self) -> PixelPoint {
        [
            (self.left + self.right) / 2.0,
            (self.top + self.bottom) / 2.0,
        ]
    }

    /// The same rectangle, larger by `by` on each side (smaller if negative).
    #[must_use]
    pub fn grown(&self, by: f64) -> Self {
        Self::new(
            self.left - by,
            self.top - by,
            self.right + by,
            self.bottom + by,
        )
    }

    /// The same rectangle moved.
    #[must_use]
    pub fn moved(&self, dx: f64, dy: f64) -> Self {
        Self::new(
            self.left + dx,
            self.top + dy,
            self.right + dx,
            self.bottom + dy,
        )
    }

    /// Whether the two share some area.
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    /// Whether `other` lies wholly inside, edges included.
    #[must_use]
    pub fn contains(&self, other: &Self) -> bool {
        other.left >= self.left
            && other.right <= self.right
            && other.top >= self.top
            && other.bottom <= self.bottom
    }

    /// Whether the point lies inside, edges included.
    #[must_use]
    pub fn holds(&self, point: PixelPoint) -> bool {
        point[0] >= self.left
            && point[0] <= self.right
            && point[1] >= self.top
            && point[1] <= self.bottom
    }
}

/// How a line is drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct Stroke {
    /// Colour with opacity.
    pub colour: Colour,
    /// Width in pixels.
    pub width: f64,
    /// Lengths of dash, gap, dash, gap… in pixels; empty for a solid line.
    pub dashes: Vec<f64>,
}

impl Stroke {
    /// A solid line.
    #[must_use]
    pub fn solid(colour: Colour, width: f64) -> Self {
        Self {
            colour,
            width,
            dashes: Vec::new(),
        }
    }

    /// The same line with a dash pattern given in multiples of the line's width.
    #[must_use]
    pub fn dashed(mut self, pattern: &[f64]) -> Self {
        self.dashes = pattern.iter().map(|length| length * self.width).collect();
        self
    }
}

/// Where a text stands relative to its point, along its reading direction.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TextAnchor {
    /// The text begins at the point.
    Start,
    /// The text is centred on the point.
    Middle,
    /// The text ends at the point.
    End,
}

/// One line of text.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// The point on the baseline.
    pub at: PixelPoint,
    /// What is written; one line.
    pub content: String,
    /// Size of the type (one em) in pixels.
    pub size: f64,
    /// Regular or bold.
    pub face: Face,
    /// Colour.
    pub colour: Colour,
    /// Where the text stands relative to its point.
    pub anchor: TextAnchor,
}

impl Text {
    /// A level text that begins at the point.
    #[must_use]
    pub fn new(
        at: PixelPoint,
        content: impl Into<String>,
        size: f64,
        face: Face,
        colour: Colour,
    ) -> Self {
        Self {
            at,
            content: content.into(),
            size,
            face,
            colour,
            anchor: TextAnchor::Start,
        }
    }

    /// The same text with another anchor.
    #[must_use]
    pub fn anchored(mut self, anchor: TextAnchor) -> Self {
        self.anchor = anchor;
        self
    }

    /// The rectangle from the top of the capitals' accents to the bottom of the descenders.
    #[must_use]
    pub fn bounds(&self) -> Rect {
        let width = lettering::width(&self.content, self.size, self.face);
        let before = match self.anchor {
            TextAnchor::Start => 0.0,
            TextAnchor::Middle => width / 2.0,
            TextAnchor::End => width,
        };
        let rise = lettering::rise(self.size);
        let fall = lettering::fall(self.size);
        let [x, y] = self.at;
        Rect::new(x - before, y - rise, x - before + width, y + fall)
    }
}

/// One thing that is drawn.
#[derive(Debug, Clone, PartialEq)]
pub enum Primitive {
    /// An open line through points, with round joints.
    Polyline {
        /// The points in order.
        points: Vec<PixelPoint>,
        /// How it is drawn.
        stroke: Stroke,
    },
    /// A filled area inside a closed line.
    Polygon {
        /// The corners in order.
        points: Vec<PixelPoint>,
        /// Its colour with opacity.
        fill: Colour,
    },
    /// A filled upright rectangle.
    Rectangle {
        /// Its edges.
        area: Rect,
        /// Its colour with opacity.
        fill: Colour,
    },
    /// A filled disc.
    Disc {
        /// Its middle.
        centre: PixelPoint,
        /// Its radius in pixels.
        radius: f64,
        /// Its colour with opacity.
        fill: Colour,
    },
    /// A circle's line.
    Ring {
        /// Its middle.
        centre: PixelPoint,
        /// Radius of the line's middle in pixels.
        radius: f64,
        /// How it is drawn; dashes are ignored.
        stroke: Stroke,
    },
    /// One line of text.
    Text(Text),
}

/// What a shape is part of: tests measure by it, and a picture that is built up step by step shows one after the other.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Layer {
    /// Titles and notes around the chart.
    #[default]
    Heading,
    /// Shaded stretches and fields of colour.
    Region,
    /// Axes, grid, ticks and their words.
    Axis,
    /// Bodies, implements and what else is drawn as it looks.
    Pose,
    /// Curves, bars and points of data.
    Curve,
    /// Thin lines from words to what they speak of.
    Leader,
    /// Words inside the chart, with the patches below them.
    Label,
}

impl Layer {
    /// Its name in a file.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Heading => "heading",
            Self::Region => "region",
            Self::Axis => "axis",
            Self::Pose => "pose",
            Self::Curve => "curve",
            Self::Leader => "leader",
            Self::Label => "label",
        }
    }
}

/// A picture.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// Width in pixels.
    pub width: f64,
    /// Height in pixels.
    pub height: f64,
    /// Colour of the ground.
    pub background: Colour,
    /// What the picture is, in a few words; becomes the file's title.
    pub title: String,
    /// What the picture shows, for those who cannot see it; becomes the file's description.
    pub description: String,
    /// What the file carries about itself, unseen: ASCII without control characters; may be empty.
    pub metadata: String,
    /// The shapes in the order of drawing: later ones cover earlier ones.
    pub shapes: Vec<Primitive>,
    /// What each shape is part of, in the same order.
    pub layers: Vec<Layer>,
    /// The rectangles in which data are drawn.
    pub plots: Vec<Rect>,
    /// What found no room at this size.
    pub left_off: Vec<LeftOff>,
    /// What the shapes that come next are part of.
    layer: Layer,
}

impl Scene {
    /// An empty picture.
    #[must_use]
    pub fn new(width: f64, height: f64, background: Colour) -> Self {
        Self {
            width,
            height,
            background,
            title: String::new(),
            description: String::new(),
            metadata: String::new(),
            shapes: Vec::new(),
            layers: Vec::new(),
            plots: Vec::new(),
            left_off: Vec::new(),
            layer: Layer::default(),
        }
    }

    /// Says what the shapes that come next are part of; returns what the last ones were.
    pub fn begin(&mut self, layer: Layer) -> Layer {
        std::mem::replace(&mut self.layer, layer)
    }

    fn push(&mut self, shape: Primitive) {
        self.shapes.push(shape);
        self.layers.push(self.layer);
    }

    /// The whole canvas.
    #[must_use]
    pub fn canvas(&self) -> Rect {
        Rect::new(0.0, 0.0, self.width, self.height)
    }

    /// Adds a line through points.
    pub fn polyline(&mut self, points: Vec<PixelPoint>, stroke: Stroke) {
        self.push(Primitive::Polyline { points, stroke });
    }

    /// Adds a straight line.
    pub fn line(&mut self, from: PixelPoint, to: PixelPoint, stroke: Stroke) {
        self.polyline(vec![from, to], stroke);
    }

    /// Adds a filled area.
    pub fn polygon(&mut self, points: Vec<PixelPoint>, fill: Colour) {
        self.push(Primitive::Polygon { points, fill });
    }

    /// Adds a filled rectangle.
    pub fn rectangle(&mut self, area: Rect, fill: Colour) {
        self.push(Primitive::Rectangle { area, fill });
    }

    /// Adds a filled rectangle with round corners.
    pub fn rounded_rectangle(&mut self, area: Rect, radius: f64, fill: Colour) {
        let radius = radius.min(area.width() / 2.0).min(area.height() / 2.0);
        let corners = [
            ([area.right - radius, area.top + radius], -90.0_f64),
            ([area.right - radius, area.bottom - radius], 0.0),
            ([area.left + radius, area.bottom - radius], 90.0),
            ([area.left + radius, area.top + radius], 180.0),
        ];
        let mut points = Vec::with_capacity(28);
        for (centre, first_deg) in corners {
            for step in 0..=6 {
                let angle_rad = (first_deg + f64::from(step) * 15.0).to_radians();
                points.push([
                    centre[0] + radius * angle_rad.cos(),
                    centre[1] + radius * angle_rad.sin(),
                ]);
            }
        }
        self.polygon(points, fill);
    }

    /// Adds a filled disc.
    pub fn disc(&mut self, centre: PixelPoint, radius: f64, fill: Colour) {
        self.push(Primitive::Disc {
            centre,
            radius,
            fill,
        });
    }

    /// Adds a circle's line.
    pub fn ring(&mut self, centre: PixelPoint, radius: f64, stroke: Stroke) {
        self.push(Primitive::Ring {
            centre,
            radius,
            stroke,
        });
    }

    /// Adds a line of text.
    pub fn text(&mut self, text: Text) {
        if !text.content.trim().is_empty() {
            self.push(Primitive::Text(text));
        }
    }
}
