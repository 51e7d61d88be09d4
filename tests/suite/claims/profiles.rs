//! Random maxima with their profiles of load and velocity: sentences and the words around their figures against the same answer's loads.

use super::{Claim, check, holds, says, with_changed_numbers};
use crate::lift_by_another_name::LIFTS;
use crate::power::somebody;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;
use rayon::prelude::{IntoParallelIterator, ParallelIterator};
use torquill::library::Library;
use torquill::movement::Measure;
use torquill::narrative::maximum_words::{OwnStrength, maximum_sentences, velocity_cells};
use torquill::narrative::profile_words::profile_words;
use torquill::progress::published_equations::VelocityEquation;
use torquill::rep::RepOptions;
use torquill::resistance::Setup;
use torquill::study::{MaximumStudy, MaximumWishes, Question, USUAL_STEP_KG, maximum_study};
use torquill::units::{Duration, Mass, System};

/// What a profile is held against.
struct Profile {
    found: MaximumStudy,
    at_maximum_m_s: Option<f64>,
    has_scatter: bool,
    has_equation: bool,
}

impl Profile {
    /// Share of the maximum and velocity as shown, of the lightest and of the heaviest load.
    fn ends(&self) -> Result<[[f64; 2]; 2], String> {
        let rows = &self.found.profile.as_ref().ok_or("no profile")?.rows;
        let row = |at: usize| [100.0 * rows[at].share, self.shown(rows[at].mean_velocity)];
        Ok([row(0), row(rows.len() - 1)])
    }

    /// What is lowered, kg, and times the maximum.
    fn lowered(&self) -> Result<[f64; 2], String> {
        let lowered = self
            .found
            .eccentric
            .ok_or("nothing is lowered")?
            .load
            .as_kg();
        Ok([lowered, lowered / self.found.one_rm.load.as_kg()])
    }

    fn shown(&self, velocity: f64) -> f64 {
        match self.found.measure {
            Measure::Force => velocity,
            Measure::Torque => velocity.to_degrees(),
        }
    }
}

