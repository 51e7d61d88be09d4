//! Is it a plateau? The trend of the estimated 1RM over a training log, and how sure one can be.
//!
//! In: a [`Log`] of one lift. Out: the best estimate of every day, a robust line through the recent ones,
//! a verdict (rising, flat, falling, unclear) with how many weeks it holds and how sure it is. What the log
//! cannot tell is in [`super::log_limits`].

use super::bend::last_change;
use super::lift_facts::LiftFacts;
use super::log_limits::{LogLimit, limits_of};
use super::published_equations::PublishedEstimates;
use super::session_best::{SessionBest, session_bests};
use super::training_log::Log;
use super::trend_line::{FEWEST_SESSIONS, TrendLine, trend_line};
use super::verdict::{Sureness, Verdict, judge};
use crate::error::{Error, LogFault, Result};
use crate::units::Mass;

/// Most sessions of one line, three years of six days a week: a line takes every pair of them.
pub const MOST_SESSIONS: usize = 1000;

/// The trend of one lift.
#[derive(Debug, Clone, PartialEq)]
pub struct Trend<'a> {
    /// The lift.
    pub lift: String,
    /// Title of its movement, where the library has one of that name.
    pub title: Option<String>,
    /// The best set of every day, in order of time.
    pub sessions: Vec<SessionBest<'a>>,
    /// The line through all sessions, the last [`MOST_SESSIONS`] at most.
    pub whole: TrendLine,
    /// The line through the sessions since the last change of trend; the verdict is of this one.
    pub recent: TrendLine,
    /// The line before the change, if there is one.
    pub before: Option<TrendLine>,
    /// What the recent trend is.
    pub verdict: Verdict,
    /// How sure that is.
    pub sureness: Sureness,
    /// Index of the session with the best estimate, the latest of equal ones.
    pub best: usize,
    /// What the log cannot tell.
    pub limits: Vec<LogLimit>,
}

impl Trend<'_> {
    /// Weeks from the best session to the last.
    #[must_use]
    pub fn weeks_since_best(&self) -> f64 {
        self.recent.to.weeks_since(self.sessions[self.best].day)
    }

    /// The 1RM now: the recent line at the last session.
    #[must_use]
    pub fn one_rm_now(&self) -> Mass {
        let last = self.sessions.last().map_or(0.0, |session| session.week);
        Mass::from_kg(self.recent.kg_at(last).max(0.0))
    }
}

/// The trend of a log of one lift.
///
/// The best estimate of each day counts; a day with sets beyond the range of the equations counts only by
/// its other sets, if it has any. The stretch since the last bend of the trend decides.
///
/// **Fails** when the log mixes lifts (bad input), or has fewer than two days with a usable set (no answer).
pub fn trend<'a>(
    log: &Log,
    lift: LiftFacts,
    published: &'a PublishedEstimates,
) -> Result<Trend<'a>> {
    let log = log.of_lift(None)?;
    let sessions = session_bests(&log, published);
    if sessions.len() < 2 {
        return Err(Error::no_answer(LogFault::FewSessions {
            usable: sessions.len(),
            least: 2,
            for_verdict: FEWEST_SESSIONS,
        }));
    }
    let whole = trend_line(&sessions, sessions.len().saturating_sub(MOST_SESSIONS))?;
    let (before, recent) = match last_change(&sessions)? {
        Some(index) => (
            Some(trend_line(
                &sessions[..index],
                index.saturating_sub(MOST_SESSIONS),
            )?),
            trend_line(&sessions, index)?,
        ),
        None => (None, whole.clone()),
    };
    let (verdict, sureness) = judge(&sessions[recent.first..], &recent)?;
    let limits = limits_of(lift, &sessions, &recent);
    Ok(Trend {
        lift: log.entries[0].lift.clone(),
        title: None,
        whole,
        recent,
        before,
        verdict,
        sureness: across_breaks(sureness, &limits),
        best: best_of(&sessions),
        limits,
        sessions,
    })
}

/// Index of the session with the best estimate, the latest of equal ones.
fn best_of(sessions: &[SessionBest]) -> usize {
    (0..sessions.len())
        .max_by(|a, b| sessions[*a].kg().total_cmp(&sessions[*b].kg()))
        .unwrap_or(0)
}

/// Nobody knows what happened in a long break, so nothing across one is clear.
fn across_breaks(sureness: Sureness, limits: &[LogLimit]) -> Sureness {
    if limits
        .iter()
        .any(|limit| matches!(limit, LogLimit::Gaps(_)))
    {
        sureness.min(Sureness::Likely)
    } else {
        sureness
    }
}
