//! The user's own band: a pull law fitted to readings by least squares.
//!
//! In: two or more readings. Out: a force law over stretch,
//! with how far it misses each reading. The form is the rubber law of `rubber.rs` with both
//! constants free, or that of Treloar's rubber scaled and bent by an exponent where it fits better.

use super::readings::BandReading;
use super::rubber::{Rubber, stretch_terms};
use crate::bounds::bounds;
use crate::error::BandFitFault;
use crate::numeric::{golden_section, lowest_valley};
use crate::units::{Force, Length};

/// The form of a fitted pull over stretch L.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum PullShape {
    /// F = 2·(L − 1/L²)·(a + b/L): the rubber law with both constants from the readings.
    TwoConstants {
        /// Takes the place of strands · section · C1, N.
        a_n: f64,
        /// Takes the place of strands · section · C2, N.
        b_n: f64,
    },
    /// F = scale · (s(L)/s(2))^exponent, with s the stress of Treloar's rubber.
    Bent {
        /// Pull at twice the rest length, N.
        scale_n: f64,
        /// 1 is Treloar's own shape; more stiffens towards the end.
        exponent: f64,
    },
}

impl PullShape {
    /// Pull at a stretch, N; 0 while slack.
    #[must_use]
    pub fn force_n(self, stretch: f64) -> f64 {
        match self {
            Self::TwoConstants { a_n, b_n } => {
                let (first, second) = stretch_terms(stretch);
                a_n * first + b_n * second
            }
            Self::Bent { scale_n, exponent } => scale_n * relative_stress(stretch).powf(exponent),
        }
    }
}

/// Stress of Treloar's rubber over its stress at twice the rest length.
fn relative_stress(stretch: f64) -> f64 {
    let rubber = Rubber::treloar_1944();
    rubber.nominal_stress_pa(stretch) / rubber.nominal_stress_pa(2.0)
}

/// A pull law fitted to readings, with the readings and the misfit.
#[derive(Debug, Clone, PartialEq)]
pub struct FittedPull {
    rest_length_m: f64,
    shape: PullShape,
    readings: Vec<BandReading>,
    misfit_n: f64,
}

/// A misfit above this share of the largest reading sends the fit to the bent form as well. Assumed:
/// far below what a hanging scale and a tape leave open.
const GOOD_ENOUGH: f64 = 0.001;

/// Largest rest length over shortest pulling length: nearer, the pull would start like a wall.
/// Assumed: a millimetre in a metre, finer than a tape is read.
const NEAREST_REST: f64 = 0.999;

impl FittedPull {
    /// Fits readings of a band pulled as it is (a loop as a loop).
    ///
    /// ```text
    /// minimise  Σ (F_i − F(length_i / rest length))²
    /// ```
    /// over two constants ≥ 0, and where these leave more than 0.1 % of the largest reading, over
    /// scale and exponent; the better one is kept. Without a rest length, three readings with a pull
    /// are needed, and the rest length is sought too.
    ///
    /// **Shape.** Rises with length from 0 at rest length.
    /// **Fails** for too few readings, equal lengths, a pull at or below rest length.
    pub fn from_readings(
        readings: &[BandReading],
        rest: Option<Length>,
    ) -> Result<Self, BandFitFault> {
        if readings.len() > MOST_READINGS {
            return Err(BandFitFault::TooManyReadings {
                readings: readings.len(),
                most: MOST_READINGS,
            });
        }
        let pulling: Vec<(f64, f64)> = readings
            .iter()
            .map(|reading| (reading.length.as_m(), reading.force.as_n()))
            .filter(|(_, force_n)| *force_n != 0.0)
            .collect();
        refuse_odd(readings, &pulling)?;
        let rest_length_m = match rest {
            Some(rest) => checked_rest(rest.as_m(), &pulling)?,
            None => sought_rest(readings, &pulling)?,
        };
        let (shape, misfit_n) = best_shape(rest_length_m, &pulling);
        Ok(Self {
            rest_length_m,
            shape,
            readings: readings.to_vec(),
            misfit_n,
        })
    }

