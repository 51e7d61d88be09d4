//! The column of curve names at the right of a panel, each led to its curve's end.
//!
//! In: a panel that is already drawn and the column's room. Out: names in the order of the curves'
//! ends, moved apart where they would meet, smaller where they would not fit.

use super::axis::Plot;
use super::frame::Frame;
use super::panel;
use super::panel_contents::{Panel, Series};
use super::placing::spread;
use super::words::WordBlock;
use crate::draw::{Face, Layer, PixelPoint, Rect, Stroke, TextAnchor};

/// Sizes that names in the column may take, over the usual one, until they fit above each other.
const SHRINKS: [f64; 3] = [1.0, 0.95, 0.9];

/// Width of the column of names over all panels, with the room for leaders.
#[must_use]
pub fn width(frame: &Frame, panels: &[Panel]) -> f64 {
    let widest = panels
        .iter()
        .flat_map(|panel| &panel.series)
        // A smaller name may break at another place and be the wider one.
        .flat_map(|series| SHRINKS.map(|shrink| column_words(frame, series, shrink).width()))
        .fold(0.0, f64::max);
    widest + leader_width(frame)
}

fn leader_width(frame: &Frame) -> f64 {
    4.0 * frame.measures.gap
}

fn column_words(frame: &Frame, series: &Series, shrink: f64) -> WordBlock {
    let most = frame.body.width() * 0.24;
    let colour = series.role.label(&frame.colours);
    // Three lines only for names that two could not hold at any size.
    let lines = if series.name.chars().count() > 34 {
        3
    } else {
        2
    };
    WordBlock::new(frame.measures.label * shrink).with(
        &series.name,
        Face::Bold,
        colour,
        most,
        lines,
    )
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
        .map(|(index, _)| column_words(frame, &panel.series[*index], shrink))
        .collect();
    let heights: Vec<f64> = blocks
        .iter()
        .map(|words| words.height() + 0.35 * gap)
        .collect();
    let wanted: Vec<f64> = ends.iter().map(|(_, end)| end[1]).collect();
    let middles = spread(
        &wanted,
        &heights,
        plot.area.top - gap,
        plot.area.bottom + gap,
    );
    let left = column.left + leader_width(frame);
    for (((index, end), words), middle) in ends.iter().zip(&blocks).zip(middles) {
        let colour = panel.series[*index].role.line(&frame.colours);
        let leader = Stroke::solid(colour, frame.measures.rule);
        let path = vec![
            [end[0] + 0.6 * gap, end[1]],
            [end[0] + gap, end[1]],
            [left - 1.1 * gap, middle],
            [left - 0.5 * gap, middle],
        ];
        let before = frame.scene.begin(Layer::Leader);
        frame.scene.polyline(path, leader);
        frame.scene.begin(before);
        let area = words.around(left + words.width() / 2.0, middle);
        words.draw(&mut frame.scene, &area, TextAnchor::Start);
    }
    ends.into_iter().map(|(index, _)| index).collect()
}

/// Named curves that end at the right edge, with their ends, from the highest to the lowest.
fn ends_in_order(panel: &Panel, plot: &Plot) -> Vec<(usize, PixelPoint)> {
    let mut ends: Vec<(usize, PixelPoint, f64)> = panel
        .series
        .iter()
        .enumerate()
        .filter(|(_, series)| !series.name.is_empty())
        .filter_map(|(index, series)| {
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
            .map(|(index, _)| column_words(frame, &panel.series[*index], shrink).height())
            .map(|height| height + 0.35 * frame.measures.gap)
            .sum()
    };
    loop {
        for shrink in SHRINKS {
            let is_last = shrink == SHRINKS[SHRINKS.len() - 1];
            let is_whole = ends
                .iter()
                .all(|(index, _)| !column_words(frame, &panel.series[*index], shrink).is_cut());
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
