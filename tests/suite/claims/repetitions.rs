//! Random repetitions: title and sentences of `rep`, which its figure has too, against the moments of the motion.

use super::strength::{CLAIMS, Curves, signed};
use super::{Claim, check, compiled, holds, says, with_changed_numbers};
use crate::lift_by_another_name::LIFTS;
use crate::power::somebody;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rayon::prelude::{IntoParallelIterator, ParallelIterator};
use regex::Captures;
use torquill::movement::Measure;
use torquill::narrative::repetition_words::rep_sentences;
use torquill::rep::{RepEnd, RepOptions, RepSample};
use torquill::resistance::Setup;
use torquill::study::{Heaviness, Question, RepStudy, repetition, study};
use torquill::units::{Mass, System};

/// What a lift's velocity falls and rises by where it has a region, share of its greatest.
const SEEN: f64 = 0.02;

/// The first peak and the least place behind it between which velocity falls by so much, and behind which it rises by as much or the
/// load stops.
fn dip(lift: &[RepSample], by: f64, stops: bool) -> Option<[usize; 2]> {
    let mut peak = 0;
    let mut low: Option<usize> = None;
    for at in 0..lift.len() {
        let speed = |at: usize| lift[at].velocity;
        match low {
            None if speed(at) > speed(peak) => peak = at,
            None if speed(peak) - speed(at) > by => low = Some(at),
            None => {}
            Some(least) if speed(at) < speed(least) => low = Some(at),
            Some(least) if speed(at) - speed(least) > by => return Some([peak, least]),
            Some(_) => {}
        }
    }
    // A load that stops is slowest at its last moment.
    low.filter(|_| stops).map(|_| [peak, lift.len() - 1])
}

fn greatest(lift: &[RepSample]) -> f64 {
    lift.iter()
        .map(|moment| moment.velocity)
        .fold(0.0, f64::max)
}

/// The region in motion.
fn region(rep: &RepStudy) -> Option<[RepSample; 2]> {
    let lift = rep.trace.lifting();
    let stops = matches!(rep.trace.outcome, RepEnd::Stalled { .. });
    let ends = dip(lift, SEEN * greatest(lift), stops)?;
    Some(ends.map(|at| lift[at]))
}

/// A place in words is this one, m or rad of the way.
fn place_is(told: &str, position: f64, rep: &RepStudy) -> Result<(), String> {
    let pose = &rep.still.range.poses[0].coordinates[0];
    let value = match rep.trace.measure {
        Measure::Force => 100.0 * position,
        Measure::Torque => (pose.angle_rad + pose.slope_rad.signum() * position).to_degrees(),
    };
    let told = signed(told);
    let printed = match told.as_str() {
        "at the start" => "0",
        other => other
            .trim_start_matches("at ")
            .split(' ')
            .next()
            .unwrap_or_default(),
    };
    says(printed, value, 1e-6, "place")
}

/// "0.24 m/s", "95 deg/s".
fn speed_is(told: &str, velocity: f64) -> Result<(), String> {
    let (printed, unit) = told.split_once(' ').ok_or("no speed")?;
    let shown = match unit {
        "deg/s" => velocity.to_degrees(),
        _ => velocity,
    };
    says(printed, shown, 1e-9, "speed")
}

/// What holds of the first moment at or behind a place of the range, or of the one before it.
fn passing(
    rep: &RepStudy,
    range: f64,
    is_so: impl Fn(&RepSample) -> Result<(), String>,
) -> Result<(), String> {
    let lift = rep.trace.lifting();
    let behind = lift.iter().position(|moment| moment.range >= range);
    let behind = behind.ok_or("it never gets there")?;
    is_so(&lift[behind]).or_else(|fault| match behind {
        0 => Err(fault),
        behind => is_so(&lift[behind - 1]),
    })
}

/// Where the lift is hardest held still.
fn hardest(rep: &RepStudy) -> Result<f64, String> {
    let sticking = rep.still.setups[0].sticking.ok_or("no hardest place")?;
    Ok(sticking.point_range)
}

/// What is held still at a place, on the line between two samples.
fn held(rep: &RepStudy, range: f64) -> f64 {
    let values = rep.still.capacity.values();
    let at = range.clamp(0.0, 1.0) * (values.len() - 1) as f64;
    let below = (at.floor() as usize).min(values.len() - 2);
    values[below] + (at - below as f64) * (values[below + 1] - values[below])
}

/// How far the slowest place is behind the hardest one, share of the range.
fn apart(rep: &RepStudy) -> Result<f64, String> {
    let [_, slowest] = region(rep).ok_or("no region")?;
    Ok(slowest.range - hardest(rep)?)
}

