//! Rules for lifters and the tables of segments they are built from.
//!
//! In: records whose types already fit. Out: complaints about what no body can have: values outside
//! sane ranges, groups that no muscle belongs to, shares that do not add up.

use super::complaint::{Complaint, Rules};
use super::muscle_rules::{curve_rules, joints, muscles};
use super::nearest::did_you_mean;
use crate::anatomy::{
    Breadths, Lifter, LifterRecord, MuscleTable, SegmentName, SegmentTable, groups,
};

/// Standing heights accepted, m: the tables are of adults (assumed range).
const HEIGHT_M: (f64, f64) = (1.2, 2.3);

/// Body masses accepted, kg (assumed range).
const BODY_MASS_KG: (f64, f64) = (30.0, 250.0);

/// A lifter's record beside its muscle table.
pub(super) fn lifter_record(
    record: &LifterRecord,
    muscles: Option<&MuscleTable>,
) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let (height_m, mass_kg) = (record.height.as_m(), record.body_mass.as_kg());
    rules.within("height", height_m, HEIGHT_M.0, HEIGHT_M.1, "m");
    rules.within("body_mass", mass_kg, BODY_MASS_KG.0, BODY_MASS_KG.1, "kg");
    rules.within("strength_scale", record.strength_scale, 0.1, 5.0, "");
    let known = muscles.map(groups);
    for (group, factor) in &record.strength {
        let path = format!("strength.{group}");
        rules.within(&path, *factor, 0.1, 5.0, "");
        if let Some(known) = known.as_ref().filter(|known| !known.contains(group)) {
            let known: Vec<&str> = known.iter().map(String::as_str).collect();
            rules.add(
                Complaint::new(
                    path,
                    format!(
                        "is a group that no muscle of `{}` belongs to",
                        record.muscles
                    ),
                )
                .hint(did_you_mean(group, &known)),
            );
        }
        let sources = &record.strength_sources;
        if !sources.contains_key(group) && !sources.contains_key("*") {
            rules.add(
                Complaint::new(format!("strength.{group}"), "has no source").hint(format!(
                    "add \"{group}\": Assumed(\"reason\") to strength_sources"
                )),
            );
        }
    }
    for group in record.strength_sources.keys() {
        if group != "*" && !record.strength.contains_key(group) {
            let known: Vec<&str> = record.strength.keys().map(String::as_str).collect();
            rules.add(
                Complaint::new(
                    format!("strength_sources.{group}"),
                    "belongs to no factor in `strength`",
                )
                .hint(did_you_mean(group, &known)),
            );
        }
    }
    rules.complaints
}

/// A table of segments.
pub(super) fn segment_table(table: &SegmentTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let (height_m, mass_kg) = (table.sample_height.as_m(), table.sample_mass.as_kg());
    rules.within("sample_height", height_m, HEIGHT_M.0, HEIGHT_M.1, "m");
    rules.within("sample_mass", mass_kg, BODY_MASS_KG.0, BODY_MASS_KG.1, "kg");
    let mut total_percent = 0.0;
    for (segment, row) in &table.rows {
        let path = |field: &str| format!("rows.{}.{field}", segment.name());
        rules.positive(
            &path("mass_percent"),
            row.mass_percent,
            70.0,
            "% of body mass",
        );
        rules.within(&path("length"), row.length.as_cm(), 1.0, 120.0, "cm");
        rules.within(
            &path("centre_of_mass_percent"),
            row.centre_of_mass_percent,
            0.0,
            100.0,
            "% of the length",
        );
        rules.within(
            &path("gyration_percent"),
            row.gyration_percent,
            1.0,
            100.0,
            "% of the length",
        );
        let sides = match segment {
            SegmentName::Head | SegmentName::Trunk => 1.0,
            _ => 2.0,
        };
        total_percent += sides * row.mass_percent;
    }
    let lacking = SegmentName::ALL
        .into_iter()
        .filter(|name| !table.rows.contains_key(name));
    let lacking: Vec<&str> = lacking.map(SegmentName::name).collect();
    if !lacking.is_empty() {
        rules.add(Complaint::new(
            "rows",
            format!("lacks {}", lacking.join(", ")),
        ));
    } else if !(98.0..=102.0).contains(&total_percent) {
        // Published shares are rounded and add up to 100 within a few tenths.
        let total = crate::units::rounded(total_percent, 2);
        rules.add(Complaint::new(
            "rows",
            format!("adds up to {total} % of body mass, limbs twice; 98 to 102 % is accepted"),
        ));
    }
    breadths(&table.breadths, &mut rules);
    rules.complaints
}

fn breadths(breadths: &Breadths, rules: &mut Rules) {
    let shares = [
        ("biacromial", breadths.biacromial),
        ("shoulder_joints", breadths.shoulder_joints),
        ("chest_above_shoulder", breadths.chest_above_shoulder),
        ("hip_joints", breadths.hip_joints),
        ("ankle_height", breadths.ankle_height),
        ("heel_to_ankle", breadths.heel_to_ankle),
        ("ankle_to_ball", breadths.ankle_to_ball),
    ];
    for (field, share) in shares {
        rules.positive(
            &format!("breadths.{field}"),
            share,
            0.5,
            "of standing height",
        );
    }
}

/// A whole lifter after values were set.
pub(super) fn lifter(lifter: &Lifter) -> Vec<Complaint> {
    let mut rules = Rules::default();
    for (name, segment) in &lifter.segments {
        let path = |field: &str| format!("segments.{}.{field}", name.name());
        rules.within(&path("length"), segment.length.as_cm(), 1.0, 150.0, "cm");
        rules.positive(&path("mass"), segment.mass.as_kg(), 200.0, "kg");
        rules.within(
            &path("centre_of_mass"),
            segment.centre_of_mass,
            0.0,
            1.0,
            "of the length",
        );
        rules.within(
            &path("gyration"),
            segment.gyration,
            0.01,
            1.0,
            "of the length",
        );
    }
    let build = &lifter.build;
    let sizes = [
        ("biacromial_breadth", build.biacromial_breadth),
        ("shoulder_breadth", build.shoulder_breadth),
        ("chest_height", build.chest_height),
        ("hip_breadth", build.hip_breadth),
        ("ankle_height", build.ankle_height),
        ("heel_to_ankle", build.heel_to_ankle),
        ("ankle_to_ball", build.ankle_to_ball),
    ];
    for (field, size) in sizes {
        rules.positive(&format!("build.{field}"), size.as_cm(), 100.0, "cm");
    }
    muscles(&lifter.muscles, &mut rules);
    joints(&lifter.joints, &mut rules);
    curve_rules("curves.", &lifter.curves, &mut rules);
    rules.complaints
}
