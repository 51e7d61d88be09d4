//! The one-page sheet of a session as a picture: what the lifter and the coach hold in their hands.
//!
//! In: a plan in words, a paper. Out: a scene that fills exactly one page; type shrinks until everything,
//! the cautions included, stands on it.

use super::sheet_page::{Column, Ink, Paper, SheetPage};
use crate::draw::{Face, Rect, Scene, Stroke, lettering};
use crate::error::{Error, FigureFault, Result};
use crate::narrative::plan_words::{PlanWords, SetRow};
use crate::narrative::sheet_words::{
    CAUTIONS, COLUMN_HEADS, FILL_IN, SheetBlock, blocks, sheet_description, sheet_facts,
    sheet_heading,
};

/// Sizes that are tried, as shares of the usual one.
const SCALES: [f64; 11] = [
    1.18, 1.12, 1.06, 1.0, 0.95, 0.9, 0.86, 0.82, 0.78, 0.74, 0.7,
];

/// Widths of the columns of the table, em of running text; the one without a width takes the rest.
const COLUMN_WIDTHS: [f64; 7] = [5.6, 6.4, 4.4, 6.8, 6.6, 0.0, 7.6];
/// Columns that hold one text each; how to load and the boxes to tick follow.
const PLAIN_COLUMNS: usize = 5;

/// The sheet, and the share of the usual type size that it took.
///
/// **Fails** when the session is too long for one page in letters that can be read.
pub fn session_sheet(title: &str, words: &PlanWords, paper: Paper) -> Result<(Scene, f64)> {
    for scale in SCALES {
        let mut page = SheetPage::new(paper, scale);
        page.scene.title = format!("{}: {title}", words.movement);
        page.scene.description = sheet_description(words);
        let cautions = Cautions::of(&page, words);
        head(&mut page, title, words);
        sets(&mut page, &words.rows);
        columns(&mut page, words);
        let height = cautions.height(&page);
        if page.y + page.em(0.8) + height <= page.area.bottom {
            cautions.draw(&mut page, height);
            return Ok((page.scene, scale));
        }
    }
    Err(Error::no_answer(FigureFault::PageFull))
}

/// Title, whose session it is, lines to fill in.
fn head(page: &mut SheetPage, title: &str, words: &PlanWords) {
    let size = page.em(2.1);
    let (left, width) = (page.area.left, page.area.width());
    let heading = sheet_heading(title, words);
    let fitted = lettering::fit(&heading, size, 0.6 * size, Face::Bold, width, 1);
    let line = fitted.lines.first().cloned().unwrap_or_default();
    let mut style = page.style(2.1, Face::Bold, Ink::Plain);
    style.size = fitted.size;
    page.write(left, page.y, &line, style);
    page.y += lettering::line_step(fitted.size) + page.em(0.2);
    let running = page.style(1.0, Face::Regular, Ink::Muted);
    page.y = page.paragraph(Column { left, width }, page.y, &sheet_facts(words), running);
    page.y += page.em(1.5);
    fill_in(page);
    page.y += page.em(1.1);
}

/// Names with a line behind each.
fn fill_in(page: &mut SheetPage) {
    let third = page.area.width() / 3.0;
    let small = page.style(0.92, Face::Regular, Ink::Muted);
    for (index, name) in FILL_IN.into_iter().enumerate() {
        let from = page.area.left + third * index as f64;
        page.write_at([from, page.y], name, small);
        let start = from + lettering::width(name, small.size, small.face) + page.em(0.5);
        page.rule(start, from + third - page.em(1.2), page.y + 2.0, 1.0);
    }
}

/// Left edges and widths of the columns.
fn places(page: &SheetPage) -> [Column; 7] {
    let fixed: f64 = COLUMN_WIDTHS.iter().map(|width| page.em(*width)).sum();
    let rest = page.area.width() - fixed;
    let mut left = page.area.left;
    COLUMN_WIDTHS.map(|width| {
        let width = if width > 0.0 { page.em(width) } else { rest };
        let place = Column { left, width };
        left += width;
        place
    })
}