/// "4 cm": how far both places are apart, as they are printed.
fn distance_is(told: &str, rep: &RepStudy) -> Result<(), String> {
    let [_, slowest] = region(rep).ok_or("no region")?;
    let pose = &rep.still.range.poses[0].coordinates[0];
    let moving = match rep.trace.measure {
        Measure::Force => 100.0 * slowest.position,
        Measure::Torque => {
            (pose.angle_rad + pose.slope_rad.signum() * slowest.position).to_degrees()
        }
    };
    let still = rep.still.axis_value(hardest(rep)?);
    let number = told.split(' ').next().unwrap_or_default();
    says(
        number,
        (moving.round() - still.round()).abs(),
        0.0,
        "distance",
    )
}

fn ended(rep: &RepStudy, is_so: fn(&RepEnd) -> bool) -> Result<(), String> {
    holds(
        is_so(&rep.trace.outcome),
        &format!("{:?}", rep.trace.outcome),
    )
}

/// The last moment of the whole repetition is there.
fn last_place_is(told: &str, rep: &RepStudy) -> Result<(), String> {
    let last = rep.trace.samples.last().ok_or("nothing moves")?;
    place_is(told, last.position, rep)
}

fn held_still(told: &Captures<'_>, rep: &RepStudy) -> Result<(), String> {
    let still = &rep.still;
    let last = (still.range.poses.len() - 1) as f64;
    let at = (0..still.range.poses.len()).map(|at| still.axis_value(at as f64 / last));
    let curves = Curves {
        at: at.collect(),
        capacity: still.capacity.values(),
        loads: vec![("load".to_owned(), still.setups[0].effort.clone())],
        still: true,
        ..Curves::default()
    };
    let effort: f64 = told[2].parse().map_err(|_| "no effort")?;
    // The same claim as that of a strength curve's figure, which tells percent.
    let as_told = |more: &str| {
        let percent = (100.0 * effort).round();
        let words = format!(
            "With load, effort is greatest {}, {percent} %{more}; the hardest part lies {}",
            &told[1], &told[3]
        );
        check(&words, CLAIMS, &curves)
    };
    as_told("").or_else(|_| as_told(", more than can be held"))
}

