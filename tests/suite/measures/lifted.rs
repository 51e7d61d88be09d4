//! Measures of lifts in motion: maxima, velocities, sticking regions, lowering.

use super::{Asked, settings};
use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock, Mutex};
use torquill::anatomy::Lifter;
use torquill::library::{Library, assemble};
use torquill::movement::{Carrier, Movement, Pose, trace};
use torquill::rep::{RepModel, RepOptions, RepTrace, TurnRound, with_load};
use torquill::resistance::{Assistance, Item, Setup, Weight};
use torquill::session::prediction::{TiringBody, repetitions_to_failure};
use torquill::study::{Question, simulated_oracle};
use torquill::units::{Duration, Mass};

/// A lift of a lifter that can be done with any load.
pub struct Lifted {
    pub movement: Movement,
    pub lifter: Lifter,
    pub model: RepModel,
    pub template: Setup,
    pub options: RepOptions,
    /// The lifted body's own mass, kg; 0 where it does not count.
    pub body_kg: f64,
}

impl Lifted {
    pub fn new(name: &str, movement: Movement, lifter: Lifter) -> Option<Self> {
        let model = RepModel::new(&movement, &lifter).ok()?;
        let carried = movement.carrier().unwrap_or_else(|e| panic!("{name}: {e}")) == Carrier::Body;
        let mut template = Setup::default();
        if carried {
            let mass = Weight::BodyMass(lifter.body_mass);
            template.items.push(Item::Weight(mass));
        }
        Some(Self {
            options: RepOptions::usual_for(&movement),
            body_kg: if carried {
                lifter.body_mass.as_kg()
            } else {
                0.0
            },
            movement,
            lifter,
            model,
            template,
        })
    }

    /// The most that is lifted so, kg, the body counted; with a counterweight where the body alone is too much.
    pub fn limit_kg(&self, options: &RepOptions) -> Option<f64> {
        let found = self.model.one_rm(&self.template, options);
        match found {
            Ok(one_rm) => Some(one_rm.load.as_kg() + self.body_kg),
            Err(_) if self.body_kg > 0.0 => self.helped_kg(options),
            Err(_) => None,
        }
    }

    fn helped_kg(&self, options: &RepOptions) -> Option<f64> {
        let lifts = |help_kg: f64| {
            let mut setup = self.template.clone();
            let help = Assistance::Counterweight(Mass::from_kg(help_kg));
            setup.items.push(Item::Assistance(help));
            self.model.is_lifted(&setup, options).unwrap_or(false)
        };
        let (mut low, mut high) = (0.0, 0.95 * self.body_kg);
        if !lifts(high) {
            return None;
        }
        while high - low > 0.02 {
            let middle = f64::midpoint(low, high);
            if lifts(middle) {
                high = middle;
            } else {
                low = middle;
            }
        }
        Some(self.body_kg - high)
    }

    /// The repetition with this much in all, the body counted; `None` where that is less than the body.
    pub fn with_kg(&self, all_kg: f64, options: &RepOptions) -> Option<RepTrace> {
        let load_kg = all_kg - self.body_kg;
        if load_kg < 0.0 {
            return None;
        }
        let setup = with_load(&self.template, Mass::from_kg(load_kg));
        self.model.run(&setup, options).ok()
    }

    /// The poses of the range.
    pub fn poses(&self) -> Vec<Pose> {
        trace(&self.movement, &self.lifter, 101)
            .expect("poses")
            .poses
    }
}

/// A lift with settings, kept for all rows that ask for it.
pub fn lifted(lift: &str, lifter: &str, sets: &[String]) -> Arc<Lifted> {
    type Kept = Mutex<BTreeMap<String, Arc<Lifted>>>;
    static KEPT: LazyLock<Kept> = LazyLock::new(Mutex::default);
    let key = format!("{lift} {lifter} {sets:?}");
    if let Some(known) = KEPT.lock().expect("sound").get(&key) {
        return Arc::clone(known);
    }
    let model = assemble(&Library::built_in(), lifter, lift, sets)
        .unwrap_or_else(|e| panic!("{lift}, {lifter}, {sets:?}: {e}"));
    let made = Lifted::new(lift, model.movement, model.lifter)
        .unwrap_or_else(|| panic!("{lift}, {lifter}, {sets:?} does not move"));
    let made = Arc::new(made);
    KEPT.lock().expect("sound").insert(key, Arc::clone(&made));
    made
}

