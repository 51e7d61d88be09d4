//! The whole calculation, one step a line: movement and lifter to capacity, setups to effort.
//!
//! In: a [`Question`], setups. Out: [`Study`]; [`SolvedLift`] for those who lay many setups over one lift.
//! The only place where the chain of rooms is put together.

use super::between_samples::{Crest, crest, is_held_otherwise};
use super::question::{Question, SetupStudy, Study};
use crate::capacity::{
    Acting, CapacityCurve, Held, between_the_ends, class_with, curve_of, plain_direction,
};
use crate::demand::{DemandCurve, DemandSample};
use crate::error::{Error, Lacking, LiftFault, Result};
use crate::movement::{Carrier, LiftWay, LoadPoint, Measure, PlaneForce, Pose, Range, trace};
use crate::overlay::{effort, flattening_percent, sticking_with};
use crate::resistance::{Item, LoadForce, Setup, Weight};
use crate::units::{Angle, Force, Mass, Torque};
use std::cell::OnceCell;
use std::sync::Arc;

/// Answers a question for any number of setups.
///
/// # Algorithm
/// 1. The movement gives the poses.
/// 2. The programme gives capacity along the plain load's direction.
/// 3. Each setup gives its demand.
/// 4. Effort is demand over capacity; where a setup pulls askew, the programme is solved again along
///    its own pull.
/// 5. Peak, trough, sticking region and flattening follow; where other conditions begin to bind between two samples, the poses
///    between them are searched for the greatest and the least capacity and the greatest effort.
pub fn study(question: &Question<'_>, setups: &[Setup]) -> Result<Study> {
    let ground = SolvedLift::of(question)?;
    let setups = setups
        .iter()
        .map(|setup| ground.setup(setup))
        .collect::<Result<Vec<_>>>()?;
    Ok(ground.into_study(setups))
}

/// What setups are laid over: poses, muscles, capacity, and the shape of effort under plain weight.
pub(super) struct SolvedLift<'a> {
    question: &'a Question<'a>,
    /// The poses.
    pub(super) range: Range,
    /// The load at every pose.
    pub(super) points: Vec<LoadPoint>,
    /// The muscles at every pose.
    pub(super) acting: Arc<Acting>,
    /// Capacity along the plain load's direction.
    pub(super) capacity: CapacityCurve,
    plain: Vec<f64>,
}

impl<'a> SolvedLift<'a> {
    /// Steps 1 and 2 of [`study`].
    pub(super) fn of(question: &'a Question<'a>) -> Result<Self> {
        let range = trace(question.movement, question.lifter, question.samples)?;
        let acting = Arc::new(Acting::of(question.lifter, &range.poses)?);
        let capacity = curve_of(&acting, &range, None, question.pace)?;
        let mut ground = Self {
            question,
            points: load_points(&range),
            range,
            acting,
            capacity,
            plain: Vec::new(),
        };
        ground.plain = ground.plain_effort()?;
        Ok(ground)
    }

    /// The question.
    pub(super) fn question(&self) -> &'a Question<'a> {
        self.question
    }

    /// The results with these setups.
    pub(super) fn into_study(self, setups: Vec<SetupStudy>) -> Study {
        let question = self.question;
        let values = self.capacity.values();
        let (crest, trough) = (self.capacity_crest(), self.capacity_trough());
        let class = class_with(&values, crest.map(pair), trough.map(pair));
        Study {
            movement_name: question.movement_name.to_owned(),
            movement_title: question.movement.title.clone(),
            away_from: question.movement.away_from.clone(),
            axis: question.movement.axis.clone(),
            lifter_name: question.lifter.name.clone(),
            lifter_title: question.lifter.title.clone(),
            body_mass: question.lifter.body_mass,
            class,
            range: self.range,
            capacity: self.capacity,
            band: None,
            people: None,
            region_share: question.region_share,
            pace: question.pace,
            changes: question.changes.to_vec(),
            equal_effort: None,
            setups,
        }
    }

    /// Effort of plain weight: its shape is what flattening compares with.
    fn plain_effort(&self) -> Result<Vec<f64>> {
        let plain = self.loaded(&Setup::plain(Mass::from_kg(20.0)));
        let (_, _, effort) = self.effort(&plain)?;
        Ok(effort)
    }

    /// The setup with the lifter's own mass where that is the load.
    pub(super) fn loaded(&self, setup: &Setup) -> Setup {
        with_body(setup, self.range.carrier, self.question.lifter.body_mass)
    }

    /// The setup with a cam that follows the lifter's strength where one is asked for.
    pub(super) fn with_cam(&self, setup: &Setup) -> Result<Setup> {
        let mut fitted = setup.clone();
        for item in &mut fitted.items {
            if let Item::Cam(cam) = item
                && cam.is_to_fit()
            {
                *cam = cam
                    .followed(&self.lever_angles(), &self.capacity.values())
                    .map_err(Error::no_answer)?;
            }
        }
        Ok(fitted)
    }

