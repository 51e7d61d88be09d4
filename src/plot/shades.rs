//! Shaded stretches of the level axis, named above the plot.
//!
//! In: stretches of data. Out: a tinted ground behind the curves and a label on top of it.

use super::axis::Plot;
use super::frame::Frame;
use super::placing::spread;
use super::words::WordBlock;
use crate::draw::{Face, Layer, Rect, TextAnchor};

/// A shaded stretch of the level axis.
#[derive(Debug, Clone, PartialEq)]
pub struct Shade {
    /// Where it begins.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
    /// What it is: "Sticking region".
    pub label: String,
    /// Whether it is the stretch in which a lift is hard: it alone is amber, any other is grey.
    pub is_hard: bool,
    /// Whether it is only named, without a ground.
    pub is_bare: bool,
}

impl Shade {
    /// A stretch that is told apart and not hard, between two places in either order.
    #[must_use]
    pub fn neutral(ends: [f64; 2], label: impl Into<String>) -> Self {
        Self {
            is_hard: false,
            ..Self::between(ends, label)
        }
    }

    /// A stretch that is named and has no ground, between two places in either order.
    #[must_use]
    pub fn bare(ends: [f64; 2], label: impl Into<String>) -> Self {
        Self {
            is_bare: true,
            ..Self::neutral(ends, label)
        }
    }

    /// The stretch in which a lift is hard, between two places in either order.
    #[must_use]
    pub fn between(ends: [f64; 2], label: impl Into<String>) -> Self {
        Self {
            from: ends[0].min(ends[1]),
            to: ends[0].max(ends[1]),
            label: label.into(),
            is_hard: true,
            is_bare: false,
        }
    }
}

/// Least width of a stretch over the size of type: a hair's breadth is not seen from the back of a room (assumed).
const LEAST_WIDTH: f64 = 0.2;

/// Opacity of the grid's colour where a stretch is not hard: lines of the grid are still seen on it; assumed.
const NEUTRAL: f64 = 0.6;

/// The stretch in pixels, wide enough to be seen and inside the plot; none if nothing of it is inside.
fn stretch(frame: &Frame, shade: &Shade, plot: &Plot) -> Option<[f64; 2]> {
    let [from, to] = plot.stretch_px([shade.from, shade.to]);
    let least = LEAST_WIDTH * frame.measures.text;
    if !(from.is_finite() && to.is_finite()) || to < from {
        return None;
    }
    let more = ((least - (to - from)) / 2.0).max(0.0);
    let (left, right) = (plot.area.left, plot.area.right);
    let aside = (left - (from - more)).max(0.0) - (to + more - right).max(0.0);
    let aside = if more > 0.0 { aside } else { 0.0 };
    Some([from - more + aside, to + more + aside])
}

/// The upright edges of all stretches inside the plot, pixels.
#[must_use]
pub fn edges(frame: &Frame, shades: &[Shade], plot: &Plot) -> Vec<f64> {
    let stretches = shades
        .iter()
        .filter_map(|shade| stretch(frame, shade, plot));
    let inside = |x: &f64| *x > plot.area.left + 1.0 && *x < plot.area.right - 1.0;
    stretches.flatten().filter(inside).collect()
}

/// Tints the stretches over the plot.
pub fn draw_ground(frame: &mut Frame, shades: &[Shade], plot: &Plot) {
    let before = frame.scene.begin(Layer::Region);
    for shade in shades.iter().filter(|shade| !shade.is_bare) {
        if let Some([from, to]) = stretch(frame, shade, plot) {
            let area = Rect::new(from, plot.area.top, to, plot.area.bottom);
            let fill = if shade.is_hard {
                frame.colours.shade
            } else {
                frame.colours.grid.with_opacity(NEUTRAL)
            };
            frame.scene.rectangle(area, fill);
        }
    }
    frame.scene.begin(before);
}

/// The labels with their boxes, centred on their stretches, clear of each other, on the canvas.
#[must_use]
pub fn label_boxes(
    frame: &Frame,
    shades: &[Shade],
    plot: &Plot,
    row: Rect,
) -> Vec<(Rect, WordBlock)> {
    let most = row.width() / shades.len().max(1) as f64 - frame.measures.gap;
    let mut named: Vec<(f64, WordBlock)> = shades
        .iter()
        .filter(|shade| !shade.label.is_empty())
        .filter_map(|shade| {
            let [from, to] = stretch(frame, shade, plot)?;
            let colour = if shade.is_hard {
                frame.colours.shade_text
            } else {
                frame.colours.muted
            };
            let words =
                WordBlock::new(frame.measures.text).with(&shade.label, Face::Bold, colour, most, 1);
            Some(((from + to) / 2.0, words))
        })
        .collect();
    named.sort_by(|a, b| a.0.total_cmp(&b.0));
    let wanted: Vec<f64> = named.iter().map(|(middle, _)| *middle).collect();
    let extents: Vec<f64> = named
        .iter()
        .map(|(_, words)| words.width() + frame.measures.gap)
        .collect();
    let middles = spread(&wanted, &extents, row.left, row.right);
    let y = row.centre()[1];
    named
        .into_iter()
        .zip(middles)
        .map(|((_, words), middle)| (words.around(middle, y), words))
        .collect()
}

/// Writes the labels into their row.
pub fn draw_labels(frame: &mut Frame, shades: &[Shade], plot: &Plot, row: Rect) {
    let before = frame.scene.begin(Layer::Label);
    for (area, words) in label_boxes(frame, shades, plot, row) {
        words.draw(&mut frame.scene, &area, TextAnchor::Middle);
    }
    frame.scene.begin(before);
}
