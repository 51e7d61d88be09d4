//! Tidy tables: what CSV and workbooks hold. Their rows are the objects of JSON, so that all say the same numbers under
//! the same names.
//!
//! In: rows of JSON. Out: [`TidyTable`]: names of columns, cells; CSV of it.

use super::csv::rows_to_csv;
use super::json::unsigned;
use crate::figures::{DataTable, Sheet};
use serde::Serialize;
use serde_json::Value;
use std::borrow::Cow;
use std::collections::HashMap;

/// Names and values of one row in their order.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Cells(Vec<(String, Value)>);

impl Cells {
    /// The plain values of a record: objects flattened with dots, lists of plain values joined, lists of objects left out.
    pub fn of<T: Serialize>(record: &T) -> Self {
        Self::default().and(record)
    }

    /// The same row with the values of another record behind.
    #[must_use]
    pub(super) fn and<T: Serialize>(mut self, record: &T) -> Self {
        let value = serde_json::to_value(record).expect("a row is a struct with texts for keys");
        self.flatten("", value);
        self
    }

    fn flatten(&mut self, path: &str, value: Value) {
        match value {
            Value::Object(map) => {
                for (key, inner) in map {
                    let joined = match path {
                        "" => key,
                        path => format!("{path}.{key}"),
                    };
                    self.flatten(&joined, inner);
                }
            }
            Value::Array(list) if list.iter().any(Value::is_object) => {}
            Value::Array(list) => {
                let words: Vec<String> = list.iter().map(plain).collect();
                self.0.push((path.to_owned(), words.join("; ").into()));
            }
            Value::Number(number) if number.as_f64() == Some(0.0) && number.is_f64() => {
                self.0.push((path.to_owned(), Value::from(0.0)));
            }
            plain => self.0.push((path.to_owned(), plain)),
        }
    }
}

/// What a figure draws, as a table.
#[must_use]
pub fn sheet_data(sheet: &Sheet) -> TidyTable {
    TidyTable::of_figure(&sheet.data)
}

/// A plain value as text.
fn plain(value: &Value) -> String {
    match value {
        Value::String(text) => text.clone(),
        Value::Null => String::new(),
        other => other.to_string(),
    }
}

/// One row a sample (or set, value, muscle), one column a quantity with its unit in the name.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct TidyTable {
    columns: Vec<String>,
    rows: Vec<Vec<Value>>,
    drawn: Option<DrawnColumns>,
}

/// Columns that a workbook draws as a chart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DrawnColumns {
    /// The column along the axis.
    pub along: &'static str,
    /// The column whose values are drawn.
    pub values: &'static str,
    /// Whether both are numbers, so that places keep their distances.
    pub as_curve: bool,
}

impl TidyTable {
    /// A table of rows; a column that a row does not have is empty there.
    pub fn of(rows: impl IntoIterator<Item = Cells>) -> Self {
        let mut table = Self::default();
        let mut places: HashMap<String, usize> = HashMap::new();
        for Cells(cells) in rows {
            let mut row = vec![Value::Null; table.columns.len()];
            for (name, value) in cells {
                let next = table.columns.len();
                let place = *places.entry(name.clone()).or_insert(next);
                if place == next {
                    table.columns.push(name);
                    row.push(Value::Null);
                }
                row[place] = value;
            }
            table.rows.push(row);
        }
        for row in &mut table.rows {
            row.resize(table.columns.len(), Value::Null);
        }
        table.without_bare_objects()
    }

    /// The numbers beside a figure: cells that read as numbers are numbers.
    fn of_figure(data: &DataTable) -> Self {
        let cell = |cell: &String| match cell.parse::<f64>() {
            Ok(number) => Value::from(unsigned(number)),
            Err(_) => Value::from(cell.as_str()),
        };
        let row = |row: &Vec<String>| row.iter().map(cell).collect();
        Self {
            columns: data.header.clone(),
            rows: data.rows.iter().map(row).collect(),
            drawn: None,
        }
    }

    /// The same without the empty column of an object that some rows do not have: its parts have columns of their own.
    fn without_bare_objects(mut self) -> Self {
        let has_parts = |name: &String| {
            let head = format!("{name}.");
            self.columns.iter().any(|other| other.starts_with(&head))
        };
        let stays: Vec<bool> = self.columns.iter().map(|name| !has_parts(name)).collect();
        if stays.contains(&false) {
            let mut places = stays.iter();
            self.columns.retain(|_| places.next() == Some(&true));
            for row in &mut self.rows {
                let mut places = stays.iter();
                row.retain(|_| places.next() == Some(&true));
            }
        }
        self
    }

    /// The same with a chart of two of its columns in a workbook.
    #[must_use]
    pub(super) const fn drawn(mut self, columns: DrawnColumns) -> Self {
        self.drawn = Some(columns);
        self
    }

    /// What a workbook draws, as far as the table has it.
    #[must_use]
    pub fn chart(&self) -> Option<DrawnColumns> {
        let has = |name: &str| self.columns.iter().any(|column| column == name);
        let chart = self.drawn?;
        (has(chart.along) && has(chart.values) && !self.rows.is_empty()).then_some(chart)
    }

    /// The names of the columns.
    #[must_use]
    pub fn columns(&self) -> &[String] {
        &self.columns
    }

    /// The cells, row by row: numbers, texts, true or false, or nothing.
    #[must_use]
    pub fn rows(&self) -> &[Vec<Value>] {
        &self.rows
    }

    /// The table as CSV, texts safe to open in a spreadsheet.
    #[must_use]
    pub fn csv(&self) -> String {
        let header: Vec<&str> = self.columns.iter().map(String::as_str).collect();
        let cell = |value: &Value| match value {
            Value::String(text) => guarded(text).into_owned(),
            other => plain(other),
        };
        let rows = self.rows.iter();
        rows_to_csv(&header, rows.map(|row| row.iter().map(cell).collect()))
    }
}

/// A text that no spreadsheet takes for a formula: with an apostrophe before it where it begins with `=`, `+`, `-`, `@`,
/// a tabulator or a carriage return.
#[must_use]
pub(super) fn guarded(text: &str) -> Cow<'_, str> {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        Cow::Owned(format!("'{text}"))
    } else {
        Cow::Borrowed(text)
    }
}
