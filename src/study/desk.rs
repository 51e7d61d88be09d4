//! What the lecture's figures draw from: every movement of the library for one lifter, computed once.
//!
//! In: a library, a lifter's name, units. Out: [`Desk`].

use super::load_for_effort::load_for_effort;
use super::question::{Question, Study};
use super::solve::study;
use crate::anatomy::Curves;
use crate::error::{Error, Result};
use crate::library::{Library, Model, Workbench, assemble};
use crate::resistance::{Item, Setup};
use crate::units::{Mass, System};
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

/// A movement with its unloaded strength curve.
#[derive(Debug, Clone)]
pub struct LiftStudy {
    /// Lifter and movement.
    pub model: Model,
    /// Capacity over the range, no load.
    pub study: Study,
}

/// What the figures of a lecture draw from.
#[derive(Debug)]
pub struct Desk<'a> {
    /// Where names lead.
    pub models: &'a Library,
    /// Name or file of the lifter.
    pub lifter: &'a str,
    /// Units of axes and words.
    pub units: System,
    /// The lift that a lecture is about, if it is about one.
    pub about: Option<String>,
    lifts: Vec<LiftStudy>,
    left_out: Vec<(String, Error)>,
}

/// Effort at the hardest place for which loads are chosen where figures compare setups: near the
/// lifter's best and still a lift (assumed; the title or subtitle says it).
pub const HARD_EFFORT: f64 = 0.9;

impl<'a> Desk<'a> {
    /// Computes every movement of the library for the lifter.
    ///
    /// **Fails** if the lifter cannot be read or no movement can be computed; a single movement that
    /// this lifter cannot do is left out ([`Desk::left_out`]).
    pub fn open(library: &'a Library, lifter: &'a str, units: System) -> Result<Self> {
        library.lifter(lifter)?;
        let done: Vec<(String, Result<LiftStudy>)> = library
            .movements()
            .into_par_iter()
            .map(|name| {
                let lift = lift(library, lifter, &name);
                (name, lift)
            })
            .collect();
        let (mut lifts, mut left_out) = (Vec::new(), Vec::new());
        for (name, result) in done {
            match result {
                Ok(lift) => lifts.push(lift),
                Err(error) => left_out.push((name, error)),
            }
        }
        match (lifts.is_empty(), left_out.first()) {
            (true, Some((_, error))) => Err(error.clone()),
            _ => Ok(Self {
                models: library,
                lifter,
                units,
                about: None,
                lifts,
                left_out,
            }),
        }
    }

    /// The desk for a lecture on one lift.
    ///
    /// **Fails** as [`Self::lift`].
    pub fn about(mut self, movement: &str) -> Result<Self> {
        self.lift(movement)?;
        self.about = Some(movement.to_owned());
        Ok(self)
    }

    /// Every movement that this lifter can do, in order of their names.
    #[must_use]
    pub fn lifts(&self) -> &[LiftStudy] {
        &self.lifts
    }

    /// Movements that this lifter cannot do, with the reason.
    #[must_use]
    pub fn left_out(&self) -> &[(String, Error)] {
        &self.left_out
    }

    /// Whether a movement is there.
    #[must_use]
    pub fn has(&self, movement: &str) -> bool {
        self.find(movement).is_some()
    }

    fn find(&self, movement: &str) -> Option<&LiftStudy> {
        let named = |lift: &&LiftStudy| lift.model.movement_name == movement;
        self.lifts.iter().find(named)
    }

    /// One movement with its curve.
    ///
    /// **Fails** if it is not in the library or this lifter cannot do it.
    pub fn lift(&self, movement: &str) -> Result<&LiftStudy> {
        if let Some(lift) = self.find(movement) {
            return Ok(lift);
        }
        self.models.movement(movement)?;
        let mut left_out = self.left_out.iter();
        let (_, error) = left_out
            .find(|(name, _)| name == movement)
            .expect("every movement of the library was tried when the desk was opened");
        Err(error.clone())
    }

    /// The workbench on which models of a movement with other values are made.
    pub fn workbench(&self, movement: &str) -> Result<Workbench> {
        Workbench::open(self.models, self.lifter, movement)
    }

    /// The question of a movement.
    pub fn question(&self, movement: &str) -> Result<Question<'_>> {
        let lift = self.lift(movement)?;
        let model = &lift.model;
        Ok(Question::new(
            &model.movement_name,
            &model.movement,
            &model.lifter,
        ))
    }

    /// A movement under setups.
    pub fn under(&self, movement: &str, setups: &[Setup]) -> Result<Study> {
        study(&self.question(movement)?, setups)
    }

    /// A setup with the plain load added that makes its hardest place [`HARD_EFFORT`]; the load is
    /// rounded to whole kilograms or pounds.
    ///
    /// **Fails** if the setup is harder than that without any weight.
    pub fn hard(&self, movement: &str, items: Vec<Item>) -> Result<Setup> {
        let without = Setup::new("", items);
        let load = load_for_effort(&self.question(movement)?, &without, HARD_EFFORT)?;
        let whole = match self.units {
            System::Metric => Mass::from_kg(load.as_kg().round()),
            System::Us => Mass::from_lb(load.as_lb().round()),
        };
        Ok(without.with_plain_load(whole))
    }

    /// What a person calls the lifter.
    #[must_use]
    pub fn who(&self) -> &str {
        &self.lifts[0].model.lifter.title
    }

    /// The lifter's fibre curves.
    #[must_use]
    pub fn curves(&self) -> &Curves {
        &self.lifts[0].model.lifter.curves
    }
}

fn lift(library: &Library, lifter: &str, movement: &str) -> Result<LiftStudy> {
    let model = assemble(library, lifter, movement, &[])?;
    let study = study(
        &Question::new(movement, &model.movement, &model.lifter),
        &[],
    )?;
    Ok(LiftStudy { model, study })
}
