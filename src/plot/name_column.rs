//! The column of curve names at the right of a panel, each led to its curve's end.
//!
//! In: a panel that is already drawn and the column's room. Out: names in the order of the curves'
//! ends, moved apart where they would meet, smaller where they would not fit.

use super::axis::{Extent, Plot};
use super::frame::Frame;
use super::panel;
use super::panel_contents::{Panel, Series};
use super::placing::spread;
use super::words::WordBlock;
use crate::draw::scale::short_number;
use crate::draw::{Face, Layer, PixelPoint, Rect, Stroke, TextAnchor};

/// Canvases below this width give names more of it, pixels (assumed: phones held upright).
const NARROW: f64 = 480.0;
/// Least room between two names, in gaps.
const CLOSEST: f64 = 0.35;
/// Room between curves and names, in gaps: for a leader, or a piece of the line, clear of both.
const LEADER: f64 = 7.4;
/// Least room between the plot and the piece of a line beside a name, in gaps: nearer it would seem to go on.
const APART: f64 = 1.0;
/// Length of the piece of a line beside its name, in gaps.
const PIECE: f64 = 4.6;
/// Most room between two names, in gaps.
const FARTHEST: f64 = 2.0;
/// Ends of curves nearer to each other than this are one place for the eye, in gaps: leaders from there tell nothing apart.
const BUNCHED: f64 = 0.5;
/// Sizes that names in the column may take, over the usual one, until they fit above each other.
const SHRINKS: [f64; 3] = [1.0, 0.95, 0.9];

/// Width of the column of names over all panels, with the room for leaders.
#[must_use]
pub fn width(frame: &Frame, panels: &[Panel]) -> f64 {
    let widest = panels
        .iter()
        .flat_map(|panel| panel.series.iter().map(move |series| (panel, series)))
        // A smaller name may break at another place and be the wider one.
        .flat_map(|(panel, series)| {
            SHRINKS.map(|shrink| column_words(frame, panel, series, shrink).width())
        })
        .fold(0.0, f64::max);
    widest + leader_width(frame)
}

fn leader_width(frame: &Frame) -> f64 {
    LEADER * frame.measures.gap
}

/// The greatest value of a curve that ends above its axis, where no leader could reach it.
fn value_above(panel: &Panel, series: &Series) -> Option<f64> {
    let (Extent::FromZeroTo(top) | Extent::Exactly([_, top])) = panel.axis.extent else {
        return None;
    };
    let ends_above = series.points.last()?[1] > top;
    let values = series.points.iter().map(|point| point[1]);
    ends_above.then(|| values.fold(top, f64::max))
}

/// Whether the column says how far a curve that ends above its axis goes.
#[must_use]
pub fn tells_end(panel: &Panel, series: &Series) -> bool {
    value_above(panel, series).is_some()
}

/// "Squat, to 284 %" where the curve ends above its axis.
fn column_name(panel: &Panel, series: &Series) -> String {
    let name = &series.name;
    match value_above(panel, series) {
        Some(value) if !name.is_empty() => {
            let value = short_number(value, panel::digits_for([0.0, value]));
            format!("{name}, to {value} {}", panel.axis.unit)
                .trim_end()
                .to_owned()
        }
        _ => name.clone(),
    }
}

fn column_words(frame: &Frame, panel: &Panel, series: &Series, shrink: f64) -> WordBlock {
    let is_narrow = frame.scene.width < NARROW;
    let most = frame.body.width() * if is_narrow { 0.34 } else { 0.24 };
    let colour = series.role.label(&frame.colours);
    // Three lines only for names that two could not hold at any size.
    let name = column_name(panel, series);
    let lines = match name.chars().count() {
        _ if is_narrow => 4,
        count if count > 34 => 3,
        _ => 2,
    };
    let block = || WordBlock::new(frame.measures.label * shrink);
    let whole = block().with(&name, Face::Bold, colour, most, lines);
    // Where it goes to stands on a line of its own, if name and end find no room on one.
    let end = name.strip_prefix(&format!("{}, ", series.name));
    match end {
        Some(end) if whole.line_count() > 1 => block()
            .with(
                &format!("{},", series.name),
                Face::Bold,
                colour,
                most,
                lines - 1,
            )
            .with(end, Face::Bold, colour, most, 1),
        _ => whole,
    }
}

