//! The figures of a planned session in words: predicted velocities, fatigue, loads.
//!
//! In: a [`SessionPlan`], units. Out: the words around its figures and the labels in them.

use super::figure_words::FigureWords;
use super::plan_words::least_by_joint;
use super::prose::{capital, counted_noun, of_count};
use super::quantities::{QuantityWords, rounded};
use super::session_words::{groups_added, joint_name, predicted_name, rest_time};
use super::shown_units::{ShownUnit, ShownUnits};
use crate::movement::Measure;
use crate::session::draft::{Predicted, SessionPlan, SessionPrediction};
use crate::session::fatigue::FatigueJoint;
use crate::session::method::Method;
use crate::session::planned_set::{PlannedSet, SetNote};
use crate::units::{Duration, Mass, System};

/// The level axis of the loads.
pub(crate) const SETS: &str = "Warm-up (w) and working sets, each with its repetitions";
/// The upright line of what is felt with bands or chains.
pub(crate) const FELT: &str = "felt, bottom to top";
/// What is said to the lecture's clusters: what short rests give back, told from the predictions.
pub(crate) fn clusters_caption(predictions: &[SessionPrediction]) -> String {
    let gained = match predictions {
        [grouped, straight, ..] if grouped.completed() > straight.completed() => {
            "more of the repetitions reach lockout"
        }
        [grouped, straight, ..] if grouped.kept_share() > straight.kept_share() => {
            "the slowest repetition keeps more of the velocity"
        }
        _ => "here it changes neither how many reach lockout nor the slowest of them",
    };
    format!(
        "The same load and the same repetitions: short rests between small groups let part of the fatigue go: {gained}. The \
         rests come on top of the time of the set."
    )
}
/// What is said to the lecture's pyramid.
pub(crate) const PYRAMID_CAPTION: &str = "Load rises and repetitions fall from set to set: many repetitions while the load is light, few when it is heavy. Each set \
     is planned for what the sets before it leave.";
/// The upright axis of the velocities.
pub(crate) const MEAN_VELOCITY: &str = "Mean velocity";
/// The upright axis of fatigue.
pub(crate) const SHARE_OF_MUSCLE: &str = "Share of the muscle";
/// The upper edge of what is not rested.
pub(crate) const FATIGUED_AND_ACTIVE: &str = "fatigued and active";

/// Unit of the velocities.
#[must_use]
pub(crate) fn bar_velocity_unit(units: System) -> ShownUnit {
    units.velocity_unit(Measure::Force)
}

/// The words around the predicted velocities.
#[must_use]
pub fn session_words(plan: &SessionPlan, units: System) -> FigureWords {
    let predictions = &plan.draft.predictions;
    let told: Vec<String> = predictions.iter().map(|p| reached(p, units)).collect();
    FigureWords {
        title: capital(&velocities_title(predictions, units)),
        subtitle: subtitle(plan, units),
        footnote: "Fatigue of the joints in three compartments (Xia & Frey Law 2008), coupled to the simulated repetition."
            .to_owned(),
        description: told.join(" "),
        caption: String::new(),
    }
}

fn subtitle(plan: &SessionPlan, units: System) -> String {
    let name = plan.draft.lift.title.to_lowercase();
    let top = plan
        .working_sets()
        .max_by(|a, b| a.load.total.as_kg().total_cmp(&b.load.total.as_kg()));
    let load = top.map_or_else(String::new, |set| {
        let most = set.load.total;
        let is_one = plan.working_sets().all(|set| set.load.total == most);
        let up_to = if is_one { "" } else { "up to " };
        format!(", {up_to}{}", units.mass(most))
    });
    format!(
        "{}, {}{load}, 1RM {}",
        capital(&name),
        plan.draft.method.name().replace('-', " "),
        units.mass(plan.draft.lift.one_rm)
    )
}

/// That velocities are no measured ones.
pub(crate) fn simulated(subtitle: &str) -> String {
    format!("Simulated. {subtitle}")
}

/// A velocity with its unit.
fn velocity(m_s: f64, units: System) -> String {
    let unit = bar_velocity_unit(units);
    format!("{} {}", rounded(unit.of(m_s), 2), unit.symbol)
}

