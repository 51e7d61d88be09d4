//! Headings and cells of a team's file.
//!
//! In: the text of a heading or a cell. Out: what it holds, or what is wrong with it.

use super::estimate::MOST_REPETITIONS;
use super::lift_names::LiftNames;
use super::log_header::name_and_unit;
use super::log_row::{whole, with_unit};
use crate::anatomy::Sex;
use crate::bounds::{Bound, bounds};
use crate::error::{LogRowFault, TeamColumn, TeamRowFault};
use crate::units::{Length, Mass, QuantityFault, QuantityKind};

type ReadCell<T> = Result<T, TeamRowFault>;

/// What is told of a person's strength in a lift.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ToldStrength {
    /// The 1RM.
    OneRm(Mass),
    /// A set to failure, or nearly so.
    Set {
        /// Its load.
        load: Mass,
        /// Its repetitions.
        repetitions: u32,
        /// Repetitions that were left; 0 where none are told.
        reserve: f64,
    },
    /// Nothing: it is to be found.
    Untested,
}

/// What the cells under a heading hold, and their unit if the heading tells one.
pub(super) enum TeamCells {
    /// What is told of the person.
    Of(TeamColumn, Option<&'static str>),
    /// Strength in a lift.
    Lift(String, Option<&'static str>),
    /// Something else.
    Other,
}

/// Other names of a column.
const fn also(column: TeamColumn) -> &'static [&'static str] {
    match column {
        TeamColumn::Name => &["athlete", "lifter", "player", "person"],
        TeamColumn::Sex => &["gender"],
        TeamColumn::Mass => &["weight", "bodyweight", "bodymass"],
        TeamColumn::Height => &["stature"],
        TeamColumn::TrainingMonths => &["months", "trainingmonths"],
        TeamColumn::Age => &["years"],
        TeamColumn::Injured => &["injury", "injuries", "hurt", "pain", "inpain"],
        TeamColumn::Unwell => &["ill", "illness", "sick", "sore", "unfit"],
    }
}

impl TeamCells {
    /// What a heading says: "Name", "Mass (kg)", "Back squat 1RM (kg)", "bench-press_lb".
    pub fn of(heading: &str, names: &LiftNames, movements: &[String]) -> Self {
        let (name, unit) = name_and_unit(heading);
        let joined = name.replace(' ', "");
        let is_called = |column: &TeamColumn| {
            column.name().replace('_', "") == joined || also(*column).contains(&joined.as_str())
        };
        if let Some(column) = TeamColumn::ALL.into_iter().find(is_called) {
            return Self::Of(column, unit);
        }
        let lift = name.trim_end_matches("1rm").trim_end_matches("max").trim();
        let movement = names.named(lift);
        if movements.contains(&movement) {
            Self::Lift(movement, unit)
        } else {
            Self::Other
        }
    }
}

pub(super) fn sex(text: &str) -> ReadCell<Sex> {
    match text.to_lowercase().as_str() {
        "woman" | "female" | "w" | "f" => Ok(Sex::Woman),
        "man" | "male" | "m" => Ok(Sex::Man),
        _ => Err(TeamRowFault::NoSex {
            written: text.to_owned(),
        }),
    }
}

/// The text with its unit, decimals with a point.
fn quantity(text: &str, unit: Option<&str>) -> ReadCell<String> {
    with_unit(text, unit).map_err(|fault| match fault {
        LogRowFault::Quantity(fault) => TeamRowFault::Quantity(fault),
        _ => TeamRowFault::Quantity(QuantityFault::NoNumber {
            kind: QuantityKind::Mass,
            text: text.to_owned(),
        }),
    })
}

/// What one meets of a kind, or what is taken at all.
fn ends(bound: &Bound) -> (f64, f64) {
    bound.usual.unwrap_or((bound.least(), bound.most()))
}

pub(super) fn height(text: &str, unit: Option<&str>) -> ReadCell<Length> {
    let height = Length::from_text(&quantity(text, unit)?).map_err(TeamRowFault::Quantity)?;
    let (least, most) = ends(&bounds().lifter_height);
    if (least..=most).contains(&height.as_m()) {
        return Ok(height);
    }
    Err(TeamRowFault::OddHeight {
        height,
        ends: (Length::from_m(least), Length::from_m(most)),
    })
}

/// A body mass that adults have, of this height where that is known.
pub(super) fn mass(text: &str, unit: Option<&str>, height: Option<Length>) -> ReadCell<Mass> {
    let mass = Mass::from_text(&quantity(text, unit)?).map_err(TeamRowFault::Quantity)?;
    let (mut least, mut most) = ends(&bounds().lifter_mass);
    if let Some(height) = height {
        let area = height.as_m() * height.as_m();
        let (thin, heavy) = ends(&bounds().body_mass_index);
        least = least.max(thin * area);
        most = most.min(heavy * area);
    }
    if (least..=most).contains(&mass.as_kg()) {
        return Ok(mass);
    }
    Err(TeamRowFault::OddMass {
        mass,
        ends: (Mass::from_kg(least), Mass::from_kg(most)),
    })
}

/// Most months of training: eighty years.
const MOST_MONTHS: f64 = 960.0;

pub(super) fn number(column: TeamColumn, text: &str) -> ReadCell<f64> {
    let value = text.replacen(',', ".", 1).parse::<f64>().ok();
    let is_sound = |value: &f64| match column {
        TeamColumn::Age => bounds().trainee_age.holds(*value),
        _ => (0.0..=MOST_MONTHS).contains(value),
    };
    value
        .filter(is_sound)
        .ok_or_else(|| TeamRowFault::NoNumber {
            column,
            written: text.to_owned(),
        })
}

/// Words for yes in a column of yes and no.
const YES: [&str; 7] = ["yes", "y", "true", "1", "x", "✓", "✔"];

/// Words for no; an empty cell is one too.
const NO: [&str; 8] = ["", "no", "n", "false", "0", "-", "–", "none"];

/// "yes" or "no"; nothing is no.
pub(super) fn yes_or_no(column: TeamColumn, text: &str) -> ReadCell<bool> {
    let word = text.to_lowercase();
    match (YES.contains(&word.as_str()), NO.contains(&word.as_str())) {
        (true, _) => Ok(true),
        (_, true) => Ok(false),
        _ => Err(TeamRowFault::NoYesNo {
            column,
            written: text.to_owned(),
        }),
    }
}

/// "140 kg", "140" under a heading with a unit, "100 kg x 5", "95 kg x 3 @ rir 1", or nothing.
pub(super) fn strength(movement: &str, text: &str, unit: Option<&str>) -> ReadCell<ToldStrength> {
    if text.is_empty() || ["-", "–", "?"].contains(&text) {
        return Ok(ToldStrength::Untested);
    }
    let none = || TeamRowFault::NoStrength {
        movement: movement.to_owned(),
        written: text.to_owned(),
    };
    let lower = text.to_lowercase();
    let (set, reserve) = match lower.split_once('@') {
        Some((set, left)) => (set.trim(), Some(reserve(left).ok_or_else(none)?)),
        None => (lower.as_str(), None),
    };
    let (load, repetitions) = match set.split_once(['x', '×']) {
        Some((load, repetitions)) => (load, Some(whole(repetitions).ok_or_else(none)?)),
        None => (set, None),
    };
    let below = load.trim().strip_prefix(['-', '−']);
    if below.is_some_and(|help| {
        quantity(help.trim(), unit).is_ok_and(|help| Mass::from_text(&help).is_ok())
    }) {
        return Err(TeamRowFault::WithHelp {
            movement: movement.to_owned(),
            written: text.to_owned(),
        });
    }
    let load = Mass::from_text(&quantity(load.trim(), unit)?).map_err(|fault| match fault {
        QuantityFault::NoNumber { .. } => none(),
        other => TeamRowFault::Quantity(other),
    })?;
    let most_kg = bounds().log_load.most();
    // The body alone is a maximum where it is the load; elsewhere the plan refuses.
    if load < Mass::ZERO || load.as_kg() > most_kg {
        return Err(none());
    }
    let most = MOST_REPETITIONS as u32;
    let left = reserve.unwrap_or(0.0);
    match repetitions {
        // Repetitions are left of a set only.
        None if reserve.is_some() => Err(none()),
        None => Ok(ToldStrength::OneRm(load)),
        Some(1) if reserve.is_none_or(|left| left == 0.0) => Ok(ToldStrength::OneRm(load)),
        Some(repetitions)
            if repetitions > 0 && f64::from(repetitions) + left <= MOST_REPETITIONS =>
        {
            Ok(ToldStrength::Set {
                load,
                repetitions,
                reserve: left,
            })
        }
        Some(0) => Err(none()),
        Some(repetitions) => Err(TeamRowFault::TooManyRepetitions {
            movement: movement.to_owned(),
            repetitions,
            most,
        }),
    }
}

/// "rir 1" or "1 rir": repetitions that were left.
fn reserve(text: &str) -> Option<f64> {
    let number = text.contains("rir").then(|| text.replace("rir", " "))?;
    let left = number.trim().replacen(',', ".", 1).parse::<f64>().ok();
    left.filter(|left| bounds().log_reserve.holds(*left))
}
