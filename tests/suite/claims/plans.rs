//! Random planned sessions: the words around the figures of a plan against its sets and its predicted repetitions.

use super::{Claim, check, compiled, holds, says, with_changed_numbers};
use crate::lift_by_another_name::LIFTS;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rayon::prelude::{IntoParallelIterator, ParallelIterator};
use regex::Captures;
use std::collections::BTreeMap;
use torquill::library::Library;
use torquill::narrative::session_figure_words::{fatigue_words, loads_words, session_words};
use torquill::narrative::session_words::joint_name;
use torquill::session::draft::{Predicted, SessionPlan, SessionPrediction};
use torquill::session::method::METHODS;
use torquill::session::planned_set::SetNote;
use torquill::setups::Watch;
use torquill::study::{MethodChoice, PersonTold, PlanQuestion, plan};
use torquill::units::System;

/// Loads of the working sets, kg.
fn loads(plan: &SessionPlan) -> Vec<f64> {
    plan.working_sets()
        .map(|set| set.load.total.as_kg())
        .collect()
}

fn least_and_most(values: &[f64]) -> [f64; 2] {
    [f64::min, f64::max].map(|of| values.iter().copied().reduce(of).unwrap_or(f64::NAN))
}

/// The first repetition that does not reach lockout, counted through the session.
fn stall(one: &SessionPrediction) -> Option<usize> {
    let mut before = 0;
    for set in &one.sets {
        let missed = set.repetitions.iter().position(|rep| !rep.completed);
        if let Some(missed) = missed {
            return Some(before + missed + 1);
        }
        before += set.groups.iter().sum::<u32>() as usize;
    }
    None
}

/// Mean velocities of all repetitions, m/s.
fn velocities(one: &SessionPrediction) -> Vec<f64> {
    let all = one.sets.iter().flat_map(|set| &set.repetitions);
    all.map(|rep| rep.mean_velocity.as_m_s()).collect()
}

/// Velocity of the slowest repetition over that of the fastest, %.
fn kept(one: &SessionPrediction) -> f64 {
    let [low, high] = least_and_most(&velocities(one));
    100.0 * low / high
}

/// Mean velocity of what was asked for; what is not done has none.
fn mean_velocity(one: &SessionPrediction) -> f64 {
    let asked: u32 = one.sets.iter().flat_map(|set| &set.groups).sum();
    velocities(one).iter().sum::<f64>() / f64::from(asked)
}

/// What is not fatigued of each joint at the least, %.
fn least_left(one: &SessionPrediction) -> BTreeMap<&'static str, f64> {
    let mut least = BTreeMap::new();
    for moment in &one.fatigue {
        let left = 100.0 * (1.0 - moment.shares.fatigued);
        let known = least.entry(joint_name(moment.joint)).or_insert(100.0_f64);
        *known = known.min(left);
    }
    least
}

fn name(one: &SessionPrediction) -> &'static str {
    match one.of {
        Predicted::By(method) => method.name(),
        Predicted::PlainWeight => "plain weight",
    }
}

/// The prediction that a way of doing the session is called by.
fn called<'a>(told: &str, plan: &'a SessionPlan) -> Result<&'a SessionPrediction, String> {
    let told = told.to_lowercase();
    let bare = told.trim_start_matches("in ").trim_start_matches("with ");
    let bare = bare.trim_start_matches("the ");
    let bare = match bare {
        "one straight set" | "straight sets" => "straight",
        other => other,
    };
    let mut all = plan.draft.predictions.iter();
    let own = all.find(|one| name(one) == bare);
    own.ok_or_else(|| format!("nothing is predicted of {told}"))
}

