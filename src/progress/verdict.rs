//! Rising, flat or falling, and how sure: the verdict on a line.
//!
//! In: the sessions of a line. Out: a [`Verdict`] with its [`Sureness`].

use super::session_best::SessionBest;
use super::trend_line::{FEWEST_SESSIONS, TrendLine, robust};
use crate::error::Result;

/// Confidences that make a trend clear, likely or weak.
const LADDER: [(f64, Sureness); 3] = [
    (0.99, Sureness::Clear),
    (0.95, Sureness::Likely),
    (0.80, Sureness::Weak),
];

/// A slope within this share of the 1RM a week, whose interval holds no change at all, counts as flat (assumed: 2 % in
/// two months, less than one small plate a side on a bar of 100 to 200 kg).
pub const FLAT_SHARE_A_WEEK: f64 = 0.0025;

/// A flat stretch is likely flat when its interval stays within this many times the band, and cannot be
/// called flat when the interval is wider than the second (both assumed).
pub const FLAT_BANDS: (f64, f64) = (1.5, 8.0);

/// Weeks from which a flat stretch may be called clear (assumed).
pub const CLEAR_WEEKS: f64 = 6.0;

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

/// How sure a verdict is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sureness {
    /// The opposite is not excluded; a hint only.
    Weak,
    /// Of a change: one in twenty logs without one would look so. Of a plateau: its interval leaves out all but small changes.
    Likely,
    /// Of a change: one in a hundred. Of a plateau: for weeks.
    Clear,
}

/// The verdict on a line, by its slope and intervals of several confidences.
pub(super) fn judge(sessions: &[SessionBest], line: &TrendLine) -> Result<(Verdict, Sureness)> {
    let interval = line
        .interval_kg_week
        .filter(|_| sessions.len() >= FEWEST_SESSIONS);
    let Some(interval) = interval else {
        return Ok((Verdict::Unclear, Sureness::Weak));
    };
    // A line whose interval leaves out no change at all is never flat, however small the change.
    if interval.0 > 0.0 || interval.1 < 0.0 {
        return moving(sessions, line.slope_kg_week);
    }
    let middle = sessions[sessions.len() / 2].week;
    let flat_kg = FLAT_SHARE_A_WEEK * line.kg_at(middle).abs();
    if is_within(interval, flat_kg) {
        let sureness = if line.weeks() >= CLEAR_WEEKS {
            Sureness::Clear
        } else {
            Sureness::Likely
        };
        return Ok((Verdict::Flat, sureness));
    }
    if line.slope_kg_week.abs() > flat_kg {
        return moving(sessions, line.slope_kg_week);
    }
    Ok(hardly_flat(interval, flat_kg))
}

fn is_within((low, high): (f64, f64), band_kg: f64) -> bool {
    low >= -band_kg && high <= band_kg
}

/// Rising or falling, as sure as the widest interval that leaves out no change at all.
fn moving(sessions: &[SessionBest], slope_kg_week: f64) -> Result<(Verdict, Sureness)> {
    let verdict = if slope_kg_week > 0.0 {
        Verdict::Rising
    } else {
        Verdict::Falling
    };
    for (confidence, sureness) in LADDER {
        let interval = robust(sessions, confidence)?.slope_range;
        if interval.is_some_and(|(low, high)| low > 0.0 || high < 0.0) {
            return Ok((verdict, sureness));
        }
    }
    Ok((Verdict::Unclear, Sureness::Weak))
}

/// A slope that is flat with an interval that reaches beyond.
fn hardly_flat(interval: (f64, f64), flat_kg: f64) -> (Verdict, Sureness) {
    let (low, high) = interval;
    if is_within(interval, FLAT_BANDS.0 * flat_kg) {
        (Verdict::Flat, Sureness::Likely)
    } else if high - low <= FLAT_BANDS.1 * flat_kg {
        (Verdict::Flat, Sureness::Weak)
    } else {
        (Verdict::Unclear, Sureness::Weak)
    }
}
