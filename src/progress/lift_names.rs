//! What lifts are called: one name for all the ways to write it.
//!
//! In: names of movements with the other names of each, as the library's files list them. Out: [`LiftNames`].

use crate::movement::lift_name;
use std::collections::BTreeMap;

/// Names of lifts by everything they are called.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct LiftNames {
    /// The movement by the sorted words of a name.
    movements: BTreeMap<String, String>,
}

impl LiftNames {
    /// The names of these movements. Of several movements of one name the first keeps it.
    #[must_use]
    pub fn of<'a>(called: impl Iterator<Item = (&'a str, &'a [String])>) -> Self {
        let mut movements = BTreeMap::new();
        for (movement, names) in called {
            for name in names {
                movements
                    .entry(sorted_words(name))
                    .or_insert_with(|| movement.to_owned());
            }
        }
        Self { movements }
    }

    /// The movement that a written name stands for, whatever its case, hyphens, brackets and order of words; a lift
    /// that no movement is called keeps its own name ("front-squat").
    #[must_use]
    pub fn named(&self, written: &str) -> String {
        match self.movements.get(&sorted_words(written)) {
            Some(movement) => movement.clone(),
            None => lift_name(written),
        }
    }
}

/// The words of a name in alphabetical order, each in the singular: "Squats (barbell)" and "barbell squat" are one.
fn sorted_words(name: &str) -> String {
    let mut words: Vec<String> = name
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(|word| singular(&word.to_lowercase()))
        .collect();
    words.sort();
    words.join(" ")
}

/// A word without the ending of the plural: "squats", "presses". What only looks like one loses it on both sides.
fn singular(word: &str) -> String {
    let stem = match word.strip_suffix("es") {
        Some(stem) if stem.ends_with("ss") => Some(stem),
        _ => word.strip_suffix('s').filter(|stem| !stem.ends_with('s')),
    };
    stem.unwrap_or(word).to_owned()
}