/// "clusters keep 91 % of the best velocity", "straight sets stall at repetition 7".
fn fate(told: &str, plan: &SessionPlan) -> Result<(), String> {
    let reads =
        compiled(r"(.+?) (?:stalls? at repetition (\d+)|keeps? (\d+) % of the best velocity)");
    let words = reads.captures(told).ok_or(format!("`{told}` is no fate"))?;
    let one = called(&words[1], plan)?;
    if let Some(number) = words.get(2) {
        let at = stall(one).ok_or("nothing stalls")?;
        return says(number.as_str(), at as f64, 0.0, "stalls");
    }
    holds(stall(one).is_none(), "nothing stalls")?;
    says(&words[3], kept(one), 1e-6, "kept")
}

fn sets_told(told: &Captures<'_>, plan: &SessionPlan) -> Result<(), String> {
    let sets: Vec<_> = plan.working_sets().collect();
    let all: u32 = sets.iter().flat_map(|set| &set.groups).sum();
    says(&told[1], f64::from(all), 0.0, "repetitions")?;
    says(&told[2], sets.len() as f64, 0.0, "sets")?;
    let [low, high] = least_and_most(&loads(plan));
    match told.get(4) {
        Some(most) => {
            says(&told[3], low, 0.0, "least load")?;
            says(most.as_str(), high, 0.0, "greatest load")?;
            holds(low < high, "two loads")?;
        }
        None => {
            says(&told[3], high, 0.0, "load")?;
            holds(low >= high, "one load")?;
        }
    }
    let felt = sets
        .iter()
        .flat_map(|set| &set.notes)
        .find_map(|note| match note {
            SetNote::Felt(felt) | SetNote::PartsOn { felt, .. } => Some(felt),
            _ => None,
        });
    match (told.get(5), felt) {
        (Some(bottom), Some(felt)) => {
            says(bottom.as_str(), felt[0].as_kg(), 0.0, "felt at the bottom")?;
            says(&told[6], felt[2].as_kg(), 0.0, "felt at the top")
        }
        (None, None) => Ok(()),
        _ => Err("whether another load is felt".to_owned()),
    }
}

/// Lift, method, load and 1RM of a session.
pub const SESSION: &str = r"(.+?), (\S.*?), (up to )?([\d.]+) kg, 1RM ([\d.]+) kg";

/// Loads of the working sets and the 1RM are those that [`SESSION`] tells.
pub fn session_is(told: &Captures<'_>, loads: &[f64], one_rm_kg: f64) -> Result<(), String> {
    let [low, high] = least_and_most(loads);
    says(&told[4], high, 1e-4, "greatest load")?;
    holds((low < high) == told.get(3).is_some(), "up to it")?;
    says(&told[5], one_rm_kg, 1e-4, "1RM")
}

/// What fatigue is computed by.
pub const FATIGUE_MODEL: &str = r"Fatigue of the joints in three compartments \(Xia & Frey Law 2008\), coupled to the simulated repetition";

