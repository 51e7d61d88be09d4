//! How strongly people differ in body and strength.
//!
//! In: the table of scatter. Out: [`Scatter`], deviations that lifters are invented with.

use super::person_table::PersonTable;
use crate::anatomy::Sex;

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
    /// Strength of one muscle group beside the others.
    pub group: f64,
}

impl Scatter {
    /// How people alike in sex and training differ from one another, the model's own error left out.
    ///
    /// ```text
    /// mass ~ height^(r σ_m/σ_h),   σ_m √(1 − r²) at one height;     strength √ρ σ_b,   a group √(1 − ρ) σ_b
    /// ```
    /// | symbol          | meaning                                                     |
    /// | --------------- | ----------------------------------------------------------- |
    /// | `σ_h, σ_m, r`   | deviations of height and mass over their means; correlation   |
    /// | `σ_b, ρ`        | scatter of maxima at one body mass; correlation of two groups |
    ///
    /// **Shape.** With their bodies, maxima that go with mass scatter as the published groups in kilograms do; a load beside
    /// the body's own mass (squat, pull-up) scatters more than the whole that is lifted.
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
        let (between, shared) = (table.beyond_bodies(), table.correlation.value);
        Self {
            height,
            mass_by_height: together * mass / height.max(1.0e-9),
            mass: mass * (1.0 - together * together).sqrt(),
            segment: table.segment.deviation,
            strength: shared.sqrt() * between,
            group: (1.0 - shared).sqrt() * between,
        }
    }
}
