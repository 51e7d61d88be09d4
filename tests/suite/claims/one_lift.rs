//! What stands around the curves of one lift, subtitles, footnotes, notes of panels: whose, how held, why it climbs.

use super::doubts::is_hollow_at;
use super::drawings::{is_of, span_told};
use super::lecture::{ends, firsts, lever_shrinks, lifts, listed, valley_of_weaker_end};
use super::{Claim, Drawn, hangs, holds, is_definition, says};
use regex::Captures;
use std::sync::LazyLock;
use torquill::anatomy::Joint;
use torquill::library::Library;
use torquill::movement::Measure;
use torquill::narrative::muscle_names::head_name;
use torquill::study::{Desk, Study};
use torquill::units::{STANDARD_GRAVITY_M_S2, System};

/// Of whose sides loads and forces are.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sides {
    /// Loads and forces of both together.
    ForcesOfBoth,
    /// Loads of both together.
    LoadsOfBoth,
    /// All of one.
    One,
}

impl Sides {
    /// Of a lift.
    pub fn of(study: &Study) -> Self {
        match (study.range.measure, study.range.sides.count() > 1.0) {
            (Measure::Force, true) => Self::ForcesOfBoth,
            (Measure::Torque, true) => Self::LoadsOfBoth,
            (_, false) => Self::One,
        }
    }
}

/// How it is told.
pub const SIDES: &str = "(?:Loads and forces are of both sides together, moments and muscle forces|Loads are of both sides together, moments and muscle forces|Loads, moments and muscle forces are) of one side";

/// Whether it is told as it is.
pub fn sides_are(told: &str, sides: Sides) -> Result<(), String> {
    let begin = match sides {
        Sides::ForcesOfBoth => "Loads and forces are of both",
        Sides::LoadsOfBoth => "Loads are of both",
        Sides::One => "Loads, moments",
    };
    holds(told.starts_with(begin), "whose sides")
}

/// Each of these joints counts most somewhere, and nowhere for long.
pub fn nowhere_for_long(joints: &str, drawn: &Drawn) -> Result<(), String> {
    let firsts = firsts(drawn);
    let runs: Vec<&[&str]> = firsts.chunk_by(|a, b| a == b).collect();
    listed(joints).iter().try_for_each(|joint| {
        let own = || runs.iter().filter(|run| run[0] == joint);
        let is_long = own().any(|run| run.len() > firsts.len() / 20 + 1);
        holds(own().count() > 0 && !is_long, joint)
    })
}

/// The lifter of the figure.
pub fn is_them(told: &str, drawn: &Drawn) -> Result<(), String> {
    holds(told == drawn.who, &format!("{told} is {}", drawn.who))
}

/// The lift of the figure.
pub fn is_lift(told: &str, drawn: &Drawn) -> Result<(), String> {
    let own = drawn.own_study()?.movement_title.to_lowercase();
    holds(told == own, &format!("{told} is {own}"))
}

impl Drawn {
    /// The one lift of the figure.
    pub fn own_study(&self) -> Result<&Study, String> {
        let mut all = self.studies.iter();
        let own = all.find(|study| study.movement_name == self.movement);
        own.ok_or_else(|| format!("the {} is not drawn", self.movement))
    }
}

/// "flex the elbow": the way in which the lift turns its only joint, over the axis that is drawn.
fn they_turn(verb: &str, joint: &str, drawn: &Drawn) -> Result<(), String> {
    let own = drawn.own_study()?.range.poses[0].coordinates[0].dof.joint();
    let points = &drawn.curves[0].2;
    let rises = points[points.len() - 1][0] > points[0][0];
    holds(joint == own.name(), "the joint")?;
    let is_so = match (own, verb) {
        (Joint::Elbow | Joint::Knee | Joint::Hip, "flex")
        | (Joint::Ankle, "dorsiflex")
        | (Joint::Shoulder, "abduct") => rises,
        (Joint::Elbow | Joint::Knee | Joint::Hip, "extend") | (Joint::Ankle, "plantar-flex") => {
            !rises
        }
        _ => false,
    };
    holds(is_so, &format!("they {verb} the {joint}"))
}

