//! Pictures that know no body: scene, scales, lettering, SVG and PNG.
//!
//! In: shapes and plain numbers. Out: a [`Scene`] and the files made of it. One scene makes both
//! files, so PNG and SVG are the same picture.

pub mod contour;
pub mod lettering;
pub mod palette;
mod png;
mod ramp;
pub mod scale;
mod scene;
mod svg;

pub use lettering::Face;
pub use palette::{Colour, Colours, Theme};
pub use png::png;
pub use ramp::ramp;
pub use scene::{Anchor, Point, Rect, Scene, Shape, Stroke, Text, TextBox, Turn, text_boxes};
pub use svg::{Letters, svg};
