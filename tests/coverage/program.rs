//! Counts how often the intervals of `fit` hold the truth of simulated people:
//! `cargo run --release --example coverage -- 2000`, an hour and more; prints the table of the README beside it
//! (`-- 0`: the published groups alone).
//!
//! People, lifts and errors depend on the seeds alone, which stood here before the first run; case `n` is the same in
//! every run, so a run of fewer cases is the beginning of a longer one.

use rayon::prelude::*;
use std::collections::BTreeMap;
use torquill::anatomy::Sex;
use torquill::error::Error;
use torquill::library::Library;
use torquill::person::{MeasureReader, ToldMeasure, ToldMeasurement};
use torquill::study::{FOUR_IN_FIVE, FitTrial, FitTrials, PersonAsked, fit_person};
use torquill::units::{Length, Mass};

/// Seeds of the three runs.
const SEEDS: [u64; 3] = [20_261, 20_262, 20_263];

/// Kinds of people: sex, height in m, mass in kg, months of training.
const PEOPLE: [(Sex, f64, f64, f64); 4] = [
    (Sex::Woman, 1.66, 62.0, 3.0),
    (Sex::Woman, 1.72, 75.0, 40.0),
    (Sex::Man, 1.76, 75.0, 6.0),
    (Sex::Man, 1.84, 95.0, 60.0),
];

/// Lifts that are looked at beside those measured.
const LOOKED_AT: usize = 4;
/// Cases between two notes of how far it is.
const A_NOTE: usize = 50;

/// Hits and trials by name.
type Counts = BTreeMap<String, (usize, usize)>;

fn asked(kind: (Sex, f64, f64, f64)) -> PersonAsked {
    let (sex, height_m, mass_kg, months) = kind;
    PersonAsked {
        name: "simulated".to_owned(),
        sex,
        height: Length::from_m(height_m),
        mass: Mass::from_kg(mass_kg),
        months,
        age: None,
        measurements: Vec::new(),
        limbs: Vec::new(),
        traces: Vec::new(),
        seed: 1,
    }
}

fn main() {
    let cases: usize = std::env::args()
        .nth(1)
        .and_then(|text| text.parse().ok())
        .unwrap_or(2000);
    let library = Library::built_in();
    let people: Vec<FitTrials> = PEOPLE
        .iter()
        .map(|kind| FitTrials::of(&asked(*kind), &library).expect("such people can be reckoned"))
        .collect();
    let numbers: Vec<(u64, usize)> = (0..cases)
        .map(|case| (SEEDS[case % SEEDS.len()], case))
        .collect();
    let mut tried: Vec<(u64, FitTrial)> = Vec::new();
    let mut faults = Counts::new();
    for part in numbers.chunks(A_NOTE) {
        let trials: Vec<(u64, Result<FitTrial, Error>)> = part
            .par_iter()
            .map(|(seed, case)| {
                let person = &people[case % people.len()];
                // One to four lifts are measured.
                let lifts = 1 + (case / people.len()) % 4;
                (*seed, person.one((lifts, LOOKED_AT), *seed, *case as u64))
            })
            .collect();
        for (seed, trial) in trials {
            match trial {
                Ok(trial) => tried.push((seed, trial)),
                Err(fault) => faults.entry(fault.to_string()).or_default().1 += 1,
            }
        }
        eprintln!("{} of {cases}", tried.len());
    }
    println!("{} of {cases} cases could be reckoned.", tried.len());
    for (fault, (_, count)) in &faults {
        println!("{count}: {fault}");
    }
    // Without any case only the published groups are looked at.
    if !tried.is_empty() {
        print_draws(&tried);
        print(&tried);
    }
    published(&library);
}

/// How many lifts had no interval, and how many independent draws the intervals stand on.
fn print_draws(tried: &[(u64, FitTrial)]) {
    let without: usize = tried.iter().map(|(_, trial)| trial.without).sum();
    let mut effective: Vec<f64> = tried.iter().map(|(_, trial)| trial.effective).collect();
    effective.sort_by(f64::total_cmp);
    let at = |share: f64| effective[(share * (effective.len() - 1) as f64) as usize];
    println!(
        "Lifts without an interval, since the fitted lifter cannot do them: {without}. Independent draws: {:.0} in the \
         median, {:.0} in the worst tenth.\n",
        at(0.5),
        at(0.1)
    );
}

/// A published group of people with the maxima of several lifts.
struct Group {
    source: &'static str,
    kind: (Sex, f64, f64, f64),
    lifts: &'static [&'static str],
}

