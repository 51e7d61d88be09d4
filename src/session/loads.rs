//! What a bar, a stack or a rack of dumbbells can really be loaded to, and the plates in words.
//!
//! In: the bar and the plates of the gym (or the steps of a machine) and a wanted load. Out: a
//! [`Loaded`], never heavier than what was asked for, with the plates of each side; and a ladder of
//! warm-up sets. Plates of kilograms and of pounds may be mixed.

use super::plates::{Pick, SideSums, side_mass_kg};
use crate::error::{Error, Result};
use crate::units::{Mass, System, rounded};

/// A size of plate and how many pairs of it there are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlatePairs {
    /// Mass of one plate.
    pub mass: Mass,
    /// Pairs owned: one plate of a pair goes on each side.
    pub pairs: u32,
    /// The unit stamped on it.
    pub marked: System,
}

/// What the load is made of.
#[derive(Debug, Clone, PartialEq)]
pub enum Loading {
    /// A bar with plates on both sides.
    Bar {
        /// Mass of the empty bar.
        bar: Mass,
        /// Mass of both collars together.
        collars: Mass,
        /// The plates.
        plates: Vec<PlatePairs>,
        /// Loads go up in steps of at least this from the empty bar; `None` for any the plates allow.
        smallest_step: Option<Mass>,
    },
    /// A machine: from the lightest in equal steps to the heaviest.
    Stack {
        /// With the pin in the first plate.
        lightest: Mass,
        /// From pin to pin.
        step: Mass,
        /// With the pin in the last plate.
        heaviest: Mass,
    },
    /// Single loads, such as dumbbells, one or a pair, as the lift counts them.
    Pieces(Vec<Mass>),
}

/// A load that can be set up, and how.
#[derive(Debug, Clone, PartialEq)]
pub struct Loaded {
    /// The whole of it, bar and collars included.
    pub total: Mass,
    /// Plates of one side, heaviest first, with their number; empty for a machine or a dumbbell.
    pub a_side: Vec<(PlatePairs, u32)>,
    /// The empty bar, for a bar.
    pub bar: Option<Mass>,
}

impl Loaded {
    /// A load without plates: a machine or a dumbbell.
    const fn piece(total: Mass) -> Self {
        Self {
            total,
            a_side: Vec::new(),
            bar: None,
        }
    }

    /// "20 kg bar + a side: 25 + 25 + 10 kg"; each plate in the unit stamped on it.
    #[must_use]
    pub fn in_words(&self, system: System) -> String {
        let Some(bar) = self.bar else {
            return system.mass(self.total);
        };
        let bar_words = format!("{} bar", system.mass(bar));
        if self.a_side.is_empty() {
            return format!("{bar_words}, empty");
        }
        format!("{bar_words} + a side: {}", plates_in_words(&self.a_side))
    }
}

fn plates_in_words(a_side: &[(PlatePairs, u32)]) -> String {
    let one_unit = a_side
        .iter()
        .all(|(plate, _)| plate.marked == a_side[0].0.marked);
    let each: Vec<String> = a_side
        .iter()
        .flat_map(|(plate, count)| std::iter::repeat_n(plate, *count as usize))
        .map(|plate| {
            if one_unit {
                bare(plate)
            } else {
                stamped(plate)
            }
        })
        .collect();
    let unit = if one_unit {
        format!(" {}", unit_of(a_side[0].0.marked))
    } else {
        String::new()
    };
    format!("{}{unit}", each.join(" + "))
}

fn unit_of(system: System) -> &'static str {
    match system {
        System::Metric => "kg",
        System::Us => "lb",
    }
}

fn bare(plate: &PlatePairs) -> String {
    match plate.marked {
        System::Metric => rounded(plate.mass.as_kg(), 2),
        System::Us => rounded(plate.mass.as_lb(), 2),
    }
}

fn stamped(plate: &PlatePairs) -> String {
    format!("{} {}", bare(plate), unit_of(plate.marked))
}

/// Slack for comparing sums of masses: they are exact to far less than a milligram.
pub(super) const SAME_KG: f64 = 1e-6;

/// Heaviest load that is planned at all; far above any lift (assumed, as a guard).
const HEAVIEST_KG: f64 = 1500.0;

