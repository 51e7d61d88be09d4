//! What a training log cannot tell, so that nobody reads more into a trend than is there.
//!
//! In: what is known of the lift, its best sets by day, the recent line. Out: a list of [`LogLimit`]s, each a
//! thing that is missing or mixed up, with its size.

use super::day::Day;
use super::lift_facts::LiftFacts;
use super::one_rm_now::LayOff;
use super::session_best::SessionBest;
use super::trend_line::TrendLine;
use super::unconfirmed::Jump;
use crate::numeric::median;

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
/// Difference of the 1RM by velocity that is worth a remark, share of the estimate (assumed).
const FAR_BY_VELOCITY: f64 = 0.05;
/// Scatter that is worth a remark, kg: less is none.
const LEAST_SCATTER_KG: f64 = 0.1;
/// Share of sessions that makes "many" of them.
const MANY: f64 = 0.25;

/// One thing the log cannot tell.
#[derive(Debug, Clone, PartialEq)]
pub enum LogLimit {
    /// Few sessions.
    FewSessions(usize),
    /// A short stretch, weeks.
    ShortStretch(f64),
    /// Days without a session, with what came before and after.
    Gaps(Vec<(Day, Day)>),
    /// A set that stands for more than the days before explain.
    Jump(Jump),
    /// So long without a session that what was before counts for nothing.
    LayOff(LayOff),
    /// Share of the days whose best set lies beyond the range of the equations.
    HighRepetitions(f64),
    /// Typical spread between the equations, share of the estimate.
    EquationsDisagree(f64),
    /// Repetitions of the best sets early and late in the stretch.
    RepetitionsDrift(f64, f64),
    /// Share of the days whose best set has no reserve noted.
    NoReserve(f64),
    /// All general equations estimate this lift too low.
    EstimatedLow(String),
    /// Body mass is part of the load.
    BodyMassInLoad,
    /// Distance from the line within which two days in three lie, kg.
    Scatter(f64),
    /// Median difference of the estimate by velocity from that by repetitions, share.
    VelocityDisagrees(f64),
}

/// What the log cannot tell.
pub(super) fn limits_of(
    lift: LiftFacts,
    sessions: &[SessionBest],
    recent: &TrendLine,
    (lay_off, jumps): (Option<LayOff>, &[Jump]),
) -> Vec<LogLimit> {
    let part = &sessions[recent.first..];
    let few = (part.len() < ENOUGH_SESSIONS).then_some(LogLimit::FewSessions(part.len()));
    let weeks = recent.weeks();
    let limits = [
        few,
        (weeks < ENOUGH_WEEKS).then_some(LogLimit::ShortStretch(weeks)),
        lay_off.map(LogLimit::LayOff),
        gaps(part),
        many(part, |session| session.estimate.beyond_range).map(LogLimit::HighRepetitions),
        spread(part),
        drift(part),
        many(part, is_without_reserve).map(LogLimit::NoReserve),
        estimated_low(lift, part),
        lift.moves_body.then_some(LogLimit::BodyMassInLoad),
        velocity(part),
        (recent.scatter_kg >= LEAST_SCATTER_KG).then_some(LogLimit::Scatter(recent.scatter_kg)),
    ];
    let jumps = jumps.iter().cloned().map(LogLimit::Jump);
    jumps.chain(limits.into_iter().flatten()).collect()
}

fn estimated_low(lift: LiftFacts, sessions: &[SessionBest]) -> Option<LogLimit> {
    let named = sessions.first().filter(|_| lift.is_estimated_low)?;
    Some(LogLimit::EstimatedLow(named.set.lift.clone()))
}

fn is_without_reserve(session: &SessionBest) -> bool {
    session.set.reserve.is_none() && !session.estimate.measured
}

fn spread(sessions: &[SessionBest]) -> Option<LogLimit> {
    typical(sessions, |session| Some(session.estimate.spread()))
        .filter(|share| *share >= WIDE_SPREAD)
        .map(LogLimit::EquationsDisagree)
}

fn velocity(sessions: &[SessionBest]) -> Option<LogLimit> {
    let apart = |session: &SessionBest| {
        let by_velocity = session.by_velocity?.as_kg();
        Some(by_velocity / session.estimate.one_rm.as_kg() - 1.0)
    };
    typical(sessions, apart)
        .map(f64::abs)
        .filter(|share| *share >= FAR_BY_VELOCITY)
        .map(LogLimit::VelocityDisagrees)
}

fn gaps(sessions: &[SessionBest]) -> Option<LogLimit> {
    let gaps: Vec<(Day, Day)> = sessions
        .windows(2)
        .filter(|pair| pair[1].day.days_since(pair[0].day) > GAP_DAYS)
        .map(|pair| (pair[0].day, pair[1].day))
        .collect();
    (!gaps.is_empty()).then_some(LogLimit::Gaps(gaps))
}

/// Share of the sessions of which something is so, if that is many of them.
fn many(sessions: &[SessionBest], is: impl Fn(&SessionBest) -> bool) -> Option<f64> {
    let count = sessions.iter().filter(|session| is(session)).count();
    let share = count as f64 / sessions.len().max(1) as f64;
    (share >= MANY).then_some(share)
}

fn typical(sessions: &[SessionBest], value: impl Fn(&SessionBest) -> Option<f64>) -> Option<f64> {
    median(&sessions.iter().filter_map(value).collect::<Vec<_>>())
}

fn drift(sessions: &[SessionBest]) -> Option<LogLimit> {
    let third = sessions.len() / 3;
    if third < 2 {
        return None;
    }
    let repetitions = |session: &SessionBest| Some(session.estimate.repetitions_to_failure);
    let early = typical(&sessions[..third], repetitions)?;
    let late = typical(&sessions[sessions.len() - third..], repetitions)?;
    ((late - early).abs() >= DRIFT_REPETITIONS).then_some(LogLimit::RepetitionsDrift(early, late))
}
