//! Who holds the load: the moments of a joint's muscles over the range, one upon the other, against what is asked of the joint.
//!
//! In: a lift, under a setup or none. Out: a stack whose upper edge follows what load and limbs ask for.

use super::muscles_add_up::stacked;
use super::over_range::OverRange;
use super::sheet::Sheet;
use crate::narrative::holder_words::{ASKED_AT_MOST, WEAKEST_PLACE, asked_by, holder_words};
use crate::narrative::shown_units::ShownUnits;
use crate::plot::{Axis, Labels, LineChart, Marker, Panel, Role, Series};
use crate::study::{LoadHolders, Study, asked_torques_nm};
use crate::units::System;

/// The muscles of the joint of which most is asked where the lift is weakest, under the heaviest load of each place; what the
/// first setup of the study asks of the joint is drawn beside it.
#[must_use]
pub fn load_holders(study: &Study, units: System) -> Sheet {
    let holders = LoadHolders::of(study);
    let over = OverRange::new(study, units);
    let unit = units.torque_unit();
    let shown = |values: &[f64]| -> Vec<f64> { values.iter().map(|nm| unit.of(*nm)).collect() };
    let (fills, edges) = stacked(&over, &holders.layers, unit);
    let asked = over.points(&shown(&holders.asked_nm));
    let weakest = Marker::new(asked[holders.weakest], WEAKEST_PLACE, Role::Reference);
    let asked = Series::new(ASKED_AT_MOST, asked, Role::Reference).doubted(over.hollow());
    let mut series = vec![asked];
    if let Some(setup) = study.setups.first() {
        let samples = 0..study.range.poses.len();
        let asks: Vec<f64> = samples
            .map(|at| asked_torques_nm(study, Some(setup), at)[holders.joint].abs())
            .collect();
        let name = asked_by(&study.told(units).setup_name(setup));
        series.push(Series::new(
            name,
            over.points(&shown(&asks)),
            Role::Series(4),
        ));
    }
    // One solution of many: pale, and in thin lines.
    let stretches = holders.undetermined().into_iter();
    let pale: Vec<[f64; 2]> = stretches
        .map(|ends| ends.map(|range| over.place(range)))
        .collect();
    series.extend(edges.into_iter().map(|edge| edge.thinned(pale.clone())));
    let words = holder_words(study, &holders, units);
    let panel = Panel {
        fills,
        pale,
        markers: vec![weakest],
        ..Panel::new(Axis::new(words.axis, unit.symbol), series)
    };
    let chart = LineChart {
        labels: Labels::Column,
        ..LineChart::new(over.axis(), vec![panel])
    };
    Sheet::lines(&words.words, chart)
}