/// The elbow or knee limits and is nearly straight where the curve is greatest.
fn straight_at_peak(joint: &str, drawn: &Drawn) -> Result<(), String> {
    let study = drawn.own_study()?;
    let values = study.capacity.values();
    let top = values.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let at = values.iter().position(|value| *value >= top);
    let at = at.ok_or("no peak")?;
    let row = study.capacity.held[at].limiting;
    holds(study.joint(row) == joint, "the joint that limits there")?;
    let bent_rad = study.range.poses[at].coordinates[row].angle_rad.abs();
    // About a quarter of a right angle is called nearly straight.
    holds(bent_rad < 0.45, &format!("bent by {bent_rad} rad"))
}

/// How many lifters were measured and how many of them had a sticking region, from the file of measured lifts.
fn measured(told: &Captures<'_>, [with, of]: [usize; 2], drawn: &Drawn) -> Result<(), String> {
    static LIBRARY: LazyLock<Library> = LazyLock::new(Library::built_in);
    let known = LIBRARY.measured_sticking(&drawn.movement);
    match (told.get(with), known.map_err(|error| format!("{error:?}"))?) {
        (Some(_), Some(known)) => {
            says(&told[of], known.lifters as f64, 0.0, "measured")?;
            says(&told[with], known.with_region as f64, 0.0, "with one")
        }
        (None, None) => Ok(()),
        _ => Err("whether lifters were measured".to_owned()),
    }
}

/// "A triceps (3 heads), B deltoid": letters in order, muscles of the table, heads of the lifter.
fn muscles_are(told: &str, drawn: &Drawn) -> Result<(), String> {
    let acting = &drawn.own_study()?.capacity.muscles;
    let parts = told.split(", ").count();
    holds(parts == drawn.muscles.len(), "every muscle has a letter")?;
    for ((part, letter), drawn_one) in told
        .split(", ")
        .zip(["A", "B", "C", "D", "E", "F"])
        .zip(&drawn.muscles)
    {
        let (own, muscle) = part.split_once(' ').ok_or("no letter")?;
        holds(own == letter, "letters in order")?;
        let (muscle, heads) = match muscle.split_once(" (") {
            Some((muscle, heads)) => (muscle, heads.trim_end_matches(" heads)")),
            None => (muscle, "1"),
        };
        holds(drawn_one == muscle, &format!("{muscle} is {drawn_one}"))?;
        let known = muscle.replace(' ', "_");
        let is_head = |name: &&String| **name == known || name.starts_with(&format!("{known}_"));
        let count = acting.iter().filter(is_head).count();
        says(heads, count as f64, 0.0, part)?;
    }
    Ok(())
}

