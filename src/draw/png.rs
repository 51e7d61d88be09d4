//! A scene as PNG: the very SVG of [`super::svg()`], rasterised with the bundled font only.
//!
//! In: a [`Scene`] and a factor. Out: the bytes of a PNG file, the same each time.

use super::metadata::METADATA;
use super::outlines::tree;
use super::scene::Scene;
use crate::error::{Error, PictureFault, Result};
use resvg::tiny_skia::{Pixmap, Transform};

/// Most pixels a side; 16 times a lecture slide's width would be past it.
const MOST_PIXELS: f64 = 16_384.0;

/// The scene as the bytes of a PNG file, `factor` pixels for each pixel of the scene.
///
/// # Errors
/// If the picture would have no pixels or more than 16 384 on a side.
pub fn png(scene: &Scene, factor: f64) -> Result<Vec<u8>> {
    let (width, height) = (extent(scene.width, factor)?, extent(scene.height, factor)?);
    let tree = tree(scene)?;
    let mut pixels = Pixmap::new(width, height)
        .ok_or_else(|| Error::no_answer(PictureFault::NoMemory { width, height }))?;
    let transform = Transform::from_scale(factor as f32, factor as f32);
    resvg::render(&tree, transform, &mut pixels.as_mut());
    encoded(&pixels, &scene.metadata)
}

fn extent(pixels: f64, factor: f64) -> Result<u32> {
    let extent = (pixels * factor).round();
    if (1.0..=MOST_PIXELS).contains(&extent) {
        Ok(extent as u32)
    } else {
        Err(Error::bad(PictureFault::NoPixels { pixels, factor }))
    }
}

/// The pixels as an opaque 8-bit PNG: every scene covers its ground, so no transparency is kept.
fn encoded(pixels: &Pixmap, metadata: &str) -> Result<Vec<u8>> {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, pixels.width(), pixels.height());
    encoder.set_color(png::ColorType::Rgb);
    encoder.set_depth(png::BitDepth::Eight);
    encoder.set_compression(png::Compression::Fast);
    if !metadata.is_empty() {
        let chunk = encoder.add_text_chunk(METADATA.to_owned(), metadata.to_owned());
        chunk.map_err(unwritable)?;
    }
    let opaque: Vec<u8> = pixels
        .data()
        .chunks_exact(4)
        .flat_map(|pixel| [pixel[0], pixel[1], pixel[2]])
        .collect();
    let mut writer = encoder.write_header().map_err(unwritable)?;
    writer.write_image_data(&opaque).map_err(unwritable)?;
    writer.finish().map_err(unwritable)?;
    Ok(bytes)
}

fn unwritable(fault: png::EncodingError) -> Error {
    Error::no_answer(PictureFault::UnwritablePng(fault.to_string()))
}
