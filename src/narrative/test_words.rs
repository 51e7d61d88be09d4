//! A session that finds a maximum, in the words of a plan.
//!
//! In: a [`MaximumTest`], units. Out: [`PlanWords`], so that it is printed as any session is.

use super::cautions::caution_in_words;
use super::loads::loading_in_words;
use super::plan_words::{PlanWords, SetRow};
use super::prose::{counted_noun, percent};
use super::quantities::{QuantityWords, rounded};
use super::session_words::{level_name, name_of_test, rest_time};
use super::setups::hazards_of;
use super::spotter_words::{calls, spotters};
use crate::session::maximum_test::{Expected, MaximumTest, TestStep, TestedMaximum};
use crate::session::status::{INTERMEDIATE_MONTHS, Trainee};
use crate::units::System;

/// What the session is called.
#[must_use]
pub const fn test_name(test: &MaximumTest) -> &'static str {
    name_of_test(test.finds)
}

/// The session in the words of a plan.
#[must_use]
pub fn test_words(test: &MaximumTest, units: System) -> PlanWords {
    let expected = units.mass(test.lift.one_rm);
    let mut rows: Vec<SetRow> = test.ramp.iter().map(|step| ramp_row(step, units)).collect();
    rows.push(attempt_row(test, units));
    PlanWords {
        athlete: None,
        date: None,
        movement: test.lift.title.clone(),
        one_rm: "1RM not known yet".to_owned(),
        level: level_name(test.lift.level()).to_owned(),
        amount: format!(
            "at most {}",
            counted_noun(test.attempts as usize, "attempt")
        ),
        rows,
        setup: Vec::new(),
        frequency: "once, rested: two days after the last hard session of the same muscles"
            .to_owned(),
        progression: going_on(test, units),
        predicted: vec![format!(
            "{} lifts {expected} in the simulation; the ramp is made for {} of it{}",
            who_is_expected(test.expected),
            percent(test.expected.ramp_share()),
            match test.expected {
                Expected::Untrained => "",
                Expected::OfPerson { .. } =>
                    ", the low end of the interval that holds four in five",
            }
        )],
        notes: notes(test),
        spotters: test.spotting.as_ref().map(|who| spotters(who, units)),
        calls: test.spotting.as_ref().map(calls).unwrap_or_default(),
        hazards: hazards_of(&test.cautions)
            .iter()
            .take(2)
            .map(|caution| caution_in_words(caution, units))
            .collect(),
        cautions: test
            .cautions
            .iter()
            .map(|caution| caution_in_words(caution, units))
            .collect(),
    }
}

fn ramp_row(step: &TestStep, units: System) -> SetRow {
    SetRow {
        name: "warm-up".to_owned(),
        sets: 1,
        is_warm_up: true,
        load: step
            .load
            .as_ref()
            .map_or_else(String::new, |load| units.mass(load.total)),
        // Of a 1RM that is not known yet nothing is a share.
        percent: String::new(),
        how: step
            .load
            .as_ref()
            .map_or_else(String::new, loading_in_words),
        repetitions: step.repetitions.to_string(),
        rest: rest_time(step.rest),
        intent: String::new(),
        has_notes: false,
        to_failure: None,
    }
}

/// Of whom the maximum is that the ramp is made for.
fn who_is_expected(expected: Expected) -> String {
    match expected {
        Expected::Untrained => {
            "a model lifter of this sex, height and mass who has not trained".to_owned()
        }
        Expected::OfPerson { lifts: 0, .. } => {
            "a model lifter of this sex, height, mass and training".to_owned()
        }
        Expected::OfPerson { lifts, .. } => format!(
            "a model lifter of this sex, height, mass and training with the strength of the row's {}",
            match lifts {
                1 => "other lift".to_owned(),
                many => format!("{many} other lifts"),
            }
        ),
    }
}

fn attempt_row(test: &MaximumTest, units: System) -> SetRow {
    SetRow {
        name: format!("1 to {}", test.attempts),
        sets: test.attempts as usize,
        is_warm_up: false,
        load: test.first.as_ref().map_or_else(String::new, |load| {
            format!("{} first", units.mass(load.total))
        }),
        percent: String::new(),
        how: "then ______ and on".to_owned(),
        repetitions: test.attempt_repetitions.to_string(),
        rest: rest_time(test.attempt_rest),
        intent: match test.finds {
            TestedMaximum::OneRm => "until one repetition just goes".to_owned(),
            TestedMaximum::FiveInReserve => "until five leave one or two in reserve".to_owned(),
        },
        has_notes: false,
        to_failure: None,
    }
}

fn going_on(test: &MaximumTest, units: System) -> String {
    let (least, most) = (percent(test.step.0), percent(test.step.1));
    let reaches = units.mass(test.reaches);
    match test.finds {
        TestedMaximum::OneRm => format!(
            "add up to {most} while an attempt goes up as fast as the warm-up, {least} after a slower one, half of that when it was \
             slow: {} by the largest steps reach {reaches}, the upper end of what is expected; after a miss take half of the last step \
             off; write the heaviest load that was lifted into the team's file",
            counted_noun(test.attempts as usize, "attempt")
        ),
        TestedMaximum::FiveInReserve => format!(
            "add up to {most} after a set that left five or more, {least} after one that left three or four: {} by the largest steps \
             reach {reaches}, the upper end of what is expected; stop at the set that leaves one or two, or when the form goes; write \
             it into the team's file as LOAD x 5",
            counted_noun(test.attempts as usize, "set")
        ),
    }
}

fn notes(test: &MaximumTest) -> Vec<String> {
    let mut notes = match test.finds {
        TestedMaximum::OneRm => vec![
            "ramp and rests as textbooks of strength testing have them (common practice)"
                .to_owned(),
        ],
        TestedMaximum::FiveInReserve => vec![format!(
            "no maximal single {}: the 1RM follows from five repetitions by published equations (common practice)",
            for_whom_no_single(&test.lift.trainee)
        )],
    };
    notes.push("if the ramp feels heavy already, it is the test: stop there".to_owned());
    notes
}

/// Who lifts no maximal single, and why: the training first, else the age.
fn for_whom_no_single(trainee: &Trainee) -> String {
    match trainee.age_years {
        Some(years) if trainee.training_months >= INTERMEDIATE_MONTHS => format!(
            "at {} years, where heavy sets need a clinician's yes",
            rounded(years, 0)
        ),
        _ => "for somebody who has trained less than half a year".to_owned(),
    }
}
