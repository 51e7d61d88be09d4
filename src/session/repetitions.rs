//! How many repetitions a share of 1RM allows, by the published chart, and how lifts differ.
//!
//! In: repetitions or a share of 1RM, and a movement. Out: the other of the two from the chart, read
//! between its rows with a smooth monotone curve; and what studies found for that lift beside it.

use crate::error::{Error, PredictionFault, Result};
use crate::movement::Handling;
use crate::numeric::{Beyond, Spline, brent};
use crate::progress::origin::Origin;

/// The load-repetition chart: repetitions to failure and percent of 1RM, as printed.
///
/// Baechle & Earle (eds), Essentials of strength training and conditioning. Rows 1 to 10 were read in a
/// reprint; 11, 12 and 15 are from memory (that reprint has 73 % at 11 and 70 % at 12).
#[rustfmt::skip]
pub const CHART: &[(f64, f64)] = &[
    (1.0, 100.0), (2.0, 95.0), (3.0, 93.0), (4.0, 90.0), (5.0, 87.0), (6.0, 85.0), (7.0, 83.0),
    (8.0, 80.0), (9.0, 77.0), (10.0, 75.0), (11.0, 70.0), (12.0, 67.0), (15.0, 65.0),
];

/// Where the chart comes from.
pub const CHART_ORIGIN: Origin = Origin::Read(
    "nsca_essentials",
    "load-repetition chart, rows 1-10 in a reprint; rows 11, 12, 15 from memory",
);

/// The chart as a curve, made once and asked often.
#[derive(Debug, Clone)]
pub struct RepetitionChart {
    curve: Spline,
}

impl RepetitionChart {
    /// The published chart.
    ///
    /// **Fails.** Never in practice: the rows are in rising order.
    pub fn published() -> Result<Self> {
        Ok(Self {
            curve: Spline::through(CHART, Beyond::ConstantSlope)?,
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

/// What a study found for one lift at one load, to set beside the chart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Observation {
    /// The movement it stands for here.
    pub movement: &'static str,
    /// The lift and the people.
    pub who: &'static str,
    /// Percent of 1RM.
    pub percent: f64,
    /// Mean repetitions to failure.
    pub repetitions: f64,
    /// Where it comes from.
    pub origin: Origin,
}

const fn seen(
    movement: &'static str,
    who: &'static str,
    percent: f64,
    repetitions: f64,
    origin: Origin,
) -> Observation {
    Observation {
        movement,
        who,
        percent,
        repetitions,
        origin,
    }
}

const HOEGER: Origin = Origin::Recalled("hoeger_1990", "men at 80 %; abstract read for the design");
const SHIMANO: Origin = Origin::Recalled(
    "shimano_2006",
    "repetitions at 60, 80, 90 %; abstract read for the order",
);
const KELLY: Origin = Origin::Read("kelly_2015", "abstract: 4.57 ± 2.21");

/// Repetitions to failure that studies found.
#[rustfmt::skip]
pub const OBSERVATIONS: &[Observation] = &[
    seen("leg-press", "untrained men", 80.0, 15.2, HOEGER),
    seen("leg-press", "trained men", 80.0, 19.4, HOEGER),
    seen("pull-up", "lat pull-down, untrained men", 80.0, 9.8, HOEGER),
    seen("pull-up", "lat pull-down, trained men", 80.0, 12.2, HOEGER),
    seen("bench-press", "untrained men", 80.0, 9.8, HOEGER),
    seen("bench-press", "trained men", 80.0, 12.2, HOEGER),
    seen("knee-extension", "untrained men", 80.0, 9.3, HOEGER),
    seen("knee-extension", "trained men", 80.0, 11.6, HOEGER),
    seen("biceps-curl", "untrained men", 80.0, 7.6, HOEGER),
    seen("biceps-curl", "trained men", 80.0, 11.4, HOEGER),
    seen("leg-curl", "untrained men", 80.0, 6.3, HOEGER),
    seen("leg-curl", "trained men", 80.0, 7.2, HOEGER),
    seen("squat", "trained men", 60.0, 29.9, SHIMANO),
    seen("squat", "trained men", 80.0, 12.3, SHIMANO),
    seen("squat", "trained men", 90.0, 5.8, SHIMANO),
    seen("squat", "untrained men", 60.0, 35.9, SHIMANO),
    seen("squat", "untrained men", 80.0, 11.6, SHIMANO),
    seen("squat", "untrained men", 90.0, 6.5, SHIMANO),
    seen("bench-press", "trained men", 60.0, 21.7, SHIMANO),
    seen("bench-press", "trained men", 80.0, 9.2, SHIMANO),
    seen("bench-press", "trained men", 90.0, 4.0, SHIMANO),
    seen("bench-press", "untrained men", 60.0, 21.6, SHIMANO),
    seen("bench-press", "untrained men", 80.0, 9.1, SHIMANO),
    seen("bench-press", "untrained men", 90.0, 6.0, SHIMANO),
    seen("biceps-curl", "trained men", 60.0, 19.0, SHIMANO),
    seen("biceps-curl", "trained men", 80.0, 9.1, SHIMANO),
    seen("biceps-curl", "trained men", 90.0, 4.4, SHIMANO),
    seen("biceps-curl", "untrained men", 60.0, 17.2, SHIMANO),
    seen("biceps-curl", "untrained men", 80.0, 8.9, SHIMANO),
    seen("biceps-curl", "untrained men", 90.0, 3.9, SHIMANO),
    seen("bench-press", "30 trained people", 90.0, 4.57, KELLY),
];

/// What is known of differences between lifts and between people, in words.
pub const DIFFERENCES: &[(&[&str], &str, Origin)] = &[
    (
        &[],
        "repetitions at a share of 1RM depend on the lift, hardly on sex, age or training; people differ much, less so at heavy loads",
        Origin::Read("nuzzo_2024", "abstract: 952 tests, 7289 people"),
    ),
    (
        &["leg-press"],
        "the leg press allows clearly more repetitions than the chart says",
        Origin::Read("nuzzo_2024", "abstract: leg press above bench press"),
    ),
    (
        &["squat"],
        "the squat allows more repetitions than bench press and curl at 60 %",
        Origin::Read("shimano_2006", "abstract"),
    ),
    (
        &["leg-curl"],
        "the leg curl allows fewer repetitions than the chart says at 80 %",
        HOEGER,
    ),
];

/// What studies found for a movement, in the order of [`OBSERVATIONS`].
#[must_use]
pub fn observations_of(lift: &Handling) -> Vec<&'static Observation> {
    OBSERVATIONS
        .iter()
        .filter(|row| lift.is_called(row.movement))
        .collect()
}

/// Known differences that matter for a movement, in words with their source.
#[must_use]
pub fn differences_of(lift: &Handling) -> Vec<(&'static str, Origin)> {
    let matters = |movements: &[&str]| {
        movements.is_empty() || movements.iter().any(|movement| lift.is_called(movement))
    };
    DIFFERENCES
        .iter()
        .filter(|(movements, ..)| matters(movements))
        .map(|(_, words, origin)| (*words, *origin))
        .collect()
}
