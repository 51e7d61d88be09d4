//! Options that several commands share: lifter, settings, samples, speed, units, format.

use super::complain::warn;
use super::number_words::share;
use crate::anatomy::Sex;
use crate::bounds::bounds;
use crate::error::{DateOrder, Error, OptionFault, Result};
use crate::library::{Library, Model, assemble};
use crate::study::{Question, asked_pace};
use crate::units::System;
use clap::{Args, ValueEnum};
use std::path::{Path, PathBuf};

/// Whose lift, with which model values.
#[derive(Debug, Args)]
pub struct Who {
    /// Lifter: a built-in name, or a file ending in .ron
    #[arg(long, value_name = "NAME|FILE", default_value = "reference-man")]
    pub lifter: String,
    /// Set a model value, such as technique.grip_width="60 cm" or muscles.biceps_long.moment_arm.elbow=+10%
    #[arg(long = "set", value_name = "PATH=VALUE")]
    pub set: Vec<String>,
}

/// How finely and how fast.
#[derive(Debug, Args)]
pub struct Sampling {
    /// Samples of the range
    #[arg(long, value_name = "N", default_value_t = 101)]
    pub samples: usize,
    /// Speed at which capacity is asked for: "0.3 m/s", or "60 deg/s" for one joint; negative lowers
    #[arg(long, value_name = "SPEED", allow_hyphen_values = true)]
    pub speed: Option<String>,
    /// Share of the greatest effort from which a place belongs to the hardest part
    #[arg(long, value_name = "SHARE", default_value_t = crate::overlay::REGION_SHARE, value_parser = share)]
    pub region_share: f64,
}

/// Units of tables and figures.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum UnitsOption {
    /// Kilograms, centimetres, newtons
    Metric,
    /// Pounds, inches, pounds-force
    Us,
}

impl From<UnitsOption> for System {
    fn from(option: UnitsOption) -> Self {
        match option {
            UnitsOption::Metric => Self::Metric,
            UnitsOption::Us => Self::Us,
        }
    }
}

/// Sex in the sense of the published tables.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum SexOption {
    /// Tables of women
    Woman,
    /// Tables of men
    Man,
}

impl From<SexOption> for Sex {
    fn from(option: SexOption) -> Self {
        match option {
            SexOption::Woman => Self::Woman,
            SexOption::Man => Self::Man,
        }
    }
}

/// What stands first in a date of numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum DatesOption {
    /// 1/8/2024 is 1 August
    DayFirst,
    /// 1/8/2024 is 8 January
    MonthFirst,
}

impl From<DatesOption> for DateOrder {
    fn from(option: DatesOption) -> Self {
        match option {
            DatesOption::DayFirst => Self::DayFirst,
            DatesOption::MonthFirst => Self::MonthFirst,
        }
    }
}

/// Form of the output.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum Format {
    /// Text for people
    Table,
    /// Comma-separated values
    Csv,
    /// JSON with stable keys
    Json,
}

/// The library: built in, with the folder of `--models` over it.
pub fn library(models: Option<&Path>) -> Result<Library> {
    match models {
        None => Ok(Library::built_in()),
        Some(folder) => Library::with_dir(PathBuf::from(folder)),
    }
}

impl Who {
    /// Lifter and movement with everything set.
    pub fn model(&self, library: &Library, movement: &str) -> Result<Model> {
        let model = assemble(library, &self.lifter, movement, &self.set)?;
        warn(&model.doubts, System::Metric);
        Ok(model)
    }
}

impl Sampling {
    /// The question for a model.
    pub fn question<'a>(&self, name: &'a str, model: &'a Model) -> Result<Question<'a>> {
        if !bounds().region_share.holds(self.region_share) {
            return Err(Error::bad(OptionFault::RegionShare(self.region_share)));
        }
        let mut question = Question::new(name, &model.movement, &model.lifter);
        question.samples = self.samples;
        question.region_share = self.region_share;
        question.changes = &model.changes;
        question.age_years = model.record.age_years;
        question.pace = asked_pace(self.speed.as_deref())?;
        Ok(question)
    }
}
