//! Is it a plateau? The trend of the estimated 1RM over a training log, and how sure one can be.
//!
//! In: a [`Log`] of one lift. Out: the best estimate of every day, a robust line through the recent ones,
//! a verdict (rising, flat, falling, unclear) with how many weeks it holds and how sure it is. What the log
//! cannot tell is in [`super::log_limits`].

use super::bend::last_change;
use super::day::Day;
use super::estimate::{Estimate, estimate};
use super::log_limits::{Limit, limits_of};
use super::published::PublishedEstimates;
use super::training_log::{Log, LogEntry};
use super::velocity_equations::one_rm_from_velocity;
use crate::error::{Error, Result};
use crate::numeric::{RobustLine, quantile, theil_sen};
use crate::units::{Mass, rounded};

/// Confidence of the interval that is shown with a slope.
pub const CONFIDENCE: f64 = 0.95;

/// Confidences that make a trend clear, likely or weak.
const LADDER: [(f64, Sureness); 3] = [
    (0.99, Sureness::Clear),
    (0.95, Sureness::Likely),
    (0.80, Sureness::Weak),
];

/// A slope within this share of the 1RM a week counts as flat (assumed: 2 % in two months, less than one
/// small plate a side on a bar of 100 to 200 kg).
pub const FLAT_SHARE_A_WEEK: f64 = 0.0025;

/// A flat stretch is likely flat when its interval stays within this many times the band, and cannot be
/// called flat when the interval is wider than the second (both assumed).
const FLAT_BANDS: (f64, f64) = (1.5, 8.0);

/// Fewest sessions on each side of a change of trend, and fewest for a verdict.
pub const FEWEST_SESSIONS: usize = 5;

/// Weeks from which a flat stretch may be called clear (assumed).
const CLEAR_WEEKS: f64 = 6.0;

/// The best set of one day.
#[derive(Debug, Clone, PartialEq)]
pub struct SessionBest<'a> {
    /// The day.
    pub day: Day,
    /// Weeks since the first day of the log.
    pub week: f64,
    /// The set it is taken from.
    pub set: LogEntry,
    /// Its estimate, with every equation.
    pub estimate: Estimate<'a>,
    /// The 1RM that the noted velocity stands for, where an equation was published.
    pub by_velocity: Option<Mass>,
}

impl SessionBest<'_> {
    /// Its estimate, kg.
    #[must_use]
    pub fn kg(&self) -> f64 {
        self.estimate.one_rm.as_kg()
    }
}

/// A robust line through consecutive sessions.
#[derive(Debug, Clone, PartialEq)]
pub struct TrendLine {
    /// Index of its first session.
    pub first: usize,
    /// Number of sessions.
    pub sessions: usize,
    /// First day.
    pub from: Day,
    /// Last day.
    pub to: Day,
    /// kg a week.
    pub slope_kg_week: f64,
    /// Interval of the slope at [`CONFIDENCE`]; `None` with too few sessions.
    pub interval_kg_week: Option<(f64, f64)>,
    /// Value at the first day of the log, kg.
    pub intercept_kg: f64,
    /// Distance from the line within which two sessions in three lie, kg.
    pub scatter_kg: f64,
}

impl TrendLine {
    /// Weeks from first to last session.
    #[must_use]
    pub fn weeks(&self) -> f64 {
        self.to.weeks_since(self.from)
    }

    /// Value of the line in a week of the log, kg.
    #[must_use]
    pub fn kg_at(&self, week: f64) -> f64 {
        self.intercept_kg + self.slope_kg_week * week
    }
}

/// What the trend is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Verdict {
    /// Going up.
    Rising,
    /// A plateau.
    Flat,
    /// Going down.
    Falling,
    /// The log does not tell.
    Unclear,
}

impl Verdict {
    /// "rising", "flat", "falling", "unclear".
    #[must_use]
    pub const fn in_words(self) -> &'static str {
        match self {
            Self::Rising => "rising",
            Self::Flat => "flat",
            Self::Falling => "falling",
            Self::Unclear => "unclear",
        }
    }
}

