//! The strength curve with its loads, in random lifts: title, caption and alternative text against the curves.

use super::below_titles::spread;
use super::one_lift::{SIDES, Sides, sides_are};
use super::{Claim, check, holds, says};
use crate::power::somebody;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use regex::{Captures, Regex};
use torquill::capacity::Pace;
use torquill::grammar::setup_from_texts;
use torquill::library::Library;
use torquill::movement::Measure;
use torquill::report::curve_data;
use torquill::study::between_samples::promised;
use torquill::study::{Question, Study, equally_hard, study};
use torquill::units::System;

/// The curves of a figure: places on its axis, what is held, what each load asks for.
#[derive(Debug, Default)]
pub struct Curves {
    /// The lift's name as words write it.
    pub lift: String,
    /// Places on the axis, in its unit.
    pub at: Vec<f64>,
    /// What full activation holds.
    pub capacity: Vec<f64>,
    /// Place and size of the peak where it lies between two of them.
    pub crest: Option<[f64; 2]>,
    /// Name of a load, effort under it: demand over capacity, in the direction in which it pulls.
    pub loads: Vec<(String, Vec<f64>)>,
    /// Whether the lift is held still.
    pub still: bool,
    /// Of whose sides its numbers are.
    pub sides: Option<Sides>,
}

impl Curves {
    fn effort(&self, load: usize) -> &[f64] {
        &self.loads[load].1
    }

    fn load(&self, name: &str) -> Result<usize, String> {
        let bare = |name: &str| {
            let name = name.to_lowercase();
            let name = name.strip_prefix("with ").unwrap_or(&name);
            name.strip_prefix("the ").unwrap_or(name).to_owned()
        };
        let mut known = self.loads.iter();
        let found = known.position(|(known, _)| bare(known) == bare(name));
        found.ok_or_else(|| format!("no load is called {name}"))
    }

    /// Between what the greatest effort lies: it is the greatest sample, or more between two of them, no higher there than
    /// the lines beside promise and by no more than a fiftieth.
    fn greatest_effort(&self, load: usize) -> [f64; 2] {
        let effort = self.effort(load);
        let (_, most) = greatest(effort);
        let top = (0..effort.len() - 1).map(|piece| promised(effort, piece));
        [most, top.fold(most, f64::max).min(1.02 * most)]
    }

    /// The same of the load that asks for most.
    fn heaviest(&self) -> [f64; 2] {
        let all = (0..self.loads.len()).map(|load| self.greatest_effort(load));
        all.fold([0.0; 2], |most, own| {
            [most[0].max(own[0]), most[1].max(own[1])]
        })
    }

    /// How many loads ask for more than can be held, as far as whole percent say it: at least, at most.
    fn too_heavy(&self) -> [usize; 2] {
        [0, 1].map(|end| {
            let all = (0..self.loads.len()).map(|load| self.greatest_effort(load)[end]);
            all.filter(|most| *most >= 1.005).count()
        })
    }

    /// The greatest capacity.
    fn most(&self) -> f64 {
        let sampled = greatest(&self.capacity).1;
        self.crest.map_or(sampled, |[_, peak]| peak)
    }

    fn step(&self) -> f64 {
        let last = self.at.len() - 1;
        (self.at[last] - self.at[0]).abs() / last as f64
    }

    /// Spread over mean of effort.
    fn unevenness(&self, load: usize) -> f64 {
        let steps = (0..).map(f64::from);
        let points = steps.zip(self.effort(load)).map(|(x, effort)| [x, *effort]);
        spread(&points.collect::<Vec<_>>())
    }
}

/// Index and value of the greatest.
fn greatest(values: &[f64]) -> (usize, f64) {
    let at = (0..values.len()).max_by(|a, b| values[*a].total_cmp(&values[*b]));
    let at = at.expect("values");
    (at, values[at])
}

