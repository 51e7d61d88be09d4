//! A robust line through the sessions of a log.
//!
//! In: the best sets by day. Out: slope with its interval, level, scatter.

use super::day::Day;
use super::session_best::SessionBest;
use crate::error::Result;
use crate::numeric::{RobustLine, quantile, theil_sen};

/// Confidence of the interval that is shown with a slope.
pub const CONFIDENCE: f64 = 0.95;

/// Fewest sessions on each side of a change of trend, and fewest for a verdict.
pub const FEWEST_SESSIONS: usize = 5;

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

/// The robust line through the sessions from `first` on.
pub(super) fn trend_line(sessions: &[SessionBest], first: usize) -> Result<TrendLine> {
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

/// Slope, level and the interval of the slope at a confidence.
pub(super) fn robust(sessions: &[SessionBest], confidence: f64) -> Result<RobustLine> {
    let points: Vec<(f64, f64)> = sessions
        .iter()
        .map(|session| (session.week, session.kg()))
        .collect();
    // One session has a level and no slope.
    if let [(_, kg)] = points[..] {
        return Ok(RobustLine {
            slope: 0.0,
            intercept: kg,
            slope_range: None,
        });
    }
    theil_sen(&points, confidence)
}
