//! How many repetitions a share of 1RM allows, by the published chart, and how lifts differ.
//!
//! In: repetitions or a share of 1RM, and a movement. Out: the other of the two from the chart, read
//! between its rows with a smooth monotone curve; and what studies found for that lift beside it.

use super::published::{Finding, RepetitionRows, RepetitionTable};
use crate::error::{Error, PredictionFault, Result};
use crate::movement::Handling;
use crate::numeric::{Beyond, Spline, brent};

/// The chart as a curve, made once and asked often.
#[derive(Debug, Clone)]
pub struct RepetitionChart {
    curve: Spline,
}

impl RepetitionChart {
    /// The chart through the printed rows.
    ///
    /// **Fails** unless repetitions rise; the table was checked for that when it was read.
    pub fn through(rows: &RepetitionRows) -> Result<Self> {
        Ok(Self {
            curve: Spline::through(&rows.rows, Beyond::ConstantSlope)?,
        })
    }

    /// Fewest and most repetitions of the chart.
    #[must_use]
    pub fn range(&self) -> (f64, f64) {
        self.curve.range()
    }

    /// Share of 1RM that allows `repetitions` to failure.
    ///
    /// **Shape.** Falls from 1 at one repetition to 0.65 at 15; C¹, and exact at the printed rows.
    /// **Fails** outside 1 to 15 repetitions.
    pub fn share_at(&self, repetitions: f64) -> Result<f64> {
        let (least, most) = self.range();
        if !(least..=most).contains(&repetitions) {
            return Err(Error::no_answer(PredictionFault::OffTheChart {
                range: (least, most),
                repetitions,
            }));
        }
        Ok(self.curve.value(repetitions) / 100.0)
    }

    /// Repetitions to failure that a share of 1RM allows; 0 above 1RM.
    ///
    /// The inverse of [`RepetitionChart::share_at`]. **Fails** below the last row (65 %).
    pub fn repetitions_at(&self, share: f64) -> Result<f64> {
        if !(share.is_finite() && share > 0.0) {
            return Err(Error::bad(PredictionFault::NoShare { share }));
        }
        if share > 1.0 {
            return Ok(0.0);
        }
        let (least, most) = self.range();
        let lightest = self.curve.value(most) / 100.0;
        if share < lightest {
            return Err(Error::no_answer(PredictionFault::BelowTheChart {
                lightest,
                share,
            }));
        }
        brent(least, most, 1e-9, |repetitions| {
            self.curve.value(repetitions) - 100.0 * share
        })
    }

    /// Whole repetitions that a share of 1RM allows; `None` where the chart ends.
    #[must_use]
    pub fn allowed_at(&self, share: f64) -> Option<u32> {
        self.repetitions_at(share)
            .ok()
            .map(|repetitions| (repetitions + 1e-6).floor() as u32)
    }
}

impl RepetitionTable {
    /// Known differences that matter for a movement.
    pub fn differences_of<'a>(&'a self, lift: &'a Handling) -> impl Iterator<Item = &'a Finding> {
        self.differences.iter().filter(|finding| {
            let mut movements = finding.movements.iter();
            finding.movements.is_empty() || movements.any(|movement| lift.is_called(movement))
        })
    }
}
