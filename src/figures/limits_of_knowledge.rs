//! How sure the model is, and what it cannot tell.
//!
//! In: its errors beside published values. Out: a bar for every lift, a page of questions.

use super::data_table::{DataTable, figure};
use super::error_chart::ErrorChart;
use super::sheet::{Chart, Sheet, heading};
use crate::library::LiftErrors;
use crate::narrative::limits_words::{
    CANNOT_TELL, ERROR_QUANTITY, FEWEST_ROWS, cannot_tell_words, error_name, error_words,
};
use crate::plot::{Axis, Swing, Tornado, WordPage};

/// How far the model's numbers are from published ones that it was not fitted to, lift by lift.
#[must_use]
pub fn model_errors(errors: &LiftErrors) -> Sheet {
    let lifts = errors.of_lifts(FEWEST_ROWS);
    let words = error_words(&lifts);
    let bars = Tornado {
        heading: heading(&words),
        axis: Axis::new(ERROR_QUANTITY, "%"),
        decimals: 0,
        swings: lifts
            .iter()
            .map(|(name, error)| Swing {
                name: error_name(name, error.rows),
                lowered: 0.0,
                raised: 100.0 * error.error,
            })
            .collect(),
        ..Tornado::default()
    };
    let data = DataTable {
        header: ["lift", "published_values", "off_by_percent"]
            .map(str::to_owned)
            .to_vec(),
        rows: lifts
            .iter()
            .map(|(name, error)| {
                let numbers = [error.rows as f64, 100.0 * error.error];
                let mut row = vec![(*name).to_owned()];
                row.extend(numbers.map(figure));
                row
            })
            .collect(),
    };
    Sheet::new(Chart::Errors(ErrorChart { bars, data }), words.caption)
}

/// Questions that the model cannot answer.
#[must_use]
pub fn cannot_tell() -> Sheet {
    let words = cannot_tell_words();
    let entries = CANNOT_TELL.map(|[question, why]| [question, why].map(str::to_owned));
    let page = WordPage {
        heading: heading(&words),
        entries: entries.to_vec(),
    };
    Sheet::new(Chart::Words(page), words.caption)
}
