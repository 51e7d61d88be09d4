//! Sentences around the lecture's sessions, its log, and loads on lifts that do not rise, against the data that are drawn.

use super::below_titles::{effort, gained, mean_over_the_way};
use super::{Claim, Drawn, holds, is_definition, least, peak, says};
use regex::Captures;
use torquill::resistance::{Item, Setup, Weight};
use torquill::units::STANDARD_GRAVITY_M_S2;

/// Mean effort over the range under a load as drawn, %.
fn mean_effort(drawn: &Drawn, name: &str) -> Result<f64, String> {
    Ok(mean_over_the_way(&effort(drawn, name)?))
}

fn evener(told: &Captures<'_>, drawn: &Drawn) -> Result<(), String> {
    let gained = gained(drawn)?;
    says(&told[2], gained.abs(), 0.6, "by how much")?;
    holds((&told[1] == "more") == (gained >= 0.0), "its direction")
}

/// Points of a way of doing the session that are done.
fn done(drawn: &Drawn, name: &str) -> Result<Vec<f64>, String> {
    let points = drawn.curve(name)?.iter();
    Ok(points.map(|p| p[1]).filter(|v| *v > 1e-9).collect())
}

/// Velocity of the slowest repetition over that of the fastest.
fn kept(drawn: &Drawn, name: &str) -> Result<f64, String> {
    let all = done(drawn, name)?;
    let [low, high] = [f64::min, f64::max].map(|of| all.iter().copied().reduce(of));
    low.zip(high)
        .map(|(low, high)| low / high)
        .ok_or_else(|| "none".to_owned())
}

/// Change of the recent line a week, and how many weeks it lasts.
fn slope(drawn: &Drawn, name: &str) -> Result<[f64; 2], String> {
    let points = drawn.curve(name)?;
    let [first, last] = [points[0], points[points.len() - 1]];
    let weeks = last[0] - first[0];
    Ok([(last[1] - first[1]) / weeks, weeks])
}

/// Working sets: load and repetitions.
fn working(drawn: &Drawn) -> Vec<[f64; 2]> {
    let names: Vec<&str> = drawn.names().collect();
    let is_work = |name: &&str| name.parse::<u32>().is_ok();
    let sets = names.into_iter().filter(is_work);
    sets.filter_map(|name| drawn.curve(name).ok()?.first().copied())
        .collect()
}

