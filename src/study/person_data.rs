//! The measurements of a person beside what the model says of each.
//!
//! In: what was told, the person's lifts. Out: [`PersonDatum`], which is reckoned for any strengths.

use super::person_asked::PersonAsked;
use super::person_lifts::{LiftSlopes, PersonLift};
use super::question::Question;
use super::solve::SolvedLift;
use crate::error::{Error, PersonFault, PersonOption, Result};
use crate::library::Library;
use crate::movement::{Measure, Pose};
use crate::numeric::Observation;
use crate::person::{
    LogMeasured, PersonFactors, ToldMeasure, ToldMeasurement, measured_dynamometer, measured_hold,
    measured_lift,
};
use crate::units::{Angle, Length, Mass, Torque};
use nalgebra::DVector;

/// One measurement and how it is reckoned.
#[derive(Debug, Clone)]
pub struct PersonDatum {
    /// What was told.
    pub told: ToldMeasurement,
    /// Its logarithm and the variance of its error.
    pub measured: LogMeasured,
    /// Which of the person's lifts it is of.
    pub(super) lift: usize,
    /// What is reckoned.
    kind: ReckonedAs,
}

#[derive(Debug, Clone, Copy, PartialEq)]
enum ReckonedAs {
    /// The maximum in motion.
    Maximum,
    /// The capacity at a place of the range.
    Held { place: f64 },
    /// The torque of the muscles at a place; the practice of a lift has no part in it.
    Torque { place: f64, weightless: bool },
}

impl PersonDatum {
    /// Every measurement that was told.
    ///
    /// **Fails** with the first that does not fit its movement.
    pub fn all(asked: &PersonAsked, library: &Library, lifts: &[PersonLift]) -> Result<Vec<Self>> {
        let of = |told: &ToldMeasurement| Self::of(told, library, lifts);
        asked.measurements.iter().map(of).collect()
    }

    fn of(told: &ToldMeasurement, library: &Library, lifts: &[PersonLift]) -> Result<Self> {
        let table = library.person_table()?;
        let known = lifts.iter().position(|lift| lift.movement == told.movement);
        let index = known.expect("texts are read with the movements of the library");
        let lift = &lifts[index];
        let (measured, kind) = match told.measure {
            ToldMeasure::Lift {
                load,
                repetitions,
                reserve,
            } => {
                let equations = &library.published()?.estimates.repetitions;
                let set = (repetitions.unwrap_or(1), reserve);
                let measured = measured_lift(&table, equations, load + lift.body, set);
                let measured = measured.ok_or_else(|| {
                    Error::bad(PersonFault::NoLoad {
                        movement: told.movement.clone(),
                        load,
                    })
                })?;
                (measured, ReckonedAs::Maximum)
            }
            ToldMeasure::Velocity { one_rm, deviation } => {
                let measured = LogMeasured {
                    log_value: one_rm.as_kg().ln(),
                    variance: deviation * deviation,
                };
                (measured, ReckonedAs::Maximum)
            }
            ToldMeasure::Hold {
                height,
                force,
                one_hand,
            } => {
                let place = lift.place_of_height(height)?;
                let hands = if one_hand { 2.0 } else { 1.0 };
                let place_error = library.misses()?.of("force by place");
                let measured = measured_hold(&table, hands * force.as_n(), place_error);
                (measured, ReckonedAs::Held { place })
            }
            ToldMeasure::Dynamometer {
                angle,
                torque,
                with_limb,
            } => {
                let place = lift.place_of_angle(angle)?;
                let weightless = !with_limb;
                let measured = measured_dynamometer(&table, Torque::as_nm(torque));
                (measured, ReckonedAs::Torque { place, weightless })
            }
        };
        Ok(Self {
            told: told.clone(),
            measured,
            lift: index,
            kind,
        })
    }

