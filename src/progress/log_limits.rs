//! What a training log cannot tell, in plain words, so that nobody reads more into a trend than is there.
//!
//! In: a log of one lift, its best sets by day, the recent line. Out: a list of [`Limit`]s, each a
//! sentence that says what is missing or mixed up and what that may do to the verdict.

use super::day::Day;
use super::estimate::MOST_TRUSTED_REPETITIONS;
use super::training_log::Log;
use super::trend::{FEWEST_SESSIONS, SessionBest, TrendLine};
use crate::numeric::median;
use crate::units::rounded;

/// Sessions from which a recent trend is no longer called short of them (assumed).
const ENOUGH_SESSIONS: usize = 8;
/// Weeks below which a stretch is too short to tell a plateau from a bad fortnight (assumed).
const ENOUGH_WEEKS: f64 = 4.0;
/// Days without a session that make a gap (assumed: strength is kept about two weeks without training).
const GAP_DAYS: i32 = 14;
/// Spread between the equations that is worth a remark, share of the estimate (assumed).
const WIDE_SPREAD: f64 = 0.08;
/// Change of repetitions from the first to the last third that can look like a trend (assumed).
const DRIFT_REPETITIONS: f64 = 2.5;
/// Share of sessions that makes "many" of them.
const MANY: f64 = 0.25;

/// One thing the log cannot tell.
#[derive(Debug, Clone, PartialEq)]
pub enum Limit {
    /// Few sessions.
    FewSessions(usize),
    /// A short stretch, weeks.
    ShortStretch(f64),
    /// Days without a session, with what came before and after.
    Gaps(Vec<(Day, Day)>),
    /// Share of the days whose best set lies beyond the range of the equations.
    HighRepetitions(f64),
    /// Typical spread between the equations, share of the estimate.
    EquationsDisagree(f64),
    /// Repetitions of the best sets early and late in the stretch.
    RepetitionsDrift(f64, f64),
    /// Share of the days whose best set has no reserve noted.
    NoReserve(f64),
    /// All general equations estimate the deadlift too low.
    DeadliftLow,
    /// Body mass is part of the load.
    BodyMassInLoad,
    /// Distance from the line within which two days in three lie, kg.
    Scatter(f64),
    /// Median difference of the estimate by velocity from that by repetitions, share.
    VelocityDisagrees(f64),
}

impl Limit {
    /// The limit in one sentence.
    #[must_use]
    pub fn in_words(&self) -> String {
        match self {
            Self::FewSessions(count) if *count < FEWEST_SESSIONS => {
                format!("{count} sessions are too few for a verdict ({FEWEST_SESSIONS} at least)")
            }
            Self::FewSessions(count) => {
                format!("only {count} sessions in the recent stretch: one odd day can turn it")
            }
            Self::ShortStretch(weeks) => {
                format!(
                    "{} weeks are short: a plateau and a bad fortnight look alike",
                    rounded(*weeks, 1)
                )
            }
            Self::Gaps(gaps) => gaps_in_words(gaps),
            Self::HighRepetitions(share) => format!(
                "{} % of the days have no set of {MOST_TRUSTED_REPETITIONS} repetitions or fewer: the equations are weak there",
                percent(*share)
            ),
            Self::EquationsDisagree(spread) => {
                format!(
                    "the equations differ by {} % of the estimate: trust the trend, not the level",
                    percent(*spread)
                )
            }
            Self::RepetitionsDrift(early, late) => format!(
                "sets went from about {} to {} repetitions: equations err differently by repetitions, so part of the \
                 trend may be that",
                rounded(*early, 0),
                rounded(*late, 0)
            ),
            Self::NoReserve(share) => format!(
                "{} % of the days note no reserve and count as done to failure: if they were not, the 1RM is higher",
                percent(*share)
            ),
            Self::DeadliftLow => "all general equations estimate the deadlift too low".to_owned(),
            Self::BodyMassInLoad => {
                "the load must hold the body mass too: a change of body mass looks like a trend"
                    .to_owned()
            }
            Self::Scatter(kg) => format!(
                "two days in three lie within {} kg of the line: a change smaller than that is noise",
                rounded(*kg, 1)
            ),
            Self::VelocityDisagrees(share) => format!(
                "velocity and repetitions differ by {} % in the 1RM they give",
                percent(*share)
            ),
        }
    }
}

