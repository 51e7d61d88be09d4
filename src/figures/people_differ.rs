//! People differ: the band of their strength curves, and of their shapes alone.
//!
//! In: the curves of many people. Out: two panels over the range.

use super::sheet::Sheet;
use crate::narrative::axis_words::WHOLE_RANGE;
use crate::narrative::people_words::{
    HIGH, LOW, MIDDLE, SHAPE_OFF_THE_MIDDLE, STRENGTH_OFF_THE_MIDDLE, people_words, signed_percent,
};
use crate::plot::{Axis, Extent, Fill, LineChart, Panel, Role, Series, Time};
use crate::study::{People, Study, Tenths};

/// Steps of both axes, %.
const STEP_PERCENT: f64 = 10.0;

/// The bands of a lift; the study is that of the lifter around whom people are invented.
#[must_use]
pub fn people_differ(study: &Study, people: &People) -> Sheet {
    let panel = |axis: Axis, tenths: &Tenths| {
        let curve = |values: &[f64]| -> Vec<[f64; 2]> {
            let places = people.places.iter().map(|place| 100.0 * place);
            places.zip(values).map(|(x, y)| [x, *y]).collect()
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
    let forces_off = off_the_middle(&people.forces);
    let all = forces_off.low.iter().chain(&forces_off.high);
    let most = all.fold(0.0_f64, |most, off| most.max(off.abs()));
    // Both scatters are seen on one scale, that of strength.
    let reach = STEP_PERCENT * (most / STEP_PERCENT).ceil();
    let axis = |quantity: &str| Axis {
        ticks: [-reach, 0.0, reach]
            .map(|off| (off, signed_percent(off)))
            .to_vec(),
        ..Axis::new(quantity, "%").reaching(Extent::Exactly([-reach, reach]))
    };
    let strength = panel(axis(STRENGTH_OFF_THE_MIDDLE), &forces_off);
    let shapes = panel(axis(SHAPE_OFF_THE_MIDDLE), &off_the_middle(&people.shapes));
    let level = Axis::new(WHOLE_RANGE, "%")
        .reaching(Extent::Data)
        .timed(Time::Rising);
    let chart = LineChart {
        alike: true,
        ..LineChart::new(level, vec![strength, shapes])
    };
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