/// Means of people who were no target; heights and masses that no abstract prints are those of such students, assumed.
const GROUPS: [Group; 4] = [
    Group {
        source: "Garcia-Ramos et al. 2019, abstract, 12 men",
        kind: (Sex::Man, 1.77, 77.0, 24.0),
        lifts: &["bench-press=94.2 kg", "overhead-press=67.4 kg"],
    },
    Group {
        source: "Garcia-Ramos et al. 2019, abstract, 12 women",
        kind: (Sex::Woman, 1.65, 61.0, 24.0),
        lifts: &["bench-press=45.4 kg", "overhead-press=37.3 kg"],
    },
    Group {
        source: "Hutchins & Gearhart 2010, abstract, 27 men, half of the curl a hand",
        kind: (Sex::Man, 1.77, 80.0, 24.0),
        lifts: &["bench-press=95.5 kg", "biceps-curl=24.7 kg"],
    },
    Group {
        source: "van den Hoek et al. 2024, abstract, 90th percentiles of men, at 83 kg",
        kind: (Sex::Man, 1.75, 83.0, 60.0),
        lifts: &[
            "squat=234.9 kg",
            "bench-press=161.9 kg",
            "deadlift=269.8 kg",
        ],
    },
];

/// A published line from one lift's load to another's, both of six repetitions, kg.
struct Line {
    source: &'static str,
    from: &'static str,
    to: &'static str,
    slope: f64,
    intercept_kg: f64,
    /// Hands whose load the line's lift and the model's have together.
    hands: f64,
}

/// Lines between lifts of the model that abstracts print; none other was found that could be read whole.
const LINES: [Line; 3] = [
    Line {
        source: "Wong et al. 2013, 29 students",
        from: "bench-press",
        to: "biceps-curl",
        slope: 0.33,
        intercept_kg: 6.20,
        hands: 2.0,
    },
    Line {
        source: "Ebben et al. 2008, 21 students",
        from: "squat",
        to: "deadlift",
        slope: 0.83,
        intercept_kg: 14.92,
        hands: 1.0,
    },
    Line {
        source: "Wong et al. 2010, 14 men of a fighting sport",
        from: "squat",
        to: "deadlift",
        slope: 1.12,
        intercept_kg: -16.60,
        hands: 1.0,
    },
];

/// What six repetitions are of a maximum (Brzycki 1993), taken for the same in both lifts of a line.
const SIX_OF_ONE: f64 = (37.0 - 6.0) / 36.0;

impl Line {
    /// The maximum that the line makes of another maximum: its slope holds, its intercept grows by what six repetitions lack.
    fn maximum_kg(&self, from_kg: f64) -> f64 {
        (self.slope * from_kg + self.intercept_kg / SIX_OF_ONE) / self.hands
    }
}

/// Every line that leads from a measured lift to the one left out, with its maximum.
fn lines_to(left_out: &str, measured: &[ToldMeasurement]) -> Vec<(&'static str, f64)> {
    let to = LINES.iter().filter(|line| line.to == left_out);
    to.filter_map(|line| {
        let told = measured.iter().find(|one| one.movement == line.from)?;
        let ToldMeasure::Lift { load, .. } = told.measure else {
            return None;
        };
        Some((line.source, line.maximum_kg(load.as_kg())))
    })
    .collect()
}

/// Every lift of the published groups from the group's other lifts: by the fit, by one factor on all maxima, and by every
/// published line that there is.
fn published(library: &Library) {
    println!(
        "\n| group | lift | published | from the others (80 %) | off | one factor | off | published lines |"
    );
    println!("| --- | --- | --- | --- | --- | --- | --- | --- |");
    let (mut ours, mut naive, mut all) = (0.0, 0.0, 0.0);
    let (names, movements) = (library.lift_names(), library.movements());
    let reader = MeasureReader {
        names: &names,
        movements: &movements,
    };
    for group in &GROUPS {
        let told = group.lifts.iter().map(|text| reader.lift(text));
        let told: Vec<ToldMeasurement> = told.collect::<Result<_, _>>().expect("lifts are told");
        for left_out in &told {
            let rest = told.iter().filter(|one| one.movement != left_out.movement);
            let person = PersonAsked {
                measurements: rest.cloned().collect(),
                ..asked(group.kind)
            };
            let [own, naive_too] = match one_left_out(&person, left_out, library) {
                Ok(misses) => misses,
                Err(fault) => {
                    println!(
                        "| {} | {}: {fault} | | | | | | |",
                        group.source, left_out.movement
                    );
                    continue;
                }
            };
            let lines = lines_to(&left_out.movement, &person.measurements);
            println!(
                "{} {} |",
                row_of(group.source, left_out, own, naive_too),
                lines_in_words(left_out, &lines)
            );
            ours += own.0.powi(2);
            naive += naive_too.0.powi(2);
            all += 1.0;
        }
    }
    println!(
        "\nPublished groups, root mean square of the logarithm: fit {:.3}, one factor {:.3}.",
        f64::sqrt(ours / all),
        f64::sqrt(naive / all)
    );
}

