//! A tidy table as a workbook: numbers as numbers, the header bold and in sight, what the columns mean and how it was
//! made on sheets of their own.
//!
//! In: a [`TidyTable`], the record of its making. Out: the bytes of an .xlsx file, the same every time.

use super::data_dictionary::column_meaning;
use super::run_record::RunRecord;
use super::tidy_table::{DrawnColumns, TidyTable, guarded};
use rust_xlsxwriter::{
    Chart, ChartType, DocProperties, ExcelDateTime, Format, Workbook, Worksheet, XlsxError,
};
use serde_json::Value;

/// Names of the sheets.
const SHEETS: [&str; 3] = ["data", "columns", "provenance"];

/// Name of the sheet with a chart.
const CHART: &str = "chart";
/// Its size in pixels.
const CHART_SIZE: (u32, u32) = (960, 540);

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
    if let Some(chart) = data.chart() {
        let sheet = book.add_worksheet();
        sheet.set_name(CHART)?;
        sheet.insert_chart(0, 0, &drawn(data, chart))?;
    }
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

/// Two columns as a chart: a curve where both are numbers, else a column a row.
fn drawn(data: &TidyTable, chart: DrawnColumns) -> Chart {
    let place = |name: &str| {
        let found = data.columns().iter().position(|column| column == name);
        u16::try_from(found.unwrap_or(0)).unwrap_or(0)
    };
    let last = u32::try_from(data.rows().len()).unwrap_or(u32::MAX);
    let (along, values) = (place(chart.along), place(chart.values));
    let kind = match chart.as_curve {
        true => ChartType::ScatterStraight,
        false => ChartType::Column,
    };
    let mut drawn = Chart::new(kind);
    drawn
        .add_series()
        .set_name((SHEETS[0], 0, values))
        .set_categories((SHEETS[0], 1, along, last, along))
        .set_values((SHEETS[0], 1, values, last, values));
    drawn.x_axis().set_name(chart.along);
    drawn.y_axis().set_name(chart.values);
    drawn.title().set_hidden();
    drawn.legend().set_hidden();
    drawn.set_width(CHART_SIZE.0).set_height(CHART_SIZE.1);
    drawn
}

/// How numbers of a column look; what is calculated with stays as it is.
fn number_format(name: &str) -> Option<Format> {
    let shape = match name {
        name if name.contains("share") || name.ends_with("effort") => "0.0%",
        name if name.ends_with("_kg") => "0.0##",
        name if name.ends_with("_n") || name.ends_with("_nm") || name.ends_with("_s") => "0.0",
        _ => return None,
    };
    Some(Format::new().set_num_format(shape))
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
    let formats: Vec<Option<Format>> = header.iter().map(|name| number_format(name)).collect();
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
                    let number = number.as_f64().unwrap_or(f64::NAN);
                    match &formats[usize::from(column)] {
                        Some(format) => {
                            sheet.write_number_with_format(index, column, number, format)?
                        }
                        None => sheet.write_number(index, column, number)?,
                    };
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
