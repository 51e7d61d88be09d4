//! Curves, areas, level lines and marked points of one panel.
//!
//! In: a [`Panel`] and its scales. Out: shapes in the frame; words are placed afterwards.

use super::axis::Plot;
use super::frame::Frame;
use super::panel_contents::{Panel, Role, Series};
use crate::draw::scale::{clipped, clipped_area};
use crate::draw::{Colour, Layer, PixelPoint, Rect, Stroke};

/// Least and greatest value of everything the panel shows.
#[must_use]
pub fn value_range(panel: &Panel) -> [f64; 2] {
    let curves = panel.series.iter().flat_map(|series| &series.points);
    let values = curves
        .map(|point| point[1])
        .chain(panel.markers.iter().map(|marker| marker.at[1]))
        .chain(panel.levels.iter().map(|level| level.at))
        .filter(|value| value.is_finite());
    let start = [f64::INFINITY, f64::NEG_INFINITY];
    values.fold(start, |reach, value| {
        [reach[0].min(value), reach[1].max(value)]
    })
}

/// Least and greatest place on the level axis of all curves of the panel.
#[must_use]
pub fn place_range(panel: &Panel) -> [f64; 2] {
    let points = panel.series.iter().flat_map(|series| &series.points);
    points.fold([f64::INFINITY, f64::NEG_INFINITY], |reach, point| {
        [reach[0].min(point[0]), reach[1].max(point[0])]
    })
}

/// Where a curve leaves the plot: the point on the edge and the direction it takes there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Exit {
    /// The point on the edge.
    pub at: PixelPoint,
    /// Unit vector outwards along the curve.
    pub towards: PixelPoint,
}

/// The visible pieces of a curve in pixels.
#[must_use]
pub fn visible(series: &Series, plot: &Plot) -> Vec<Vec<PixelPoint>> {
    let drawn = series.drawn().into_iter();
    let cut = drawn.flat_map(|points| clipped(&on_plot(points, plot), &plot.area));
    cut.collect()
}

/// A curve this close to the upper or lower edge runs along it and does not leave, pixels: rounding is far
/// smaller, and nobody sees it.
const EDGE: f64 = 1.0e-3;

/// Points of a curve in pixels; those at an edge lie on it exactly.
fn on_plot(points: &[[f64; 2]], plot: &Plot) -> Vec<PixelPoint> {
    let mut all = plot.all_px(points);
    for point in &mut all {
        for edge in [plot.area.top, plot.area.bottom] {
            if (point[1] - edge).abs() < EDGE {
                point[1] = edge;
            }
        }
    }
    all
}

/// Where the curve leaves the plot upwards or downwards.
#[must_use]
pub fn exits(series: &Series, plot: &Plot) -> Vec<Exit> {
    let drawn = series.drawn().into_iter();
    drawn.flat_map(|points| exits_of(points, plot)).collect()
}

fn exits_of(points: &[[f64; 2]], plot: &Plot) -> Vec<Exit> {
    let all = on_plot(points, plot);
    let (Some(first), Some(last)) = (all.first(), all.last()) else {
        return Vec::new();
    };
    let mut exits = Vec::new();
    for piece in clipped(&all, &plot.area) {
        let ends = [
            (piece[0], piece[1], first),
            (piece[piece.len() - 1], piece[piece.len() - 2], last),
        ];
        for (at, before, end) in ends {
            let on_edge =
                (at[1] - plot.area.top).abs() < 1e-6 || (at[1] - plot.area.bottom).abs() < 1e-6;
            let (dx, dy) = (at[0] - before[0], at[1] - before[1]);
            let length = dx.hypot(dy);
            if on_edge && at != *end && length > 0.0 && dy != 0.0 {
                exits.push(Exit {
                    at,
                    towards: [dx / length, dy / length],
                });
            }
        }
    }
    exits
}

/// Draws areas, level lines, curves and points, the first curve on top.
pub fn draw_curves(frame: &mut Frame, panel: &Panel, plot: &Plot) {
    let before = frame.scene.begin(Layer::Curve);
    draw_areas(frame, panel, plot);
    let muted = panel
        .series
        .iter()
        .filter(|series| series.role == Role::Muted);
    let others = panel
        .series
        .iter()
        .rev()
        .filter(|series| series.role != Role::Muted);
    for series in muted.chain(others) {
        draw_curve(frame, series, plot);
    }
    draw_points(frame, panel, plot);
    frame.scene.begin(before);
}

/// Opacity of an area, and of one that is only one of several possible ones.
const FILLED: f64 = 0.16;
const PALE: f64 = 0.05;

/// Areas and level lines.
fn draw_areas(frame: &mut Frame, panel: &Panel, plot: &Plot) {
    let [full, pale] = bands(&panel.pale, plot);
    for fill in &panel.fills {
        let mut corners = plot.all_px(&fill.upper);
        corners.extend(plot.all_px(&fill.lower).into_iter().rev());
        for (bands, opacity) in [(&full, FILLED), (&pale, PALE)] {
            let colour = fill.role.line(&frame.colours).with_opacity(opacity);
            for band in bands {
                let cut = clipped_area(&corners, band);
                if cut.len() > 2 {
                    frame.scene.polygon(cut, colour);
                }
            }
        }
    }
    for level in panel.levels.iter().filter(|level| plot.y.holds(level.at)) {
        let y = plot.y.px(level.at);
        let line = Stroke::solid(frame.colours.muted, frame.measures.rule).dashed(&[3.0, 3.0]);
        frame
            .scene
            .line([plot.area.left, y], [plot.area.right, y], line);
    }
}

