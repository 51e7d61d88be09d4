//! Statics of a worked pose as equations: limbs, joints, surroundings, capacity, the joint that gives way.
//!
//! In: a [`WorkedPose`] and the muscles' moments on the sheet. Out: lines of the sheet, capacity among them.

use super::worked_fibres::MuscleMoment;
use super::worked_names::{load_unit, row_name};
use super::worked_sheet::{InUnit, WorkedSheet};
use crate::anatomy::Joint;
use crate::movement::{BodyPart, Measure};
use crate::numeric::Formula;
use crate::study::{ReactionEnd, WorkedJoint, WorkedPose, WorkedReaction};

/// The load on one side, as the rows of a force see it.
pub(super) fn one_side(pose: &WorkedPose, load: Formula) -> Formula {
    match (pose.measure, pose.sides.count()) {
        (Measure::Force, sides) if sides > 1.0 => load / sides.into(),
        _ => load,
    }
}

fn sides(pose: &WorkedPose) -> f64 {
    match pose.measure {
        Measure::Force => pose.sides.count(),
        Measure::Torque => 1.0,
    }
}

/// A limb in words.
fn limb_name(part: BodyPart) -> &'static str {
    match part {
        BodyPart::UpperArm => "upper arm",
        BodyPart::ForearmAndHand => "forearm and hand",
        BodyPart::WholeArm => "arm",
        BodyPart::ThoraxAndHead => "half of thorax and head",
        BodyPart::ThoraxHeadAndArm => "half of thorax and head with the arm",
        BodyPart::Pelvis => "half of the pelvis",
        BodyPart::Thigh => "thigh",
        BodyPart::Shank => "shank",
        BodyPart::Foot => "foot",
    }
}

/// Weights of the limbs, and the sum of their moments at every row.
pub(super) fn limbs(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    g: &Formula,
) -> Vec<Option<Formula>> {
    let mut moments: Vec<Vec<Formula>> = vec![Vec::new(); pose.joints.len()];
    for limb in &pose.limbs {
        let name = limb_name(limb.part);
        sheet.heading(3, name);
        let mass = sheet.given("m", limb.mass_kg, ("kg", 3), "");
        let weight_n = limb.mass_kg * crate::units::STANDARD_GRAVITY_M_S2;
        let weight = sheet.follows("W", mass * g.clone(), weight_n, ("N", 2), "");
        for (row, joint) in pose.joints.iter().enumerate() {
            if limb.raised_m[row].abs() < 1.0e-12 {
                continue;
            }
            let at = row_name(joint.dof);
            let lever = sheet.given(format!("x({at})"), limb.raised_m[row], ("m/rad", 4), "");
            let symbol = format!("G({at}, {name})");
            let formula = -(weight.clone() * lever);
            let value = limb.torque_nm(row);
            moments[row].push(sheet.follows(symbol, formula, value, ("N·m", 2), ""));
        }
    }
    let sums = moments.into_iter();
    sums.map(|terms| (!terms.is_empty()).then(|| Formula::sum(terms)))
        .collect()
}

/// What stands above the rows.
pub(super) struct StaticsAbove<'a> {
    /// Moments of muscles.
    pub moments: &'a [MuscleMoment],
    /// Moments of limbs at every row, where there are any.
    pub limbs: &'a [Option<Formula>],
    /// Angles of the joints.
    pub angles: &'a [Formula],
    /// Forces of the surroundings.
    pub reactions: &'a [Formula],
}

/// What a row comes to.
pub(super) struct RowSums {
    /// The moment of its muscles.
    pub muscles: Formula,
    /// What is left for the load.
    pub left: Formula,
    /// Moments of the pushes of the surroundings.
    pub pushed: Vec<Formula>,
}

/// Every row: muscles, limbs, the joint itself, surroundings; returns the sums.
pub(super) fn rows(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    above: &StaticsAbove<'_>,
) -> Vec<RowSums> {
    (0..pose.joints.len())
        .map(|row| one_row(sheet, pose, above, row))
        .collect()
}