const PROFILES: &[Claim<Profile>] = &[
    Claim {
        reads: r"([^:]+): ([\d.]+) (m/s|deg/s) at the maximum(?:, ([\d.]+) published)?",
        holds: |told, profile| {
            holds(told[1] == profile.found.movement_title, "the lift")?;
            says(&told[2], profile.ends()?[1][1], 1e-9, "at the maximum")?;
            match (told.get(4), profile.at_maximum_m_s) {
                (Some(printed), Some(published)) => says(
                    printed.as_str(),
                    profile.shown(published),
                    1e-9,
                    "published",
                ),
                (None, None) => Ok(()),
                _ => Err("whether one was published".to_owned()),
            }
        },
    },
    Claim {
        reads: r"Mean velocity (falls|goes) from ([\d.]+) (?:m/s|deg/s) at (\d+) % to ([\d.]+) (?:m/s|deg/s) at (\d+) % of the maximum",
        holds: |told, profile| {
            let [light, heavy] = profile.ends()?;
            says(&told[2], light[1], 1e-9, "light")?;
            says(&told[3], light[0], 1e-9, "lightest")?;
            says(&told[4], heavy[1], 1e-9, "heavy")?;
            says(&told[5], heavy[0], 1e-9, "heaviest")?;
            let rows = &profile.found.profile.as_ref().ok_or("no profile")?.rows;
            let falls = |pair: &[torquill::rep::LoadPace]| {
                pair[1].load > pair[0].load && pair[1].mean_velocity < pair[0].mean_velocity
            };
            let all = rows.windows(2).all(falls);
            holds(all == (&told[1] == "falls"), "it falls from load to load")
        },
    },
    Claim {
        reads: r"No published load-velocity equation for this lift is at hand",
        holds: |_, profile| holds(!profile.has_equation, "there is one"),
    },
    Claim {
        reads: r"Published equation: see torquill sources; guided bar, pause at the bottom, trained men(; shaded: two standard errors)?",
        holds: |told, profile| {
            holds(profile.has_equation, "there is one")?;
            holds(profile.has_scatter == told.get(1).is_some(), "shaded")
        },
    },
    Claim {
        reads: r"Mean velocity of the lift with full effort, by share of the maximum",
        holds: super::is_definition,
    },
    Claim {
        reads: r"(.+): maximum ([\d.]+) kg \(([\d.]+) kg can be loaded; the next step, ([\d.]+) kg, is not lifted\)",
        holds: |told, profile| {
            let found = &profile.found;
            let whose = format!("{}, {}", found.movement_title, found.lifter_title);
            holds(told[1] == whose, &format!("{} is {whose}", &told[1]))?;
            says(&told[2], found.one_rm.load.as_kg(), 1e-9, "maximum")?;
            says(&told[3], found.loadable.load.as_kg(), 1e-9, "loadable")?;
            says(&told[4], found.loadable.failed.as_kg(), 1e-9, "next")?;
            let [loaded, most, next] = [
                found.loadable.load,
                found.one_rm.load,
                found.loadable.failed,
            ];
            holds(loaded <= most && most < next, "in order")?;
            // As they are printed, too.
            let printed = [3, 2, 4].map(|at| told[at].parse::<f64>().unwrap_or(f64::NAN));
            holds(
                printed[0] <= printed[1] && printed[1] < printed[2],
                "printed in order",
            )
        },
    },
    Claim {
        reads: r"([\d.]+) kg goes up at ([\d.]+) (?:m/s|deg/s) on average, to be compared with velocities measured at a 1RM, which is tested in such steps(?:; the exact maximum, which nobody loads, at ([\d.]+) (?:m/s|deg/s))?",
        holds: |told, profile| {
            let pace = profile.found.pace.ok_or("no velocities")?;
            let loadable = profile.found.loadable.load;
            says(&told[1], loadable.as_kg(), 1e-9, "loadable")?;
            says(&told[2], profile.shown(pace.in_steps), 1e-9, "tested")?;
            match told.get(3) {
                Some(exact) => says(exact.as_str(), profile.shown(pace.exact), 1e-9, "exact"),
                None => says(&told[2], profile.shown(pace.exact), 1e-9, "exact"),
            }
        },
    },
    Claim {
        reads: r"(?:Lowered under control: |The muscles would lower )([\d.]+) kg, ([\d.]+) times the maximum",
        holds: |told, profile| {
            let [lowered, times] = profile.lowered()?;
            says(&told[1], lowered, 1e-9, "lowered")?;
            holds(times >= 1.0, "no less than the maximum")?;
            says(&told[2], times, 1e-9, "times")
        },
    },
    Claim {
        reads: r"The model lowers only ([\d.]+) times what it lifts, and people lower more than they lift: it holds too little at a place that the lift passes with speed",
        holds: |told, profile| {
            let [_, times] = profile.lowered()?;
            holds(times < 1.0, "less than the maximum")?;
            says(&told[1], times, 1e-9, "times")
        },
    },
    Claim {
        reads: r#"No weight to go by|A heavier load gets away in the lowering before it can be lifted: --lowering "0 s" begins at the bottom"#,
        holds: super::is_definition,
    },
    Claim {
        reads: r"Nothing is lowered evenly in ([\d.]+) s, not even the limbs alone: that fast they ask for more than there is",
        holds: |told, profile| {
            let time = profile.found.not_lowered.ok_or("it is lowered")?;
            says(&told[1], time.as_s(), 1e-9, "time")
        },
    },
    Claim {
        reads: r"Give --eccentric more time",
        holds: |_, profile| holds(profile.found.eccentric.is_none(), "nothing is lowered"),
    },
    Claim {
        reads: r"That maximum implies ([\d.]+) times this lifter's strength: --set lifter\.strength_scale=([\d.]+)",
        holds: |told, profile| {
            let factor = profile.found.factor.ok_or("nothing is implied")?;
            says(&told[1], factor, 1e-9, "times")?;
            says(&told[2], 0.8 * factor, 1e-9, "scale")
        },
    },
    Claim {
        reads: r"row: (\d+) \| ([\d.]+) kg \| ([\d.]+) (?:m/s|deg/s) \| ([\d.]+) (?:m/s|deg/s)",
        holds: |told, profile| {
            let rows = &profile.found.profile.as_ref().ok_or("no profile")?.rows;
            // Where the body is lifted its share counts with the load.
            let own = rows.iter().find(|row| {
                says(&told[1], 100.0 * row.share, 1e-9, "").is_ok()
                    && says(&told[2], row.load.as_kg(), 1e-9, "").is_ok()
            });
            let row = own.ok_or("no such load")?;
            says(&told[3], profile.shown(row.mean_velocity), 1e-9, "mean")?;
            says(
                &told[4],
                profile.shown(row.mean_propulsive_velocity),
                1e-9,
                "propulsive",
            )
        },
    },
    Claim {
        reads: r"caution: .+|Education, not medical advice; .+",
        holds: |told, _| {
            let rest = told[0].replace("1RM", "");
            holds(!rest.contains(|c: char| c.is_ascii_digit()), "no number")
        },
    },
    Claim {
        reads: r"[^:;.]+",
        holds: |told, profile| holds(told[0] == profile.found.lifter_title, "the lifter"),
    },
];

