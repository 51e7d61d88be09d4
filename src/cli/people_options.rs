//! The options that invent people: how many, whose kind, by which seed.

use super::options::{SexOption, Who};
use super::waiting::watched;
use crate::anatomy::Training;
use crate::error::Result;
use crate::library::{Library, Model};
use crate::person::Scatter;
use crate::resistance::Setup;
use crate::study::{People, PeopleAsked, PeoplePart, Question, Study, reference_of};
use clap::{Args, ValueEnum};

/// Which people are invented.
#[derive(Debug, Args)]
pub struct PeopleOptions {
    /// Invent this many people and show how they differ: around the lifter, or with --sex women or men of a training
    #[arg(
        long,
        alias = "cohort",
        value_name = "N",
        conflicts_with = "scatter",
        allow_negative_numbers = true
    )]
    pub people: Option<usize>,
    /// Women or men are invented, around the one of the published tables
    #[arg(long, value_enum, requires = "people", conflicts_with = "lifter")]
    sex: Option<SexOption>,
    /// Training of these women or men: without one they are novices
    #[arg(long, value_enum, requires = "sex")]
    training: Option<TrainingOption>,
    /// Seed of the people: the same number invents the same ones
    #[arg(long, value_name = "N", default_value_t = 1, requires = "people")]
    seed: u64,
}

/// Training status of people.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum TrainingOption {
    /// No training yet
    Novice,
    /// About half a year of steady training
    Intermediate,
    /// Years of training
    Advanced,
}

impl From<TrainingOption> for Training {
    fn from(option: TrainingOption) -> Self {
        match option {
            TrainingOption::Novice => Self::Novice,
            TrainingOption::Intermediate => Self::Intermediate,
            TrainingOption::Advanced => Self::Advanced,
        }
    }
}

impl PeopleOptions {
    fn training(&self) -> Training {
        self.training.map_or(Training::Novice, Training::from)
    }

    /// The lifter around whom people are invented, in a movement; where no people are asked for, the lifter.
    pub fn model(&self, who: &Who, library: &Library, movement: &str) -> Result<Model> {
        let Some(sex) = self.sex else {
            return who.model(library, movement);
        };
        let reference = Who {
            lifter: reference_of(sex.into()).to_owned(),
            set: who.set.clone(),
        };
        let mut model = reference.model(library, movement)?;
        let gain = library.person_table()?.gain_of(self.training());
        model.lifter = model.lifter.stronger(gain.exp());
        model.lifter.training = self.training();
        Ok(model)
    }

    /// Who is asked for; none where nobody is.
    pub fn asked(
        &self,
        library: &Library,
        model: &Model,
        part: Option<PeoplePart>,
    ) -> Result<Option<PeopleAsked>> {
        let Some(count) = self.people else {
            return Ok(None);
        };
        let kind = self.sex.map(|sex| (sex.into(), self.training()));
        let asked = PeopleAsked {
            count,
            seed: self.seed,
            part,
            kind,
            scatter: Scatter::between_people(&library.person_table()?, model.lifter.sex),
        };
        asked.checked()?;
        Ok(Some(asked))
    }

    /// The study with its people, where they are asked for.
    pub fn peopled(
        &self,
        study: Study,
        question: &Question<'_>,
        library: &Library,
        model: &Model,
    ) -> Result<Study> {
        let Some(asked) = self.asked(library, model, None)? else {
            return Ok(study);
        };
        let setup: Option<Setup> = study.setups.first().map(|setup| setup.asked.clone());
        let people = watched(|_| People::of(question, &asked, setup.as_ref()))?;
        Ok(study.with_people(people))
    }
}
