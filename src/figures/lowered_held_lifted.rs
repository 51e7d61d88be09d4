//! Lowered, held, lifted: what a lifter can do with a load at each place of the range, and a load beyond the maximum.
//!
//! In: three strength curves, the maximum. Out: a figure of all three with the loads as level lines.

use super::data_table::figure;
use super::over_range::OverRange;
use super::sheet::Sheet;
use crate::narrative::lowering_words::{
    HELD, LIFTED, LOAD_BEYOND, LOWERED, MAXIMUM, beyond_line, maximum_line, three_capacity_words,
};
use crate::plot::{LevelLine, LineChart, Panel, Role, Series};
use crate::study::{Study, ThreeCapacities};
use crate::units::System;

/// The three capacities over the range.
///
/// `measured` are published maxima of lowering over lifting for the lift.
#[must_use]
pub fn three_capacities(three: &ThreeCapacities, measured: &[f64], units: System) -> Sheet {
    let over = OverRange::new(&three.held, units);
    let curve = |name: &str, study: &Study, role| {
        let points = over.load_points(&study.capacity.values());
        Series::new(name, points, role)
    };
    let series = vec![
        curve(LOWERED, &three.lowered, Role::Series(2)),
        curve(HELD, &three.held, Role::Reference),
        curve(LIFTED, &three.lifted, Role::Series(1)),
    ];
    let level = |force_n: f64, label: String| {
        let shown = over.loads(&[force_n])[0];
        LevelLine::new(shown, label)
    };
    let panel = Panel {
        levels: vec![
            level(three.one_rm_n(), maximum_line(three, units)),
            level(three.beyond_n(), beyond_line(three, units)),
        ],
        ..Panel::new(
            over.load_axis()
                .reaching(over.load_extent(three.beyond_n())),
            series,
        )
    };
    let chart = LineChart {
        poses: over.poses(None),
        ..LineChart::new(over.axis(), vec![panel])
    };
    let mut sheet = Sheet::lines(&three_capacity_words(three, measured, units), chart);
    for (name, force_n) in [(MAXIMUM, three.one_rm_n()), (LOAD_BEYOND, three.beyond_n())] {
        for end in [0.0, 1.0] {
            let numbers = [over.place(end), over.loads(&[force_n])[0]];
            let mut row = vec![name.to_owned()];
            row.extend(numbers.map(figure));
            sheet.data.rows.push(row);
        }
    }
    sheet
}