    /// Length at which the fitted band is just taut.
    #[must_use]
    pub fn rest_length(&self) -> Length {
        Length::from_m(self.rest_length_m)
    }

    /// The fitted form and its constants.
    #[must_use]
    pub fn shape(&self) -> PullShape {
        self.shape
    }

    /// The readings that were fitted.
    #[must_use]
    pub fn readings(&self) -> &[BandReading] {
        &self.readings
    }

    /// Root mean square of reading minus fit.
    #[must_use]
    pub fn misfit(&self) -> Force {
        Force::from_n(self.misfit_n)
    }

    /// Pull at a stretch, N; 0 while slack.
    #[must_use]
    pub fn force_n(&self, stretch: f64) -> f64 {
        self.shape.force_n(stretch)
    }
}

fn refuse_odd(readings: &[BandReading], pulling: &[(f64, f64)]) -> Result<(), BandFitFault> {
    if let Some(odd) = readings.iter().find(|r| {
        let force_n = r.force.as_n();
        let is_pull = force_n == 0.0 || bounds().band_pull.holds(force_n);
        r.length.as_m() <= 0.0 || r.length.as_m() > 20.0 || !is_pull
    }) {
        return Err(BandFitFault::OddReading {
            length: odd.length,
            force: odd.force,
        });
    }
    let shortest = pulling.iter().map(|p| p.0).fold(f64::INFINITY, f64::min);
    let longest = pulling.iter().map(|p| p.0).fold(0.0, f64::max);
    if pulling.len() < 2 || longest - shortest < 0.01 {
        return Err(BandFitFault::TooFewReadings {
            pulling: pulling.len(),
        });
    }
    refuse_falling(pulling)
}

/// Most readings of one band, assumed: every millimetre of a long one.
const MOST_READINGS: usize = 1000;

/// A pull below this share of that at a shorter length is no misreading of a scale (assumed).
const CLEARLY_LESS: f64 = 0.9;

fn refuse_falling(pulling: &[(f64, f64)]) -> Result<(), BandFitFault> {
    let falls = |shorter: &(f64, f64), longer: &(f64, f64)| {
        longer.0 > shorter.0 && longer.1 < CLEARLY_LESS * shorter.1
    };
    for shorter in pulling {
        if let Some(longer) = pulling.iter().find(|longer| falls(shorter, longer)) {
            let reading = |of: &(f64, f64)| (Length::from_m(of.0), Force::from_n(of.1));
            return Err(BandFitFault::PullFalls {
                shorter: reading(shorter),
                longer: reading(longer),
            });
        }
    }
    Ok(())
}

fn checked_rest(rest_m: f64, pulling: &[(f64, f64)]) -> Result<f64, BandFitFault> {
    let shortest_m = pulling.iter().map(|p| p.0).fold(f64::INFINITY, f64::min);
    if !(rest_m > 0.0 && rest_m <= NEAREST_REST * shortest_m) {
        return Err(BandFitFault::RestBeyondPull {
            rest: Length::from_m(rest_m),
            shortest: Length::from_m(shortest_m),
        });
    }
    Ok(rest_m)
}