impl Loading {
    /// A 20 kg bar with the usual plates (common practice): 25, 20, 15, 10, 5, 2.5 and 1.25 kg.
    #[must_use]
    pub fn usual_metric() -> Self {
        let plate = |kg: f64, pairs: u32| PlatePairs {
            mass: Mass::from_kg(kg),
            pairs,
            marked: System::Metric,
        };
        Self::Bar {
            bar: Mass::from_kg(20.0),
            collars: Mass::ZERO,
            plates: vec![
                plate(25.0, 4),
                plate(20.0, 2),
                plate(15.0, 1),
                plate(10.0, 2),
                plate(5.0, 1),
                plate(2.5, 1),
                plate(1.25, 1),
            ],
            smallest_step: None,
        }
    }

    /// A 45 lb bar with the usual plates (common practice): 45, 35, 25, 10, 5 and 2.5 lb.
    #[must_use]
    pub fn usual_us() -> Self {
        let plate = |lb: f64, pairs: u32| PlatePairs {
            mass: Mass::from_lb(lb),
            pairs,
            marked: System::Us,
        };
        Self::Bar {
            bar: Mass::from_lb(45.0),
            collars: Mass::ZERO,
            plates: vec![
                plate(45.0, 5),
                plate(35.0, 1),
                plate(25.0, 1),
                plate(10.0, 2),
                plate(5.0, 1),
                plate(2.5, 1),
            ],
            smallest_step: None,
        }
    }

    /// The heaviest load that can be set up without exceeding `target`; the fewest plates for it.
    ///
    /// **Fails** when even the lightest is heavier, when the target is no load at all, or when the
    /// description of the gym makes no sense (a bar or a step of 0 kg).
    pub fn at_most(&self, target: Mass) -> Result<Loaded> {
        let target_kg = checked_target(target)?;
        self.check()?;
        let found = match self {
            Self::Bar { .. } => self.bar_load(0.0, target_kg, Pick::Heaviest),
            Self::Stack {
                lightest,
                step,
                heaviest,
            } => {
                let top_kg = target_kg.min(heaviest.as_kg());
                let steps = ((top_kg - lightest.as_kg() + SAME_KG) / step.as_kg()).floor();
                (steps >= 0.0).then(|| Loaded::piece(*lightest + *step * steps))
            }
            Self::Pieces(pieces) => pieces
                .iter()
                .filter(|piece| piece.as_kg() <= target_kg + SAME_KG)
                .max_by(|a, b| a.as_kg().total_cmp(&b.as_kg()))
                .map(|piece| Loaded::piece(*piece)),
        };
        found.ok_or_else(|| {
            Error::no_answer(format!(
                "{} kg cannot be loaded: the lightest is {} kg",
                rounded(target_kg, 2),
                rounded(self.lightest().as_kg(), 2)
            ))
            .hint("use a lighter bar, dumbbells or a machine")
        })
    }

    /// The lightest load that can be set up from `target` up to `most`, with the fewest plates.
    #[must_use]
    pub fn at_least(&self, target: Mass, most: Mass) -> Option<Loaded> {
        let target_kg = checked_target(target).ok()?;
        self.check().ok()?;
        let found = match self {
            Self::Bar { .. } => {
                self.bar_load(target_kg, checked_target(most).ok()?, Pick::Lightest)
            }
            Self::Stack {
                lightest,
                step,
                heaviest,
            } => {
                let steps = ((target_kg - lightest.as_kg() - SAME_KG) / step.as_kg())
                    .ceil()
                    .max(0.0);
                let total = *lightest + *step * steps;
                (total.as_kg() <= heaviest.as_kg() + SAME_KG).then(|| Loaded::piece(total))
            }
            Self::Pieces(pieces) => pieces
                .iter()
                .filter(|piece| piece.as_kg() >= target_kg - SAME_KG)
                .min_by(|a, b| a.as_kg().total_cmp(&b.as_kg()))
                .map(|piece| Loaded::piece(*piece)),
        };
        found.filter(|load| load.total.as_kg() <= most.as_kg() + SAME_KG)
    }

    /// A load between `least` and `most` that is quick to set up: the fewest plates, the heaviest of those.
    #[must_use]
    pub fn simplest(&self, least: Mass, most: Mass) -> Option<Loaded> {
        self.check().ok()?;
        match self {
            Self::Bar { .. } => self.bar_load(
                least.as_kg(),
                checked_target(most).ok()?,
                Pick::FewestPlates,
            ),
            Self::Stack { .. } | Self::Pieces(_) => self
                .at_most(most)
                .ok()
                .filter(|load| load.total.as_kg() >= least.as_kg() - SAME_KG),
        }
    }

