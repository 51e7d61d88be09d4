//! The charts of the live page: the same plots as everywhere, without the words around them, with the place of their
//! axes, so that a pointer can take hold of a curve.
//!
//! In: a study, the one before the last change, a place of the range. Out: [`LiveChart`]s.

use super::over_range::OverRange;
use super::strength_curve::load_curves;
use crate::anatomy::Curves;
use crate::draw::Scene;
use crate::error::Result;
use crate::narrative::axis_words::{FIBRE_LENGTH_OPTIMAL, GREATEST_ACTIVE_FORCE};
use crate::narrative::muscle_names::{head_name, muscle_label};
use crate::narrative::page_words::{BEFORE, NO_LIVING_FIBRE, arm_axis, moment_axis};
use crate::narrative::shown_units::ShownUnits;
use crate::plot::{
    Axis, Extent, Fill, Labels, LineChart, Look, Marker, Panel, Role, Series, Shade,
};
use crate::study::{LIVING_LENGTHS, MusclePart, Study, muscle_heads, muscle_layers_at};
use crate::units::System;

/// A chart, and where the axes of its panel lie.
#[derive(Debug, Clone)]
pub struct LiveChart {
    /// The chart.
    pub scene: Scene,
    /// Left, upper, right and lower edge of the plot, pixels.
    pub area_px: [f64; 4],
    /// What the left and the right edge stand for.
    pub across: [f64; 2],
    /// What the lower and the upper edge stand for.
    pub up: [f64; 2],
}

impl LiveChart {
    fn of(chart: &LineChart, look: Look) -> Result<Self> {
        let (scene, plot) = chart.placed(look)?;
        let area = plot.area;
        // Where values fall with time the axis runs from the greatest to the least.
        let [least, most] = plot.x.range();
        let across = if plot.x.px(least) <= plot.x.px(most) {
            [least, most]
        } else {
            [most, least]
        };
        Ok(Self {
            scene,
            area_px: [area.left, area.top, area.right, area.bottom],
            across,
            up: plot.y.range(),
        })
    }
}

/// Muscles that are named beside each other on the smallest screen.
const NAMED_MUSCLES: usize = 4;
/// Lengths that are shown, optimal lengths.
const SHOWN_LENGTHS: [f64; 2] = [0.4, 1.8];

/// The places of the samples on the level axis of these charts.
#[must_use]
pub fn live_places(study: &Study, units: System) -> Vec<f64> {
    let over = OverRange::new(study, units);
    let poses = study.range.poses.iter();
    poses.map(|pose| over.place(pose.load.range)).collect()
}

/// Where the axis of the strength curve ends although the curve goes on, N or N·m; `None` where it shows the whole curve.
#[must_use]
pub fn live_top(study: &Study) -> Option<f64> {
    let over = OverRange::new(study, System::Metric);
    let unit = System::Metric.load_unit(study.range.measure);
    match over.load_extent(over.greatest_demand()) {
        Extent::FromZeroTo(top) => Some(top / unit.per_si),
        _ => None,
    }
}

/// Capacity and demand over the range, and what was before the last change: the capacity, or where it stays the load.
///
/// **Fails** never for studies from the library.
pub fn live_strength(
    study: &Study,
    before: Option<&Study>,
    units: System,
    look: Look,
) -> Result<LiveChart> {
    let over = OverRange::new(study, units);
    let mut panel = load_curves(&over, "Capacity");
    if let Some(before) = before {
        let former = OverRange::new(before, units);
        let stays = before.capacity.values() == study.capacity.values();
        let load = before.setups.first().filter(|_| stays);
        let values = load.map_or_else(|| before.capacity.values(), |load| load.values.clone());
        let is_seen = !stays || load.is_some_and(|load| Some(load) != study.setups.first());
        if is_seen {
            let points = former.load_points(&values);
            panel.series.push(Series::new(BEFORE, points, Role::Muted));
        }
    }
    let hardest = study.setups.first().and_then(|setup| setup.sticking);
    let shade = |sticking| Shade::between(over.region(&sticking), over.told.hardest_part());
    let chart = LineChart {
        shades: hardest.map(shade).into_iter().collect(),
        ..LineChart::new(over.axis(), vec![panel])
    };
    LiveChart::of(&chart, look)
}