fn sets(page: &mut SheetPage, rows: &[SetRow]) {
    let places = places(page);
    let small = page.style(0.86, Face::Bold, Ink::Muted);
    for (head, place) in COLUMN_HEADS.into_iter().zip(&places) {
        page.write(place.left + page.em(0.4), page.y, head, small);
    }
    page.y += lettering::line_step(small.size) + page.em(0.2);
    page.rule(page.area.left, page.area.right, page.y, 1.6);
    for row in rows {
        set(page, row, &places);
    }
    page.y += page.em(0.9);
}

/// One row on its ground: a warm-up small and muted, a working set large and shaded.
fn set(page: &mut SheetPage, row: &SetRow, places: &[Column; 7]) {
    let top = page.y;
    let pad = page.em(if row.is_warm_up { 0.22 } else { 0.42 });
    // Drawn after its height is known, so the ground goes in before the text.
    let ground = page.scene.shapes.len();
    let cells = cells(page, row, places, top + pad);
    let how = how_to_load(page, row, places[PLAIN_COLUMNS], top + pad);
    let last = places[PLAIN_COLUMNS + 1].left;
    boxes(page, row, last, top + pad);
    page.y = f64::max(cells, how) + pad;
    if !row.is_warm_up {
        let area = Rect::new(page.area.left, top, page.area.right, page.y);
        page.scene.rectangle(area, page.colours.shade);
        if let Some(shade) = page.scene.shapes.pop() {
            page.scene.shapes.insert(ground, shade);
        }
    }
    page.rule(page.area.left, page.area.right, page.y, 0.7);
}

/// Size of a row's words, em.
fn row_size(row: &SetRow) -> f64 {
    if row.is_warm_up { 0.96 } else { 1.06 }
}

fn row_ink(row: &SetRow) -> Ink {
    if row.is_warm_up {
        Ink::Muted
    } else {
        Ink::Plain
    }
}

/// The cells that hold one text each; returns the lower edge of the tallest.
fn cells(page: &mut SheetPage, row: &SetRow, places: &[Column; 7], top: f64) -> f64 {
    let strong = if row.is_warm_up {
        Face::Regular
    } else {
        Face::Bold
    };
    let percent = format!("{} %", row.percent);
    let cells: [(&str, Face); PLAIN_COLUMNS] = [
        (&row.name, Face::Regular),
        (&row.load, strong),
        (&percent, Face::Regular),
        (&row.repetitions, strong),
        (&row.rest, Face::Regular),
    ];
    let mut bottom = page.y;
    for ((content, face), place) in cells.into_iter().zip(places) {
        let style = page.style(row_size(row), face, row_ink(row));
        let inner = Column {
            left: place.left + page.em(0.4),
            width: place.width - page.em(0.6),
        };
        bottom = f64::max(bottom, page.paragraph(inner, top, content, style));
    }
    bottom
}

/// How the set is loaded, and below it what it is for; returns the lower edge.
fn how_to_load(page: &mut SheetPage, row: &SetRow, place: Column, top: f64) -> f64 {
    let inner = Column {
        left: place.left + page.em(0.4),
        width: place.width - page.em(0.8),
    };
    let style = page.style(row_size(row), Face::Regular, row_ink(row));
    let below = page.paragraph(inner, top, &row.how, style);
    if row.is_warm_up && !row.has_notes {
        return below;
    }
    let small = page.style(0.84, Face::Regular, Ink::Muted);
    page.paragraph(inner, below, &row.intent, small)
}

/// A box to tick for each set of the row.
fn boxes(page: &mut SheetPage, row: &SetRow, from: f64, top: f64) {
    let side = 0.95 * page.em(row_size(row));
    for index in 0..row.sets {
        let left = from + page.em(0.4) + index as f64 * 1.4 * side;
        let area = Rect::new(left, top + 1.0, left + side, top + side + 1.0);
        page.outline(area, Stroke::solid(page.colours.muted, 1.0));
    }
}