fn draw_curve(frame: &mut Frame, series: &Series, plot: &Plot) {
    let width = frame.measures.line * series.role.weight(&frame.colours);
    let colour = series.role.line(&frame.colours);
    let stroke = Stroke::solid(colour, width).dashed(series.role.dashes(&frame.colours));
    let fine = Stroke::solid(colour, THIN * width).dashed(series.role.dashes(&frame.colours));
    for piece in visible(series, plot) {
        let [thick, thin] = apart(&piece, &series.thin, plot);
        for part in thick {
            frame.scene.polyline(part, stroke.clone());
        }
        for part in thin {
            frame.scene.polyline(part, fine.clone());
        }
    }
    draw_hollows(frame, series, plot, width);
    for exit in exits(series, plot) {
        let head = width * 3.4;
        let half = head * 0.5;
        let [ux, uy] = exit.towards;
        let neck = [exit.at[0] - ux * head, exit.at[1] - uy * head];
        let corners = vec![
            exit.at,
            [neck[0] - uy * half, neck[1] + ux * half],
            [neck[0] + uy * half, neck[1] - ux * half],
        ];
        frame.scene.polygon(corners, colour);
    }
}

/// Width of a thin line over the usual one: a thread beside a rope; assumed.
const THIN: f64 = 0.4;

/// The parts of the plot outside and inside of stretches of the level axis.
fn bands(stretches: &[[f64; 2]], plot: &Plot) -> [Vec<Rect>; 2] {
    let mut inside: Vec<[f64; 2]> = stretches
        .iter()
        .map(|ends| plot.stretch_px(*ends))
        .collect();
    inside.sort_by(|a, b| a[0].total_cmp(&b[0]));
    let mut outside = Vec::new();
    let mut from = plot.area.left;
    for [low, high] in &inside {
        outside.push([from, *low]);
        from = from.max(*high);
    }
    outside.push([from, plot.area.right]);
    [outside, inside].map(|parts| {
        let wide = parts.into_iter().filter(|[low, high]| high > low);
        wide.map(|[low, high]| Rect::new(low, plot.area.top, high, plot.area.bottom))
            .collect()
    })
}

/// The parts of a line outside and inside of stretches of the level axis.
fn apart(piece: &[PixelPoint], stretches: &[[f64; 2]], plot: &Plot) -> [Vec<Vec<PixelPoint>>; 2] {
    if stretches.is_empty() {
        return [vec![piece.to_vec()], Vec::new()];
    }
    bands(stretches, plot).map(|parts| {
        let cut = parts.iter().flat_map(|band| clipped(piece, band));
        cut.collect()
    })
}

/// Width of the core of a hollow line over the line's own: the rims left and right of it are still seen from afar; assumed.
const CORE: f64 = 0.5;

/// Least width of a hollow line over the usual one of curves: rims of thinner ones are not seen; assumed.
const LEAST_HOLLOW: f64 = 0.9;

/// Least width of each rim of a hollow line, pixels of a height of 1080: on a page curves are thin.
const LEAST_RIM: f64 = 1.6;

/// Draws a line as a tube in its own colour where its curve is less sure; the gaps of dashes would open its sides.
fn draw_hollows(frame: &mut Frame, series: &Series, plot: &Plot, width: f64) {
    let least_rims = 2.0 * LEAST_RIM * frame.scene.height / 1080.0;
    let width = width
        .max(LEAST_HOLLOW * frame.measures.line)
        .max(least_rims / (1.0 - CORE));
    let rims = Stroke::solid(series.role.line(&frame.colours), width);
    let core = Stroke::solid(frame.colours.background, CORE * width);
    for ends in &series.doubted {
        let [from, to] = plot.stretch_px(*ends);
        let area = Rect::new(from, plot.area.top, to, plot.area.bottom);
        for piece in visible(series, plot) {
            for inside in clipped(&piece, &area) {
                frame.scene.polyline(inside.clone(), rims.clone());
                frame.scene.polyline(inside, core.clone());
            }
        }
    }
}

fn draw_points(frame: &mut Frame, panel: &Panel, plot: &Plot) {
    let nameless = panel.markers.iter().filter(|one| one.text.is_empty());
    let is_many = nameless.count() > MANY_POINTS;
    for marker in &panel.markers {
        let small = if is_many && marker.text.is_empty() {
            SMALL_POINT
        } else {
            1.0
        };
        let radius = small * marker_radius(frame);
        let at = plot.px(marker.at);
        if plot.area.grown(1.0).holds(at) {
            let colour = marker.role.line(&frame.colours);
            if marker.is_cross {
                draw_cross(frame, at, radius * 1.2, colour);
                continue;
            }
            // No rim of the ground: it would eat the beginning of the curve that the point stands on.
            frame.scene.disc(at, radius, colour);
            frame
                .scene
                .disc(at, radius * 0.42, frame.colours.background);
        }
    }
}

/// Two strokes across a point.
fn draw_cross(frame: &mut Frame, [x, y]: PixelPoint, arm: f64, colour: Colour) {
    let stroke = Stroke::solid(colour, frame.measures.line);
    for way in [1.0, -1.0] {
        let ends = [[x - arm, y - way * arm], [x + arm, y + way * arm]];
        frame.scene.line(ends[0], ends[1], stroke.clone());
    }
}

/// More points without words than this are values of a series and no places to read, and smaller (a drawing's measures).
const MANY_POINTS: usize = 16;
const SMALL_POINT: f64 = 0.72;

/// Radius of a marked point in pixels.
#[must_use]
pub fn marker_radius(frame: &Frame) -> f64 {
    frame.measures.line * 1.75
}

/// Decimals that are worth showing for a value on an axis of this range: three figures of it.
#[must_use]
pub fn digits_for(range: [f64; 2]) -> usize {
    let extent = (range[1] - range[0]).abs().max(f64::MIN_POSITIVE);
    (2.0 - extent.log10().floor()).clamp(0.0, 6.0) as usize
}
