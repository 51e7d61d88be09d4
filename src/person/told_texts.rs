//! Reads what is told of a person: `squat=95 kg`, `deadlift=110 kg x 2 @ rir 1`, `bench-press@10cm=700 N`.
//!
//! In: texts. Out: [`ToldMeasurement`], [`ToldLimb`], or what is wrong with the text.

use super::told_measure::{ToldLimb, ToldMeasure, ToldMeasurement, ToldTrace};
use crate::anatomy::SegmentName;
use crate::bounds::bounds;
use crate::error::{Error, PersonFault, PersonOption, Result};
use crate::progress::estimate::MOST_REPETITIONS;
use crate::progress::lift_names::LiftNames;
use crate::units::{Angle, Force, Length, Mass, Torque};

/// Reads measurements of the movements that the library knows.
#[derive(Debug, Clone, Copy)]
pub struct MeasureReader<'a> {
    /// What lifts are called.
    pub names: &'a LiftNames,
    /// The movements there are.
    pub movements: &'a [String],
}

impl MeasureReader<'_> {
    /// Reads `LIFT=LOAD`, `LIFT=LOAD x N` or `LIFT=LOAD x N @ rir R`.
    ///
    /// **Fails** on any other text, on a reserve without repetitions, and on more repetitions than tell a maximum.
    pub fn lift(&self, written: &str) -> Result<ToldMeasurement> {
        let (name, value) = halves(PersonOption::Lift, written)?;
        let movement = self.movement(name)?;
        let lower = value.to_lowercase();
        let (set, reserve) = match lower.split_once('@') {
            Some((set, reserve)) => (set, Some(reserve_of(written, reserve)?)),
            None => (lower.as_str(), None),
        };
        let (load, repetitions) = match set.split_once(['x', '×']) {
            Some((load, count)) => (load, Some(repetitions_of(written, count)?)),
            None => (set, None),
        };
        if reserve.is_some() && repetitions.is_none() {
            return Err(Error::bad(PersonFault::ReserveAlone {
                written: written.to_owned(),
            }));
        }
        let load = Mass::from_text(load.trim()).map_err(Error::bad)?;
        if load.as_kg() > bounds().log_load.most() {
            return Err(Error::bad(PersonFault::NoLoad { movement, load }));
        }
        let measure = ToldMeasure::Lift {
            load,
            repetitions,
            reserve,
        };
        if measure.to_failure() > MOST_REPETITIONS {
            return Err(Error::bad(PersonFault::TooManyRepetitions {
                movement,
                to_failure: measure.to_failure(),
                most: MOST_REPETITIONS,
            }));
        }
        Ok(self.told(written, movement, measure))
    }

    /// Reads `LIFT@HEIGHT=FORCE`, for one hand `LIFT@HEIGHT=FORCE one hand`.
    ///
    /// **Fails** on any other text.
    pub fn hold(&self, written: &str) -> Result<ToldMeasurement> {
        let (place, value) = halves(PersonOption::Hold, written)?;
        let (name, height) = place_of(PersonOption::Hold, written, place)?;
        let movement = self.movement(name)?;
        let (force, hands) = without_last_words(value, ["one hand", "both hands"]);
        let height = Length::from_text(height).map_err(Error::bad)?;
        let force = Force::from_text(force).map_err(Error::bad)?;
        if force <= Force::ZERO {
            return Err(Error::bad(PersonFault::NothingHeld {
                written: written.to_owned(),
            }));
        }
        let measure = ToldMeasure::Hold {
            height,
            force,
            one_hand: hands == Some(0),
        };
        Ok(self.told(written, movement, measure))
    }

    /// Reads `LIFT@ANGLE=TORQUE`, with the weight of the limb in it `LIFT@ANGLE=TORQUE with limb`.
    ///
    /// **Fails** on any other text.
    pub fn dynamometer(&self, written: &str) -> Result<ToldMeasurement> {
        let (place, value) = halves(PersonOption::Dynamometer, written)?;
        let (name, angle) = place_of(PersonOption::Dynamometer, written, place)?;
        let movement = self.movement(name)?;
        let (torque, limb) = without_last_words(value, ["with limb", "without limb"]);
        let angle = Angle::from_text(angle).map_err(Error::bad)?;
        // "180 N m" is one unit in two words.
        let joined = torque.replace("N m", "N·m");
        let torque = Torque::from_text(&joined).map_err(Error::bad)?;
        if torque <= Torque::ZERO {
            return Err(Error::bad(PersonFault::NothingHeld {
                written: written.to_owned(),
            }));
        }
        let measure = ToldMeasure::Dynamometer {
            angle,
            torque,
            with_limb: limb == Some(0),
        };
        Ok(self.told(written, movement, measure))
    }

    /// Reads `LIFT=LOAD @ FILE`.
    ///
    /// **Fails** on any other text.
    pub fn trace(&self, written: &str) -> Result<ToldTrace> {
        let (name, value) = halves(PersonOption::Trace, written)?;
        let (load, file) = place_of(PersonOption::Trace, written, value)?;
        let movement = self.movement(name)?;
        let load = Mass::from_text(load).map_err(Error::bad)?;
        if load <= Mass::ZERO || load.as_kg() > bounds().log_load.most() {
            return Err(Error::bad(PersonFault::NoLoad { movement, load }));
        }
        Ok(ToldTrace {
            movement,
            load,
            file: file.to_owned(),
        })
    }

    fn told(&self, written: &str, movement: String, measure: ToldMeasure) -> ToldMeasurement {
        ToldMeasurement {
            written: written.to_owned(),
            movement,
            measure,
        }
    }

    /// The movement that a name means.
    fn movement(&self, name: &str) -> Result<String> {
        let movement = self.names.named(name.trim());
        if self.movements.contains(&movement) {
            return Ok(movement);
        }
        Err(Error::bad(PersonFault::NoSuchLift {
            written: name.trim().to_owned(),
            known: self.movements.to_vec(),
        }))
    }
}

