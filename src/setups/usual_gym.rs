//! The usual bar and plates of a weight room, for whoever names no gym.
//!
//! In: metric or US units. Out: a [`Gym`] with one bar and its plates. Source: common practice.

use super::gym::Gym;
use super::gym_file::{GymBar, GymPlates};
use crate::units::{Mass, System};

/// Mass of one plate in kg, number of plates.
const METRIC_PLATES_KG: [(f64, u32); 7] = [
    (25.0, 8),
    (20.0, 4),
    (15.0, 2),
    (10.0, 4),
    (5.0, 2),
    (2.5, 2),
    (1.25, 2),
];

/// Mass of one plate in lb, number of plates.
const US_PLATES_LB: [(f64, u32); 6] = [
    (45.0, 10),
    (35.0, 2),
    (25.0, 2),
    (10.0, 4),
    (5.0, 2),
    (2.5, 2),
];

/// Lighter bars of the usual weight room, for lifters whose warm-up is lighter than the usual bar: metric and US.
const LIGHTER_BARS: [(f64, f64); 2] = [(15.0, 35.0), (10.0, 25.0)];

/// The usual gym with lighter bars beside the usual one.
#[must_use]
pub fn usual_gym_with_light_bars(units: System) -> Gym {
    let mut gym = usual_gym(units);
    for (kg, lb) in LIGHTER_BARS {
        let mass = match units {
            System::Metric => Mass::from_kg(kg),
            System::Us => Mass::from_lb(lb),
        };
        gym.bars.push(GymBar {
            name: "bar".to_owned(),
            mass,
        });
    }
    gym
}

/// A 20 kg bar with plates of 25 kg to 1.25 kg, or a 45 lb bar with plates of 45 lb to 2.5 lb.
#[must_use]
pub fn usual_gym(units: System) -> Gym {
    match units {
        System::Metric => gym_of(Mass::from_kg(20.0), Mass::from_kg, &METRIC_PLATES_KG),
        System::Us => gym_of(Mass::from_lb(45.0), Mass::from_lb, &US_PLATES_LB),
    }
}

fn gym_of(bar: Mass, unit: fn(f64) -> Mass, plates: &[(f64, u32)]) -> Gym {
    let plate = |&(mass, count): &(f64, u32)| GymPlates {
        mass: unit(mass),
        count,
    };
    Gym {
        bars: vec![GymBar {
            name: "bar".to_owned(),
            mass: bar,
        }],
        plates: plates.iter().map(plate).collect(),
        ..Gym::default()
    }
}
