//! One lift of one lifter with a load, and everything that follows.
//!
//! In: names of the library, texts with units ("80 kg"). Out: [`LiftAnswer`], a figure, a maximum; or a
//! [`LiftError`] that says at which step it went wrong and why.

use super::lift_error::{LiftError, Reason, told_as};
use crate::capacity::Pace;
use crate::draw::svg;
use crate::error::Error;
use crate::figures::strength_curve;
use crate::grammar::{item_from_text, setup_from_texts};
use crate::library::{Library, Model, Workbench};
use crate::plot::Look;
use crate::rep::RepOptions;
use crate::report::{CurveSummary, Sample, samples, summary};
use crate::resistance::{Item, Setup, Weight};
use crate::study::{Question, Study, maximum, study};
use crate::units::{AngularSpeed, Speed, System};
use std::path::Path;

/// A lift of a lifter, with what hangs on the bar.
///
/// ```
/// # fn main() -> Result<(), torquill::LiftError> {
/// let lift = torquill::Lift::of("bench-press", "reference-man")?.load("55 kg")?;
/// let answer = lift.answer()?;
/// assert_eq!(answer.summary.class, "ascending");
/// assert!(answer.summary.max_effort.expect("a load has a hardest place") < 1.0);
/// # Ok(())
/// # }
/// ```
#[derive(Debug, Clone)]
pub struct Lift {
    models: Library,
    bench: Workbench,
    settings: Vec<String>,
    model: Model,
    setup: Setup,
    pace: Pace,
}

/// What follows for a lift: the keys are those of the program's JSON.
#[derive(Debug, Clone, PartialEq)]
pub struct LiftAnswer {
    /// Class of the curve and, with a load, sticking point, sticking region, greatest effort, flattening.
    pub summary: CurveSummary,
    /// Capacity, demand and effort at every place of the range.
    pub samples: Vec<Sample>,
}

impl Lift {
    /// A movement and a lifter of the built-in library by name, or from files ending in `.ron`.
    ///
    /// # Errors
    /// [`LiftError::Movement`] and [`LiftError::Lifter`] for names and files that are none.
    ///
    /// ```
    /// let error = torquill::Lift::of("bench-pres", "reference-man").expect_err("no such movement");
    /// assert!(matches!(error, torquill::LiftError::Movement(_)));
    /// assert!(error.to_string().contains("did you mean"));
    /// ```
    pub fn of(movement: &str, lifter: &str) -> Result<Self, LiftError> {
        Self::from_library(Library::built_in(), movement, lifter)
    }

    /// The same with a folder of model files that adds to the built-in library or replaces parts of it.
    ///
    /// # Errors
    /// [`LiftError::Models`] if the folder cannot be read; else as [`Lift::of`].
    ///
    /// ```
    /// let error = torquill::Lift::from_models("no/such/folder", "squat", "reference-man");
    /// assert!(matches!(error, Err(torquill::LiftError::Models(_))));
    /// ```
    pub fn from_models(
        folder: impl AsRef<Path>,
        movement: &str,
        lifter: &str,
    ) -> Result<Self, LiftError> {
        let library = Library::with_dir(folder.as_ref()).map_err(told_as(LiftError::Models))?;
        Self::from_library(library, movement, lifter)
    }

    fn from_library(library: Library, movement: &str, lifter: &str) -> Result<Self, LiftError> {
        library
            .movement(movement)
            .map_err(told_as(LiftError::Movement))?;
        let bench =
            Workbench::open(&library, lifter, movement).map_err(told_as(LiftError::Lifter))?;
        let model = bench.model(&[]).map_err(told_as(LiftError::Lifter))?;
        Ok(Self {
            models: library,
            bench,
            settings: Vec::new(),
            model,
            setup: Setup::default(),
            pace: Pace::Isometric,
        })
    }