/// How sure a verdict is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sureness {
    /// The opposite is not excluded; a hint only.
    Weak,
    /// One in twenty such logs would mislead.
    Likely,
    /// One in a hundred such logs would mislead.
    Clear,
}

impl Sureness {
    /// "clear", "likely", "weak".
    #[must_use]
    pub const fn in_words(self) -> &'static str {
        match self {
            Self::Clear => "clear",
            Self::Likely => "likely",
            Self::Weak => "weak",
        }
    }

    /// What the word means.
    #[must_use]
    pub const fn sentence(self) -> &'static str {
        match self {
            Self::Clear => "one in a hundred such logs would mislead",
            Self::Likely => "one in twenty such logs would mislead",
            Self::Weak => "a hint only: the opposite is not excluded",
        }
    }
}

/// The trend of one lift.
#[derive(Debug, Clone, PartialEq)]
pub struct Trend<'a> {
    /// The lift.
    pub lift: String,
    /// The best set of every day, in order of time.
    pub sessions: Vec<SessionBest<'a>>,
    /// The line through all sessions.
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
    pub limits: Vec<Limit>,
    /// What was odd about the log and was kept.
    pub notices: Vec<String>,
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

    /// The verdict in one sentence: "flat over 11 weeks (+0.1 kg a week, 95 % interval −0.2 to +0.4), clear".
    #[must_use]
    pub fn in_words(&self) -> String {
        trend_in_words(self.verdict, &self.recent, self.sureness)
    }
}

/// The verdict in one sentence.
#[must_use]
pub fn trend_in_words(verdict: Verdict, line: &TrendLine, sureness: Sureness) -> String {
    let interval = line
        .interval_kg_week
        .map(|(low, high)| format!(", 95 % interval {} to {}", signed(low), signed(high)))
        .unwrap_or_default();
    format!(
        "{} over {} weeks ({} kg a week{interval}), {}",
        verdict.in_words(),
        rounded(line.weeks(), 0),
        signed(line.slope_kg_week),
        sureness.in_words()
    )
}

fn signed(value: f64) -> String {
    let text = rounded(value.abs(), 2);
    if text == "0" {
        text
    } else if value < 0.0 {
        format!("\u{2212}{text}")
    } else {
        format!("+{text}")
    }
}

/// The trend of a log of one lift.
///
/// The best estimate of each day counts; a day with sets beyond the range of the equations counts only by
/// its other sets, if it has any. The stretch since the last bend of the trend decides.
///
/// **Fails** when the log mixes lifts (bad input), or has fewer than two days with a usable set (no answer).
pub fn trend<'a>(log: &Log, published: &'a PublishedEstimates) -> Result<Trend<'a>> {
    let log = log.of_lift(None)?;
    let sessions = session_bests(&log, published);
    if sessions.len() < 2 {
        return Err(Error::no_answer(format!(
            "{} usable sessions are no trend: at least 2 are needed, {FEWEST_SESSIONS} for a verdict",
            sessions.len()
        )));
    }
    let whole = line(&sessions, 0)?;
    let (before, recent) = match last_change(&sessions)? {
        Some(index) => (Some(line(&sessions[..index], 0)?), line(&sessions, index)?),
        None => (None, whole.clone()),
    };
    let (verdict, sureness) = judge(&sessions[recent.first..], &recent)?;
    let best = (0..sessions.len())
        .max_by(|a, b| sessions[*a].kg().total_cmp(&sessions[*b].kg()))
        .unwrap_or(0);
    let limits = limits_of(&log, &sessions, &recent);
    // Nobody knows what happened in a long break, so nothing across one is clear.
    let broken = limits.iter().any(|limit| matches!(limit, Limit::Gaps(_)));
    let sureness = if broken {
        sureness.min(Sureness::Likely)
    } else {
        sureness
    };
    Ok(Trend {
        lift: log.entries[0].lift.clone(),
        whole,
        recent,
        before,
        verdict,
        sureness,
        best,
        limits,
        notices: log.notices,
        sessions,
    })
}

