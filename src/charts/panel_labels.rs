//! The words inside a panel: names of curves, marked points, level lines, areas, curves that leave.
//!
//! In: a panel that is already drawn. Out: its labels, each where [`super::placing`] found room, with
//! thin leaders to their points; names stand beside their curves or in a column at the right.

use super::axis::{Axis, Plot};
use super::frame::Frame;
use super::line_chart::{Marker, Panel, Series};
use super::panel;
use super::places;
use super::placing::{self, CLEAR_COST, Field, Obstacle, Place, Request, spread};
use super::words::Words;
use crate::draw::scale::short_number;
use crate::draw::{Anchor, Face, Point, Rect, Stroke};

/// Sizes that names in the column may take, over the usual one, until they fit above each other.
const SHRINKS: [f64; 4] = [1.0, 0.94, 0.88, 0.82];

/// Width of the column of names over all panels, with the room for leaders.
#[must_use]
pub fn column_width(frame: &Frame, panels: &[Panel]) -> f64 {
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

fn column_words(frame: &Frame, series: &Series, shrink: f64) -> Words {
    let most = frame.body.width() * 0.24;
    let colour = series.role.label(&frame.colours);
    Words::new(frame.measures.label * shrink).with(&series.name, Face::Bold, colour, most, 2)
}

/// One label with the room it looks for.
struct Wish {
    words: Words,
    request: Request,
    kind: Kind,
}

/// What kind of label looks for room.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    /// Name of a curve: decides whether a column is needed.
    Name,
    /// Words that must be there: dimmed ground if a curve runs below.
    Needed,
    /// Words that may be left out where there is no clear room.
    Extra,
}

/// Draws all words of a panel; tells whether every name stands clear of the curves.
pub fn draw(frame: &mut Frame, panel: &Panel, plot: &Plot, column: Option<Rect>) -> bool {
    let field = field(frame, panel, plot);
    let in_column: Vec<usize> = match column {
        Some(column) => draw_column(frame, panel, plot, column),
        None => Vec::new(),
    };
    let mut wishes: Vec<Wish> = Vec::new();
    let shown = |marker: &&Marker| plot.area.grown(1.0).holds(plot.px(marker.at));
    wishes.extend(
        panel
            .markers
            .iter()
            .filter(shown)
            .filter_map(|marker| callout(frame, marker, plot)),
    );
    for (index, series) in panel.series.iter().enumerate() {
        if !series.name.is_empty() && !in_column.contains(&index) {
            wishes.extend(name(frame, index, series, plot));
        }
    }
    for (index, series) in panel.series.iter().enumerate() {
        wishes.extend(continuation(frame, index, series, plot, &panel.axis));
    }
    wishes.extend(panel.levels.iter().filter_map(|level| {
        let line = [
            plot.px([plot.x.range()[0], level.at]),
            plot.px([plot.x.range()[1], level.at]),
        ];
        note(
            frame,
            &level.label,
            places::along_level(frame, &line, &level.label, plot),
        )
    }));
    wishes.extend(
        panel
            .fills
            .iter()
            .filter_map(|fill| note(frame, &fill.label, places::inside_fill(frame, fill, plot))),
    );
    place_all(frame, &field, &wishes)
}

