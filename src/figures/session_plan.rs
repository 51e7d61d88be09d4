//! A planned session: predicted velocity of every repetition; load and repetitions of every set.
//!
//! In: a plan. Out: scenes. A prediction's sets are drawn apart, because a rest lies between them.

use crate::draw::Scene;
use crate::error::{Error, FigureFault, Result};
use crate::narrative::quantities::{mass_in, rounded};
use crate::narrative::session::{groups_added, predicted_name};
use crate::plot::{
    Axis, Extent, Fill, Heading, LevelLine, LineChart, Look, Marker, Panel, Role, Series, Shade,
};
use crate::session::method::Method;
use crate::session::plan::{Predicted, SessionPlan, SessionPrediction};
use crate::session::planned_set::{PlannedSet, SetKind};
use crate::units::{Mass, System};

/// The fault of a figure of a session for which nothing was predicted.
pub(crate) fn nothing_predicted() -> Error {
    Error::no_answer(FigureFault::NothingPredicted)
}

/// Predicted velocities, one colour a way of doing the session.
///
/// **Fails** if nothing was predicted.
pub fn session_chart(plan: &SessionPlan, units: System, look: Look) -> Result<Scene> {
    let predictions = &plan.draft.predictions;
    if predictions.is_empty() {
        return Err(nothing_predicted());
    }
    let mut panel = Panel {
        axis: Axis::new("Mean velocity", "m/s"),
        ..Panel::default()
    };
    for (index, prediction) in predictions.iter().enumerate() {
        draw(prediction, Role::Series(index), &mut panel);
    }
    let last = predictions.iter().map(asked).max().unwrap_or(1);
    let step = (last / 12).max(1) as usize;
    let mut x = Axis::new("Repetition", "").reaching(Extent::Exactly([0.5, f64::from(last) + 0.5]));
    x.ticks = (1..=last)
        .step_by(step)
        .map(|number| (f64::from(number), number.to_string()))
        .collect();
    LineChart {
        heading: Heading {
            title: title(predictions),
            subtitle: subtitle(plan, units),
            footnote: "Three-compartment fatigue of the joints, coupled to the simulated repetition (sources in the JSON output).".to_owned(),
            description: description(predictions),
..super::sheet::phrases()
},
        x,
        panels: vec![panel],
        shades: every_other_set(&predictions[0]),
        ..LineChart::default()
    }
    .scene(look)
}

fn subtitle(plan: &SessionPlan, units: System) -> String {
    let name = plan.draft.movement.replace('-', " ");
    let top = plan
        .working_sets()
        .max_by(|a, b| a.load.total.as_kg().total_cmp(&b.load.total.as_kg()));
    let load = top.map_or_else(String::new, |set| {
        format!(", up to {}", mass_in(units, set.load.total))
    });
    format!(
        "{}, {}{load}, 1RM {}",
        capital(&name),
        plan.draft.method.name().replace('-', " "),
        mass_in(units, plan.draft.one_rm)
    )
}

/// Curves of a prediction, a set each, and where it stalls.
fn draw(prediction: &SessionPrediction, role: Role, panel: &mut Panel) {
    let mut before = 0;
    let mut name = predicted_name(prediction.of).to_owned();
    for set in &prediction.sets {
        let points: Vec<[f64; 2]> = set
            .repetitions
            .iter()
            .map(|rep| {
                let number = before + rep.number;
                [f64::from(number), rep.mean_velocity.as_m_s()]
            })
            .collect();
        if let (Some(number), true) = (set.stalls_at(), panel.markers.len() < 2) {
            panel.markers.push(Marker {
                at: [f64::from(before + number), 0.0],
                text: format!("stalls at repetition {}", before + number),
                detail: String::new(),
                role,
            });
        }
        panel.series.push(Series {
            name: std::mem::take(&mut name),
            points,
            role,
        });
        before += set.groups.iter().sum::<u32>();
    }
}

/// Sets 2, 4, … as shaded stretches, where there are several.
fn every_other_set(prediction: &SessionPrediction) -> Vec<Shade> {
    let mut before = 0;
    let mut shades = Vec::new();
    for (number, set) in (1..).zip(&prediction.sets) {
        let count: u32 = set.groups.iter().sum();
        if number % 2 == 0 {
            shades.push(Shade {
                from: f64::from(before) + 0.5,
                to: f64::from(before + count) + 0.5,
                label: format!("set {number}"),
            });
        }
        before += count;
    }
    shades
}

fn asked(prediction: &SessionPrediction) -> u32 {
    prediction
        .sets
        .iter()
        .map(|set| set.groups.iter().sum::<u32>())
        .sum()
}

/// The repetition that stalls, counted through the session.
fn stall(prediction: &SessionPrediction) -> Option<u32> {
    let mut before = 0;
    for set in &prediction.sets {
        if let Some(number) = set.stalls_at() {
            return Some(before + number);
        }
        before += set.groups.iter().sum::<u32>();
    }
    None
}

/// Share of the fastest repetition that the slowest keeps, %.
fn kept_percent(prediction: &SessionPrediction) -> String {
    let velocities = prediction
        .sets
        .iter()
        .flat_map(|set| &set.repetitions)
        .map(|rep| rep.mean_velocity.as_m_s());
    let fastest = velocities.clone().fold(0.0, f64::max);
    let slowest = velocities.fold(fastest, f64::min);
    rounded(100.0 * slowest / fastest.max(1e-9), 0)
}

