//! Which setup that a gym can build loads this lift best.
//!
//! In: a question, a gym, a wish. Out: [`PickAnswer`]: ranked setups, the non-dominated ones, what was searched
//! and left out; or why none fits, with the nearest miss.

use super::advice::advice;
use super::none_fits::none_fits;
use super::pick_answer::{PickAnswer, Picked};
use super::question::Question;
use super::rep_study::{maximum, rigged};
use super::session_oracle::carried_body;
use super::solve::SolvedLift;
use crate::anatomy::Training;
use crate::error::Result;
use crate::movement::{Catch, Handover, LoadPoint};
use crate::rep::RepOptions;
use crate::resistance::{Item, Motion, Setup};
use crate::session::published::EccentricTable;
use crate::setups::{
    AllowedPieces, BandFailure, BandsOverRange, Choosing, Goal, Gym, LoadedSetup, SafetyLimits,
    Watch, band_failure, choose,
};
use crate::units::Mass;
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

/// Searches a gym.
///
/// # Algorithm
/// 1. Movement and lifter give capacity, and with it what one newton costs at each place.
/// 2. The maximum and what is lowered under control say how much may be left when bands go.
/// 3. The gym's setups are searched on these costs, the finalists settled by their exact effort.
/// 4. What was chosen is laid over the lift, and advice sought where it gains little.
///
/// **Fails** where no setup fits, with the nearest miss and what would make it fit.
pub fn pick(
    question: &Question<'_>,
    choosing: &Choosing<'_>,
    table: &EccentricTable,
    watch: &Watch,
) -> Result<PickAnswer> {
    let joins_hands = question.movement.handling.bar_joins_hands;
    let choosing = &Choosing {
        gym: &choosing.gym.clone().for_hands(joins_hands),
        allowed: AllowedPieces {
            none_above: !question.movement.handling.is_under_a_rack(),
            ..choosing.allowed.clone()
        },
        wish: choosing.wish.clone(),
        top: choosing.top,
    };
    let lift = SolvedLift::of(question)?;
    let safety = lift.safety(Some(choosing.gym), table)?;
    let costs = lift.cost_field()?;
    let effort_under = |loads: &[_]| Ok(lift.effort_under(loads)?.1);
    let choice = match choose(choosing, &costs, &effort_under, Some(&safety), watch)? {
        Ok(choice) => choice,
        Err(missed) => return Err(none_fits(&lift, choosing, missed)?),
    };
    let plain = choice.plain.map(|loaded| lift.picked(loaded)).transpose()?;
    let ranked = lift.all_picked(choice.ranked)?;
    let mut answers = lift.all_picked(choice.answers)?;
    if answers.is_empty() {
        // Not even plain weight fits: the best of all is the answer.
        answers.extend(ranked.first().cloned());
    }
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
        answers: advised(answers, safety.novice, &choosing.wish.goal),
        safety,
        ranked,
        handling: question.movement.handling.clone(),
    })
}

/// The answers with the one that is advised first: plain weight for a novice, else the best by the goal.
fn advised(mut answers: Vec<Picked>, novice: bool, goal: &Goal) -> Vec<Picked> {
    if novice || matches!(goal, Goal::Flattest) && answers.len() < 2 {
        return answers;
    }
    let score = |picked: &Picked| match (picked.loaded.hung, goal) {
        (0, Goal::Flattest) => 0.0,
        (0, _) => f64::INFINITY,
        (_, Goal::Flattest) => WORTH_HANGING - picked.loaded.flattening_percent,
        _ => picked.loaded.score,
    };
    answers.sort_by(|a, b| score(a).total_cmp(&score(b)));
    answers
}

/// Flattening from which bands or chains are advised before plain weight, %: less is lost in the spread between equal
/// bands, and hanging them is work (assumed).
const WORTH_HANGING: f64 = 5.0;

impl SolvedLift<'_> {
    /// By what the failure of bands is judged: the simulated maximum, and the most that is lowered under control,
    /// by the simulation or the measured ratio, whichever is less.
    ///
    /// A lifter for whom no maximum is found is taken to lift nothing: no band from above is offered then.
    pub(super) fn safety(&self, gym: Option<&Gym>, table: &EccentricTable) -> Result<SafetyLimits> {
        let question = self.question();
        let carrier = question.movement.carrier()?;
        let body = carried_body(&carrier, question.lifter);
        let usual = RepOptions::usual_for(question.movement);
        let [one_rm, lowered] = match maximum(question, &Setup::default(), &usual) {
            Err(_) => [Mass::ZERO; 2],
            Ok((found, model)) => {
                let rigged = rigged(question, carrier, &Setup::default());
                let own = model.eccentric_max(&rigged, table.lowering.time, &usual);
                let measured_kg = table.eccentric_one_rm(found.load, body).as_kg();
                let own_kg = own.map_or(0.0, |own| own.load.as_kg());
                [found.load, Mass::from_kg(own_kg.min(measured_kg).max(0.0))]
            }
        };
        let is_caught = question.movement.handling.catch == Catch::SafetyArms;
        let arms = gym.and_then(|gym| gym.safety_arms).filter(|_| is_caught);
        Ok(SafetyLimits {
            one_rm,
            lowered,
            body,
            novice: question.lifter.training == Training::Novice,
            above_one_rm: question.lifter.training == Training::Advanced
                && matches!(question.movement.handling.overload, Handover::Yes { .. }),
            felt_above_one_rm: question.lifter.training != Training::Novice
                && question.movement.handling.may_feel_above_one_rm(),
            arms: arms.and_then(|arms| arms.height_for(&self.points)),
        })
    }

    /// What is left when bands of a setup that is loaded give way.
    pub(super) fn failure_of(&self, setup: &Setup) -> Result<Option<BandFailure>> {
        let loaded = self.loaded(setup);
        let one = self.kilograms(&Setup::plain(Mass::from_kg(1.0)));
        let share = |force: Vec<f64>| -> Vec<f64> {
            let pairs = force.into_iter().zip(&one);
            pairs
                .map(|(n, one)| if *one > 0.0 { n / one } else { 0.0 })
                .collect()
        };
        let load_kg = share(self.kilograms(&loaded));
        let bands = setup.items.iter().filter_map(|item| match item {
            Item::Band(hung) => Some((
                share(self.kilograms(&Setup::new("", vec![item.clone()]))),
                hung.count,
            )),
            _ => None,
        });
        let bands: Vec<(Vec<f64>, u32)> = bands.collect();
        let over: Vec<BandsOverRange<'_>> = bands
            .iter()
            .map(|(kg, a_side)| BandsOverRange {
                kg,
                a_side: *a_side,
            })
            .collect();
        let plain_kg = setup.plain_mass(&self.range.carrier).as_kg();
        Ok(band_failure(plain_kg, &load_kg, &over))
    }

    /// The part of a setup's force along the way of the load, N: negative where it lifts.
    fn kilograms(&self, setup: &Setup) -> Vec<f64> {
        let rigged = setup.rigged_over(&self.points);
        let along = |point: &LoadPoint| {
            let force = rigged
                .total_at(point, &self.range.carrier, Motion::Hold)
                .force;
            -(force.x_n * point.dx_ds_m + force.z_n * point.dz_ds_m)
        };
        self.points.iter().map(along).collect()
    }

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
