//! The place of the range that a worked pose stands at, asked for on the movement's own axis.
//!
//! In: a share of the range, a travel or an angle. Out: the place between 0 and 1.

use super::question::Question;
use crate::error::{Error, LiftFault, Result};
use crate::movement::{Measure, Pose, Range, trace_place};
use crate::numeric::brent;
use crate::units::{Angle, Length};

/// A place as it is asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum AskedPlace {
    /// A share of the range, 0 to 1.
    Share(f64),
    /// So far from the start along the load's way.
    Travel(Length),
    /// The angle of the one joint that moves.
    AtAngle(Angle),
}

/// The place between 0 and 1.
///
/// # Algorithm
/// The first two samples between which the axis passes the asked value hold the place; it is found between
/// them to 1e-12 of the range.
///
/// **Fails** if the axis of the movement has another unit, or does not reach the value.
pub(super) fn range_of(place: AskedPlace, question: &Question<'_>, range: &Range) -> Result<f64> {
    match (place, range.measure) {
        (AskedPlace::Share(share), _) => Ok(share),
        (AskedPlace::Travel(travel), Measure::Force) => found(
            travel.as_m(),
            &|pose| pose.load.travel_m.abs(),
            question,
            range,
        )
        .ok_or_else(|| travel_outside(travel, range))?,
        (AskedPlace::AtAngle(angle), Measure::Torque) => found(
            angle.as_rad(),
            &|pose| pose.coordinates[0].angle_rad,
            question,
            range,
        )
        .ok_or_else(|| angle_outside(angle, range))?,
        (AskedPlace::Travel(_), Measure::Torque) => Err(Error::bad(LiftFault::PlaceIsAnAngle)),
        (AskedPlace::AtAngle(_), Measure::Force) => Err(Error::bad(LiftFault::PlaceIsATravel)),
    }
}

fn found(
    asked: f64,
    axis: &dyn Fn(&Pose) -> f64,
    question: &Question<'_>,
    range: &Range,
) -> Option<Result<f64>> {
    /// Room for rounding at the ends of the range, m or rad.
    const ROUNDING: f64 = 1.0e-9;
    let off = |pose: &Pose| axis(pose) - asked;
    let near = range.poses.iter().find(|pose| off(pose).abs() < ROUNDING);
    if let Some(pose) = near {
        return Some(Ok(pose.load.range));
    }
    let around = range
        .poses
        .windows(2)
        .find(|pair| off(&pair[0]) * off(&pair[1]) < 0.0)?;
    let (low, high) = (around[0].load.range, around[1].load.range);
    let at = |s: f64| {
        trace_place(question.movement, question.lifter, s).map_or(f64::NAN, |(pose, _)| off(&pose))
    };
    Some(brent(low, high, 1.0e-12, at))
}

fn travel_outside(asked: Length, range: &Range) -> Error {
    let travels = range.poses.iter().map(|pose| pose.load.travel_m.abs());
    Error::bad(LiftFault::TravelOutside {
        asked,
        most: Length::from_m(travels.fold(0.0, f64::max)),
    })
}

fn angle_outside(asked: Angle, range: &Range) -> Error {
    let angles = || range.poses.iter().map(|pose| pose.coordinates[0].angle_rad);
    Error::bad(LiftFault::AngleOutside {
        asked,
        least: Angle::from_rad(angles().fold(f64::INFINITY, f64::min)),
        most: Angle::from_rad(angles().fold(f64::NEG_INFINITY, f64::max)),
    })
}