fn title(predictions: &[SessionPrediction]) -> String {
    let fate = |prediction: &SessionPrediction| {
        let name = predicted_name(prediction.of);
        let (whose, keep, stalls) = match prediction.of {
            Predicted::By(Method::Straight) => ("straight sets", "keep", "stall"),
            Predicted::By(Method::Clusters | Method::Bands | Method::Chains) => {
                (name, "keep", "stall")
            }
            _ => (name, "keeps", "stalls"),
        };
        match stall(prediction) {
            Some(number) => format!("{whose} {stalls} at repetition {number}"),
            None => format!(
                "{whose} {keep} {} % of the best velocity",
                kept_percent(prediction)
            ),
        }
    };
    let text = match predictions {
        [hung, plain] if plain.of == Predicted::PlainWeight && stall(hung).is_none() => format!(
            "with {} {} m/s on average, with plain weight that is as hard {} m/s",
            predicted_name(hung.of),
            rounded(hung.mean_velocity_m_s(), 2),
            rounded(plain.mean_velocity_m_s(), 2)
        ),
        [one] => match stall(one) {
            Some(number) => format!("repetition {number} of {} stalls", asked(one)),
            None => format!(
                "the slowest repetition keeps {} % of the fastest",
                kept_percent(one)
            ),
        },
        [first, .., last] => format!("{}; {}", fate(first), fate(last)),
        [] => String::new(),
    };
    capital(&text)
}

fn description(predictions: &[SessionPrediction]) -> String {
    predictions
        .iter()
        .map(|p| {
            format!(
                "{}: {} repetitions reach lockout, mean velocity {} m/s.",
                predicted_name(p.of),
                p.completed(),
                rounded(p.mean_velocity_m_s(), 2)
            )
        })
        .collect::<Vec<_>>()
        .join(" ")
}

/// Half the width of a set's bar on an axis that counts sets.
const HALF_BAR: f64 = 0.38;

/// Load and repetitions of every set, warm-ups lighter.
///
/// **Fails** only where the canvas is too small.
pub fn loads_chart(plan: &SessionPlan, units: System, look: Look) -> Result<Scene> {
    let (unit, per_kg) = match units {
        System::Metric => ("kg", 1.0),
        System::Us => ("lb", Mass::from_kg(1.0).as_lb()),
    };
    let draft = &plan.draft;
    let value = |set: &PlannedSet| per_kg * set.load.total.as_kg();
    let one_rm = per_kg * draft.one_rm.as_kg();
    let top = draft.sets.iter().map(value).fold(one_rm, f64::max);
    let mut panel = Panel {
        axis: Axis::new("Load", unit).reaching(Extent::FromZeroTo(1.16 * top)),
        levels: vec![LevelLine {
            at: one_rm,
            label: format!("1RM {}", mass_in(units, draft.one_rm)),
        }],
        ..Panel::default()
    };
    let mut x = Axis::new(
        "Warm-up (w) and working sets, each with its repetitions",
        "",
    )
    .reaching(Extent::Exactly([0.4, draft.sets.len() as f64 + 0.6]));
    let mut number = 0;
    for (index, set) in draft.sets.iter().enumerate() {
        let at = index as f64 + 1.0;
        let is_work = set.kind == SetKind::Work;
        number += u32::from(is_work);
        let word = if is_work {
            number.to_string()
        } else {
            "w".to_owned()
        };
        x.ticks.push((at, word));
        bar(&mut panel, set, at, value(set));
    }
    LineChart {
        heading: Heading {
            title: loads_title(plan, units),
            subtitle: subtitle(plan, units),
            footnote: "Loads as the gym can build them; \"4 × 3\" are groups of 3 with short rests between them.".to_owned(),
            description: draft
                .sets
                .iter()
                .map(|set| format!("{} for {}.", mass_in(units, set.load.total), groups_added(set)))
                .collect::<Vec<_>>()
                .join(" "),
..super::sheet::phrases()
},
        x,
        panels: vec![panel],
        ..LineChart::default()
    }
    .scene(look)
}

fn bar(panel: &mut Panel, set: &PlannedSet, at: f64, value: f64) {
    let role = if set.kind == SetKind::Work {
        Role::CAPACITY
    } else {
        Role::Muted
    };
    let (left, right) = (at - HALF_BAR, at + HALF_BAR);
    panel.fills.push(Fill {
        upper: vec![[left, value], [right, value]],
        lower: vec![[left, 0.0], [right, 0.0]],
        role,
    });
    panel.series.push(Series {
        name: String::new(),
        points: vec![[left, 0.0], [left, value], [right, value], [right, 0.0]],
        role,
    });
    let repetitions = match set.groups.as_slice() {
        [first, .., last] if first == last => format!("{} × {first}", set.groups.len()),
        _ => groups_added(set),
    };
    panel.markers.push(Marker {
        at: [at, value],
        text: repetitions,
        detail: String::new(),
        role,
    });
}

fn loads_title(plan: &SessionPlan, units: System) -> String {
    let work: Vec<&PlannedSet> = plan.working_sets().collect();
    let repetitions: u32 = work.iter().map(|set| set.repetitions()).sum();
    let loads = work.iter().map(|set| set.load.total.as_kg());
    let (low, high) = (
        loads.clone().fold(f64::INFINITY, f64::min),
        loads.fold(0.0, f64::max),
    );
    let words = |kg: f64| mass_in(units, Mass::from_kg(kg));
    let range = if low < high {
        format!("{} to {}", words(low), words(high))
    } else {
        words(high)
    };
    let sets = if work.len() == 1 { "set" } else { "sets" };
    format!(
        "{repetitions} repetitions in {} {sets} at {range}",
        work.len()
    )
}

/// With a capital first letter.
pub(crate) fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().collect::<String>() + letters.as_str()
    })
}