fn percent(share: f64) -> String {
    rounded(100.0 * share, 0)
}

fn gaps_in_words(gaps: &[(Day, Day)]) -> String {
    let named: Vec<String> = gaps
        .iter()
        .take(4)
        .map(|(from, to)| format!("{} days after {from}", to.days_since(*from)))
        .collect();
    let more = if gaps.len() > 4 {
        format!(" and {} more", gaps.len() - 4)
    } else {
        String::new()
    };
    format!(
        "no session for {}{more}: what happened there is unknown, and strength lost in a break is no plateau",
        named.join(", ")
    )
}

/// What the log cannot tell.
#[must_use]
pub fn limits_of(log: &Log, sessions: &[SessionBest], recent: &TrendLine) -> Vec<Limit> {
    let part = &sessions[recent.first..];
    let mut limits = Vec::new();
    if part.len() < ENOUGH_SESSIONS {
        limits.push(Limit::FewSessions(part.len()));
    }
    if recent.weeks() < ENOUGH_WEEKS {
        limits.push(Limit::ShortStretch(recent.weeks()));
    }
    limits.extend(gaps(part));
    limits.extend(
        share_of(part, |session| session.estimate.beyond_range)
            .filter(|s| *s >= MANY)
            .map(Limit::HighRepetitions),
    );
    limits.extend(
        typical(part, |session| Some(session.estimate.spread()))
            .filter(|s| *s >= WIDE_SPREAD)
            .map(Limit::EquationsDisagree),
    );
    limits.extend(drift(part));
    let no_reserve =
        |session: &SessionBest| session.set.reserve.is_none() && !session.estimate.measured;
    limits.extend(
        share_of(part, no_reserve)
            .filter(|s| *s >= MANY)
            .map(Limit::NoReserve),
    );
    match log.entries.first().map(|entry| entry.lift.as_str()) {
        Some("deadlift") => limits.push(Limit::DeadliftLow),
        Some("pull-up" | "chin-up" | "dip") => limits.push(Limit::BodyMassInLoad),
        _ => {}
    }
    let velocity = typical(part, |session| {
        session
            .by_velocity
            .map(|by| by.as_kg() / session.estimate.one_rm.as_kg() - 1.0)
    });
    limits.extend(
        velocity
            .filter(|share| share.abs() >= 0.05)
            .map(|share| Limit::VelocityDisagrees(share.abs())),
    );
    limits.push(Limit::Scatter(recent.scatter_kg));
    limits
}

fn gaps(sessions: &[SessionBest]) -> Option<Limit> {
    let gaps: Vec<(Day, Day)> = sessions
        .windows(2)
        .filter(|pair| pair[1].day.days_since(pair[0].day) > GAP_DAYS)
        .map(|pair| (pair[0].day, pair[1].day))
        .collect();
    (!gaps.is_empty()).then_some(Limit::Gaps(gaps))
}

fn share_of(sessions: &[SessionBest], is: impl Fn(&SessionBest) -> bool) -> Option<f64> {
    let count = sessions.iter().filter(|session| is(session)).count();
    (!sessions.is_empty()).then(|| count as f64 / sessions.len() as f64)
}

fn typical(sessions: &[SessionBest], value: impl Fn(&SessionBest) -> Option<f64>) -> Option<f64> {
    median(&sessions.iter().filter_map(value).collect::<Vec<_>>())
}

fn drift(sessions: &[SessionBest]) -> Option<Limit> {
    let third = sessions.len() / 3;
    if third < 2 {
        return None;
    }
    let repetitions = |session: &SessionBest| Some(session.estimate.repetitions_to_failure);
    let early = typical(&sessions[..third], repetitions)?;
    let late = typical(&sessions[sessions.len() - third..], repetitions)?;
    ((late - early).abs() >= DRIFT_REPETITIONS).then_some(Limit::RepetitionsDrift(early, late))
}
