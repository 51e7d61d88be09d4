//! People differ: the band of their strength curves, as force and as shape.
//!
//! In: the curves of many people. Out: two panels over the range.

use super::over_range::OverRange;
use super::sheet::Sheet;
use crate::narrative::axis_words::WHOLE_RANGE;
use crate::narrative::people_words::{HIGH, LOW, MIDDLE, OFF_THE_MIDDLE, people_words};
use crate::plot::{Axis, Extent, Fill, LineChart, Panel, Role, Series, Time};
use crate::study::{People, Study, Tenths};
use crate::units::System;

/// Steps of the axis of shapes, %.
const STEP_PERCENT: f64 = 10.0;

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
    // As far as strength itself is off its middle, so that both scatters are seen on one scale.
    let forces_off = off_the_middle(&people.forces);
    let all = forces_off.low.iter().chain(&forces_off.high);
    let most = all.fold(0.0_f64, |most, off| most.max(off.abs()));
    let reach = STEP_PERCENT * (most / STEP_PERCENT).ceil();
    let shapes = panel(
        Axis::new(OFF_THE_MIDDLE, "%").reaching(Extent::Exactly([-reach, reach])),
        &off_the_middle(&people.shapes),
        &<[f64]>::to_vec,
    );
    let level = Axis::new(WHOLE_RANGE, "%")
        .reaching(Extent::Data)
        .timed(Time::Rising);
    let chart = LineChart::new(level, vec![forces, shapes]);
    Sheet::lines(&people_words(study, people), chart)
}

/// How far each curve is from the middle one, %.
fn off_the_middle(tenths: &Tenths) -> Tenths {
    let off = |values: &[f64]| -> Vec<f64> {
        let pairs = values.iter().zip(&tenths.middle);
        pairs
            .map(|(value, middle)| 100.0 * (value / middle - 1.0))
            .collect()
    };
    Tenths {
        low: off(&tenths.low),
        quarter: off(&tenths.quarter),
        middle: off(&tenths.middle),
        three_quarters: off(&tenths.three_quarters),
        high: off(&tenths.high),
    }
}
