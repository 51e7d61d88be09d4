//! Which setup that a gym can build loads this lift best.
//!
//! In: a question, a gym, a wish. Out: [`PickAnswer`]: ranked setups, the non-dominated ones, what was searched
//! and left out; or why none fits, with the nearest miss.

use super::advice::advice;
use super::none_fits::none_fits;
use super::pick_answer::{PickAnswer, Picked};
use super::question::Question;
use super::solve::SolvedLift;
use crate::error::Result;
use crate::setups::{Choosing, LoadedSetup, Watch, choose};
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

/// Searches a gym.
///
/// # Algorithm
/// 1. Movement and lifter give capacity, and with it what one newton costs at each place.
/// 2. The gym's setups are searched on these costs, the finalists settled by their exact effort.
/// 3. What was chosen is laid over the lift, and advice sought where it gains little.
///
/// **Fails** where no setup fits, with the nearest miss and what would make it fit.
pub fn pick(question: &Question<'_>, choosing: &Choosing<'_>, watch: &Watch) -> Result<PickAnswer> {
    let lift = SolvedLift::of(question)?;
    let costs = lift.cost_field()?;
    let effort_under = |loads: &[_]| Ok(lift.effort_under(loads)?.1);
    let choice = match choose(choosing, &costs, &effort_under, watch)? {
        Ok(choice) => choice,
        Err(missed) => return Err(none_fits(&lift, choosing, missed)?),
    };
    let plain = choice.plain.map(|loaded| lift.picked(loaded)).transpose()?;
    let ranked = lift.all_picked(choice.ranked)?;
    let best = [choice.best_added_percent, choice.best_helping_percent];
    Ok(PickAnswer {
        advice: advice(&lift, &costs, ranked[0].loaded.flattening_percent, best)?,
        front: lift.all_picked(choice.front)?,
        front_size: choice.front_size,
        counts: choice.counts,
        left_out: choice.left_out,
        wish: choosing.wish.clone(),
        gym_title: choosing.gym.title.clone(),
        gym_is_invented: choosing.gym.invented,
        anchors: choosing.gym.anchors.clone(),
        study: {
            let shown = plain.iter().chain(&ranked);
            let shown = shown.map(|picked| picked.study.clone()).collect();
            lift.into_study(shown)
        },
        plain,
        ranked,
        catch: question.movement.handling.catch,
    })
}

impl SolvedLift<'_> {
    fn picked(&self, loaded: LoadedSetup) -> Result<Picked> {
        Ok(Picked {
            study: self.setup(&loaded.setup)?,
            loaded,
        })
    }

    fn all_picked(&self, list: Vec<LoadedSetup>) -> Result<Vec<Picked>> {
        let picked = list.into_par_iter().map(|loaded| self.picked(loaded));
        picked.collect()
    }
}
