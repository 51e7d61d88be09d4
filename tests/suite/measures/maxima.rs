//! Measures of maxima: between lifts, lifters and techniques, of parts of the range, lowered ones.

use super::lifted::{beside_lift, lifted, limit_kg, ratio, started};
use super::{Asked, settings};
use torquill::rep::{RepOptions, TurnRound};
use torquill::units::{Duration, Mass};

/// The value of a measure of this file; `None` for a measure that is none of them.
pub fn value(asked: &Asked) -> Option<Option<f64>> {
    let sets = settings(asked);
    let (lift, lifter) = (asked.lift.as_str(), asked.lifter.as_str());
    let own_kg = || limit_kg(lift, lifter, &sets);
    let line = |kg: f64| asked.number("slope") * kg + asked.number("constant");
    let with = |technique: &str, value: &str, unit: &str| {
        limit_kg(
            lift,
            lifter,
            &[format!("technique.{technique}={value}{unit}")],
        )
    };
    let changed = |name: &str, technique: &str, unit: &str| {
        let at = |name: &str| with(technique, asked.words(name), unit);
        ratio(at(name), at("beside"))
    };
    Some(match asked.measure.as_str() {
        "limit_kg" => own_kg(),
        "over_lift" => {
            let hands = asked.given("hands").unwrap_or(1.0);
            let other = beside_lift(asked);
            ratio(own_kg(), limit_kg(&other.lift, lifter, &[])).map(|ratio| hands * ratio)
        }
        "over_person" => ratio(own_kg(), limit_kg(lift, asked.words("beside"), &sets)),
        "over_body" => {
            let body_kg = lifted(lift, lifter, &sets).lifter.body_mass.as_kg();
            own_kg().map(|kg| kg / body_kg)
        }
        "by_line" => {
            let other = limit_kg(asked.words("beside"), lifter, &[]);
            ratio(own_kg(), other.map(line))
        }
        "half_by_line" => {
            let own = lifted(lift, lifter, &sets);
            let half = own.limit_kg(&started(asked, &own, own.options));
            ratio(half, own_kg().map(line))
        }
        "machine_press" => machine_press(asked),
        "grip" => changed("cm", "grip_width", " cm"),
        "grip_over_usual" => ratio(own_kg(), limit_kg(lift, lifter, &[])),
        "hip_angle_gain" => changed("deg", "hip_angle", " deg"),
        "depth" => changed("deg", "depth", " deg"),
        "knee_travel" => ratio(
            with("knee_travel", asked.words("cm"), " cm"),
            limit_kg(lift, lifter, &[]),
        ),
        "partial" => {
            let own = lifted(lift, lifter, &sets);
            ratio(own.limit_kg(&started(asked, &own, own.options)), own_kg())
        }
        "pause_cost" => {
            let own = lifted(lift, lifter, &sets);
            let with = |turn| {
                own.limit_kg(&RepOptions {
                    turn,
                    ..own.options
                })
            };
            ratio(
                with(TurnRound::Pause(Duration::from_s(1.0))),
                with(TurnRound::TouchAndGo),
            )
        }
        "lowered" => {
            let own = lifted(lift, lifter, &sets);
            let time = Duration::from_s(asked.number("seconds"));
            ratio(own.lowered_kg(time), own_kg())
        }
        _ => return None,
    })
}

/// The maximum over body mass as on the machine of the norms, by a line in pounds.
fn machine_press(asked: &Asked) -> Option<f64> {
    let own = lifted(&asked.lift, &asked.lifter, &[]);
    let free = Mass::from_kg(limit_kg(&asked.lift, &asked.lifter, &[])?);
    let machine_lb = asked.number("slope") * free.as_lb() + asked.number("constant");
    Some(machine_lb / own.lifter.body_mass.as_lb())
}