fn velocities_title(predictions: &[SessionPrediction], units: System) -> String {
    match predictions {
        [hung, plain] if plain.of == Predicted::PlainWeight && hung.stall().is_none() => format!(
            "with {} {} on average, with plain weight that is as hard {}",
            predicted_name(hung.of),
            velocity(hung.mean_velocity_m_s(), units),
            velocity(plain.mean_velocity_m_s(), units)
        ),
        [one] => match one.stall() {
            Some(number) => format!("repetition {number} of {} stalls", one.asked()),
            None => format!(
                "the slowest repetition keeps {} % of the fastest",
                kept_percent(one)
            ),
        },
        [first, .., last] if first.stall().is_none() && last.stall().is_none() => format!(
            "{}, {} {} %",
            fate(first),
            whose(last).0,
            kept_percent(last)
        ),
        [first, .., last] => format!("{}; {}", fate(first), fate(last)),
        [] => String::new(),
    }
}

/// What a way of doing the session is called in a sentence, with the verbs that belong to it.
fn whose(prediction: &SessionPrediction) -> (&'static str, &'static str, &'static str) {
    let name = predicted_name(prediction.of);
    match prediction.of {
        Predicted::By(Method::Straight) if prediction.sets.len() == 1 => {
            ("one straight set", "keeps", "stalls")
        }
        Predicted::By(Method::Straight) => ("straight sets", "keep", "stall"),
        Predicted::By(Method::Clusters | Method::Bands | Method::Chains) => (name, "keep", "stall"),
        _ => (name, "keeps", "stalls"),
    }
}

/// Where a way of doing the session stalls, or what velocity it keeps.
fn fate(prediction: &SessionPrediction) -> String {
    let (whose, keep, stalls) = whose(prediction);
    match prediction.stall() {
        Some(number) => format!("{whose} {stalls} at repetition {number}"),
        None => format!(
            "{whose} {keep} {} % of the best velocity",
            kept_percent(prediction)
        ),
    }
}

fn kept_percent(prediction: &SessionPrediction) -> String {
    rounded(100.0 * prediction.kept_share(), 0)
}

fn reached(prediction: &SessionPrediction, units: System) -> String {
    format!(
        "{}: {} {} lockout, mean velocity {}.",
        capital(predicted_name(prediction.of)),
        counted_noun(prediction.completed(), "repetition"),
        of_count(prediction.completed(), "reaches", "reach"),
        velocity(prediction.mean_velocity_m_s(), units)
    )
}

/// The repetition at which a set stalls.
#[must_use]
pub(crate) fn stalls_at(number: u32) -> String {
    format!("stalls at repetition {number}")
}

/// The name of a set's stretch.
#[must_use]
pub(crate) fn set_number(number: u32) -> String {
    format!("set {number}")
}

/// The words around the loads of the sets.
#[must_use]
pub fn loads_words(plan: &SessionPlan, units: System) -> FigureWords {
    let sets = plan.draft.sets.iter();
    let told: Vec<String> = sets
        .map(|set| {
            let load = units.mass(set.load.total);
            format!("{load} for {}.", groups_added(set))
        })
        .collect();
    FigureWords {
        title: loads_title(plan, units),
        subtitle: subtitle(plan, units),
        footnote: loads_note(plan),
        description: told.join(" "),
        caption: String::new(),
    }
}

fn loads_title(plan: &SessionPlan, units: System) -> String {
    let work: Vec<&PlannedSet> = plan.working_sets().collect();
    let repetitions: u32 = work.iter().map(|set| set.repetitions()).sum();
    let loads = work.iter().map(|set| set.load.total.as_kg());
    let low = loads.clone().fold(f64::INFINITY, f64::min);
    let high = loads.fold(0.0, f64::max);
    let words = |kg: f64| units.mass(Mass::from_kg(kg));
    let range = if low < high {
        format!("{} to {}", words(low), words(high))
    } else {
        words(high)
    };
    let felt = work.iter().find_map(|set| felt_of(set));
    let felt = felt.map_or_else(String::new, |[low, _, high]| {
        format!("; felt {} to {}", units.mass(low), units.mass(high))
    });
    format!(
        "{} in {} at {range}{felt}",
        counted_noun(repetitions, "repetition"),
        counted_noun(work.len(), "set")
    )
}

