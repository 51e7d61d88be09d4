//! Invented people of a curve as plain numbers.
//!
//! In: [`People`]. Out: an object of the JSON of a curve.

use crate::study::People;
use serde::Serialize;

/// How many people there are, of which classes their curves are, where each is hardest.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct PeopleRow {
    /// How many were invented.
    pub lifters: usize,
    /// How many of them can do the lift.
    pub able: usize,
    /// Seed of the invention.
    pub seed: u64,
    /// The classes, the most frequent first.
    pub classes: Vec<ClassShare>,
    /// One in ten people finds it hardest before this place.
    pub hardest_low_range: Option<f64>,
    /// Half of the people do before this one.
    pub hardest_middle_range: Option<f64>,
    /// One in ten people finds it hardest behind this place.
    pub hardest_high_range: Option<f64>,
}

/// A class and the share of people whose curve is of it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ClassShare {
    /// The class.
    pub class: &'static str,
    /// The share.
    pub share: f64,
}

/// The people of a curve.
#[must_use]
pub fn people_row(people: &People) -> PeopleRow {
    let hardest = people.hardest_between(0.8);
    let place = |index: usize| hardest.map(|places| places[index]);
    let classes = people.classes.iter().map(|(shape, count)| ClassShare {
        class: shape.word(),
        share: *count as f64 / people.count as f64,
    });
    PeopleRow {
        lifters: people.asked.count,
        able: people.count,
        seed: people.asked.seed,
        classes: classes.collect(),
        hardest_low_range: place(0),
        hardest_middle_range: place(1),
        hardest_high_range: place(2),
    }
}
