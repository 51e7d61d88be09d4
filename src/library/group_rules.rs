//! What is unlikely about the strength group of a muscle and the segment that it lies along.
//!
//! In: a muscle table. Out: doubts: groups that the reference table does not have, muscles that pull against theirs.

use super::built_in;
use super::complaint::Rules;
use super::nearest;
use super::read::read;
use crate::anatomy::{Dof, Joint, MomentArm, Muscle, MuscleTable, SegmentName, groups};
use crate::error::{BrokenRule, Doubt};
use std::collections::{BTreeMap, BTreeSet};
use std::f64::consts::PI;
use std::sync::LazyLock;

/// The shipped table, whose groups the shipped lifters have factors for.
static REFERENCE: LazyLock<Option<MuscleTable>> = LazyLock::new(|| {
    let file = "muscles/reference.ron";
    read(&format!("models/{file}"), built_in::text(file)?).ok()
});

/// Doubts about the groups of a table's muscles, and about the segments that they lie along.
pub(super) fn rules_of(table: &MuscleTable, rules: &mut Rules) {
    let Some(reference) = REFERENCE.as_ref() else {
        return;
    };
    let known = groups(reference);
    let known: Vec<&str> = known.iter().map(String::as_str).collect();
    for (name, muscle) in &table.muscles {
        let path = |field: &str| format!("muscles.{name}.{field}");
        if known.contains(&muscle.group.as_str()) {
            of_its_group(&path("moment_arm"), muscle, reference, rules);
        } else if !muscle.group.trim().is_empty() {
            let known = nearest::known(&muscle.group, &known);
            rules.add(path("group"), BrokenRule::Doubt(Doubt::NewGroup { known }));
        }
        if crosses_any(muscle) && !is_beside(muscle) {
            rules.add(path("along"), BrokenRule::Doubt(Doubt::AlongElsewhere));
        }
    }
}

/// A muscle pulls at a joint of its group, and one of its arms the way that the group pulls.
fn of_its_group(path: &str, muscle: &Muscle, reference: &MuscleTable, rules: &mut Rules) {
    let members = reference.muscles.values();
    let members: Vec<&Muscle> = members
        .filter(|other| other.group == muscle.group)
        .collect();
    let joints: BTreeSet<&'static str> = members
        .iter()
        .flat_map(|member| Dof::ALL.into_iter().filter(|dof| member.crosses(*dof)))
        .map(|dof| dof.joint().name())
        .collect();
    let own = Dof::ALL.into_iter().filter(|dof| muscle.crosses(*dof));
    let meets = own.clone().any(|dof| joints.contains(dof.joint().name()));
    if crosses_any(muscle) && !meets {
        let joints = joints.into_iter().collect();
        let elsewhere = Doubt::GroupElsewhere { joints };
        rules.add(
            path.trim_end_matches("moment_arm").to_owned() + "group",
            BrokenRule::Doubt(elsewhere),
        );
        return;
    }
    // A muscle over two joints may pull against its group at one of them, as the hamstrings do.
    let mut against = Vec::new();
    for (dof, arm) in &muscle.moment_arm {
        let of_group = members
            .iter()
            .filter_map(|member| pulls_up(member.moment_arm.get(dof)?));
        let of_group: BTreeSet<bool> = of_group.collect();
        match (
            pulls_up(arm),
            of_group.iter().collect::<Vec<_>>().as_slice(),
        ) {
            (Some(own), [group]) if own != **group => against.push((*dof, **group)),
            (Some(_), [_, ..]) => return,
            _ => {}
        }
    }
    for (dof, group_pulls_up) in against {
        let against = Doubt::AgainstGroup {
            joint: dof.joint().name(),
            group_pulls_up,
        };
        rules.add(format!("{path}.{}", dof.name()), BrokenRule::Doubt(against));
    }
}

fn crosses_any(muscle: &Muscle) -> bool {
    Dof::ALL.into_iter().any(|dof| muscle.crosses(dof))
}

/// Whether an arm pulls its joint's angle up on the mean of its range; none where it has no curve or does both.
fn pulls_up(arm: &MomentArm) -> Option<bool> {
    let curve = arm.curve().ok()?;
    let arms: Vec<f64> = (0..=12)
        .map(|step| curve.at(f64::from(step) * PI / 18.0))
        .collect();
    let mean = arms.iter().sum::<f64>() / arms.len() as f64;
    let size = arms.iter().map(|arm| arm.abs()).sum::<f64>() / arms.len() as f64;
    (mean.abs() > 0.5 * size).then_some(mean > 0.0)
}

/// Whether the segment that scales a muscle meets a joint that it crosses.
fn is_beside(muscle: &Muscle) -> bool {
    let beside: BTreeMap<Joint, &[SegmentName]> = BTreeMap::from([
        (
            Joint::Elbow,
            &[
                SegmentName::UpperArm,
                SegmentName::Forearm,
                SegmentName::Hand,
            ][..],
        ),
        (
            Joint::Shoulder,
            &[SegmentName::Trunk, SegmentName::UpperArm][..],
        ),
        (Joint::LowerBack, &[SegmentName::Trunk][..]),
        (Joint::Hip, &[SegmentName::Trunk, SegmentName::Thigh][..]),
        (Joint::Knee, &[SegmentName::Thigh, SegmentName::Shank][..]),
        (Joint::Ankle, &[SegmentName::Shank, SegmentName::Foot][..]),
    ]);
    Dof::ALL
        .into_iter()
        .filter(|dof| muscle.crosses(*dof))
        .any(|dof| beside[&dof.joint()].contains(&muscle.along))
}