/// One row: the moment of its muscles, and what is left for the load.
fn one_row(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    above: &StaticsAbove<'_>,
    row: usize,
) -> RowSums {
    let joint = &pose.joints[row];
    let at = row_name(joint.dof);
    let unit = ("N·m", 2);
    sheet.heading(3, row_title(joint));
    let own = above.moments.iter().filter(|moment| moment.row == row);
    let own = Formula::sum(own.map(|moment| moment.moment.clone()).collect());
    let (symbol, instead) = (format!("M({at})"), format!("sum of M(muscle, {at})"));
    let muscles = sheet.summed(symbol, instead, own, joint.muscles_nm, unit, "");
    let mut terms = vec![muscles.clone()];
    if let Some(weights) = above.limbs[row].clone() {
        let (symbol, instead) = (format!("G({at})"), format!("sum of G({at}, limb)"));
        terms.push(sheet.summed(symbol, instead, weights, joint.limbs_nm, unit, ""));
    }
    terms.extend(passive(sheet, joint, &above.angles[row]));
    let pushed = pushed(sheet, pose, row, above.reactions);
    terms.extend(pushed.iter().cloned());
    let (symbol, value) = (format!("S({at})"), left(pose, row));
    let meaning = "what is left for the load";
    let left = sheet.follows(symbol, Formula::sum(terms), value, unit, meaning);
    RowSums {
        muscles,
        left,
        pushed,
    }
}

fn row_title(joint: &WorkedJoint) -> String {
    if joint.dof.joint() == Joint::Shoulder {
        format!("{}, about its own axis", row_name(joint.dof))
    } else {
        row_name(joint.dof)
    }
}

/// What muscles, limbs, joint and surroundings leave for the load at a row, N·m.
fn left(pose: &WorkedPose, row: usize) -> f64 {
    let joint = &pose.joints[row];
    let pushed = pose.reactions.iter().map(|r| r.value * r.levers[row]);
    joint.muscles_nm + joint.limbs_nm + joint.passive_nm + pushed.sum::<f64>()
}

/// The passive moment of the joint itself.
fn passive(sheet: &mut WorkedSheet, joint: &WorkedJoint, angle: &Formula) -> Option<Formula> {
    if joint.passive_nm == 0.0 {
        return None;
    }
    let at = row_name(joint.dof);
    let (symbol, meaning) = (format!("P({at})"), "passive moment of the joint");
    let unit = ("N·m", 2);
    let Some(law) = &joint.passive_law else {
        return Some(sheet.given(symbol, joint.passive_nm, unit, meaning));
    };
    let q = joint.angle_rad.to_degrees();
    let (low, high, width) = (law.low.as_deg(), law.high.as_deg(), law.width.as_deg());
    let steep = ((low - q) / width).max((q - high) / width) > 4.99;
    if steep {
        return Some(sheet.given(symbol, joint.passive_nm, unit, meaning));
    }
    let low = sheet.given("q low", low, ("deg", 1), "");
    let high = sheet.given("q high", high, ("deg", 1), "");
    let width = sheet.given("width", width, ("deg", 1), "");
    let at_low = sheet.given("T low", law.low_torque.as_nm(), unit, "");
    let at_high = sheet.given("T high", law.high_torque.as_nm(), unit, "");
    let formula = at_low * ((low - angle.clone()) / width.clone()).exp()
        - at_high * ((angle.clone() - high) / width).exp();
    Some(sheet.follows(symbol, formula, joint.passive_nm, unit, meaning))
}

/// What the surroundings do at a row.
fn pushed(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    row: usize,
    reactions: &[Formula],
) -> Vec<Formula> {
    let at = row_name(pose.joints[row].dof);
    let felt = pose.reactions.iter().zip(reactions);
    let felt = felt.filter(|(reaction, _)| reaction.levers[row].abs() > 1.0e-12);
    felt.map(|(reaction, value)| {
        let name = reaction_name(reaction);
        let unit = (if is_moment(reaction) { "" } else { "m" }, 4);
        let lever = reaction.levers[row];
        let lever_line = sheet.given(format!("k({at}, {name})"), lever, unit, "");
        let symbol = format!("R({at}, {name})");
        let moment = value.clone() * lever_line;
        sheet.follows(symbol, moment, reaction.value * lever, ("N·m", 2), "")
    })
    .collect()
}

