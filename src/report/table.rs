//! Tables of text for people.

use super::wrapping::{COLUMNS, HELD, held_together};
use comfy_table::{CellAlignment, ContentArrangement, Table, presets};

/// A plain table with numbers to the right.
#[must_use]
pub fn table(header: &[&str], rows: Vec<Vec<String>>, numbers_from: usize) -> String {
    let mut table = laid(header, rows, numbers_from);
    table.set_content_arrangement(ContentArrangement::Disabled);
    lines_of(&table)
}

/// The same no wider than a terminal: where it would be, cells have several lines.
#[must_use]
pub fn narrow_table(header: &[&str], rows: Vec<Vec<String>>, numbers_from: usize) -> String {
    let held = rows
        .into_iter()
        .map(|row| row.iter().map(|cell| held_together(cell)).collect());
    let mut table = laid(header, held.collect(), numbers_from);
    table
        .set_content_arrangement(ContentArrangement::Dynamic)
        .set_width(COLUMNS as u16);
    lines_of(&table).replace(HELD, " ")
}

fn laid(header: &[&str], rows: Vec<Vec<String>>, numbers_from: usize) -> Table {
    let mut table = Table::new();
    table
        .load_style(presets::NOTHING)
        .set_header(header.to_vec());
    for row in rows {
        table.add_row(row);
    }
    for index in numbers_from..header.len() {
        if let Some(column) = table.column_mut(index) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    table
}

fn lines_of(table: &Table) -> String {
    let text = table.to_string();
    let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
    lines.join("\n") + "\n"
}