/// A printed number says something of the greatest effort, wherever that lies between its bounds; `of` rises with it.
fn says_of_greatest(
    printed: &str,
    bounds: [f64; 2],
    of: impl Fn(f64) -> f64,
    slack: f64,
    what: &str,
) -> Result<(), String> {
    let value: f64 = printed
        .parse()
        .map_err(|_| format!("{printed} is no {what}"))?;
    says(
        printed,
        value.clamp(of(bounds[0]), of(bounds[1])),
        slack,
        what,
    )
}

/// By how much an effort is more than can be held, %.
fn excess(effort: f64) -> f64 {
    100.0 * (effort - 1.0)
}

/// "at the start", "12 cm off the chest", "at 70 deg of elbow flexion": the place where effort is greatest, or as great.
fn hardest_there(place: &str, curves: &Curves, load: usize) -> Result<(), String> {
    greatest_there(place, curves.effort(load), curves)
}

/// Angles of the ankle by their sign on the axis: plantar flexion is below zero.
pub fn signed(place: &str) -> String {
    let below = Regex::new(r"([\d.]+) deg of plantar flexion").expect("a pattern");
    let signed = below.replace_all(place, "-$1 deg");
    let above = Regex::new(r"([\d.]+) deg(?: of dorsiflexion)? to ").expect("a pattern");
    above.replace_all(&signed, "$1 to ").into_owned()
}

/// The same of capacity, whose peak may lie between two places.
fn strongest_there(place: &str, curves: &Curves) -> Result<(), String> {
    let Some([at, _]) = curves.crest else {
        return greatest_there(place, &curves.capacity, curves);
    };
    let place = signed(place);
    let printed = place.trim_start_matches("at ").split(' ').next();
    says(printed.unwrap_or_default(), at, 0.0, "place of the peak")
}

/// The same of any curve of the figure.
fn greatest_there(place: &str, values: &[f64], curves: &Curves) -> Result<(), String> {
    let (_, most) = greatest(values);
    let place = signed(place.trim_end_matches(", where the model is less sure"));
    let printed = match place.as_str() {
        "at the start" => "0",
        other => other
            .trim_start_matches("at ")
            .split(' ')
            .next()
            .unwrap_or_default(),
    };
    // Interpolated peaks lie between samples, and a level top has no one place.
    let near = (0..values.len())
        .filter(|index| values[*index] > most * (1.0 - 2e-4))
        .any(|index| says(printed, curves.at[index], curves.step(), "place").is_ok());
    holds(near, &format!("it is greatest {place}"))
}

/// Effort is the same at every place but for rounding.
fn is_level(effort: &[f64]) -> Result<(), String> {
    let least = effort.iter().copied().fold(f64::INFINITY, f64::min);
    holds(least >= 0.997 * greatest(effort).1, "the same all the way")
}

/// What is more than there is at a speed is not called more than can be held.
fn at_speed(told: &Captures<'_>, curves: &Curves) -> Result<(), String> {
    holds(
        told[0].contains("that speed") != curves.still,
        "held or moved",
    )
}

