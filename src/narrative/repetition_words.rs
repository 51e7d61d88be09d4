//! A repetition in words: the finding, what was lifted, the region in motion beside the static one and why
//! they differ in this lift.
//!
//! In: a [`RepStudy`]. Out: title, subtitle and sentences for figures and the terminal.

use super::made_words::made_words;
use super::places::{at_position, position_in_words, velocity_in_words};
use super::prose::percent;
use super::quantities::{QuantityWords, rounded};
use super::shown_units::ShownUnits;
use crate::movement::Measure;
use crate::overlay::Sticking;
use crate::rep::{Mark, RepEnd, StickingInMotion, VISIBLE_DIP, slight_dip};
use crate::study::RepStudy;
use crate::units::{Force, Length, System};

/// A force or torque that is none, N or N·m.
const NOTHING: f64 = 1.0e-3;

/// Places nearer to each other than this share of the range count as one.
const SAME_PLACE: f64 = 0.03;

/// The finding in one sentence.
#[must_use]
pub fn rep_title(rep: &RepStudy, units: System) -> String {
    let name = &rep.still.movement_title;
    let place = |position: f64| at_position(rep, position, units);
    match (rep.trace.outcome, rep.trace.sticking) {
        (RepEnd::Stalled { .. }, _) if rep.is_stuck_at_start() => {
            format!("{name}: {} do not leave the start", units.mass(rep.load))
        }
        (RepEnd::Stalled { position, .. }, _) => {
            format!("{name}: the load stops {}", place(position))
        }
        (RepEnd::NotHeld { position, .. }, _) => {
            format!(
                "{name}: thrown to the end, but not held {}",
                place(position)
            )
        }
        (RepEnd::LostInLowering { .. }, _) if rep.rises_by_itself() => {
            format!("{name}: help outweighs the load, which rises by itself")
        }
        (RepEnd::LostInLowering { position, .. }, _) => format!(
            "{name}: the load gets away in lowering, {}",
            place(position)
        ),
        (RepEnd::HandedOver, _) => format!("{name}: lowered under control and handed over"),
        (RepEnd::Lockout, Some(sticking)) => {
            format!("{name}: slowest {}", place(sticking.minimum.position))
        }
        (RepEnd::Lockout, None) => match slight_dip(rep.trace.lifting()) {
            None => format!("{name}: lifted without a sticking region"),
            Some(_) => format!("{name}: lifted, its sticking region too slight to count"),
        },
    }
}

/// Who lifts what, how heavy it is, how long it takes.
pub(crate) fn subtitle(rep: &RepStudy, units: System) -> String {
    let setup = rep.still.told(units).asked_name(&rep.still.setups[0]);
    let made = made_words(&rep.still);
    let mut words = format!("{}{made}, {setup}", rep.still.lifter_title);
    if let Some(share) = rep.share() {
        words += &format!(" ({} of the maximum)", percent(share));
    }
    if let Some(lift) = rep.trace.lift.filter(|_| rep.trace.is_lifted()) {
        words += &format!(
            ", {} s, mean velocity {}",
            rounded(lift.time_s, 1),
            velocity_in_words(rep.trace.measure, lift.mean_velocity)
        );
    } else if let Some(max) = rep.one_rm {
        words += &format!(", maximum {}", units.mass(max.load));
    }
    words
}

/// What happened, in sentences, the static region beside the one in motion.
#[must_use]
pub fn rep_sentences(rep: &RepStudy, units: System) -> Vec<String> {
    let mut lines = vec![rep_title(rep, units) + "."];
    let still = rep.still.setups.first().and_then(|s| s.sticking);
    if let Some(sticking) = rep.trace.sticking {
        lines.push(in_motion(rep, units, sticking.first_peak, sticking.minimum));
    }
    let Some(still) = still else {
        return lines;
    };
    lines.push(held_still(rep, units, &still));
    lines.extend(match (rep.trace.outcome, rep.trace.sticking) {
        _ if rep.is_stuck_at_start() => Some(stuck(rep, units)),
        (RepEnd::Lockout | RepEnd::Stalled { .. }, Some(sticking)) => {
            Some(difference(rep, units, sticking.minimum, &still))
        }
        (RepEnd::Lockout, None) => Some(no_dip(rep, units, &still)),
        _ => None,
    });
    lines
}

