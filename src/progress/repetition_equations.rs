//! The published equations from repetitions to 1RM, as one list.
//!
//! In: load and repetitions to failure. Out: each equation's 1RM, percent of 1RM and repetitions.
//! Which of them are believed for a set is decided in [`super::estimate`].

use super::origin::Origin;
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
    /// | others | printed coefficients of [`EQUATIONS`]   |      |             |
    ///
    /// **Shape.** All but the last rise with `w` and with `r`; the first four are proportional to `w`.
    /// **Source.** Each equation of [`EQUATIONS`] names its own.
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

    /// Repetitions to failure at a load that is `share` of 1RM, or `None` where the equation has none.
    ///
    /// The inverse of [`Form::one_rm_kg`] in `r`; only the four proportional forms have one.
    #[must_use]
    pub fn repetitions_at(self, share: f64) -> Option<f64> {
        let value = match self {
            Self::Rising { k } => (1.0 / share - 1.0) / k,
            Self::Hyperbola { n, a, b } => (a - n * share) / b,
            Self::Power { p } => share.powf(-1.0 / p),
            Self::Decay { a, b, c } => -((100.0 * share - a) / b).ln() / c,
            Self::FromFive { .. } | Self::FromShare { .. } => return None,
        };
        value.is_finite().then_some(value)
    }

    /// Percent of 1RM that `repetitions` to failure stand for, for the proportional forms.
    #[must_use]
    pub fn percent_at(self, repetitions: f64) -> Option<f64> {
        match self {
            Self::FromFive { .. } | Self::FromShare { .. } => None,
            _ => self
                .one_rm_kg(1.0, repetitions)
                .map(|one_rm| 100.0 / one_rm),
        }
    }
}

/// One published equation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Equation {
    /// Authors and year.
    pub name: &'static str,
    /// The formula as printed.
    pub formula: &'static str,
    /// Its shape and coefficients.
    pub form: Form,
    /// Fewest and most repetitions it is meant for.
    pub repetitions: (f64, f64),
    /// The one movement it was made for; `None` for any.
    pub movement: Option<&'static str>,
    /// Standard error of the estimate as published, kg.
    pub error_kg: Option<f64>,
    /// Where formula and coefficients come from.
    pub origin: Origin,
    /// What one must know before using it.
    pub note: &'static str,
}

impl Equation {
    /// Whether it counts in the median: it holds for any lift and for any load.
    #[must_use]
    pub const fn is_general(&self) -> bool {
        self.movement.is_none()
    }

    /// Whether `repetitions` lie in its range.
    #[must_use]
    pub fn covers(&self, repetitions: f64) -> bool {
        (self.repetitions.0..=self.repetitions.1).contains(&repetitions)
    }
}

const fn general(
    name: &'static str,
    formula: &'static str,
    form: Form,
    repetitions: (f64, f64),
    origin: Origin,
    note: &'static str,
) -> Equation {
    Equation {
        name,
        formula,
        form,
        repetitions,
        movement: None,
        error_kg: None,
        origin,
        note,
    }
}

