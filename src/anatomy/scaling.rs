//! Height, mass, sex and strength to a body: published shares become this lifter's segments and muscles.

use super::curves::Curves;
use super::joint::Dof;
use super::lifter::{Build, Lifter, LifterRecord};
use super::muscle::Muscle;
use super::passive_joint::PassiveJoint;
use super::segment::{Segment, SegmentName, SegmentTable};
use super::tendon::Tendon;
use crate::error::{BodyFault, Error, Fault, Result};
use crate::units::Length;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// A table of muscles and the body it was made for.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct MuscleTable {
    /// Name of the segment table of the body that the muscles belong to, at its sample's size.
    pub body: String,
    /// Passive resistance of the joints of that body.
    pub joints: BTreeMap<Dof, PassiveJoint>,
    /// The muscles of one side.
    pub muscles: BTreeMap<String, Muscle>,
}

/// The tables a lifter is built from.
#[derive(Debug, Clone, Copy)]
pub struct Tables<'a> {
    /// Segments of this lifter's sex.
    pub segments: &'a SegmentTable,
    /// Segments of the body that the muscle table was made for.
    pub muscle_body: &'a SegmentTable,
    /// The muscles.
    pub muscles: &'a MuscleTable,
    /// The fibre curves.
    pub curves: &'a Curves,
}

/// Builds a lifter.
///
/// ```text
/// segment length  L = L_table·(height/height_table), or as the lifter's file gives it
/// segment mass    m = share·body mass
/// fibre, tendon, arm, line  × k,   k = L/L_of_the_muscle_table's_body
/// passive torque  × body mass/mass_of_that_body
/// peak force      F0 × (body mass/mass_of_that_body)/k × group factor × strength scale
/// ```
/// A muscle's volume `F0·l0` grows with body mass, and torque `F0·arm` with it: of two lifters of one mass the
/// taller has longer, thinner muscles and the same torque. At one build force grows with mass^(2/3).
/// **Source.** de Leva 1996 (shares); muscle volume follows mass times height and hardly anything else:
/// Handsfield et al. 2014, from memory; force of like bodies with mass^(2/3): Jaric 2003, from memory.
/// **Fails** on a table that lacks a segment, or a factor for an unknown group.
pub fn build(name: &str, record: &LifterRecord, tables: Tables<'_>) -> Result<Lifter> {
    check(record, tables)?;
    let lengths = lengths_of(record, tables.segments);
    let segments = tables
        .segments
        .rows
        .iter()
        .map(|(segment, row)| {
            let scaled = Segment {
                length: lengths[segment],
                mass: record.body_mass * (row.mass_percent / 100.0),
                centre_of_mass: row.centre_of_mass_percent / 100.0,
                gyration: row.gyration_percent / 100.0,
            };
            (*segment, scaled)
        })
        .collect();
    let mut lifter = Lifter {
        name: name.to_owned(),
        title: record.title.clone(),
        invented: record.invented,
        sex: record.sex,
        training: record.training,
        height: record.height,
        body_mass: record.body_mass,
        segments,
        build: build_of(record, tables.segments),
        muscles: tables.muscles.muscles.clone(),
        joints: tables.muscles.joints.clone(),
        curves: tables.curves.clone(),
    };
    scale_muscles(&mut lifter, record, tables);
    Ok(lifter)
}

/// The lengths of a lifter's segments: the table's at this height, but for those that the lifter's file gives.
#[must_use]
pub fn lengths_of(record: &LifterRecord, table: &SegmentTable) -> BTreeMap<SegmentName, Length> {
    let height_ratio = record.height.as_m() / table.sample_height.as_m();
    let scaled = table.rows.iter().map(|(name, row)| {
        let own = record.lengths.get(name).copied();
        (*name, own.unwrap_or(row.length * height_ratio))
    });
    scaled.collect()
}

fn check(record: &LifterRecord, tables: Tables<'_>) -> Result<()> {
    let mut faults = Vec::new();
    for segment in SegmentName::ALL {
        if !tables.segments.rows.contains_key(&segment) {
            faults.push(Fault::new(BodyFault::NoSegment {
                table: record.segments.clone(),
                segment: segment.name(),
            }));
        }
    }
    for group in record.strength.keys() {
        if !tables.muscles.muscles.values().any(|m| &m.group == group) {
            faults.push(Fault::new(BodyFault::UnknownGroup {
                group: group.clone(),
                known: groups(tables.muscles),
            }));
        }
    }
    if faults.is_empty() {
        Ok(())
    } else {
        Err(Error::bad_input(faults))
    }
}

/// The strength groups of a muscle table, in order.
#[must_use]
pub fn groups(table: &MuscleTable) -> Vec<String> {
    let mut groups: Vec<String> = table.muscles.values().map(|m| m.group.clone()).collect();
    groups.sort();
    groups.dedup();
    groups
}

fn build_of(record: &LifterRecord, table: &SegmentTable) -> Build {
    let share = |part: f64| Length::from_m(record.height.as_m() * part);
    let breadths = &table.breadths;
    Build {
        biacromial_breadth: share(breadths.biacromial),
        shoulder_breadth: share(breadths.shoulder_joints),
        chest_height: share(breadths.chest_above_shoulder),
        hip_breadth: share(breadths.hip_joints),
        hip_to_lumbar: share(breadths.hip_to_lumbar),
        ankle_height: share(breadths.ankle_height),
        heel_to_ankle: share(breadths.heel_to_ankle),
        ankle_to_ball: share(breadths.ankle_to_ball),
    }
}

fn scale_muscles(lifter: &mut Lifter, record: &LifterRecord, tables: Tables<'_>) {
    let mass_ratio = record.body_mass.as_kg() / tables.muscle_body.sample_mass.as_kg();
    for joint in lifter.joints.values_mut() {
        joint.low_torque = joint.low_torque * mass_ratio;
        joint.high_torque = joint.high_torque * mass_ratio;
    }
    let volume_ratio = mass_ratio * record.strength_scale;
    for muscle in lifter.muscles.values_mut() {
        let own = lifter.segments[&muscle.along].length.as_m();
        let size = own / tables.muscle_body.rows[&muscle.along].length.as_m();
        let group = record.strength.get(&muscle.group).copied().unwrap_or(1.0);
        muscle.peak_force = muscle.peak_force * (volume_ratio / size * group);
        muscle.optimal_fibre_length = muscle.optimal_fibre_length * size;
        if let Tendon::Compliant { slack_length, .. } = &mut muscle.tendon {
            *slack_length = *slack_length * size;
        }
        for arm in muscle.moment_arm.values_mut() {
            arm.scale *= size;
        }
        if let Some(line) = &mut muscle.shoulder {
            line.scale *= size;
        }
    }
}