const REPETITIONS: &[Claim<RepStudy>] = &[
    Claim {
        reads: r".+: ([\d.]+) kg do not leave the start",
        holds: |told, rep| {
            says(&told[1], rep.load.as_kg(), 0.0, "load")?;
            ended(rep, |end| matches!(end, RepEnd::Stalled { .. }))?;
            let lift = rep.trace.lifting();
            let moved = lift.iter().map(|moment| moment.range - rep.options.from);
            holds(moved.fold(0.0, f64::max) < 0.02, "it does not move")
        },
    },
    Claim {
        reads: r".+: the load stops (.+)",
        holds: |told, rep| {
            ended(rep, |end| matches!(end, RepEnd::Stalled { .. }))?;
            last_place_is(&told[1], rep)
        },
    },
    Claim {
        reads: r".+: thrown to the end, but not held (.+)",
        holds: |told, rep| {
            ended(rep, |end| matches!(end, RepEnd::NotHeld { .. }))?;
            last_place_is(&told[1], rep)
        },
    },
    Claim {
        reads: r".+: the load gets away in lowering, (.+)",
        holds: |told, rep| {
            ended(rep, |end| matches!(end, RepEnd::LostInLowering { .. }))?;
            last_place_is(&told[1], rep)
        },
    },
    Claim {
        reads: r".+: slowest (.+)",
        holds: |told, rep| {
            ended(rep, |end| matches!(end, RepEnd::Lockout))?;
            let [_, slowest] = region(rep).ok_or("no region")?;
            place_is(&told[1], slowest.position, rep)
        },
    },
    Claim {
        reads: r".+: lifted without a sticking region",
        holds: |_, rep| {
            ended(rep, |end| matches!(end, RepEnd::Lockout))?;
            holds(region(rep).is_none(), "no region")
        },
    },
    Claim {
        reads: r".+: lifted, its sticking region too slight to count",
        holds: |_, rep| {
            ended(rep, |end| matches!(end, RepEnd::Lockout))?;
            holds(region(rep).is_none(), "no region that counts")?;
            let lift = rep.trace.lifting();
            let slight = dip(lift, 0.01 * SEEN * greatest(lift), false);
            holds(slight.is_some(), "a slight dip")
        },
    },
    Claim {
        reads: r"In motion it slows(| until it stops,) from (.+?) \((.+?) after ([\d.]+) s\) to (.+?) \((.+?) after ([\d.]+) s\)",
        holds: |told, rep| {
            let is_lifted = matches!(rep.trace.outcome, RepEnd::Lockout);
            holds(is_lifted == told[1].is_empty(), "whether it stops")?;
            let begin = rep.trace.lifting()[0].time_s;
            let [peak, slowest] = region(rep).ok_or("no region")?;
            for (first, moment) in [(2, peak), (5, slowest)] {
                place_is(&told[first], moment.position, rep)?;
                speed_is(&told[first + 1], moment.velocity)?;
                says(&told[first + 2], moment.time_s - begin, 1e-9, "time")?;
            }
            Ok(())
        },
    },
    Claim {
        reads: r"Held still it is hardest (.+) \(effort ([\d.]+); within 5 % of that (.+)\)",
        holds: held_still,
    },
    Claim {
        reads: r"At the start full effort holds ([\d.]+) (?:N|N·m), (\d+) % more after the lowering, and the load asks for ([\d.]+) (?:N|N·m): there is nothing left to move it",
        holds: |told, rep| {
            let first = rep.trace.lifting().first();
            let first = first.ok_or("no lift begins")?;
            let most = held(rep, rep.options.from);
            says(&told[1], most, 1e-6, "held")?;
            says(&told[2], 100.0 * first.enhancement, 1e-6, "more")?;
            says(&told[3], first.demand, 1e-6, "asked")?;
            let left = most * (1.0 + first.enhancement) - first.demand;
            holds(left < 0.02 * most, &format!("{left} are left"))
        },
    },
    Claim {
        reads: r"In motion it slows from (\S+ \S+) (.+?) to (\S+ \S+) (.+?) and gains speed again: a dip of less than 2 % of its greatest velocity \((.+)\), which does not count as a sticking region",
        holds: |told, rep| {
            let lift = rep.trace.lifting();
            let most = greatest(lift);
            holds(region(rep).is_none(), "no region that counts")?;
            speed_is(&told[5], most)?;
            let is_told = |by: i32| {
                let found = dip(lift, SEEN * most * 0.5_f64.powi(by), false);
                let [peak, slowest] = found.ok_or("no dip")?;
                speed_is(&told[1], lift[peak].velocity)?;
                place_is(&told[2], lift[peak].position, rep)?;
                speed_is(&told[3], lift[slowest].velocity)?;
                place_is(&told[4], lift[slowest].position, rep)
            };
            // The deepest one shows first, as ever smaller ones count.
            let mut found = (1..=6).map(is_told);
            let first = found.find(|told: &Result<(), String>| {
                told.as_ref().err().is_none_or(|fault| fault != "no dip")
            });
            first.unwrap_or_else(|| Err("no dip".to_owned()))
        },
    },
    Claim {
        reads: r"In motion its velocity has no dip(?:: it passes that place at (.+?), with (?:(\d+) % of extra force from the lowering and )?(\d+) % of full activation)?",
        holds: |told, rep| {
            holds(region(rep).is_none(), "no region")?;
            let Some(speed) = told.get(1) else {
                return Ok(());
            };
            passing(rep, hardest(rep)?, |moment| {
                speed_is(speed.as_str(), moment.velocity)?;
                told.get(2).map_or(Ok(()), |more| {
                    says(more.as_str(), 100.0 * moment.enhancement, 1e-6, "extra")
                })?;
                says(&told[3], 100.0 * moment.activation, 1e-6, "activation")
            })
        },
    },
    Claim {
        reads: r"So the lift begins at its hardest place, with (?:(\d+) % of extra force from the lowering and )?(\d+) % of full activation; once the load moves, what is held still grows faster than speed takes away",
        holds: |told, rep| {
            let place = hardest(rep)?;
            holds(place - rep.options.from < 0.03, "it begins there")?;
            passing(rep, place, |moment| {
                told.get(1).map_or(Ok(()), |more| {
                    says(more.as_str(), 100.0 * moment.enhancement, 1e-6, "extra")
                })?;
                says(&told[2], 100.0 * moment.activation, 1e-6, "activation")
            })
        },
    },
    Claim {
        reads: r"So it is slowest where it is hardest held still: the effort curve alone tells the place",
        holds: |_, rep| holds(apart(rep)?.abs() < 0.03, "one place"),
    },
    Claim {
        reads: r"It stops (.+?) before the place that is hardest held still: it never gets there",
        holds: |told, rep| {
            holds(apart(rep)? < 0.0, "before it")?;
            distance_is(&told[1], rep)
        },
    },
    Claim {
        reads: r"So it is slowest (.+?) later than it is hardest: (.+); moving costs (\d+) % of the force held still",
        holds: |told, rep| {
            holds(apart(rep)? >= 0.03, "later")?;
            distance_is(&told[1], rep)?;
            let [_, slowest] = region(rep).ok_or("no region")?;
            let cost = 1.0 - slowest.capacity / held(rep, slowest.range);
            says(&told[3], 100.0 * cost.max(0.0), 1e-6, "cost of moving")?;
            let place = hardest(rep)?;
            let how = compiled(
                r"it (begins at|passes) the hardest place(?: at ([\d.]+ [^\s,]+))?,? ?(?:with (\d+) % of extra force (?:left )?from the lowering)?,?(?: gains speed,)?(?: and (?:goes on slowing|slows) ?(?:until (\d+) % is left|behind it))?",
            );
            let how = how
                .captures(&told[2])
                .ok_or_else(|| format!("`{}` is no way", &told[2]))?;
            holds(
                (place - rep.options.from < 0.03) == (&how[1] == "begins at"),
                "whether it begins there",
            )?;
            passing(rep, place, |moment| {
                how.get(2)
                    .map_or(Ok(()), |speed| speed_is(speed.as_str(), moment.velocity))?;
                how.get(3).map_or(Ok(()), |more| {
                    says(more.as_str(), 100.0 * moment.enhancement, 1e-6, "extra")
                })
            })?;
            how.get(4).map_or(Ok(()), |left| {
                says(left.as_str(), 100.0 * slowest.enhancement, 1e-6, "left")
            })
        },
    },
    Claim {
        reads: r"So it is slowest (.+?) earlier than it is hardest: effort there is ([\d.]+) already, activation (\d+) %(?: and the extra force from the lowering (\d+) %)?; behind it the load has gained speed again \((.+?) at the hardest place\)",
        holds: |told, rep| {
            holds(apart(rep)? <= -0.03, "earlier")?;
            distance_is(&told[1], rep)?;
            let [_, slowest] = region(rep).ok_or("no region")?;
            let effort = slowest.demand / held(rep, slowest.range);
            says(&told[2], effort, 1e-6, "effort there")?;
            says(&told[3], 100.0 * slowest.activation, 1e-6, "activation")?;
            told.get(4).map_or(Ok(()), |left| {
                says(left.as_str(), 100.0 * slowest.enhancement, 1e-6, "left")
            })?;
            passing(rep, hardest(rep)?, |moment| {
                speed_is(&told[5], moment.velocity)?;
                holds(moment.velocity > slowest.velocity, "faster again")
            })
        },
    },
];