    /// Sets a value of the model by its path; a number with sign and `%` is relative. What was set before is set anew, or
    /// changed further.
    ///
    /// # Errors
    /// [`LiftError::Setting`] for a path or value that does not fit.
    ///
    /// ```
    /// # fn main() -> Result<(), torquill::LiftError> {
    /// let wide = torquill::Lift::of("bench-press", "reference-man")?.set("technique.grip_width", "80 cm")?;
    /// assert!(wide.set("technique.grip", "80 cm").is_err());
    /// # Ok(())
    /// # }
    /// ```
    pub fn set(mut self, path: &str, value: &str) -> Result<Self, LiftError> {
        self.settings.push(format!("{path}={value}"));
        self.model = self
            .bench
            .model_in_steps(&self.settings)
            .map_err(told_as(LiftError::Setting))?;
        Ok(self)
    }

    /// Puts plain weight on: bar and both sides together, one hand's for dumb-bells.
    ///
    /// # Errors
    /// [`LiftError::Load`] for a text that is no mass.
    ///
    /// ```
    /// # fn main() -> Result<(), torquill::LiftError> {
    /// let lift = torquill::Lift::of("squat", "reference-woman")?.load("135 lb")?;
    /// assert!(matches!(lift.load("135"), Err(torquill::LiftError::Load(_))));
    /// # Ok(())
    /// # }
    /// ```
    pub fn load(self, mass: &str) -> Result<Self, LiftError> {
        self.hung(&[mass], &[], &[])
    }

    /// Hangs bands: `NAME[:COUNT a side[@ANCHOR]]`.
    ///
    /// # Errors
    /// [`LiftError::Load`] for an unknown band or anchor.
    ///
    /// ```
    /// # fn main() -> Result<(), torquill::LiftError> {
    /// let lift = torquill::Lift::of("bench-press", "reference-man")?.load("60 kg")?;
    /// let banded = lift.band("loop-29mm:1")?.answer()?;
    /// assert!(banded.summary.flattening_percent > Some(0.0));
    /// # Ok(())
    /// # }
    /// ```
    pub fn band(self, band: &str) -> Result<Self, LiftError> {
        self.hung(&[], &[band], &[])
    }

    /// Hangs chains: `NAME[:COUNT a side]`.
    ///
    /// # Errors
    /// [`LiftError::Load`] for an unknown chain.
    ///
    /// ```
    /// # fn main() -> Result<(), torquill::LiftError> {
    /// let lift = torquill::Lift::of("squat", "reference-man")?.load("100 kg")?.chain("chain-10mm:1")?;
    /// assert!(lift.answer()?.summary.max_effort.is_some());
    /// # Ok(())
    /// # }
    /// ```
    pub fn chain(self, chain: &str) -> Result<Self, LiftError> {
        self.hung(&[], &[], &[chain])
    }

    fn hung(mut self, loads: &[&str], bands: &[&str], chains: &[&str]) -> Result<Self, LiftError> {
        let pieces = self.models.pieces().map_err(told_as(LiftError::Models))?;
        let more = setup_from_texts(loads, bands, chains, &pieces.stock())
            .map_err(told_as(LiftError::Load))?;
        self.setup.items.extend(more.items);
        Ok(self)
    }

    /// Adds any other implement: "cable 40 kg, from rack-high", "counterweight 20 kg", "sled 60 kg".
    ///
    /// # Errors
    /// [`LiftError::Load`] for a text that is no implement.
    ///
    /// ```
    /// # fn main() -> Result<(), torquill::LiftError> {
    /// let lift = torquill::Lift::of("pull-up", "reference-man")?.implement("counterweight 20 kg")?;
    /// assert!(lift.answer()?.summary.max_effort.is_some());
    /// # Ok(())
    /// # }
    /// ```
    pub fn implement(mut self, text: &str) -> Result<Self, LiftError> {
        let pieces = self.models.pieces().map_err(told_as(LiftError::Models))?;
        let item = item_from_text(text, &pieces.stock()).map_err(told_as(LiftError::Load))?;
        self.setup.items.push(item);
        Ok(self)
    }

