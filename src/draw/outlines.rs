//! Letters as shapes: the SVG of a scene read back with the bundled font and written without text.
//!
//! In: a [`Scene`]. Out: a file that looks the same everywhere, and the parsed picture for the writer of pixels.

use super::lettering::{BOLD_TTF, FAMILY, REGULAR_TTF};
use super::scene::Scene;
use super::svg::{layered_svg, title_and_description};
use crate::error::{Error, PictureFault, Result};
use resvg::usvg;
use std::sync::{Arc, OnceLock};

/// Reader settings with the bundled faces only.
fn options() -> usvg::Options<'static> {
    static FONTS: OnceLock<Arc<usvg::fontdb::Database>> = OnceLock::new();
    let fonts = FONTS.get_or_init(|| {
        let mut fonts = usvg::fontdb::Database::new();
        fonts.load_font_data(REGULAR_TTF.to_vec());
        fonts.load_font_data(BOLD_TTF.to_vec());
        Arc::new(fonts)
    });
    usvg::Options {
        font_family: FAMILY.to_owned(),
        fontdb: Arc::clone(fonts),
        ..usvg::Options::default()
    }
}

/// The parsed picture.
///
/// # Errors
/// If the scene cannot be written, or what was written cannot be read.
pub(super) fn tree(scene: &Scene) -> Result<usvg::Tree> {
    usvg::Tree::from_str(&layered_svg(scene)?, &options())
        .map_err(|fault| Error::no_answer(PictureFault::Unreadable(fault.to_string())))
}

/// The scene as an SVG file with every letter drawn as a shape and every layer named: it looks the same everywhere.
///
/// # Errors
/// If the canvas has no area or is larger than the format's grid allows.
pub fn outlined_svg(scene: &Scene) -> Result<String> {
    let written = tree(scene)?.to_string(&usvg::WriteOptions {
        preserve_text: false,
        coordinates_precision: 1,
        transforms_precision: 5,
        indent: usvg::Indent::None,
        ..usvg::WriteOptions::default()
    });
    let start = written.find('>').map_or(0, |index| index + 1);
    let head = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}\" height=\"{1}\" viewBox=\"0 0 {0} {1}\" \
         role=\"img\">\n{2}",
        scene.width,
        scene.height,
        title_and_description(scene)
    );
    Ok(format!("{head}{}\n", &written[start..]))
}
