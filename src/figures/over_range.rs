//! A study seen over its range, in the units asked for: the shared ground of most figures.
//!
//! In: a [`Study`], units. Out: axes, points, stretches and poses for plots.

use super::body_lines::stick_figure;
use crate::movement::Measure;
use crate::narrative::axis_words::{SHOWN_AT_THE_LEFT, WHOLE_CURVE};
use crate::narrative::shown_units::ShownUnits;
use crate::narrative::telling::Telling;
use crate::numeric::median;
use crate::overlay::Sticking;
use crate::plot::{Axis, Extent, Role, Series, StripPose, Time, WholeCurve};
use crate::resistance::{Item, Setup};
use crate::study::{Study, hollow_stretches};
use crate::units::{Length, System};

/// Centimetres to the inch.
const CM_PER_IN: f64 = Length::from_in(1.0).as_cm();

/// A study over its range.
#[derive(Debug, Clone, Copy)]
pub(crate) struct OverRange<'a> {
    /// The study in the units of axes and words.
    pub told: Telling<'a>,
    /// Whether setups take their colour from what hangs, not from their order.
    by_hung: bool,
}

/// How the curve of a setup is drawn by its number.
pub(crate) fn setup_role(index: usize) -> Role {
    Role::Series(index + 1)
}

/// How the curve of a setup is drawn by what hangs: plain weight, bands, chains, both, a cam.
pub(crate) fn hung_role(setup: &Setup) -> Role {
    let has = |is: fn(&Item) -> bool| setup.items.iter().any(is);
    let band = has(|item| matches!(item, Item::Band(_)));
    let chain = has(|item| matches!(item, Item::Chain(_)));
    let cam = has(|item| matches!(item, Item::Cam(_)));
    Role::Series(match (band, chain) {
        (true, true) => 4,
        (false, true) => 3,
        (true, false) => 2,
        (false, false) if cam => 5,
        (false, false) => 1,
    })
}

impl<'a> OverRange<'a> {
    /// A study in units.
    pub fn new(study: &'a Study, units: System) -> Self {
        Self::of(study.told(units))
    }

    /// A study as it is told.
    pub const fn of(told: Telling<'a>) -> Self {
        Self {
            told,
            by_hung: false,
        }
    }

    /// The same where plain weight, bands and chains keep their colours from figure to figure.
    pub const fn by_hung(self) -> Self {
        Self {
            by_hung: true,
            ..self
        }
    }

    /// How the curve of a setup is drawn, whatever it is of.
    pub fn role(&self, index: usize) -> Role {
        match self.told.study.setups.get(index).filter(|_| self.by_hung) {
            Some(setup) => hung_role(&setup.demand.setup),
            None => setup_role(index),
        }
    }

    /// The level axis: what the range is, with its unit.
    pub fn axis(&self) -> Axis {
        let (quantity, unit) = self.told.range_axis();
        let time = if self.place(0.0) <= self.place(1.0) {
            Time::Rising
        } else {
            Time::Falling
        };
        let axis = Axis::new(quantity, unit).reaching(Extent::Data);
        axis.timed(time)
    }

    /// A place of the range on the level axis: cm or inches of travel, degrees for a sweep.
    pub fn place(&self, range: f64) -> f64 {
        self.travel(self.told.study.axis_value(range))
    }

    /// A place of the study's own axis in the unit of the level axis.
    pub fn travel(&self, value: f64) -> f64 {
        match (self.told.study.range.measure, self.told.units) {
            (Measure::Force, System::Us) => value / CM_PER_IN,
            _ => value,
        }
    }

    /// The ends of a sticking region on the level axis.
    pub fn region(&self, sticking: &Sticking) -> [f64; 2] {
        [sticking.from_range, sticking.to_range].map(|range| self.place(range))
    }

    /// Points of a curve over the level axis.
    pub fn points(&self, values: &[f64]) -> Vec<[f64; 2]> {
        let ranges = self
            .told
            .study
            .range
            .poses
            .iter()
            .map(|pose| pose.load.range);
        ranges
            .zip(values)
            .map(|(range, value)| [self.place(range), *value])
            .collect()
    }

    /// Stretches of the level axis in which the study's curve is less sure.
    pub fn hollow(&self) -> Vec<[f64; 2]> {
        let stretches = hollow_stretches(self.told.study).into_iter();
        stretches
            .map(|ends| ends.map(|range| self.place(range)))
            .collect()
    }

    /// Points of an effort, %, of which what lies far outside is cut.
    pub fn effort_points(&self, effort: &[f64]) -> Vec<[f64; 2]> {
        let percent: Vec<f64> = effort.iter().map(|e| 100.0 * e.clamp(-0.5, 2.0)).collect();
        self.points(&percent)
    }