    /// Asks at a speed instead of held still: "0.3 m/s", or "60 deg/s" for one joint; negative lowers.
    ///
    /// # Errors
    /// [`LiftError::Speed`] for a text that is no speed.
    ///
    /// ```
    /// # fn main() -> Result<(), torquill::LiftError> {
    /// let still = torquill::Lift::of("squat", "reference-man")?;
    /// let moving = still.clone().speed("0.3 m/s")?;
    /// let start = |lift: &torquill::Lift| Ok(lift.answer()?.samples[0].capacity_n);
    /// assert!(start(&moving)? < start(&still)?);
    /// # Ok::<(), torquill::LiftError>(())
    /// # }
    /// ```
    pub fn speed(mut self, speed: &str) -> Result<Self, LiftError> {
        self.pace = match Speed::from_text(speed) {
            Ok(linear) => Pace::Linear(linear.as_m_s()),
            Err(fault) => match AngularSpeed::from_text(speed) {
                Ok(angular) => Pace::Angular(angular.as_rad_s()),
                Err(_) => return Err(LiftError::Speed(Reason(Error::bad(fault)))),
            },
        };
        Ok(self)
    }

    /// Capacity over the range and, with a load, demand, effort, sticking point and region.
    ///
    /// # Errors
    /// [`LiftError::Load`] for a load that this movement cannot take, [`LiftError::NoAnswer`] where limbs
    /// do not close the path or nothing can be held.
    ///
    /// ```
    /// # fn main() -> Result<(), torquill::LiftError> {
    /// let answer = torquill::Lift::of("bench-press", "reference-man")?.load("55 kg")?.answer()?;
    /// let hardest = answer.samples.iter().filter_map(|sample| sample.effort).fold(0.0, f64::max);
    /// assert!((hardest - answer.summary.max_effort.expect("loaded")).abs() < 0.01);
    /// # Ok(())
    /// # }
    /// ```
    pub fn answer(&self) -> Result<LiftAnswer, LiftError> {
        let study = self.study()?;
        let setup = study.setups.first();
        Ok(LiftAnswer {
            summary: summary(&study, setup),
            samples: samples(&study, setup, false),
        })
    }

    /// The chart of the lift as SVG, letters as text in the font Inter.
    ///
    /// # Errors
    /// As [`Lift::answer`], and [`LiftError::Drawing`] where the chart cannot be drawn.
    ///
    /// ```
    /// # fn main() -> Result<(), torquill::LiftError> {
    /// let picture = torquill::Lift::of("biceps-curl", "reference-man")?.load("15 kg")?.svg()?;
    /// assert!(picture.starts_with("<svg"));
    /// # Ok(())
    /// # }
    /// ```
    pub fn svg(&self) -> Result<String, LiftError> {
        let study = self.study()?;
        let told = study.told(System::Metric);
        strength_curve(told, &told.strength_words(), Look::default())
            .and_then(|scene| svg(&scene))
            .map_err(told_as(LiftError::Drawing))
    }

    /// The largest plain load that one repetition reaches lockout with, kg, beside everything else that
    /// hangs on the bar, to 0.01 kg, by the protocol of the movement.
    ///
    /// # Errors
    /// [`LiftError::NoAnswer`] where not even the lightest load is lifted, and as [`Lift::answer`].
    ///
    /// ```
    /// # fn main() -> Result<(), torquill::LiftError> {
    /// let kg = torquill::Lift::of("bench-press", "reference-man")?.one_rep_max_kg()?;
    /// // More than an empty bar, less than twice the lifter's own 73 kg.
    /// assert!(kg > 20.0 && kg < 146.0);
    /// # Ok(())
    /// # }
    /// ```
    pub fn one_rep_max_kg(&self) -> Result<f64, LiftError> {
        let mut hung = self.setup.clone();
        hung.items
            .retain(|item| !matches!(item, Item::Weight(Weight::Load(_))));
        let usual = RepOptions::usual_for(&self.model.movement);
        let found = maximum(&self.question(), &hung, &usual);
        let (one_rm, _) = found.map_err(told_as(LiftError::Load))?;
        Ok(one_rm.load.as_kg())
    }

    fn question(&self) -> Question<'_> {
        let model = &self.model;
        let mut question = Question::new(&model.movement_name, &model.movement, &model.lifter);
        question.pace = self.pace;
        question
    }

    fn study(&self) -> Result<Study, LiftError> {
        let setups = match self.setup.items.is_empty() {
            true => Vec::new(),
            false => vec![self.setup.clone()],
        };
        study(&self.question(), &setups).map_err(told_as(LiftError::Load))
    }
}
