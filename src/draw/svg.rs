//! A scene as SVG text: drawn by plotters on a grid of eighths of a pixel, letters kept as text.
//!
//! In: a [`Scene`]. Out: a self-contained SVG file with `<title>` and `<desc>`, byte for byte the
//! same each time. plotters counts whole pixels, so the picture is drawn eight times as large and
//! shown at its nominal size; round joints, which plotters cannot ask for, are set once on the root.

use super::colour::Colour;
use super::lettering::FAMILY;
use super::metadata::metadata_element;
use super::scene::{PixelPoint, Primitive, Rect, Scene, Stroke, Text, TextAnchor};
use crate::error::{Error, PictureFault, Result};
use plotters::backend::{DrawingBackend, SVGBackend};
use plotters::style::text_anchor::{HPos, Pos, VPos};
use plotters::style::{IntoFont, IntoTextStyle, RGBAColor, ShapeStyle};
use std::fmt::Write as _;

/// Grid steps a pixel: coordinates are kept to 0.125 px.
const GRID: f64 = 8.0;

/// plotters writes font sizes divided by this (plotters-svg 0.3.7, `draw_text`).
const BACKEND_FONT_DIVISOR: f64 = 1.24;

/// Drop of the baseline below the point, in em, for texts that hang from their point
/// (plotters-svg 0.3.7 writes `dy="0.76em"` for them).
const HANGING_EM: f64 = 0.76;

/// The scene as an SVG file whose letters are kept as text.
///
/// # Errors
/// If the canvas has no area or is larger than the format's grid allows.
pub fn svg(scene: &Scene) -> Result<String> {
    let body = elements(scene, |backend| {
        draw_ground(backend, scene)?;
        scene
            .shapes
            .iter()
            .try_for_each(|shape| draw(backend, shape))
    })?;
    let head = root(scene);
    Ok(format!("{head}{body}</svg>\n"))
}

/// The same with a named group for every layer, from the bottom up: `axis-1`, `curve-2`, …, for whoever shows one after
/// the other. In a document with several pictures the names would stand more than once.
///
/// # Errors
/// As [`svg()`].
pub fn layered_svg(scene: &Scene) -> Result<String> {
    let mut body = elements(scene, |backend| draw_ground(backend, scene))?;
    let runs = scene.layers.chunk_by(|a, b| a == b);
    let mut shapes = scene.shapes.iter();
    for (index, run) in runs.enumerate() {
        let of_run = &mut shapes.by_ref().take(run.len());
        let name = run[0].name();
        let inside = elements(scene, |backend| {
            of_run.try_for_each(|shape| draw(backend, shape))
        })?;
        let _ = writeln!(body, "<g id=\"{name}-{}\">\n{inside}</g>", index + 1);
    }
    let head = root(scene);
    Ok(format!("{head}{body}</svg>\n"))
}

/// The root element with the nominal size, then title and description.
fn root(scene: &Scene) -> String {
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{}\" height=\"{}\" viewBox=\"0 0 {} {}\" \
         role=\"img\" stroke-linejoin=\"round\" stroke-linecap=\"round\">\n{}",
        scene.width,
        scene.height,
        scene.width * GRID,
        scene.height * GRID,
        title_and_description(scene)
    )
}

/// Elements that name and describe the picture, and what it carries about itself.
pub(super) fn title_and_description(scene: &Scene) -> String {
    format!(
        "<title>{}</title>\n<desc>{}</desc>\n{}",
        escaped(&scene.title),
        escaped(&scene.description),
        metadata_element(&scene.metadata)
    )
}

fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '&' => safe.push_str("&amp;"),
            '\n' | '\t' => safe.push(' '),
            // XML 1.0 knows no other control characters, not even escaped.
            control if control.is_control() => {}
            other => safe.push(other),
        }
    }
    safe
}

/// What plotters writes for some drawing, without its own root.
fn elements(scene: &Scene, drawing: impl FnOnce(&mut SVGBackend) -> Result<()>) -> Result<String> {
    let size = (grid_extent(scene.width)?, grid_extent(scene.height)?);
    let mut written = String::new();
    {
        let mut backend = SVGBackend::with_string(&mut written, size);
        drawing(&mut backend)?;
        backend.present().map_err(unwritable)?;
    }
    let start = written.find(">\n").map_or(0, |index| index + 2);
    let end = written.rfind("</svg>").unwrap_or(written.len());
    Ok(written[start..end].to_owned())
}

fn grid_extent(pixels: f64) -> Result<u32> {
    if (1.0..=100_000.0).contains(&pixels) {
        Ok((pixels * GRID).round() as u32)
    } else {
        Err(Error::bad(PictureFault::NoExtent { pixels }))
    }
}

fn unwritable(fault: impl std::fmt::Display) -> Error {
    Error::no_answer(PictureFault::Unwritable(fault.to_string()))
}

fn draw_ground(backend: &mut SVGBackend, scene: &Scene) -> Result<()> {
    draw_rectangle(backend, &scene.canvas(), scene.background)
}

fn draw(backend: &mut SVGBackend, shape: &Primitive) -> Result<()> {
    match shape {
        Primitive::Polyline { points, stroke } => draw_polyline(backend, points, stroke),
        Primitive::Polygon { points, fill } => draw_polygon(backend, points, *fill),
        Primitive::Rectangle { area, fill } => draw_rectangle(backend, area, *fill),
        Primitive::Disc {
            centre,
            radius,
            fill,
        } => backend
            .draw_circle(grid(*centre), steps(*radius), &filled(*fill), true)
            .map_err(unwritable),
        Primitive::Ring {
            centre,
            radius,
            stroke,
        } => backend
            .draw_circle(grid(*centre), steps(*radius), &lined(stroke), false)
            .map_err(unwritable),
        Primitive::Text(text) => draw_text(backend, text),
    }
}

