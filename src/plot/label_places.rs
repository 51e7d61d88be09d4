//! The places that a label may take: beside a curve, around a point, along a line.
//!
//! In: pixels of what is labelled and the size of the words. Out: places with their own cost; the
//! choice among them is made by [`super::placing`].

use super::axis::Plot;
use super::frame::Frame;
use super::placing::{LabelPlace, gap_between, squared_gap};
use super::words::WordBlock;
use crate::draw::{Face, PixelPoint, Rect};

/// Places along a curve that are tried.
const POSITIONS: usize = 40;
/// Share of the curve's length at which its name stands best: near the end.
const BEST_SHARE: f64 = 0.78;

/// Above, below, left and right of a curve, along its length.
#[must_use]
pub fn beside_curve(
    frame: &Frame,
    pieces: &[Vec<PixelPoint>],
    words: &WordBlock,
) -> Vec<LabelPlace> {
    let gap = frame.measures.gap * 0.9 + frame.measures.line / 2.0;
    let extent = [words.width(), words.height()];
    let points = evenly(pieces);
    let mut places = Vec::new();
    for (index, at) in points.iter().enumerate() {
        let share = index as f64 / (points.len().max(2) - 1) as f64;
        let cost = 30.0 * (share - BEST_SHARE).abs();
        for shift in [0.0, -0.35, 0.35] {
            let more = 6.0 * f64::abs(shift);
            let middle = at[0] + shift * extent[0];
            for area in above_and_below(&points, middle, extent, gap) {
                places.push(beside(area, *at, gap, cost + more));
            }
        }
        for area in left_and_right(&points, at[1], extent, gap) {
            places.push(beside(area, *at, gap, cost + 4.0));
        }
    }
    places
}

/// Rectangles above and below all points that a text around the middle would cover.
fn above_and_below(
    points: &[PixelPoint],
    middle: f64,
    [width, height]: [f64; 2],
    gap: f64,
) -> [Rect; 2] {
    let half = width / 2.0;
    let near = points
        .iter()
        .filter(|point| (point[0] - middle).abs() <= half + gap);
    let (high, low) = reach(near.map(|point| point[1]));
    let (left, right) = (middle - half, middle + half);
    [
        Rect::new(left, high - gap - height, right, high - gap),
        Rect::new(left, low + gap, right, low + gap + height),
    ]
}

/// Rectangles left and right of all points that a text at this height would cover.
fn left_and_right(points: &[PixelPoint], y: f64, [width, height]: [f64; 2], gap: f64) -> [Rect; 2] {
    let near = points
        .iter()
        .filter(|point| (point[1] - y).abs() <= height / 2.0 + gap);
    let (left, right) = reach(near.map(|point| point[0]));
    let (top, bottom) = (y - height / 2.0, y + height / 2.0);
    [
        Rect::new(left - gap - width, top, left - gap, bottom),
        Rect::new(right + gap, top, right + gap + width, bottom),
    ]
}

/// A place whose cost rises with its distance from the curve.
fn beside(area: Rect, target: PixelPoint, gap: f64, cost: f64) -> LabelPlace {
    let distance = gap_between(&area, target);
    LabelPlace {
        area,
        target,
        leader: false,
        cost: cost + 8.0 * (distance / gap - 1.0).max(0.0),
    }
}

fn reach(values: impl Iterator<Item = f64>) -> (f64, f64) {
    values.fold(
        (f64::INFINITY, f64::NEG_INFINITY),
        |(least, most), value| (least.min(value), most.max(value)),
    )
}

/// Points at equal distances along the pieces of a curve.
pub(super) fn evenly(pieces: &[Vec<PixelPoint>]) -> Vec<PixelPoint> {
    let length = |pair: &[PixelPoint]| (pair[1][0] - pair[0][0]).hypot(pair[1][1] - pair[0][1]);
    let total: f64 = pieces
        .iter()
        .flat_map(|piece| piece.windows(2))
        .map(length)
        .sum();
    let step = total / (POSITIONS - 1) as f64;
    if step <= 0.0 {
        return pieces.iter().flatten().take(1).copied().collect();
    }
    let mut points = Vec::with_capacity(POSITIONS);
    let mut next = 0.0;
    let mut done = 0.0;
    for pair in pieces.iter().flat_map(|piece| piece.windows(2)) {
        let own = length(pair);
        while next <= done + own + 1e-9 * total && points.len() < POSITIONS {
            let share = if own > 0.0 {
                ((next - done) / own).clamp(0.0, 1.0)
            } else {
                0.0
            };
            points.push([
                pair[0][0] + share * (pair[1][0] - pair[0][0]),
                pair[0][1] + share * (pair[1][1] - pair[0][1]),
            ]);
            next += step;
        }
        done += own;
    }
    points
}

/// Around a point in sixteen directions, near and farther away.
#[must_use]
pub fn around_point(frame: &Frame, at: PixelPoint, words: &WordBlock) -> Vec<LabelPlace> {
    let gap = frame.measures.gap;
    let (half_width, half_height) = (words.width() / 2.0, words.height() / 2.0);
    let mut places = Vec::new();
    for (ring, distance) in [1.9, 3.4, 6.0, 9.0, 13.0].into_iter().enumerate() {
        for turn in 0..16 {
            let angle_rad = f64::from(turn) * std::f64::consts::TAU / 16.0;
            let (sin, cos) = angle_rad.sin_cos();
            // The block touches a circle around the point from outside.
            let reach_x = cos * (distance * gap) + squared(cos) * half_width;
            let reach_y = -sin * (distance * gap) - squared(sin) * half_height;
            let area = words.around(at[0] + reach_x, at[1] + reach_y);
            let diagonal = if turn % 4 == 2 || turn % 4 == 0 {
                0.0
            } else {
                2.0
            };
            let downwards = if sin < -0.1 { 4.0 } else { 0.0 };
            let leftwards = if cos < -0.1 { 3.0 } else { 0.0 };
            places.push(LabelPlace {
                area,
                target: at,
                leader: gap_between(&area, at) > 2.6 * gap,
                cost: 11.0 * ring as f64 + diagonal + downwards + leftwards,
            });
        }
    }
    places
}

