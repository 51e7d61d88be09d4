//! Where the parts of a chart of curves go: panels, their titles, the row of shade names, the strip
//! of poses, the column of curve names.
//!
//! In: a chart and the frame's body. Out: rectangles, scales and ticks, fixed before anything is drawn.

use super::axis::{self, Plot};
use super::frame::Frame;
use super::line_chart::LineChart;
use super::name_column;
use super::panel;
use super::panel_contents::Panel;
use super::pose_strip::Strip;
use super::shades;
use crate::draw::{Rect, lettering};
use crate::error::{Error, PlotFault, Plotted, Result};

/// One panel's place.
pub struct PanelPlace {
    /// Rectangle and scales.
    pub plot: Plot,
    /// Ticks of the upright axis with their labels.
    pub ticks: Vec<(f64, String)>,
    /// Baseline of the upright axis' title.
    pub title_baseline: f64,
}

/// Where everything goes.
pub struct Layout {
    /// The panels from top to bottom; at least one.
    pub panels: Vec<PanelPlace>,
    /// The row of shade names above the first panel.
    pub shade_row: Option<Rect>,
    /// The strip of poses.
    pub strip: Strip,
    /// The column of curve names at the right.
    pub column: Option<Rect>,
}

/// Heights that do not depend on the data.
struct RowHeights {
    /// One row of axis text.
    row: f64,
    /// Room between a title row and the plot below it: half a tick label stands in it.
    head: f64,
    /// Room between two panels, for the title of the lower one.
    between: f64,
    /// Height left for all plots together.
    plots: f64,
}

/// Shares of the height for one and for two panels.
const SHARES: [&[f64]; 2] = [&[1.0], &[0.6, 0.4]];
/// Shares for two panels where the lower one holds bars along its bottom.
const SHARES_WITH_SPANS: &[f64] = &[0.44, 0.56];

/// Plans a chart; `column_wanted` keeps room for the column of names.
///
/// # Errors
/// If a range is no range, or the canvas is too small.
pub fn plan(chart: &LineChart, frame: &Frame, column_wanted: bool) -> Result<Layout> {
    let strip = Strip::planned(frame, &chart.poses, chart.panels.len());
    let rows = rows(chart, frame, &strip);
    let shares = shares(&chart.panels);
    let panels = chart.panels.iter().zip(shares);
    let uprights: Vec<Upright> = panels
        .map(|(panel, share)| Upright::of(frame, panel, rows.plots * share - rows.row))
        .collect();
    let across = across(chart, frame, &uprights, column_wanted);
    let x_range = chart.x.level_range(level_data(chart));
    let shade_row = shade_row(chart, frame, across, x_range)?;
    Ok(Layout {
        panels: panel_places(frame, &rows, uprights, shares, across, x_range, shade_row)?,
        shade_row,
        strip,
        column: column_wanted.then(|| Rect::new(across[1], 0.0, frame.body.right, 0.0)),
    })
}

fn shares(panels: &[Panel]) -> &'static [f64] {
    match panels {
        [_, lower] if !lower.spans.is_empty() => SHARES_WITH_SPANS,
        panels => SHARES[panels.len() - 1],
    }
}

/// Left and right edge of the plots: between the tick labels and the column of names, if there is one.
fn across(chart: &LineChart, frame: &Frame, uprights: &[Upright], column_wanted: bool) -> [f64; 2] {
    let widest = uprights
        .iter()
        .map(|upright| axis::upright_column_width(frame, &upright.ticks))
        .fold(0.0, f64::max);
    let column_width = if column_wanted {
        name_column::width(frame, &chart.panels)
    } else {
        0.0
    };
    [
        frame.body.left + widest,
        frame.body.right - column_width.max(1.2 * frame.measures.gap),
    ]
}

fn rows(chart: &LineChart, frame: &Frame, strip: &Strip) -> RowHeights {
    let row = lettering::line_step(frame.measures.text);
    let head = 0.9 * frame.measures.gap + lettering::capitals(frame.measures.text) / 2.0;
    let between = 1.2 * row;
    let below = axis::level_row_height(frame) + row + strip.height();
    let many = chart.panels.len() as f64;
    RowHeights {
        row,
        head,
        between,
        plots: frame.body.height() - below - many * (row + head) - (many - 1.0) * between,
    }
}

/// Range and ticks of an upright axis, chosen once for a height.
struct Upright {
    range: [f64; 2],
    ticks: Vec<(f64, String)>,
}

impl Upright {
    fn of(frame: &Frame, panel: &Panel, height: f64) -> Self {
        let count = axis::upright_tick_count(height, frame.measures.text);
        let range = panel.axis.upright_range(panel::value_range(panel), count);
        let ticks = panel.axis.labelled_ticks(range, count);
        Self { range, ticks }
    }
}

fn panel_places(
    frame: &Frame,
    rows: &RowHeights,
    uprights: Vec<Upright>,
    shares: &[f64],
    [left, right]: [f64; 2],
    x_range: [f64; 2],
    shade_row: Option<Rect>,
) -> Result<Vec<PanelPlace>> {
    let text = frame.measures.text;
    let title_row = frame.body.top + rows.row;
    let mut title_bottom = title_row;
    let mut top = shade_row.map_or(title_row, |row| row.bottom.max(title_row));
    let available = rows.plots - (top - title_row);
    let mut places = Vec::new();
    for (upright, share) in uprights.into_iter().zip(shares) {
        top += rows.head;
        let area = Rect::new(left, top, right, top + available * share);
        if area.height() < 3.0 * text || area.width() < 8.0 * text {
            return Err(Error::bad(PlotFault::TooSmall(Plotted::Curves)));
        }
        places.push(PanelPlace {
            plot: Plot::new(area, x_range, upright.range)?,
            ticks: upright.ticks,
            title_baseline: title_bottom - lettering::fall(text),
        });
        title_bottom = area.bottom + rows.between + rows.row;
        top = title_bottom;
    }
    Ok(places)
}

/// The row of shade names: beside the first axis title if they do not meet, else below it.
fn shade_row(
    chart: &LineChart,
    frame: &Frame,
    [left, right]: [f64; 2],
    x_range: [f64; 2],
) -> Result<Option<Rect>> {
    if chart
        .shades
        .iter()
        .all(|shade| shade.label.trim().is_empty())
        || right <= left
    {
        return Ok(None);
    }
    let row = lettering::line_step(frame.measures.text);
    let title = axis::upright_title(frame, &chart.panels[0].axis, 0.0);
    let title_right = title.bounds().right + frame.measures.gap;
    let beside = Rect::new(left, frame.body.top, right, frame.body.top + row);
    let plot = Plot::new(beside, x_range, [0.0, 1.0])?;
    let first = shades::label_boxes(frame, &chart.shades, &plot, beside)
        .iter()
        .map(|(area, _)| area.left)
        .fold(f64::INFINITY, f64::min);
    let down = if first < title_right { row } else { 0.0 };
    Ok(Some(beside.moved(0.0, down)))
}

/// Least and greatest place on the level axis over all panels.
fn level_data(chart: &LineChart) -> [f64; 2] {
    let start = [f64::INFINITY, f64::NEG_INFINITY];
    let ranges = chart.panels.iter().map(panel::place_range);
    ranges.fold(start, |reach, own| {
        [reach[0].min(own[0]), reach[1].max(own[1])]
    })
}
