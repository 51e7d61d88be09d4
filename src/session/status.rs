//! Who may do what: training age, injury and recent sessions decide, before any load is computed.
//!
//! In: a [`Lifter`] and a [`Method`]. Out: [`Permission`]: yes, plain progressive overload instead
//! (with the reason), or no (with the reason and what to do instead). Limits carry their source.

use super::method::Method;
use crate::progress::origin::Origin;
use serde::Deserialize;

/// What is known of the person, as far as it decides what is planned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lifter {
    /// Months of steady training without a long break.
    pub training_months: f64,
    /// Injured, in pain, or under treatment.
    pub injured: bool,
    /// Age in years, if told.
    pub age_years: Option<f64>,
    /// Ill, unusually sore, or just back from a break.
    pub unwell_or_sore: bool,
    /// Days since the last overloaded lowering of the same muscles, if there was one.
    pub days_since_overload: Option<u32>,
}

impl Lifter {
    /// A healthy adult with that many months of steady training.
    #[must_use]
    pub const fn with_training_months(training_months: f64) -> Self {
        Self {
            training_months,
            injured: false,
            age_years: None,
            unwell_or_sore: false,
            days_since_overload: None,
        }
    }

    /// The training status.
    ///
    /// **Source.** ACSM 2009, Med Sci Sports Exerc 41:687-708: intermediate from about 6 months of
    /// steady training; "years" for advanced, taken as [`ADVANCED_MONTHS`].
    #[must_use]
    pub fn level(&self) -> Level {
        if self.training_months >= ADVANCED_MONTHS {
            Level::Advanced
        } else if self.training_months >= INTERMEDIATE_MONTHS {
            Level::Intermediate
        } else {
            // A NaN or a negative number of months lands here, on the careful side.
            Level::Novice
        }
    }
}

/// Training status.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
pub enum Level {
    /// No training yet, or none for years.
    Novice,
    /// About half a year of steady training.
    Intermediate,
    /// Years of training.
    Advanced,
}

impl Level {
    /// "novice", "intermediate", "advanced".
    #[must_use]
    pub const fn in_words(self) -> &'static str {
        match self {
            Self::Novice => "novice",
            Self::Intermediate => "intermediate",
            Self::Advanced => "advanced",
        }
    }
}

/// Months of steady training from which a lifter is intermediate.
pub const INTERMEDIATE_MONTHS: f64 = 6.0;
/// Months of steady training from which a lifter is advanced.
pub const ADVANCED_MONTHS: f64 = 24.0;
/// Months of steady training before lowering more than 1RM.
pub const OVERLOAD_MONTHS: f64 = 12.0;
/// Least days between two overloaded lowering sessions of the same muscles.
pub const OVERLOAD_REST_DAYS: u32 = 7;
/// Age from which lowering more than 1RM is planned at all.
pub const ADULT_YEARS: f64 = 18.0;

/// Where the limits above come from.
pub const ORIGINS: &[(&str, Origin)] = &[
    (
        "intermediate from about 6 months",
        Origin::Read("acsm_2009", "summary of the position stand"),
    ),
    (
        "advanced from 24 months",
        Origin::Assumed("the position stand says \"years of training\""),
    ),
    (
        "overloaded lowering after 12 months",
        Origin::Practice("trained lifters with sound technique, at least a year"),
    ),
    (
        "overloaded lowering once a week at most",
        Origin::Practice("practitioners' guideline"),
    ),
    (
        "no overloaded lowering under 18 years",
        Origin::Practice("no children"),
    ),
];

/// Whether a method is planned for a lifter.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Permission {
    /// Yes.
    Granted,
    /// Plain progressive overload is planned in its place, for this reason.
    PlainInstead(String),
    /// Nothing is planned, for this reason.
    Refused {
        /// Why.
        reason: String,
        /// What to do instead.
        instead: String,
    },
}

fn refused(reason: impl Into<String>, instead: &str) -> Permission {
    Permission::Refused {
        reason: reason.into(),
        instead: instead.to_owned(),
    }
}

/// Whether `method` is planned for `lifter`.
#[must_use]
pub fn may_do(lifter: &Lifter, method: Method) -> Permission {
    if lifter.injured {
        return refused(
            "no session is planned for an injured lifter",
            "see a clinician first; a qualified professional decides when and with what load to train again",
        );
    }
    if lifter.level() == Level::Novice && method != Method::Straight {
        return Permission::PlainInstead(format!(
            "a novice ({} months of steady training) gains most from plain progressive overload; {} is for lifters \
             whose gains have slowed, from about {INTERMEDIATE_MONTHS} months on",
            lifter.training_months.max(0.0).round(),
            method.name()
        ));
    }
    match method {
        Method::OverloadedLowering => may_lower_overload(lifter),
        _ => Permission::Granted,
    }
}

fn may_lower_overload(lifter: &Lifter) -> Permission {
    if lifter.training_months < OVERLOAD_MONTHS {
        return refused(
            format!(
                "lowering more than 1RM asks for {OVERLOAD_MONTHS} months of steady training, and this lifter has {}",
                lifter.training_months.round()
            ),
            "train with straight sets, a pyramid or clusters until then",
        );
    }
    if lifter.age_years.is_some_and(|age| age < ADULT_YEARS) {
        return refused(
            "lowering more than 1RM is for adults only",
            "train with straight sets, a pyramid or clusters",
        );
    }
    if lifter.unwell_or_sore {
        return refused(
            "no lowering beyond 1RM when ill, unusually sore or just back from a break",
            "wait until recovered, then start with straight sets",
        );
    }
    match lifter.days_since_overload {
        Some(days) if days < OVERLOAD_REST_DAYS => refused(
            format!(
                "the last overloaded lowering was {days} days ago; at most once a week for the same muscles"
            ),
            "train with straight sets, a pyramid or clusters today",
        ),
        _ => Permission::Granted,
    }
}