fn reaction_name(reaction: &WorkedReaction) -> String {
    match reaction.name {
        "lateral" => "sideways push of the hand".to_owned(),
        "centre_of_pressure" => "force under the foot times its place".to_owned(),
        "plate_shear" => "push along the plate".to_owned(),
        other => format!("push of {}", other.replace('_', ", ")),
    }
}

fn is_moment(reaction: &WorkedReaction) -> bool {
    reaction.name == "centre_of_pressure"
}

fn reaction_unit(reaction: &WorkedReaction) -> InUnit {
    if is_moment(reaction) {
        ("N·m", 2)
    } else {
        ("N", 1)
    }
}

/// What the surroundings do at the optimum.
pub(super) fn reactions(sheet: &mut WorkedSheet, pose: &WorkedPose) -> Vec<Formula> {
    let lines = pose.reactions.iter();
    lines
        .map(|reaction| {
            let symbol = format!("R({})", reaction_name(reaction));
            sheet.given(symbol, reaction.value + 0.0, reaction_unit(reaction), "")
        })
        .collect()
}

/// The capacity from the row that shows it best, and the same load at every other row.
pub(super) fn capacity(sheet: &mut WorkedSheet, pose: &WorkedPose, sums: &[RowSums]) -> Formula {
    let levers: Vec<Formula> = load_levers(sheet, pose);
    let pushed: Vec<Vec<Formula>> = sums.iter().map(|row| row.pushed.clone()).collect();
    let best = best_row(pose);
    let count = sides(pose);
    let of_side = sums[best].left.clone() / levers[best].clone();
    let formula = if pose.measure == Measure::Torque {
        if pose.joints[0].load_lever > 0.0 {
            sums[best].left.clone()
        } else {
            -sums[best].left.clone()
        }
    } else if count > 1.0 {
        Formula::from(count) * sums[best].left.clone() / levers[best].clone()
    } else {
        of_side
    };
    let meaning = format!(
        "capacity, by the row of the {}",
        row_name(pose.joints[best].dof)
    );
    let capacity = sheet.follows("C", formula, pose.capacity, load_unit(pose), meaning);
    if pose.measure == Measure::Force {
        for (row, joint) in pose
            .joints
            .iter()
            .enumerate()
            .filter(|(row, _)| *row != best)
        {
            let at = row_name(joint.dof);
            let formula = one_side(pose, capacity.clone()) * levers[row].clone();
            let value = pose.capacity / count * joint.load_lever;
            let meaning = format!("what this load asks there: S({at}) again");
            sheet.follows(format!("L({at})"), formula, value, ("N·m", 2), meaning);
        }
        levers_with_pushes(sheet, pose, &capacity, &levers, &pushed);
    }
    capacity
}

/// The lever of the load with all that hands and feet push beside it, where they push at a joint.
///
/// ```text
/// dp = d − n·Σ R/C
/// ```
/// `d` the load's own lever, `R` moments of the pushes at the row, `n` sides, `C` capacity.
fn levers_with_pushes(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    capacity: &Formula,
    levers: &[Formula],
    pushed: &[Vec<Formula>],
) {
    if pushed.iter().all(Vec::is_empty) || pose.capacity <= 0.0 {
        return;
    }
    sheet.sentence(
        "dp is the lever of load and push together: d less what the pushes bear of the moment of each newton. A comparison \
         (vary) tells its change.",
    );
    for (row, joint) in pose.joints.iter().enumerate() {
        let per_load = one_side(pose, capacity.clone());
        let moments = pose.reactions.iter().map(|r| r.value * r.levers[row]);
        let value = joint.load_lever - sides(pose) * moments.sum::<f64>() / pose.capacity;
        let own = levers[row].clone();
        let formula = match pushed[row].as_slice() {
            [] => own,
            moments => own - Formula::sum(moments.to_vec()) / per_load,
        };
        let symbol = format!("dp({})", row_name(joint.dof));
        sheet.follows(symbol, formula, value, ("m/rad", 5), "");
    }
}