/// Reads `LIMB=LENGTH`.
///
/// **Fails** for an unknown limb, and on any other text.
pub fn read_limb(written: &str) -> Result<ToldLimb> {
    let (name, length) = halves(PersonOption::Limb, written)?;
    let wanted = name.trim().to_lowercase().replace([' ', '-'], "_");
    let known = SegmentName::ALL
        .into_iter()
        .find(|limb| limb.name() == wanted);
    let Some(limb) = known else {
        return Err(Error::bad(PersonFault::NoSuchLimb {
            written: name.trim().to_owned(),
            known: SegmentName::ALL.map(SegmentName::name).to_vec(),
        }));
    };
    Ok(ToldLimb {
        limb,
        length: Length::from_text(length).map_err(Error::bad)?,
    })
}

/// What stands before and behind the sign of equality.
fn halves(option: PersonOption, written: &str) -> Result<(&str, &str)> {
    written
        .split_once('=')
        .map(|(name, value)| (name.trim(), value.trim()))
        .filter(|(name, value)| !name.is_empty() && !value.is_empty())
        .ok_or_else(|| unreadable(option, written))
}

fn place_of<'a>(option: PersonOption, written: &str, place: &'a str) -> Result<(&'a str, &'a str)> {
    place
        .split_once('@')
        .map(|(name, at)| (name.trim(), at.trim()))
        .filter(|(name, at)| !name.is_empty() && !at.is_empty())
        .ok_or_else(|| unreadable(option, written))
}

fn unreadable(option: PersonOption, written: &str) -> Error {
    Error::bad(PersonFault::Unreadable {
        option,
        written: written.to_owned(),
    })
}

/// The text without one of these endings, and which it was.
fn without_last_words<'a>(text: &'a str, endings: [&str; 2]) -> (&'a str, Option<usize>) {
    let found = endings.iter().enumerate().find_map(|(index, ending)| {
        let rest = text.strip_suffix(ending)?;
        Some((rest.trim(), Some(index)))
    });
    found.unwrap_or((text, None))
}

fn repetitions_of(written: &str, count: &str) -> Result<u32> {
    let count: Option<u32> = count.trim().parse().ok();
    count
        .filter(|count| *count > 0)
        .ok_or_else(|| unreadable(PersonOption::Lift, written))
}

/// "rir 1" or "1 rir": repetitions felt to be left.
fn reserve_of(written: &str, text: &str) -> Result<f64> {
    let number = text.replace("rir", " ");
    let reserve: Option<f64> = number.trim().parse().ok();
    reserve
        .filter(|reserve| text.contains("rir") && bounds().log_reserve.holds(*reserve))
        .ok_or_else(|| unreadable(PersonOption::Lift, written))
}
