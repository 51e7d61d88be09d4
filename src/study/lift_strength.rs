//! A factor on the strength of every muscle of a person, beside the person's files.
//!
//! In: muscles with their groups, a factor for each group. Out: [`LiftStrength`], looked up by a muscle's name.

use std::sync::Arc;

/// Muscles of a lifter and their groups, in order of the muscles' names.
pub(super) type MuscleGroups = Arc<[(String, String)]>;

/// A factor on the strength of every muscle of a person.
#[derive(Debug, Clone)]
pub struct LiftStrength {
    muscles: MuscleGroups,
    factors: Vec<f64>,
}

impl LiftStrength {
    /// The factor of each muscle's group.
    pub(super) fn new(muscles: &MuscleGroups, of_group: impl Fn(&str) -> f64) -> Self {
        Self {
            factors: muscles.iter().map(|(_, group)| of_group(group)).collect(),
            muscles: Arc::clone(muscles),
        }
    }

    /// The factor on a muscle's force; none on one that the lifter does not have.
    #[must_use]
    pub fn of(&self, muscle: &str) -> f64 {
        let found = self
            .muscles
            .binary_search_by(|(name, _)| name.as_str().cmp(muscle));
        found.map_or(1.0, |place| self.factors[place])
    }
}
