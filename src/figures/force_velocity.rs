//! Force over speed: the fibre's curve, and what speed does to a whole strength curve.
//!
//! In: what speed costs a fibre; a lift of one joint at several speeds. Out: figures.

use super::over_range::OverRange;
use super::sheet::Sheet;
use crate::anatomy::ForceVelocity;
use crate::narrative::axis_words::{FORCE, SHORTENING_SPEED};
use crate::narrative::fibre_words::{
    BOTH, HELD_STILL, ISOLATED, LIFTING, LOWERING, VOLUNTARY, force_velocity_words,
    of_fastest_speed,
};
use crate::narrative::prose::percent;
use crate::narrative::quantities::rounded;
use crate::narrative::shown_units::ShownUnits;
use crate::narrative::speed_words::{at_angle, speed_in_words, speed_words};
use crate::plot::{Axis, Extent, LineChart, Marker, Panel, Role, Series, Shade};
use crate::study::{MovingStudy, SpeedCost, Study};
use crate::units::System;

/// Speeds that are drawn, % of the fastest shortening; lengthening is negative.
const SPEEDS_PERCENT: [i32; 2] = [-50, 100];
/// Where the axis of force ends, %: at the first tick above what an isolated fibre resists.
const TOP_PERCENT: f64 = 150.0;

/// Speeds for a curve, % of the fastest shortening: one a percent, ten a percent where slow lengthening bends it sharply.
pub(super) fn drawn_speeds([from, to]: [i32; 2]) -> Vec<f64> {
    /// Down to this speed of lengthening the curve bends, %.
    const BENT_PERCENT: i32 = -5;
    let tenths = 10 * from..=10 * to;
    let kept = tenths.filter(|tenth| (10 * BENT_PERCENT..0).contains(tenth) || tenth % 10 == 0);
    kept.map(|tenth| 0.1 * f64::from(tenth)).collect()
}

/// Force of a fibre over its speed.
#[must_use]
pub fn force_velocity(cost: &SpeedCost) -> Sheet {
    let [fastest, _] = SPEEDS_PERCENT.map(f64::from);
    let at = [100.0 * cost.speed, 100.0 * cost.left];
    let told = Marker::new(at, percent(cost.left), Role::Series(0));
    let panel = Panel {
        markers: vec![
            told.detailed(of_fastest_speed(cost.speed)),
            Marker::new([0.0, 100.0], HELD_STILL, Role::Series(0)),
        ],
        ..Panel::new(
            Axis::new(FORCE, "%").reaching(Extent::FromZeroTo(TOP_PERCENT)),
            fibre_curves(cost),
        )
    };
    let chart = LineChart {
        shades: vec![
            Shade::neutral([fastest, 0.0], LOWERING),
            Shade::bare([0.0, SPEEDS_PERCENT[1].into()], LIFTING),
        ],
        ..LineChart::new(
            Axis::new(SHORTENING_SPEED, "%").reaching(Extent::Data),
            vec![panel],
        )
    };
    Sheet::lines(&force_velocity_words(cost), chart)
}

/// A voluntary effort over all speeds, and the isolated fibre where it differs: in lengthening.
fn fibre_curves(cost: &SpeedCost) -> Vec<Series> {
    let [from, to] = SPEEDS_PERCENT;
    let curve = |name: &str, ends: [i32; 2], role, curve: ForceVelocity| {
        let speeds = drawn_speeds(ends).into_iter();
        let points = speeds.map(|percent| [percent, 100.0 * curve.at(0.01 * percent)]);
        Series::new(name, points.collect(), role)
    };
    vec![
        // One line in two halves, each with its name: in shortening both are one curve.
        curve(VOLUNTARY, [from, 0], Role::Series(0), cost.voluntary),
        curve(BOTH, [0, to], Role::Series(0), cost.voluntary),
        curve(ISOLATED, [from, 0], Role::Series(1), cost.isolated),
    ]
}

/// The peak of a curve over angles, with its place.
fn peak_marker(curve: &Series, units: System) -> Marker {
    let points = curve.points.iter().copied();
    let peak = points.max_by(|a, b| a[1].total_cmp(&b[1]));
    let at = peak.unwrap_or_default();
    let text = format!("{} {}", rounded(at[1], 0), units.torque_unit().symbol);
    Marker::new(at, text, curve.role).detailed(at_angle(at[0]))
}

/// A strength curve at several speeds of the joint.
#[must_use]
pub fn curve_at_speed(lifter: &str, held: &Study, moving: &[MovingStudy], units: System) -> Sheet {
    let last = (moving.len() - 1) as f64;
    let curves = moving.iter().enumerate().map(|(index, one)| {
        let points = OverRange::new(&one.study, units).load_points(&one.study.capacity.values());
        // What all are compared with stands out from the order of speeds.
        let role = match one.speed_deg_s {
            0.0 => Role::Reference,
            _ => Role::Ordered(index as f64 / last),
        };
        Series::new(speed_in_words(one.speed_deg_s), points, role)
            .doubted(OverRange::new(&one.study, units).hollow())
    });
    let curves: Vec<Series> = curves.collect();
    let still = moving.iter().position(|one| one.speed_deg_s == 0.0);
    let told = still.into_iter().chain([moving.len() - 1]);
    let (quantity, unit) = held.told(units).load_axis();
    let panel = Panel {
        markers: told
            .map(|index| peak_marker(&curves[index], units))
            .collect(),
        ..Panel::new(Axis::new(quantity, unit), curves)
    };
    let chart = LineChart::new(OverRange::new(held, units).axis(), vec![panel]);
    Sheet::lines(&speed_words(lifter, held, moving), chart)
}
