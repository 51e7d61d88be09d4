//! Measures of lifts in motion: maxima, velocities, sticking regions, lowering.

use super::held::degrees;
use super::{Asked, settings};
use std::collections::BTreeMap;
use std::sync::{Arc, LazyLock, Mutex};
use torquill::anatomy::Lifter;
use torquill::library::{Library, assemble};
use torquill::movement::{Carrier, Movement, Pose, trace};
use torquill::rep::{RepModel, RepOptions, RepTrace, TurnRound, with_load};
use torquill::resistance::{Assistance, Item, Setup, Weight};
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

    /// The most that is lowered in a time, kg, the body counted.
    pub fn lowered_kg(&self, time: Duration) -> Option<f64> {
        let found = self
            .model
            .eccentric_max(&self.template, time, &self.options);
        Some(found.ok()?.load.as_kg() + self.body_kg)
    }

    /// The repetition with this much in all, the body counted; with a counterweight where that is less than the body.
    pub fn with_kg(&self, all_kg: f64, options: &RepOptions) -> Option<RepTrace> {
        let load_kg = all_kg - self.body_kg;
        let mut setup = with_load(&self.template, Mass::from_kg(load_kg.max(0.0)));
        if load_kg < 0.0 {
            let help = Assistance::Counterweight(Mass::from_kg(-load_kg));
            setup.items.push(Item::Assistance(help));
        }
        self.model.run(&setup, options).ok()
    }

    /// The poses of the range.
    pub fn poses(&self) -> Vec<Pose> {
        trace(&self.movement, &self.lifter, 101)
            .expect("poses")
            .poses
    }
}

/// A lift with settings, kept for all rows that ask for it; nothing where the lifter cannot do it.
pub fn lift_of(lift: &str, lifter: &str, sets: &[String]) -> Option<Arc<Lifted>> {
    type Kept = Mutex<BTreeMap<String, Option<Arc<Lifted>>>>;
    static KEPT: LazyLock<Kept> = LazyLock::new(Mutex::default);
    let key = format!("{lift} {lifter} {sets:?}");
    if let Some(known) = KEPT.lock().expect("sound").get(&key) {
        return known.clone();
    }
    let model = assemble(&Library::built_in(), lifter, lift, sets)
        .unwrap_or_else(|e| panic!("{lift}, {lifter}, {sets:?}: {e}"));
    let made = Lifted::new(lift, model.movement, model.lifter).map(Arc::new);
    KEPT.lock().expect("sound").insert(key, made.clone());
    made
}

/// The same of a row whose lift can be done: [`super::value`] answers for the others.
pub fn lifted(lift: &str, lifter: &str, sets: &[String]) -> Arc<Lifted> {
    lift_of(lift, lifter, sets).expect("a lift that can be done")
}

/// The usual maximum, kg, the body counted, kept likewise.
pub fn limit_kg(lift: &str, lifter: &str, sets: &[String]) -> Option<f64> {
    static KEPT: LazyLock<Mutex<BTreeMap<String, Option<f64>>>> = LazyLock::new(Mutex::default);
    let key = format!("{lift} {lifter} {sets:?}");
    if let Some(known) = KEPT.lock().expect("sound").get(&key) {
        return *known;
    }
    let found = lift_of(lift, lifter, sets).and_then(|lift| lift.limit_kg(&lift.options));
    KEPT.lock().expect("sound").insert(key, found);
    found
}

/// The usual way, with a pause where a row asks for one.
pub fn options(asked: &Asked, usual: RepOptions) -> RepOptions {
    RepOptions {
        turn: match asked.given("pause") {
            Some(time) => TurnRound::Pause(Duration::from_s(time)),
            None => usual.turn,
        },
        ..usual
    }
}

/// Where the lift starts: `from` a place, or where a joint has an angle.
pub fn started(asked: &Asked, lift: &Lifted, options: RepOptions) -> RepOptions {
    let by_joint = ["knee", "elbow"].into_iter().find_map(|joint| {
        let wanted = asked.given(&format!("from_{joint}"))?;
        let poses = lift.poses();
        let off = |pose: &Pose| degrees(pose, joint).map_or(f64::INFINITY, |d| (d - wanted).abs());
        let nearest = poses.iter().min_by(|a, b| off(a).total_cmp(&off(b)))?;
        Some(nearest.load.range)
    });
    RepOptions {
        from: asked.given("from").or(by_joint).unwrap_or(options.from),
        ..options
    }
}

/// The lift, the options and the repetition of a row: `load` in % of the maximum done in the same way.
pub fn done(asked: &Asked) -> Option<(Arc<Lifted>, RepOptions, RepTrace)> {
    let lift = lift_of(&asked.lift, &asked.lifter, &settings(asked))?;
    let options = started(asked, &lift, options(asked, lift.options));
    let limit_kg = lift.limit_kg(&options)?;
    let trace = lift.with_kg(asked.number("load") / 100.0 * limit_kg, &options)?;
    Some((lift, options, trace))
}

pub fn ratio(over: Option<f64>, under: Option<f64>) -> Option<f64> {
    let ratio = over? / under?;
    ratio.is_finite().then_some(ratio)
}

/// The same with the lift beside in its place.
pub fn beside_lift(asked: &Asked) -> Asked {
    Asked {
        lift: asked.words("beside").to_owned(),
        ..asked.clone()
    }
}
