//! Rules for lifters and the tables of segments they are built from.
//!
//! In: records whose types already fit. Out: complaints about what no body can have: values outside
//! sane ranges, groups that no muscle belongs to, shares that do not add up.

use super::complaint::{Complaint, Rules, any_wrong};
use super::curve_rules::curve_rules;
use super::muscle_rules::{joints, muscles};
use super::nearest;
use super::proportion_rules::{of_lifter, of_table};
use crate::anatomy::{
    Breadths, Lifter, LifterRecord, MuscleTable, SegmentName, SegmentTable, groups,
};
use crate::bounds::bounds;
use crate::error::{BodyRule, BrokenRule, Doubt};

/// A lifter's record beside its muscle table.
pub(super) fn lifter_record(
    record: &LifterRecord,
    muscles: Option<&MuscleTable>,
) -> Vec<Complaint> {
    let mut rules = Rules::default();
    record_rules(record, muscles, &mut rules);
    rules.complaints
}

/// The same, collected.
pub(super) fn record_rules(
    record: &LifterRecord,
    muscles: Option<&MuscleTable>,
    rules: &mut Rules,
) {
    let bounds = bounds();
    for (path, value, bound) in [
        ("height", record.height.as_m(), &bounds.lifter_height),
        ("body_mass", record.body_mass.as_kg(), &bounds.lifter_mass),
        (
            "strength_scale",
            record.strength_scale,
            &bounds.strength_factor,
        ),
    ] {
        rules.within(path, value, bound);
    }
    for (segment, length) in &record.lengths {
        let path = format!("lengths.{}", segment.name());
        rules.within(&path, length.as_cm(), &bounds.segment_length);
    }
    let (mass_kg, height_m) = (record.body_mass.as_kg(), record.height.as_m());
    let index = mass_kg / (height_m * height_m);
    if !any_wrong(&rules.complaints) {
        body_mass_index(index, rules);
    }
    strengths(record, muscles.map(groups), rules);
    own_numbers(record, rules);
    if record.strength.is_empty() && record.strength_like.is_none() {
        rules.add("strength", BrokenRule::Doubt(Doubt::NoStrength));
    }
}

/// Mass over the square of the height, told at the mass.
fn body_mass_index(index: f64, rules: &mut Rules) {
    let bound = &bounds().body_mass_index;
    if let Some(outside) = bound.outside(index) {
        rules.add("body_mass", BrokenRule::Body(BodyRule::MassIndex(outside)));
    } else if let Some(unlikely) = bound.unlikely(index) {
        rules.add("body_mass", BrokenRule::Doubt(Doubt::MassIndex(unlikely)));
    }
}

/// Factors of strength groups: of a muscle, with a source, and no source without a factor.
fn strengths(record: &LifterRecord, known: Option<Vec<String>>, rules: &mut Rules) {
    for (group, factor) in &record.strength {
        let path = format!("strength.{group}");
        rules.within(&path, *factor, &bounds().strength_factor);
        if let Some(known) = known.as_ref().filter(|known| !known.contains(group)) {
            let known: Vec<&str> = known.iter().map(String::as_str).collect();
            let no_group = BodyRule::NoSuchGroup {
                muscles: record.muscles.clone(),
                known: nearest::known(group, &known),
            };
            rules.add(path.clone(), BrokenRule::Body(no_group));
        }
        let sources = &record.strength_sources;
        if !sources.contains_key(group) && !sources.contains_key("*") {
            let group = group.clone();
            rules.add(path, BrokenRule::Body(BodyRule::NoSource { group }));
        }
    }
    for group in record.strength_sources.keys() {
        if group != "*" && !record.strength.contains_key(group) {
            let known: Vec<&str> = record.strength.keys().map(String::as_str).collect();
            let known = nearest::known(group, &known);
            let stray = BrokenRule::Body(BodyRule::StraySource { known });
            rules.add(format!("strength_sources.{group}"), stray);
        }
    }
}

/// Factors of single lifts, and how well strengths are known.
fn own_numbers(record: &LifterRecord, rules: &mut Rules) {
    for (lift, factor) in &record.lift_strength {
        rules.within(
            &format!("lift_strength.{lift}"),
            *factor,
            &bounds().strength_factor,
        );
    }
    let Some(scatter) = &record.scatter else {
        return;
    };
    let (numbers, rows) = (scatter.of.len(), &scatter.covariance);
    let is_triangle = rows.iter().enumerate().all(|(k, row)| row.len() == k + 1);
    if rows.len() != numbers || !is_triangle {
        let shape = BodyRule::NoTriangle { numbers };
        rules.add("scatter.covariance", BrokenRule::Body(shape));
    }
    for (index, row) in rows.iter().enumerate() {
        let path = format!("scatter.covariance.{index}");
        for value in row {
            rules.within(&path, *value, &bounds().log_covariance);
        }
    }
    for (index, version) in scatter.versions.iter().enumerate() {
        let path = format!("scatter.versions.{index}");
        if version.len() != numbers {
            rules.add(
                path.clone(),
                BrokenRule::Body(BodyRule::NoVersion { numbers }),
            );
        }
        for value in version {
            rules.within(&path, *value, &bounds().log_strength);
        }
    }
}

