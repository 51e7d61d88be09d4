//! Is it a plateau? The trend of the estimated 1RM over a training log, and how sure one can be.
//!
//! In: a [`Log`] of one lift. Out: the best estimate of every day, a robust line through the recent ones,
//! a verdict (rising, flat, falling, unclear) with how many weeks it holds and how sure it is. What the log
//! cannot tell is in [`super::log_limits`].

use super::bend::last_change;
use super::day::Day;
use super::failed_attempt::unanswered;
use super::lift_facts::LiftFacts;
use super::log_limits::{LogLimit, limits_of};
use super::one_rm_now::{LayOff, OneRmNow, last_lay_off, last_lay_off_of, one_rm_now};
use super::published_equations::PublishedEstimates;
use super::session_best::SessionBest;
use super::training_log::Log;
use super::trend_line::{FEWEST_SESSIONS, TrendLine, trend_line};
use super::unconfirmed::{Jump, confirmed};
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
    /// The best set of every day that counts, in order of time.
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
    /// The last lay-off; only the sessions since count for the line and the 1RM now.
    pub lay_off: Option<LayOff>,
    /// The 1RM now.
    pub now: OneRmNow,
    /// Sets that stand for more than the days before explain, and do not count.
    pub jumps: Vec<Jump>,
    /// Days after the last session that counts.
    pub later: Vec<Day>,
    /// What the log cannot tell.
    pub limits: Vec<LogLimit>,
}

impl Trend<'_> {
    /// Weeks from the best session to the last.
    #[must_use]
    pub fn weeks_since_best(&self) -> f64 {
        self.recent.to.weeks_since(self.sessions[self.best].day)
    }

    /// The last day with a set, whether it counts or not.
    #[must_use]
    pub fn last_day(&self) -> Day {
        self.later.last().copied().unwrap_or(self.recent.to)
    }

    /// A lay-off after the last session that counts, up to a day on which somebody trains again.
    #[must_use]
    pub fn break_until(&self, today: Day) -> Option<LayOff> {
        let mut days = vec![self.recent.to];
        days.extend(&self.later);
        days.push(today);
        last_lay_off_of(&days)
    }

    /// The 1RM now, by [`super::one_rm_now`].
    #[must_use]
    pub const fn one_rm_now(&self) -> Mass {
        self.now.one_rm
    }
}

/// The trend of a log of one lift.
///
/// The best estimate of each day counts; a day with sets beyond the range of the equations, or with one far above all
/// days before, counts only by its other sets, if it has any. The stretch since the last lay-off, and in it since the last bend of the trend, decides.
///
/// **Fails** when the log mixes lifts (bad input), or has fewer than two days with a usable set (no answer).
pub fn trend<'a>(
    log: &Log,
    lift: LiftFacts,
    published: &'a PublishedEstimates,
) -> Result<Trend<'a>> {
    let log = log.of_lift(None)?;
    let (sessions, counted, jumps) = confirmed(&log, published);
    if sessions.len() + jumps.len() < 2 {
        return Err(too_few(&sessions));
    }
    let whole = trend_line(&sessions, sessions.len().saturating_sub(MOST_SESSIONS))?;
    let days: Vec<Day> = log.by_day().into_iter().map(|(day, _)| day).collect();
    let (lay_off, start) = last_lay_off(&days, &sessions).unzip();
    let start = start.unwrap_or(0);
    let (before, recent) = lines(&sessions, start)?;
    let failed = unanswered(&counted, &sessions[start..]);
    let now = one_rm_now(&sessions[start..], &recent, failed);
    let now = now.ok_or_else(|| too_few(&sessions))?;
    let (verdict, sureness) = judge(&sessions[recent.first..], &recent)?;
    let recent_end = recent.to;
    let limits = limits_of(lift, &sessions, &recent, (lay_off, &jumps));
    Ok(Trend {
        lift: log.entries[0].lift.clone(),
        title: None,
        whole,
        recent,
        before,
        verdict,
        sureness: across_breaks(sureness, &limits),
        best: best_of(&sessions),
        lay_off,
        now,
        later: days.into_iter().filter(|day| *day > recent_end).collect(),
        jumps,
        limits,
        sessions,
    })
}

/// The line before the last change or lay-off, if any, and the line since; `start` is the first session since a lay-off.
fn lines(sessions: &[SessionBest], start: usize) -> Result<(Option<TrendLine>, TrendLine)> {
    let (first, from) = match last_change(&sessions[start..])? {
        Some(index) => (start + index, start),
        None => (start, 0),
    };
    let before = (first > from).then(|| {
        let oldest = from.max(first.saturating_sub(MOST_SESSIONS));
        trend_line(&sessions[..first], oldest)
    });
    let since = first.max(sessions.len().saturating_sub(MOST_SESSIONS));
    Ok((before.transpose()?, trend_line(sessions, since)?))
}

fn too_few(sessions: &[SessionBest]) -> Error {
    Error::no_answer(LogFault::FewSessions {
        usable: sessions.len(),
        least: 2,
        for_verdict: FEWEST_SESSIONS,
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
        .any(|limit| matches!(limit, LogLimit::Gaps(_) | LogLimit::LayOff(_)))
    {
        sureness.min(Sureness::Likely)
    } else {
        sureness
    }
}
