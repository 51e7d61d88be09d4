//! The heaviest plain load that can be held all along the way, and the one that is lifted over it.
//!
//! In: a question. Out: [`HeldAndLifted`].

use super::load_for_effort::load_for_effort;
use super::question::Question;
use super::rep_study::{Heaviness, RepStudy, repetition};
use crate::error::Result;
use crate::rep::RepOptions;
use crate::resistance::Setup;
use crate::units::Mass;

/// A lift held still, and in motion.
#[derive(Debug, Clone, PartialEq)]
pub struct HeldAndLifted {
    /// The heaviest plain load that can be held still at every place.
    pub held: Mass,
    /// The simulated maximum; none where nothing is lifted.
    pub most: Option<Mass>,
    /// The repetition at the maximum; none where the last hair of it is not lifted to the end.
    pub lifted: Option<RepStudy>,
}

impl HeldAndLifted {
    /// Both of a lift.
    ///
    /// **Fails** if no plain load can be held all along.
    pub fn of(question: &Question<'_>) -> Result<Self> {
        let plain = Setup::default();
        let whole = Heaviness::Share(1.0);
        let options = RepOptions::usual_for(question.movement);
        let rep = repetition(question, &plain, whole, &options).ok();
        Ok(Self {
            held: load_for_effort(question, &plain, 1.0)?,
            most: rep.as_ref().and_then(|rep| Some(rep.one_rm?.load)),
            lifted: rep.filter(|rep| rep.trace.is_lifted()),
        })
    }
}