/// The claims.
pub const SESSIONS: &[Claim<Drawn>] = &[
    Claim {
        reads: r"(?:A band makes|Chains make) effort over the .+ (less|more) even, by (\d+) %",
        holds: evener,
    },
    Claim {
        reads: r"Mean effort over the range is (\d+) % (with a band|with chains|with the cam) and (\d+) % (?:with plain weight|with a round pulley)",
        holds: |told, drawn| {
            let (hung, plain) = match &told[2] {
                "with the cam" => ("with a cam", "round pulley"),
                other => (other, "plain weight"),
            };
            says(&told[1], mean_effort(drawn, hung)?, 0.1, "hung")?;
            says(&told[3], mean_effort(drawn, plain)?, 0.1, "plain")
        },
    },
    Claim {
        reads: r"Effort is (\d+) % over a cam cut to the computed curve, (\d+) % to (\d+) % over a round one",
        holds: |told, drawn| {
            says(&told[1], mean_effort(drawn, "with a cam")?, 0.1, "with it")?;
            let round = effort(drawn, "round pulley")?;
            says(&told[2], least(&round)[1], 0.1, "least")?;
            says(&told[3], peak(&round)[1], 0.1, "greatest")
        },
    },
    Claim {
        reads: r"Where strength falls along the way, (a band|chains) adds? load just where the lifter has least",
        holds: |told, drawn| {
            let hung = drawn.curve(&format!("with {}", &told[1]))?;
            let held = drawn.curve("capacity")?;
            let last = held.len() - 1;
            holds(held[last][1] < held[0][1], "strength falls")?;
            holds(hung[last][1] > hung[0][1], "load is added at the end")
        },
    },
    Claim {
        reads: r"Over the cam the load is about the same share of what the lifter can hold at every place",
        holds: |_, drawn| {
            let own = effort(drawn, "with a cam")?;
            let spread = peak(&own)[1] - least(&own)[1];
            holds(spread < 2.0, "the same share")
        },
    },
    Claim {
        reads: r"A cam changes the moment arm of the stack with the angle, here from ([\d.]+) cm at the start to ([\d.]+) cm at the end",
        holds: |told, drawn| {
            let own = drawn.curve("with a cam")?;
            let [from, to] = [1, 2].map(|at| told[at].parse::<f64>().unwrap_or(f64::NAN));
            // The stack of one of the drawn setups pulls with its weight at either arm, rounded to a millimetre.
            let stack_kg = |setup: &Setup| -> f64 {
                let plain = setup.items.iter().filter_map(|item| match item {
                    Item::Weight(Weight::Load(mass)) => Some(mass.as_kg()),
                    _ => None,
                });
                plain.sum()
            };
            let ends = [(from, own[0][1]), (to, own[own.len() - 1][1])];
            let is_of = |setup: &Setup| {
                let stack_n = STANDARD_GRAVITY_M_S2 * stack_kg(setup);
                let mut ends = ends.iter();
                ends.all(|(arm, moment)| (arm - 100.0 * moment / stack_n).abs() < 0.0501)
            };
            holds(
                drawn.setups.iter().any(is_of),
                "moments are arms times the stack",
            )
        },
    },
    Claim {
        reads: r"Grey: a load that pulls aslant is held with another strength than one along the way",
        holds: |_, drawn| {
            let aslant = drawn
                .names()
                .find(|name| name.contains("along the pull of"));
            let own = drawn.curve(aslant.ok_or("no such line")?)?;
            let held = drawn.curve("capacity")?;
            let differs =
                |(own, held): (&[f64; 2], &[f64; 2])| (own[1] / held[1] - 1.0).abs() > 0.05;
            holds(own.iter().zip(held).any(differs), "another strength")
        },
    },
    Claim {
        reads: r"This one is cut to this lifter's own computed strength curve; a machine's has one shape for all who use it",
        holds: is_definition,
    },
    Claim {
        reads: r"(.+): flat for (\d+) weeks?, .+ evidence",
        holds: |told, drawn| {
            let [slope, weeks] = slope(drawn, "trend: flat")?;
            says(&told[2], weeks, 0.6, "weeks")?;
            let level = peak(drawn.curve("trend: flat")?)[1];
            holds(slope.abs() < 0.002 * level, "flat")
        },
    },
    Claim {
        reads: r"Bench press: flat over (\d+) weeks? \(([\u{2212}+\d.]+) kg a week, 95 % interval ([\u{2212}+\d.]+) to ([\u{2212}+\d.]+)\), .+",
        holds: |told, drawn| {
            let [slope, weeks] = slope(drawn, "trend: flat")?;
            says(&told[1], weeks, 0.6, "weeks")?;
            says(&told[2], slope, 0.001, "slope")?;
            let number = |text: &str| text.replace('\u{2212}', "-").parse::<f64>();
            let [low, high] = [number(&told[3]), number(&told[4])];
            let [low, high] = [low.unwrap_or(f64::NAN), high.unwrap_or(f64::NAN)];
            holds(low <= slope && slope <= high, "the slope in its interval")
        },
    },
    Claim {
        reads: r"An invented log|Single days scatter more than weeks of training change: only a line through many days, with its interval, tells a plateau from a bad week",
        holds: is_definition,
    },
    Claim {
        reads: r"Clusters keep (\d+) % of the best velocity; one straight set stalls at repetition (\d+)",
        holds: |told, drawn| {
            says(&told[1], 100.0 * kept(drawn, "clusters")?, 0.05, "kept")?;
            let straight = done(drawn, "straight")?.len();
            says(&told[2], straight as f64 + 1.0, 0.0, "stalls")
        },
    },
    Claim {
        reads: r"Clusters keep (\d+) % of the best velocity, one straight set (\d+) %",
        holds: |told, drawn| {
            for (printed, name) in [(1, "clusters"), (2, "straight")] {
                says(&told[printed], 100.0 * kept(drawn, name)?, 0.05, name)?;
            }
            let [grouped, straight] = [done(drawn, "clusters")?, done(drawn, "straight")?];
            holds(grouped.len() == straight.len(), "both do all of them")
        },
    },
    Claim {
        reads: r"(Clusters|Straight): (\d+) repetitions reach lockout, mean velocity ([\d.]+) m/s",
        holds: |told, drawn| {
            let own = done(drawn, &told[1].to_lowercase())?;
            says(&told[2], own.len() as f64, 0.0, "repetitions")?;
            let asked = done(drawn, "clusters")?.len() as f64;
            says(&told[3], own.iter().sum::<f64>() / asked, 1e-6, "velocity")
        },
    },
    Claim {
        reads: r"The same load and the same repetitions: short rests between small groups let part of the fatigue go: (.+)",
        holds: |told, drawn| {
            let [grouped, straight] = [done(drawn, "clusters")?, done(drawn, "straight")?];
            let more = grouped.len() > straight.len();
            let faster = kept(drawn, "clusters")? > kept(drawn, "straight")?;
            match &told[1] {
                "more of the repetitions reach lockout" => holds(more, "more are done"),
                "the slowest repetition keeps more of the velocity" => {
                    holds(!more && faster, "the slowest keeps more")
                }
                _ => holds(!more && !faster, "nothing is gained"),
            }
        },
    },
    Claim {
        reads: r"The rests come on top of the time of the set",
        holds: is_definition,
    },
    Claim {
        reads: r"(\d+) repetitions in (\d+) sets at ([\d.]+) kg to ([\d.]+) kg",
        holds: |told, drawn| {
            let sets = working(drawn);
            says(
                &told[1],
                sets.iter().map(|set| set[1]).sum(),
                0.0,
                "repetitions",
            )?;
            says(&told[2], sets.len() as f64, 0.0, "sets")?;
            let loads = || sets.iter().map(|set| set[0]);
            says(
                &told[3],
                loads().fold(f64::INFINITY, f64::min),
                0.0,
                "least",
            )?;
            says(&told[4], loads().fold(0.0, f64::max), 0.0, "most")
        },
    },
    Claim {
        reads: r"([\d.]+) kg for (\d+)",
        holds: |told, drawn| {
            let names: Vec<&str> = drawn.names().collect();
            let is_told = |name: &&str| {
                drawn.curve(name).is_ok_and(|points| {
                    says(&told[1], points[0][0], 1e-6, "load").is_ok()
                        && says(&told[2], points[0][1], 0.0, "repetitions").is_ok()
                })
            };
            holds(names.iter().any(is_told), "a set of the table")
        },
    },
    Claim {
        reads: r"Load rises and repetitions fall from set to set: many repetitions while the load is light, few when it is heavy",
        holds: |_, drawn| {
            let sets = working(drawn);
            let rises = |pair: &[[f64; 2]]| pair[1][0] > pair[0][0] && pair[1][1] <= pair[0][1];
            holds(sets.windows(2).all(rises), "load rises, repetitions fall")
        },
    },
    Claim {
        reads: r"Each set is planned for what the sets before it leave",
        holds: is_definition,
    },
];
