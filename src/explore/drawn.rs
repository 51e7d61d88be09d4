//! A curve that somebody drew before it was shown: how near it came to what the page shows of the strength curve.
//!
//! In: a study, drawn values evenly spaced over the range. Out: [`JudgedCurve`] with the parts of its score.

use crate::capacity::{CurveShape, class_of};
use crate::error::{Error, PageFault, Result};
use crate::figures::live_top;
use crate::narrative::drawn_words::{
    DrawnCurve, DrawnPlace, MOST_CLOSE, MOST_PLACE, MOST_SHAPE, drawn_in_words,
};
use crate::study::Study;
use crate::units::System;
use serde::Serialize;

/// Mean distance, share of the highest point shown, that leaves no point for closeness (assumed).
const NOTHING_CLOSE: f64 = 0.3;
/// Distance of two places, share of the range, that leaves no point for a place (assumed).
const NOTHING_NEAR: f64 = 0.5;
/// Values this close to the greatest or the least one, share of the greatest, count as it (assumed: nobody draws finer).
const AS_GOOD: f64 = 0.02;

/// How near a drawn curve came.
#[derive(Debug, Serialize)]
pub(super) struct JudgedCurve {
    words: Vec<String>,
    drawn_class: &'static str,
    class: &'static str,
    mean_distance: f64,
    points: u32,
}

/// Judges a drawn curve `d` against the capacity `c` as the page shows it.
///
/// ```text
/// s = min(c, top)/max min(c, top)           d is scaled to its own greatest value
/// shape      60  where the class of d is that of c, or of s
/// peak       10·max(0, 1 − Δ/0.5)           Δ: from where d is greatest to the nearest place where s is
/// weakest    10·max(0, 1 − Δ/0.5)           the same where they are least
/// closeness  20·max(0, 1 − mean|d − s|/0.3)
/// ```
/// `top` is where the page's axis ends: a nearly straight limb bears almost anything. All are shares without unit.
/// **Shape.** 100 for the shown curve itself; any curve of the right class is above every other, at 60 against 40 at
/// the most; a level curve has neither peak nor weakest place, so that it has no more than 20 where the lift is not level.
/// **Source.** The parts and their widths are ours.
/// **Fails** with fewer than five values, or one that is no number.
pub(super) fn judged(study: &Study, drawn: &[f64], units: System) -> Result<JudgedCurve> {
    const LEAST_VALUES: usize = 5;
    const MOST_VALUES: usize = 10_000;
    let is_fit = (LEAST_VALUES..=MOST_VALUES).contains(&drawn.len());
    let most = drawn.iter().copied().fold(0.0, f64::max);
    if !is_fit || !drawn.iter().all(|value| value.is_finite()) || most <= 0.0 {
        return Err(Error::bad(PageFault::NoCurve));
    }
    let shown = shown_shares(study);
    let own = resampled(drawn, shown.len()).map(|value| value / most);
    let own: Vec<f64> = own.collect();
    let distances = own.iter().zip(&shown).map(|(d, s)| (d - s).abs());
    let mean_distance = distances.sum::<f64>() / shown.len() as f64;
    let (whole, part, drawn_class) = (study.class.shape, class_of(&shown), class_of(&own));
    let is_right = [whole, part.shape].contains(&drawn_class.shape);
    let place = |near: fn(&[f64]) -> Vec<usize>| -> Option<DrawnPlace> {
        let is_told = is_right || drawn_class.shape != CurveShape::Level;
        is_told.then(|| place_of(&near(&own), &near(&shown), shown.len()))
    };
    let told = DrawnCurve {
        drawn: drawn_class.shape,
        computed: whole,
        shown: part.shape,
        peak: place(near_greatest),
        weakest: place(near_least),
        mean_distance,
        shape_points: if is_right { MOST_SHAPE } else { 0 },
        close_points: points_of(MOST_CLOSE, mean_distance / NOTHING_CLOSE),
        top: live_top(study),
    };
    Ok(JudgedCurve {
        points: told.points(),
        words: drawn_in_words(study, &told, units),
        drawn_class: drawn_class.shape.word(),
        class: whole.word(),
        mean_distance,
    })
}

/// The capacity as the page shows it, share of the highest point shown, one a sample.
fn shown_shares(study: &Study) -> Vec<f64> {
    let top = live_top(study).unwrap_or(f64::INFINITY);
    let shown: Vec<f64> = study.capacity.values().iter().map(|c| c.min(top)).collect();
    let most = shown.iter().copied().fold(0.0, f64::max);
    shown
        .iter()
        .map(|s| if most > 0.0 { s / most } else { 0.0 })
        .collect()
}

/// Values at another number of places, straight between the given ones.
fn resampled(values: &[f64], count: usize) -> impl Iterator<Item = f64> {
    let last = (count.max(2) - 1) as f64;
    (0..count).map(move |index| {
        let place = index as f64 / last * (values.len() - 1) as f64;
        let low = (place.floor() as usize).min(values.len() - 2);
        values[low] + (place - low as f64) * (values[low + 1] - values[low])
    })
}

/// Samples that are as good as the greatest one.
fn near_greatest(values: &[f64]) -> Vec<usize> {
    let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let is_near = |index: &usize| values[*index] >= (1.0 - AS_GOOD) * most;
    (0..values.len()).filter(is_near).collect()
}

/// Samples that are as good as the least one.
fn near_least(values: &[f64]) -> Vec<usize> {
    let most = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let least = values.iter().copied().fold(f64::INFINITY, f64::min);
    let is_near = |index: &usize| values[*index] <= least + AS_GOOD * most;
    (0..values.len()).filter(is_near).collect()
}

/// The two places of both lists that are nearest to each other, and what they are worth.
fn place_of(own: &[usize], shown: &[usize], count: usize) -> DrawnPlace {
    let pairs = own
        .iter()
        .flat_map(|own| shown.iter().map(move |shown| (*own, *shown)));
    let (own, shown) = pairs
        .min_by_key(|(own, shown)| own.abs_diff(*shown))
        .expect("some value is the greatest, and some the least");
    let range = |sample: usize| sample as f64 / (count.max(2) - 1) as f64;
    let apart = (range(own) - range(shown)).abs();
    DrawnPlace {
        drawn_range: range(own),
        shown_range: range(shown),
        points: points_of(MOST_PLACE, apart / NOTHING_NEAR),
    }
}

/// What is left of a part of the score; nothing from a loss of 1 on.
fn points_of(most: u32, loss: f64) -> u32 {
    (f64::from(most) * (1.0 - loss).max(0.0)).round() as u32
}
