//! What is compared when a value changes: the load and pace of every variant, and the figures of its curve.
//!
//! In: a model. Out: its study under one load, [`Figures`], and one of them as [`Compared`] says.

use super::question::{Question, Study};
use super::solve::study;
use crate::capacity::Pace;
pub use crate::error::Compared;
use crate::error::Result;
use crate::library::Model;
use crate::movement::{Carrier, Measure};
use crate::overlay::{REGION_SHARE, Sticking};
use crate::resistance::Setup;
use crate::units::Mass;

/// How every variant is studied.
#[derive(Debug, Clone)]
pub struct Conditions {
    /// Samples of the range.
    pub samples: usize,
    /// Speed at which capacity is asked for.
    pub pace: Pace,
    /// Share of the greatest effort from which the sticking region counts.
    pub region_share: f64,
    /// The load; `None` for a plain weight.
    pub load: Option<Setup>,
}

impl Default for Conditions {
    fn default() -> Self {
        Self {
            samples: 101,
            pace: Pace::Isometric,
            region_share: REGION_SHARE,
            load: None,
        }
    }
}

/// The weight that stands for "a plain weight": its size cancels out of every figure that is told, kg.
const PLAIN_KG: f64 = 20.0;

impl Conditions {
    /// The study of one model.
    pub fn of(&self, model: &Model) -> Result<Study> {
        let mut question = Question::new(&model.movement_name, &model.movement, &model.lifter);
        question.changes = &model.changes;
        question.samples = self.samples;
        question.pace = self.pace;
        question.region_share = self.region_share;
        let plain = Setup::plain(Mass::from_kg(PLAIN_KG));
        let load = self.load.clone().unwrap_or(plain);
        study(&question, &[load])
    }
}

/// The figures of one curve.
#[derive(Debug, Clone, PartialEq)]
pub struct Figures {
    /// Greatest capacity, N or N·m.
    pub peak: f64,
    /// Place of the greatest capacity.
    pub peak_range: f64,
    /// Capacity at the start, N or N·m.
    pub start: f64,
    /// Capacity at the end, N or N·m.
    pub end: f64,
    /// Heaviest plain weight that can be held at every place of the range, kg; where the body is the
    /// load its mass is included. `None` with a load of one's own, which may not grow in proportion.
    pub held_kg: Option<f64>,
    /// Greatest effort under the load.
    pub max_effort: Option<f64>,
    /// Where the load is hardest.
    pub sticking: Option<Sticking>,
}

impl Figures {
    /// The figures of a study made by [`Conditions::of`].
    #[must_use]
    pub fn of(study: &Study, asked: &Conditions) -> Self {
        let values = study.capacity.values();
        let setup = study.setups.first();
        let sticking = setup.and_then(|setup| setup.sticking);
        // Effort over infinite places is left out by the search for the hardest one.
        let can_hold = setup.is_some_and(|s| s.effort.iter().all(|e| e.is_finite()));
        let body_kg = match study.range.carrier {
            Carrier::Body => study.body_mass.as_kg(),
            _ => 0.0,
        };
        let held_kg = sticking
            .filter(|_| asked.load.is_none() && can_hold)
            .map(|sticking| (PLAIN_KG + body_kg) / sticking.max_effort);
        Self {
            peak: study.class.peak,
            peak_range: study.class.peak_range,
            start: values[0],
            end: values[values.len() - 1],
            held_kg,
            max_effort: sticking.map(|sticking| sticking.max_effort),
            sticking,
        }
    }

    /// One of the figures.
    #[must_use]
    pub fn value(&self, measure: Compared) -> Option<f64> {
        match measure {
            // With a load of one's own: how many times of it would be all the lifter has.
            Compared::Held => self
                .held_kg
                .or_else(|| self.max_effort.map(|effort| 1.0 / effort)),
            Compared::Peak => Some(self.peak),
            Compared::Start => Some(self.start),
            Compared::End => Some(self.end),
        }
    }
}

/// What is compared unless somebody asks otherwise: the heaviest weight of a lift whose capacity is a
/// force, the peak of one whose capacity is a torque.
#[must_use]
pub fn usual_comparison(measure: Measure) -> Compared {
    match measure {
        Measure::Force => Compared::Held,
        Measure::Torque => Compared::Peak,
    }
}
