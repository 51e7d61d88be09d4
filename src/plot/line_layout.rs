//! Where the parts of a chart of curves go: panels, their titles, the row of shade names, the strip
//! of poses, the column of curve names.
//!
//! In: a chart and the frame's body. Out: rectangles, scales and ticks, fixed before anything is drawn.

use super::axis::{self, Plot};
use super::frame::{DATA_SHARE, Frame};
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
    /// The strip of poses below the axis; none where it found no room or the poses stand in the plot.
    pub strip: Option<Strip>,
    /// The column of curve names at the right.
    pub column: Option<Rect>,
    /// The narrow panel with the whole curves at the right.
    pub whole: Option<PanelPlace>,
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
const SHARES: [&[f64]; 2] = [&[1.0], &[0.56, 0.44]];
/// Shares for two panels where the lower one holds bars along its bottom.
const SHARES_WITH_SPANS: &[f64] = &[0.44, 0.56];
/// Share of the body's width that the narrow panel with the whole curves takes.
const WHOLE_SHARE: f64 = 0.27;

/// Share of the body's width that figures beside the panels take.
const BESIDE_SHARE: f64 = 0.22;

/// How a chart is to be planned.
#[derive(Debug, Clone, Copy)]
pub struct PlanWanted {
    /// Whether room is kept for the column of names.
    pub column: bool,
    /// Whether the poses get a strip below the axis, as far as data leave room for it.
    pub strip: bool,
}

/// Height that the chart gives to all plots together in the body of a frame, pixels.
#[must_use]
pub fn plots_height(chart: &LineChart, frame: &Frame) -> f64 {
    rows(chart, frame, None).plots
}

/// Plans a chart.
///
/// # Errors
/// If a range is no range, or the canvas is too small.
pub fn plan(chart: &LineChart, frame: &Frame, wanted: PlanWanted) -> Result<Layout> {
    let spare = plots_height(chart, frame) - DATA_SHARE * frame.scene.height;
    let strip = if wanted.strip {
        Strip::planned(frame, &chart.poses, spare)
    } else {
        None
    };
    let rows = rows(chart, frame, strip.as_ref());
    let shares = shares(chart);
    let panels = chart.panels.iter().zip(shares);
    let uprights: Vec<Upright> = panels
        .map(|(panel, share)| Upright::of(frame, panel, rows.plots * share))
        .collect();
    let across = across(chart, frame, &uprights, wanted.column);
    let x_range = chart.x.level_range(level_data(chart));
    let shade_row = shade_row(chart, frame, across, x_range)?;
    let panels = panel_places(chart, frame, &rows, uprights, across, shade_row)?;
    let whole = whole_place(chart, frame, &panels[0])?;
    Ok(Layout {
        panels,
        shade_row,
        strip,
        column: wanted.column.then(|| {
            Rect::new(
                across[1],
                0.0,
                frame.body.right - whole_width(chart, frame),
                0.0,
            )
        }),
        whole,
    })
}

/// The width that the narrow panel takes from the body.
fn whole_width(chart: &LineChart, frame: &Frame) -> f64 {
    match &chart.whole {
        Some(_) => WHOLE_SHARE * frame.body.width(),
        None => beside_width(chart, frame),
    }
}

/// Width of the column of figures at the right; none without any.
pub fn beside_width(chart: &LineChart, frame: &Frame) -> f64 {
    match chart.beside.is_empty() {
        true => 0.0,
        false => BESIDE_SHARE * frame.body.width(),
    }
}

/// How far the title of an upright axis stands above the foot of its row, in gaps: clear of the highest tick's label, and level
/// with the names of shaded stretches.
const TITLE_LIFT: f64 = 0.35;

/// Room above the greatest value of the narrow panel, over its range.
const ABOVE: f64 = 0.04;