/// The words of a strength curve and what makes them true.
pub const CLAIMS: &[Claim<Curves>] = &[
    Claim {
        reads: r"Held still",
        holds: |_, curves| holds(curves.still, "a lift that moves"),
    },
    Claim {
        reads: r"(Lifting|Lowering) at .+",
        holds: |_, curves| holds(!curves.still, "a lift held still"),
    },
    Claim {
        reads: r".+: hardest (at the start|at .+|\d.+)",
        holds: |told, curves| {
            holds(greatest(curves.effort(0)).1 <= 1.0 + 1e-9, "it can be held")?;
            hardest_there(&told[1], curves, 0)
        },
    },
    Claim {
        reads: r".+: equally hard all the way",
        holds: |_, curves| {
            holds(greatest(curves.effort(0)).1 <= 1.0 + 1e-9, "it can be held")?;
            is_level(curves.effort(0))
        },
    },
    Claim {
        reads: r"(?:With )?(.+?), effort is the same all the way, ([\d.]+) %(, more than (?:can be held|there is at that speed))?",
        holds: |told, curves| {
            let load = curves.load(&told[1])?;
            let most = curves.greatest_effort(load);
            says_of_greatest(&told[2], most, |effort| 100.0 * effort, 0.02, "effort")?;
            holds(
                told.get(3).is_some() == (most[1] > 1.0 + 1e-9),
                "whether it is too much",
            )?;
            is_level(curves.effort(load))
        },
    },
    Claim {
        reads: r".+: too heavy(?: for that speed)? by (\d+) %, (.+)",
        holds: |told, curves| {
            at_speed(told, curves)?;
            says_of_greatest(&told[1], curves.greatest_effort(0), excess, 0.02, "excess")?;
            holds(&told[1] != "0", "an excess of nothing is told")?;
            hardest_there(&told[2], curves, 0)
        },
    },
    Claim {
        reads: r".+: just more than (?:can be held|there is at that speed) (.+)",
        holds: |told, curves| {
            at_speed(told, curves)?;
            let [least, most] = curves.greatest_effort(0);
            holds(most > 1.0 && least < 1.0051, "just more")?;
            hardest_there(&told[1], curves, 0)
        },
    },
    Claim {
        reads: r".+: ([\d.]+) times what (?:can be held|there is at that speed) (.+)",
        holds: |told, curves| {
            at_speed(told, curves)?;
            says_of_greatest(
                &told[1],
                curves.greatest_effort(0),
                |effort| effort,
                0.001,
                "times",
            )?;
            hardest_there(&told[2], curves, 0)
        },
    },
    Claim {
        reads: r".+: this load asks for nothing",
        holds: |_, curves| holds(greatest(curves.effort(0)).1 <= 0.0, "no effort anywhere"),
    },
    Claim {
        reads: r".+: an? (ascending|descending|bell-shaped|u-shaped|level) strength curve",
        holds: |told, curves| class_is(&told[1], &curves.capacity, curves.most()),
    },
    Claim {
        reads: r".+: (.+) is too heavy(?: for that speed)? by (\d+) %, (.+)",
        holds: |told, curves| {
            at_speed(told, curves)?;
            let load = curves.load(told[1].trim_start_matches("with "))?;
            says_of_greatest(
                &told[2],
                curves.greatest_effort(load),
                excess,
                0.02,
                "excess",
            )?;
            let others = (0..curves.loads.len()).filter(|other| *other != load);
            let mut least = others.map(|other| greatest(curves.effort(other)).1);
            holds(least.all(|most| most < 1.005), "no other one is too heavy")?;
            hardest_there(&told[3], curves, load)
        },
    },
    Claim {
        reads: r".+: no setup (?:can be held|keeps that speed), too heavy by up to (\d+) %",
        holds: |told, curves| {
            at_speed(told, curves)?;
            holds(
                curves.too_heavy()[1] == curves.loads.len(),
                "none can be held",
            )?;
            says_of_greatest(&told[1], curves.heaviest(), excess, 0.02, "excess")
        },
    },
    Claim {
        reads: r".+: (\d+) of (\d+) setups are too heavy(?: for that speed)?, by up to (\d+) %",
        holds: |told, curves| {
            at_speed(told, curves)?;
            let [least, most] = curves.too_heavy();
            let counted: usize = told[1].parse().map_err(|_| "no count")?;
            holds((least..=most).contains(&counted), "so many are too heavy")?;
            says(&told[2], curves.loads.len() as f64, 0.0, "setups")?;
            says_of_greatest(&told[3], curves.heaviest(), excess, 0.02, "excess")
        },
    },
    Claim {
        reads: r".+ at equal hardest effort: (.+)",
        holds: equal_told,
    },
    Claim {
        reads: r".+: .+ (?:flattens?) effort by (\d+) %(?: more than .+)?",
        holds: |told, curves| {
            let gain = best_gain(curves);
            holds(gain > 0.004, "it flattens")?;
            says(&told[1], 100.0 * gain, 0.6, "flattening")
        },
    },
    Claim {
        reads: r".+: .+ makes? effort less even, by (\d+) %",
        holds: |told, curves| {
            let gain = best_gain(curves);
            holds(gain < -0.004, "it makes effort less even")?;
            says(&told[1], -100.0 * gain, 0.6, "loss")
        },
    },
    Claim {
        reads: r".+: one of the setups asks for nothing",
        holds: |_, curves| {
            let mut loads = 0..curves.loads.len();
            let asks_nothing = |load| curves.effort(load).iter().all(|effort| *effort <= 0.0);
            holds(loads.any(asks_nothing), "a load asks for nothing")
        },
    },
    Claim {
        reads: r".+: effort is about as even with every setup",
        holds: |_, curves| holds(best_gain(curves) < 0.012, "no setup is more even"),
    },
    Claim {
        reads: r"The strength curve of the (.+) is (\S+): over (?:the )?.+, what the lifter \(.+\) (?:can hold|has at that speed) goes from (\d+) % of its peak at the start to (\d+) % at the end; it is greatest (.+)",
        holds: |told, curves| {
            holds(told[1] == curves.lift.to_lowercase(), "the lift's name")?;
            class_is(&told[2], &curves.capacity, curves.most())?;
            ends_are(&told[3], &told[4], curves)?;
            strongest_there(&told[5], curves)
        },
    },
    Claim {
        reads: r"(?:With )?(.+?), effort is greatest (.+?), ([\d.]+) %(, more than (?:can be held|there is at that speed))?; the hardest part lies (.+)",
        holds: effort_told,
    },
    Claim {
        reads: r"It makes effort (more|less) even than plain weight does, by (\d+) %",
        holds: |told, curves| {
            let sign = if &told[1] == "more" { 100.0 } else { -100.0 };
            let said = gains(curves).any(|gain| says(&told[2], sign * gain, 0.6, "").is_ok());
            holds(said, "a setup changes evenness by so much")
        },
    },
    Claim {
        reads: r"(?:From (\d+) % to|At) (\d+) % of the range the fibres of .+ are ([\d.]+) times their optimal length at the farthest .+: trust the curve less",
        holds: |told, _| {
            holds(
                told.get(1).map(|m| m.as_str()) != Some(&told[2]),
                "a stretch has two ends",
            )?;
            let length: f64 = told[3].parse().map_err(|_| "no length")?;
            holds(!(0.5..=1.6).contains(&length), "no living fibre is so long")
        },
    },
    Claim {
        reads: r"It leaves effort about as even as plain weight does",
        holds: |_, curves| {
            holds(
                gains(curves).any(|gain| gain.abs() < 0.012),
                "a setup changes nothing",
            )
        },
    },
    Claim {
        reads: SIDES,
        holds: |told, curves| sides_are(&told[0], curves.sides.ok_or("nobody's sides")?),
    },
    Claim {
        reads: r"(?:(.+)\. )?(?:Ascending|Descending|Bell-shaped|U-shaped|Level) curve: (\d+) (N|N·m|lbf|lbf·ft) at the start, (\d+) \S+ half way, (\d+) \S+ at its peak, (?:elbow|knee) nearly straight",
        holds: |told, curves| {
            let per_unit = per_unit(&told[3]);
            let middle = curves.capacity[curves.capacity.len() / 2];
            says(&told[2], per_unit * curves.capacity[0], 0.0, "start")?;
            says(&told[4], per_unit * middle, 0.0, "half way")?;
            says(&told[5], per_unit * curves.most(), 0.0, "peak")
        },
    },
    Claim {
        reads: r"(?:(.+)\. )?(Ascending|Descending|Bell-shaped|U-shaped|Level) curve: start (\d+) %, end (\d+) % of its peak of (\d+) (N|N·m|lbf|lbf·ft)",
        holds: |told, curves| {
            ends_are(&told[3], &told[4], curves)?;
            says(&told[5], per_unit(&told[6]) * curves.most(), 0.0, "peak")
        },
    },
];