/// A table of segments.
pub(super) fn segment_table(table: &SegmentTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let bounds = bounds();
    let (height_m, mass_kg) = (table.sample_height.as_m(), table.sample_mass.as_kg());
    rules.within("sample_height", height_m, &bounds.lifter_height);
    rules.within("sample_mass", mass_kg, &bounds.lifter_mass);
    for (segment, row) in &table.rows {
        let centre = row.centre_of_mass_percent;
        for (field, value, bound) in [
            (
                "mass_percent",
                row.mass_percent,
                &bounds.segment_mass_percent,
            ),
            ("length", row.length.as_cm(), &bounds.segment_row_length),
            (
                "centre_of_mass_percent",
                centre,
                &bounds.centre_of_mass_percent,
            ),
            (
                "gyration_percent",
                row.gyration_percent,
                &bounds.gyration_percent,
            ),
        ] {
            rules.within(&format!("rows.{}.{field}", segment.name()), value, bound);
        }
    }
    whole(table, &mut rules);
    breadths(&table.breadths, &mut rules);
    if !any_wrong(&rules.complaints) {
        of_table(table, &mut rules);
    }
    rules.complaints
}

/// The segments of a table are all there and add up to a body.
fn whole(table: &SegmentTable, rules: &mut Rules) {
    let lacking = SegmentName::ALL
        .into_iter()
        .filter(|name| !table.rows.contains_key(name));
    let lacking: Vec<&str> = lacking.map(SegmentName::name).collect();
    if !lacking.is_empty() {
        rules.add("rows", BrokenRule::Body(BodyRule::LacksSegments(lacking)));
        return;
    }
    let mut total_percent = 0.0;
    for (segment, row) in &table.rows {
        let sides = match segment {
            SegmentName::Head | SegmentName::Trunk => 1.0,
            _ => 2.0,
        };
        total_percent += sides * row.mass_percent;
    }
    if let Some(outside) = bounds().segment_mass_sum.outside(total_percent) {
        rules.add("rows", BrokenRule::Body(BodyRule::Sum(outside)));
    }
}

fn breadths(breadths: &Breadths, rules: &mut Rules) {
    let shares = [
        ("biacromial", breadths.biacromial),
        ("shoulder_joints", breadths.shoulder_joints),
        ("chest_above_shoulder", breadths.chest_above_shoulder),
        ("hip_joints", breadths.hip_joints),
        ("hip_to_lumbar", breadths.hip_to_lumbar),
        ("ankle_height", breadths.ankle_height),
        ("heel_to_ankle", breadths.heel_to_ankle),
        ("ankle_to_ball", breadths.ankle_to_ball),
    ];
    for (field, share) in shares {
        rules.within(&format!("breadths.{field}"), share, &bounds().breadth_share);
    }
}

/// A whole lifter after values were set.
pub(super) fn lifter(lifter: &Lifter) -> Vec<Complaint> {
    let mut rules = Rules::default();
    lifter_rules(lifter, &mut rules);
    rules.complaints
}

/// The same, collected.
pub(super) fn lifter_rules(lifter: &Lifter, rules: &mut Rules) {
    let bounds = bounds();
    for (name, segment) in &lifter.segments {
        for (field, value, bound) in [
            ("length", segment.length.as_cm(), &bounds.segment_length),
            ("mass", segment.mass.as_kg(), &bounds.segment_mass),
            (
                "centre_of_mass",
                segment.centre_of_mass,
                &bounds.centre_of_mass,
            ),
            ("gyration", segment.gyration, &bounds.gyration),
        ] {
            rules.within(&format!("segments.{}.{field}", name.name()), value, bound);
        }
    }
    for (field, size) in lifter.build.sizes() {
        rules.within(&format!("build.{field}"), size.as_cm(), &bounds.build_size);
    }
    if !any_wrong(&rules.complaints) {
        of_lifter(lifter, rules);
    }
    muscles(&lifter.muscles, rules);
    joints(&lifter.joints, rules);
    curve_rules("curves.", &lifter.curves, rules);
}