    /// The load nearest to `target`, the lighter of two equally near, never above `most`.
    pub fn nearest(&self, target: Mass, most: Mass) -> Result<Loaded> {
        let below = self.at_most(Mass::from_kg(target.as_kg().min(most.as_kg())))?;
        let above = self.at_least(target, most);
        Ok(match above {
            Some(above)
                if above.total.as_kg() - target.as_kg()
                    < target.as_kg() - below.total.as_kg() - SAME_KG =>
            {
                above
            }
            _ => below,
        })
    }

    /// The lightest load there is: the empty bar with collars, the first pin, the smallest dumbbell.
    #[must_use]
    pub fn lightest(&self) -> Mass {
        match self {
            Self::Bar { bar, collars, .. } => *bar + *collars,
            Self::Stack { lightest, .. } => *lightest,
            Self::Pieces(pieces) => Mass::from_kg(
                pieces
                    .iter()
                    .map(|piece| piece.as_kg())
                    .fold(f64::INFINITY, f64::min),
            ),
        }
    }

    /// The heaviest or lightest load of a bar between two totals; `None` for anything but a bar.
    fn bar_load(&self, least_kg: f64, most_kg: f64, pick: Pick) -> Option<Loaded> {
        let Self::Bar {
            bar,
            collars,
            plates,
            smallest_step,
        } = self
        else {
            return None;
        };
        let base_kg = bar.as_kg() + collars.as_kg();
        if base_kg > most_kg + SAME_KG {
            return None;
        }
        let mut sizes: Vec<PlatePairs> = plates
            .iter()
            .copied()
            .filter(|plate| plate.pairs > 0)
            .collect();
        sizes.sort_by(|a, b| b.mass.as_kg().total_cmp(&a.mass.as_kg()));
        let fits = |side_kg: f64| {
            let total_kg = base_kg + 2.0 * side_kg;
            let on_step = smallest_step.is_none_or(|step| {
                let steps = 2.0 * side_kg / step.as_kg();
                (steps - steps.round()).abs() < SAME_KG
            });
            on_step && total_kg >= least_kg - SAME_KG && total_kg <= most_kg + SAME_KG
        };
        let counts = SideSums::new(&sizes, (most_kg - base_kg) / 2.0).find(pick, &fits)?;
        let total = Mass::from_kg(base_kg + 2.0 * side_mass_kg(&sizes, &counts));
        let used = sizes
            .iter()
            .copied()
            .zip(counts)
            .filter(|(_, count)| *count > 0);
        Some(Loaded {
            total,
            a_side: used.collect(),
            bar: Some(*bar),
        })
    }

    fn check(&self) -> Result<()> {
        let positive = |mass: &Mass| mass.as_kg().is_finite() && mass.as_kg() > 0.0;
        match self {
            Self::Bar {
                bar,
                plates,
                smallest_step,
                ..
            } => {
                if !(positive(bar) && plates.iter().all(|plate| positive(&plate.mass))) {
                    return Err(Error::bad("a bar or a plate of 0 kg cannot be loaded"));
                }
                if smallest_step.as_ref().is_some_and(|step| !positive(step)) {
                    return Err(Error::bad(
                        "the smallest step between two loads must be more than 0 kg",
                    ));
                }
            }
            Self::Stack { step, .. } if !positive(step) => {
                return Err(Error::bad("the step of a machine must be more than 0 kg"));
            }
            Self::Pieces(pieces) if pieces.is_empty() => {
                return Err(Error::bad("no dumbbells are listed"));
            }
            Self::Stack { .. } | Self::Pieces(_) => {}
        }
        Ok(())
    }
}

fn checked_target(target: Mass) -> Result<f64> {
    let target_kg = target.as_kg();
    if !(target_kg.is_finite() && target_kg > 0.0) {
        return Err(Error::bad(format!("{target_kg} kg is no load to lift")));
    }
    if target_kg > HEAVIEST_KG {
        return Err(Error::bad(format!(
            "{target_kg} kg is more than any lift is planned for ({HEAVIEST_KG} kg)"
        )));
    }
    Ok(target_kg)
}
