//! The stretch of a fibre's own curves that a lift uses, from its start to its end.
//!
//! In: a lift of one joint, held still or moving. Out: force over length and force over speed with the lift's track on them.

use super::force_velocity::drawn_speeds;
use super::sheet::Sheet;
use crate::narrative::axis_words::{
    FIBRE_LENGTH_OPTIMAL, GREATEST_ACTIVE_FORCE, ISOMETRIC_FORCE, SHORTENING_SPEED,
};
use crate::narrative::track_words::{
    ALL_LENGTHS, ALL_SPEEDS, END, FASTEST, START, THIS_LIFT, WEAKEST, length_track_words,
    speed_track_words,
};
use crate::plot::{Axis, Extent, LineChart, Marker, Panel, Role, Series};
use crate::study::{FibreTrack, MovingStudy, Study, beyond_living};

/// Lengths that are drawn, % of the optimal length.
const LENGTHS_PERCENT: [i32; 2] = [40, 160];
/// Speeds that are drawn, % of the fastest shortening; lengthening is negative.
const SPEEDS_PERCENT: [i32; 2] = [-20, 100];

/// Active force over fibre length, and where on it the strongest muscle of a lift works.
#[must_use]
pub fn track_on_length(study: &Study, track: &FibreTrack) -> Sheet {
    let active = &track.curves.active;
    let [from, to] = LENGTHS_PERCENT;
    let law: Vec<[f64; 2]> = (from..=to)
        .map(|percent| {
            [
                f64::from(percent),
                100.0 * active.at(0.01 * f64::from(percent)),
            ]
        })
        .collect();
    let used: Vec<[f64; 2]> = track
        .lengths
        .iter()
        .map(|length| [100.0 * length, 100.0 * active.at(*length)])
        .collect();
    let mut chart = chart(
        [FIBRE_LENGTH_OPTIMAL, GREATEST_ACTIVE_FORCE],
        ALL_LENGTHS,
        law,
        used,
        (
            Some(track.weakest).filter(|at| track.is_between(*at)),
            WEAKEST,
        ),
    );
    chart.panels[0].series[0].doubted = doubted_lengths(track);
    Sheet::lines(&length_track_words(study, track), chart)
}

/// Where the track itself leaves the living lengths, % of the optimal length.
fn doubted_lengths(track: &FibreTrack) -> Vec<[f64; 2]> {
    let last = track.lengths.len() - 1;
    let sample = |range: f64| (range * last as f64).round() as usize;
    let length = |at: usize| 100.0 * track.lengths[at];
    let stretches = beyond_living(&track.lengths).into_iter();
    stretches
        .map(|ends| ends.map(sample))
        .map(|[from, to]| [from.saturating_sub(1), (to + 1).min(last)].map(length))
        .collect()
}

/// Force over speed, and where on it the same muscle works while the joint turns.
#[must_use]
pub fn track_on_speed(moving: &MovingStudy, track: &FibreTrack) -> Sheet {
    let velocity = &track.curves.velocity;
    let [from, to] = SPEEDS_PERCENT;
    let fastest = track.fastest();
    let most = 100.0 * track.speeds[fastest].max(0.0);
    // The picture ends where the used stretch has room, at a round speed.
    let to = (10 * (0.25 * most).ceil() as i32).clamp(to / 5, to);
    let law: Vec<[f64; 2]> = drawn_speeds([from.max(-to / 5), to])
        .into_iter()
        .map(|percent| [percent, 100.0 * velocity.at(0.01 * percent)])
        .collect();
    let used: Vec<[f64; 2]> = track
        .speeds
        .iter()
        .map(|speed| [100.0 * speed, 100.0 * velocity.at(*speed)])
        .collect();
    let chart = chart(
        [SHORTENING_SPEED, ISOMETRIC_FORCE],
        ALL_SPEEDS,
        law,
        used,
        (Some(fastest).filter(|at| track.is_between(*at)), FASTEST),
    );
    Sheet::lines(&speed_track_words(moving, track), chart)
}

/// A law in the background with the used stretch upon it, its ends and a place in between marked.
fn chart(
    [level, upright]: [&str; 2],
    law_name: &str,
    law: Vec<[f64; 2]>,
    used: Vec<[f64; 2]>,
    (told, name): (Option<usize>, &str),
) -> LineChart {
    let last = used.len() - 1;
    let mut places = vec![(0, START), (last, END)];
    if let Some(told) = told {
        places.insert(1, (told, name));
    }
    // Numbered, since the way along the curve need not run from left to right.
    let markers = places.iter().enumerate().map(|(index, (at, name))| {
        let text = format!("{} {name}", index + 1);
        Marker::new(used[*at], text, Role::CAPACITY)
    });
    let markers = markers.collect();
    let law = outside(law, &used, law_name);
    let panel = Panel {
        markers,
        ..Panel::new(
            Axis::new(upright, "%").reaching(Extent::FromZero),
            vec![Series::new(THIS_LIFT, used, Role::CAPACITY), law],
        )
    };
    LineChart::new(Axis::new(level, "%").reaching(Extent::Data), vec![panel])
}

/// The law in the background, drawn on both sides of the used stretch.
fn outside(law: Vec<[f64; 2]>, used: &[[f64; 2]], name: &str) -> Series {
    let ends = used.iter().map(|point| point[0]);
    let low = ends.clone().fold(f64::INFINITY, f64::min);
    let high = ends.fold(f64::NEG_INFINITY, f64::max);
    let below = law.iter().filter(|point| point[0] <= low).count();
    let above = law.iter().filter(|point| point[0] >= high).count();
    let pieces = [
        0..(below + 1).min(law.len()),
        law.len().saturating_sub(above + 1)..law.len(),
    ];
    let long = pieces.into_iter().filter(|piece| piece.len() > 1);
    Series::new(name, law, Role::Muted).in_pieces(long.collect())
}
