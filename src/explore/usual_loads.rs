//! Weights that suit a lift and a lifter: what the page begins with, and where its dial ends.
//!
//! In: a model, what hangs on the bar beside the weight, units. Out: [`UsualLoads`].

use crate::error::Result;
use crate::library::Model;
use crate::movement::{Measure, trace};
use crate::narrative::shown_units::ShownUnits;
use crate::resistance::Setup;
use crate::study::{Question, load_for_effort};
use crate::units::System;
use serde::Serialize;

/// Effort of the weight that a lift begins with (assumed: clearly seen, and a lift).
const USUAL_EFFORT: f64 = 0.75;
/// Effort at which the dial of the weight ends (assumed: a little more than can be held).
const MOST_EFFORT: f64 = 1.3;
/// Where the shortest dial of the weight ends (assumed).
const LEAST_DIAL: f64 = 5.0;

/// Weights that suit.
#[derive(Debug, Serialize)]
pub(super) struct UsualLoads {
    /// Unit of the weights.
    pub(super) unit: &'static str,
    /// How many of it make a kilogram.
    per_kg: f64,
    /// Unit of a speed of the load.
    pub(super) speed_unit: &'static str,
    /// A weight that is hard and can be lifted.
    pub(super) usual_load: f64,
    /// Where the dial of the weight ends.
    pub(super) most_load: f64,
}

/// The weights of a lift and a lifter.
///
/// **Fails** where the lifter cannot take the lift's poses.
pub(super) fn usual_loads(model: &Model, beside: &Setup, units: System) -> Result<UsualLoads> {
    let question = Question::new(&model.movement_name, &model.movement, &model.lifter);
    let unit = units.mass_unit();
    // A lift that is too hard without any weight has a dial all the same.
    let load = |setup: &Setup, effort: f64| {
        let mass = load_for_effort(&question, setup, effort);
        mass.map_or(0.0, |mass| unit.of(mass.as_kg()))
    };
    Ok(UsualLoads {
        unit: unit.symbol,
        per_kg: unit.per_si,
        speed_unit: match trace(&model.movement, &model.lifter, 5)?.measure {
            Measure::Force => "m/s",
            Measure::Torque => "deg/s",
        },
        usual_load: load(beside, USUAL_EFFORT).floor(),
        most_load: load(&Setup::default(), MOST_EFFORT).ceil().max(LEAST_DIAL),
    })
}