    /// The angle of a lever that carries the load, at every pose.
    pub(super) fn lever_angles(&self) -> Vec<Angle> {
        let angles = self.points.iter().map(|point| point.lever_rad);
        angles.map(Angle::from_rad).collect()
    }

    /// Steps 3 to 5 of [`study`] for one setup.
    pub(super) fn setup(&self, setup: &Setup) -> Result<SetupStudy> {
        setup.check_for(&self.range.carrier, self.question.movement_name)?;
        let (demand, values, effort) = self.effort(&self.loaded(&self.with_cam(setup)?))?;
        self.check_held(&effort)?;
        let crest = self.effort_crest(&demand.setup, &effort);
        let sticking = sticking_with(&effort, self.question.region_share, crest.map(pair));
        let limiting = sticking.map(|s| {
            let last = self.capacity.held.len() - 1;
            self.capacity.held[(s.point_range * last as f64).round() as usize].limiting
        });
        Ok(SetupStudy {
            asked: setup.clone(),
            demand,
            flattening_percent: flattening_percent(&effort, &self.plain),
            effort,
            held_there: sticking.map(|s| on_the_line(&values, s.point_range) / s.max_effort),
            values,
            sticking,
            limiting,
        })
    }

    /// The same lift at one place of its way.
    fn at_place(&self, way: &LiftWay, range: f64) -> Result<Self> {
        let question = self.question;
        let range = Range {
            poses: vec![way.pose(range)?],
            ..self.range
        };
        Ok(Self {
            question,
            points: load_points(&range),
            capacity: curve_of(&self.acting, &range, None, question.pace)?,
            acting: Arc::clone(&self.acting),
            range,
            plain: Vec::new(),
        })
    }

    /// Whether the lift is held otherwise at the next sample than at this one.
    fn turns(&self, index: usize) -> bool {
        let held = &self.capacity.held;
        is_held_otherwise(&held[index], &held[index + 1])
    }

    /// What a lift at one place is asked for, at any place; its way is made once, where one is looked at.
    fn between<T>(&self, told: impl Fn(Self) -> Option<T>) -> impl Fn(f64) -> Option<T> {
        let way = OnceCell::new();
        move |range| {
            let Question {
                movement, lifter, ..
            } = self.question;
            let way = way.get_or_init(|| LiftWay::of(movement, lifter).ok());
            told(self.at_place(way.as_ref()?, range).ok()?)
        }
    }

    /// The greatest capacity where it lies between two samples.
    fn capacity_crest(&self) -> Option<Crest> {
        let at = self.between(|there| Some(there.capacity.held[0].capacity));
        crest(&self.capacity.values(), |index| self.turns(index), at)
    }

    /// The least capacity between the ends of the range where it lies between two samples.
    fn capacity_trough(&self) -> Option<Crest> {
        let values = self.capacity.values();
        let inside = between_the_ends(values.len())?;
        let last = (values.len() - 1) as f64;
        let (first, wide) = (inside.start as f64 / last, (inside.len() - 1) as f64 / last);
        let place = |part: f64| first + part * wide;
        let below: Vec<f64> = values[inside.clone()].iter().map(|value| -value).collect();
        let least = (0..below.len()).max_by(|a, b| below[*a].total_cmp(&below[*b]))?;
        if least == 0 || least + 1 == below.len() {
            return None;
        }
        let there = self.between(|there| Some(-there.capacity.held[0].capacity));
        let at = |part: f64| there(place(part));
        let found = crest(&below, |index| self.turns(inside.start + index), at)?;
        Some(Crest {
            range: place(found.range),
            value: -found.value,
        })
    }

    /// The greatest effort under a setup as it hangs where it lies between two samples.
    fn effort_crest(&self, hung: &Setup, effort: &[f64]) -> Option<Crest> {
        let at = self.between(|there| {
            let (_, _, effort) = there.effort(hung).ok()?;
            Some(effort[0]).filter(|effort| effort.is_finite())
        });
        crest(effort, |index| self.turns(index), at)
    }

    /// **Fails** where the limbs alone are too much, or the pull leans so far that the lift holds nothing in its direction.
    fn check_held(&self, effort: &[f64]) -> Result<()> {
        let Some(index) = effort.iter().position(|e| !e.is_finite()) else {
            return Ok(());
        };
        let pose = &self.range.poses[index];
        let plain = &self.capacity.held[index];
        Err(Error::no_answer(if plain.capacity <= 0.0 {
            too_weak(pose, plain, self.range.measure)
        } else {
            LiftFault::NotHeld {
                range: pose.load.range,
                movement: self.question.movement_name.to_owned(),
            }
        }))
    }