/// The rest length between the longest slack reading and the shortest pulling one that fits best.
fn sought_rest(readings: &[BandReading], pulling: &[(f64, f64)]) -> Result<f64, BandFitFault> {
    let slack_m = readings
        .iter()
        .filter(|r| r.force.as_n() == 0.0)
        .map(|r| r.length.as_m())
        .fold(0.0, f64::max);
    let shortest_m = pulling.iter().map(|p| p.0).fold(f64::INFINITY, f64::min);
    if pulling.len() < 3 && slack_m == 0.0 {
        return Err(BandFitFault::RestUnknown);
    }
    if slack_m >= shortest_m {
        return Err(BandFitFault::SlackBeyondPull {
            slack: Length::from_m(slack_m),
            shortest: Length::from_m(shortest_m),
        });
    }
    if pulling.len() < 3 {
        return Ok(slack_m.min(NEAREST_REST * shortest_m));
    }
    let (low, high) = (slack_m.max(0.3 * shortest_m), NEAREST_REST * shortest_m);
    if low >= high {
        return Ok(slack_m.min(high));
    }
    let misfit_n = |rest_m: f64| best_shape(rest_m, pulling).1;
    lowest_valley(low, high, 200, 1e-6, misfit_n)
        .map(|least| least.place)
        // A misfit exists for every rest length in between; without one the lengths say nothing.
        .map_err(|_| BandFitFault::RestUnknown)
}

fn best_shape(rest_m: f64, pulling: &[(f64, f64)]) -> (PullShape, f64) {
    let points: Vec<(f64, f64)> = pulling.iter().map(|(l, f)| (l / rest_m, *f)).collect();
    let largest_n = points.iter().map(|p| p.1).fold(0.0, f64::max);
    let rubber = two_constants(&points);
    let rubber_misfit_n = root_mean_square(rubber, &points);
    if rubber_misfit_n <= GOOD_ENOUGH * largest_n {
        return (rubber, rubber_misfit_n);
    }
    let bent = bent(&points);
    let bent_misfit_n = root_mean_square(bent, &points);
    if bent_misfit_n < rubber_misfit_n {
        (bent, bent_misfit_n)
    } else {
        (rubber, rubber_misfit_n)
    }
}

fn root_mean_square(shape: PullShape, points: &[(f64, f64)]) -> f64 {
    let sum: f64 = points
        .iter()
        .map(|(l, f)| (shape.force_n(*l) - f).powi(2))
        .sum();
    (sum / points.len() as f64).sqrt()
}

/// Least squares over two constants that may not be negative: the free optimum where it allows,
/// else the better of the two edges.
fn two_constants(points: &[(f64, f64)]) -> PullShape {
    let (mut uu, mut uv, mut vv, mut uf, mut vf) = (0.0, 0.0, 0.0, 0.0, 0.0);
    for (stretch, force_n) in points {
        let (u, v) = stretch_terms(*stretch);
        uu += u * u;
        uv += u * v;
        vv += v * v;
        uf += u * force_n;
        vf += v * force_n;
    }
    let determinant = uu * vv - uv * uv;
    let (a_n, b_n) = if determinant > 1e-12 * uu * vv {
        (
            (uf * vv - vf * uv) / determinant,
            (vf * uu - uf * uv) / determinant,
        )
    } else {
        (uf / uu, 0.0)
    };
    if a_n >= 0.0 && b_n >= 0.0 {
        return PullShape::TwoConstants { a_n, b_n };
    }
    let edges = [
        PullShape::TwoConstants {
            a_n: (uf / uu).max(0.0),
            b_n: 0.0,
        },
        PullShape::TwoConstants {
            a_n: 0.0,
            b_n: (vf / vv).max(0.0),
        },
    ];
    let worse = root_mean_square(edges[0], points) > root_mean_square(edges[1], points);
    edges[usize::from(worse)]
}

/// Least squares over scale and exponent: the scale is linear, the exponent is sought.
fn bent(points: &[(f64, f64)]) -> PullShape {
    let with = |exponent: f64| {
        let (mut gg, mut gf) = (0.0, 0.0);
        for (stretch, force_n) in points {
            let g = relative_stress(*stretch).powf(exponent);
            gg += g * g;
            gf += g * force_n;
        }
        PullShape::Bent {
            scale_n: gf / gg,
            exponent,
        }
    };
    // The scale is the best for each exponent, so a misfit exists for every exponent looked at.
    let exponent = golden_section(0.1, 6.0, 1e-9, |e| root_mean_square(with(e), points))
        .map_or(1.0, |least| least.place);
    with(exponent)
}