/// The claims. Those that any words could be stand last.
pub const AROUND: &[Claim<Drawn>] = &[
    Claim {
        reads: r"Held still, (both sides together|one side)(; hardest part: effort within 5 % of its greatest)?",
        holds: |told, drawn| {
            let both = Sides::of(drawn.own_study()?) == Sides::ForcesOfBoth;
            holds(both == told[1].starts_with("both"), "whose sides")?;
            let is_loaded = !drawn.setups.is_empty();
            holds(told.get(2).is_none() || is_loaded, "a load")
        },
    },
    Claim {
        reads: r"At its peak the (\S+) is nearly straight: a model bears any load on a straight limb",
        holds: |told, drawn| straight_at_peak(&told[1], drawn),
    },
    Claim {
        reads: r"The (.+) limits longest: the (?:load's moment arm there|lever of load and push) shrinks, (.+) of the way",
        holds: |told, drawn| lever_shrinks(drawn.own_study()?, &told[1], &told[2]),
    },
    Claim {
        reads: r"(A [^,:]+(?:, B .+)?)",
        holds: |told, drawn| muscles_are(&told[1], drawn),
    },
    Claim {
        reads: r"Measured: moment arm of (?:the one with the thick rim|([A-F])), square to its line of pull; where muscles begin and end is drawn freely",
        holds: |told, drawn| {
            let Some(letter) = told.get(1) else {
                return Ok(());
            };
            let place = ["A", "B", "C", "D", "E", "F"]
                .iter()
                .position(|one| *one == letter.as_str());
            let muscle = place.and_then(|place| drawn.muscles.get(place));
            holds(muscle.is_some(), "a letter of a muscle")
        },
    },
    Claim {
        reads: r"Best effort held still, one side|Width: force|What a computed strength curve leaves open|Moment arm: distance of a muscle's line of pull from the joint's axis|Heads of one muscle are shown together|Optimal length: where active force is greatest|Each curve in percent of its own greatest value|Moment arm: the one at which the summed force makes the summed moment|Left for the load: less what limb and tissue take, or more by what they add|Upper edge: all muscles that lift; the rest is tissue, and muscles that pull the other way|(?:Moment at the joint|Force at the bar|Bar force for lifts of several joints, moment for lifts of one joint); every curve in percent of its own median",
        holds: is_definition,
    },
    Claim {
        reads: SIDES,
        holds: |told, drawn| sides_are(&told[0], Sides::of(drawn.own_study()?)),
    },
    Claim {
        reads: r"Above 1: the joint holds the body too",
        holds: |_, drawn| {
            let mut gains = drawn.curves.iter().flat_map(|c| &c.2);
            holds(gains.any(|point| point[1] > 1.0), "a gain above one")
        },
    },
    Claim {
        reads: r"A step: from there on another muscle or support is at its limit",
        holds: |_, drawn| {
            // A gain that stays one jumps by a twenty-fifth of a percent or more.
            let jumps = |pair: &[[f64; 2]]| {
                let stays = pair.iter().all(|point| point[1] > 0.0);
                stays && (pair[1][1] - pair[0][1]).abs() >= 0.04 - 1e-6
            };
            let mut pairs = drawn.curves.iter().flat_map(|c| c.2.windows(2));
            holds(pairs.any(jumps), "a step")
        },
    },
    Claim {
        reads: r"From ([\d.]+) cm on the (.+) limits",
        holds: |told, drawn| {
            let study = drawn.own_study()?;
            let held = &study.capacity.held;
            let at_end = study.joint(held[held.len() - 1].limiting);
            holds(at_end == &told[2], "the joint that limits at the end")?;
            let is_other = |at: &usize| study.joint(held[*at].limiting) != at_end;
            let before = (0..held.len()).rev().find(is_other);
            let from = before.map_or(0, |before| before + 1);
            says(&told[1], drawn.curves[0].2[from][0], 0.0, "from")
        },
    },
    Claim {
        reads: r"Nowhere counts most for long: (.+)",
        holds: |told, drawn| nowhere_for_long(&told[1], drawn),
    },
    Claim {
        reads: r"Pale: the (.+) does not limit; one of several ways to share the moment",
        holds: |told, drawn| {
            is_of(&told[1], drawn)?;
            holds(!drawn.pale.is_empty(), "a pale stretch")
        },
    },
    Claim {
        reads: r"Of several heads the mean: the (.+) goes down to (\d+) %",
        holds: |told, drawn| {
            let study = drawn.own_study()?;
            let mut all = study.capacity.muscles.iter();
            let head = all.position(|name| head_name(name) == told[1]);
            let head = head.ok_or_else(|| format!("no {}", &told[1]))?;
            let held = study.capacity.held.iter();
            let lengths = held.map(|held| 100.0 * held.muscles[head].state.length_norm);
            let least = lengths.fold(f64::INFINITY, f64::min);
            says(&told[2], least, 0.0, "least length")?;
            let means = drawn.curves.iter().flat_map(|c| &c.2).map(|point| point[1]);
            let drawn_least = means.fold(f64::INFINITY, f64::min);
            holds(
                least < drawn_least,
                "farther down than the means that are drawn",
            )
        },
    },
    Claim {
        reads: r"(Ascending|Descending|Bell-shaped|U-shaped|Level)(?: \(added here\)| \(published: (\S+)\))?: start (\d+) %, end (\d+) % of its peak",
        holds: |told, drawn| {
            let mut panels = drawn.curves.iter();
            let own = panels.find(|panel| panel.0.starts_with(&told[1]));
            let own = own.ok_or("no such panel")?;
            let [start, end] = ends(&own.2);
            if let Some(published) = told.get(2) {
                let lift = own.1.to_lowercase().replace(' ', "-");
                let classes = Library::built_in()
                    .published_classes()
                    .expect("a sound file");
                let known = &classes.by_lift[&lift];
                holds(published.as_str() == known, "published so")?;
                holds(*known != told[1].to_lowercase(), "computed otherwise")?;
            }
            says(&told[3], start, 1e-3, "start")?;
            says(&told[4], end, 1e-3, "end")
        },
    },
    Claim {
        reads: r"(.+?), (.+?) held still(?:; lifted, ([\d.]+) kg \(the maximum\) has (?:a dip too slight for a sticking region|no sticking region|a sticking region .+?)(?:; of (\d+) measured lifters (\d+) had one)?)?",
        holds: |told, drawn| {
            // What is lifted is held to the simulation by `law_motion_is_told_as_it_is_simulated`.
            is_them(&told[1], drawn)?;
            hangs(&told[2], drawn.setups.first())?;
            match told.get(3) {
                Some(_) => measured(told, [5, 4], drawn),
                None => Ok(()),
            }
        },
    },
    Claim {
        reads: r"(.+?), held still(?: at every place of the range(?:; in the valley(, where the model is less sure,)? (\d+) N is held, body weight is (\d+) N)?)?",
        holds: |told, drawn| {
            is_them(&told[1], drawn)?;
            let (Some(held), Some(body)) = (told.get(3), told.get(4)) else {
                return Ok(());
            };
            let lift = lifts(drawn).next().ok_or("no lift")?;
            let study = drawn.study(&lift.1)?;
            let values = study.capacity.values();
            let place = valley_of_weaker_end(&lift.2)[0];
            let is_doubted = is_hollow_at(drawn, &lift.1, place);
            holds(is_doubted == told.get(2).is_some(), "whether it is sure")?;
            let valley = place / 100.0 * (values.len() - 1) as f64;
            says(held.as_str(), values[valley.round() as usize], 0.0, "held")?;
            says(
                body.as_str(),
                STANDARD_GRAVITY_M_S2 * study.body_mass.as_kg(),
                0.0,
                "body",
            )
        },
    },
    Claim {
        reads: r"(.+?), held still, in this model: how much more could be held with 1 % more strength at one joint",
        holds: |told, drawn| is_them(&told[1], drawn),
    },
    Claim {
        reads: r"(.+?), one side: muscle moments at the (.+) under the heaviest load of each place",
        holds: |told, drawn| {
            is_them(&told[1], drawn)?;
            is_of(&told[2], drawn)
        },
    },
    Claim {
        reads: r"(.+?), (?:moment arms of the|(.+): all) muscles that (\S+) the (\S+)(?: together)?",
        holds: |told, drawn| {
            is_them(&told[1], drawn)?;
            if let Some(lift) = told.get(2) {
                is_lift(lift.as_str(), drawn)?;
            }
            they_turn(&told[3], &told[4], drawn)
        },
    },
    Claim {
        reads: r"(.+?), fibre lengths in the (.+)",
        holds: |told, drawn| {
            is_them(&told[1], drawn)?;
            is_lift(&told[2], drawn)
        },
    },
    Claim {
        reads: r"(.+?), (.+): force × moment arm of every muscle at the (.+)",
        holds: |told, drawn| {
            is_them(&told[1], drawn)?;
            is_lift(&told[2], drawn)?;
            holds(drawn.own_study()?.joint(0) == &told[3], "the joint")
        },
    },
    Claim {
        reads: r"([^,]+), ([^,:;]+)",
        holds: |told, drawn| {
            is_them(&told[1], drawn)?;
            is_lift(&told[2], drawn)
        },
    },
    Claim {
        reads: r"([^,:;]+)",
        holds: |told, drawn| is_them(&told[1], drawn),
    },
];

#[test]
fn fault_another_lifter_and_a_false_verb_are_found() {
    let library = Library::built_in();
    let desk = Desk::open(&library, "reference-man", System::Metric).expect("a lifter");
    let lift = desk.lift("knee-extension").expect("a lift");
    let falls = vec![[90.0, 4.0], [0.0, 5.0]];
    let drawn = Drawn {
        curves: vec![(String::new(), "vastus".to_owned(), falls)],
        studies: vec![lift.study.clone()],
        movement: "knee-extension".to_owned(),
        who: "Reference man".to_owned(),
        ..Drawn::default()
    };
    let told = |text: &str| super::check(text, AROUND, &drawn);
    let right = "Reference man, moment arms of the muscles that extend the knee.";
    assert_eq!(told(right), Ok(()));
    for wrong in [
        right.replace("extend", "flex"),
        right.replace("knee", "elbow"),
        right.replace("man", "woman"),
        "Reference man, leg curl.".to_owned(),
    ] {
        assert!(told(&wrong).is_err(), "{wrong}");
    }
    assert_eq!(span_told("1.24 to 1.4", Some([1.24, 1.40])), Ok(()));
    assert!(span_told("1.24", Some([1.24, 1.40])).is_err());
}
