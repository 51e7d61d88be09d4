//! What a person of given strengths lifts, holds and brings about a joint: the model that a fit is made with.
//!
//! In: a lifter's files and the movements of the library, logarithms of strength factors. Out: [`PersonLift`], one lift
//! simulated or held still, and how it follows the factors.

use super::lift_strength::{LiftStrength, MuscleGroups};
use super::question::Question;
use super::rep_study::{Heaviness, maximum_in, motion, repetition};
use super::solve::SolvedLift;
use super::still_lift::StillLift;
use crate::anatomy::Lifter;
use crate::error::{FaultKind, Result};
use crate::library::{Library, LifterFiles, Model, Workbench};
use crate::movement::{Carrier, Measure, trace};
use crate::person::PersonFactors;
use crate::rep::{RepModel, RepOptions, RepTrace};
use crate::resistance::{Item, Setup, Weight};
use crate::units::Mass;
use nalgebra::DVector;

/// Poses of a lift that is held still: enough for where it is hardest.
const SAMPLES: usize = 41;
/// Half of the step in the logarithm of strength over which slopes are taken: about how far a group's strength stays
/// unknown, since a lift bends where another joint gives way first.
const STEP: f64 = 0.12;
/// A group whose slope is smaller than this share of the whole does not act in a lift.
const IDLE: f64 = 1.0e-3;
/// Stands for a body that is named apart, kg.
const NO_BODY_KG: f64 = 1.0e-3;
/// The plain load that effort is compared with, kg.
const PLAIN_KG: f64 = 20.0;

/// A person in one lift.
#[derive(Debug, Clone)]
pub struct PersonLift {
    /// Name of the movement.
    pub movement: String,
    /// Lifter and movement, strengths as in the files.
    pub model: Model,
    /// The person's own mass where it is lifted with the load, else nothing.
    pub body: Mass,
    options: RepOptions,
    setup: Setup,
    /// The same lift held still with a plain load, or why it cannot be.
    still: Result<StillLift>,
    /// The lift in motion with the strengths of the files; nothing where these keep no pose.
    motion: Option<RepModel>,
    /// Muscles of the lifter and their groups, in order of their names.
    muscles: MuscleGroups,
}

/// How the logarithm of a value follows the factors: by the whole, and by each group that acts.
#[derive(Debug, Clone, PartialEq)]
pub struct LiftSlopes {
    /// By the strength of all muscles, or of the lift alone.
    pub whole: f64,
    /// By the strength of each group that acts.
    pub groups: Vec<(String, f64)>,
}

impl LiftSlopes {
    /// The slopes over all factors.
    #[must_use]
    pub fn over(&self, factors: &PersonFactors, lift: Option<&str>) -> DVector<f64> {
        factors.slopes(self.whole, &self.groups, lift)
    }
}

impl PersonLift {
    /// A person in a movement.
    ///
    /// **Fails** with what is wrong in the files or impossible together.
    pub fn open(library: &Library, files: &LifterFiles, movement: &str) -> Result<Self> {
        Self::of(Workbench::of_files(library, files.clone(), movement)?.model(&[])?)
    }

    /// The lifter of a model in its movement.
    ///
    /// **Fails** where the movement says of nothing what it moves.
    pub fn of(model: Model) -> Result<Self> {
        let is_body = model.movement.carrier()? == Carrier::Body;
        let (body, items) = match is_body {
            true => (
                model.lifter.body_mass,
                vec![Item::Weight(Weight::BodyMass(Mass::from_kg(NO_BODY_KG)))],
            ),
            false => (Mass::ZERO, Vec::new()),
        };
        let setup = Setup::new("", items);
        let mut plain = setup.clone();
        plain
            .items
            .insert(0, Item::Weight(Weight::Load(Mass::from_kg(PLAIN_KG))));
        Ok(Self {
            movement: model.movement_name.clone(),
            options: RepOptions::usual_for(&model.movement),
            still: StillLift::of(&model, &plain, SAMPLES),
            motion: {
                let name = &model.movement_name;
                motion(&Question::new(name, &model.movement, &model.lifter), &setup).ok()
            },
            muscles: model
                .lifter
                .muscles
                .iter()
                .map(|(name, muscle)| (name.clone(), muscle.group.clone()))
                .collect(),
            model,
            body,
            setup,
        })
    }

