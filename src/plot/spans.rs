//! Stretches of the level axis as bars along the bottom of a panel, one under the other, each named beside it.
//!
//! In: [`Span`]s and the panel's scales. Out: bars in the colour of their curve, and the boxes of their
//! names, which other labels keep clear of. Bars do not cover each other as shaded grounds would.

use super::axis::Plot;
use super::frame::Frame;
use super::panel_contents::Span;
use super::words::WordBlock;
use crate::draw::{Colour, Face, Layer, Rect, TextAnchor, lettering};

/// A span's place: its bar and its name.
struct SpanRow {
    bar: Rect,
    name: Rect,
    words: WordBlock,
}

/// Height that the spans take from the bottom of a panel, pixels.
#[must_use]
pub fn height(frame: &Frame, spans: &[Span]) -> f64 {
    if spans.is_empty() {
        0.0
    } else {
        spans.len() as f64 * row_height(frame) + frame.measures.gap
    }
}

fn row_height(frame: &Frame) -> f64 {
    lettering::line_step(frame.measures.text)
}

fn rows(frame: &Frame, spans: &[Span], plot: &Plot) -> Vec<SpanRow> {
    let step = row_height(frame);
    let top = plot.area.bottom - height(frame, spans) + 0.5 * frame.measures.gap;
    spans
        .iter()
        .enumerate()
        .filter_map(|(index, span)| {
            let ends = visible(span, plot)?;
            let middle = top + (index as f64 + 0.5) * step;
            Some(row(frame, span, plot, ends, middle))
        })
        .collect()
}

/// The ends of a span in pixels, cut to the plot; none if they are no numbers.
fn visible(span: &Span, plot: &Plot) -> Option<[f64; 2]> {
    let (left, right) = (plot.area.left, plot.area.right);
    let ends = plot.stretch_px([span.from, span.to]);
    let [from, to] = ends.map(|end| end.clamp(left, right));
    let to = to.max(from + 3.0);
    (from.is_finite() && to.is_finite()).then_some([from, to])
}

/// A bar with its name on the side that has more room, or inside.
fn row(frame: &Frame, span: &Span, plot: &Plot, [from, to]: [f64; 2], middle: f64) -> SpanRow {
    let step = row_height(frame);
    let gap = frame.measures.gap;
    let (before, behind) = (from - plot.area.left, plot.area.right - to);
    let room = behind.max(before) - 2.0 * gap;
    let inside = to - from - 2.0 * gap;
    let colour = span.role.label(&frame.colours);
    let beside = fitted(frame, &span.label, colour, room.max(0.0));
    // A long bar leaves no room beside it, but has it inside.
    let (words, x, half) = if beside.is_cut() && inside > room {
        let words = fitted(frame, &span.label, frame.colours.ink, inside);
        (words, f64::midpoint(from, to), 0.46 * step)
    } else {
        let x = if behind >= before {
            to + gap + beside.width() / 2.0
        } else {
            from - gap - beside.width() / 2.0
        };
        (beside, x, 0.28 * step)
    };
    SpanRow {
        bar: Rect::new(from, middle - half, to, middle + half),
        name: words.around(x, middle),
        words,
    }
}

/// The name on one line.
fn fitted(frame: &Frame, label: &str, colour: Colour, most: f64) -> WordBlock {
    WordBlock::new(frame.measures.text).with(label, Face::Regular, colour, most, 1)
}

/// Boxes of bars and names, which no other label may touch.
#[must_use]
pub fn boxes(frame: &Frame, spans: &[Span], plot: &Plot) -> Vec<Rect> {
    rows(frame, spans, plot)
        .into_iter()
        .flat_map(|row| [row.bar, row.name])
        .collect()
}

/// Draws bars and names.
pub fn draw(frame: &mut Frame, spans: &[Span], plot: &Plot) {
    let before = frame.scene.begin(Layer::Label);
    for (row, span) in rows(frame, spans, plot).into_iter().zip(spans) {
        let colour = span.role.line(&frame.colours).with_opacity(0.55);
        frame
            .scene
            .rounded_rectangle(row.bar, 0.3 * row.bar.height(), colour);
        row.words
            .draw(&mut frame.scene, &row.name, TextAnchor::Middle);
    }
    frame.scene.begin(before);
}
