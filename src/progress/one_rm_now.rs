//! The 1RM that a log shows now: the end of the line, held below what the sessions themselves showed.
//!
//! In: the sessions of a stretch without a lay-off, the line through them, a load that failed. Out: [`OneRmNow`].
//!
//! ```text
//! 1RM = min(line at the last day, best day of the stretch, last day if its set was near failure, less than what failed)
//! ```
//! **Shape.** Never above a session of the stretch, so nothing is planned on strength that nobody saw. **Source.** Common
//! practice: loads follow what was lifted; that strength is kept for some four weeks without training, see [`LAY_OFF_DAYS`].

use super::day::Day;
use super::failed_attempt::FailedAttempt;
use super::session_best::SessionBest;
use super::trend_line::TrendLine;
use crate::units::Mass;

/// Days without a session after which only the sessions since count (Mujika & Padilla 2000, Sports Med 30:145-154, from
/// memory: strength is kept for up to four weeks without training, then falls).
pub const LAY_OFF_DAYS: i32 = 28;

/// Days without a session from which on that is told (common practice: two weeks are a rest, more is a pause).
pub const TOLD_FROM_DAYS: i32 = 14;

/// Share of the strength that the first week of a lay-off beyond [`LAY_OFF_DAYS`] costs, and what a lay-off without end takes off
/// (assumed).
pub const LOST_A_WEEK: f64 = 0.02;
/// See [`LOST_A_WEEK`].
pub const MOST_LOST: f64 = 0.50;

/// Days after which a log tells no maximum of today (assumed: two years; no group was followed so long without training).
pub const OLDEST_LOG_DAYS: i32 = 730;

/// Repetitions in reserve up to which a set tells the strength of its day (Zourdos et al. 2016, J Strength Cond Res
/// 30:267-275, from memory: lifters rate sets near failure well, far ones badly).
pub const NEAR_FAILURE: f64 = 1.0;

/// What the 1RM now is taken from.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum NowFrom {
    /// The end of the line.
    Line,
    /// The best session of the stretch, which lies below the end of the line.
    BestSession(Day),
    /// The last session, whose set was near failure and shows less than the line.
    LastSession {
        /// Its day.
        day: Day,
        /// Repetitions that were left.
        reserve: f64,
    },
    /// A load that failed, which nothing since answers.
    Failed(FailedAttempt),
}

/// The 1RM now.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OneRmNow {
    /// The 1RM.
    pub one_rm: Mass,
    /// Where the line ends.
    pub line: Mass,
    /// What it is taken from.
    pub from: NowFrom,
    /// Day of the last session.
    pub last: Day,
}

/// Days without a session that make what was before them no measure of today: last day before, first day after.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LayOff {
    /// Last session before.
    pub from: Day,
    /// First session after.
    pub to: Day,
}

impl LayOff {
    /// Its length.
    #[must_use]
    pub const fn days(self) -> i32 {
        self.to.days_since(self.from)
    }

    /// Share of the strength before that is counted on behind it.
    ///
    /// ```text
    /// kept = 1 − b · (1 − exp(−a · (d − d0) / 7 / b))      a = 2 % a week, b = 50 %, d0 = 28 days
    /// ```
    /// **Shape.** Falls with every day, the slower the longer, and never by all of `b`: 57 % are left of it after a year, 51 % after two.
    /// **Source.** The numbers are assumed, between what groups lost
    /// (all from memory): 14.5 % in 7 weeks on average, hardly anything in the first three (McMaster et al. 2013, Sports Med
    /// 43:367-384), 8 to 14 % in 31 weeks (Ivey et al. 2000, J Gerontol A 55:B152-B157); the longer the pause, the more
    /// (Bosquet et al. 2013, Scand J Med Sci Sports 23:e140-e149, abstract).
    #[must_use]
    pub fn kept(self) -> f64 {
        let weeks = f64::from((self.days() - LAY_OFF_DAYS).max(0)) / 7.0;
        1.0 - MOST_LOST * (1.0 - (-LOST_A_WEEK * weeks / MOST_LOST).exp())
    }

    /// Whether it is so long that what was before tells no maximum of today.
    #[must_use]
    pub const fn is_forgotten(self) -> bool {
        self.days() > OLDEST_LOG_DAYS
    }
}

/// The last lay-off between days with sets, the last of which is that of the last session, and the index of the first
/// session after it.
pub(super) fn last_lay_off(days: &[Day], sessions: &[SessionBest]) -> Option<(LayOff, usize)> {
    let last = sessions.last()?.day;
    let end = days.partition_point(|day| *day <= last);
    let lay_off = last_lay_off_of(&days[..end])?;
    let first = sessions.partition_point(|session| session.day < lay_off.to);
    Some((lay_off, first))
}

/// The last lay-off between days.
pub(super) fn last_lay_off_of(days: &[Day]) -> Option<LayOff> {
    let mut pairs = days.windows(2).rev();
    pairs.find_map(|pair| {
        let lay_off = LayOff {
            from: pair[0],
            to: pair[1],
        };
        (lay_off.days() > LAY_OFF_DAYS).then_some(lay_off)
    })
}

/// The 1RM that the sessions since a lay-off show, with the line through the last of them.
pub(super) fn one_rm_now(
    since: &[SessionBest],
    line: &TrendLine,
    failed: Option<FailedAttempt>,
) -> Option<OneRmNow> {
    let last = since.last()?;
    let end_kg = line.kg_at(last.week).max(0.0);
    let best = since.iter().max_by(|a, b| a.kg().total_cmp(&b.kg()))?;
    let mut found = (end_kg, NowFrom::Line);
    if best.kg() < found.0 {
        found = (best.kg(), NowFrom::BestSession(best.day));
    }
    let near = last.set.reserve.filter(|reserve| *reserve <= NEAR_FAILURE);
    if let Some(reserve) = near.filter(|_| last.kg() < found.0) {
        let day = last.day;
        found = (last.kg(), NowFrom::LastSession { day, reserve });
    }
    if let Some(failed) = failed.filter(|failed| failed.most().as_kg() < found.0) {
        found = (failed.most().as_kg(), NowFrom::Failed(failed));
    }
    Some(OneRmNow {
        one_rm: Mass::from_kg(found.0),
        line: Mass::from_kg(end_kg),
        from: found.1,
        last: last.day,
    })
}