/// How many of a unit make one of the SI.
fn per_unit(unit: &str) -> f64 {
    match unit {
        "lbf" => 1.0 / 4.448_221_615_260_5,
        "lbf·ft" => 1.0 / 1.355_817_948_331_400_4,
        _ => 1.0,
    }
}

/// Relative losses of unevenness against the first load, which is a plain weight.
fn gains(curves: &Curves) -> impl Iterator<Item = f64> {
    let first = curves.unevenness(0);
    (1..curves.loads.len()).map(move |load| 1.0 - curves.unevenness(load) / first)
}

/// All setups are equally hard at their hardest place, and the rest of the title holds too.
fn equal_told(told: &Captures<'_>, curves: &Curves) -> Result<(), String> {
    let hardest: Vec<f64> = (0..curves.loads.len())
        .map(|load| greatest(curves.effort(load)).1)
        .collect();
    let alike = hardest
        .iter()
        .all(|most| (most / hardest[0] - 1.0).abs() < 1e-3);
    holds(alike, "all are equally hard at their hardest")?;
    check(&format!("Lift: {}", &told[1]), CLAIMS, curves)
}

/// The greatest of them.
fn best_gain(curves: &Curves) -> f64 {
    gains(curves).fold(f64::NEG_INFINITY, f64::max)
}

