//! The shapes of published equations from repetitions to 1RM.
//!
//! In: load, repetitions to failure, printed coefficients. Out: the 1RM. Which equations are believed for a set is decided in [`super::estimate`].

use serde::Deserialize;

/// The shape of an equation and its printed coefficients; `w` is the load, `r` the repetitions.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
pub enum Form {
    /// `1RM = w (1 + k r)`.
    Rising {
        /// Gain per repetition.
        k: f64,
    },
    /// `1RM = n w / (a − b r)`.
    Hyperbola {
        /// Numerator, 1 or 100 as printed.
        n: f64,
        /// Constant of the denominator.
        a: f64,
        /// What a repetition takes off the denominator.
        b: f64,
    },
    /// `1RM = w r^p`.
    Power {
        /// The exponent.
        p: f64,
    },
    /// `1RM = 100 w / (a + b exp(−c r))`.
    Decay {
        /// Percent of 1RM at very many repetitions.
        a: f64,
        /// Percent that repetitions take off.
        b: f64,
        /// Rate per repetition.
        c: f64,
    },
    /// `1RM = k w + m`, from a set of exactly five repetitions.
    FromFive {
        /// Slope.
        k: f64,
        /// Intercept, kg.
        m_kg: f64,
    },
    /// `1RM = a + b r w − c r`, from a set to failure at a fixed share of 1RM.
    FromShare {
        /// Intercept, kg.
        a_kg: f64,
        /// Factor of the product.
        b: f64,
        /// Taken off per repetition, kg.
        c_kg: f64,
        /// The share of 1RM at which the set is done.
        share: f64,
    },
}

impl Form {
    /// The 1RM in kg, or `None` where the equation has no positive value.
    ///
    /// ```text
    /// Rising      w (1 + k r)
    /// Hyperbola   n w / (a − b r)
    /// Power       w r^p
    /// Decay       100 w / (a + b e^(−c r))
    /// FromFive    k w + m
    /// FromShare   a + b r w − c r
    /// ```
    /// | symbol | meaning                                 | unit | range       |
    /// | ------ | --------------------------------------- | ---- | ----------- |
    /// | `w`    | load of the set                         | kg   | w > 0       |
    /// | `r`    | repetitions to failure                  | –    | 1 ≤ r ≤ 15  |
    /// | others | printed coefficients                    |      |             |
    ///
    /// **Shape.** All but the last rise with `w` and with `r`; the first four are proportional to `w`.
    /// **Source.** Each equation of `models/published/repetition-equations.ron` names its own.
    /// **Fails.** `None` when a denominator or the value is not positive (Brzycki from 37 repetitions on).
    #[must_use]
    pub fn one_rm_kg(self, load_kg: f64, repetitions: f64) -> Option<f64> {
        let (w, r) = (load_kg, repetitions);
        let value = match self {
            Self::Rising { k } => w * (1.0 + k * r),
            Self::Hyperbola { n, a, b } if a - b * r > 0.0 => n * w / (a - b * r),
            Self::Hyperbola { .. } => return None,
            Self::Power { p } => w * r.powf(p),
            Self::Decay { a, b, c } => 100.0 * w / (a + b * (-c * r).exp()),
            Self::FromFive { k, m_kg } => k * w + m_kg,
            Self::FromShare { a_kg, b, c_kg, .. } => a_kg + b * r * w - c_kg * r,
        };
        (value.is_finite() && value > 0.0).then_some(value)
    }
}
