//! What a changed technique or body does to a strength curve: the student's question, twice.
//!
//! In: a lift and a value of it. Out: figures of a family of curves.

use super::desk::Desk;
use super::family::family_chart;
use super::sheet::{Chart, Sheet};
use crate::error::{Error, Result};
use crate::library::get;
use crate::study::{Conditions, Parameter, family};
use crate::units::Length;

/// Narrower and wider grips, as shares of the usual one: from about shoulder width to about what the rules
/// of competitions allow (common practice).
const GRIPS: [f64; 4] = [0.7, 0.85, 1.0, 1.15];
/// Shorter and longer limbs, against the lifter's own: about two standard deviations between people of
/// one height (assumed).
const LIMBS: [&str; 3] = ["-10%", "0%", "+10%"];

/// Bench press with narrow and wide grips.
pub fn grip_width(desk: &Desk<'_>) -> Result<Sheet> {
    let caption = "The hands' distance changes the lever of the load at shoulder and elbow, and how far the bar has to \
                   travel: a wide grip shortens the way. Which grip is strongest follows from both joints.";
    let (movement, path) = ("bench-press", "technique.grip_width");
    let model = &desk.lift(movement)?.model;
    let grip = get(model, path)?;
    // A grip is held as a length or as a multiple of the breadth of the shoulders.
    let usual_m = match grip.unit {
        "" => grip.value * get(model, "build.biacromial_breadth")?.value,
        _ => grip.value,
    };
    let values = GRIPS.map(|share| match share {
        1.0 => "0%".to_owned(),
        share => desk
            .units
            .short_length(Length::from_cm((100.0 * share * usual_m).round())),
    });
    varied(desk, movement, path, &values, caption)
}

/// Squat with short and long thighs.
pub fn limb_length(desk: &Desk<'_>) -> Result<Sheet> {
    let caption = "With longer thighs, hip and knee lie farther from the line of the load: the same bar asks for more \
                   torque, and the same muscles hold less of it. Nothing about the muscles was changed.";
    let values = LIMBS.map(str::to_owned);
    varied(desk, "squat", "segments.thigh.length", &values, caption)
}

fn varied(
    desk: &Desk<'_>,
    movement: &str,
    path: &str,
    values: &[String],
    caption: &str,
) -> Result<Sheet> {
    let parameter = Parameter::read(path, &values.join(","))?;
    let asked = Conditions::default();
    let family = family(&desk.workbench(movement)?, &[], &parameter, &asked)?;
    if family.variants.len() < 2 {
        let told = family.undone.first().map(|undone| undone.error.clone());
        return Err(told.unwrap_or_else(|| Error::no_answer(format!("{path} cannot be varied"))));
    }
    let chart = family_chart(&family, &asked, desk.units);
    Ok(Sheet::new(Chart::Lines(chart), caption))
}