/// A random profile; nothing where nothing is lifted.
fn random_profile(lift: &str, seed: u64) -> Option<Profile> {
    let mut rng = ChaCha8Rng::seed_from_u64(seed);
    let model = somebody(&mut rng, lift)?;
    let question = Question::new(lift, &model.movement, &model.lifter);
    let options = RepOptions::usual_for(&model.movement);
    let step = Mass::from_kg(USUAL_STEP_KG);
    let wishes = MaximumWishes {
        eccentric: seed.is_multiple_of(2).then(|| Duration::from_s(3.0)),
        velocities: true,
        known: Some(Mass::from_kg(60.0)).filter(|_| seed.is_multiple_of(3)),
    };
    let found = maximum_study(&question, &Setup::default(), &options, step, wishes).ok()?;
    let library = Library::built_in();
    let equation = equation(&library, lift);
    Some(Profile {
        at_maximum_m_s: equation.and_then(|equation| equation.velocity_m_s_at(100.0)),
        has_scatter: equation.is_some_and(|equation| equation.error_percent.is_some()),
        has_equation: equation.is_some(),
        found,
    })
}

/// The published equation of a lift.
fn equation<'a>(library: &'a Library, lift: &str) -> Option<&'a VelocityEquation> {
    let published = library.published().expect("tables");
    published.estimates.velocity.usual_for(lift)
}

fn texts(profile: &Profile) -> Vec<String> {
    let units = System::Metric;
    let found = &profile.found;
    let rows = found
        .profile
        .as_ref()
        .map_or(&[][..], |profile| &profile.rows);
    let library = Library::built_in();
    let published = equation(&library, &found.movement_name);
    let words = profile_words(found, rows, published, profile.at_maximum_m_s, units);
    let own = OwnStrength {
        scale: 0.8,
        takes_implied: true,
    };
    let mut all = maximum_sentences(found, own, units);
    all.extend([
        words.title,
        words.subtitle,
        words.footnote,
        words.description,
    ]);
    let cells = rows
        .iter()
        .map(|row| velocity_cells(row, found.measure, units));
    all.extend(cells.map(|cells| format!("row: {}", cells.join(" | "))));
    all
}

#[test]
fn law_every_sentence_of_random_profiles_follows_from_their_loads() {
    let cases: Vec<(usize, &str)> = LIFTS.into_iter().cycle().enumerate().take(28).collect();
    let told = cases.into_par_iter().map(|(seed, lift)| {
        let Some(profile) = random_profile(lift, 700 + seed as u64) else {
            return Ok(0);
        };
        for text in texts(&profile) {
            check(&text, PROFILES, &profile)
                .map_err(|fault| format!("{lift}, profile {seed}: {fault}"))?;
        }
        Ok::<usize, String>(1)
    });
    let told: Vec<Result<usize, String>> = told.collect();
    let faults: Vec<&String> = told.iter().filter_map(|one| one.as_ref().err()).collect();
    assert!(faults.is_empty(), "{faults:#?}");
    let count: usize = told.iter().flatten().sum();
    assert!(count > 14, "{count} profiles");
}

#[test]
fn fault_a_changed_number_of_a_profile_is_found() {
    let (mut changed, mut missed) = (0, Vec::new());
    for (lift, seed) in [("bench-press", 6), ("knee-extension", 3)] {
        let Some(profile) = random_profile(lift, seed) else {
            continue;
        };
        for text in texts(&profile) {
            // Cautions have no number of this answer.
            if text.starts_with("caution") {
                continue;
            }
            for wrong in with_changed_numbers(&text) {
                changed += 1;
                if check(&wrong, PROFILES, &profile).is_ok() {
                    missed.push(wrong);
                }
            }
        }
    }
    assert!(missed.is_empty(), "{missed:#?}");
    assert!(changed > 20, "{changed} numbers");
}
