//! Questions about the lift on the page, made of what the model finds: the mix and the order follow a number.
//!
//! In: what was solved, its workbench, a number. Out: [`Questions`].

use super::solved_state::SolvedState;
use crate::error::Result;
use crate::library::{Wanted, Workbench};
use crate::narrative::page_words::{change_in_words, joint_axis};
use crate::narrative::question_words::{
    HeavierWeight, HeaviestWeights, MuscleAtJoint, Quizzed, arm_question, class_question,
    hardest_question, heavier_question, moment_question,
};
use crate::resistance::{Item, Setup, Weight};
use crate::study::{Cause, Question, Study, causes_between, load_for_effort, study};
use crate::units::Mass;
use serde::Serialize;

/// Questions.
#[derive(Debug, Serialize)]
pub(super) struct Questions {
    questions: Vec<Quizzed>,
}

/// Questions about what was solved.
///
/// **Fails** as the changed lifts do.
pub(super) fn questions(now: &SolvedState, bench: &Workbench, seed: u32) -> Result<Questions> {
    let mut chance = Chance(seed.max(1));
    let mut asked = vec![class_question(&now.study, now.units())];
    asked.extend(hardest_question(&now.study, now.units()));
    asked.extend(of_moments(now));
    asked.extend(of_arm(now, bench, &mut chance)?);
    asked.extend(of_heavier(now)?);
    for question in &mut asked {
        chance.shuffle(&mut question.options);
    }
    chance.shuffle(&mut asked);
    Ok(Questions { questions: asked })
}

/// The usual generator with the multiplier 48271 (Park, Miller & Stockmeyer 1993, from memory): the same on every
/// machine.
struct Chance(u32);

impl Chance {
    fn below(&mut self, count: usize) -> usize {
        self.0 = (u64::from(self.0) * 48_271 % 2_147_483_647) as u32;
        self.0 as usize % count.max(1)
    }

    fn shuffle<T>(&mut self, items: &mut [T]) {
        for last in (1..items.len()).rev() {
            items.swap(last, self.below(last + 1));
        }
    }
}

/// The muscles that lift at a joint and a sample, the largest moment first.
fn lifting(study: &Study, sample: usize, joint: usize) -> Vec<MuscleAtJoint> {
    let held = &study.capacity.held[sample];
    let sense = held.muscle_torques_nm[joint].signum();
    let muscles = held.muscles.iter().enumerate();
    let mut found: Vec<MuscleAtJoint> = muscles
        .map(|(index, muscle)| MuscleAtJoint {
            name: study.capacity.muscles[index].clone(),
            force_n: muscle.passive_n + held.activations[index] * muscle.active_n,
            arm_m: sense * muscle.arms_m[joint],
        })
        .filter(|muscle| muscle.arm_m > 0.0 && muscle.force_n > 0.0)
        .collect();
    let moment = |muscle: &MuscleAtJoint| muscle.force_n * muscle.arm_m;
    found.sort_by(|a, b| moment(b).total_cmp(&moment(a)));
    found
}

/// The sample where the load is hardest; without a load where the least is held.
fn hardest_sample(study: &Study) -> usize {
    let held = study.capacity.held.iter().enumerate();
    let weakest = held.min_by(|a, b| a.1.capacity.total_cmp(&b.1.capacity));
    let sticking = study.setups.first().and_then(|setup| setup.sticking);
    let sample = |range: f64| (range * (study.range.poses.len() - 1) as f64).round() as usize;
    let weakest = weakest.map_or(0, |(sample, _)| sample);
    sticking.map_or(weakest, |sticking| sample(sticking.point_range))
}

/// The muscle of the largest moment, where it is hardest and about the joint that gives way first there, beside that of
/// the largest force, that of the longest arm, and others.
fn of_moments(now: &SolvedState) -> Option<Quizzed> {
    let study = &now.study;
    let sample = hardest_sample(study);
    let joint = study.capacity.held[sample].limiting;
    let found = lifting(study, sample, joint);
    let first = found.first()?.clone();
    let mut shown = vec![first];
    let most = |of: fn(&MuscleAtJoint) -> f64| {
        found.iter().max_by(|a, b| of(a).total_cmp(&of(b))).cloned()
    };
    let tempting = [most(|m| m.force_n), most(|m| m.arm_m)];
    let others = tempting
        .into_iter()
        .flatten()
        .chain(found.iter().skip(1).cloned());
    for muscle in others {
        if shown.len() < 4 && shown.iter().all(|known| known.name != muscle.name) {
            shown.push(muscle);
        }
    }
    let units = now.units();
    let place = study.range.poses[sample].load.range;
    let place = study.told(units).at_place(place);
    (shown.len() > 1).then(|| moment_question(&joint_axis(study, joint), &place, &shown, units))
}

