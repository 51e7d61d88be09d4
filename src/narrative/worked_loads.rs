//! Demand and effort of a worked pose as equations, item by item.
//!
//! In: a [`WorkedPose`] and its capacity on the sheet. Out: lines of the sheet.

use super::implements::item_in_words;
use super::prose::percent;
use super::worked_names::load_unit;
use super::worked_sheet::WorkedSheet;
use crate::movement::{Carrier, Measure};
use crate::numeric::Formula;
use crate::resistance::{Item, Setup};
use crate::study::{WorkedLoad, WorkedPose};
use crate::units::{Force, STANDARD_GRAVITY_M_S2, System, Torque};

/// The load's demand and the effort; nothing without a load.
pub(super) fn demand(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    g: &Formula,
    capacity: &Formula,
    units: System,
) -> Option<Formula> {
    let load = pose.load.as_ref()?;
    sheet.heading(2, "Demand and effort");
    let parts = load.setup.items.iter().zip(&load.force.parts_n);
    let parts = (1..)
        .zip(parts)
        .filter(|(_, (item, _))| !matches!(item, Item::Cam(_)));
    let parts: Vec<Formula> = parts
        .map(|(number, (item, part_n))| {
            let words = item_in_words(item, units);
            item_line(sheet, pose, (number, item), *part_n, g, words)
        })
        .collect();
    let sum = Formula::sum(parts);
    let along_n = load.force.along_n;
    if along_n.abs() < 1.0e-9 {
        sheet.sentence("Nothing pulls here: the load is slack, and the demand is 0.");
    }
    let unit = load_unit(pose);
    let demand = match pose.measure {
        Measure::Force => sheet.follows("D", sum, load.demand, unit, "demand"),
        Measure::Torque => {
            let whole = sheet.follows("L", sum, along_n, ("N", 2), "pull of the load");
            torque(sheet, pose, load, whole)
        }
    };
    let formula = demand.clone() / capacity.clone();
    sheet.follows(
        "effort",
        formula,
        load.effort,
        ("", 3),
        "demand over capacity",
    );
    sheet.sentence(effort_told(load.effort));
    Some(demand)
}

/// The moment that the load asks of one side.
fn torque(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    load: &WorkedLoad,
    whole: Formula,
) -> Formula {
    let along_n = load.force.along_n;
    let unit = load_unit(pose);
    if along_n.abs() < 1.0e-9 {
        return sheet.given("D", load.demand + 0.0, unit, "demand");
    }
    let sides = pose.sides.count();
    let lever_m = load.demand * sides / along_n;
    let meaning = "the load's lever: way of the load against its pull for 1 rad";
    let lever = sheet.given("d", lever_m, ("m", 4), meaning);
    let formula = if sides > 1.0 {
        whole * lever / sides.into()
    } else {
        whole * lever
    };
    sheet.follows("D", formula, load.demand, unit, "demand of one side")
}

/// What one item adds: weights by their mass, others by their own law.
fn item_line(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    (number, item): (usize, &Item),
    part_n: f64,
    g: &Formula,
    words: String,
) -> Formula {
    let symbol = format!("W({number})");
    let mass_kg = match item {
        Item::Weight(weight) => weight.mass_kg(&pose.carrier),
        Item::Sled(sled) => sled.mass().as_kg(),
        _ => return sheet.given(symbol, part_n + 0.0, ("N", 2), words),
    };
    let share = share_felt(&pose.carrier, pose.load.as_ref().map(|load| &load.setup));
    let Some((share, meaning)) = share else {
        return sheet.given(symbol, part_n + 0.0, ("N", 2), words);
    };
    let felt_n = mass_kg * STANDARD_GRAVITY_M_S2 * share;
    if (felt_n - part_n).abs() > 1.0e-7 * felt_n.abs().max(1.0) {
        return sheet.given(symbol, part_n + 0.0, ("N", 2), words);
    }
    let mass = sheet.given(format!("m({number})"), mass_kg, ("kg", 2), words);
    let mut formula = mass * g.clone();
    if !meaning.is_empty() {
        formula = formula * sheet.given(format!("i({number})"), share, ("", 4), meaning);
    }
    sheet.follows(symbol, formula, part_n, ("N", 2), "")
}

/// The share of a weight that is felt, and what it is; `None` where it is more than one number.
fn share_felt(carrier: &Carrier, setup: Option<&Setup>) -> Option<(f64, &'static str)> {
    let items = setup.map_or(&[][..], |setup| setup.items.as_slice());
    match carrier {
        Carrier::Bar | Carrier::Dumbbell | Carrier::Body => Some((1.0, "")),
        Carrier::Sled { angle_rad } => Some((angle_rad.sin(), "sine of the rails' angle")),
        Carrier::Lever { pad_m, cam_m } => {
            let has_cam = items.iter().any(|item| matches!(item, Item::Cam(_)));
            (!has_cam).then(|| (cam_m / pad_m, "radius of the cam over the way to the pad"))
        }
    }
}

fn effort_told(effort: f64) -> String {
    if effort > 1.0 {
        format!(
            "The load asks for {} of what this lifter holds here: it cannot be held.",
            percent(effort)
        )
    } else if effort < 0.0 {
        "The help is more than the load: the lifter would have to pull it down.".to_owned()
    } else {
        format!(
            "The load takes {} of what this lifter holds here.",
            percent(effort)
        )
    }
}

/// Capacity and demand in pounds-force (of a torque, in pound-feet).
pub(super) fn in_us_units(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    capacity: &Formula,
    demand: Option<Formula>,
) {
    let (unit, one, name) = match pose.measure {
        Measure::Force => (("lbf", 1), Force::from_lbf(1.0).as_n(), "N"),
        Measure::Torque => (("lbf·ft", 2), Torque::from_lbf_ft(1.0).as_nm(), "N·m"),
    };
    sheet.heading(2, "In US units");
    let factor = sheet.given("one", one, (name, 6), format!("1 {}", unit.0));
    let formula = capacity.clone() / factor.clone();
    sheet.follows("C in US units", formula, pose.capacity / one, unit, "");
    if let (Some(demand), Some(load)) = (demand, &pose.load) {
        sheet.follows(
            "D in US units",
            demand / factor,
            load.demand / one,
            unit,
            "",
        );
    }
}
