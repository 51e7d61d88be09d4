//! A tidy table as a workbook: numbers as numbers, the header bold and in sight, what the columns mean and how it was
//! made on sheets of their own.
//!
//! In: a [`TidyTable`], the record of its making. Out: the bytes of an .xlsx file, the same every time.

use super::data_dictionary::column_meaning;
use super::run_record::RunRecord;
use super::tidy_table::{TidyTable, guarded};
use rust_xlsxwriter::{DocProperties, ExcelDateTime, Format, Workbook, Worksheet, XlsxError};
use serde_json::Value;

/// Names of the sheets.
const SHEETS: [&str; 3] = ["data", "columns", "provenance"];

/// Widest column that is fitted, in characters.
const WIDEST: u16 = 60;

/// The table as a workbook.
///
/// **Fails** with what the writer says: a sheet holds 1,048,576 rows and 16,384 columns.
pub fn workbook(data: &TidyTable, record: &RunRecord) -> Result<Vec<u8>, String> {
    filled(data, record).map_err(|fault| fault.to_string())
}

fn filled(data: &TidyTable, record: &RunRecord) -> Result<Vec<u8>, XlsxError> {
    let mut book = Workbook::new();
    // A time of writing would make every file another one.
    let day = ExcelDateTime::from_ymd(2000, 1, 1)?;
    book.set_properties(&DocProperties::new().set_creation_datetime(&day));
    let head = Format::new().set_bold();
    let columns = data.columns().iter();
    fill(
        book.add_worksheet(),
        SHEETS[0],
        &head,
        data.columns(),
        data.rows(),
    )?;
    let meanings: Vec<Vec<Value>> = columns
        .filter_map(|name| {
            let meaning = column_meaning(name)?;
            let words = [name.as_str(), meaning.unit, meaning.meaning];
            Some(words.map(Value::from).to_vec())
        })
        .collect();
    let heads = ["name", "unit", "meaning"].map(str::to_owned);
    fill(book.add_worksheet(), SHEETS[1], &head, &heads, &meanings)?;
    let made: Vec<Vec<Value>> = record
        .entries()
        .into_iter()
        .map(|(key, value)| vec![key.into(), value.into()])
        .collect();
    let heads = ["key", "value"].map(str::to_owned);
    fill(book.add_worksheet(), SHEETS[2], &head, &heads, &made)?;
    book.save_to_buffer()
}

fn fill(
    sheet: &mut Worksheet,
    name: &str,
    head: &Format,
    header: &[String],
    rows: &[Vec<Value>],
) -> Result<(), XlsxError> {
    sheet.set_name(name)?;
    sheet.set_freeze_panes(1, 0)?;
    for (column, name) in (0..).zip(header) {
        sheet.write_string_with_format(0, column, name, head)?;
        let widest = rows.iter().map(|row| width(&row[usize::from(column)]));
        let widest = widest.chain([name.chars().count()]).max().unwrap_or(0);
        sheet.set_column_width(
            column,
            u16::try_from(widest).unwrap_or(WIDEST).min(WIDEST) + 2,
        )?;
    }
    for (index, row) in (1..).zip(rows) {
        for (column, value) in (0..).zip(row) {
            match value {
                Value::Null => {}
                Value::Bool(is) => {
                    sheet.write_boolean(index, column, *is)?;
                }
                Value::Number(number) => {
                    sheet.write_number(index, column, number.as_f64().unwrap_or(f64::NAN))?;
                }
                Value::String(text) => {
                    sheet.write_string(index, column, guarded(text))?;
                }
                Value::Array(_) | Value::Object(_) => {}
            }
        }
    }
    Ok(())
}

/// Characters that a cell takes; of numbers as many as are looked at.
fn width(value: &Value) -> usize {
    match value {
        Value::String(text) => text.chars().count(),
        _ => 8,
    }
}
