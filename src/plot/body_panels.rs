//! Bodies side by side with lines, arrows and points upon them, and numbers below each.
//!
//! In: stick figures with marks, in metres, and small tables. Out: a scene; all bodies stand on one scale.

use super::frame::{Frame, Heading, Look};
use super::panel_contents::Role;
use super::stick_figure::{self, StickFigure, StickScale};
use crate::draw::{Colour, Face, PixelPoint, Rect, Scene, Stroke, Text, TextAnchor, lettering};
use crate::error::{Error, PlotFault, Plotted, Result};

/// Something drawn upon a body, in metres as the body is.
#[derive(Debug, Clone, PartialEq)]
pub enum BodyMark {
    /// A line along points; its width is a share of the widest line, 0 to 1.
    Line {
        /// The points in order.
        points: Vec<[f64; 2]>,
        /// Whose colour it takes.
        role: Role,
        /// Share of the widest line.
        width: f64,
    },
    /// A thin dashed line that measures a distance.
    Lever {
        /// From where to where.
        ends: [[f64; 2]; 2],
        /// Whose colour it takes.
        role: Role,
    },
    /// An arrow, its point at the second end.
    Arrow {
        /// From where to where.
        ends: [[f64; 2]; 2],
        /// Whose colour it takes.
        role: Role,
    },
    /// A point with a letter or a few words beside it.
    Point {
        /// Where it is.
        at: [f64; 2],
        /// What stands beside it; may be empty.
        text: String,
        /// Whose colour it takes.
        role: Role,
    },
}

/// One body with what is drawn upon it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct BodyPanel {
    /// What it shows: "Hardest, 14 cm off the chest".
    pub title: String,
    /// The body.
    pub figure: StickFigure,
    /// What is drawn upon it, in this order.
    pub marks: Vec<BodyMark>,
    /// Rows of the table below it, the heads of the columns first.
    pub table: Vec<Vec<String>>,
}

/// Bodies side by side.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct BodyPanels {
    /// The words around them.
    pub heading: Heading,
    /// The bodies from left to right.
    pub panels: Vec<BodyPanel>,
}

/// Most bodies that are told apart side by side, assumed.
const MOST_BODIES: usize = 4;
/// How far points with their letters reach beyond the places that they mark, in the size of letters.
const REACH: f64 = 0.8;
/// Tables stand beside the bodies only where that makes these so much larger: below them each has its own middle.
const MUCH_LARGER: f64 = 1.3;
/// Width of the widest line on a slide, pixels (a drawing's measure).
const WIDEST: f64 = 15.0;
/// Width of the narrowest line on a slide, pixels.
const NARROWEST: f64 = 4.0;

impl BodyPanels {
    /// The bodies as a scene.
    ///
    /// # Errors
    /// If there is no body or more than four, or the canvas is too small.
    pub fn scene(&self, look: Look) -> Result<Scene> {
        if self.panels.is_empty() || self.panels.len() > MOST_BODIES {
            return Err(Error::bad(PlotFault::PanelCount {
                of: Plotted::Bodies,
                count: self.panels.len(),
                most: MOST_BODIES,
            }));
        }
        let mut frame = Frame::new(look, &self.heading);
        let (text, gap) = (frame.measures.text, frame.measures.gap);
        let row = lettering::line_step(text);
        let cell = frame.body.width() / self.panels.len() as f64;
        let titles: Vec<lettering::Fitted> = self
            .panels
            .iter()
            .map(|panel| lettering::fit(&panel.title, text, 0.8 * text, Face::Bold, cell - gap, 2))
            .collect();
        let lines = titles.iter().map(|title| title.lines.len()).max();
        let bodies = Rect {
            top: frame.body.top + (lines.unwrap_or(0) as f64 + 0.4) * row + REACH * text,
            ..frame.body
        };
        let stretched: Vec<StickFigure> = self.panels.iter().map(reaching).collect();
        let layout = self.layout(&frame, bodies, cell, &stretched);
        if layout.height < 4.0 * text || layout.width < 3.0 * text {
            return Err(Error::bad(PlotFault::TooSmall(Plotted::Bodies)));
        }
        for (index, panel) in self.panels.iter().enumerate() {
            let left = bodies.left + index as f64 * cell;
            let top = bodies.top - REACH * text;
            let whole = Rect::new(left, top, left + cell, bodies.bottom);
            let body = Rect::new(
                left,
                bodies.top,
                left + layout.width,
                bodies.top + layout.height,
            );
            draw_title(&mut frame, &titles[index], whole);
            if let Some(scale) = &layout.scale {
                draw_body(&mut frame, panel, &stretched[index], scale, body);
            }
            let table = if layout.is_beside {
                Rect::new(body.right, whole.top, whole.right, whole.bottom)
            } else {
                whole
            };
            draw_table(&mut frame, &panel.table, table);
        }
        Ok(frame.scene)
    }