fn ends_are(start: &str, end: &str, curves: &Curves) -> Result<(), String> {
    let (capacity, most) = (&curves.capacity, curves.most());
    says(start, 100.0 * capacity[0] / most, 0.1, "start")?;
    says(end, 100.0 * capacity[capacity.len() - 1] / most, 0.1, "end")
}

/// The class by the rule that figures print: an end below 85 % of the peak is weak; a fall between the ends' tenths to
/// below 85 % of the weaker one's median makes a u.
pub fn class_is(word: &str, capacity: &[f64], most: f64) -> Result<(), String> {
    let count = capacity.len();
    let tenth = (0.1 * count as f64).round() as usize;
    let weak = [capacity[0], capacity[count - 1]].map(|value| value / most < 0.85);
    let level = |part: &[f64]| {
        let mut sorted = part.to_vec();
        sorted.sort_by(f64::total_cmp);
        sorted[sorted.len() / 2]
    };
    let weaker = level(&capacity[..tenth]).min(level(&capacity[count - tenth..]));
    let inside = &capacity[tenth..count - tenth];
    let valley = inside.iter().copied().fold(f64::INFINITY, f64::min);
    let class = match weak {
        _ if valley < 0.85 * weaker => "u-shaped",
        [true, false] => "ascending",
        [false, true] => "descending",
        [true, true] => "bell-shaped",
        [false, false] => "level",
    };
    holds(word == class, &format!("{word}: {class}"))
}