fn session_bests<'a>(log: &Log, published: &'a PublishedEstimates) -> Vec<SessionBest<'a>> {
    let days = log.by_day();
    let Some(first) = days.first().map(|(day, _)| *day) else {
        return Vec::new();
    };
    days.into_iter()
        .filter_map(|(day, sets)| session_best(published, first, day, sets))
        .collect()
}

fn session_best<'a>(
    published: &'a PublishedEstimates,
    first: Day,
    day: Day,
    sets: &[LogEntry],
) -> Option<SessionBest<'a>> {
    let estimated = sets.iter().filter_map(|set| {
        let of_set = estimate(
            &published.repetitions,
            Some(&set.lift),
            set.load,
            set.repetitions,
            set.reserve.unwrap_or(0.0),
        )
        .ok()?;
        Some((set, of_set))
    });
    // A set inside the range of the equations beats any set beyond it.
    let (set, estimate) = estimated.max_by(|(_, a), (_, b)| {
        let by_range = b.beyond_range.cmp(&a.beyond_range);
        by_range.then(a.one_rm.as_kg().total_cmp(&b.one_rm.as_kg()))
    })?;
    let by_velocity = set
        .velocity
        .and_then(|v| one_rm_from_velocity(&published.velocity, &set.lift, set.load, v).ok());
    Some(SessionBest {
        day,
        week: day.weeks_since(first),
        set: set.clone(),
        estimate,
        by_velocity,
    })
}

/// The robust line through the sessions from `first` on.
fn line(sessions: &[SessionBest], first: usize) -> Result<TrendLine> {
    let part = &sessions[first..];
    let robust = robust(part, CONFIDENCE)?;
    let distances: Vec<f64> = part
        .iter()
        .map(|session| (session.kg() - robust.intercept - robust.slope * session.week).abs())
        .collect();
    Ok(TrendLine {
        first,
        sessions: part.len(),
        from: part[0].day,
        to: part[part.len() - 1].day,
        slope_kg_week: robust.slope,
        interval_kg_week: robust.slope_range,
        intercept_kg: robust.intercept,
        scatter_kg: quantile(&distances, 2.0 / 3.0).unwrap_or(0.0),
    })
}

fn robust(sessions: &[SessionBest], confidence: f64) -> Result<RobustLine> {
    let points: Vec<(f64, f64)> = sessions
        .iter()
        .map(|session| (session.week, session.kg()))
        .collect();
    theil_sen(&points, confidence)
}

/// The verdict on a line, by its slope and intervals of several confidences.
fn judge(sessions: &[SessionBest], line: &TrendLine) -> Result<(Verdict, Sureness)> {
    let Some((low, high)) = line
        .interval_kg_week
        .filter(|_| sessions.len() >= FEWEST_SESSIONS)
    else {
        return Ok((Verdict::Unclear, Sureness::Weak));
    };
    let middle = sessions[sessions.len() / 2].week;
    let flat_kg = FLAT_SHARE_A_WEEK * line.kg_at(middle).abs();
    if low >= -flat_kg && high <= flat_kg {
        let sureness = if line.weeks() >= CLEAR_WEEKS {
            Sureness::Clear
        } else {
            Sureness::Likely
        };
        return Ok((Verdict::Flat, sureness));
    }
    let slope = line.slope_kg_week;
    if slope.abs() > flat_kg {
        for (confidence, sureness) in LADDER {
            let interval = robust(sessions, confidence)?.slope_range;
            if interval.is_some_and(|(low, high)| low > 0.0 || high < 0.0) {
                return Ok((
                    if slope > 0.0 {
                        Verdict::Rising
                    } else {
                        Verdict::Falling
                    },
                    sureness,
                ));
            }
        }
        return Ok((Verdict::Unclear, Sureness::Weak));
    }
    let (likely_kg, widest_kg) = (FLAT_BANDS.0 * flat_kg, FLAT_BANDS.1 * flat_kg);
    Ok(if low >= -likely_kg && high <= likely_kg {
        (Verdict::Flat, Sureness::Likely)
    } else if high - low <= widest_kg {
        (Verdict::Flat, Sureness::Weak)
    } else {
        (Verdict::Unclear, Sureness::Weak)
    })
}
