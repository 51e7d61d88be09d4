//! Demand and effort of a worked pose as equations, item by item.
//!
//! In: a [`WorkedPose`] and its capacity on the sheet. Out: lines of the sheet.

use super::implements::item_in_words;
use super::prose::percent;
use super::worked_implements::{HungItem, band, cable, chain, rails};
use super::worked_names::load_unit;
use super::worked_sheet::WorkedSheet;
use crate::capacity::Pace;
use crate::movement::{Carrier, Measure};
use crate::numeric::Formula;
use crate::resistance::{Item, Setup, Sled, along_rails_n};
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
            let at = HungItem {
                load,
                carrier: &pose.carrier,
                number,
                part_n: *part_n,
                words: item_in_words(item, units),
            };
            item_line(sheet, pose, item, &at, g)
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
    sheet.sentence(effort_told(load.effort, pose.pace));
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

/// What one item adds, by its own law; what has none on the sheet by its value alone.
fn item_line(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    item: &Item,
    at: &HungItem<'_>,
    g: &Formula,
) -> Formula {
    match item {
        Item::Band(hung) => band(sheet, at, hung),
        Item::Chain(hung) => chain(sheet, at, hung, g),
        Item::Cable(stack) => cable(sheet, at, stack, g),
        Item::Weight(weight) => weight_line(sheet, pose, weight.mass_kg(&pose.carrier), at, g),
        Item::Sled(sled) => weight_line(sheet, pose, sled.mass().as_kg(), at, g),
        _ => sheet.given(at.symbol("W"), at.part_n + 0.0, ("N", 2), at.words.clone()),
    }
}

/// A weight: its mass, and what of it is felt.
fn weight_line(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    mass_kg: f64,
    at: &HungItem<'_>,
    g: &Formula,
) -> Formula {
    let weight_n = mass_kg * STANDARD_GRAVITY_M_S2;
    if weight_n <= 0.0 {
        return sheet.given(at.symbol("W"), at.part_n + 0.0, ("N", 2), at.words.clone());
    }
    let mass = sheet.given(at.symbol("m"), mass_kg, ("kg", 2), at.words.clone());
    let is_felt = |share: f64| (weight_n * share - at.part_n).abs() <= 1.0e-7 * weight_n;
    let sleds = at.load.setup.items.iter().filter_map(|item| match item {
        Item::Sled(sled) => Some(sled),
        _ => None,
    });
    let rubbing = sleds.rev().find(|sled| sled.friction() > 0.0);
    let mut formula = mass * g.clone();
    let motion = pose.motion();
    let on_rails = |angle_rad: f64, sled: &Sled| {
        along_rails_n(mass_kg, angle_rad, sled.friction(), motion) / weight_n
    };
    match (&pose.carrier, rubbing) {
        (Carrier::Sled { angle_rad }, Some(sled)) if is_felt(on_rails(*angle_rad, sled)) => {
            let share = on_rails(*angle_rad, sled);
            let how = (share, motion.is_lowering());
            formula = formula * rails(sheet, at, (*angle_rad, sled), how);
        }
        (Carrier::Bar | Carrier::Dumbbell | Carrier::Body, _) if is_felt(1.0) => {}
        (carrier, _) => {
            let meaning = share_meaning(carrier, &at.load.setup);
            formula = formula * sheet.given(at.symbol("i"), at.part_n / weight_n, ("", 4), meaning);
        }
    }
    sheet.follows(at.symbol("W"), formula, at.part_n, ("N", 2), "")
}

/// What the share of a weight that is felt comes from.
fn share_meaning(carrier: &Carrier, setup: &Setup) -> &'static str {
    let has_cam = setup.items.iter().any(|item| matches!(item, Item::Cam(_)));
    match carrier {
        Carrier::Bar | Carrier::Dumbbell | Carrier::Body => "share of it along the load",
        Carrier::Sled { .. } => "sine of the rails' angle",
        Carrier::Lever { .. } if has_cam => {
            "radius of the cam at this angle over the way to the pad"
        }
        Carrier::Lever { .. } => "radius of the cam over the way to the pad",
    }
}

fn effort_told(effort: f64, pace: Pace) -> String {
    let (has, beyond) = match pace {
        Pace::Isometric => ("holds here", "it cannot be held"),
        pace if pace.lowers() => ("has here at this speed", "it goes down faster"),
        _ => ("has here at this speed", "it is slowed down"),
    };
    if effort > 1.0 {
        format!(
            "The load asks for {} of what this lifter {has}: {beyond}.",
            percent(effort)
        )
    } else if effort < 0.0 {
        "The help is more than the load: the lifter would have to pull it down.".to_owned()
    } else {
        format!(
            "The load takes {} of what this lifter {has}.",
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