/// A random repetition; `None` where somebody cannot do it so.
fn random_repetition(lift: &str, seed: u64) -> Option<RepStudy> {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let model = somebody(&mut rng, lift)?;
    let question = Question {
        samples: 101,
        ..Question::new(lift, &model.movement, &model.lifter)
    };
    let bare = study(&question, &[]).ok()?;
    let values = bare.capacity.values().into_iter();
    let weakest = values.fold(f64::INFINITY, f64::min);
    let arm_m = match bare.range.measure {
        Measure::Torque => 0.3,
        Measure::Force => 1.0,
    };
    let kg = rng.random_range(0.4..1.3) * weakest / 9.81 / arm_m;
    let load = Heaviness::Load(Mass::from_kg(kg.clamp(0.5, 400.0)));
    let options = RepOptions::usual_for(&model.movement);
    repetition(&question, &Setup::default(), load, &options).ok()
}

#[test]
fn law_every_sentence_of_random_repetitions_follows_from_their_moments() {
    let cases: Vec<(usize, &str)> = LIFTS.into_iter().cycle().enumerate().take(70).collect();
    let told = cases.into_par_iter().map(|(seed, lift)| {
        let Some(rep) = random_repetition(lift, 300 + seed as u64) else {
            return Ok(0);
        };
        for text in rep_sentences(&rep, System::Metric) {
            check(&text, REPETITIONS, &rep)
                .map_err(|fault| format!("{lift}, repetition {seed}: {fault}"))?;
        }
        Ok::<usize, String>(1)
    });
    let told: Vec<Result<usize, String>> = told.collect();
    let faults: Vec<&String> = told.iter().filter_map(|one| one.as_ref().err()).collect();
    assert!(faults.is_empty(), "{faults:#?}");
    let count: usize = told.iter().flatten().sum();
    assert!(count > 40, "{count} repetitions");
}

#[test]
fn fault_a_changed_number_of_a_repetition_is_found() {
    let mut changed = 0;
    let lifts = ["bench-press", "squat", "overhead-press"];
    let all = lifts.iter().flat_map(|lift| {
        let seeds = (0..3).map(move |seed| random_repetition(lift, seed));
        seeds.flatten()
    });
    for rep in all {
        for text in rep_sentences(&rep, System::Metric) {
            // Where it is hardest held still has bounds for a stretch, which the claims of strength curves are tested for.
            if text.starts_with("Held still") {
                continue;
            }
            for wrong in with_changed_numbers(&text) {
                assert!(check(&wrong, REPETITIONS, &rep).is_err(), "{wrong}");
                changed += 1;
            }
        }
    }
    assert!(changed > 20, "{changed} numbers");
}
