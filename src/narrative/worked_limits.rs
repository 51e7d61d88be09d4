//! The joint that gives way first at a worked pose, as equations.
//!
//! In: a [`WorkedPose`], its rows and prices on the sheet. Out: lines of the sheet and the sentence that follows from them.

use super::worked_names::{load_unit, row_name};
use super::worked_sheet::WorkedSheet;
use super::worked_statics::RowSums;
use crate::anatomy::Joint;
use crate::numeric::Formula;
use crate::study::WorkedPose;

/// A joint whose E is at least this share of the largest gives way with it (assumed: the muscles' numbers are not
/// known to a fiftieth).
const TIE: f64 = 0.98;

/// The gain of capacity for each joint's strength, and the joint that gives way first, or those that do.
pub(super) fn limits(
    sheet: &mut WorkedSheet,
    pose: &WorkedPose,
    sums: &[RowSums],
    prices: &[Formula],
) {
    let unit = load_unit(pose);
    let mut gains: Vec<(Joint, Formula, f64)> = Vec::new();
    for (row, joint) in pose.joints.iter().enumerate() {
        let value = joint.price * joint.muscles_nm;
        let formula = prices[row].clone() * sums[row].muscles.clone();
        let symbol = format!("E({})", row_name(joint.dof));
        let line = sheet.follows(symbol, formula, value, unit, "");
        gains.push((joint.dof.joint(), line, value));
    }
    let limiting = pose.joints[pose.limiting].dof.joint();
    let mut told = Vec::new();
    for (joint, _, _) in &gains {
        if told.contains(joint) {
            continue;
        }
        told.push(*joint);
        let same: Vec<_> = gains.iter().filter(|gain| gain.0 == *joint).collect();
        if same.len() > 1 {
            let value = same.iter().map(|gain| gain.2).sum();
            let formula = Formula::sum(same.iter().map(|gain| gain.1.clone()).collect());
            let (symbol, instead) = (
                format!("E of the {}", joint.name()),
                "sum of its rows".to_owned(),
            );
            sheet.summed(symbol, instead, formula, value, unit, "");
        }
    }
    let of = |joint: &Joint| {
        let own = gains.iter().filter(|gain| gain.0 == *joint);
        own.map(|gain| gain.2).sum::<f64>().abs()
    };
    let tied: Vec<&str> = told
        .iter()
        .filter(|joint| **joint != limiting && of(joint) >= TIE * of(&limiting))
        .map(|joint| joint.name())
        .collect();
    sheet.sentence(match (told.len(), tied.as_slice()) {
        (1, _) => format!("Only the {} moves, so it gives way first.", limiting.name()),
        (_, []) => format!(
            "The {} has the largest E, whatever its sign: it gives way first.",
            limiting.name()
        ),
        (_, tied) => format!(
            "The {} has the largest E, whatever its sign, and the {} hardly a smaller one: they give way together.",
            limiting.name(),
            tied.join(" and the ")
        ),
    });
}