    /// The lifter with these logarithms of factors on the strengths of the files.
    #[must_use]
    pub fn lifter(&self, factors: &PersonFactors, values: &DVector<f64>) -> Lifter {
        self.lifter_of(&self.strength(factors, values))
    }

    fn lifter_of(&self, strength: &LiftStrength) -> Lifter {
        let mut lifter = self.model.lifter.clone();
        for (name, muscle) in &mut lifter.muscles {
            muscle.peak_force = muscle.peak_force * strength.of(name);
        }
        lifter
    }

    /// The strengths of these logarithms of factors.
    #[must_use]
    pub fn strength(&self, factors: &PersonFactors, values: &DVector<f64>) -> LiftStrength {
        let own = factors.lift(&self.movement).map_or(0.0, |k| values[k]);
        let of = |group: &str| {
            let group = factors.group(group).map_or(0.0, |k| values[k]);
            (values[0] + group + own).exp()
        };
        LiftStrength::new(&self.muscles, of)
    }

    /// The strengths of the files.
    #[must_use]
    pub fn own_strength(&self) -> LiftStrength {
        LiftStrength::new(&self.muscles, |_| 1.0)
    }

    /// Logarithm of the maximum in motion, the body with it where it is lifted, kg.
    ///
    /// **Fails** where nothing at all is lifted.
    pub fn log_maximum(&self, strength: &LiftStrength) -> Result<f64> {
        let question = Question::new(&self.movement, &self.model.movement, &self.model.lifter);
        // Fibres, poses and limbs are those of the body, whatever its strength.
        let model = match &self.motion {
            Some(body) => body.with_forces_times(|name| strength.of(name))?,
            None => {
                let lifter = self.lifter_of(strength);
                let own = Question::new(&self.movement, &self.model.movement, &lifter);
                motion(&own, &self.setup)?
            }
        };
        let one_rm = maximum_in(&model, &question, &self.setup, &self.options)?;
        Ok(one_rm.load.as_kg().max(NO_BODY_KG).ln())
    }

    /// One repetition of a load in motion.
    ///
    /// **Fails** where the lift cannot be traced or held.
    pub fn lifted(&self, lifter: &Lifter, load: Mass) -> Result<RepTrace> {
        let question = Question::new(&self.movement, &self.model.movement, lifter);
        let heaviness = Heaviness::Load(load);
        Ok(repetition(&question, &self.setup, heaviness, &self.options)?.trace)
    }

    /// Logarithm of the load that full activation holds still at the hardest place, kg, and that place, 0 to 1.
    ///
    /// **Fails** where the lift cannot be traced or held.
    pub fn log_held(&self, strength: &LiftStrength) -> Result<(f64, f64)> {
        let (effort, place) = self.still()?.hardest(strength)?;
        Ok(((PLAIN_KG / effort.max(1.0e-9)).ln(), place))
    }

    fn still(&self) -> Result<&StillLift> {
        self.still.as_ref().map_err(Clone::clone)
    }

    /// Logarithm of the capacity at a place of the range, N or N·m; of one without limbs' weight if that is asked for.
    ///
    /// **Fails** where the lift cannot be traced or held.
    pub fn log_capacity(
        &self,
        strength: &LiftStrength,
        place: f64,
        weightless: bool,
    ) -> Result<f64> {
        let values = if weightless {
            self.weightless(strength)?
        } else {
            self.still()?.capacities(strength)?
        };
        let at = place.clamp(0.0, 1.0) * (values.len() - 1) as f64;
        let (low, part) = (at.floor() as usize, at.fract());
        let high = (low + 1).min(values.len() - 1);
        let value = values[low] + part * (values[high] - values[low]);
        Ok(value.max(1.0e-6).ln())
    }

    /// Capacities of a lifter whose limbs weigh nothing.
    fn weightless(&self, strength: &LiftStrength) -> Result<Vec<f64>> {
        let mut lifter = self.lifter_of(strength);
        for segment in lifter.segments.values_mut() {
            segment.mass = Mass::from_kg(1.0e-9);
        }
        let mut question = Question::new(&self.movement, &self.model.movement, &lifter);
        question.samples = SAMPLES;
        Ok(SolvedLift::of(&question)?.capacity.values())
    }

