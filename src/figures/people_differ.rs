//! People differ: the band of their strength curves, and of their shapes alone.
//!
//! In: the curves of many people. Out: both bands over the range, on one scale.

use super::sheet::Sheet;
use crate::narrative::axis_words::WHOLE_RANGE;
use crate::narrative::people_words::{
    MIDDLE, OFF_THE_MIDDLE, SHAPES, STRENGTHS, people_words, signed_percent,
};
use crate::plot::{Axis, Extent, Fill, LineChart, Panel, Role, Series, Time};
use crate::study::{People, Study, Tenths};

/// Steps of the axis, %.
const STEP_PERCENT: f64 = 10.0;

/// The bands of a lift; the study is that of the lifter around whom people are invented.
#[must_use]
pub fn people_differ(study: &Study, people: &People) -> Sheet {
    let curve = |values: &[f64]| -> Vec<[f64; 2]> {
        let places = people.places.iter().map(|place| 100.0 * place);
        places.zip(values).map(|(x, y)| [x, *y]).collect()
    };
    let bands = [
        (
            off_the_middle(&people.forces),
            STRENGTHS,
            [Role::Muted, Role::CAPACITY],
        ),
        (off_the_middle(&people.shapes), SHAPES, [Role::DEMAND; 2]),
    ];
    let middle = Series::new(MIDDLE, curve(&bands[0].0.middle), Role::CAPACITY);
    let edges = bands.iter().flat_map(|(off, names, [role, _])| {
        let edges = [&off.high, &off.low].into_iter().zip(names);
        edges.map(|(edge, name)| Series::new(*name, curve(edge), *role))
    });
    let fills = bands.iter().map(|(off, _, [_, role])| Fill {
        upper: curve(&off.high),
        lower: curve(&off.low),
        role: *role,
    });
    let all = bands
        .iter()
        .flat_map(|(off, ..)| off.low.iter().chain(&off.high));
    let most = all.fold(0.0_f64, |most, off| most.max(off.abs()));
    let steps = (most / STEP_PERCENT).ceil();
    let reach = STEP_PERCENT * steps;
    let ticks = (0..=2 * steps as usize).map(|step| {
        let off = STEP_PERCENT * step as f64 - reach;
        (off, signed_percent(off))
    });
    let axis = Axis {
        ticks: ticks.collect(),
        ..Axis::new(OFF_THE_MIDDLE, "%").reaching(Extent::Exactly([-reach, reach]))
    };
    let panel = Panel {
        fills: fills.collect(),
        ..Panel::new(axis, std::iter::once(middle).chain(edges).collect())
    };
    let level = Axis::new(WHOLE_RANGE, "%")
        .reaching(Extent::Data)
        .timed(Time::Rising);
    Sheet::lines(
        &people_words(study, people),
        LineChart::new(level, vec![panel]),
    )
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