/// The narrow panel, as high as the first one.
fn whole_place(chart: &LineChart, frame: &Frame, first: &PanelPlace) -> Result<Option<PanelPlace>> {
    let Some(whole) = &chart.whole else {
        return Ok(None);
    };
    let area = first.plot.area;
    let values = whole.series.iter().flat_map(|series| &series.points);
    let top = values.map(|point| point[1]).fold(whole.window[1], f64::max);
    let count = axis::upright_tick_count(area.height(), frame.measures.text);
    let mut range = whole.axis.upright_range([0.0, top], count);
    // Room above the highest tick, whose label would touch the title.
    range[1] += ABOVE * (range[1] - range[0]);
    let ticks = whole.axis.labelled_ticks(range, count);
    let left = frame.body.right - whole_width(chart, frame)
        + axis::upright_column_width(frame, &ticks)
        + 3.0 * frame.measures.gap;
    let area = Rect::new(
        left,
        area.top,
        frame.body.right - 1.2 * frame.measures.gap,
        area.bottom,
    );
    Ok(Some(PanelPlace {
        plot: Plot::new(area, first.plot.x.range(), range)?.along(&chart.x)?,
        ticks,
        title_baseline: first.title_baseline,
    }))
}

fn shares(chart: &LineChart) -> &'static [f64] {
    match &chart.panels[..] {
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
        frame.body.right - whole_width(chart, frame) - column_width.max(1.2 * frame.measures.gap),
    ]
}

fn rows(chart: &LineChart, frame: &Frame, strip: Option<&Strip>) -> RowHeights {
    let row = lettering::line_step(frame.measures.text);
    let head = 0.3 * frame.measures.gap + lettering::capitals(frame.measures.text) / 2.0;
    let between = 0.35 * row;
    let below = axis::level_row_height(frame) + row + strip.map_or(0.0, Strip::height);
    let many = chart.panels.len() as f64;
    RowHeights {
        row,
        head,
        between,
        plots: frame.body.height()
            - below
            - many * (row + head)
            - (many - 1.0) * (between + frame.measures.gap),
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
    chart: &LineChart,
    frame: &Frame,
    rows: &RowHeights,
    uprights: Vec<Upright>,
    [left, right]: [f64; 2],
    shade_row: Option<Rect>,
) -> Result<Vec<PanelPlace>> {
    let text = frame.measures.text;
    let x_range = chart.x.level_range(level_data(chart));
    let title_row = frame.body.top + rows.row;
    let mut title_bottom = title_row;
    let mut top = shade_row.map_or(title_row, |row| row.bottom.max(title_row));
    let available = rows.plots - (top - title_row);
    let mut places = Vec::new();
    for (upright, share) in uprights.into_iter().zip(shares(chart)) {
        top += rows.head;
        let area = Rect::new(left, top, right, top + available * share);
        if area.height() < 3.0 * text || area.width() < 8.0 * text {
            return Err(Error::bad(PlotFault::TooSmall(Plotted::Curves)));
        }
        places.push(PanelPlace {
            plot: Plot::new(area, x_range, upright.range)?.along(&chart.x)?,
            ticks: upright.ticks,
            title_baseline: title_bottom - lettering::fall(text) - TITLE_LIFT * frame.measures.gap,
        });
        title_bottom = area.bottom + frame.measures.gap + rows.between + rows.row;
        top = title_bottom;
    }
    Ok(places)
}

/// The row of shade names: beside the first axis title. A name that would meet the title moves to the right of it.
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
    let from = left.max(title.bounds().right + 2.0 * frame.measures.gap);
    let beside = Rect::new(from, frame.body.top, right, frame.body.top + row);
    let plot = Plot::new(Rect { left, ..beside }, x_range, [0.0, 1.0])?.along(&chart.x)?;
    let boxes = shades::label_boxes(frame, &chart.shades, &plot, beside);
    let fits = boxes
        .iter()
        .all(|(area, words)| area.left >= from && !words.is_cut());
    let down = if fits { 0.0 } else { row };
    Ok(Some(
        Rect {
            left: if fits { from } else { left },
            ..beside
        }
        .moved(0.0, down),
    ))
}

/// Least and greatest place on the level axis over all panels.
fn level_data(chart: &LineChart) -> [f64; 2] {
    let start = [f64::INFINITY, f64::NEG_INFINITY];
    let ranges = chart.panels.iter().map(panel::place_range);
    ranges.fold(start, |reach, own| {
        [reach[0].min(own[0]), reach[1].max(own[1])]
    })
}