/// Two columns: how it is done at the left, who helps and what to expect at the right.
fn columns(page: &mut SheetPage, words: &PlanWords) {
    let gap = page.em(2.0);
    let width = (page.area.width() - gap) / 2.0;
    let from = page.area.left;
    let [left, right] = blocks(words);
    let first = draw_blocks(page, Column { left: from, width }, &left);
    let beside = from + width + gap;
    let second = draw_blocks(
        page,
        Column {
            left: beside,
            width,
        },
        &right,
    );
    page.y = f64::max(first, second);
}

fn draw_blocks(page: &mut SheetPage, column: Column, blocks: &[SheetBlock]) -> f64 {
    let mut y = page.y;
    let head = page.style(1.0, Face::Bold, Ink::Plain);
    let text = page.style(0.9, Face::Regular, Ink::Plain);
    for block in blocks {
        page.write(column.left, y, block.title, head);
        y += lettering::line_step(head.size) + page.em(0.1);
        for line in &block.lines {
            y = page.paragraph(column, y, line, text) + page.em(0.22);
        }
        y += page.em(0.5);
    }
    y
}

/// Cautions in two columns, split where both are about as long.
struct Cautions {
    sides: [Vec<Vec<String>>; 2],
    width: f64,
}

impl Cautions {
    fn of(page: &SheetPage, words: &PlanWords) -> Self {
        let width = (page.area.width() - page.em(4.0)) / 2.0;
        let most = width - page.em(0.9);
        let wrap = |caution: &String| lettering::wrap(caution, page.em(0.86), Face::Regular, most);
        let mut left: Vec<Vec<String>> = words.cautions.iter().map(wrap).collect();
        let count = |part: &[Vec<String>]| part.iter().map(Vec::len).sum::<usize>();
        let longer = |at: &usize| count(&left[..*at]).max(count(&left[*at..]));
        let split = (0..=left.len()).min_by_key(longer).unwrap_or(left.len());
        let right = left.split_off(split);
        Self {
            sides: [left, right],
            width,
        }
    }

    fn height(&self, page: &SheetPage) -> f64 {
        let [left, right] = self.sides.each_ref().map(|side| {
            let lines: usize = side.iter().map(Vec::len).sum();
            lines as f64 * lettering::line_step(page.em(0.86)) + side.len() as f64 * page.em(0.2)
        });
        f64::max(left, right) + lettering::line_step(page.em(1.0)) + page.em(1.7)
    }

    /// The box at the foot of the page.
    fn draw(&self, page: &mut SheetPage, height: f64) {
        let area = Rect {
            top: page.area.bottom - height,
            ..page.area
        };
        page.outline(area, Stroke::solid(page.colours.series_line(1), 1.8));
        let head = page.style(1.0, Face::Bold, Ink::Warning);
        let inner = area.left + page.em(1.0);
        let top = area.top + page.em(0.7);
        page.write(inner, top, CAUTIONS, head);
        let top = top + lettering::line_step(head.size) + page.em(0.2);
        for (column, side) in self.sides.iter().enumerate() {
            let from = inner + column as f64 * (self.width + page.em(2.0));
            draw_side(page, side, from, top);
        }
    }
}

/// Cautions below each other, a dot before each.
fn draw_side(page: &mut SheetPage, side: &[Vec<String>], from: f64, top: f64) {
    let text = page.style(0.86, Face::Regular, Ink::Plain);
    let warning = page.colours.series_line(1);
    let mut y = top;
    for lines in side {
        let dot = [from + page.em(0.2), y + 0.62 * text.size];
        page.scene.disc(dot, 0.12 * text.size, warning);
        for line in lines {
            page.write(from + page.em(0.9), y, line, text);
            y += lettering::line_step(text.size);
        }
        y += page.em(0.2);
    }
}