/// A tenth more arm of one of the muscles that lift most where the heaviest weight is hardest.
fn of_arm(now: &SolvedState, bench: &Workbench, chance: &mut Chance) -> Result<Option<Quizzed>> {
    let question = SolvedState::question(&now.model, now);
    let Some(before) = heaviest(&question) else {
        return Ok(None);
    };
    let weight = Setup::new("", vec![Item::Weight(Weight::Load(before))]);
    let loaded = study(&question, std::slice::from_ref(&weight))?;
    let sample = hardest_sample(&loaded);
    let joint = loaded.capacity.held[sample].limiting;
    let dof = loaded.range.poses[0].coordinates[joint].dof;
    // Only what is one number and can be set makes a question.
    let settable = bench.settable(&[], Wanted::Moving)?;
    let scale = |muscle: MuscleAtJoint| {
        let arms = match dof.is_shoulder() {
            true => "shoulder".to_owned(),
            false => format!("moment_arm.{}", dof.name()),
        };
        let path = format!("muscles.{}.{arms}.scale", muscle.name);
        let is_settable = settable.iter().any(|value| value.path == path);
        is_settable.then_some((muscle, path))
    };
    let strongest = lifting(&loaded, sample, joint).into_iter();
    let mut strongest: Vec<_> = strongest.filter_map(scale).take(3).collect();
    if strongest.is_empty() {
        return Ok(None);
    }
    let (muscle, path) = strongest.swap_remove(chance.below(strongest.len()));
    let mut sets = now.state.set.clone();
    sets.push(format!("{path}=+10%"));
    let model = bench.model_in_steps(&sets)?;
    let question = SolvedState::question(&model, now);
    let Some(after) = heaviest(&question) else {
        return Ok(None);
    };
    let changed = study(&question, &[weight])?;
    let causes = causes_between(
        (&now.model, &loaded, now.pace),
        (&model, &changed, now.pace),
    )?;
    // The reason where the heaviest weight was hardest.
    let place = loaded.range.poses[sample].load.range;
    let away = |cause: &&Cause| (cause.range - place).abs();
    let nearest = causes.iter();
    let nearest = nearest.min_by(|a, b| away(a).total_cmp(&away(b)));
    let nearest: Vec<Cause> = nearest.cloned().into_iter().collect();
    let mut why = change_in_words(&loaded, &changed, &nearest, now.units());
    why.truncate(1);
    let weights = HeaviestWeights { before, after };
    let named = (muscle.name.as_str(), dof.joint());
    Ok(Some(arm_question(
        &loaded,
        named,
        weights,
        &why,
        now.units(),
    )))
}

/// The heaviest plain weight that is held in every place, if there is one that is more than nothing.
fn heaviest(question: &Question<'_>) -> Option<Mass> {
    /// Below this a share of it says little, kg (assumed).
    const LEAST_KG: f64 = 1.0;
    let mass = load_for_effort(question, &Setup::default(), 1.0).ok()?;
    (mass.as_kg() >= LEAST_KG).then_some(mass)
}

/// A fifth more weight.
fn of_heavier(now: &SolvedState) -> Result<Option<Quizzed>> {
    let Some(setup) = now.study.setups.first() else {
        return Ok(None);
    };
    let mut heavier = setup.asked.clone();
    let mut weight_kg = 0.0;
    for item in &mut heavier.items {
        if let Item::Weight(Weight::Load(mass)) = item {
            weight_kg += mass.as_kg();
            *mass = Mass::from_kg(1.2 * mass.as_kg());
        }
    }
    // A fifth of nothing is no question.
    if weight_kg <= 0.0 {
        return Ok(None);
    }
    let changed = study(&SolvedState::question(&now.model, now), &[heavier])?;
    let places = [&now.study, &changed].map(|study| study.setups.first()?.sticking);
    let (Some(before), Some(after)) = (places[0], places[1]) else {
        return Ok(None);
    };
    let then = &changed.setups[0].values;
    let growth: Vec<f64> = setup
        .values
        .iter()
        .zip(then)
        .map(|(b, a)| a / b - 1.0)
        .collect();
    let at_hardest = growth[hardest_sample(&now.study)];
    let (start, end) = (growth[0], growth[growth.len() - 1]);
    // A place where nothing is asked for has no growth, and no question.
    let told = [start, at_hardest, end];
    if !told.iter().all(|share| share.is_finite()) {
        return Ok(None);
    }
    let heavier = HeavierWeight {
        weight: Mass::from_kg(weight_kg),
        hardest: [before.point_range, after.point_range],
        growth: told,
        is_even: growth.iter().all(|share| (share - 0.2).abs() < SAME_GROWTH),
    };
    Ok(Some(heavier_question(&now.study, &heavier, now.units())))
}

/// Growths of a demand that differ by less are the same but for rounding.
const SAME_GROWTH: f64 = 1.0e-9;