    /// Demand and effort on the way that the pace goes: bands give back less on the way down, and a load
    /// of the lowering phase is there.
    pub(super) fn effort(&self, setup: &Setup) -> Result<(DemandCurve, Vec<f64>, Vec<f64>)> {
        let demand = DemandCurve::over(setup, &self.points, &self.range.carrier);
        let lowers = self.question.pace.lowers();
        let way = |sample: &DemandSample| match lowers {
            true => sample.down.clone(),
            false => sample.up.clone(),
        };
        let loads: Vec<LoadForce> = demand.samples.iter().map(way).collect();
        let (values, effort) = self.effort_under(&loads)?;
        Ok((demand, values, effort))
    }

    /// Demand in the unit of the capacity, and effort, under these loads.
    pub(super) fn effort_under(&self, loads: &[LoadForce]) -> Result<(Vec<f64>, Vec<f64>)> {
        let values: Vec<f64> = match self.range.measure {
            Measure::Force => loads.iter().map(|load| load.along_n).collect(),
            Measure::Torque => self
                .range
                .poses
                .iter()
                .zip(loads)
                .map(|(pose, load)| load_torque_nm(pose, load.force, &self.range))
                .collect(),
        };
        let forces: Vec<PlaneForce> = loads.iter().map(|load| load.force).collect();
        let capacity = self.capacity_along(&forces)?;
        let effort = values
            .iter()
            .zip(&capacity)
            .map(|(d, c)| effort(*d, *c))
            .collect();
        Ok((values, effort))
    }

    /// Whether pulls lean from the plain load's direction in a way that capacity depends on.
    fn is_askew(&self, forces: &[PlaneForce]) -> bool {
        self.range.measure == Measure::Force
            && matches!(self.range.carrier, Carrier::Bar)
            && forces.iter().any(|force| force.leans())
    }

    /// Capacity along the setup's own pull; the plain one where that is the same direction, or where
    /// nothing pulls.
    fn capacity_along(&self, forces: &[PlaneForce]) -> Result<Vec<f64>> {
        if !self.is_askew(forces) {
            return Ok(self.capacity.values());
        }
        let plain = plain_direction(self.range.carrier);
        let pulls: Vec<PlaneForce> = forces
            .iter()
            .map(|force| {
                if force.magnitude_n() > 0.0 {
                    *force
                } else {
                    plain
                }
            })
            .collect();
        let along = curve_of(&self.acting, &self.range, Some(&pulls), self.question.pace)?;
        Ok(along.values())
    }
}

/// The fault of a lifter who cannot hold the limbs alone: what is held is less than nothing.
pub(super) fn too_weak(pose: &Pose, held: &Held, measure: Measure) -> LiftFault {
    let lacks = -held.capacity;
    LiftFault::TooWeak {
        range: pose.load.range,
        joint: pose.coordinates[held.limiting].dof.joint().name(),
        lacking: match measure {
            Measure::Force => Lacking::Force(Force::from_n(lacks)),
            Measure::Torque => Lacking::Torque(Torque::from_nm(lacks)),
        },
    }
}

/// A curve on evenly spaced samples at a place of the range, on the straight line between two of them.
fn on_the_line(values: &[f64], range: f64) -> f64 {
    let place = range * (values.len() - 1) as f64;
    let (below, part) = (place.floor() as usize, place.fract());
    let above = (below + 1).min(values.len() - 1);
    values[below] * (1.0 - part) + values[above] * part
}

const fn pair(crest: Crest) -> (f64, f64) {
    (crest.range, crest.value)
}

/// The load points of a range.
#[must_use]
pub fn load_points(range: &Range) -> Vec<LoadPoint> {
    range.poses.iter().map(|pose| pose.load).collect()
}

/// Torque of a load's force at the one moving joint of one side, N·m, positive against the movement.
#[must_use]
pub fn load_torque_nm(pose: &Pose, force: PlaneForce, range: &Range) -> f64 {
    let share = 1.0 / range.sides.count();
    let jacobian = pose.load_jacobian[0];
    let torque = share * (jacobian.x * force.x_n + jacobian.z * force.z_n);
    -torque * pose.coordinates[0].slope_rad.signum()
}

/// The setup with the lifter's own mass added where the body is the load and the setup names none.
#[must_use]
pub fn with_body(setup: &Setup, carrier: Carrier, body_mass: Mass) -> Setup {
    let mut loaded = setup.clone();
    let is_body = |item: &Item| matches!(item, Item::Weight(Weight::BodyMass(_)));
    if carrier == Carrier::Body && !loaded.items.iter().any(is_body) {
        loaded.items.push(Item::Weight(Weight::BodyMass(body_mass)));
    }
    loaded
}
