//! Which picked setups the lifter lifts: the search holds them still, a repetition moves them.
//!
//! In: a lift, setups with their effort. Out: those that the simulation lifts once.

use super::pick_answer::Picked;
use super::rep_study::rigged;
use super::solve::SolvedLift;
use crate::error::Result;
use crate::rep::{RepModel, RepOptions, with_load};
use crate::resistance::{Item, Setup};
use crate::setups::SafetyLimits;
use crate::units::Mass;
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

/// Share of the 1RM's effort up to which a setup is lifted whatever hangs on it, so that it is not simulated (assumed; the
/// laws of picks hold it to every lift and gym).
const LIFTED_ANYHOW: f64 = 0.90;

/// What decides whether a picked setup is lifted.
pub(super) struct LiftedSetups<'a, 'q> {
    lift: &'a SolvedLift<'q>,
    safety: &'a SafetyLimits,
    unit: f64,
    /// Effort of the 1RM with plain weight at its hardest place, in the unit of efforts.
    pub one_rm_effort: f64,
}

impl<'a, 'q> LiftedSetups<'a, 'q> {
    /// For a lift, with the unit that its efforts are counted in.
    ///
    /// **Fails** as the lift's effort does.
    pub fn of(lift: &'a SolvedLift<'q>, safety: &'a SafetyLimits, unit: f64) -> Result<Self> {
        let held = lift.effort_of_plain(safety.one_rm)?;
        Ok(Self {
            lift,
            safety,
            unit,
            one_rm_effort: (held / unit).min(1.0),
        })
    }

    /// Those that are lifted, in their order.
    pub fn among(&self, picked: Vec<Picked>) -> Vec<Picked> {
        let lifted = picked.into_par_iter().filter(|one| self.holds(one));
        lifted.collect()
    }

    /// Whether one repetition of it is lifted; a load that cannot be simulated is none.
    pub fn holds(&self, picked: &Picked) -> bool {
        let hardest = picked.study.sticking.map_or(0.0, |s| s.max_effort) / self.unit;
        if hardest <= LIFTED_ANYHOW * self.one_rm_effort {
            return true;
        }
        let total = picked.loaded.loading.total;
        if picked.loaded.hung == 0 && total.as_kg() >= 0.0 {
            return total <= self.safety.one_rm;
        }
        self.is_simulated(picked).unwrap_or(false)
    }

    fn is_simulated(&self, picked: &Picked) -> Result<bool> {
        let question = self.lift.question();
        // A counterweight hangs on the body like a band; what is lifted beside it is nothing.
        let load = Mass::from_kg(picked.loaded.loading.total.as_kg().max(0.0));
        let carrier = question.movement.carrier()?;
        let setup = with_load(&rigged(question, carrier, &hung_of(picked)), load);
        let model = RepModel::for_setup(question.movement, question.lifter, &setup)?;
        model.is_lifted(&setup, &RepOptions::usual_for(question.movement))
    }
}

/// What hangs beside the plain load of a picked setup.
pub(super) fn hung_of(picked: &Picked) -> Setup {
    let items = picked.loaded.setup.items.iter();
    let hung =
        items.filter(|item| matches!(item, Item::Band(_) | Item::Chain(_) | Item::Assistance(_)));
    Setup::new("", hung.cloned().collect())
}
