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
use crate::study::{FibreTrack, MovingStudy, Study};

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
    let chart = chart(
        [FIBRE_LENGTH_OPTIMAL, GREATEST_ACTIVE_FORCE],
        ALL_LENGTHS,
        law,
        used,
        (track.weakest, WEAKEST),
    );
    Sheet::lines(&length_track_words(study, track), chart)
}

/// Force over speed, and where on it the same muscle works while the joint turns.
#[must_use]
pub fn track_on_speed(moving: &MovingStudy, track: &FibreTrack) -> Sheet {
    let velocity = &track.curves.velocity;
    let [from, to] = SPEEDS_PERCENT;
    let fastest = (0..track.speeds.len())
        .max_by(|a, b| track.speeds[*a].total_cmp(&track.speeds[*b]))
        .unwrap_or(0);
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
        (fastest, FASTEST),
    );
    Sheet::lines(&speed_track_words(moving, track), chart)
}

/// A law in the background with the used stretch upon it, its ends and a place in between marked.
fn chart(
    [level, upright]: [&str; 2],
    law_name: &str,
    law: Vec<[f64; 2]>,
    used: Vec<[f64; 2]>,
    (told, name): (usize, &str),
) -> LineChart {
    let last = used.len() - 1;
    let mut markers = vec![
        Marker::new(used[0], START, Role::CAPACITY),
        Marker::new(used[last], END, Role::CAPACITY),
    ];
    if told > last / 12 && told < last - last / 12 {
        markers.push(Marker::new(used[told], name, Role::CAPACITY));
    }
    let panel = Panel {
        markers,
        ..Panel::new(
            Axis::new(upright, "%").reaching(Extent::FromZero),
            vec![
                Series::new(THIS_LIFT, used, Role::CAPACITY),
                Series::new(law_name, law, Role::Muted),
            ],
        )
    };
    LineChart::new(Axis::new(level, "%").reaching(Extent::Data), vec![panel])
}