/// Where the fibres stand on the curve of active force at a sample, the stretch they pass, and beside it the lengths
/// that no living fibre has.
///
/// **Fails** never for a study from the library.
pub fn live_lengths(
    study: &Study,
    curves: &Curves,
    (sample, chosen): (usize, Option<usize>),
    look: Look,
) -> Result<LiveChart> {
    let point = |length: f64| [100.0 * length, 100.0 * curves.active.at(length)];
    let [from, to] = SHOWN_LENGTHS;
    let step = |share: i32| from + (to - from) * f64::from(share) / 140.0;
    let active: Vec<[f64; 2]> = (0..=140).map(|share| point(step(share))).collect();
    let mut panel = Panel::new(
        Axis::new(GREATEST_ACTIVE_FORCE, "%").reaching(Extent::Exactly([0.0, 120.0])),
        vec![Series::new("", active, Role::Muted)],
    );
    for (number, muscle) in most_pulling(study, sample, chosen).into_iter().enumerate() {
        let role = Role::Series(number);
        let length = |index: usize| study.capacity.held[index].muscles[muscle].state.length_norm;
        let all = (0..study.capacity.held.len()).map(length);
        let ends = all.fold([f64::INFINITY, 0.0], |[low, high], l| {
            [low.min(l), high.max(l)]
        });
        let [low, high] = ends.map(|end: f64| end.clamp(from, to));
        let passed = |share: i32| point(low + (high - low) * f64::from(share) / 20.0);
        panel
            .series
            .push(Series::new("", (0..=20).map(passed).collect(), role));
        let name = head_name(&study.capacity.muscles[muscle]);
        let at = point(length(sample).clamp(from, to));
        panel.markers.push(Marker::new(at, name, role));
    }
    let (shortest, longest) = LIVING_LENGTHS;
    let chart = LineChart {
        shades: vec![
            Shade::neutral([100.0 * from, 100.0 * shortest], ""),
            Shade::neutral([100.0 * longest, 100.0 * to], NO_LIVING_FIBRE),
        ],
        ..LineChart::new(
            Axis::new(FIBRE_LENGTH_OPTIMAL, "%").reaching(Extent::Data),
            vec![panel],
        )
    };
    LiveChart::of(&chart, look)
}

/// The muscles that pull most at a sample, the chosen one among them.
fn most_pulling(study: &Study, sample: usize, chosen: Option<usize>) -> Vec<usize> {
    let held = &study.capacity.held[sample];
    let force = |muscle: &usize| held.activations[*muscle] * held.muscles[*muscle].active_n;
    let mut order: Vec<usize> = (0..held.muscles.len()).collect();
    order.sort_by(|a, b| force(b).total_cmp(&force(a)).then(a.cmp(b)));
    if let Some(chosen) = chosen.filter(|chosen| *chosen < order.len()) {
        order.retain(|muscle| *muscle != chosen);
        order.insert(0, chosen);
    }
    order.truncate(NAMED_MUSCLES);
    order
}

/// Moment arms of the heads that pull most about a joint, over the range, positive where they work with the lift: each
/// head by itself, since a mean over heads would follow their forces.
///
/// **Fails** never for a study from the library.
pub fn live_arms(study: &Study, joint: usize, units: System, look: Look) -> Result<LiveChart> {
    let over = OverRange::new(study, units);
    let unit = units.length_unit();
    let mut heads = muscle_heads(study, joint);
    heads.truncate(NAMED_MUSCLES);
    let curve = |(number, head): (usize, &MusclePart)| {
        let arms: Vec<f64> = head.arm_m.iter().map(|arm| unit.of(*arm)).collect();
        let name = head_name(&head.name);
        Series::new(name, over.points(&arms), Role::Series(number))
    };
    let series = heads.iter().enumerate().map(curve).collect();
    let (quantity, symbol) = arm_axis(study, joint, units);
    let chart = LineChart {
        labels: Labels::Column,
        ..LineChart::new(
            over.axis(),
            vec![Panel::new(Axis::new(quantity, symbol), series)],
        )
    };
    LiveChart::of(&chart, look)
}

/// Moments of the muscles that move a joint, stacked over the range.
///
/// **Fails** never for a study from the library.
pub fn live_moments(study: &Study, joint: usize, units: System, look: Look) -> Result<LiveChart> {
    let over = OverRange::new(study, units);
    let torque = units.torque_unit();
    let mut below = vec![0.0; study.range.poses.len()];
    let (mut fills, mut series) = (Vec::new(), Vec::new());
    for (number, layer) in muscle_layers_at(study, joint).iter().enumerate() {
        let role = Role::Series(number);
        let above: Vec<f64> = below
            .iter()
            .zip(&layer.torque_nm)
            .map(|(b, t)| b + torque.of(*t))
            .collect();
        let name = match number {
            0 => muscle_label(layer),
            _ => format!("+ {}", muscle_label(layer)),
        };
        let (upper, lower) = (over.points(&above), over.points(&below));
        series.push(Series::new(name, upper.clone(), role));
        fills.push(Fill { upper, lower, role });
        below = above;
    }
    series.reverse();
    let (quantity, unit) = moment_axis(study, joint, units);
    let panel = Panel {
        fills,
        ..Panel::new(Axis::new(quantity, unit), series)
    };
    let chart = LineChart {
        labels: Labels::Column,
        ..LineChart::new(over.axis(), vec![panel])
    };
    LiveChart::of(&chart, look)
}