/// The usual maximum, kg, the body counted, kept likewise.
pub fn limit_kg(lift: &str, lifter: &str, sets: &[String]) -> Option<f64> {
    static KEPT: LazyLock<Mutex<BTreeMap<String, Option<f64>>>> = LazyLock::new(Mutex::default);
    let key = format!("{lift} {lifter} {sets:?}");
    if let Some(known) = KEPT.lock().expect("sound").get(&key) {
        return *known;
    }
    let lift = lifted(lift, lifter, sets);
    let found = lift.limit_kg(&lift.options);
    KEPT.lock().expect("sound").insert(key, found);
    found
}

fn options(asked: &Asked, usual: RepOptions) -> RepOptions {
    RepOptions {
        turn: match asked.given("pause") {
            Some(time) => TurnRound::Pause(Duration::from_s(time)),
            None => usual.turn,
        },
        from: asked.given("from").unwrap_or(usual.from),
        ..usual
    }
}

/// The lift, the options and the load of a row: `load` in % of the maximum done in the same way.
fn done(asked: &Asked) -> Option<(Arc<Lifted>, RepOptions, RepTrace)> {
    let lift = lifted(&asked.lift, &asked.lifter, &settings(asked));
    let options = options(asked, lift.options);
    let limit_kg = lift.limit_kg(&options)?;
    let trace = lift.with_kg(asked.number("load") / 100.0 * limit_kg, &options)?;
    Some((lift, options, trace))
}

/// The value of a measure of this file; `None` for a measure that is none of them.
pub fn value(asked: &Asked) -> Option<Option<f64>> {
    let sets = settings(asked);
    let (lift, lifter) = (asked.lift.as_str(), asked.lifter.as_str());
    let beside = |name: &str| asked.words(name).to_owned();
    Some(match asked.measure.as_str() {
        "over_lift" => {
            let hands = asked.given("hands").unwrap_or(1.0);
            ratio(
                limit_kg(lift, lifter, &sets),
                limit_kg(&beside("beside"), lifter, &[]),
            )
            .map(|ratio| hands * ratio)
        }
        "over_person" => ratio(
            limit_kg(lift, lifter, &sets),
            limit_kg(lift, &beside("beside"), &sets),
        ),
        "over_body" => {
            let body_kg = lifted(lift, lifter, &sets).lifter.body_mass.as_kg();
            limit_kg(lift, lifter, &sets).map(|kg| kg / body_kg)
        }
        "grip" => changed(asked, "cm", "grip", " cm"),
        "hip_angle_gain" => changed(asked, "deg", "hip_angle", " deg"),
        "depth" => changed(asked, "deg", "depth", " deg"),
        "knee_travel" => ratio(
            limit_kg(
                lift,
                lifter,
                &[format!("technique.knee_travel={} cm", beside("cm"))],
            ),
            limit_kg(lift, lifter, &[]),
        ),
        "bar_position_ratio" => ratio(
            limit_kg(lift, lifter, &["technique.bar_position=low".to_owned()]),
            limit_kg(lift, lifter, &[]),
        ),
        "partial" | "pause_cost" => {
            let own = lifted(lift, lifter, &sets);
            let with = match asked.measure.as_str() {
                "partial" => options(asked, own.options),
                _ => RepOptions {
                    turn: TurnRound::Pause(Duration::from_s(1.0)),
                    ..own.options
                },
            };
            ratio(own.limit_kg(&with), limit_kg(lift, lifter, &sets))
        }
        "tempo_max" => {
            let own = lifted(lift, lifter, &sets);
            let lowered = |name: &str| RepOptions {
                lowering: Some(Duration::from_s(asked.number(name))),
                ..own.options
            };
            ratio(
                own.limit_kg(&lowered("seconds")),
                own.limit_kg(&lowered("beside")),
            )
        }
        "lowered" => lowered(asked),
        "repetitions" => repetitions(asked),
        "mean_velocity" => done(asked).and_then(|(_, _, t)| Some(t.lift?.mean_velocity)),
        "propulsive_velocity" => {
            done(asked).and_then(|(_, _, t)| Some(t.lift?.mean_propulsive_velocity))
        }
        "peak_velocity" => done(asked).and_then(|(_, _, t)| Some(t.lift?.peak_velocity)),
        "deceleration" => {
            done(asked).and_then(|(_, _, t)| Some(100.0 * t.lift?.deceleration_share))
        }
        "peak_force" => {
            done(asked).and_then(|(_, _, t)| Some(100.0 * t.lift?.peak_force_over_demand))
        }
        "lift_time" => done(asked).and_then(|(_, _, t)| Some(t.lift?.time_s)),
        "braking" => done(asked).and_then(|(_, _, t)| braking(&t)),
        "velocity_ratio" => velocity_ratio(asked),
        "slow_lowering" => slow_lowering(asked),
        "power_velocity" => strongest(asked).map(|(_, velocity)| velocity),
        "power_load" => strongest(asked).map(|(share, _)| 100.0 * share),
        "pull_up_equation" => pull_up_equation(asked),
        "peak_moment" => done(asked).and_then(|(l, _, t)| {
            let sides = 1.0 + asked.given("both").unwrap_or(0.0);
            let moments = moments(&l, &t, asked.words("joint"))?;
            let top = moments
                .iter()
                .fold(f64::NEG_INFINITY, |a, (_, m)| a.max(*m));
            Some(match asked.given("both") {
                Some(_) => sides * top,
                None => top / l.lifter.body_mass.as_kg(),
            })
        }),
        "peak_moment_nm" => done(asked).and_then(|(l, _, t)| {
            let moments = moments(&l, &t, asked.words("joint"))?;
            Some(
                moments
                    .iter()
                    .fold(f64::NEG_INFINITY, |a, (_, m)| a.max(*m)),
            )
        }),
        "peak_moment_angle" => done(asked).and_then(|(l, _, t)| {
            let moments = moments(&l, &t, asked.words("joint"))?;
            let top = moments.iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
            Some(top.0.to_degrees())
        }),
        "moment_end_ratio" => done(asked).and_then(|(l, _, t)| {
            let moments = moments(&l, &t, asked.words("joint"))?;
            Some(moments.last()?.1 / moments.first()?.1)
        }),
        "moment_ratio" => done(asked).and_then(|(l, _, t)| {
            let peak = |joint| {
                let all = moments(&l, &t, joint)?;
                Some(all.iter().fold(0.0_f64, |a, (_, m)| a.max(*m)))
            };
            ratio(peak("hip"), peak("knee"))
        }),
        "work_ratio" => done(asked).and_then(|(l, _, t)| {
            let work = |joint| Some(positive_work(&moments(&l, &t, joint)?));
            ratio(work("hip"), work("knee"))
        }),
        "work" => done(asked).and_then(|(l, _, t)| {
            let work = positive_work(&moments(&l, &t, asked.words("joint"))?);
            Some(work / l.lifter.body_mass.as_kg())
        }),
        "hip_share_rise" => done(asked).and_then(|(l, _, t)| hip_share_rise(&l, &t)),
        _ => return None,
    })
}