fn in_motion(rep: &RepStudy, units: System, first: Mark, minimum: Mark) -> String {
    let mark = |at: Mark| {
        format!(
            "{} ({} after {} s)",
            position_in_words(rep, at.position, units),
            velocity_in_words(rep.trace.measure, at.velocity),
            rounded(at.time_s, 2)
        )
    };
    let verb = if rep.trace.is_lifted() {
        "slows"
    } else {
        "slows until it stops,"
    };
    format!(
        "In motion it {verb} from {} to {}.",
        mark(first),
        mark(minimum)
    )
}

fn held_still(rep: &RepStudy, units: System, still: &Sticking) -> String {
    format!(
        "Held still it is hardest {} (effort {}; within 5 % of that {}).",
        rep.still.told(units).at_place(still.point_range),
        rounded(still.max_effort, 2),
        rep.still
            .told(units)
            .stretch(still.from_range, still.to_range)
    )
}

/// Why a load does not leave its place: what full effort holds there.
fn stuck(rep: &RepStudy, units: System) -> String {
    let lift = rep.trace.lifting().first();
    let (demand, extra) = lift.map_or((0.0, 0.0), |s| (s.demand, s.enhancement));
    format!(
        "At the start full effort holds {}, {} more after the lowering, and the load asks for {}: there is nothing \
         left to move it.",
        size_in_words(rep.trace.measure, rep.held_at(rep.options.from), units),
        percent(extra),
        size_in_words(rep.trace.measure, demand, units)
    )
}

/// A force along the way, or a torque about the joint.
fn size_in_words(measure: Measure, size: f64, units: System) -> String {
    match measure {
        Measure::Force => units.force(Force::from_n(size)),
        Measure::Torque => {
            let unit = units.torque_unit();
            format!("{} {}", rounded(unit.of(size), unit.decimals), unit.symbol)
        }
    }
}

/// What velocity does in a lift whose dip does not count, or that has none although it has a hardest place.
fn no_dip(rep: &RepStudy, units: System, still: &Sticking) -> String {
    if let Some(dip) = slight_dip(rep.trace.lifting()) {
        return slight(rep, units, &dip);
    }
    let Some(passing) = rep.lifting_at(still.point_range) else {
        return "In motion its velocity has no dip.".to_owned();
    };
    if begins_hardest(rep, still) {
        return format!(
            "So the lift begins at its hardest place, with {}{} of full activation; once the load moves, what is \
             held still grows faster than speed takes away.",
            left_by_lowering(rep, passing.enhancement),
            percent(passing.activation)
        );
    }
    format!(
        "In motion its velocity has no dip: it passes that place at {}, with {}{} of full activation.",
        velocity_in_words(rep.trace.measure, passing.velocity),
        left_by_lowering(rep, passing.enhancement),
        percent(passing.activation)
    )
}

/// A dip too small to count, in its figures.
fn slight(rep: &RepStudy, units: System, dip: &StickingInMotion) -> String {
    let lift = rep.trace.lifting().iter();
    let greatest = lift.map(|sample| sample.velocity).fold(0.0, f64::max);
    // Slow as such a lift is there, a hundredth of a metre a second would not tell the two apart.
    let velocity = |velocity: f64| match rep.trace.measure {
        Measure::Force => format!("{} m/s", rounded(velocity, 3)),
        Measure::Torque => format!("{} deg/s", rounded(velocity.to_degrees(), 1)),
    };
    format!(
        "In motion it slows from {} {} to {} {} and gains speed again: a dip of less than {} of its greatest velocity \
         ({}), which does not count as a sticking region.",
        velocity(dip.first_peak.velocity),
        at_position(rep, dip.first_peak.position, units),
        velocity(dip.minimum.velocity),
        at_position(rep, dip.minimum.position, units),
        percent(VISIBLE_DIP),
        velocity(greatest)
    )
}

/// Whether the lift begins where it is hardest held still.
fn begins_hardest(rep: &RepStudy, still: &Sticking) -> bool {
    still.point_range - rep.options.from < SAME_PLACE
}

/// The extra force that lowering left behind, where something was lowered.
fn left_by_lowering(rep: &RepStudy, share: f64) -> String {
    match rep.options.lowering_s() {
        Some(_) => format!("{} of extra force from the lowering and ", percent(share)),
        None => String::new(),
    }
}

