//! Force over speed: the fibre's curve, and what speed does to a whole strength curve.
//!
//! In: the lifter's fibre curves; a lift of one joint at several paces. Out: figures.

use super::desk::Desk;
use super::sheet::{Chart, Sheet};
use super::strength_curve::{level_axis, points};
use crate::capacity::Pace;
use crate::error::Result;
use crate::narrative::places::sides_in_words;
use crate::narrative::prose::percent;
use crate::plot::{Axis, Extent, Heading, LineChart, Marker, Panel, Role, Series, Shade};
use crate::study::study;
use crate::units::{AngularSpeed, rounded};

/// The speed at which the fall of force is told, share of the fastest shortening: about that of a
/// brisk repetition (assumed, for the title only).
const TOLD_SPEED: f64 = 0.25;

/// Force of a fibre over its speed.
pub fn force_velocity(desk: &Desk<'_>) -> Result<Sheet> {
    let voluntary = desk.curves().velocity;
    let fibre = crate::anatomy::ForceVelocity {
        voluntary_share: 1.0,
        ..voluntary
    };
    let speeds: Vec<f64> = (-50..=100).map(|step| 0.01 * f64::from(step)).collect();
    let left = voluntary.at(TOLD_SPEED);
    let fastest = speeds[0];
    let [in_vivo, isolated] = [voluntary, fibre].map(|curve| curve.at(fastest));
    let series = |name: &str, role, from: f64, curve: &dyn Fn(f64) -> f64| Series {
        name: name.to_owned(),
        points: speeds
            .iter()
            .filter(|v| **v >= from - 1.0e-9)
            .map(|v| [100.0 * v, 100.0 * curve(*v)])
            .collect(),
        role,
    };
    let mut isolated_curve = series("isolated fibre", Role::Series(1), fastest, &|v| fibre.at(v));
    isolated_curve.points.retain(|point| point[0] <= 1.0e-9);
    let chart = LineChart {
        heading: Heading {
            title: format!(
                "Speed costs force: at {} of top speed only {} is left",
                percent(TOLD_SPEED),
                percent(left)
            ),
            subtitle: "Force of a fully active fibre at its optimal length, isometric force = 100 %".to_owned(),
            footnote: "Hill's hyperbola in shortening; in lengthening a person reaches far less of the surplus than \
                       an isolated fibre."
                .to_owned(),
            description: format!(
                "Force over speed. Lengthening is at the left: an isolated fibre reaches {} of its isometric force, \
                 a voluntary effort {}. Shortening is at the right: force falls steeply at first, to {} at {} of the \
                 fastest speed, and to nothing at 100 %.",
                percent(isolated),
                percent(in_vivo),
                percent(left),
                percent(TOLD_SPEED)
            ),
..super::phrases()
},
        x: Axis::new("Speed of shortening, fastest = 100 (below 0: lengthening)", "%")
            .reaching(Extent::Data),
        panels: vec![Panel {
            axis: Axis::new("Force, isometric = 100", "%"),
            series: vec![
                series("voluntary effort", Role::Series(0), fastest, &|v| voluntary.at(v)),
                isolated_curve,
            ],
            markers: vec![Marker {
                at: [100.0 * TOLD_SPEED, 100.0 * left],
                text: percent(left),
                detail: format!("at {} of the fastest speed", percent(TOLD_SPEED)),
                role: Role::Series(0),
            }],
            ..Panel::default()
        }],
        shades: vec![Shade {
            from: 100.0 * fastest,
            to: 0.0,
            label: "Lowering: fibres lengthen".to_owned(),
        }],
        ..LineChart::default()
    };
    Ok(Sheet::new(
        Chart::Lines(chart),
        "A lifter can lower more than can be held and hold more than can be lifted. The faster a load moves up, the \
         less force is left to move it.",
    ))
}

/// The lift whose curve is shown at several speeds.
const LIFT: &str = "knee-extension";
/// Speeds of the joint, deg/s: usual steps of isokinetic tests (common practice).
const SPEEDS_DEG_S: [f64; 4] = [-60.0, 0.0, 60.0, 180.0];

/// A strength curve at several speeds of the joint.
pub fn curve_at_speed(desk: &Desk<'_>) -> Result<Sheet> {
    let held = &desk.lift(LIFT)?.study;
    let mut series = Vec::new();
    let mut told = Vec::new();
    let order = |index: usize| index as f64 / (SPEEDS_DEG_S.len() - 1) as f64;
    let mut fastest = 1.0;
    for (index, speed) in SPEEDS_DEG_S.into_iter().enumerate() {
        let mut question = desk.question(LIFT)?;
        if speed != 0.0 {
            question.pace = Pace::Angular(AngularSpeed::from_deg_s(speed).as_rad_s());
        }
        let moving = study(&question, &[])?;
        let ratio = moving.class.peak / held.class.peak;
        fastest = ratio;
        let name = speed_in_words(speed);
        told.push(format!(
            "{name}: peak {} of the isometric one",
            percent(ratio)
        ));
        series.push(Series {
            name,
            points: points(&moving, desk.units, &moving.capacity.values()),
            role: Role::Ordered(order(index)),
        });
    }
    let last = SPEEDS_DEG_S[SPEEDS_DEG_S.len() - 1];
    let chart = LineChart {
        heading: Heading {
            title: format!(
                "At {} deg/s the {} keeps {} of its isometric peak",
                rounded(last, 0),
                held.movement_title.to_lowercase(),
                percent(fastest)
            ),
            subtitle: format!(
                "{}, strength curve at constant speed of the joint",
                desk.who()
            ),
            footnote: sides_in_words(held).to_owned(),
            description: format!(
                "Strength curves of the {} over {} at four speeds. {}.",
                held.movement_title.to_lowercase(),
                held.axis,
                told.join("; ")
            ),
            ..super::phrases()
        },
        x: level_axis(held, desk.units),
        panels: vec![Panel {
            axis: Axis::new(format!("Torque at the {}", held.joint(0)), "N·m"),
            series,
            ..Panel::default()
        }],
        ..LineChart::default()
    };
    Ok(Sheet::new(
        Chart::Lines(chart),
        "The force-velocity curve of the fibres moves the whole strength curve: lowering lifts it a little, faster \
         lifting presses it down.",
    ))
}

fn speed_in_words(speed_deg_s: f64) -> String {
    let size = rounded(speed_deg_s.abs(), 0);
    if speed_deg_s < 0.0 {
        format!("lowering at {size} deg/s")
    } else if speed_deg_s > 0.0 {
        format!("lifting at {size} deg/s")
    } else {
        "held still".to_owned()
    }
}
