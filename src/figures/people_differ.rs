//! People differ: the band of their strength curves, as force and as shape.
//!
//! In: the curves of many people. Out: two panels over the range.

use super::over_range::OverRange;
use super::sheet::Sheet;
use crate::narrative::axis_words::{WHOLE_RANGE, over_median};
use crate::narrative::people_words::{HIGH, LOW, MIDDLE, people_words};
use crate::plot::{Axis, Extent, Fill, LineChart, Panel, Role, Series};
use crate::study::{People, Study, Tenths};
use crate::units::System;

/// Where the axis of shapes ends, %.
const TOP_PERCENT: f64 = 250.0;

/// The bands of a lift; the study is that of the lifter around whom people are invented.
#[must_use]
pub fn people_differ(study: &Study, people: &People, units: System) -> Sheet {
    let over = OverRange::new(study, units);
    let panel = |axis: Axis, tenths: &Tenths, shown: &dyn Fn(&[f64]) -> Vec<f64>| {
        let curve = |values: &[f64]| -> Vec<[f64; 2]> {
            let places = people.places.iter().map(|place| 100.0 * place);
            places.zip(shown(values)).map(|(x, y)| [x, y]).collect()
        };
        let [low, middle, high] = [&tenths.low, &tenths.middle, &tenths.high].map(|v| curve(v));
        let fill = Fill {
            upper: high.clone(),
            lower: low.clone(),
            role: Role::CAPACITY,
        };
        let series = vec![
            Series::new(MIDDLE, middle, Role::CAPACITY),
            Series::new(HIGH, high, Role::Muted),
            Series::new(LOW, low, Role::Muted),
        ];
        Panel {
            fills: vec![fill],
            ..Panel::new(axis, series)
        }
    };
    let forces = panel(
        over.load_axis().reaching(over.load_extent(0.0)),
        &people.forces,
        &|values| over.loads(values),
    );
    let shape = Axis::new(over_median(&over.load_axis().quantity), "%");
    let shapes = panel(
        shape.reaching(Extent::FromZeroTo(TOP_PERCENT)),
        &people.shapes,
        &<[f64]>::to_vec,
    );
    let level = Axis::new(WHOLE_RANGE, "%").reaching(Extent::Data);
    let chart = LineChart::new(level, vec![forces, shapes]);
    Sheet::lines(&people_words(study, people), chart)
}
