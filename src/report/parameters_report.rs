//! Values that can be set, as text, CSV and JSON.
//!
//! In: [`ListedValue`]s. Out: text; numbers of CSV and JSON in SI.

use super::json::pretty;
use super::tidy_table::{Cells, TidyTable};
use crate::error::{Error, Result, SettingFault};
use crate::library::SettableNow;
use crate::narrative::parameter_list::{list_of_values, meaning_of};
use crate::narrative::rank_words::origin;
use crate::narrative::source_words::source_in_words;
use crate::study::ListedValue;
use crate::units::System;
use serde::Serialize;

/// The values with a word in path or meaning, capitals apart; blanks and underscores are one.
///
/// **Fails** where none has it.
pub fn found_values(values: Vec<ListedValue>, word: &str) -> Result<Vec<ListedValue>> {
    let plain = |text: &str| text.to_lowercase().replace('_', " ");
    let wanted = plain(word);
    let has_it = |listed: &ListedValue| {
        let told = format!(
            "{} {}",
            plain(&listed.value.path),
            plain(&meaning_of(listed))
        );
        wanted.split_whitespace().all(|part| told.contains(part))
    };
    let found: Vec<ListedValue> = values.into_iter().filter(has_it).collect();
    if found.is_empty() {
        return Err(Error::no_answer(SettingFault::NotFound {
            word: word.to_owned(),
        }));
    }
    Ok(found)
}

/// The values as text for people.
#[must_use]
pub fn parameters_table(values: &[ListedValue], in_full: bool, units: System) -> String {
    list_of_values(values, in_full, units)
}

/// The values as a table: a row a value.
#[must_use]
pub fn parameters_data(values: &[ListedValue]) -> TidyTable {
    TidyTable::of(values.iter().map(|value| Cells::of(&row(value))))
}

/// The values as JSON.
#[must_use]
pub fn parameters_json(values: &[ListedValue]) -> String {
    pretty(&ParametersJson {
        values: values.iter().map(row).collect(),
    })
}

#[derive(Serialize)]
struct ParametersJson<'a> {
    values: Vec<ParameterRow<'a>>,
}

#[derive(Serialize)]
struct ParameterRow<'a> {
    movement: Option<&'a str>,
    path: &'a str,
    meaning: String,
    value_si: Option<f64>,
    unit: &'a str,
    word: Option<&'a str>,
    words: &'a [String],
    least_si: Option<f64>,
    least_is_accepted: bool,
    most_si: Option<f64>,
    usual_least_si: Option<f64>,
    usual_most_si: Option<f64>,
    prior_si: Option<f64>,
    prior_deviation_si: Option<f64>,
    posterior_si: Option<f64>,
    posterior_deviation_si: Option<f64>,
    from: String,
    source: Option<String>,
    file: Option<&'a str>,
}

fn row(listed: &ListedValue) -> ParameterRow<'_> {
    let value = &listed.value;
    let (value_si, unit, word, words): (_, _, _, &[String]) = match &value.now {
        SettableNow::Number { si, unit } => (Some(*si), *unit, None, &[]),
        SettableNow::Word { now, of } => (None, "", Some(now.as_str()), of),
        SettableNow::Free { unit } => (None, *unit, Some("free"), &[]),
    };
    let scale = value.scaled_by;
    let fitted = value.from.fitted;
    ParameterRow {
        movement: listed.movement.as_deref(),
        path: &value.path,
        meaning: meaning_of(listed),
        value_si,
        unit,
        word,
        words,
        least_si: value.range.map(|range| range.0),
        least_is_accepted: value.least_is_inside,
        most_si: value.range.map(|range| range.1),
        usual_least_si: value.usual.map(|range| range.0),
        usual_most_si: value.usual.map(|range| range.1),
        prior_si: fitted.map(|fitted| scale * fitted.prior),
        prior_deviation_si: fitted.map(|fitted| (scale * fitted.prior_deviation).abs()),
        posterior_si: fitted.map(|fitted| scale * fitted.value),
        posterior_deviation_si: fitted.map(|fitted| (scale * fitted.deviation).abs()),
        from: origin(&value.from),
        source: value.from.source.as_ref().map(source_in_words),
        file: value.from.file.as_deref(),
    }
}