/// Why the place of least velocity is not the place of greatest effort, in the figures of this lift.
fn difference(rep: &RepStudy, units: System, minimum: Mark, still: &Sticking) -> String {
    let apart = minimum.range - still.point_range;
    if apart.abs() < SAME_PLACE {
        return "So it is slowest where it is hardest held still: the effort curve alone tells the place."
            .to_owned();
    }
    let places = [
        rep.across(minimum.position),
        rep.still.axis_value(still.point_range),
    ];
    let how_far = distance(rep.trace.measure, units, places);
    let passing = rep.lifting_at(still.point_range);
    let slowest = rep.lifting_at(minimum.range);
    let (Some(passing), Some(slowest)) = (passing, slowest) else {
        return format!(
            "It stops {how_far} before the place that is hardest held still: it never gets there."
        );
    };
    let is_lowered = rep.options.lowering_s().is_some();
    let velocity = velocity_in_words(rep.trace.measure, passing.velocity);
    if apart > 0.0 {
        let moving =
            percent((1.0 - slowest.capacity / rep.held_at(minimum.range).max(1e-9)).max(0.0));
        let how = match (begins_hardest(rep, still), is_lowered) {
            (true, true) => format!(
                "it begins at the hardest place with {} of extra force from the lowering, gains speed, and slows until \
                 {} is left",
                percent(passing.enhancement),
                percent(slowest.enhancement)
            ),
            (true, false) => {
                "it begins at the hardest place, gains speed, and slows behind it".to_owned()
            }
            (false, true) => format!(
                "it passes the hardest place at {velocity}, with {} of extra force left from the lowering, and goes on \
                 slowing until {} is left",
                percent(passing.enhancement),
                percent(slowest.enhancement)
            ),
            (false, false) => {
                format!("it passes the hardest place at {velocity} and goes on slowing behind it")
            }
        };
        format!(
            "So it is slowest {how_far} later than it is hardest: {how}; moving costs {moving} of the force held still."
        )
    } else {
        let left = match is_lowered {
            true => format!(
                " and the extra force from the lowering {}",
                percent(slowest.enhancement)
            ),
            false => String::new(),
        };
        format!(
            "So it is slowest {how_far} earlier than it is hardest: effort there is {} already, activation {}{left}; \
             behind it the load has gained speed again ({velocity} at the hardest place).",
            rounded(slowest.demand / rep.held_at(minimum.range).max(1e-9), 2),
            percent(slowest.activation),
        )
    }
}

/// How far two places on the level axis are apart: the difference of what is printed of them.
fn distance(measure: Measure, units: System, places: [f64; 2]) -> String {
    let apart = |scale: f64| {
        let [a, b] = places.map(|place| (scale * place).round());
        (a - b).abs() / scale
    };
    match (measure, units) {
        (Measure::Torque, _) => format!("{} deg", rounded(apart(1.0), 0)),
        (Measure::Force, System::Metric) => format!("{} cm", rounded(apart(1.0), 0)),
        (Measure::Force, System::Us) => {
            let tenths = 10.0 * Length::from_cm(1.0).as_in();
            format!("{} in", rounded(Length::from_cm(apart(tenths)).as_in(), 1))
        }
    }
}

/// The figures of the lift: time, velocities, power, greatest force; and the maximum with this setup.
#[must_use]
pub fn lift_figures(rep: &RepStudy, units: System) -> Vec<String> {
    let mut lines = Vec::new();
    if let Some(lift) = rep.trace.lift {
        let velocity = |v: f64| velocity_in_words(rep.trace.measure, v);
        lines.push(format!(
            "Lift: {} s, mean velocity {}, mean propulsive velocity {}, peak {}.",
            rounded(lift.time_s, 2),
            velocity(lift.mean_velocity),
            velocity(lift.mean_propulsive_velocity),
            velocity(lift.peak_velocity),
        ));
        lines.push(format!(
            "Power: mean {} W, peak {} W. {}",
            rounded(lift.mean_power_w, 0),
            rounded(lift.peak_power_w, 0),
            greatest_force(lift.peak_force_over_demand, asks_for_nothing(rep))
        ));
    }
    lines.extend(
        rep.one_rm
            .map(|max| format!("Maximum with this setup: {}.", units.mass(max.load))),
    );
    lines
}

/// Whether nothing is lifted beside the limbs.
fn asks_for_nothing(rep: &RepStudy) -> bool {
    let lift = rep.trace.lifting().iter();
    lift.map(|sample| sample.demand.abs()).fold(0.0, f64::max) < NOTHING
}

fn greatest_force(over_demand: f64, is_nothing: bool) -> String {
    if over_demand > 0.0 {
        format!(
            "Greatest force {} % of the most that the load asks for.",
            rounded(100.0 * over_demand, 0)
        )
    } else if is_nothing {
        "There is no load: only the limbs are moved.".to_owned()
    } else {
        "The load goes up by itself: the lifter can only hold it back.".to_owned()
    }
}