/// Left and right of the point where a curve leaves the plot, inside the edge it crosses.
#[must_use]
pub fn near_exit(
    frame: &Frame,
    at: PixelPoint,
    upwards: bool,
    words: &WordBlock,
) -> Vec<LabelPlace> {
    let gap = frame.measures.gap;
    let half = words.width() / 2.0;
    let inwards = if upwards { 1.0 } else { -1.0 };
    let mut places = Vec::new();
    for row in 0..5 {
        let depth = words.height() / 2.0 + gap * (0.8 + 1.4 * f64::from(row));
        for step in 0..10 {
            let aside = gap * (2.0 + f64::from(step)) + half;
            for (side, more) in [(1.0, 0.0), (-1.0, 1.0)] {
                places.push(LabelPlace {
                    area: words.around(at[0] + side * aside, at[1] + inwards * depth),
                    target: at,
                    leader: false,
                    cost: 3.0 * f64::from(row) + 2.0 * f64::from(step) + more,
                });
            }
        }
    }
    places
}

/// A direction's share that grows quickly to ±1, so that side labels sit level with their point.
fn squared(share: f64) -> f64 {
    (share * 1.6).clamp(-1.0, 1.0)
}

/// A grid over the whole plot, led to the nearest of the points: the last resort.
#[must_use]
pub fn anywhere(
    plot: &Plot,
    words: &WordBlock,
    points: &[PixelPoint],
    cost: f64,
) -> Vec<LabelPlace> {
    let size = plot.area.width().hypot(plot.area.height());
    let mut places = Vec::new();
    for column in 0..14 {
        for row in 0..14 {
            let share = [
                (f64::from(column) + 0.5) / 14.0,
                (f64::from(row) + 0.5) / 14.0,
            ];
            let middle = [
                plot.area.left + share[0] * plot.area.width(),
                plot.area.top + share[1] * plot.area.height(),
            ];
            let area = words.around(middle[0], middle[1]);
            let gaps = points
                .iter()
                .map(|point| (squared_gap(&area, *point), *point));
            let nearest = gaps.min_by(|a, b| a.0.total_cmp(&b.0));
            if let Some((squared, target)) = nearest {
                places.push(LabelPlace {
                    area,
                    target,
                    leader: true,
                    cost: cost + 90.0 * squared.sqrt() / size,
                });
            }
        }
    }
    places
}

/// On either side of every edge of a shaded stretch, at all heights, led to the point: for words that are wider than the
/// stretch in which their point lies.
#[must_use]
pub fn beside_edges(
    frame: &Frame,
    plot: &Plot,
    words: &WordBlock,
    at: PixelPoint,
    edges: &[f64],
) -> Vec<LabelPlace> {
    const ROWS: u32 = 48;
    /// Costs more than a place near the point, less than one across an edge.
    const COST: f64 = 24.0;
    let gap = frame.measures.gap;
    let size = plot.area.width().hypot(plot.area.height());
    let aside = 0.7 * gap + words.width() / 2.0;
    let mut places = Vec::new();
    for edge in edges {
        for middle in [edge + aside, edge - aside] {
            for row in 0..=ROWS {
                let share = f64::from(row) / f64::from(ROWS);
                let area = words.around(middle, plot.area.top + share * plot.area.height());
                let distance = gap_between(&area, at);
                places.push(LabelPlace {
                    area,
                    target: at,
                    leader: distance > 2.6 * gap,
                    cost: COST + 90.0 * distance / size,
                });
            }
        }
    }
    places
}

/// Words of a note in the colour of axis text.
#[must_use]
pub fn note_words(frame: &Frame, text: &str) -> WordBlock {
    let most = frame.body.width() * 0.4;
    WordBlock::new(frame.measures.text).with(text, Face::Regular, frame.colours.muted, most, 2)
}

/// Above and below a level line, from its right end to its left.
#[must_use]
pub fn along_level(
    frame: &Frame,
    line: &[PixelPoint; 2],
    label: &str,
    plot: &Plot,
) -> Vec<LabelPlace> {
    let words = note_words(frame, label);
    let gap = frame.measures.gap * 0.7;
    let (width, height) = (words.width(), words.height());
    let y = line[0][1];
    let free = (plot.area.width() - width - 2.0 * gap).max(0.0);
    let mut places = Vec::new();
    for step in 0..=24 {
        let share = f64::from(step) / 24.0;
        let left = plot.area.right - gap - width - share * free;
        for (top, more) in [(y - gap - height, 0.0), (y + gap, 5.0)] {
            let area = Rect::new(left, top, left + width, top + height);
            places.push(LabelPlace {
                area,
                target: [left + width / 2.0, y],
                leader: false,
                cost: 20.0 * share.min(1.0 - share) + 6.0 * share + more,
            });
        }
    }
    places
}
