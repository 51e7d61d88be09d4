//! The words inside a panel: names of curves, marked points, level lines, areas, curves that leave.
//!
//! In: a panel that is already drawn. Out: its labels, each where [`super::placing`] found room, with
//! thin leaders to their points; names stand beside their curves or in a column at the right.

use super::axis::Plot;
use super::frame::Frame;
use super::label_places;
use super::label_wishes::{LabelKind, LabelWish, callout, continuation, name, note};
use super::name_column;
use super::panel;
use super::panel_contents::{Marker, Panel, Series};
use super::placing::{self, CLEAR_COST, LabelPlace, LabelRequest, Obstacle, Occupied};
use super::spans;
use crate::draw::{Face, Layer, PixelPoint, Rect, Stroke, Text, TextAnchor, lettering};

/// What becomes of a curve's name that finds no place clear of curves.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Crowded {
    /// It stands over a dimmed curve.
    Dim,
    /// It is left out.
    LeaveOut,
}

/// Draws all words of a panel; returns the curves whose names found no clear place, and those of several that leave the plot
/// of which it is not told how far they go.
pub fn draw(
    frame: &mut Frame,
    panel: &Panel,
    plot: &Plot,
    column: Option<Rect>,
    crowded: Crowded,
) -> Vec<usize> {
    draw_around(frame, panel, plot, column, crowded, &Around::default())
}

/// What else is in the panel.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Around {
    /// Boxes that no word may touch.
    pub taken: Vec<Rect>,
    /// Upright edges of shaded stretches.
    pub edges: Vec<f64>,
    /// Heights of the grid's lines: the words of a level line stand between them.
    pub grid: Vec<f64>,
}

/// [`draw`] with what else is in the panel.
pub fn draw_around(
    frame: &mut Frame,
    panel: &Panel,
    plot: &Plot,
    column: Option<Rect>,
    crowded: Crowded,
    around: &Around,
) -> Vec<usize> {
    let mut field = field(frame, panel, plot);
    field.taken.extend(&around.taken);
    field.edges.extend(&around.edges);
    let before = frame.scene.begin(Layer::Label);
    let in_column: Vec<usize> = match column {
        Some(column) => name_column::draw(frame, panel, plot, column),
        None => Vec::new(),
    };
    let in_bars = draw_bar_words(frame, panel, plot);
    field.taken.extend(in_bars);
    let wishes = wishes(frame, panel, plot, &in_column, around);
    let unclear = place_all(frame, &field, &wishes, crowded);
    frame.scene.begin(before);
    unclear
}

/// Words inside bars; returns the room that they take.
fn draw_bar_words(frame: &mut Frame, panel: &Panel, plot: &Plot) -> Vec<Rect> {
    let size = frame.measures.text;
    // Clear of the line along a bar's edge.
    let gap = 0.5 * (frame.measures.gap + frame.measures.line);
    let row = lettering::line_step(size);
    let mut boxes = Vec::new();
    for mark in &panel.bar_words {
        let [x, edge] = plot.px(mark.at);
        let has_room = plot.area.bottom - edge > row + 2.0 * gap;
        let top = if has_room {
            edge + gap
        } else {
            edge - gap - row
        };
        let levels = panel.levels.iter().map(|level| plot.y.px(level.at));
        // Below a level line that would run through them.
        let lines = levels.filter(|y| *y > top - gap && *y < top + row);
        let below = lines.fold(top, |top, y| top.max(y + gap));
        let top = if has_room { below } else { top };
        let half = 0.5 * lettering::width(&mark.text, size, Face::Bold);
        let at = [x, top + lettering::rise(size)];
        let colour = mark.role.label(&frame.colours);
        let words = Text::new(at, mark.text.clone(), size, Face::Bold, colour);
        frame.scene.text(words.anchored(TextAnchor::Middle));
        boxes.push(Rect::new(x - half, top, x + half, top + row));
    }
    boxes
}

/// Every label of the panel, those that choose first in front.
fn wishes(
    frame: &Frame,
    panel: &Panel,
    plot: &Plot,
    in_column: &[usize],
    around: &Around,
) -> Vec<LabelWish> {
    /// What a line of the grid through the words of a level line costs.
    const THROUGH_GRID: f64 = 12.0;
    let mut wishes: Vec<LabelWish> = Vec::new();
    let shown = |marker: &&Marker| plot.area.grown(1.0).holds(plot.px(marker.at));
    let markers = panel.markers.iter().filter(shown);
    wishes.extend(markers.filter_map(|marker| callout(frame, marker, plot, &around.edges)));
    let curves = || panel.series.iter().enumerate();
    let beside = curves().filter(|(index, _)| !in_column.contains(index));
    wishes.extend(beside.filter_map(|(index, series)| name(frame, index, series, plot)));
    let is_told = |index: &usize| {
        in_column.contains(index) && name_column::tells_end(panel, &panel.series[*index])
    };
    let leaving = curves().filter(|(index, _)| !is_told(index));
    wishes.extend(
        leaving.filter_map(|(index, series)| continuation(frame, index, series, plot, &panel.axis)),
    );
    wishes.extend(panel.levels.iter().filter_map(|level| {
        let line = plot.x.range().map(|x| plot.px([x, level.at]));
        let mut candidates = label_places::along_level(frame, &line, &level.label, plot);
        for place in &mut candidates {
            let is_through = |y: &f64| *y > place.area.top && *y < place.area.bottom;
            if around.grid.iter().any(is_through) {
                place.cost += THROUGH_GRID;
            }
        }
        note(frame, &level.label, candidates)
    }));
    wishes
}