    /// The whole way of the load, m, or of the joint, rad, and which of both it is.
    ///
    /// **Fails** where the lift cannot be traced.
    pub fn way(&self) -> Result<(f64, Measure)> {
        let range = trace(&self.model.movement, &self.model.lifter, SAMPLES)?;
        let (first, last) = (&range.poses[0], &range.poses[range.poses.len() - 1]);
        let way = match range.measure {
            Measure::Force => last.load.travel_m,
            Measure::Torque => last.coordinates[0].angle_rad - first.coordinates[0].angle_rad,
        };
        Ok((way.abs(), range.measure))
    }

    /// How the logarithm of something follows the factors about these values, by central differences.
    ///
    /// **Fails** as what is asked does.
    pub fn slopes(
        &self,
        factors: &PersonFactors,
        values: &DVector<f64>,
        log_value: &dyn Fn(&LiftStrength) -> Result<f64>,
    ) -> Result<LiftSlopes> {
        let along = |place: usize| self.along(factors, values, place, log_value);
        let whole = along(0)?;
        let mut groups = Vec::new();
        for group in self.groups() {
            if let Some(place) = factors.group(&group) {
                let slope = along(place)?;
                if slope.abs() > IDLE * whole.abs() {
                    groups.push((group, slope));
                }
            }
        }
        Ok(LiftSlopes { whole, groups })
    }

    /// What the logarithm of something gains by one of a factor's; where less strength cannot keep a pose, of more alone.
    fn along(
        &self,
        factors: &PersonFactors,
        values: &DVector<f64>,
        place: usize,
        log_value: &dyn Fn(&LiftStrength) -> Result<f64>,
    ) -> Result<f64> {
        let beside = |step: f64| {
            let mut moved = values.clone();
            moved[place] += step;
            log_value(&self.strength(factors, &moved))
        };
        let above = beside(STEP)?;
        match beside(-STEP) {
            Ok(below) => Ok((above - below) / (2.0 * STEP)),
            Err(fault) if fault.kind() == FaultKind::NoAnswer => Ok((above - beside(0.0)?) / STEP),
            Err(fault) => Err(fault),
        }
    }

    /// What the logarithm of something gains by one of the logarithm of all strength.
    ///
    /// **Fails** as what is asked does.
    pub fn gain(
        &self,
        factors: &PersonFactors,
        values: &DVector<f64>,
        log_value: &dyn Fn(&LiftStrength) -> Result<f64>,
    ) -> Result<f64> {
        self.along(factors, values, 0, log_value)
    }

    /// The same of the load that is held at the hardest place.
    ///
    /// **Fails** where the lift cannot be traced or held.
    pub fn still_gain(&self, factors: &PersonFactors, values: &DVector<f64>) -> Result<f64> {
        self.gain(factors, values, &|strength| Ok(self.log_held(strength)?.0))
    }

    /// How the maximum in motion follows the factors: by the whole as simulated, by the groups in the proportions of the
    /// lift held still at its hardest place.
    ///
    /// **Fails** where the lift cannot be traced, held or lifted.
    pub fn maximum_slopes(
        &self,
        factors: &PersonFactors,
        values: &DVector<f64>,
    ) -> Result<LiftSlopes> {
        let still = self.slopes(factors, values, &|strength| Ok(self.log_held(strength)?.0))?;
        let whole = self.gain(factors, values, &|strength| self.log_maximum(strength))?;
        let sum: f64 = still.groups.iter().map(|(_, slope)| slope).sum();
        let share = whole / sum;
        let groups = still.groups.into_iter();
        Ok(LiftSlopes {
            whole,
            groups: groups
                .map(|(group, slope)| (group, slope * share))
                .collect(),
        })
    }

    /// The strength groups of the lifter, in order.
    #[must_use]
    pub fn groups(&self) -> Vec<String> {
        let muscles = self.model.lifter.muscles.values();
        let mut groups: Vec<String> = muscles.map(|muscle| muscle.group.clone()).collect();
        groups.sort();
        groups.dedup();
        groups
    }
}
