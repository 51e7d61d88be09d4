//! The parts of a change as tidy rows: one a muscle and factor, one an axis of the load's lever, one each of the rest.
//!
//! In: a [`Cause`]. Out: [`AccountRow`]s in SI, for JSON and CSV alike; their parts add up to the change.

use crate::capacity::{ForceFactor, Lever, MuscleShare};
use crate::movement::Measure;
use crate::study::{Cause, Spot};
use serde::Serialize;

/// One part of a change.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct AccountRow<'a> {
    /// The muscle's name in the model; none for what is no muscle.
    pub muscle: Option<&'a str>,
    /// What changed.
    pub factor: &'static str,
    /// The joint's axis, for arms and levers.
    pub joint: Option<&'static str>,
    /// What `before` and `after` are, with the unit as suffix.
    pub quantity: Option<&'static str>,
    /// The quantity before.
    pub before: Option<f64>,
    /// The quantity after.
    pub after: Option<f64>,
    /// Part of the change of capacity, N.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part_n: Option<f64>,
    /// Part of the change of capacity, N·m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part_nm: Option<f64>,
}

/// The place's name in CSV and JSON.
pub(super) fn place_name(spot: Spot) -> &'static str {
    match spot {
        Spot::Start => "start",
        Spot::Peak => "peak",
        Spot::Hardest => "hardest",
        Spot::Middle => "middle",
        Spot::End => "end",
    }
}

/// All parts of a change, muscles first, in the order of the account.
pub(super) fn account_rows(cause: &Cause, measure: Measure) -> Vec<AccountRow<'_>> {
    let account = &cause.account;
    let mut rows: Vec<AccountRow<'_>> = Vec::new();
    for muscle in &account.muscles {
        let arms = muscle.arms.iter();
        rows.extend(arms.map(|arm| AccountRow {
            muscle: Some(&muscle.name),
            ..along(arm, "moment_arm", "moment_arm_m")
        }));
        let others = ForceFactor::ALL.into_iter().skip(1);
        rows.extend(others.map(|factor| of_muscle(muscle, factor)));
    }
    if measure == Measure::Force {
        let levers = account.levers.iter();
        rows.extend(levers.map(|lever| along(lever, "load_lever", "load_lever_m")));
    }
    rows.extend([
        bare("supports", account.supports),
        bare("limb_weight", account.limbs),
        bare("passive_joints", account.passive_joints),
        bare("rest", account.rest),
    ]);
    if measure == Measure::Torque {
        for row in &mut rows {
            row.part_nm = row.part_n.take();
        }
    }
    rows
}

fn bare(factor: &'static str, part: f64) -> AccountRow<'static> {
    AccountRow {
        muscle: None,
        factor,
        joint: None,
        quantity: None,
        before: None,
        after: None,
        part_n: Some(part),
        part_nm: None,
    }
}

fn along(lever: &Lever, factor: &'static str, quantity: &'static str) -> AccountRow<'static> {
    let [before, after] = lever.length_m;
    AccountRow {
        joint: Some(lever.dof.name()),
        quantity: Some(quantity),
        before: Some(before),
        after: Some(after),
        ..bare(factor, lever.part)
    }
}

fn of_muscle(muscle: &MuscleShare, factor: ForceFactor) -> AccountRow<'_> {
    let (name, quantity, [before, after]) = match factor {
        ForceFactor::Arm => ("moment_arm", "moment_arm_m", [0.0; 2]),
        ForceFactor::PeakForce => ("peak_force", "peak_force_n", muscle.terms.map(|t| t.peak_n)),
        ForceFactor::Length => (
            "fibre_length",
            "fibre_length_norm",
            muscle.fibres.map(|fibres| fibres.length_norm),
        ),
        ForceFactor::Speed => (
            "fibre_speed",
            "fibre_velocity_norm",
            muscle.fibres.map(|fibres| fibres.velocity_norm),
        ),
        ForceFactor::Pennation => (
            "pennation",
            "cos_pennation",
            muscle.terms.map(|t| t.cos_pennation[1]),
        ),
        ForceFactor::Passive => (
            "passive_force",
            "passive_force_norm",
            muscle.terms.map(|t| t.passive[1]),
        ),
        ForceFactor::Activation => ("activation", "activation", muscle.activation),
    };
    AccountRow {
        muscle: Some(&muscle.name),
        quantity: Some(quantity),
        before: Some(before),
        after: Some(after),
        ..bare(name, muscle.part(factor))
    }
}