    /// Tables below the bodies or beside them: whatever lets the bodies be larger.
    fn layout(&self, frame: &Frame, bodies: Rect, cell: f64, drawn: &[StickFigure]) -> BodyLayout {
        let gap = frame.measures.gap;
        let rows = self.panels.iter().map(|panel| panel.table.len()).max();
        let foot = REACH * frame.measures.text;
        let below =
            lettering::line_step(frame.measures.text) * rows.unwrap_or(0) as f64 + gap + foot;
        let tables = self.panels.iter();
        let widest = tables
            .map(|panel| Columns::of(&panel.table, frame, f64::INFINITY).total())
            .fold(0.0, f64::max);
        let figures: Vec<&StickFigure> = drawn.iter().collect();
        let fitted = |width: f64, height: f64, is_beside: bool| BodyLayout {
            scale: StickScale::fitting(&figures, 0.95 * width, height),
            width,
            height,
            is_beside,
        };
        let under = fitted(cell, bodies.height() - below, false);
        let side = fitted(cell - widest - 3.0 * gap, bodies.height() - foot, true);
        let size = |layout: &BodyLayout| match (&layout.scale, layout.width > 0.0) {
            (Some(scale), true) => scale.px_per_m(),
            _ => 0.0,
        };
        if size(&side) > MUCH_LARGER * size(&under) {
            side
        } else {
            under
        }
    }
}

/// How much of each cell bodies have, and where the tables stand.
struct BodyLayout {
    scale: Option<StickScale>,
    width: f64,
    height: f64,
    is_beside: bool,
}

/// A body that reaches as far as everything drawn upon it, so that all finds room.
fn reaching(panel: &BodyPanel) -> StickFigure {
    let mut figure = panel.figure.clone();
    let points = panel.marks.iter().flat_map(|mark| match mark {
        BodyMark::Line { points, .. } => points.clone(),
        BodyMark::Lever { ends, .. } | BodyMark::Arrow { ends, .. } => ends.to_vec(),
        BodyMark::Point { at, .. } => vec![*at],
    });
    figure.supports.extend(points.map(|point| [point, point]));
    figure
}

/// Lines of a title, the last one just above the body.
fn draw_title(frame: &mut Frame, title: &lettering::Fitted, place: Rect) {
    let mut baseline = place.top - 0.4 * title.size - lettering::fall(title.size);
    for line in title.lines.iter().rev() {
        let at = [place.centre()[0], baseline];
        let text = Text::new(at, line.clone(), title.size, Face::Bold, frame.colours.ink);
        frame.scene.text(text.anchored(TextAnchor::Middle));
        baseline -= lettering::line_step(title.size);
    }
}

fn draw_body(
    frame: &mut Frame,
    panel: &BodyPanel,
    stretched: &StickFigure,
    scale: &StickScale,
    place: Rect,
) {
    let standing = stick_figure::standing(frame, stretched, scale, &place);
    let Some(standing) = standing else { return };
    let scene = &mut frame.scene;
    stick_figure::draw_standing(scene, &frame.colours, &panel.figure, &standing, true);
    let unit = frame.measures.unit;
    for mark in &panel.marks {
        let px = |at: &[f64; 2]| standing.px(*at);
        match mark {
            BodyMark::Line {
                points,
                role,
                width,
            } => {
                let wide = unit * (NARROWEST + width.clamp(0.0, 1.0) * (WIDEST - NARROWEST));
                let points: Vec<PixelPoint> = points.iter().map(px).collect();
                let ground = frame.colours.background;
                // A rim of the ground tells lines apart that lie upon each other.
                let rim = Stroke::solid(ground, wide + 3.0 * unit);
                frame.scene.polyline(points.clone(), rim);
                let line = Stroke::solid(role.line(&frame.colours), wide);
                frame.scene.polyline(points, line);
            }
            BodyMark::Lever { ends, role } => {
                let colour = role.label(&frame.colours);
                let line = Stroke::solid(colour, 4.0 * unit).dashed(&[2.2, 1.6]);
                frame.scene.line(px(&ends[0]), px(&ends[1]), line);
            }
            BodyMark::Arrow { ends, role } => {
                let colour = role.line(&frame.colours);
                draw_arrow(&mut frame.scene, ends.map(|end| px(&end)), colour, unit);
            }
            BodyMark::Point { at, text, role } => draw_point(frame, px(at), text, *role),
        }
    }
}

