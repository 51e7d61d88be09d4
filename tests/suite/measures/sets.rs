//! Measures of simulated sets: repetitions to failure, and what a rest brings back.

use super::lifted::{beside_lift, lifted, limit_kg, ratio};
use super::{Asked, settings};
use torquill::library::Library;
use torquill::resistance::Setup;
use torquill::session::oracle::RepOracle;
use torquill::session::prediction::{TiringBody, predict_set, repetitions_to_failure};
use torquill::study::{Question, simulated_oracle};
use torquill::units::{Duration, Mass};

/// The value of a measure of this file; `None` for a measure that is none of them.
pub fn value(asked: &Asked) -> Option<Option<f64>> {
    Some(match asked.measure.as_str() {
        "repetitions" => repetitions(asked),
        "repetitions_ratio" => ratio(repetitions(asked), repetitions(&beside_lift(asked))),
        "second_set" => ratio(
            second_set(asked, asked.number("rest")),
            second_set(asked, asked.number("beside")),
        ),
        "pull_up_equation" => pull_up_equation(asked),
        _ => return None,
    })
}

/// Asks the simulated set of the lift, with the plain load of a row; nothing where the body alone is too much.
fn with_oracle(asked: &Asked, ask: impl Fn(&RepOracle, Mass) -> Option<f64>) -> Option<f64> {
    let sets = settings(asked);
    let own = lifted(&asked.lift, &asked.lifter, &sets);
    let limit = limit_kg(&asked.lift, &asked.lifter, &sets)?;
    let load_kg = match asked.given("load") {
        Some(share) => share / 100.0 * limit - own.body_kg,
        None => 0.0,
    };
    if load_kg < 0.0 || limit < own.body_kg {
        return Some(0.0);
    }
    let question = Question::new(&asked.lift, &own.movement, &own.lifter);
    let library = Library::built_in();
    let published = library.published().expect("sound tables");
    let lowering = Duration::from_s(2.0);
    let oracle = simulated_oracle(
        published,
        &question,
        &own.lifter,
        &Setup::default(),
        lowering,
    )
    .ok()?;
    ask(&oracle, Mass::from_kg(load_kg))
}

/// Repetitions with the body alone, or at a share of the maximum.
fn repetitions(asked: &Asked) -> Option<f64> {
    with_oracle(asked, |oracle, load| {
        let fresh = TiringBody::fresh(&oracle.joints);
        let count = repetitions_to_failure(oracle, load, &fresh).ok()?;
        Some(f64::from(count))
    })
}

/// Repetitions of a second set to failure after a rest, s.
fn second_set(asked: &Asked, rest_s: f64) -> Option<f64> {
    with_oracle(asked, |oracle, load| {
        let mut body = TiringBody::fresh(&oracle.joints);
        let first = repetitions_to_failure(oracle, load, &body).ok()?;
        predict_set(oracle, load, &[first], Duration::ZERO, &mut body).ok()?;
        body.rest(Duration::from_s(rest_s)).ok()?;
        Some(f64::from(repetitions_to_failure(oracle, load, &body).ok()?))
    })
}

/// Pull-ups that the velocity of one tells of, over those of the simulated set.
fn pull_up_equation(asked: &Asked) -> Option<f64> {
    let own = lifted(&asked.lift, &asked.lifter, &[]);
    let velocity = own.with_kg(own.body_kg, &own.options)?.lift?.mean_velocity;
    let told = asked.number("constant") + asked.number("slope") * velocity;
    ratio(Some(told), repetitions(asked))
}