/// What is felt at the bottom, in the middle and at the top of a set with bands or chains on.
#[must_use]
pub(crate) fn felt_of(set: &PlannedSet) -> Option<[Mass; 3]> {
    set.notes.iter().find_map(|note| match note {
        SetNote::Felt(felt) | SetNote::PartsOn { felt, .. } => Some(*felt),
        SetNote::Without(_) | SetNote::StopAtLoss(_) => None,
    })
}

/// The level line of the maximum.
#[must_use]
pub(crate) fn one_rm_line(one_rm: Mass, units: System) -> String {
    format!("1RM {}", units.mass(one_rm))
}

/// Repetitions in a set's bar: "10 reps", "4 × 3", "3 + 3 + 2".
#[must_use]
pub(crate) fn groups_in_bar(set: &PlannedSet) -> String {
    match set.groups.as_slice() {
        [only] => format!("{only} reps"),
        [first, .., last] if first == last => format!("{} × {first}", set.groups.len()),
        _ => groups_added(set),
    }
}

/// What the words in the bars mean: groups only where a set has them.
fn loads_note(plan: &SessionPlan) -> String {
    let grouped = plan.draft.sets.iter().find(|set| set.groups.len() > 1);
    let groups = grouped.map_or_else(String::new, |set| {
        format!(
            "; \"{}\": groups with short rests between them",
            groups_in_bar(set)
        )
    });
    format!("Loads as the gym can build them{groups}.")
}

/// A rest between groups, over its place.
#[must_use]
pub(crate) fn rest_of(rest: Duration) -> String {
    format!("rest {}", rest_time(rest))
}

/// The words around the states of the most tired joint.
#[must_use]
pub fn fatigue_words(predictions: &[SessionPrediction]) -> FigureWords {
    let told: Vec<String> = predictions.iter().map(least_left).collect();
    FigureWords {
        title: fatigue_title(predictions),
        subtitle: "Share of the muscle that rests, works and is fatigued; what is not fatigued is what is left"
            .to_owned(),
        footnote: "Three-compartment model (Xia & Frey Law 2008), rest multiplier (Looft et al. 2018).".to_owned(),
        description: told.join(" "),
        caption: String::new(),
    }
}

/// The joint with the least left, and how much that is.
#[must_use]
pub(crate) fn most_tired(prediction: &SessionPrediction) -> (FatigueJoint, f64) {
    least_by_joint(prediction)
        .into_iter()
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .unwrap_or((FatigueJoint::General, 1.0))
}

fn fatigue_title(predictions: &[SessionPrediction]) -> String {
    let left = |p: &SessionPrediction| {
        let (_, share) = most_tired(p);
        format!("{} % left {}", rounded(100.0 * share, 0), in_sets(p.of))
    };
    let joint = predictions
        .first()
        .map_or(FatigueJoint::General, |p| most_tired(p).0);
    let words: Vec<String> = predictions.iter().map(left).collect();
    format!("{}: {}", capital(joint_name(joint)), words.join(", "))
}

/// "in clusters", "with bands", "in straight sets".
fn in_sets(of: Predicted) -> String {
    let name = predicted_name(of);
    match of {
        Predicted::By(Method::Straight) => "in straight sets".to_owned(),
        Predicted::By(Method::Pyramid) => "in the pyramid".to_owned(),
        Predicted::By(Method::Bands | Method::Chains) | Predicted::PlainWeight => {
            format!("with {name}")
        }
        Predicted::By(_) => format!("in {name}"),
    }
}

fn least_left(prediction: &SessionPrediction) -> String {
    let joints: Vec<String> = least_by_joint(prediction)
        .into_iter()
        .map(|(joint, share)| format!("{} {} %", joint_name(joint), rounded(100.0 * share, 0)))
        .collect();
    format!(
        "{}: least left {}.",
        capital(predicted_name(prediction.of)),
        joints.join(", ")
    )
}

/// The joint and the least that is left of it, below a panel's title.
#[must_use]
pub(crate) fn least_of_joint(joint: FatigueJoint, least_percent: f64) -> String {
    format!(
        "{}, least left {} %",
        joint_name(joint),
        rounded(least_percent, 0)
    )
}
