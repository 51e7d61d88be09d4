//! Load as a share of 1RM from the velocity of the lift, by published equations.
//!
//! In: movement and mean velocity of a lift done as fast as possible, or a share of 1RM. Out: the
//! other of the two, and the mean velocity at 1RM for each lift where one was published.

use super::origin::Origin;
pub use super::published::Velocity;
use crate::error::{Error, Result};
use crate::units::{Mass, Speed, rounded};

/// One published load-velocity equation.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadVelocity {
    /// The movement it stands for here.
    pub movement: &'static str,
    /// The lift as published.
    pub lift: &'static str,
    /// Which velocity.
    pub velocity: Velocity,
    /// `load % = a v² + b v + c`.
    pub a: f64,
    /// Linear coefficient, % per m/s.
    pub b: f64,
    /// Constant, %.
    pub c: f64,
    /// Standard error of the estimate, % of 1RM, if recalled.
    pub error_percent: Option<f64>,
    /// Where the coefficients come from.
    pub origin: Origin,
}

/// Range of loads the equations were made on, % of 1RM.
pub const LOADS_PERCENT: (f64, f64) = (30.0, 100.0);

const PRESS: Origin = Origin::Recalled(
    "gonzalez_badillo_2010",
    "coefficients; R² and velocity at 1RM read in the abstract",
);
const SQUAT: Origin = Origin::Recalled(
    "sanchez_medina_2017",
    "coefficients; R², error and velocity at 1RM read in the abstract",
);
const PULL: Origin = Origin::Recalled("sanchez_medina_2014", "coefficients");

/// The published equations; lifts on a guided bar, done as fast as possible.
pub const EQUATIONS: &[LoadVelocity] = &[
    LoadVelocity {
        movement: "bench-press",
        lift: "bench press, pause on the chest",
        velocity: Velocity::MeanPropulsive,
        a: 8.4326,
        b: -73.501,
        c: 112.33,
        error_percent: Some(3.56),
        origin: PRESS,
    },
    LoadVelocity {
        movement: "bench-press",
        lift: "bench press, pause on the chest",
        velocity: Velocity::Mean,
        a: 7.5786,
        b: -75.865,
        c: 113.02,
        error_percent: Some(3.77),
        origin: PRESS,
    },
    LoadVelocity {
        movement: "squat",
        lift: "full back squat",
        velocity: Velocity::MeanPropulsive,
        a: -5.961,
        b: -50.71,
        c: 117.0,
        error_percent: Some(4.02),
        origin: SQUAT,
    },
    LoadVelocity {
        movement: "squat",
        lift: "full back squat",
        velocity: Velocity::Mean,
        a: -12.87,
        b: -46.31,
        c: 116.3,
        error_percent: None,
        origin: SQUAT,
    },
    LoadVelocity {
        movement: "row",
        lift: "prone bench pull",
        velocity: Velocity::MeanPropulsive,
        a: 18.5797,
        b: -104.182,
        c: 147.94,
        error_percent: None,
        origin: PULL,
    },
];

impl LoadVelocity {
    /// Load in percent of 1RM at a velocity.
    ///
    /// ```text
    /// load = a v² + b v + c
    /// ```
    /// | symbol      | meaning                      | unit     | range        |
    /// | ----------- | ---------------------------- | -------- | ------------ |
    /// | `load`      | load                         | % of 1RM | 30 to 100    |
    /// | `v`         | mean (propulsive) velocity   | m/s      | 0.1 to 1.6   |
    /// | `a`,`b`,`c` | coefficients of [`EQUATIONS`] |         |              |
    ///
    /// **Shape.** Falls with `v` over the whole range. **Source.** [`LoadVelocity::origin`].
    /// **Fails.** Never; a load outside 30 to 100 % is an extrapolation that the callers refuse.
    #[must_use]
    pub fn percent_at(&self, velocity_m_s: f64) -> f64 {
        (self.a * velocity_m_s + self.b) * velocity_m_s + self.c
    }

    /// Velocity in m/s at a load in percent of 1RM: the root of the same equation on its falling branch.
    ///
    /// `v = (−b − √(b² − 4 a (c − load))) / 2a`; `None` where the equation has no root.
    #[must_use]
    pub fn velocity_m_s_at(&self, percent: f64) -> Option<f64> {
        let under_root = self.b * self.b - 4.0 * self.a * (self.c - percent);
        let velocity_m_s = (-self.b - under_root.max(0.0).sqrt()) / (2.0 * self.a);
        (under_root >= 0.0 && velocity_m_s.is_finite() && velocity_m_s > 0.0)
            .then_some(velocity_m_s)
    }
}

