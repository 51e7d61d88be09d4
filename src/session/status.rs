//! Who may do what: training age, injury and recent sessions decide, before any load is computed.
//!
//! In: a [`Trainee`] and a [`Method`]. Out: [`Permission`]: yes, plain progressive overload instead, or no
//! with the reason. Limits carry their source.

use super::method::Method;
use crate::error::SessionRefusal;
use crate::units::Mass;
use serde::Deserialize;

/// What is known of the person, as far as it decides what is planned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trainee {
    /// Months of steady training without a long break.
    pub training_months: f64,
    /// Injured, in pain, or under treatment.
    pub injured: bool,
    /// Age in years, if told.
    pub age_years: Option<f64>,
    /// Ill, unusually sore, or just back from a break.
    pub unwell_or_sore: bool,
    /// Days of the lay-off that somebody is just back from, by the log.
    pub back_from_break: Option<u32>,
    /// The lightest load of the log that failed and that nothing since answers.
    pub failed: Option<Mass>,
    /// Days from a set that left nothing in reserve to the first session, by the log.
    pub days_since_all_out: Option<u32>,
    /// Days since the last overloaded lowering of the same muscles, if there was one.
    pub days_since_overload: Option<u32>,
}

impl Trainee {
    /// A healthy adult with that many months of steady training.
    #[must_use]
    pub const fn with_training_months(training_months: f64) -> Self {
        Self {
            training_months,
            injured: false,
            age_years: None,
            unwell_or_sore: false,
            back_from_break: None,
            failed: None,
            days_since_all_out: None,
            days_since_overload: None,
        }
    }

    /// Whether load comes back step by step: ill, sore, or after a break.
    #[must_use]
    pub const fn comes_back(&self) -> bool {
        self.unwell_or_sore || self.back_from_break.is_some()
    }

    /// What the age asks for.
    #[must_use]
    pub fn age_care(&self) -> AgeCare {
        AgeCare::of(self.age_years)
    }

    /// The age, where it alone makes the plan a novice's.
    #[must_use]
    pub fn novice_by_age(&self) -> Option<f64> {
        let is_trained = self.training_months >= INTERMEDIATE_MONTHS;
        self.age_years
            .filter(|_| is_trained && self.age_care() == AgeCare::AsNovice)
    }

    /// The training status; a very old lifter's is that of a novice, an older one's at most intermediate.
    ///
    /// **Source.** ACSM 2009, Med Sci Sports Exerc 41:687-708: intermediate from about 6 months of
    /// steady training; "years" for advanced, taken as [`ADVANCED_MONTHS`].
    #[must_use]
    pub fn level(&self) -> Level {
        let care = self.age_care();
        if care == AgeCare::AsNovice {
            Level::Novice
        } else if self.training_months >= ADVANCED_MONTHS && care != AgeCare::Older {
            Level::Advanced
        } else if self.training_months >= INTERMEDIATE_MONTHS {
            Level::Intermediate
        } else {
            // A NaN or a negative number of months lands here, on the careful side.
            Level::Novice
        }
    }
}

/// How much care an age asks for, whatever the training.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum AgeCare {
    /// None beyond the usual; or nobody told the age.
    None,
    /// From [`MIDDLE_YEARS`] on: a caution, and no lowering of more than the 1RM.
    Middle,
    /// From [`OLDER_YEARS`] on: planned as an intermediate at most, nothing above the 1RM in any setup.
    Older,
    /// Of great age: planned as a novice.
    AsNovice,
}

impl AgeCare {
    /// What an age asks for.
    #[must_use]
    pub fn of(age_years: Option<f64>) -> Self {
        match age_years {
            Some(age) if age > OLDEST_YEARS => Self::AsNovice,
            Some(age) if age >= OLDER_YEARS => Self::Older,
            Some(age) if age >= MIDDLE_YEARS => Self::Middle,
            _ => Self::None,
        }
    }

