//! What is asked of a fit: who, and what was measured; refused where it cannot be.
//!
//! In: what the user tells. Out: [`PersonAsked`], checked, and the lifter's files of the person before the fit.

use super::person_velocity::TracedLift;
use crate::anatomy::{Sex, Training};
use crate::bounds::{Bound, bounds};
use crate::error::{Error, Fault, PersonFault, Result};
use crate::library::{Library, LifterFiles};
use crate::movement::Carrier;
use crate::person::longer_than_life;
use crate::person::{ToldLimb, ToldMeasure, ToldMeasurement};
use crate::session::status::{ADULT_YEARS, Level, Trainee};
use crate::units::{Length, Mass};

/// Who was measured, and what.
#[derive(Debug, Clone, PartialEq)]
pub struct PersonAsked {
    /// What the person is called.
    pub name: String,
    /// Which tables apply.
    pub sex: Sex,
    /// Standing height.
    pub height: Length,
    /// Body mass.
    pub mass: Mass,
    /// Months of steady training.
    pub months: f64,
    /// Age in years, if told.
    pub age: Option<f64>,
    /// Lifts, sets, holds, torques.
    pub measurements: Vec<ToldMeasurement>,
    /// Measured limbs.
    pub limbs: Vec<ToldLimb>,
    /// Traces that are held beside the simulated lift; what they measure stands among the measurements.
    pub traces: Vec<TracedLift>,
    /// Seed of everything that is drawn.
    pub seed: u64,
}

/// The built-in lifter that stands for a sex.
#[must_use]
pub const fn reference_of(sex: Sex) -> &'static str {
    match sex {
        Sex::Woman => "reference-woman",
        Sex::Man => "reference-man",
    }
}

/// What one meets of a kind, or what is taken at all.
pub(super) fn ends(bound: &Bound) -> (f64, f64) {
    bound.usual.unwrap_or((bound.least(), bound.most()))
}

impl PersonAsked {
    /// Refuses who is no adult of the tables, and what nobody lifts.
    ///
    /// **Fails** with everything that is wrong.
    pub fn check(&self, library: &Library) -> Result<()> {
        let mut faults: Vec<Fault> = self.wrong_person().into_iter().map(Fault::new).collect();
        if self.measurements.is_empty() {
            faults.push(Fault::new(PersonFault::NothingMeasured));
        }
        for told in &self.measurements {
            if let Some(fault) = below_the_bar(library, told)? {
                faults.push(Fault::new(fault));
            }
        }
        if faults.is_empty() {
            Ok(())
        } else {
            Err(Error::bad_input(faults))
        }
    }

    fn wrong_person(&self) -> Vec<PersonFault> {
        let mut wrong = Vec::new();
        let is_name = |c: char| c.is_alphanumeric() || " -_.".contains(c);
        if self.name.trim().is_empty() {
            wrong.push(PersonFault::NoName);
        } else if let Some(sign) = self.name.chars().find(|sign| !is_name(*sign)) {
            let name = self.name.clone();
            wrong.push(PersonFault::NameSign { name, sign });
        }
        let (letters, most) = (
            self.name.chars().count(),
            bounds().short_text.most_of_them(),
        );
        if letters > most {
            wrong.push(PersonFault::LongName { letters, most });
        }
        if let Some(age) = self.age.filter(|age| age.is_nan() || *age < ADULT_YEARS) {
            let least = ADULT_YEARS;
            wrong.push(PersonFault::NoAdult { age, least });
        }
        let oldest = bounds().trainee_age.most();
        if let Some(age) = self.age.filter(|age| *age > oldest) {
            let most = oldest;
            wrong.push(PersonFault::NoAge { age, most });
        }
        let lived = self.age.and_then(|age| longer_than_life(age, self.months));
        wrong.extend(lived);
        if !bounds().training_months.holds(self.months) {
            let months = self.months;
            wrong.push(PersonFault::NoMonths { months });
        }
        for (index, told) in self.measurements.iter().enumerate() {
            let mut before = self.measurements[..index].iter();
            let is_it = |first: &ToldMeasurement| {
                first.movement == told.movement && first.measure == told.measure
            };
            wrong.extend(before.any(is_it).then(|| {
                let written = told.written.clone();
                PersonFault::MeasuredTwice { written }
            }));
        }
        for (index, told) in self.limbs.iter().enumerate() {
            let mut before = self.limbs[..index].iter();
            wrong.extend(before.find(|first| first.limb == told.limb).map(|first| {
                PersonFault::LimbTwice {
                    limb: told.limb.name(),
                    lengths: (first.length, told.length),
                }
            }));
        }
        let (least, most) = ends(&bounds().lifter_height);
        if !(least..=most).contains(&self.height.as_m()) {
            wrong.push(PersonFault::OddHeight {
                height: self.height,
                ends: (Length::from_m(least), Length::from_m(most)),
            });
            return wrong;
        }
        let (least, most) = ends(&bounds().lifter_mass);
        let (thin, heavy) = ends(&bounds().body_mass_index);
        let area = self.height.as_m() * self.height.as_m();
        let (least, most) = (least.max(thin * area), most.min(heavy * area));
        if !(least..=most).contains(&self.mass.as_kg()) {
            wrong.push(PersonFault::OddMass {
                mass: self.mass,
                ends: (Mass::from_kg(least), Mass::from_kg(most)),
            });
        }
        wrong
    }

    /// The built-in lifter that stands for the sex.
    #[must_use]
    pub const fn reference(&self) -> &'static str {
        reference_of(self.sex)
    }

    /// The files of a person of that size with the strengths of the reference.
    ///
    /// **Fails** where a limb is out of proportion.
    pub fn files(&self, library: &Library) -> Result<LifterFiles> {
        let mut files = library.lifter_files(self.reference())?;
        let record = &mut files.record;
        record.title.clone_from(&self.name);
        record.height = self.height;
        record.body_mass = self.mass;
        record.training = self.training();
        record.training_months = Some(self.months);
        record.age_years = self.age;
        let usual = files.build()?;
        let (low, high) = ends(&bounds().segment_proportion);
        for told in &self.limbs {
            let expected = usual.segment(told.limb).length;
            let ratio = told.length.as_m() / expected.as_m();
            if !(low..=high).contains(&ratio) {
                return Err(Error::bad(PersonFault::OddLimb {
                    limb: told.limb.name(),
                    length: told.length,
                    usual: expected,
                }));
            }
            files.record.lengths.insert(told.limb, told.length);
        }
        Ok(files)
    }

    /// Training status by months.
    #[must_use]
    pub fn training(&self) -> Training {
        match Trainee::with_training_months(self.months).level() {
            Level::Novice => Training::Novice,
            Level::Intermediate => Training::Intermediate,
            Level::Advanced => Training::Advanced,
        }
    }
}

/// A load of a lift with a bar that is less than the bar.
fn below_the_bar(library: &Library, told: &ToldMeasurement) -> Result<Option<PersonFault>> {
    let ToldMeasure::Lift { load, .. } = told.measure else {
        return Ok(None);
    };
    let is_bar = library.movement(&told.movement)?.carrier()? == Carrier::Bar;
    let least = if is_bar {
        bounds().lightest_bar.least()
    } else {
        0.0
    };
    Ok((load.as_kg() < least).then(|| PersonFault::BelowTheBar {
        movement: told.movement.clone(),
        load,
        bar: Mass::from_kg(least),
    }))
}
