//! A study that answers for itself in the units asked for: its places, its axes, its setups by name.
//!
//! In: a [`Study`] and a [`System`], put together once. Out: words such as "14 cm off the chest" and the quantity
//! and unit of each axis; whoever tells of a study hands on this one value.

use super::axis_words::AxisWords;
use super::prose::capital;
use super::quantities::{QuantityWords, rounded, with_minus};
use super::setup_names::{hung_name, hung_name_in_full, short_name};
use super::shown_units::ShownUnits;
use crate::anatomy::Dof;
use crate::movement::Measure;
use crate::overlay::Sticking;
use crate::study::{SetupStudy, Study};
use crate::units::System;

/// Where the load has not moved yet.
pub(crate) const AT_THE_START: &str = "at the start";

/// What places of the ankle's range are counted by.
const OF_DORSIFLEXION: &str = "of dorsiflexion";

/// A study in units.
#[derive(Debug, Clone, Copy)]
pub struct Telling<'a> {
    /// The study.
    pub study: &'a Study,
    /// The units in which it is told.
    pub units: System,
}

impl Study {
    /// The study as it is told in units.
    #[must_use]
    pub const fn told(&self, units: System) -> Telling<'_> {
        Telling { study: self, units }
    }
}

impl Telling<'_> {
    /// A place of the range in words: "14 cm off the chest", "70 deg of elbow flexion".
    #[must_use]
    pub fn place(&self, range: f64) -> String {
        if self.is_plantar(range) {
            let degrees = rounded(-self.study.axis_value(range), 0);
            return format!("{degrees} deg of plantar flexion");
        }
        let (number, unit) = self.place_and_unit(range);
        format!("{number} {unit} {}", self.study.away_from)
    }

    /// Whether an angle of the ankle lies below zero, where nobody speaks of dorsiflexion.
    fn is_plantar(&self, range: f64) -> bool {
        let is_ankle = self.study.range.poses[0].coordinates[0].dof == Dof::Ankle;
        let is_usual = self.study.away_from == OF_DORSIFLEXION;
        let is_angle = self.study.range.measure == Measure::Torque;
        is_angle && is_ankle && is_usual && self.study.axis_value(range) <= -0.5
    }

    /// Where something happens: "14 cm off the chest", "at 70 deg of elbow flexion", "at the start".
    #[must_use]
    pub fn at_place(&self, range: f64) -> String {
        match (
            self.study.range.measure,
            self.place_and_unit(range).0.as_str(),
        ) {
            (Measure::Force, "0") => AT_THE_START.to_owned(),
            (Measure::Force, _) => self.place(range),
            (Measure::Torque, _) => format!("at {}", self.place(range)),
        }
    }

    /// The sticking region on the movement's axis: "2 to 19 cm".
    #[must_use]
    pub fn region(&self, sticking: &Sticking) -> String {
        let (from, _) = self.place_and_unit(sticking.from_range);
        let (to, unit) = self.place_and_unit(sticking.to_range);
        format!("{from} to {to} {unit}")
    }

    /// A stretch of the range in words: "from 2 to 19 cm off the chest", and where it is too short for two numbers,
    /// "close to 130 deg of elbow flexion".
    #[must_use]
    pub fn stretch(&self, from: f64, to: f64) -> String {
        let (number, _) = self.place_and_unit(from);
        if number == self.place_and_unit(to).0 {
            return format!("close to {}", self.place(to));
        }
        if self.is_plantar(from) || self.is_plantar(to) {
            return format!("from {} to {}", self.place(from), self.place(to));
        }
        format!("from {number} to {}", self.place(to))
    }

    pub(crate) fn place_and_unit(&self, range: f64) -> (String, &'static str) {
        let value = self.study.axis_value(range);
        match self.study.range.measure {
            Measure::Torque => (with_minus(&rounded(value, 0)), "deg"),
            Measure::Force => self.units.travel_and_unit(value.abs()),
        }
    }

    /// A few words for a setup as it was asked for.
    #[must_use]
    pub fn asked_name(&self, setup: &SetupStudy) -> String {
        short_name(&setup.asked, &self.study.range.carrier, self.units)
    }

    /// A few words for a setup as it is put up: "doubled" where that was left open.
    #[must_use]
    pub fn setup_name(&self, setup: &SetupStudy) -> String {
        short_name(&setup.demand.setup, &self.study.range.carrier, self.units)
    }

    /// What hangs in a setup as it is put up: "37 kg and a doubled 14 mm band a side".
    #[must_use]
    pub(super) fn hung_in_full(&self, setup: &SetupStudy) -> String {
        hung_name_in_full(&setup.demand.setup, &self.study.range.carrier, self.units)
    }

    /// The same in the fewest words: "37 kg + doubled 14 mm band".
    #[must_use]
    pub(super) fn hung_in_short(&self, setup: &SetupStudy) -> String {
        hung_name(&setup.demand.setup, &self.study.range.carrier, self.units)
    }

    /// How long a sticking region is on the movement's axis: "14 cm".
    #[must_use]
    pub(super) fn region_length(&self, sticking: &Sticking) -> String {
        let (number, unit) = self.apart(sticking.from_range, sticking.to_range);
        format!("{number} {unit}")
    }

    /// How far two places of the range are apart on the movement's axis, and its unit.
    pub(super) fn apart(&self, from: f64, to: f64) -> (String, &'static str) {
        let apart = (self.study.axis_value(to) - self.study.axis_value(from)).abs();
        match self.study.range.measure {
            Measure::Torque => (rounded(apart, 0), "deg"),
            Measure::Force => self.units.travel_and_unit(apart),
        }
    }

    /// The range of the lift as the movement's own axis: travel, or the angle of a sweep.
    #[must_use]
    pub fn range_axis(&self) -> AxisWords {
        let unit = match self.study.range.measure {
            Measure::Torque => "deg",
            Measure::Force => self.units.length_unit().symbol,
        };
        (capital(&self.study.axis), unit)
    }

    /// What capacity and demand are: a force, or at the joint of a sweep the load's torque, which limb and tissue have no part in.
    #[must_use]
    pub fn load_axis(&self) -> AxisWords {
        let measure = self.study.range.measure;
        match measure {
            Measure::Force => ("Force".to_owned(), self.units.load_unit(measure).symbol),
            Measure::Torque => {
                let quantity = format!("Moment of the load at the {}", self.study.joint(0));
                (quantity, self.units.torque_unit().symbol)
            }
        }
    }

    /// Torque at the first joint of the lift.
    #[must_use]
    pub fn joint_torque_axis(&self) -> AxisWords {
        let quantity = format!("Moment at the {}", self.study.joint(0));
        (quantity, self.units.torque_unit().symbol)
    }
}
