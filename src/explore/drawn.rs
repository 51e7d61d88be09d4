//! A curve that somebody drew before it was shown: how near it came.
//!
//! In: a study, drawn values evenly spaced over the range, in its unit. Out: [`JudgedCurve`].

use crate::capacity::class_of;
use crate::error::{Error, PageFault, Result};
use crate::narrative::page_words::{DrawnCurve, drawn_in_words};
use crate::study::Study;
use crate::units::System;
use serde::Serialize;

/// How near a drawn curve came.
#[derive(Debug, Serialize)]
pub(super) struct JudgedCurve {
    words: Vec<String>,
    drawn_class: &'static str,
    class: &'static str,
    mean_distance: f64,
    points: u32,
}

/// Judges a drawn curve.
///
/// ```text
/// d = mean |drawn/max drawn − capacity/max capacity|        points = 100·max(0, 1 − d/0.5)
/// ```
/// **Shape.** 100 for the curve itself, 0 from half of the greatest capacity off on (assumed).
/// **Fails** with fewer than five values, or one that is no number.
pub(super) fn judged(study: &Study, drawn: &[f64], units: System) -> Result<JudgedCurve> {
    const NOTHING_LEFT: f64 = 0.5;
    const LEAST_VALUES: usize = 5;
    const MOST_VALUES: usize = 10_000;
    let is_fit = (LEAST_VALUES..=MOST_VALUES).contains(&drawn.len());
    if !is_fit || !drawn.iter().all(|value| value.is_finite()) {
        return Err(Error::bad(PageFault::NoCurve));
    }
    let capacity = study.capacity.values();
    let last = (capacity.len() - 1) as f64;
    let at = |range: f64| {
        let place = range * (drawn.len() - 1) as f64;
        let low = (place.floor() as usize).min(drawn.len() - 2);
        drawn[low] + (place - low as f64) * (drawn[low + 1] - drawn[low])
    };
    // What was drawn is a shape: its greatest value is the model's.
    let most = drawn.iter().copied().fold(0.0, f64::max);
    if most <= 0.0 {
        return Err(Error::bad(PageFault::NoCurve));
    }
    let scale = study.class.peak / most;
    let values: Vec<f64> = (0..capacity.len())
        .map(|i| scale * at(i as f64 / last))
        .collect();
    let distances = values.iter().zip(&capacity).map(|(d, c)| (d - c).abs());
    let mean_distance = distances.sum::<f64>() / (last + 1.0) / study.class.peak;
    let own = class_of(&values);
    let told = DrawnCurve {
        drawn: own.shape,
        computed: study.class.shape,
        drawn_peak_range: own.peak_range,
        mean_distance,
    };
    Ok(JudgedCurve {
        words: drawn_in_words(study, &told, units),
        drawn_class: own.shape.word(),
        class: study.class.shape.word(),
        mean_distance,
        points: (100.0 * (1.0 - mean_distance / NOTHING_LEFT))
            .max(0.0)
            .round() as u32,
    })
}
