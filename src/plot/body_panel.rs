//! One body with its title, with what is drawn upon it, and with rows of numbers.
//!
//! In: a stick figure with marks, in metres, and a small table. Out: shapes in a frame, where a layout wants them.

use super::body_marks::{BodyMark, MarkedBody, draw_marks};
use super::frame::Frame;
use super::stick_figure::{self, Limbs, StickFigure, StickScale};
use crate::draw::{Face, Rect, Text, TextAnchor, lettering};

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

/// One table for all bodies.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct CommonTable {
    /// Rows of the table, the heads of the columns first.
    pub table: Vec<Vec<String>>,
    /// How many rows are heads.
    pub heads: usize,
}

/// How far points with their letters reach beyond the places that they mark, in the size of letters.
pub(super) const REACH: f64 = 0.8;

/// A body that reaches as far as everything drawn upon it, so that all finds room.
pub(super) fn reaching(panel: &BodyPanel) -> StickFigure {
    let mut figure = panel.figure.clone();
    let points = panel.marks.iter().flat_map(|mark| match mark {
        BodyMark::Line { points, .. } | BodyMark::Filled { points, .. } => points.clone(),
        BodyMark::Name { along, .. } => along.clone(),
        BodyMark::Lever { ends, .. } | BodyMark::Arrow { ends, .. } => ends.to_vec(),
        BodyMark::Point { at, .. } => vec![*at],
    });
    figure.supports.extend(points.map(|point| [point, point]));
    figure
}

/// Lines of a title, the last one just above the body.
pub(super) fn draw_title(frame: &mut Frame, title: &lettering::Fitted, place: Rect) {
    let mut baseline = place.top - 0.4 * title.size - lettering::fall(title.size);
    for line in title.lines.iter().rev() {
        let at = [place.centre()[0], baseline];
        let text = Text::new(at, line.clone(), title.size, Face::Bold, frame.colours.ink);
        frame.scene.text(text.anchored(TextAnchor::Middle));
        baseline -= lettering::line_step(title.size);
    }
}

pub(super) fn draw_body(
    frame: &mut Frame,
    panel: &BodyPanel,
    stretched: &StickFigure,
    scale: &StickScale,
    (place, names): (Rect, Rect),
) {
    let standing = stick_figure::standing(frame, stretched, scale, &place);
    let Some(standing) = standing else { return };
    let scene = &mut frame.scene;
    let has_filled = panel
        .marks
        .iter()
        .any(|mark| matches!(mark, BodyMark::Filled { .. }));
    let limbs = match has_filled {
        true => Limbs::Hollow,
        false => Limbs::Faint,
    };
    stick_figure::draw_standing(scene, &frame.colours, &panel.figure, &standing, limbs);
    let body = MarkedBody {
        marks: &panel.marks,
        limbs: &panel.figure.limbs,
        standing: &standing,
        place: names,
    };
    draw_marks(frame, &body);
}

/// The columns of a table: size of the letters and widths.
pub(super) struct Columns {
    size: f64,
    widths: Vec<f64>,
    /// How many columns a head spans; 0 where every head has its own.
    group: usize,
    gap: f64,
}

impl Columns {
    /// The columns at the usual size, smaller where the room is narrow.
    pub fn of(table: &[Vec<String>], frame: &Frame, room: f64) -> Self {
        let usual = frame.measures.text;
        let mut fitted = Self::sized(table, frame, usual);
        while fitted.total() > room && fitted.size > 0.6 * usual {
            fitted = Self::sized(table, frame, fitted.size * 0.97);
        }
        fitted
    }

    /// The columns with letters of a size.
    pub fn sized(table: &[Vec<String>], frame: &Frame, size: f64) -> Self {
        let columns = table.iter().map(Vec::len).max().unwrap_or(0);
        let spanning = table.iter().map(Vec::len).find(|cells| *cells < columns);
        let whole = || table.iter().filter(|row| row.len() == columns);
        Self {
            size,
            widths: (0..columns)
                .map(|column| {
                    let cells = whole().filter_map(|row| row.get(column));
                    let wide = cells.map(|cell| lettering::width(cell, size, Face::Bold));
                    wide.fold(0.0, f64::max)
                })
                .collect(),
            group: match spanning {
                Some(cells) if cells > 1 => (columns - 1) / (cells - 1),
                _ => 0,
            },
            gap: frame.measures.gap,
        }
    }

    /// Size of the letters.
    pub fn size(&self) -> f64 {
        self.size
    }

    /// Room before a column: more before a group than inside it.
    fn before(&self, column: usize) -> f64 {
        match (column, self.group) {
            (0, _) => 0.0,
            (_, 0) => 1.3 * self.gap,
            (_, group) if (column - 1).is_multiple_of(group) => 2.6 * self.gap,
            _ => 0.8 * self.gap,
        }
    }

    /// Left edge of a column, from that of the table.
    fn left(&self, column: usize) -> f64 {
        let gaps: f64 = (0..=column).map(|column| self.before(column)).sum();
        self.widths[..column].iter().sum::<f64>() + gaps
    }

    /// Width of the whole table.
    pub fn total(&self) -> f64 {
        let last = self.widths.len().saturating_sub(1);
        self.widths
            .last()
            .map_or(0.0, |width| self.left(last) + width)
    }

    /// Middle of what the head of this number spans.
    fn middle_of_group(&self, head: usize) -> f64 {
        let first = 1 + (head - 1) * self.group;
        let last = first + self.group - 1;
        f64::midpoint(self.left(first), self.left(last) + self.widths[last])
    }
}

/// Rows at the foot of a place, so many of them heads: names on the left, numbers flush on the right of their columns.
pub(super) fn draw_table(frame: &mut Frame, table: &[Vec<String>], heads: usize, place: Rect) {
    let gap = frame.measures.gap;
    let columns = Columns::of(table, frame, place.width() - 5.0 * gap);
    draw_columns(frame, table, (heads, true), &columns, place);
}

/// Rows in columns, so many of them heads; the first column holds names or is one of numbers.
pub(super) fn draw_columns(
    frame: &mut Frame,
    table: &[Vec<String>],
    (heads, has_names): (usize, bool),
    columns: &Columns,
    place: Rect,
) {
    let step = lettering::line_step(frame.measures.text);
    let top = place.bottom - step * table.len() as f64;
    let first = place.centre()[0] - columns.total() / 2.0;
    for (number, row) in table.iter().enumerate() {
        let baseline = top + step * number as f64 + lettering::rise(frame.measures.text);
        let spans = columns.group > 0 && row.len() < columns.widths.len();
        for (column, cell) in row.iter().enumerate() {
            let left = first + columns.left(column);
            let (face, colour) = match number {
                head if head < heads => (Face::Regular, frame.colours.muted),
                _ if column == 0 && has_names => (Face::Bold, frame.colours.ink),
                _ => (Face::Regular, frame.colours.ink),
            };
            let (x, anchor) = match column {
                head if spans && head > 0 => {
                    (first + columns.middle_of_group(head), TextAnchor::Middle)
                }
                0 if has_names => (left, TextAnchor::Start),
                _ => (left + columns.widths[column], TextAnchor::End),
            };
            let text = Text::new([x, baseline], cell.clone(), columns.size, face, colour);
            frame.scene.text(text.anchored(anchor));
        }
    }
}
