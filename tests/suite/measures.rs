//! What the model says to a row of a list: a measure by its name, for the predictions and for published values.
//!
//! A row names `measure`, `lift`, `lifter` and, in `with`, what else it takes: `load=80; beside=squat`.
//! A value is `None` where the model has no answer, which no interval holds.

mod group;
mod held;
mod lifted;
mod maxima;
mod moments;
mod motion;
mod sets;

use std::collections::BTreeMap;

/// What a row asks for.
#[derive(Debug, Clone)]
pub struct Asked {
    pub measure: String,
    pub lift: String,
    pub lifter: String,
    pub with: BTreeMap<String, String>,
}

impl Asked {
    pub fn of(measure: &str, lift: &str, lifter: &str, with: &str) -> Self {
        let pair = |part: &str| {
            let (name, value) = part.split_once('=').expect("name=value");
            (name.trim().to_owned(), value.trim().to_owned())
        };
        Self {
            measure: measure.to_owned(),
            lift: lift.to_owned(),
            lifter: lifter.to_owned(),
            with: with
                .split(';')
                .filter(|part| !part.trim().is_empty())
                .map(pair)
                .collect(),
        }
    }

    pub fn text(&self, name: &str) -> Option<&str> {
        self.with.get(name).map(String::as_str)
    }

    #[track_caller]
    pub fn words(&self, name: &str) -> &str {
        self.text(name)
            .unwrap_or_else(|| panic!("{self:?} needs {name}"))
    }

    pub fn given(&self, name: &str) -> Option<f64> {
        self.text(name).map(|text| text.parse().expect("a number"))
    }

    #[track_caller]
    pub fn number(&self, name: &str) -> f64 {
        self.given(name)
            .unwrap_or_else(|| panic!("{self:?} needs {name}"))
    }
}

/// The model's value.
pub fn value(asked: &Asked) -> Option<f64> {
    lifted::lift_of(&asked.lift, &asked.lifter, &settings(asked))?;
    let rooms = [
        maxima::value,
        motion::value,
        moments::value,
        sets::value,
        held::value,
        group::value,
    ];
    let known = rooms.into_iter().find_map(|room| room(asked));
    known.unwrap_or_else(|| panic!("no measure is called {:?}", asked.measure))
}

/// Paths of `--set` that a row's words stand for.
fn settings(asked: &Asked) -> Vec<String> {
    let mut sets = Vec::new();
    for (name, unit) in [
        ("stance", ""),
        ("grip", " cm"),
        ("hip_angle", " deg"),
        ("knee_angle", " deg"),
        ("shoulder_angle", " deg"),
        ("sled_angle", " deg"),
        ("depth", " deg"),
        ("knee_travel", " cm"),
        ("bar_position", ""),
        ("torso_angle", " deg"),
    ] {
        if let Some(value) = asked.text(name) {
            let path = if name == "grip" { "grip_width" } else { name };
            sets.push(format!("technique.{path}={value}{unit}"));
        }
    }
    sets
}