pub fn ratio(over: Option<f64>, under: Option<f64>) -> Option<f64> {
    let ratio = over? / under?;
    ratio.is_finite().then_some(ratio)
}

/// The maximum with one value of a technique over that with another.
fn changed(asked: &Asked, one: &str, technique: &str, unit: &str) -> Option<f64> {
    let path = if technique == "grip" {
        "grip_width"
    } else {
        technique
    };
    let with = |name: &str| {
        let set = format!("technique.{path}={}{unit}", asked.words(name));
        limit_kg(&asked.lift, &asked.lifter, &[set])
    };
    ratio(with(one), with("beside"))
}

fn lowered(asked: &Asked) -> Option<f64> {
    let sets = settings(asked);
    let own = lifted(&asked.lift, &asked.lifter, &sets);
    let time = Duration::from_s(asked.number("seconds"));
    let eccentric = own
        .model
        .eccentric_max(&own.template, time, &own.options)
        .ok()?;
    let limit = limit_kg(&asked.lift, &asked.lifter, &sets);
    ratio(Some(eccentric.load.as_kg() + own.body_kg), limit)
}

/// Repetitions with the body alone, or at a share of the maximum, by the simulated set.
fn repetitions(asked: &Asked) -> Option<f64> {
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
    let oracle = simulated_oracle(
        published,
        &question,
        &own.lifter,
        &Setup::default(),
        Duration::from_s(2.0),
    )
    .ok()?;
    let fresh = TiringBody::fresh(&oracle.joints);
    let count = repetitions_to_failure(&oracle, Mass::from_kg(load_kg), &fresh).ok()?;
    Some(f64::from(count))
}

/// Share of the lift's time in which the load slows down faster than gravity would.
fn braking(trace: &RepTrace) -> Option<f64> {
    let lifting = trace.lifting();
    let slows =
        |s: &&torquill::rep::RepSample| s.acceleration < -torquill::units::STANDARD_GRAVITY_M_S2;
    Some(lifting.iter().filter(slows).count() as f64 / lifting.len().max(1) as f64)
}

