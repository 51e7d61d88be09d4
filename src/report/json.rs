//! JSON: `summary` and `samples`, stable keys, numbers in SI with the unit as suffix.

use super::sample::samples;
use super::summary::summary;
use crate::error::{Error, Result};
use crate::study::{SetupStudy, Study};
use serde::Serialize;

/// One curve as pretty JSON with a line break at its end.
///
/// **Fails** never for finite results; an infinite effort becomes null.
pub fn curve_json(study: &Study, setup: Option<&SetupStudy>, with_detail: bool) -> Result<String> {
    #[derive(Serialize)]
    struct Curve<'a> {
        summary: super::Summary,
        samples: &'a [super::Sample],
    }
    let samples = samples(study, setup, with_detail);
    pretty(&Curve {
        summary: summary(study, setup),
        samples: &samples,
    })
}

/// Any result as pretty JSON with a line break at its end.
pub fn pretty<T: Serialize>(value: &T) -> Result<String> {
    let mut text = serde_json::to_string_pretty(value)
        .map_err(|fault| Error::bad(format!("the result cannot be written as JSON: {fault}")))?;
    text.push('\n');
    Ok(text)
}
