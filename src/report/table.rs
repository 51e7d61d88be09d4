//! Tables of text for people.

use comfy_table::{CellAlignment, ContentArrangement, Table, presets};

/// A plain table with numbers to the right.
#[must_use]
pub fn table(header: &[&str], rows: Vec<Vec<String>>, numbers_from: usize) -> String {
    let mut table = Table::new();
    table
        .load_style(presets::NOTHING)
        .set_content_arrangement(ContentArrangement::Disabled)
        .set_header(header.to_vec());
    for row in rows {
        table.add_row(row);
    }
    for index in numbers_from..header.len() {
        if let Some(column) = table.column_mut(index) {
            column.set_cell_alignment(CellAlignment::Right);
        }
    }
    let text = table.to_string();
    let lines: Vec<&str> = text.lines().map(str::trim_end).collect();
    lines.join("\n") + "\n"
}