/// Logarithm of expected over published maximum and its deviation: by the fit to the other lifts, and by one factor on all.
fn one_left_out(
    person: &PersonAsked,
    left_out: &ToldMeasurement,
    library: &Library,
) -> Result<[(f64, f64); 2], Error> {
    let fit = fit_person(person, library)?;
    let lift = |name: &str| {
        let lift = fit.lifts.iter().find(|lift| lift.movement == name);
        lift.expect("the fitted lifter can do what groups of people do")
    };
    let ToldMeasure::Lift { load, .. } = left_out.measure else {
        return Ok([(f64::NAN, 0.0); 2]);
    };
    let told = lift(&left_out.movement);
    let published = (load.as_kg() + told.body_kg).ln();
    let factors = fit.data.iter();
    let factors: Vec<f64> = factors
        .map(|datum| (datum.measured / lift(&datum.movement).before.0).ln())
        .collect();
    let factor = factors.iter().sum::<f64>() / factors.len() as f64;
    let own = told.total_kg.ln() + told.above - published;
    let one = told.before.0.ln() + factor - published;
    Ok([(own, told.deviation), (one, 0.0)])
}

/// What the lines make of a lift and how far that is off.
fn lines_in_words(left_out: &ToldMeasurement, lines: &[(&str, f64)]) -> String {
    let ToldMeasure::Lift { load, .. } = left_out.measure else {
        return String::new();
    };
    let each = lines.iter().map(|(source, kg)| {
        let off = 100.0 * (kg / load.as_kg() - 1.0);
        format!("{source}: {kg:.1} kg, {off:+.0} %")
    });
    each.collect::<Vec<_>>().join("; ")
}

/// A row of the table of published groups.
fn row_of(
    source: &str,
    left_out: &ToldMeasurement,
    (own, deviation): (f64, f64),
    (one, _): (f64, f64),
) -> String {
    let ToldMeasure::Lift { load, .. } = left_out.measure else {
        return String::new();
    };
    let kg = load.as_kg();
    let at = |log: f64| kg * log.exp();
    let reach = FOUR_IN_FIVE * deviation;
    format!(
        "| {source} | {} | {kg:.1} kg | {:.1} kg ({:.0} to {:.0}) | {:+.0} % | {:.1} kg | {:+.0} % |",
        left_out.movement,
        at(own),
        at(own - reach),
        at(own + reach),
        100.0 * own.exp_m1(),
        at(one),
        100.0 * one.exp_m1()
    )
}

fn print(trials: &[(u64, FitTrial)]) {
    let mut tables: [(&str, Counts); 4] = [
        ("numbers that a measurement reached", Counts::new()),
        ("all numbers", Counts::new()),
        ("lifts left out", Counts::new()),
        ("measured lifts", Counts::new()),
    ];
    let mut by_seed = Counts::new();
    let count = |counts: &mut Counts, name: &str, held: bool| {
        let entry = counts.entry(name.to_owned()).or_default();
        entry.0 += usize::from(held);
        entry.1 += 1;
    };
    let (mut ours, mut naive, mut misses) = (0.0, 0.0, 0.0);
    for (seed, trial) in trials {
        for (path, held, is_reached) in &trial.factors {
            if *is_reached {
                count(&mut tables[0].1, path, *held);
            }
            count(&mut tables[1].1, path, *held);
        }
        for (lift, held) in &trial.left_out {
            count(&mut tables[2].1, lift, *held);
            count(&mut by_seed, &format!("lifts left out, seed {seed}"), *held);
        }
        for (lift, held) in &trial.measured {
            count(&mut tables[3].1, lift, *held);
        }
        for (own, other) in trial.misses.iter().filter(|(_, other)| other.is_finite()) {
            ours += own * own;
            naive += other * other;
            misses += 1.0;
        }
    }
    println!("| what | cases | held by the 80 % interval | by chance |");
    println!("| --- | --- | --- | --- |");
    for (title, counts) in &tables {
        let all = counts
            .values()
            .fold((0, 0), |sum, (a, b)| (sum.0 + a, sum.1 + b));
        row(&format!("{title}, all together"), all);
        for (name, tally) in counts {
            row(&format!("{title}: `{name}`"), *tally);
        }
    }
    for (name, tally) in &by_seed {
        row(name, *tally);
    }
    println!(
        "\nLifts left out, root mean square of the logarithm: fit {:.3}, one factor for all {:.3}.",
        (ours / misses).sqrt(),
        (naive / misses).sqrt()
    );
}

/// Chance alone: two standard deviations of a count of 80 %.
fn row(name: &str, (held, all): (usize, usize)) {
    let share = 100.0 * held as f64 / all.max(1) as f64;
    let chance = 200.0 * (0.16 / all.max(1) as f64).sqrt();
    println!("| {name} | {all} | {share:.1} % | 80 ± {chance:.1} % |");
}