/// What is drawn already.
fn field(frame: &Frame, panel: &Panel, plot: &Plot) -> Occupied {
    let mut obstacles: Vec<Obstacle> = Vec::new();
    for (index, series) in panel.series.iter().enumerate() {
        for points in panel::visible(series, plot) {
            obstacles.push(Obstacle {
                points,
                owner: Some(index),
            });
        }
    }
    // The edges of areas that are no curves of their own.
    for fill in &panel.fills {
        let owner = panel.series.iter().position(|one| one.role == fill.role);
        for edge in [&fill.upper, &fill.lower] {
            let is_curve = panel.series.iter().any(|one| one.points == *edge);
            if !is_curve && !edge.is_empty() {
                let edge = Series::new("", edge.clone(), fill.role);
                let pieces = panel::visible(&edge, plot).into_iter();
                obstacles.extend(pieces.map(|points| Obstacle { points, owner }));
            }
        }
    }
    for level in panel.levels.iter().filter(|level| plot.y.holds(level.at)) {
        let y = plot.y.px(level.at);
        obstacles.push(Obstacle {
            points: vec![[plot.area.left, y], [plot.area.right, y]],
            owner: None,
        });
    }
    let radius = panel::marker_radius(frame) * 1.3;
    let mut taken = spans::boxes(frame, &panel.spans, plot);
    let markers = panel
        .markers
        .iter()
        .map(|marker| plot.px(marker.at))
        .map(|[px, py]| Rect::new(px - radius, py - radius, px + radius, py + radius));
    taken.extend(markers);
    let mut bounds = plot.area.grown(-frame.measures.gap * 0.4);
    bounds.bottom -= frame.measures.gap * 0.3;
    Occupied {
        bounds,
        obstacles,
        taken,
        edges: Vec::new(),
        clearance: frame.measures.gap * 0.55,
        half_line: 0.5 * lettering::line_step(frame.measures.text),
    }
}

/// Finds the places, draws leaders first and words over them; returns the curves whose names found no clear place.
fn place_all(
    frame: &mut Frame,
    field: &Occupied,
    wishes: &[LabelWish],
    crowded: Crowded,
) -> Vec<usize> {
    let requests: Vec<LabelRequest> = wishes.iter().map(|wish| wish.request.clone()).collect();
    let mut settled = placing::settle(field, &requests);
    let mut unclear = Vec::new();
    let extras = wishes.iter().filter(|wish| wish.kind == LabelKind::Extra);
    let leaving = extras.count();
    for (wish, place) in wishes.iter().zip(&mut settled) {
        if place.is_some_and(|(_, cost)| cost < CLEAR_COST) {
            continue;
        }
        if wish.kind == LabelKind::Name {
            unclear.extend(wish.request.owner);
        }
        let may_go = wish.kind == LabelKind::Name && crowded == Crowded::LeaveOut;
        if may_go || wish.kind == LabelKind::Extra {
            *place = None;
        }
        // Of one arrow alone the words may go; of several none should be without.
        if wish.kind == LabelKind::Extra && leaving > 1 && crowded == Crowded::Dim {
            unclear.extend(wish.request.owner);
        }
    }
    for (place, cost) in settled.iter().flatten() {
        draw_ground(frame, place, *cost);
    }
    for (wish, place) in wishes.iter().zip(&settled) {
        if let Some((place, _)) = place {
            let anchor = anchor(wish.kind, place);
            wish.shape_of(place)
                .draw(&mut frame.scene, &place.area, anchor);
        }
    }
    unclear
}

/// Lines are flush on the side of what they speak about.
fn anchor(kind: LabelKind, place: &LabelPlace) -> TextAnchor {
    let aside = place.target[0] - place.area.centre()[0];
    if kind == LabelKind::Name || aside.abs() < 0.3 * place.area.width() {
        TextAnchor::Middle
    } else if aside < 0.0 {
        TextAnchor::Start
    } else {
        TextAnchor::End
    }
}

/// Room between words and their leader, in gaps.
const CLEAR_OF_WORDS: f64 = 0.4;

/// Dims a curve below the words and draws their leader.
fn draw_ground(frame: &mut Frame, place: &LabelPlace, cost: f64) {
    let gap = frame.measures.gap;
    let patch = place.area.grown(0.2 * gap);
    if cost >= CLEAR_COST {
        let ground = frame.colours.background.with_opacity(0.8);
        frame.scene.rounded_rectangle(patch, 0.4 * gap, ground);
    }
    if place.leader {
        let clear = place.area.grown(CLEAR_OF_WORDS * gap);
        let half_line = 0.5 * lettering::line_step(frame.measures.text) + CLEAR_OF_WORDS * gap;
        let from = placing::leader_start(&clear, place.target, half_line);
        let to = short_of(place.target, from, panel::marker_radius(frame) * 1.3);
        let line = Stroke::solid(frame.colours.muted, frame.measures.rule);
        let before = frame.scene.begin(Layer::Leader);
        frame.scene.line(from, to, line);
        frame.scene.begin(before);
    }
}

/// The point on the way from `from` to `target` that is `distance` short of the target.
fn short_of(target: PixelPoint, from: PixelPoint, distance: f64) -> PixelPoint {
    let (dx, dy) = (from[0] - target[0], from[1] - target[1]);
    let length = dx.hypot(dy).max(distance);
    [
        target[0] + dx / length * distance,
        target[1] + dy / length * distance,
    ]
}