/// A straight shaft with a filled head.
fn draw_arrow(scene: &mut Scene, [from, to]: [PixelPoint; 2], colour: Colour, unit: f64) {
    let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
    let length = dx.hypot(dy);
    if length < 1.0 {
        return;
    }
    let along = [dx / length, dy / length];
    let head = (26.0 * unit).min(0.6 * length);
    let neck = [to[0] - along[0] * head, to[1] - along[1] * head];
    scene.line(from, neck, Stroke::solid(colour, 9.0 * unit));
    let side = 0.5 * head;
    let corners = vec![
        to,
        [neck[0] - along[1] * side, neck[1] + along[0] * side],
        [neck[0] + along[1] * side, neck[1] - along[0] * side],
    ];
    scene.polygon(corners, colour);
}

/// A point; words of one or two letters stand in it, longer ones beside it.
fn draw_point(frame: &mut Frame, at: PixelPoint, words: &str, role: Role) {
    let size = frame.measures.text;
    let inside = !words.is_empty() && words.chars().count() < 3;
    let radius = if inside { 0.62 * size } else { 0.24 * size };
    let (ground, colour) = (frame.colours.background, role.label(&frame.colours));
    frame
        .scene
        .disc(at, radius + 2.0 * frame.measures.unit, ground);
    frame.scene.disc(at, radius, colour);
    let baseline = at[1] + lettering::capitals(size) / 2.0;
    let text = if inside {
        let place = [at[0], at[1] + 0.8 * lettering::capitals(size) / 2.0];
        Text::new(place, words, 0.8 * size, Face::Bold, ground).anchored(TextAnchor::Middle)
    } else {
        let place = [at[0] + radius + 0.3 * size, baseline];
        Text::new(place, words, size, Face::Bold, colour)
    };
    frame.scene.text(text);
}

/// The columns of a table: size of the letters and widths.
struct Columns {
    size: f64,
    widths: Vec<f64>,
    between: f64,
}

impl Columns {
    /// The columns at the usual size, smaller where the room is narrow.
    fn of(table: &[Vec<String>], frame: &Frame, room: f64) -> Self {
        let columns = table.iter().map(Vec::len).max().unwrap_or(0);
        let at = |size: f64| Self {
            size,
            widths: (0..columns)
                .map(|column| {
                    let cells = table.iter().filter_map(|row| row.get(column));
                    let wide = cells.map(|cell| lettering::width(cell, size, Face::Bold));
                    wide.fold(0.0, f64::max)
                })
                .collect(),
            between: 1.3 * frame.measures.gap,
        };
        let usual = frame.measures.text;
        let mut fitted = at(usual);
        while fitted.total() > room && fitted.size > 0.6 * usual {
            fitted = at(fitted.size * 0.97);
        }
        fitted
    }

    /// Width of the whole table.
    fn total(&self) -> f64 {
        let gaps = self.widths.len().saturating_sub(1);
        self.widths.iter().sum::<f64>() + self.between * gaps as f64
    }
}

/// Rows at the foot of a place: names on the left, numbers flush on the right of their columns.
fn draw_table(frame: &mut Frame, table: &[Vec<String>], place: Rect) {
    let gap = frame.measures.gap;
    let columns = Columns::of(table, frame, place.width() - 5.0 * gap);
    let step = lettering::line_step(frame.measures.text);
    let top = place.bottom - step * table.len() as f64;
    let first = place.centre()[0] - columns.total() / 2.0;
    for (number, row) in table.iter().enumerate() {
        let baseline = top + step * number as f64 + lettering::rise(frame.measures.text);
        let mut left = first;
        for (column, cell) in row.iter().enumerate() {
            let (face, colour) = match number {
                0 => (Face::Regular, frame.colours.muted),
                _ if column == 0 => (Face::Bold, frame.colours.ink),
                _ => (Face::Regular, frame.colours.ink),
            };
            let (x, anchor) = match column {
                0 => (left, TextAnchor::Start),
                _ => (left + columns.widths[column], TextAnchor::End),
            };
            let text = Text::new([x, baseline], cell.clone(), columns.size, face, colour);
            frame.scene.text(text.anchored(anchor));
            left += columns.widths[column] + columns.between;
        }
    }
}