const PLANS: &[Claim<SessionPlan>] = &[
    Claim {
        reads: r"(\d+) repetitions in (\d+) sets? at ([\d.]+) kg(?: to ([\d.]+) kg)?(?:; felt ([\d.]+) kg to ([\d.]+) kg)?",
        holds: sets_told,
    },
    Claim {
        reads: r"([\d.]+) kg for (\d+(?: \+ \d+)*)",
        holds: |told, plan| {
            let groups: Vec<u32> = told[2]
                .split(" + ")
                .filter_map(|n| n.parse().ok())
                .collect();
            let is_told = |set: &torquill::session::planned_set::PlannedSet| {
                set.groups == groups && says(&told[1], set.load.total.as_kg(), 0.0, "").is_ok()
            };
            holds(plan.draft.sets.iter().any(is_told), "a set of the plan")
        },
    },
    Claim {
        reads: r#"Loads as the gym can build them(?:; "(.+)": groups with short rests between them)?"#,
        holds: |told, plan| {
            let mut sets = plan.draft.sets.iter();
            let grouped = sets.find(|set| set.groups.len() > 1);
            let (Some(words), Some(set)) = (told.get(1), grouped) else {
                return holds(told.get(1).is_none() && grouped.is_none(), "groups");
            };
            let each: Vec<String> = set.groups.iter().map(u32::to_string).collect();
            let is_added = words.as_str() == each.join(" + ");
            let same = format!("{} × {}", each.len(), each[0]);
            let are_same = set.groups.iter().all(|group| *group == set.groups[0]);
            holds(
                is_added || are_same && words.as_str() == same,
                "the groups of the set",
            )
        },
    },
    Claim {
        reads: SESSION,
        holds: |told, plan| {
            let lift = plan.draft.lift.title.to_lowercase();
            holds(told[1].to_lowercase() == lift, "the lift")?;
            let method = plan.draft.method.name().replace('-', " ");
            holds(told[2] == method, "the method")?;
            session_is(told, &loads(plan), plan.draft.lift.one_rm.as_kg())
        },
    },
    Claim {
        reads: r"With (.+?) ([\d.]+) m/s on average, with plain weight that is as hard ([\d.]+) m/s",
        holds: |told, plan| {
            says(
                &told[2],
                mean_velocity(called(&told[1], plan)?),
                1e-6,
                "hung",
            )?;
            says(
                &told[3],
                mean_velocity(called("plain weight", plan)?),
                1e-6,
                "plain",
            )
        },
    },
    Claim {
        reads: r"Repetition (\d+) of (\d+) stalls",
        holds: |told, plan| {
            let one = plan.draft.predictions.first().ok_or("no prediction")?;
            let asked: u32 = one.sets.iter().flat_map(|set| &set.groups).sum();
            says(
                &told[1],
                stall(one).ok_or("nothing stalls")? as f64,
                0.0,
                "stalls",
            )?;
            says(&told[2], f64::from(asked), 0.0, "asked")
        },
    },
    Claim {
        reads: r"The slowest repetition keeps (\d+) % of the fastest",
        holds: |told, plan| {
            let one = plan.draft.predictions.first().ok_or("no prediction")?;
            holds(stall(one).is_none(), "nothing stalls")?;
            says(&told[1], kept(one), 1e-6, "kept")
        },
    },
    Claim {
        reads: r"(.+? of the best velocity), (.+?) (\d+) %",
        holds: |told, plan| {
            fate(&told[1], plan)?;
            let last = called(&told[2], plan)?;
            holds(stall(last).is_none(), "nothing stalls")?;
            says(&told[3], kept(last), 1e-6, "kept")
        },
    },
    Claim {
        reads: r"(.+?(?: stalls? at repetition \d+| of the best velocity)); (.+)",
        holds: |told, plan| {
            fate(&told[1], plan)?;
            fate(&told[2], plan)
        },
    },
    Claim {
        reads: r"(.+): (\d+) repetitions reach lockout, mean velocity ([\d.]+) m/s",
        holds: |told, plan| {
            let one = called(&told[1], plan)?;
            let all = one.sets.iter().flat_map(|set| &set.repetitions);
            let done = all.filter(|rep| rep.completed).count();
            says(&told[2], done as f64, 0.0, "repetitions")?;
            says(&told[3], mean_velocity(one), 1e-6, "velocity")
        },
    },
    Claim {
        reads: r"(.+): least left (.+)",
        holds: |told, plan| {
            let least = least_left(called(&told[1], plan)?);
            let parts: Vec<&str> = told[2].split(", ").collect();
            holds(parts.len() == least.len(), "every joint is told")?;
            parts.iter().try_for_each(|part| {
                let words = part.trim_end_matches(" %");
                let (joint, printed) = words.rsplit_once(' ').ok_or("no share")?;
                let left = least.get(joint).ok_or(format!("no {joint}"))?;
                says(printed, *left, 1e-6, joint)
            })
        },
    },
    Claim {
        reads: r"(\S+): (\d+ % left .+)",
        holds: |told, plan| {
            let parts: Vec<&str> = told[2].split(", ").collect();
            holds(
                parts.len() == plan.draft.predictions.len(),
                "every way is told",
            )?;
            let first = called(parts[0].split_once(" left ").ok_or("nothing left")?.1, plan)?;
            let own = least_left(first);
            let joint = own
                .get(told[1].to_lowercase().as_str())
                .ok_or("no such joint")?;
            let [lowest, _] = least_and_most(&own.values().copied().collect::<Vec<_>>());
            holds((joint - lowest).abs() < 1e-6, "the most tired joint")?;
            parts.iter().try_for_each(|part| {
                let (printed, way) = part.split_once(" % left ").ok_or("nothing left")?;
                let left = least_left(called(way, plan)?);
                let [lowest, _] = least_and_most(&left.values().copied().collect::<Vec<_>>());
                says(printed, lowest, 1e-6, part)
            })
        },
    },
    Claim {
        reads: FATIGUE_MODEL,
        holds: super::is_definition,
    },
    Claim {
        reads: r"Share of the muscle that rests, works and is fatigued; what is not fatigued is what is left|Three-compartment model \(Xia & Frey Law 2008\), rest multiplier \(Looft et al\. 2018\)",
        holds: super::is_definition,
    },
];

