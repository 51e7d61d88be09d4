//! How strongly people differ in body and strength.
//!
//! In: the table of scatter. Out: [`Scatter`], deviations that lifters are invented with.

use super::person_table::PersonTable;
use crate::anatomy::Sex;
use std::collections::BTreeMap;

/// How strongly invented lifters differ: standard deviations of logarithms.
#[derive(Debug, Clone, PartialEq)]
pub struct Scatter {
    /// Standing height.
    pub height: f64,
    /// The power of height with which body mass goes.
    pub mass_by_height: f64,
    /// Body mass of lifters of one height.
    pub mass: f64,
    /// Length of one segment at one height.
    pub segment: f64,
    /// Strength of all muscles together, beyond what body mass explains.
    pub strength: f64,
    /// Strength of one muscle group beside the others, where it has a number of its own, and of any other one.
    pub groups: (BTreeMap<String, f64>, f64),
    /// Strength in the lift beside all others.
    pub lift: f64,
}

impl Scatter {
    /// How people alike in sex and training differ from one another, the model's own error left out.
    ///
    /// ```text
    /// mass ~ height^(r σ_m/σ_h),   σ_m √(1 − r²) at one height;     strength √ρ σ,   a group √(1 − ρ) σ
    /// ```
    /// | symbol          | meaning                                                     |
    /// | --------------- | ----------------------------------------------------------- |
    /// | `σ_h, σ_m, r`   | deviations of height and mass over their means; correlation   |
    /// | `σ, ρ`          | scatter of maxima between people; correlation of two groups   |
    ///
    /// **Shape.** Maxima of groups scatter by their bodies too, so people of both scatter a little too much.
    /// **Source.** `models/published/person.ron`; regression of one normal number on another (textbook). **Fails.** Never:
    /// without rows of a sex its bodies are all alike.
    #[must_use]
    pub fn between_people(table: &PersonTable, sex: Sex) -> Self {
        let bodies = table.bodies_of(sex);
        let (height, mass, together) = bodies.map_or((0.0, 0.0, 0.0), |bodies| {
            (
                bodies.height_deviation_cm / bodies.height_cm,
                bodies.mass_deviation_kg / bodies.mass_kg,
                bodies.correlation,
            )
        });
        let (between, shared) = (table.between_people(), table.correlation.value);
        Self {
            height,
            mass_by_height: together * mass / height.max(1.0e-9),
            mass: mass * (1.0 - together * together).sqrt(),
            segment: table.segment.deviation,
            strength: shared.sqrt() * between,
            groups: (BTreeMap::new(), (1.0 - shared).sqrt() * between),
            lift: 0.0,
        }
    }

    /// Of one muscle group beside the others.
    #[must_use]
    pub fn of_group(&self, group: &str) -> f64 {
        self.groups.0.get(group).copied().unwrap_or(self.groups.1)
    }
}