/// Names in the column, each at the height of its curve's end; returns which were placed there.
///
/// Curves that end before the right edge keep their names beside them.
pub fn draw(frame: &mut Frame, panel: &Panel, plot: &Plot, column: Rect) -> Vec<usize> {
    let gap = frame.measures.gap;
    let ends = ends_in_order(panel, plot);
    let (ends, shrink) = fitting(frame, panel, ends, plot.area.height() + 2.0 * gap);
    let blocks: Vec<WordBlock> = ends
        .iter()
        .map(|(index, _)| column_words(frame, panel, &panel.series[*index], shrink))
        .collect();
    let packed: f64 = blocks.iter().map(WordBlock::height).sum();
    let spare = (plot.area.height() + 2.0 * gap - packed) / blocks.len().max(1) as f64;
    // Names stand farther from each other than the lines of one name, where there is room.
    let apart = spare.clamp(CLOSEST * gap, FARTHEST * gap);
    let heights: Vec<f64> = blocks.iter().map(|words| words.height() + apart).collect();
    let wanted: Vec<f64> = ends.iter().map(|(_, end)| end[1]).collect();
    let middles = spread(
        &wanted,
        &heights,
        plot.area.top - gap,
        plot.area.bottom + gap,
    );
    let left = column.left + leader_width(frame);
    let is_bunched = is_bunched(panel, &ends, BUNCHED * gap);
    for (((index, end), words), middle) in ends.iter().zip(&blocks).zip(middles) {
        let series = &panel.series[*index];
        let colour = series.role.line(&frame.colours);
        let before = frame.scene.begin(Layer::Leader);
        if is_bunched || tells_end(panel, series) {
            // A piece of the line itself: a leader to the upper edge would cross the curves, and several to one place tell nothing.
            let width = frame.measures.line * series.role.weight(&frame.colours);
            // All pieces are of one length, in which longer dashes are drawn shorter: a period and a part of the next dash.
            let dashes = series.role.dashes(&frame.colours);
            let period = dashes.iter().sum::<f64>() + 0.6 * dashes.first().copied().unwrap_or(0.0);
            let length = (PIECE * gap).min(left - (1.4 + APART) * gap - column.left);
            let shorter = (length / (period * width).max(f64::MIN_POSITIVE)).min(1.0);
            let dashes: Vec<f64> = dashes.iter().map(|dash| dash * shorter).collect();
            let piece = Stroke::solid(colour, width).dashed(&dashes);
            let ends = [left - 1.4 * gap - length, left - 1.4 * gap].map(|x| [x, middle]);
            frame.scene.line(ends[0], ends[1], piece);
        } else {
            let leader = Stroke::solid(colour, frame.measures.rule);
            let path = vec![
                [end[0] + 0.6 * gap, end[1]],
                [end[0] + 1.4 * gap, end[1]],
                [left - 1.8 * gap, middle],
                [left - 0.8 * gap, middle],
            ];
            frame.scene.polyline(path, leader);
        }
        frame.scene.begin(before);
        let area = words.around(left + words.width() / 2.0, middle);
        words.draw(&mut frame.scene, &area, TextAnchor::Start);
    }
    ends.into_iter().map(|(index, _)| index).collect()
}

/// Whether the ends of two curves are one place for the eye.
fn is_bunched(panel: &Panel, ends: &[(usize, PixelPoint)], near: f64) -> bool {
    let led = ends.iter();
    let led = led.filter(|(index, _)| !tells_end(panel, &panel.series[*index]));
    let led: Vec<PixelPoint> = led.map(|(_, end)| *end).collect();
    let apart = |pair: &[PixelPoint]| (pair[1][0] - pair[0][0]).hypot(pair[1][1] - pair[0][1]);
    led.windows(2).any(|pair| apart(pair) < near)
}

/// Named curves that end at the right edge, with their ends, from the highest to the lowest.
fn ends_in_order(panel: &Panel, plot: &Plot) -> Vec<(usize, PixelPoint)> {
    let mut ends: Vec<(usize, PixelPoint, f64)> = panel
        .series
        .iter()
        .enumerate()
        .filter(|(_, series)| !series.name.is_empty())
        .filter_map(|(index, series)| {
            // Those that leave upwards stand in the order in which they do: the first one is the highest at every place.
            if tells_end(panel, series) {
                let exits = panel::exits(series, plot);
                let x = exits.last().map_or(plot.area.right, |exit| exit.at[0]);
                let at = [plot.area.right, plot.area.top];
                return Some((index, at, x - plot.area.right + plot.area.top));
            }
            let (end, before) = column_end(series, plot)?;
            // Curves that meet at their ends are told apart by where they come from.
            Some((index, end, end[1] + 0.02 * (before[1] - end[1])))
        })
        .collect();
    ends.sort_by(|a, b| a.2.total_cmp(&b.2).then(a.0.cmp(&b.0)));
    ends.into_iter()
        .map(|(index, end, _)| (index, end))
        .collect()
}

/// The end of a curve at the right edge of the plot, if it has one there.
///
/// Also a point some way before it.
fn column_end(series: &Series, plot: &Plot) -> Option<(PixelPoint, PixelPoint)> {
    let pieces = panel::visible(series, plot);
    let last = pieces.last()?;
    let at = *last.last()?;
    let from = at[0] - 0.1 * plot.area.width();
    let before = *last
        .iter()
        .rev()
        .find(|point| point[0] <= from)
        .unwrap_or(&last[0]);
    (at[0] > plot.area.right - 0.12 * plot.area.width()).then_some((at, before))
}

/// Makes the names smaller until they fit above each other; drops every other one if they never do.
fn fitting(
    frame: &Frame,
    panel: &Panel,
    mut ends: Vec<(usize, PixelPoint)>,
    room: f64,
) -> (Vec<(usize, PixelPoint)>, f64) {
    let needed = |ends: &[(usize, PixelPoint)], shrink: f64| -> f64 {
        ends.iter()
            .map(|(index, _)| column_words(frame, panel, &panel.series[*index], shrink).height())
            .map(|height| height + CLOSEST * frame.measures.gap)
            .sum()
    };
    loop {
        for shrink in SHRINKS {
            let is_last = shrink == SHRINKS[SHRINKS.len() - 1];
            let is_whole = ends.iter().all(|(index, _)| {
                !column_words(frame, panel, &panel.series[*index], shrink).is_cut()
            });
            let fits = needed(&ends, shrink) <= room || ends.len() < 2;
            if fits && (is_whole || is_last) {
                return (ends, shrink);
            }
        }
        let last = ends.len() - 1;
        let mut index = 0;
        ends.retain(|_| {
            index += 1;
            (index - 1) % 2 == 0 || index - 1 == last
        });
        if ends.len() == last + 1 {
            ends.truncate(last);
        }
    }
}
