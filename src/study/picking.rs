//! Which setup that a gym can build loads this lift best.
//!
//! In: a question, a gym, a wish. Out: [`PickAnswer`]: ranked setups, the non-dominated ones, what was searched
//! and left out; or why none fits, with the nearest miss.

use super::adult_body::check_adult;
use super::advice::advice;
use super::lifted_setups::LiftedSetups;
use super::none_fits::none_fits;
use super::pick_answer::{PickAnswer, Picked};
use super::question::Question;
use super::rep_study::{maximum, rigged};
use super::session_oracle::carried_body;
use super::solve::SolvedLift;
use super::weight_resists::check_weight_resists;
use crate::anatomy::Training;
use crate::error::{Error, PickFault, Result};
use crate::movement::{Carrier, Catch, Handover, LoadPoint};
use crate::rep::RepOptions;
use crate::resistance::{Item, Motion, Setup};
use crate::session::published::EccentricTable;
use crate::session::status::AgeCare;
use crate::setups::{
    AllowedPieces, BandFailure, BandsOverRange, Choosing, Goal, Gym, LoadedSetup, SafetyLimits,
    Watch, band_failure, choose,
};
use crate::units::{Length, Mass};
use rayon::prelude::{IntoParallelIterator, ParallelIterator};

/// Searches a gym.
///
/// # Algorithm
/// 1. Movement and lifter give capacity, and with it what one newton costs at each place.
/// 2. The maximum and what is lowered under control say how much may be left when bands go.
/// 3. The gym's setups are searched on these costs, the finalists settled by their exact effort.
/// 4. What was chosen is laid over the lift, what is not lifted in motion is left out, and advice sought where it gains
///    little.
///
/// **Fails** where no setup fits, with the nearest miss and what would make it fit, and where none is lifted.
pub fn pick(
    question: &Question<'_>,
    choosing: &Choosing<'_>,
    table: &EccentricTable,
    watch: &Watch,
) -> Result<PickAnswer> {
    check_weight_resists(question)?;
    check_adult(question)?;
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
    let unit = lift.effort_unit(safety.one_rm)?;
    let costs = lift.cost_field()?.counted_in(unit);
    let effort_under = |loads: &[_]| {
        let (_, mut effort) = lift.effort_under(loads)?;
        effort.iter_mut().for_each(|effort| *effort /= unit);
        Ok(effort)
    };
    let search =
        |choosing: &Choosing<'_>| choose(choosing, &costs, &effort_under, Some(&safety), watch);
    let mut wish = choosing.wish.clone();
    let choice = match search(choosing)? {
        Ok(choice) => choice,
        Err(missed) => {
            let alone = lift
                .body_alone(&safety, unit)?
                .filter(|_| !wish.is_of_loads());
            let raised = alone.filter(|effort| *effort > wish.effort);
            wish.effort = raised.unwrap_or(wish.effort);
            let harder = Choosing {
                wish: wish.clone(),
                allowed: choosing.allowed.clone(),
                ..*choosing
            };
            let found = raised.map(|_| search(&harder));
            match found.transpose()? {
                Some(Ok(choice)) => choice,
                _ => return Err(none_fits(&lift, choosing, (missed, unit))?),
            }
        }
    };
    let lifted = LiftedSetups::of(&lift, &safety, unit)?;
    let plain = choice.plain.map(|loaded| lift.picked(loaded)).transpose()?;
    let plain = plain.filter(|plain| lifted.holds(plain));
    let ranked = lifted.among(lift.all_picked(choice.ranked)?);
    let mut answers = lifted.among(lift.all_picked(choice.answers)?);
    let front_found = lift.all_picked(choice.front)?;
    let listed = front_found.len();
    let front = lifted.among(front_found);
    if ranked.is_empty() {
        return Err(Error::no_answer(PickFault::NotLifted {
            gym: choosing.gym.title.clone(),
            effort: wish.effort,
            one_rm_effort: lifted.one_rm_effort,
        }));
    }
    if answers.is_empty() {
        // Not even plain weight fits: the best of all is the answer.
        answers.extend(ranked.first().cloned());
    }
    let best = [choice.best_added_percent, choice.best_helping_percent];
    Ok(PickAnswer {
        advice: advice(&lift, &costs, ranked[0].loaded.flattening_percent, best)?,
        front_size: choice.front_size - (listed - front.len()),
        front,
        counts: choice.counts,
        left_out: choice.left_out,
        raised_from: (wish.effort > choosing.wish.effort).then_some(choosing.wish.effort),
        wish,
        gym_title: choosing.gym.title.clone(),
        gym_is_invented: choosing.gym.invented,
        anchors: choosing.gym.anchors.clone(),
        study: {
            let shown = plain.iter().chain(&ranked);
            let shown = shown.map(|picked| picked.study.clone()).collect();
            lift.into_study(shown)
        },
        plain,
        answers: advised(answers, &safety, &choosing.wish.goal),
        effort_unit: unit,
        safety,
        untested: None,
        age_years: question.age_years,
        ranked,
        handling: question.movement.handling.clone(),
    })
}

