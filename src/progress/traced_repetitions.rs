//! The repetitions of a bar's trace: where each begins and ends, how fast it is, where it sticks.
//!
//! In: a [`BarTrace`]. Out: [`TracedRepetition`] of every lift from a low to a high turn.

use super::bar_trace::BarTrace;
use crate::numeric::smoothed;
use crate::rep::VISIBLE_DIP;
use crate::units::Speed;

/// Half of the window over which the course is smoothed, s (assumed: a tenth of a second; the quickest dips of a heavy lift
/// last three times as long).
const HALF_WINDOW_S: f64 = 0.1;
/// No repetition goes over a longer stretch without rows, s (assumed: more hides a turn).
const GAP_S: f64 = 0.25;
/// A way up counts as a repetition from this share of the longest one on (assumed: less is unracking or shifting).
const LEAST_SHARE: f64 = 0.6;
/// The bar moves from this share of a repetition's greatest velocity on: the wait before and after is no part of it
/// (assumed).
const MOVES: f64 = 0.05;
/// A dip of velocity is seen in the noise of a phone from this many times the least share of a simulated one on (assumed).
const NOISY: f64 = 3.0;

/// One lift of a trace.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TracedRepetition {
    /// When it begins, s.
    pub from_s: f64,
    /// When it ends, s.
    pub to_s: f64,
    /// Its way, m.
    pub way_m: f64,
    /// Way over time.
    pub mean_velocity: Speed,
    /// Its greatest velocity.
    pub peak_velocity: Speed,
    /// The sticking region, where velocity falls and rises again.
    pub sticking: Option<TracedSticking>,
}

/// The sticking region of a traced lift, places as shares of its way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TracedSticking {
    /// Where velocity is greatest before it falls.
    pub from: f64,
    /// Where it is least.
    pub to: f64,
    /// Velocity there.
    pub least_velocity: Speed,
}

/// A smoothed moment: time, height, velocity.
#[derive(Clone, Copy)]
struct TracedMoment {
    time_s: f64,
    height_m: f64,
    velocity_m_s: f64,
}

/// The lifts of a trace, in order.
#[must_use]
pub fn traced_repetitions(trace: &BarTrace) -> Vec<TracedRepetition> {
    let lifts: Vec<Vec<TracedMoment>> = stretches(&trace.points)
        .into_iter()
        .flat_map(|stretch| ways_up(&moments(stretch)))
        .collect();
    let way = |lift: &Vec<TracedMoment>| lift[lift.len() - 1].height_m - lift[0].height_m;
    let longest = lifts.iter().map(way).fold(0.0, f64::max);
    let whole = lifts
        .iter()
        .filter(|lift| way(lift) >= LEAST_SHARE * longest);
    whole.filter_map(|lift| repetition_of(lift)).collect()
}

/// Stretches of rows without a gap.
fn stretches(points: &[(f64, f64)]) -> Vec<&[(f64, f64)]> {
    points.chunk_by(|a, b| b.0 - a.0 <= GAP_S).collect()
}

fn moments(points: &[(f64, f64)]) -> Vec<TracedMoment> {
    let smooth = smoothed(points, HALF_WINDOW_S);
    let with = points.iter().zip(smooth);
    with.map(|((time_s, _), (height_m, velocity_m_s))| TracedMoment {
        time_s: *time_s,
        height_m,
        velocity_m_s,
    })
    .collect()
}

/// The ways from a low turn to a high one; a turn is one that at least a third of all heights follows.
fn ways_up(course: &[TracedMoment]) -> Vec<Vec<TracedMoment>> {
    let heights = course.iter().map(|moment| moment.height_m);
    let highest = heights.clone().fold(f64::NEG_INFINITY, f64::max);
    let turn = (highest - heights.fold(f64::INFINITY, f64::min)) / 3.0;
    let (mut low, mut high, mut rises) = (0, 0, false);
    let mut found = Vec::new();
    for (index, moment) in course.iter().enumerate() {
        if rises {
            if moment.height_m > course[high].height_m {
                high = index;
            } else if course[high].height_m - moment.height_m > turn {
                found.push(course[low..=high].to_vec());
                (rises, low) = (false, index);
            }
        } else if moment.height_m <= course[low].height_m {
            low = index;
        } else if moment.height_m - course[low].height_m > turn {
            (rises, high) = (true, index);
        }
    }
    if rises {
        found.push(course[low..=high].to_vec());
    }
    found
}

/// A way up without the waits at its ends.
fn repetition_of(lift: &[TracedMoment]) -> Option<TracedRepetition> {
    let peak = lift.iter().map(|moment| moment.velocity_m_s);
    let peak = peak.fold(0.0, f64::max);
    let moves = |moment: &TracedMoment| moment.velocity_m_s > MOVES * peak;
    // The last time that it stood still in the lower half, and the first in the upper half.
    let (bottom, top) = (lift.first()?.height_m, lift.last()?.height_m);
    let middle = 0.5 * (bottom + top);
    let is_low = |moment: &TracedMoment| moment.height_m < middle;
    let stood = |moment: &&TracedMoment| !moves(moment);
    let near =
        |moment: &TracedMoment, end: f64| (moment.height_m - end).abs() < 0.1 * (top - bottom);
    let first = lift
        .iter()
        .rposition(|moment| stood(&moment) && is_low(moment) && near(moment, bottom))
        .unwrap_or(0);
    let last = lift
        .iter()
        .position(|moment| stood(&moment) && !is_low(moment) && near(moment, top))
        .unwrap_or(lift.len() - 1);
    let lift = lift.get(first..=last)?;
    let (from, to) = (lift.first()?, lift.last()?);
    let (way_m, lasts) = (to.height_m - from.height_m, to.time_s - from.time_s);
    (lasts > 0.0 && way_m > 0.0).then(|| TracedRepetition {
        from_s: from.time_s,
        to_s: to.time_s,
        way_m,
        mean_velocity: Speed::from_m_s(way_m / lasts),
        peak_velocity: Speed::from_m_s(peak),
        sticking: sticking_of(lift, peak),
    })
}

/// From the first peak of velocity to the least velocity before the second one, as in a simulated lift.
fn sticking_of(lift: &[TracedMoment], peak: f64) -> Option<TracedSticking> {
    let visible = NOISY * VISIBLE_DIP * peak;
    let turn = |from: usize, sense: f64| {
        let mut best = from;
        for (index, moment) in lift.iter().enumerate().skip(from) {
            let value = sense * moment.velocity_m_s;
            if value > sense * lift[best].velocity_m_s {
                best = index;
            } else if sense * lift[best].velocity_m_s - value > visible {
                return Some(best);
            }
        }
        None
    };
    let first = turn(0, 1.0)?;
    let least = turn(first, -1.0)?;
    let (bottom, top) = (lift.first()?.height_m, lift.last()?.height_m);
    let place = |index: usize| (lift[index].height_m - bottom) / (top - bottom);
    Some(TracedSticking {
        from: place(first),
        to: place(least),
        least_velocity: Speed::from_m_s(lift[least].velocity_m_s),
    })
}