    /// The maximum of one of a person's lifts, measured like this.
    #[allow(
        dead_code,
        reason = "fits are tried on simulated people by a maintenance program"
    )]
    #[must_use]
    pub fn maximum_of(lift: usize, movement: &str, measured: LogMeasured) -> Self {
        Self {
            told: ToldMeasurement {
                written: movement.to_owned(),
                movement: movement.to_owned(),
                measure: ToldMeasure::Lift {
                    load: Mass::from_kg(measured.log_value.exp()),
                    repetitions: None,
                    reserve: None,
                },
            },
            measured,
            lift,
            kind: ReckonedAs::Maximum,
        }
    }

    /// What the model says for these strengths, as a logarithm.
    ///
    /// **Fails** where the lift cannot be done.
    pub fn reckoned(
        &self,
        lifts: &[PersonLift],
        factors: &PersonFactors,
        values: &DVector<f64>,
    ) -> Result<f64> {
        let lift = &lifts[self.lift];
        let values = self.felt(factors, values);
        let strength = lift.strength(factors, &values);
        match self.kind {
            ReckonedAs::Maximum => lift.log_maximum(&strength),
            ReckonedAs::Held { place } => lift.log_capacity(&strength, place, false),
            ReckonedAs::Torque { place, weightless } => {
                lift.log_capacity(&strength, place, weightless)
            }
        }
    }

    /// The same held still: as near as makes no difference to how it bends with strength, and quick.
    ///
    /// **Fails** where the lift cannot be done.
    pub fn reckoned_still(
        &self,
        lifts: &[PersonLift],
        factors: &PersonFactors,
        values: &DVector<f64>,
    ) -> Result<f64> {
        match self.kind {
            ReckonedAs::Maximum => {
                let lift = &lifts[self.lift];
                Ok(lift.log_held(&lift.strength(factors, values))?.0)
            }
            _ => self.reckoned(lifts, factors, values),
        }
    }

    /// How what the model says follows the factors.
    ///
    /// **Fails** where the lift cannot be done.
    pub fn slopes(
        &self,
        lifts: &[PersonLift],
        factors: &PersonFactors,
        values: &DVector<f64>,
    ) -> Result<DVector<f64>> {
        let lift = &lifts[self.lift];
        let own = Some(lift.movement.as_str());
        let values = self.felt(factors, values);
        let over = |slopes: LiftSlopes, own: Option<&str>| Ok(slopes.over(factors, own));
        match self.kind {
            ReckonedAs::Maximum => over(lift.maximum_slopes(factors, &values)?, own),
            ReckonedAs::Held { place } => {
                let log = |strength: &_| lift.log_capacity(strength, place, false);
                over(lift.slopes(factors, &values, &log)?, own)
            }
            ReckonedAs::Torque { place, weightless } => {
                let log = |strength: &_| lift.log_capacity(strength, place, weightless);
                over(lift.slopes(factors, &values, &log)?, None)
            }
        }
    }

    /// The measurement as an observation that is linear about these strengths.
    #[must_use]
    pub fn observation(
        &self,
        reckoned: f64,
        slopes: &DVector<f64>,
        values: &DVector<f64>,
    ) -> Observation {
        Observation {
            slopes: slopes.clone(),
            value: self.measured.log_value - reckoned + slopes.dot(values),
            variance: self.measured.variance,
        }
    }

    /// Name of the movement.
    #[must_use]
    pub fn movement(&self) -> &str {
        &self.told.movement
    }

    /// Whether it is a maximum or a set.
    #[must_use]
    pub fn is_lift(&self) -> bool {
        self.kind == ReckonedAs::Maximum
    }

    /// Whether it is a torque about a joint.
    #[must_use]
    pub fn is_torque(&self) -> bool {
        matches!(self.kind, ReckonedAs::Torque { .. })
    }

    /// Whether both measure the same.
    #[must_use]
    pub fn is_of_the_same(&self, other: &Self) -> bool {
        self.lift == other.lift && self.kind == other.kind
    }

    /// Strengths without that of the lift alone where it has no part.
    fn felt(&self, factors: &PersonFactors, values: &DVector<f64>) -> DVector<f64> {
        let mut felt = values.clone();
        if let (ReckonedAs::Torque { .. }, Some(own)) = (self.kind, factors.lift(self.movement())) {
            felt[own] = 0.0;
        }
        felt
    }
}

impl PersonLift {
    /// The place of the range where the load has travelled so far.
    ///
    /// **Fails** in a movement of one joint, and where the load does not come.
    fn place_of_height(&self, height: Length) -> Result<f64> {
        let question = Question::new(&self.movement, &self.model.movement, &self.model.lifter);
        let range = SolvedLift::of(&question)?.range;
        if range.measure != Measure::Force {
            return Err(self.wrong_measure(PersonOption::Hold));
        }
        let travel = |pose: &Pose| pose.load.travel_m;
        crossing(&range.poses, travel, height.as_m()).ok_or_else(|| {
            Error::bad(PersonFault::NoSuchHeight {
                movement: self.movement.clone(),
                height,
                way: Length::from_m(range.poses.last().map_or(0.0, travel)),
            })
        })
    }

    /// The place of the range where the moving joint stands at an angle.
    ///
    /// **Fails** in a movement of more than one joint, and where the joint does not come.
    fn place_of_angle(&self, angle: Angle) -> Result<f64> {
        let question = Question::new(&self.movement, &self.model.movement, &self.model.lifter);
        let range = SolvedLift::of(&question)?.range;
        if range.measure != Measure::Torque {
            return Err(self.wrong_measure(PersonOption::Dynamometer));
        }
        let turned = |pose: &Pose| pose.coordinates[0].angle_rad;
        crossing(&range.poses, turned, angle.as_rad()).ok_or_else(|| {
            let (first, last) = (&range.poses[0], &range.poses[range.poses.len() - 1]);
            let (first, last) = (turned(first), turned(last));
            Error::bad(PersonFault::NoSuchAngle {
                movement: self.movement.clone(),
                angle,
                ends: (
                    Angle::from_rad(first.min(last)),
                    Angle::from_rad(first.max(last)),
                ),
            })
        })
    }

    fn wrong_measure(&self, option: PersonOption) -> Error {
        Error::bad(PersonFault::WrongMeasure {
            movement: self.movement.clone(),
            option,
        })
    }
}

/// The first place of the range where a value is reached, straight between poses.
fn crossing(poses: &[Pose], value: impl Fn(&Pose) -> f64, wanted: f64) -> Option<f64> {
    const NEAR: f64 = 1.0e-9;
    poses.windows(2).find_map(|pair| {
        let (low, high) = (value(&pair[0]), value(&pair[1]));
        let is_between = (low.min(high) - NEAR..=low.max(high) + NEAR).contains(&wanted);
        let part = if (high - low).abs() < NEAR {
            0.0
        } else {
            (wanted - low) / (high - low)
        };
        let (first, second) = (pair[0].load.range, pair[1].load.range);
        is_between.then_some(first + part.clamp(0.0, 1.0) * (second - first))
    })
}
