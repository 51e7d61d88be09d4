//! The invented training log that the lecture tells of, and sessions for the person who wrote it.
//!
//! In: a [`Desk`]. Out: the log with its trend, sessions of one method. Whoever the lecture is for, these are of one
//! invented person, so that the story hangs together.

use super::desk::{Desk, HARD_EFFORT};
use super::judged_log::{LogStudy, log_study};
use super::log_study::LogChoice;
use super::plan_question::{MethodChoice, PersonTold, PlanQuestion};
use super::planned_sessions::plan;
use crate::error::Result;
use crate::progress::day::Day;
use crate::session::draft::SessionPlan;
use crate::session::method::Method;
use crate::session::request::SessionWishes;
use crate::setups::Watch;

/// The log and its lift.
const LOG: &str = "stalled";
const LIFT: &str = "bench-press";
/// The first day of a plan, some days after the log's last.
const FIRST_DAY: (i32, u32, u32) = (2024, 5, 27);
/// Months of training of the invented person (invented).
const MONTHS: f64 = 60.0;

fn choice() -> LogChoice {
    LogChoice {
        name: LOG.to_owned(),
        ..LogChoice::default()
    }
}

/// The log that goes flat.
pub fn invented_log<'a>(desk: &Desk<'a>) -> Result<LogStudy<'a>> {
    log_study(desk.models, &choice(), Some(LIFT))
}

/// A session of a method for the person of the log; one set of repetitions in small groups where the wish is for clusters.
pub fn invented_session(
    desk: &Desk<'_>,
    method: Method,
    wishes: SessionWishes,
) -> Result<Option<SessionPlan>> {
    let question = PlanQuestion {
        methods: MethodChoice::One(method),
        log: Some(choice()),
        start: Day::from_date(FIRST_DAY.0, FIRST_DAY.1, FIRST_DAY.2),
        person: PersonTold {
            training_months: Some(MONTHS),
            ..PersonTold::default()
        },
        plates: desk.units,
        effort: method.is_accommodating().then_some(HARD_EFFORT),
        wishes,
        ..PlanQuestion::usual(LIFT)
    };
    let answer = plan(&question, desk.models, &Watch::default())?;
    Ok(answer
        .sessions
        .into_iter()
        .next()
        .map(|session| session.plan))
}