    /// Whether more than the 1RM is left out.
    #[must_use]
    pub const fn ends_at_one_rm(self) -> bool {
        matches!(self, Self::Older | Self::AsNovice)
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

/// Months of steady training from which a lifter is intermediate (ACSM 2009, summary of the position stand).
pub const INTERMEDIATE_MONTHS: f64 = 6.0;
/// Months of steady training from which a lifter is advanced (assumed: the position stand says "years").
pub const ADVANCED_MONTHS: f64 = 24.0;
/// Months of steady training before lowering more than 1RM (common practice: years of it, never less than two).
pub const OVERLOAD_MONTHS: f64 = 24.0;
/// Least days between two overloaded lowering sessions of the same muscles (common practice).
pub const OVERLOAD_REST_DAYS: u32 = 7;
/// Least days between a set that left nothing in reserve and overloaded lowering (common practice: two days between hard
/// sessions of the same muscles).
pub const ALL_OUT_REST_DAYS: u32 = 2;
/// Age after which years of training count no more (common practice: the very old train as novices do, under supervision).
pub const OLDEST_YEARS: f64 = 70.0;
/// Age from which heavy lifting goes with a caution and more than the 1RM is not lowered (common practice: guidance for older
/// adults begins at 50 for whoever has a disease, and muscle and tendon recover more slowly; that lowering ends there is assumed).
pub const MIDDLE_YEARS: f64 = 50.0;
/// Age from which nothing above the 1RM is felt in any setup and nobody is planned as an advanced lifter (common practice: older adults are
/// those from 65 on; strength falls faster, and a mishap under a bar costs more).
pub const OLDER_YEARS: f64 = 65.0;
/// Age from which anything is planned or fitted: the tables of strength, repetitions, rests and weeks are of adults, and
/// who is younger is led by a coach on the spot (common practice).
pub const ADULT_YEARS: f64 = 18.0;

/// Whether a method is planned for somebody.
#[derive(Debug, Clone, PartialEq)]
pub enum Permission {
    /// Yes.
    Granted,
    /// Plain progressive overload is planned in its place: a novice gains most from that.
    PlainInstead,
    /// Nothing is planned, for this reason.
    Refused(SessionRefusal),
}

/// Whether `method` is planned for `trainee`.
#[must_use]
pub fn may_do(trainee: &Trainee, method: Method) -> Permission {
    if trainee.injured {
        return Permission::Refused(SessionRefusal::Injured);
    }
    if let Some(years) = trainee.age_years.filter(|age| *age < ADULT_YEARS) {
        let least = ADULT_YEARS;
        return Permission::Refused(SessionRefusal::NotAdult { years, least });
    }
    if trainee.level() == Level::Novice && method != Method::Straight {
        return Permission::PlainInstead;
    }
    match method {
        Method::OverloadedLowering => may_lower_overload(trainee),
        _ => Permission::Granted,
    }
}

fn may_lower_overload(trainee: &Trainee) -> Permission {
    if trainee.training_months < OVERLOAD_MONTHS {
        return Permission::Refused(SessionRefusal::TooLittleTraining {
            months: trainee.training_months,
            least_months: OVERLOAD_MONTHS,
        });
    }
    if let Some(years) = trainee
        .age_years
        .filter(|_| trainee.age_care() != AgeCare::None)
    {
        return Permission::Refused(SessionRefusal::OfAge {
            years,
            from_years: MIDDLE_YEARS,
        });
    }
    if trainee.unwell_or_sore {
        return Permission::Refused(SessionRefusal::UnwellOrSore);
    }
    if let Some(days) = trainee.back_from_break {
        return Permission::Refused(SessionRefusal::AfterLayOff { days });
    }
    if let Some(load) = trainee.failed {
        return Permission::Refused(SessionRefusal::AfterFailure { load });
    }
    if let Some(days) = trainee
        .days_since_all_out
        .filter(|days| *days < ALL_OUT_REST_DAYS)
    {
        let least = ALL_OUT_REST_DAYS;
        return Permission::Refused(SessionRefusal::AfterAllOut { days, least });
    }
    match trainee.days_since_overload {
        Some(days) if days < OVERLOAD_REST_DAYS => {
            Permission::Refused(SessionRefusal::OverloadTooSoon { days })
        }
        _ => Permission::Granted,
    }
}