/// What is drawn already.
fn field(frame: &Frame, panel: &Panel, plot: &Plot) -> Field {
    let mut obstacles: Vec<Obstacle> = Vec::new();
    for (index, series) in panel.series.iter().enumerate() {
        for points in panel::visible(series, plot) {
            obstacles.push(Obstacle {
                points,
                owner: Some(index),
            });
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
    let taken = panel
        .markers
        .iter()
        .map(|marker| plot.px(marker.at))
        .map(|[px, py]| Rect::new(px - radius, py - radius, px + radius, py + radius))
        .collect();
    let mut bounds = plot.area.grown(-frame.measures.gap * 0.4);
    bounds.bottom -= frame.measures.gap * 0.3;
    Field {
        bounds,
        obstacles,
        taken,
        clearance: frame.measures.gap * 0.55,
    }
}

/// Names in the column, each at the height of its curve's end; returns which were placed there.
///
/// Curves that end before the right edge keep their names beside them.
fn draw_column(frame: &mut Frame, panel: &Panel, plot: &Plot, column: Rect) -> Vec<usize> {
    let mut ends: Vec<(usize, Point, f64)> = panel
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
    let ends = ends
        .into_iter()
        .map(|(index, end, _)| (index, end))
        .collect();
    let room = plot.area.height() + 2.0 * frame.measures.gap;
    let (ends, shrink) = fitting(frame, panel, ends, room);
    let blocks: Vec<Words> = ends
        .iter()
        .map(|(index, _)| column_words(frame, &panel.series[*index], shrink))
        .collect();
    let heights: Vec<f64> = blocks
        .iter()
        .map(|words| words.height() + 0.35 * frame.measures.gap)
        .collect();
    let wanted: Vec<f64> = ends.iter().map(|(_, end)| end[1]).collect();
    let top = plot.area.top - frame.measures.gap;
    let middles = spread(
        &wanted,
        &heights,
        top,
        plot.area.bottom + frame.measures.gap,
    );
    for (((index, end), words), middle) in ends.iter().zip(&blocks).zip(middles) {
        let left = column.left + leader_width(frame);
        let area = words.around(left + words.width() / 2.0, middle);
        let colour = panel.series[*index]
            .role
            .line(&frame.colours)
            .with_opacity(0.8);
        let leader = Stroke::solid(colour, frame.measures.rule);
        let gap = frame.measures.gap * 0.6;
        let path = vec![
            [end[0] + gap, end[1]],
            [end[0] + 1.6 * gap, end[1]],
            [left - 1.8 * gap, middle],
            [left - gap * 0.8, middle],
        ];
        frame.scene.polyline(path, leader);
        words.draw(&mut frame.scene, &area, Anchor::Start);
    }
    ends.into_iter().map(|(index, _)| index).collect()
}

/// The end of a curve at the right edge of the plot, if it has one there.
///
/// Also a point some way before it.
fn column_end(series: &Series, plot: &Plot) -> Option<(Point, Point)> {
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
    mut ends: Vec<(usize, Point)>,
    room: f64,
) -> (Vec<(usize, Point)>, f64) {
    let needed = |ends: &[(usize, Point)], shrink: f64| -> f64 {
        ends.iter()
            .map(|(index, _)| column_words(frame, &panel.series[*index], shrink).height())
            .map(|height| height + 0.35 * frame.measures.gap)
            .sum()
    };
    loop {
        for shrink in SHRINKS {
            if needed(&ends, shrink) <= room || ends.len() < 2 {
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

fn name(frame: &Frame, index: usize, series: &Series, plot: &Plot) -> Option<Wish> {
    let most = plot.area.width() * 0.42;
    let colour = series.role.label(&frame.colours);
    let words = Words::new(frame.measures.label).with(&series.name, Face::Bold, colour, most, 2);
    let pieces = panel::visible(series, plot);
    let mut candidates = places::beside_curve(frame, &pieces, &words);
    let vertices: Vec<Point> = pieces.into_iter().flatten().collect();
    candidates.extend(places::anywhere(plot, &words, &vertices, 70.0));
    (!words.is_empty()).then_some(Wish {
        words,
        request: Request {
            owner: Some(index),
            places: candidates,
        },
        kind: Kind::Name,
    })
}

fn callout(frame: &Frame, marker: &Marker, plot: &Plot) -> Option<Wish> {
    let most = plot.area.width() * 0.34;
    let colours = &frame.colours;
    let words = Words::new(frame.measures.text)
        .with(
            &marker.text,
            Face::Bold,
            marker.role.label(colours),
            most,
            2,
        )
        .with(&marker.detail, Face::Regular, colours.ink, most, 2);
    if words.is_empty() {
        return None;
    }
    let at = plot.px(marker.at);
    let mut candidates = places::around_point(frame, at, &words);
    candidates.extend(places::anywhere(plot, &words, &[at], 40.0));
    Some(Wish {
        words,
        request: Request {
            owner: None,
            places: candidates,
        },
        kind: Kind::Needed,
    })
}

/// "continues to 4 200 N" where a curve leaves the plot.
fn continuation(
    frame: &Frame,
    index: usize,
    series: &Series,
    plot: &Plot,
    axis: &Axis,
) -> Option<Wish> {
    let exit = *panel::exits(series, plot).first()?;
    let values = series.points.iter().map(|point| point[1]);
    let upwards = exit.towards[1] < 0.0;
    let furthest = if upwards {
        values.fold(f64::NEG_INFINITY, f64::max)
    } else {
        values.fold(f64::INFINITY, f64::min)
    };
    let digits = panel::digits_for(plot.y.range());
    let text = format!(
        "continues to {} {}",
        short_number(furthest, digits),
        axis.unit
    );
    let colour = series.role.label(&frame.colours);
    let words = Words::new(frame.measures.text).with(
        text.trim(),
        Face::Regular,
        colour,
        plot.area.width() * 0.4,
        2,
    );
    let candidates = places::near_exit(frame, exit.at, upwards, &words);
    Some(Wish {
        words,
        request: Request {
            owner: Some(index),
            places: candidates,
        },
        kind: Kind::Extra,
    })
}

fn note(frame: &Frame, text: &str, candidates: Vec<Place>) -> Option<Wish> {
    let words = places::note_words(frame, text);
    (!words.is_empty()).then_some(Wish {
        words,
        request: Request {
            owner: None,
            places: candidates,
        },
        kind: Kind::Needed,
    })
}

/// Finds the places, draws leaders first and words over them.
fn place_all(frame: &mut Frame, field: &Field, wishes: &[Wish]) -> bool {
    let requests: Vec<Request> = wishes.iter().map(|wish| wish.request.clone()).collect();
    let mut settled = placing::settle(field, &requests);
    for (wish, place) in wishes.iter().zip(&mut settled) {
        if wish.kind == Kind::Extra && place.is_some_and(|(_, cost)| cost >= CLEAR_COST) {
            *place = None;
        }
    }
    let mut clear = true;
    for (wish, place) in wishes.iter().zip(&settled) {
        let Some((place, cost)) = place else {
            clear &= wish.kind != Kind::Name;
            continue;
        };
        clear &= wish.kind != Kind::Name || *cost < CLEAR_COST;
        if *cost >= CLEAR_COST {
            // A curve runs below these words: dim it.
            let patch = place.area.grown(frame.measures.gap * 0.2);
            let ground = frame.colours.background.with_opacity(0.8);
            frame
                .scene
                .rounded_rectangle(patch, frame.measures.gap * 0.4, ground);
        }
        if place.leader {
            let from =
                placing::nearest_on(&place.area.grown(frame.measures.gap * 0.2), place.target);
            let to = short_of(place.target, from, panel::marker_radius(frame) * 1.3);
            frame.scene.line(
                from,
                to,
                Stroke::solid(frame.colours.muted, frame.measures.rule),
            );
        }
    }
    for (wish, place) in wishes.iter().zip(&settled) {
        if let Some((place, _)) = place {
            let middle = place.area.centre()[0];
            let anchor = if wish.kind == Kind::Name
                || (place.target[0] - middle).abs() < 0.3 * place.area.width()
            {
                Anchor::Middle
            } else if place.target[0] < middle {
                Anchor::Start
            } else {
                Anchor::End
            };
            wish.words.draw(&mut frame.scene, &place.area, anchor);
        }
    }
    clear
}

/// The point on the way from `from` to `target` that is `distance` short of the target.
fn short_of(target: Point, from: Point, distance: f64) -> Point {
    let (dx, dy) = (from[0] - target[0], from[1] - target[1]);
    let length = dx.hypot(dy).max(distance);
    [
        target[0] + dx / length * distance,
        target[1] + dy / length * distance,
    ]
}
