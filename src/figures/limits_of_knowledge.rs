//! How sure the model is, and what it cannot tell.
//!
//! In: its errors beside published values. Out: a bar for every lift, a page of questions.

use super::data_table::{DataTable, figure};
use super::error_chart::ErrorChart;
use super::sheet::{Chart, Sheet, heading};
use crate::library::LiftErrors;
use crate::narrative::limits_words::{
    BAR_DECIMALS, CANNOT_TELL, ERROR_QUANTITY, cannot_tell_words, error_name, error_words,
    factor_tick, kind_in_words,
};
use crate::plot::{Axis, Swing, Tornado, WordPage};

/// Steps of the axis of factors.
const FACTOR_STEP: f64 = 0.2;

/// How far the model's numbers are from published ones that it was not fitted to, by kind of question: lifts of which
/// other things were measured cannot be compared by it.
#[must_use]
pub fn model_errors(errors: &LiftErrors) -> Sheet {
    let kinds = errors.of_kinds();
    let words = error_words(&kinds);
    let greatest = kinds.first().map_or(1.0, |kind| kind.1.factor());
    let steps = ((greatest - 1.0) / FACTOR_STEP).ceil() as u32;
    let factors = (0..=steps).map(|step| 1.0 + FACTOR_STEP * f64::from(step));
    let bars = Tornado {
        heading: heading(&words),
        axis: Axis {
            ticks: factors
                .map(|factor| (factor.ln(), factor_tick(factor)))
                .collect(),
            ..Axis::new(ERROR_QUANTITY, "")
        },
        decimals: BAR_DECIMALS,
        factors: true,
        swings: kinds
            .iter()
            .map(|(name, error)| Swing {
                name: error_name(name, error.rows),
                lowered: 0.0,
                raised: error.error,
            })
            .collect(),
        ..Tornado::default()
    };
    let data = DataTable {
        header: ["kind", "published_values", "off_by_factor"]
            .map(str::to_owned)
            .to_vec(),
        rows: kinds
            .iter()
            .map(|(name, error)| {
                let numbers = [error.rows as f64, error.factor()];
                let mut row = vec![kind_in_words(name).to_owned()];
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