    /// The upright axis of capacity and demand.
    pub fn load_axis(&self) -> Axis {
        let (quantity, unit) = self.told.load_axis();
        Axis::new(quantity, unit)
    }

    /// Capacity or demand in the unit of the upright axis.
    pub fn loads(&self, values: &[f64]) -> Vec<f64> {
        let unit = self.told.units.load_unit(self.told.study.range.measure);
        values.iter().map(|value| unit.of(*value)).collect()
    }

    /// Points of capacity or demand.
    pub fn load_points(&self, values: &[f64]) -> Vec<[f64; 2]> {
        self.points(&self.loads(values))
    }

    /// Points of capacity, its peak among them where that lies between two samples.
    pub fn capacity_points(&self) -> Vec<[f64; 2]> {
        let mut points = self.load_points(&self.told.study.capacity.values());
        if let Some((behind, crest)) = self.crest() {
            points.insert(behind, crest);
        }
        points
    }

    /// The peak of the capacity where it lies between two samples, and the sample behind it.
    pub fn crest(&self) -> Option<(usize, [f64; 2])> {
        let (behind, range, peak) = self.told.study.crest()?;
        Some((behind, [self.place(range), self.loads(&[peak])[0]]))
    }

    /// The greatest demand of all setups in the unit of the upright axis.
    pub fn greatest_demand(&self) -> f64 {
        let setups = self.told.study.setups.iter();
        let demands = setups.flat_map(|setup| self.loads(&setup.values));
        demands.fold(0.0, f64::max)
    }

    /// Where the upright axis of capacity and demand ends: at the data, unless a curve climbs out of what matters.
    ///
    /// What matters is the demand and the weaker half of the capacity; a straight limb bears almost
    /// anything, and an axis that showed it would flatten the rest.
    pub fn load_extent(&self, demand: f64) -> Extent {
        let loads = self.loads(&self.told.study.capacity.values());
        let middle = median(&loads).unwrap_or(0.0);
        let highest = loads.into_iter().fold(0.0, f64::max);
        let focus = 1.6 * middle.max(demand);
        if highest > 1.15 * focus {
            Extent::FromZeroTo(focus)
        } else {
            Extent::FromZero
        }
    }

    /// The whole curves in percent of the greatest capacity beside an axis that ends before it; none where the axis
    /// shows all.
    pub fn whole(&self, extent: Extent) -> Option<WholeCurve> {
        let Extent::FromZeroTo(top) = extent else {
            return None;
        };
        let peak = self.loads(&[self.told.study.class.peak])[0];
        let percent = |values: &[f64]| -> Vec<f64> {
            values.iter().map(|value| 100.0 * value / peak).collect()
        };
        let (quantity, unit) = WHOLE_CURVE;
        let capacity = self.capacity_points().into_iter();
        let capacity = capacity.map(|[x, value]| [x, 100.0 * value / peak]);
        let curve = Series::new("", capacity.collect(), Role::CAPACITY).doubted(self.hollow());
        let setups = self.told.study.setups.iter().enumerate();
        let demands = setups.map(|(index, setup)| {
            let values = percent(&self.loads(&setup.values));
            Series::new("", self.points(&values), self.role(index))
        });
        Some(WholeCurve {
            axis: Axis::new(quantity, unit),
            series: std::iter::once(curve).chain(demands).collect(),
            window: [0.0, 100.0 * top / peak],
            shown: SHOWN_AT_THE_LEFT.to_owned(),
        })
    }

    /// The pose at a place of the range, with its caption.
    pub fn pose(&self, range: f64, caption: &str) -> StripPose {
        let poses = &self.told.study.range.poses;
        let last = (poses.len() - 1) as f64;
        let index = (range.clamp(0.0, 1.0) * last).round() as usize;
        StripPose {
            at: self.place(range),
            caption: caption.to_owned(),
            figure: stick_figure(&poses[index], self.told.study.range.carrier),
        }
    }

    /// Five poses from start to end; the hardest place, where there is one inside, in the stead of its neighbour.
    pub fn poses(&self, hardest: Option<f64>) -> Vec<StripPose> {
        let mut places = [
            (0.0, "start"),
            (0.25, ""),
            (0.5, "middle"),
            (0.75, ""),
            (1.0, "end"),
        ];
        if let Some(place) = hardest.filter(|place| *place > 0.125 && *place < 0.875) {
            places[(4.0 * place).round() as usize] = (place, "hardest");
        }
        let poses = places.map(|(range, caption)| self.pose(range, caption));
        poses.into()
    }
}