fn load_levers(sheet: &mut WorkedSheet, pose: &WorkedPose) -> Vec<Formula> {
    if pose.measure == Measure::Torque {
        return vec![Formula::from(pose.joints[0].load_lever)];
    }
    let joints = pose.joints.iter();
    joints
        .map(|joint| {
            let symbol = format!("d({})", row_name(joint.dof));
            sheet.given(symbol, joint.load_lever + 0.0, ("m/rad", 5), "")
        })
        .collect()
}

/// The row that gives way first, or where the load has hardly a lever there, the one with the longest.
fn best_row(pose: &WorkedPose) -> usize {
    let lever = |row: usize| pose.joints[row].load_lever.abs();
    let longest = (0..pose.joints.len())
        .max_by(|a, b| lever(*a).total_cmp(&lever(*b)))
        .unwrap_or(0);
    if lever(pose.limiting) > 0.1 * lever(longest) {
        pose.limiting
    } else {
        longest
    }
}

/// Limits of the surroundings and the conditions beside the joints'.
pub(super) fn conditions(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    capacity: &Formula,
    reactions: &[Formula],
) {
    let load_n = pose.capacity / sides(pose);
    for reaction in &pose.reactions {
        for (word, (constant, per_load)) in [("least", reaction.least), ("most", reaction.most)] {
            if per_load == 0.0 {
                continue;
            }
            let symbol = format!("{word} R({})", reaction_name(reaction));
            let slope = sheet.given(format!("{word} per N"), per_load, ("", 4), "");
            let mut formula = slope * one_side(pose, capacity.clone());
            if constant != 0.0 {
                formula =
                    sheet.given(format!("{word} without load"), constant, ("", 2), "") + formula;
            }
            let value = constant + per_load * load_n;
            sheet.follows(symbol, formula, value, reaction_unit(reaction), "");
        }
    }
    for (reaction, end) in pose.at_their_ends() {
        sheet.sentence(format!(
            "The {} is at its {} here.",
            reaction_name(reaction),
            match end {
                ReactionEnd::Least => "least",
                ReactionEnd::Most => "most",
            }
        ));
    }
    for (index, balance) in pose.balances.iter().enumerate() {
        balance_lines(sheet, pose, (index, balance), capacity, reactions);
    }
}

fn balance_lines(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    (index, balance): (usize, &crate::study::WorkedBalance),
    capacity: &Formula,
    reactions: &[Formula],
) {
    let name = match (pose.balances.len(), index) {
        (3, 0) => "forces forward",
        (3, 1) => "forces upward",
        _ => "moments about the floor under the ankle",
    };
    let (unit, lever_unit) = match (pose.balances.len(), index) {
        (3, 0 | 1) => (("N", 1), ("", 4)),
        _ => (("N·m", 2), ("m", 4)),
    };
    sheet.heading(3, name);
    let load_n = pose.capacity / sides(pose);
    let own = sheet.given(
        "own",
        balance.constant + 0.0,
        unit,
        "weight of body and limbs",
    );
    let per = sheet.given(
        "per N",
        balance.per_load + 0.0,
        lever_unit,
        "of the load on one side",
    );
    let formula = -(own + per * one_side(pose, capacity.clone()));
    let value = -(balance.constant + balance.per_load * load_n);
    sheet.follows(
        "asked",
        formula,
        value,
        unit,
        "what the surroundings have to make",
    );
    let parts = pose.reactions.iter().zip(reactions).zip(&balance.reactions);
    let parts = parts.filter(|((_, _), part)| **part != 0.0);
    let mut sum = Vec::new();
    let mut made = 0.0;
    for ((reaction, line), part) in parts {
        made += reaction.value * part;
        if *part == 1.0 {
            sum.push(line.clone());
        } else {
            let symbol = format!("k({})", reaction_name(reaction));
            sum.push(sheet.given(symbol, *part, lever_unit, "") * line.clone());
        }
    }
    sheet.follows(
        "made",
        Formula::sum(sum),
        made,
        unit,
        "the same: what they make",
    );
}