/// The equation for a movement and kind of velocity.
#[must_use]
pub fn equation_for(movement: &str, velocity: Velocity) -> Option<&'static LoadVelocity> {
    EQUATIONS
        .iter()
        .find(|equation| equation.movement == movement && equation.velocity == velocity)
}

/// The 1RM that a load and the mean velocity of its fastest repetition stand for.
///
/// Takes the mean-velocity equation where there is one, else the propulsive one (which is faster by
/// a few cm/s, so the 1RM comes out slightly low).
///
/// **Fails** when no equation was published for the movement, or when the velocity stands for a load
/// outside 30 to 100 % of 1RM.
pub fn one_rm_from_velocity(movement: &str, load: Mass, velocity: Speed) -> Result<Mass> {
    let equation = equation_for(movement, Velocity::Mean)
        .or_else(|| equation_for(movement, Velocity::MeanPropulsive))
        .ok_or_else(|| {
            Error::no_answer(format!(
                "no load-velocity equation was published for {movement} with its numbers"
            ))
            .hint("published: bench-press, squat, row")
        })?;
    let percent = equation.percent_at(velocity.as_m_s());
    let (least, most) = LOADS_PERCENT;
    // A lift slower than the mean 1RM is still a 1RM: people differ by a few cm/s there.
    let percent = if percent > most && percent <= most + 2.0 * 4.0 {
        most
    } else {
        percent
    };
    if !(least..=most).contains(&percent) {
        return Err(Error::no_answer(format!(
            "{} m/s stands for {} % of 1RM, outside the {least} to {most} % of the equation",
            rounded(velocity.as_m_s(), 2),
            rounded(percent, 0)
        )));
    }
    Ok(Mass::from_kg(load.as_kg() * 100.0 / percent))
}

/// Published mean velocity of a true 1RM.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct VelocityAtOneRm {
    /// The movement it stands for here.
    pub movement: &'static str,
    /// The lift as published.
    pub lift: &'static str,
    /// Mean velocity, m/s.
    pub mean_m_s: f64,
    /// Standard deviation between people, m/s, if published.
    pub deviation_m_s: Option<f64>,
    /// Where it comes from.
    pub origin: Origin,
}

const fn at_one_rm(
    movement: &'static str,
    lift: &'static str,
    mean_m_s: f64,
    deviation_m_s: Option<f64>,
    origin: Origin,
) -> VelocityAtOneRm {
    VelocityAtOneRm {
        movement,
        lift,
        mean_m_s,
        deviation_m_s,
        origin,
    }
}

/// Mean velocity of a true 1RM, lift by lift.
pub const AT_ONE_RM: &[VelocityAtOneRm] = &[
    at_one_rm(
        "bench-press",
        "guided bar, stop at the chest",
        0.16,
        Some(0.04),
        Origin::Read("gonzalez_badillo_2010", "abstract"),
    ),
    at_one_rm(
        "bench-press",
        "free weight",
        0.17,
        None,
        Origin::Read("bench_velocity_2021", "abstract"),
    ),
    at_one_rm(
        "squat",
        "full squat, guided bar",
        0.32,
        Some(0.03),
        Origin::Read("sanchez_medina_2017", "abstract"),
    ),
    at_one_rm(
        "row",
        "prone bench pull",
        0.52,
        Some(0.04),
        Origin::Recalled("sanchez_medina_2014", "velocity at 1RM"),
    ),
    at_one_rm(
        "pull-up",
        "prone grip",
        0.20,
        Some(0.05),
        Origin::Recalled("sanchez_moreno_2017", "velocity at 1RM"),
    ),
    at_one_rm(
        "overhead-press",
        "seated",
        0.19,
        Some(0.05),
        Origin::Recalled("balsalobre_2018", "velocity at 1RM, low confidence"),
    ),
];

/// Mean velocity of a true 1RM of a movement, the first published one.
#[must_use]
pub fn at_one_rm_of(movement: &str) -> Option<&'static VelocityAtOneRm> {
    AT_ONE_RM.iter().find(|row| row.movement == movement)
}