fn effort_told(told: &Captures<'_>, curves: &Curves) -> Result<(), String> {
    let load = curves.load(&told[1])?;
    let effort = curves.effort(load);
    let [most, top] = curves.greatest_effort(load);
    says_of_greatest(
        &told[3],
        [most, top],
        |effort| 100.0 * effort,
        0.02,
        "effort",
    )?;
    let is_more = match told.get(4) {
        Some(_) => top > 1.0 - 1e-4,
        None => most < 1.0 + 1e-4,
    };
    holds(is_more, "more than can be held")?;
    if told.get(4).is_some() {
        at_speed(told, curves)?;
    }
    hardest_there(&told[2], curves, load)?;
    let stretch = &signed(&told[5]);
    let inside: Vec<f64> = (0..effort.len())
        .filter(|index| effort[*index] >= 0.95 * most)
        .map(|index| curves.at[index])
        .collect();
    let low = inside.iter().copied().fold(f64::INFINITY, f64::min);
    let high = inside.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let words: Vec<&str> = stretch.split(' ').collect();
    let printed: [&str; 2] = match words.as_slice() {
        ["from", from, "to", to, ..] => [from, to],
        ["close", "to", one, ..] => [one, one],
        _ => return Err(format!("{stretch} is no stretch")),
    };
    let ordered = |text: &str| {
        text.replace('\u{2212}', "-")
            .parse::<f64>()
            .unwrap_or(f64::NAN)
    };
    let [first, last] = if ordered(printed[0]) <= ordered(printed[1]) {
        printed
    } else {
        [printed[1], printed[0]]
    };
    // The region is the stretch about the hardest place: another one elsewhere may be as hard.
    holds(
        ordered(first) >= low - 0.51 - curves.step(),
        &format!("region from {low}"),
    )?;
    holds(
        ordered(last) <= high + 0.51 + curves.step(),
        &format!("region to {high}"),
    )
}

/// The peak of a study between two of its samples: above them all, and no higher than the lines beside a piece promise.
fn crest_of(study: &Study, units: System) -> Option<[f64; 2]> {
    let (behind, range, peak) = study.crest()?;
    let values = study.capacity.values();
    assert!(peak > greatest(&values).1, "a crest above all samples");
    let place = range * (values.len() - 1) as f64;
    assert!(place <= behind as f64 && place >= behind as f64 - 1.0);
    let promised = promised(&values, behind - 1);
    assert!(peak <= promised * (1.0 + 2e-3), "{peak} of {promised}");
    let axis = study.axis_value(range);
    let is_us_travel = study.range.measure == Measure::Force && units == System::Us;
    Some([if is_us_travel { axis / 2.54 } else { axis }, peak])
}

/// What `figure` draws, from what `--data` writes.
fn curves_of(study: &Study, units: System) -> Curves {
    let told = study.told(units);
    let mut curves = Curves {
        lift: study.movement_title.clone(),
        still: study.pace == Pace::default(),
        sides: Some(Sides::of(study)),
        crest: crest_of(study, units),
        ..Curves::default()
    };
    let setups = study.setups.iter().map(Some).chain([None]);
    for setup in setups {
        let text = curve_data(study, setup, false).csv();
        let mut read = csv::Reader::from_reader(text.as_bytes());
        let head = read.headers().expect("a head").clone();
        let column = |names: &[&str]| {
            let at = head.iter().position(|h| names.contains(&h));
            at.unwrap_or_else(|| panic!("{names:?} in {head:?}"))
        };
        let place = column(match study.range.measure {
            Measure::Force => &["position_m"],
            Measure::Torque => &["angle_deg"],
        });
        let [holds, asks] = [
            column(&["capacity_n", "capacity_nm"]),
            setup.map_or(0, |_| column(&["effort"])),
        ];
        let (mut at, mut capacity, mut asked) = (vec![], vec![], vec![]);
        for row in read.records() {
            let row = row.expect("a row");
            let number = |cell: usize| row[cell].parse::<f64>().expect("a number");
            at.push(match (study.range.measure, units) {
                (Measure::Torque, _) => number(place),
                (Measure::Force, System::Metric) => 100.0 * number(place),
                (Measure::Force, System::Us) => number(place) / 0.0254,
            });
            capacity.push(number(holds));
            asked.push(number(asks));
        }
        (curves.at, curves.capacity) = (at, capacity);
        if let Some(setup) = setup {
            curves.loads.push((told.setup_name(setup), asked));
        }
    }
    curves
}