/// The answers with the one that is advised first: plain weight for a novice, else the best by the goal. What leaves more
/// than the 1RM when bands fail stands last; what leaves nearly that much, and what grows at all where arms belong and none
/// stand, behind plain weight.
fn advised(mut answers: Vec<Picked>, safety: &SafetyLimits, goal: &Goal) -> Vec<Picked> {
    let score = |picked: &Picked| match (picked.loaded.hung, goal) {
        (0, Goal::Flattest) => 0.0,
        (0, _) => f64::INFINITY,
        (_, Goal::Flattest) => WORTH_HANGING - picked.loaded.flattening_percent,
        _ => picked.loaded.score,
    };
    let uncaught = |picked: &Picked| {
        safety.lacks_arms() && picked.loaded.failure.is_some_and(|failure| failure.grows)
    };
    let left = |picked: &Picked| safety.left_of(picked.loaded.failure.as_ref());
    let hung = |picked: &Picked| safety.novice && picked.loaded.hung > 0;
    let first = |picked: &Picked| {
        let missing = missing(picked, goal);
        (hung(picked), left(picked), uncaught(picked), missing)
    };
    answers.sort_by(|a, b| {
        let order = first(a).cmp(&first(b));
        order.then(score(a).total_cmp(&score(b)))
    });
    answers
}

/// Steps of load that a setup falls short, where the goal is not the load itself.
fn missing(picked: &Picked, goal: &Goal) -> u32 {
    match goal {
        Goal::Flattest => picked.loaded.missing_steps,
        _ => 0,
    }
}

/// Flattening from which bands or chains are advised before plain weight, %: less is lost in the spread between equal
/// bands, and hanging them is work (assumed).
const WORTH_HANGING: f64 = 5.0;

/// A rounding error is no excess.
const ROUNDING: f64 = 1.0e-9;

/// Effort of the 1RM at its hardest place from which on motion is said to carry the load over it. Assumed: between 1.05,
/// the most in lifts whose maximum is what can be held, and 1.8, the row's.
const CARRIED: f64 = 1.15;

impl SolvedLift<'_> {
    /// What effort is counted in: all that can be held; in a lift whose 1RM passes its hardest place in motion, and could
    /// not be held there, what that 1RM asks for.
    pub(super) fn effort_unit(&self, one_rm: Mass) -> Result<f64> {
        if one_rm.as_kg() <= 0.0 {
            return Ok(1.0);
        }
        let hardest = self.effort_of_plain(one_rm)?;
        Ok(if hardest > CARRIED { hardest } else { 1.0 })
    }

    /// Effort of plain weight at its hardest place, 1 = all that can be held.
    pub(super) fn effort_of_plain(&self, load: Mass) -> Result<f64> {
        let (_, _, effort) = self.effort(&self.loaded(&Setup::plain(load)))?;
        Ok(effort.into_iter().fold(0.0, f64::max))
    }

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
        let care = AgeCare::of(question.age_years);
        let is_young = !care.ends_at_one_rm();
        Ok(SafetyLimits {
            one_rm,
            lowered,
            body,
            novice: question.lifter.training == Training::Novice || care == AgeCare::AsNovice,
            above_one_rm: is_young
                && question.lifter.training == Training::Advanced
                && matches!(question.movement.handling.overload, Handover::Yes { .. })
                && !question.movement.handling.comes_down_on_body,
            felt_above_one_rm: is_young
                && question.lifter.training == Training::Advanced
                && question.movement.handling.may_feel_above_one_rm(),
            needs_arms: self.is_caught_by_arms(),
            arms: self.arms(gym),
        })
    }

    fn is_caught_by_arms(&self) -> bool {
        self.question().movement.handling.catch == Catch::SafetyArms
    }

    /// Height of a gym's safety arms for this lift; nothing where they do not reach it, or nothing has to be caught.
    pub(super) fn arms(&self, gym: Option<&Gym>) -> Option<Length> {
        let arms = gym.and_then(|gym| gym.safety_arms);
        let arms = arms.filter(|_| self.is_caught_by_arms());
        arms.and_then(|arms| arms.height_for(&self.points))
    }

    /// Effort of the body alone at its hardest place, where it is the load and a trained lifter lifts it: the least that
    /// there is without help.
    fn body_alone(&self, safety: &SafetyLimits, unit: f64) -> Result<Option<f64>> {
        if self.range.carrier != Carrier::Body || safety.novice || safety.one_rm.as_kg() <= 0.0 {
            return Ok(None);
        }
        let (_, _, effort) = self.effort(&self.loaded(&Setup::default()))?;
        let hardest = effort.into_iter().fold(0.0, f64::max) / unit;
        Ok((hardest <= 1.0).then_some(hardest * (1.0 + ROUNDING)))
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