/// A random plan of one session; `None` where nobody may or can do it so.
fn random_plan(lift: &str, seed: u64) -> Option<SessionPlan> {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let library = Library::built_in();
    let lifters = [
        "reference-man",
        "reference-woman",
        "tall-novice",
        "heavy-lifter",
    ];
    let (method, _) = METHODS[seed as usize % METHODS.len()];
    let months = [None, Some(8.0), Some(60.0)][rng.random_range(0..3)];
    let question = PlanQuestion {
        lifter: Some(lifters[rng.random_range(0..4)].to_owned()),
        methods: MethodChoice::One(method),
        person: PersonTold {
            training_months: months,
            ..PersonTold::default()
        },
        gym: Some("strength-lab".to_owned()),
        ..PlanQuestion::usual(lift)
    };
    let answer = plan(&question, &library, &Watch::default()).ok()?;
    answer
        .sessions
        .into_iter()
        .next()
        .map(|session| session.plan)
}

/// The words around all figures of a plan.
fn texts(plan: &SessionPlan) -> Vec<String> {
    let mut words = vec![loads_words(plan, System::Metric)];
    if !plan.draft.predictions.is_empty() {
        words.push(session_words(plan, System::Metric));
        words.push(fatigue_words(&plan.draft.predictions));
    }
    let each = words.into_iter();
    each.flat_map(|of| [of.title, of.subtitle, of.footnote, of.description])
        .collect()
}

#[test]
fn law_every_sentence_around_random_plans_follows_from_their_sets() {
    let cases: Vec<(usize, &str)> = LIFTS.into_iter().cycle().enumerate().take(14).collect();
    let told = cases.into_par_iter().map(|(seed, lift)| {
        let Some(plan) = random_plan(lift, seed as u64) else {
            return Ok(0);
        };
        for text in texts(&plan) {
            check(&text, PLANS, &plan).map_err(|fault| format!("{lift}, plan {seed}: {fault}"))?;
        }
        Ok::<usize, String>(1)
    });
    let told: Vec<Result<usize, String>> = told.collect();
    let faults: Vec<&String> = told.iter().filter_map(|one| one.as_ref().err()).collect();
    assert!(faults.is_empty(), "{faults:#?}");
    let count: usize = told.iter().flatten().sum();
    assert!(count > 7, "{count} plans");
}

#[test]
fn fault_a_changed_number_of_a_plan_is_found() {
    let mut changed = 0;
    for plan in (0..3).filter_map(|seed| random_plan("bench-press", seed)) {
        for text in texts(&plan) {
            for wrong in with_changed_numbers(&text) {
                assert!(check(&wrong, PLANS, &plan).is_err(), "{wrong}");
                changed += 1;
            }
        }
    }
    assert!(changed > 20, "{changed} numbers");
}
