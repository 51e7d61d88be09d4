//! The sticking region in motion: from the first peak of upward velocity to the first minimum after it.
//!
//! In: the lifting phase. Out: [`StickingInMotion`], in time, range and position.

use super::rep_sample::{RepEnd, RepSample};

/// A remarkable moment of the lift.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Mark {
    /// Time since the lift began, s.
    pub time_s: f64,
    /// Place in the range.
    pub range: f64,
    /// Path since the bottom of the movement, m (or angle, rad).
    pub position: f64,
    /// Angle of the joint that the movement is drawn over, rad.
    pub angle_rad: f64,
    /// Velocity, m/s (or rad/s).
    pub velocity: f64,
}

/// The sticking region in motion and what follows it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StickingInMotion {
    /// First peak of upward velocity: the region begins.
    pub first_peak: Mark,
    /// First minimum after it, or where the load stopped: the region ends.
    pub minimum: Mark,
    /// Second peak, in a lift that goes on.
    pub second_peak: Option<Mark>,
}

impl StickingInMotion {
    /// How long the region lasts, s.
    #[must_use]
    pub fn duration_s(&self) -> f64 {
        self.minimum.time_s - self.first_peak.time_s
    }
}

/// A dip counts as a sticking region if velocity falls by this share of the lift's greatest velocity
/// and rises again by it. Assumed: less is lost in the noise of a position transducer.
pub const VISIBLE_DIP: f64 = 0.02;

/// A load that never gets further than this share of the range has not left its place. Assumed: 2 mm in
/// a bench press, less than the chest gives way.
pub const LEAST_WAY: f64 = 0.005;

/// Finds the region in a lifting phase.
///
/// **Shape.** `None` for a lift whose velocity has one peak, and for a load that does not leave its
/// place; a lift that stalls has its minimum there.
/// **Source.** Lander 1985; van den Tillaar & Ettema 2010 (definition).
#[must_use]
pub fn sticking_in_motion(lift: &[RepSample], outcome: RepEnd) -> Option<StickingInMotion> {
    let (first, last) = (lift.first()?, lift.last()?);
    if last.range - first.range < LEAST_WAY {
        return None;
    }
    let greatest = lift.iter().map(|s| s.velocity).fold(0.0, f64::max);
    let stalled = matches!(outcome, RepEnd::Stalled { .. });
    dip(lift, VISIBLE_DIP * greatest, stalled)
}

/// A dip of a lift without a region: velocity falls and rises again by less than counts, but by a share of its own
/// first peak that would.
///
/// **Shape.** Looked for with half of what counts, a quarter, and so on: the first that shows is the deepest.
#[must_use]
pub fn slight_dip(lift: &[RepSample]) -> Option<StickingInMotion> {
    /// How often what counts is halved.
    const HALVINGS: i32 = 6;
    let greatest = lift.iter().map(|s| s.velocity).fold(0.0, f64::max);
    let halves = (1..=HALVINGS).map(|times| VISIBLE_DIP * greatest * 0.5_f64.powi(times));
    let found = halves
        .filter_map(|visible| dip(lift, visible, false))
        .next()?;
    let falls = found.first_peak.velocity - found.minimum.velocity;
    (falls >= VISIBLE_DIP * found.first_peak.velocity).then_some(found)
}

/// The first fall of velocity by `visible` that is followed by a rise by it, or by a stop.
fn dip(lift: &[RepSample], visible: f64, stalled: bool) -> Option<StickingInMotion> {
    let first = lift.first()?;
    let mark = |index: usize| {
        let sample = &lift[index];
        Mark {
            time_s: sample.time_s - first.time_s,
            range: sample.range,
            position: sample.position,
            angle_rad: sample.angle_rad,
            velocity: sample.velocity,
        }
    };
    let peak = turning_point(lift, 0, visible, 1.0)?;
    let minimum = match turning_point(lift, peak, visible, -1.0) {
        Some(index) => index,
        None if stalled => lift.len() - 1,
        None => return None,
    };
    Some(StickingInMotion {
        first_peak: mark(peak),
        minimum: mark(minimum),
        second_peak: turning_point(lift, minimum, visible, 1.0).map(mark),
    })
}

/// First greatest value (of `sense`·velocity) from which velocity then turns away by `visible`.
fn turning_point(lift: &[RepSample], from: usize, visible: f64, sense: f64) -> Option<usize> {
    let mut best = from;
    for (index, sample) in lift.iter().enumerate().skip(from) {
        let value = sense * sample.velocity;
        if value > sense * lift[best].velocity {
            best = index;
        } else if sense * lift[best].velocity - value > visible {
            return Some(best);
        }
    }
    None
}