fn draw_polyline(backend: &mut SVGBackend, points: &[PixelPoint], stroke: &Stroke) -> Result<()> {
    for piece in dashed(points, stroke) {
        backend
            .draw_path(piece.iter().map(|point| grid(*point)), &lined(stroke))
            .map_err(unwritable)?;
    }
    Ok(())
}

fn draw_polygon(backend: &mut SVGBackend, points: &[PixelPoint], fill: Colour) -> Result<()> {
    backend
        .fill_polygon(points.iter().map(|point| grid(*point)), &filled(fill))
        .map_err(unwritable)
}

fn draw_rectangle(backend: &mut SVGBackend, area: &Rect, fill: Colour) -> Result<()> {
    backend
        .draw_rect(
            grid([area.left, area.top]),
            grid([area.right, area.bottom]),
            &filled(fill),
            true,
        )
        .map_err(unwritable)
}

fn draw_text(backend: &mut SVGBackend, text: &Text) -> Result<()> {
    let size = backend_font_size(text.size * GRID);
    let across = match text.anchor {
        TextAnchor::Start => HPos::Left,
        TextAnchor::Middle => HPos::Center,
        TextAnchor::End => HPos::Right,
    };
    let hang = HANGING_EM * text.size;
    let at = [text.at[0], text.at[1] - hang];
    let colour = rgba(text.colour);
    let style = (FAMILY, size)
        .into_font()
        .style(text.face.style())
        .into_text_style(&(1, 1))
        .color(&colour)
        .pos(Pos::new(across, VPos::Top));
    backend
        .draw_text(&without_controls(&text.content), &style, grid(at))
        .map_err(unwritable)
}

/// The size to hand over so that a size of at most two decimals is written: the nearest hundredth
/// that survives the division exactly.
fn backend_font_size(size: f64) -> f64 {
    let hundredths = (size * 100.0).round();
    [0.0, 1.0, -1.0, 2.0, -2.0, 3.0, -3.0]
        .into_iter()
        .map(|more| (hundredths + more) / 100.0)
        .find_map(|wanted| {
            let near = wanted * BACKEND_FONT_DIVISOR;
            [near, near.next_up(), near.next_down()]
                .into_iter()
                .find(|size| size / BACKEND_FONT_DIVISOR == wanted)
        })
        .unwrap_or(size * BACKEND_FONT_DIVISOR)
}

fn without_controls(text: &str) -> String {
    text.chars().filter(|letter| !letter.is_control()).collect()
}

fn grid(point: PixelPoint) -> (i32, i32) {
    // `as` saturates, so a point far outside stays far outside.
    (
        (point[0] * GRID).round() as i32,
        (point[1] * GRID).round() as i32,
    )
}

fn steps(pixels: f64) -> u32 {
    (pixels * GRID).round().max(1.0) as u32
}

fn rgba(colour: Colour) -> RGBAColor {
    RGBAColor(colour.red, colour.green, colour.blue, colour.opacity)
}

fn filled(colour: Colour) -> ShapeStyle {
    ShapeStyle {
        color: rgba(colour),
        filled: true,
        stroke_width: 0,
    }
}

fn lined(stroke: &Stroke) -> ShapeStyle {
    ShapeStyle {
        color: rgba(stroke.colour),
        filled: false,
        stroke_width: steps(stroke.width),
    }
}

/// The line cut into its dashes; one piece for a solid line.
///
/// Round ends add a width to each dash, so each dash is drawn shorter by that and a dash of nearly
/// no length is a dot.
fn dashed(points: &[PixelPoint], stroke: &Stroke) -> Vec<Vec<PixelPoint>> {
    let period: f64 = stroke.dashes.iter().sum();
    if period <= 0.0 || points.len() < 2 {
        return vec![points.to_vec()];
    }
    let mut pattern = stroke.dashes.iter().copied().enumerate().cycle();
    let (mut place, mut left) = pattern.next().unwrap_or((0, f64::INFINITY));
    let mut pieces: Vec<Vec<PixelPoint>> = vec![vec![points[0]]];
    for pair in points.windows(2) {
        let length = (pair[1][0] - pair[0][0]).hypot(pair[1][1] - pair[0][1]);
        let mut done = 0.0;
        while length - done > left {
            done += left;
            let share = done / length;
            let at = [
                pair[0][0] + share * (pair[1][0] - pair[0][0]),
                pair[0][1] + share * (pair[1][1] - pair[0][1]),
            ];
            end_stretch(&mut pieces, place, at);
            (place, left) = pattern.next().unwrap_or((0, f64::INFINITY));
        }
        left -= length - done;
        if place.is_multiple_of(2)
            && let Some(piece) = pieces.last_mut()
        {
            piece.push(pair[1]);
        }
    }
    pieces.retain(|piece| piece.len() > 1);
    pieces
}

/// Ends a dash (even place in the pattern) at the point, or begins one after a gap.
fn end_stretch(pieces: &mut Vec<Vec<PixelPoint>>, place: usize, at: PixelPoint) {
    if place.is_multiple_of(2) {
        if let Some(piece) = pieces.last_mut() {
            piece.push(at);
        }
    } else {
        pieces.push(vec![at]);
    }
}
