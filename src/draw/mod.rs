//! Pictures that know no body: scene, scales, lettering, SVG and PNG.
//!
//! In: shapes and plain numbers. Out: a [`Scene`] and the files made of it. One scene makes both
//! files, so PNG and SVG are the same picture. Only `outlines` and `png` need the rasteriser's library.

pub mod build_up;
pub mod colour;
pub mod contour;
pub mod lettering;
pub mod metadata;
#[cfg(feature = "program")]
mod outlines;
pub mod palette;
#[cfg(feature = "program")]
mod png;
pub mod ramp;
pub mod scale;
pub mod scene;
mod svg;

pub use build_up::build_up;
pub use colour::{Colour, contrast};
pub use lettering::Face;
#[cfg(feature = "program")]
pub use metadata::metadata;
#[cfg(feature = "program")]
pub use outlines::outlined_svg;
pub use palette::{Colours, Theme};
#[cfg(feature = "program")]
pub use png::png;
pub use ramp::ramp;
pub use scene::{Layer, PixelPoint, Primitive, Rect, Scene, Stroke, Text, TextAnchor};
pub use svg::{layered_svg, svg};