/// Velocity at one load over that at another, or of one lifter over another's.
fn velocity_ratio(asked: &Asked) -> Option<f64> {
    let velocity = |asked: &Asked| done(asked).and_then(|(_, _, t)| Some(t.lift?.mean_velocity));
    let mut other = asked.clone();
    if let Some(lifter) = asked.text("beside_lifter") {
        lifter.clone_into(&mut other.lifter);
    }
    if let Some(lift) = asked.text("beside_lift") {
        lift.clone_into(&mut other.lift);
    }
    if let Some(grip) = asked.text("beside_grip") {
        other.with.insert("grip".to_owned(), grip.to_owned());
    }
    ratio(velocity(asked), velocity(&other))
}

fn slow_lowering(asked: &Asked) -> Option<f64> {
    let own = lifted(&asked.lift, &asked.lifter, &settings(asked));
    let limit = limit_kg(&asked.lift, &asked.lifter, &settings(asked))?;
    let usual_s = own.options.lowering_s()?;
    let velocity = |factor: f64| {
        let options = RepOptions {
            lowering: Some(Duration::from_s(factor * usual_s)),
            ..own.options
        };
        let trace = own.with_kg(asked.number("load") / 100.0 * limit, &options)?;
        Some(trace.lift?.mean_velocity)
    };
    ratio(velocity(2.0), velocity(0.75))
}

/// Share of the maximum with the greatest mean power, and the mean velocity there.
fn strongest(asked: &Asked) -> Option<(f64, f64)> {
    let own = lifted(&asked.lift, &asked.lifter, &settings(asked));
    let options = options(asked, own.options);
    let limit = own.limit_kg(&options)?;
    (30..=100)
        .step_by(2)
        .filter_map(|percent| {
            let share = f64::from(percent) / 100.0;
            let figures = own.with_kg(share * limit, &options)?.lift?;
            Some((share, figures.mean_power_w, figures.mean_velocity))
        })
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(share, _, velocity)| (share, velocity))
}

/// Pull-ups that the velocity of one tells of, over those of the simulated set.
fn pull_up_equation(asked: &Asked) -> Option<f64> {
    let own = lifted(&asked.lift, &asked.lifter, &[]);
    let velocity = own.with_kg(own.body_kg, &own.options)?.lift?.mean_velocity;
    let told = asked.number("constant") + asked.number("slope") * velocity;
    ratio(Some(told), repetitions(asked))
}

/// Net extensor moment of a joint of one side (angle rad, N·m) through the lifting phase, the limbs' weight with it;
/// what speeding the limbs up asks is left out.
fn moments(lift: &Lifted, trace: &RepTrace, joint: &str) -> Option<Vec<(f64, f64)>> {
    let poses = lift.poses();
    let index = poses[0]
        .coordinates
        .iter()
        .position(|c| c.dof.name() == joint)?;
    let all = trace.lifting().iter().map(|sample| {
        let at = sample.range.clamp(0.0, 1.0) * (poses.len() - 1) as f64;
        let (low, part) = (at.floor() as usize, at.fract());
        let high = (low + 1).min(poses.len() - 1);
        let of = |pose: &Pose| {
            let moment = pose.gravity_nm[index] - 0.5 * sample.force * pose.load_jacobian[index].z;
            (pose.coordinates[index].angle_rad, moment)
        };
        let (a, b) = (of(&poses[low]), of(&poses[high]));
        (a.0 + part * (b.0 - a.0), a.1 + part * (b.1 - a.1))
    });
    Some(all.collect())
}

/// Work of the extensor moments while the angle falls, J.
fn positive_work(moments: &[(f64, f64)]) -> f64 {
    moments
        .windows(2)
        .map(|pair| (f64::midpoint(pair[0].1, pair[1].1) * (pair[0].0 - pair[1].0)).max(0.0))
        .sum()
}

/// Hip's share of hip and knee moment in the middle of the sticking region less that at the bottom.
fn hip_share_rise(lift: &Lifted, trace: &RepTrace) -> Option<f64> {
    let region = trace.sticking?;
    let (hip, knee) = (moments(lift, trace, "hip")?, moments(lift, trace, "knee")?);
    let middle = f64::midpoint(region.first_peak.time_s, region.minimum.time_s);
    let start = trace.lifting().first()?.time_s;
    let place = trace
        .lifting()
        .iter()
        .position(|sample| sample.time_s - start >= middle)?;
    let share = |index: usize| hip[index].1 / (hip[index].1 + knee[index].1);
    Some(share(place) - share(0))
}