#[test]
fn fault_an_excess_beyond_what_the_samples_promise_is_found() {
    // A roof whose ridge of 1.36 lies between two samples of 1.354: 36 % is what the lines beside it promise.
    let effort: Vec<f64> = (0..11)
        .map(|at| 1.36 - 0.012 * (at as f64 - 4.5).abs())
        .collect();
    let curves = Curves {
        lift: "Squat".to_owned(),
        at: (0..11).map(f64::from).collect(),
        capacity: vec![1.0; 11],
        loads: vec![("80 kg".to_owned(), effort)],
        still: true,
        ..Curves::default()
    };
    let told = |excess: u32, place: &str| {
        let title = format!("Squat: too heavy by {excess} %, at {place} cm");
        check(&title, CLAIMS, &curves)
    };
    assert_eq!(told(36, "4"), Ok(()));
    assert_eq!(told(35, "4"), Ok(()), "the greatest sample alone");
    for (excess, place) in [(34, "4"), (37, "4"), (38, "4"), (36, "8")] {
        assert!(told(excess, place).is_err(), "{excess} % at {place} cm");
    }
    let alone = |percent: f64, more: &str| {
        let text = format!(
            "With 80 kg, effort is greatest at 4 cm, {percent} %{more}; the hardest part lies from 0 to 10 cm"
        );
        check(&text, CLAIMS, &curves)
    };
    assert_eq!(alone(135.7, ", more than can be held"), Ok(()));
    assert!(alone(135.7, "").is_err(), "more is asked than can be held");
    assert!(alone(136.5, ", more than can be held").is_err());
    assert!(alone(134.9, ", more than can be held").is_err());
}

#[test]
fn law_every_sentence_of_three_hundred_random_figures_follows_from_its_data() {
    let mut rng = ChaCha8Rng::seed_from_u64(2026);
    let library = Library::built_in();
    let mut told = 0;
    while told < 300 {
        let lifts = crate::lift_by_another_name::LIFTS;
        let lift = lifts[rng.random_range(0..lifts.len())];
        let Some(model) = somebody(&mut rng, lift) else {
            continue;
        };
        let units = if rng.random::<bool>() {
            System::Metric
        } else {
            System::Us
        };
        let question = Question {
            samples: 201,
            ..Question::new(lift, &model.movement, &model.lifter)
        };
        let bare = study(&question, &[]).expect("a curve");
        let weakest_kg = bare
            .capacity
            .values()
            .iter()
            .copied()
            .fold(f64::INFINITY, f64::min);
        let mut kg = |share: f64| {
            let arm_m = if bare.range.measure == Measure::Torque {
                0.3
            } else {
                1.0
            };
            (share * rng.random_range(0.2..1.6) * weakest_kg / 9.81 / arm_m).clamp(0.5, 500.0)
        };
        let plain = format!("{:.1} kg", kg(1.0));
        let lighter = format!("{:.1} kg", kg(0.6));
        let several = told % 3;
        let pieces = library.pieces().expect("built in");
        let stock = pieces.stock();
        let mut setups = Vec::new();
        if several > 0 {
            setups.push(setup_from_texts(&[&plain], &[], &[], &stock));
        }
        if several > 1 {
            setups.push(setup_from_texts(&[&lighter], &["loop-14mm:1"], &[], &stock));
        }
        let setups: Vec<_> = setups.into_iter().flatten().collect();
        // Every other comparison is made equally hard, as `figure` does.
        let equal = match equally_hard(&question, &setups) {
            Ok(equal) if told % 2 == 0 => equal,
            _ => (setups.clone(), None),
        };
        let Ok(solved) = study(&question, &equal.0) else {
            continue;
        };
        let answer = Study {
            equal_effort: equal.1,
            ..solved
        };
        let words = answer.told(units).strength_words();
        let curves = curves_of(&answer, units);
        for text in [&words.title, &words.description, &words.caption] {
            check(text, CLAIMS, &curves)
                .unwrap_or_else(|fault| panic!("{lift}, figure {told}: {fault}"));
        }
        told += 1;
    }
}
