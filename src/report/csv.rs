//! CSV: one row a sample, the header names quantity and unit.

use super::sample::samples;
use crate::error::{Error, Result};
use crate::study::{SetupStudy, Study};

/// One curve as CSV; with detail a column for every joint angle, torque, reaction and muscle value.
///
/// **Fails** never for results of `study`.
pub fn curve_csv(study: &Study, setup: Option<&SetupStudy>, with_detail: bool) -> Result<String> {
    let rows: Vec<Vec<(String, String)>> = samples(study, setup, with_detail)
        .iter()
        .map(row)
        .collect::<Result<_>>()?;
    let header: Vec<&str> = rows
        .first()
        .map(|row| row.iter().map(|cell| cell.0.as_str()).collect())
        .unwrap_or_default();
    rows_to_csv(
        &header,
        rows.iter()
            .map(|row| row.iter().map(|cell| cell.1.clone()).collect()),
    )
}

/// A sample's cells, objects flattened with dots.
fn row(sample: &super::Sample) -> Result<Vec<(String, String)>> {
    let value = serde_json::to_value(sample)
        .map_err(|fault| Error::bad(format!("the result cannot be written as CSV: {fault}")))?;
    let mut cells = Vec::new();
    flatten("", &value, &mut cells);
    Ok(cells)
}

fn flatten(path: &str, value: &serde_json::Value, cells: &mut Vec<(String, String)>) {
    let joined = |key: &str| {
        if path.is_empty() {
            key.to_owned()
        } else {
            format!("{path}.{key}")
        }
    };
    match value {
        serde_json::Value::Object(map) => {
            for (key, inner) in map {
                flatten(&joined(key), inner, cells);
            }
        }
        serde_json::Value::Array(list) => {
            for inner in list {
                let name = inner.get("name").and_then(|n| n.as_str()).unwrap_or("");
                flatten(&joined(name), inner, cells);
            }
        }
        serde_json::Value::String(_) if path.ends_with(".name") => {}
        serde_json::Value::String(text) => cells.push((path.to_owned(), text.clone())),
        serde_json::Value::Null => cells.push((path.to_owned(), String::new())),
        other => cells.push((path.to_owned(), other.to_string())),
    }
}

/// Any table as CSV.
///
/// **Fails** only if memory cannot be written.
pub fn rows_to_csv(header: &[&str], rows: impl Iterator<Item = Vec<String>>) -> Result<String> {
    let fault = |fault: &dyn std::fmt::Display| {
        Error::bad(format!("the result cannot be written as CSV: {fault}"))
    };
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(header).map_err(|f| fault(&f))?;
    for row in rows {
        writer.write_record(row).map_err(|f| fault(&f))?;
    }
    let bytes = writer.into_inner().map_err(|f| fault(&f))?;
    String::from_utf8(bytes).map_err(|f| fault(&f))
}