const fn for_movement(
    name: &'static str,
    formula: &'static str,
    form: Form,
    repetitions: (f64, f64),
    movement: (&'static str, f64),
    note: &'static str,
) -> Equation {
    let key = match form {
        Form::FromFive { .. } => "reynolds_2006",
        _ => "high_school_power_lifters_2003",
    };
    Equation {
        name,
        formula,
        form,
        repetitions,
        movement: Some(movement.0),
        error_kg: Some(movement.1),
        origin: Origin::Read(key, "abstract"),
        note,
    }
}

const SCHOOL: &str = "high-school power lifters only; below about 112 kg (squat), 62 kg (bench) or 124 kg (deadlift) \
more repetitions lower the result, so it is shown beside the others and never averaged";

/// Every equation, general ones first. The upper end of 10 repetitions is LeSuer et al. 1997 (from
/// memory) for all seven general ones; Mayhew's was made on high repetitions and is let run to 15 (assumed).
pub const EQUATIONS: &[Equation] = &[
    general(
        "Epley 1985",
        "1RM = w (1 + r/30)",
        Form::Rising { k: 1.0 / 30.0 },
        (2.0, 10.0),
        Origin::Recalled(
            "epley_1985",
            "the formula; coefficient cross-checked on secondary pages",
        ),
        "gives 1.033 w at one repetition, where 1RM is the load itself",
    ),
    general(
        "Brzycki 1993",
        "1RM = w / (1.0278 − 0.0278 r)",
        Form::Hyperbola {
            n: 1.0,
            a: 1.0278,
            b: 0.0278,
        },
        (1.0, 10.0),
        Origin::Recalled("brzycki_1993", "the formula"),
        "equals Epley at 10 repetitions (75 %); grows without bound towards 37",
    ),
    general(
        "Lander 1985",
        "1RM = 100 w / (101.3 − 2.67123 r)",
        Form::Hyperbola {
            n: 100.0,
            a: 101.3,
            b: 2.67123,
        },
        (2.0, 10.0),
        Origin::Recalled("lander_1985", "the formula"),
        "",
    ),
    general(
        "Lombardi 1989",
        "1RM = w r^0.10",
        Form::Power { p: 0.10 },
        (1.0, 10.0),
        Origin::Recalled("lombardi_1989", "the formula"),
        "flattest of all at many repetitions",
    ),
    general(
        "Mayhew et al. 1992",
        "1RM = 100 w / (52.2 + 41.9 exp(−0.055 r))",
        Form::Decay {
            a: 52.2,
            b: 41.9,
            c: 0.055,
        },
        (2.0, 15.0),
        Origin::Recalled("mayhew_1992", "the formula"),
        "made for high repetitions; the highest of all at few",
    ),
    general(
        "O'Conner et al. 1989",
        "1RM = w (1 + 0.025 r)",
        Form::Rising { k: 0.025 },
        (2.0, 10.0),
        Origin::Recalled("oconner_1989", "the formula"),
        "",
    ),
    general(
        "Wathan 1994",
        "1RM = 100 w / (48.8 + 53.8 exp(−0.075 r))",
        Form::Decay {
            a: 48.8,
            b: 53.8,
            c: 0.075,
        },
        (2.0, 10.0),
        Origin::Recalled("wathan_1994", "the formula"),
        "",
    ),
    for_movement(
        "Reynolds et al. 2006, chest press",
        "1RM = 1.1307 w + 0.6999 kg, at five repetitions",
        Form::FromFive {
            k: 1.1307,
            m_kg: 0.6999,
        },
        (5.0, 5.0),
        ("bench-press", 2.98),
        "from five repetitions only",
    ),
    for_movement(
        "Reynolds et al. 2006, leg press",
        "1RM = 1.0970 w + 14.2546 kg, at five repetitions",
        Form::FromFive {
            k: 1.0970,
            m_kg: 14.2546,
        },
        (5.0, 5.0),
        ("leg-press", 16.16),
        "from five repetitions only",
    ),
    for_movement(
        "high-school power lifters 2003, squat",
        "1RM = 159.9 + 0.103 r w − 11.552 r, kg, at 70 %",
        Form::FromShare {
            a_kg: 159.9,
            b: 0.103,
            c_kg: 11.552,
            share: 0.70,
        },
        (1.0, 15.0),
        ("squat", 5.06),
        SCHOOL,
    ),
    for_movement(
        "high-school power lifters 2003, bench press",
        "1RM = 90.66 + 0.085 r w − 5.306 r, kg, at 70 %",
        Form::FromShare {
            a_kg: 90.66,
            b: 0.085,
            c_kg: 5.306,
            share: 0.70,
        },
        (1.0, 15.0),
        ("bench-press", 2.69),
        SCHOOL,
    ),
    for_movement(
        "high-school power lifters 2003, deadlift",
        "1RM = 156.08 + 0.098 r w − 12.106 r, kg, at 80 %",
        Form::FromShare {
            a_kg: 156.08,
            b: 0.098,
            c_kg: 12.106,
            share: 0.80,
        },
        (1.0, 15.0),
        ("deadlift", 4.97),
        SCHOOL,
    ),
];
