//! Questions about the lift on the page, made of what the model finds: the mix and the order follow a number.
//!
//! In: what was solved, its workbench, a number. Out: [`Questions`].

use super::solved_state::SolvedState;
use crate::error::Result;
use crate::library::{Wanted, Workbench};
use crate::narrative::page_words::change_in_words;
use crate::narrative::question_words::{
    MuscleAtJoint, Quizzed, arm_question, class_question, hardest_question, heavier_question,
    moment_question,
};
use crate::resistance::{Item, Weight};
use crate::study::{Cause, Question, Study, causes_between, study};
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
    asked.extend(of_moments(now, &mut chance));
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

/// The muscle of the largest moment beside that of the largest force, that of the longest arm, and others.
fn of_moments(now: &SolvedState, chance: &mut Chance) -> Option<Quizzed> {
    let study = &now.study;
    let sample = chance.below(study.range.poses.len());
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
    let place = study
        .told(now.units())
        .at_place(study.range.poses[sample].load.range);
    (shown.len() > 1).then(|| moment_question(study.joint(joint), &place, &shown, now.units()))
}

/// A tenth more arm of one of the muscles that lift most.
fn of_arm(now: &SolvedState, bench: &Workbench, chance: &mut Chance) -> Result<Option<Quizzed>> {
    let study_now = &now.study;
    let peak = (study_now.class.peak_range * (study_now.range.poses.len() - 1) as f64).round();
    let joint = study_now.capacity.held[peak as usize].limiting;
    let dof = study_now.range.poses[0].coordinates[joint].dof;
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
    let strongest = lifting(study_now, peak as usize, joint).into_iter();
    let mut strongest: Vec<_> = strongest.filter_map(scale).take(3).collect();
    if strongest.is_empty() {
        return Ok(None);
    }
    let (muscle, path) = strongest.swap_remove(chance.below(strongest.len()));
    let mut sets = now.state.set.clone();
    sets.push(format!("{path}=+10%"));
    let model = bench.model(&sets)?;
    let changed = studied(now, &SolvedState::question(&model, now))?;
    let gain = changed.class.peak / study_now.class.peak - 1.0;
    let causes = causes_between(
        (&now.model, study_now, now.pace),
        (&model, &changed, now.pace),
    )?;
    // The reason where the greatest capacity is.
    let from_peak = |cause: &&Cause| (cause.range - study_now.class.peak_range).abs();
    let nearest = causes.iter();
    let nearest = nearest.min_by(|a, b| from_peak(a).total_cmp(&from_peak(b)));
    let nearest: Vec<Cause> = nearest.cloned().into_iter().collect();
    let mut why = change_in_words(study_now, &changed, &nearest, now.units());
    why.truncate(1);
    Ok(Some(arm_question(
        &muscle.name,
        study_now.joint(joint),
        gain,
        &why,
    )))
}

/// The present setup on another model.
fn studied(now: &SolvedState, question: &Question<'_>) -> Result<Study> {
    let setups: Vec<_> = now.study.setups.iter().map(|s| s.asked.clone()).collect();
    study(question, &setups)
}

/// A fifth more weight.
fn of_heavier(now: &SolvedState) -> Result<Option<Quizzed>> {
    let Some(setup) = now.study.setups.first() else {
        return Ok(None);
    };
    let mut heavier = setup.asked.clone();
    let mut is_heavier = false;
    for item in &mut heavier.items {
        if let Item::Weight(Weight::Load(mass)) = item {
            *mass = Mass::from_kg(1.2 * mass.as_kg());
            is_heavier = true;
        }
    }
    let changed = study(&SolvedState::question(&now.model, now), &[heavier])?;
    let place = |study: &Study| Some(study.setups.first()?.sticking?.point_range);
    let places = (place(&now.study), place(&changed));
    Ok(match places {
        (Some(before), Some(after)) if is_heavier => {
            Some(heavier_question(&now.study, before, after, now.units()))
        }
        _ => None,
    })
}
