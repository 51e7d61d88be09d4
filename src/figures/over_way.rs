//! A repetition seen over the way of its load, in the units asked for.
//!
//! In: a [`RepStudy`], units. Out: axes, points and stretches for plots of motion.

use super::over_range::OverRange;
use crate::draw::scale::{decimals_of_step, number};
use crate::movement::Measure;
use crate::narrative::shown_units::{ShownUnit, ShownUnits};
use crate::overlay::Sticking;
use crate::plot::{Axis, Extent};
use crate::rep::{RepSample, StickingInMotion};
use crate::study::RepStudy;
use crate::units::System;

/// A repetition over its way.
#[derive(Debug, Clone, Copy)]
pub(crate) struct OverWay<'a> {
    /// The repetition.
    pub rep: &'a RepStudy,
    /// Units of axes and words.
    pub units: System,
}

impl<'a> OverWay<'a> {
    /// A repetition in units.
    pub fn new(rep: &'a RepStudy, units: System) -> Self {
        Self { rep, units }
    }

    /// The same lift held still.
    pub fn still(&self) -> OverRange<'a> {
        OverRange::new(&self.rep.still, self.units)
    }

    /// A position of the load on the level axis.
    pub fn way(&self, position: f64) -> f64 {
        self.still().travel(self.rep.across(position))
    }

    /// The level axis from the start to the end of the lift, whether the load gets there or not.
    pub fn axis(&self) -> Axis {
        let options = &self.rep.options;
        let [from, to] = [options.from, options.to].map(|range| self.still().place(range));
        let whole = [from.min(to), from.max(to)];
        self.still().axis().reaching(Extent::Exactly(whole))
    }

    /// Unit of velocities.
    pub fn velocity(&self) -> ShownUnit {
        self.units.velocity_unit(self.rep.trace.measure)
    }

    /// Unit of what the load is held with.
    pub fn load(&self) -> ShownUnit {
        self.units.load_unit(self.rep.trace.measure)
    }

    /// The ends of the sticking region in motion on the level axis.
    pub fn region(&self, sticking: &StickingInMotion) -> [f64; 2] {
        [sticking.first_peak, sticking.minimum].map(|mark| self.way(mark.position))
    }

    /// The ends of the static sticking region, as far as the lift covers it.
    pub fn still_region(&self, sticking: &Sticking) -> [f64; 2] {
        let options = &self.rep.options;
        [sticking.from_range, sticking.to_range]
            .map(|range| self.still().place(range.clamp(options.from, options.to)))
    }

    /// An axis that holds every velocity and carries three or four ticks.
    pub fn velocity_axis<'s>(&self, samples: impl IntoIterator<Item = &'s RepSample>) -> Axis {
        let unit = self.velocity();
        let velocities = samples.into_iter().map(|sample| unit.of(sample.velocity));
        let (least, most) = velocities.fold((0.0_f64, 0.0_f64), |(low, high), v| {
            (low.min(v), high.max(v))
        });
        // A load that does not move still gets an axis to stand on.
        let most = most.max(0.1 * unit.per_si);
        let step = round_step((most - least) / 3.0);
        let range = [
            step * (least / step + 1.0e-9).floor().min(0.0),
            step * (most / step).ceil(),
        ];
        ticked(Axis::new("Velocity", unit.symbol), range, step)
    }

    /// An axis from zero, or from below it where the load is braked, with room above the load.
    pub fn load_axis(&self, values: impl IntoIterator<Item = f64>) -> Axis {
        let quantity = match self.rep.trace.measure {
            Measure::Force => "Force",
            Measure::Torque => "Torque",
        };
        let unit = self.load();
        let reach = [f64::INFINITY, f64::NEG_INFINITY];
        let [least, most] = values.into_iter().fold(reach, |[low, high], value| {
            [low.min(unit.of(value)), high.max(unit.of(value))]
        });
        let most = if most.is_finite() { most.max(1.0) } else { 1.0 };
        let least = if least.is_finite() { least } else { 0.0 };
        let least = least.min(0.0);
        let step = round_step((1.15 * most - least) / 3.0);
        let low = step * (least / step + 1.0e-9).floor();
        let high = step * (1.15 * most / step).ceil();
        ticked(Axis::new(quantity, unit.symbol), [low, high], step)
    }

    /// A curve of the lift over its way.
    pub fn lifting(&self, value: &dyn Fn(&RepSample) -> f64) -> Vec<[f64; 2]> {
        let samples = self.rep.trace.lifting().iter();
        samples
            .map(|sample| [self.way(sample.position), value(sample)])
            .collect()
    }

    /// A force at every pose of the lift, from its start to its end.
    pub fn over_poses(&self, value: &dyn Fn(f64) -> f64) -> Vec<[f64; 2]> {
        let options = &self.rep.options;
        let inside = |range: &f64| *range >= options.from - 1e-9 && *range <= options.to + 1e-9;
        let poses = self.rep.still.range.poses.iter();
        poses
            .map(|pose| pose.load.range)
            .filter(inside)
            .map(|range| [self.still().place(range), self.load().of(value(range))])
            .collect()
    }
}

/// The axis with its range and ticks fixed.
fn ticked(mut axis: Axis, range: [f64; 2], step: f64) -> Axis {
    let decimals = decimals_of_step(step);
    let first = (range[0] / step).ceil() as i64;
    let last = (range[1] / step + 1.0e-9) as i64;
    axis.ticks = (first..=last)
        .map(|count| {
            let value = count as f64 * step;
            let decimals = if count == 0 { 0 } else { decimals };
            (value, number(value, decimals))
        })
        .collect();
    axis.reaching(Extent::Exactly(range))
}

/// The least of 1, 2, 5 times a power of ten that is not below a value.
fn round_step(value: f64) -> f64 {
    let power = 10_f64.powf(value.max(1.0e-9).log10().floor());
    let steps = [1.0, 2.0, 5.0, 10.0];
    let times = steps
        .into_iter()
        .find(|s| s * power >= value * (1.0 - 1.0e-9));
    times.unwrap_or(10.0) * power
}
