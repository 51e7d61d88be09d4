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
    Breadths, Lifter, LifterRecord, MuscleTable, PersonScatter, SegmentName, SegmentTable, groups,
};
use crate::bounds::bounds;
use crate::error::{BodyRule, BrokenRule, Doubt, Fault};
use crate::person::StrengthFactor;
use crate::person::longer_than_life;

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

/// Months of training, factors of single lifts, and how well strengths are known.
fn own_numbers(record: &LifterRecord, rules: &mut Rules) {
    if record.title.trim().is_empty() {
        rules.add("title", BrokenRule::Empty);
    }
    if let (Some(months), Some(age)) = (record.training_months, record.age_years)
        && let Some(fault) = longer_than_life(age, months)
    {
        let fault = Box::new(Fault::new(fault));
        rules.add("training_months", BrokenRule::ReadsOn(fault));
    }
    if let Some(months) = record.training_months {
        rules.within("training_months", months, &bounds().training_months);
    }
    if let Some(age) = record.age_years {
        rules.within("age_years", age, &bounds().adult_age);
    }
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
    for (index, of) in scatter.of.iter().enumerate() {
        let is_first = index == 0 && of != "strength_scale";
        if is_first || strength_of(record, of).is_none() {
            let path = format!("scatter.of.{index}");
            rules.add(path, BrokenRule::Body(BodyRule::NoStrength));
        }
    }
    for (index, row) in rows.iter().enumerate() {
        let path = format!("scatter.covariance.{index}");
        for value in row {
            rules.within(&path, *value, &bounds().log_covariance);
        }
        if is_triangle && !is_covariance(rows, index) {
            rules.add(path, BrokenRule::Body(BodyRule::NoCovariance));
        }
    }
    versions(record, scatter, rules);
}

/// Versions of one person: each a strength that is accepted in the file itself.
fn versions(record: &LifterRecord, scatter: &PersonScatter, rules: &mut Rules) {
    let numbers = scatter.of.len();
    let count = scatter.versions.len() as f64;
    rules.within("scatter.versions", count, &bounds().person_versions);
    if !bounds().person_versions.holds(count) {
        return;
    }
    for (index, version) in scatter.versions.iter().enumerate() {
        let path = format!("scatter.versions.{index}");
        if version.len() != numbers {
            let shape = BrokenRule::Body(BodyRule::NoVersion { numbers });
            rules.add(path, shape);
            continue;
        }
        for (of, log) in scatter.of.iter().zip(version) {
            rules.within(&path, *log, &bounds().log_strength);
            let factor = strength_of(record, of).map(|strength| strength * log.exp());
            let outside = factor.and_then(|factor| bounds().strength_factor.outside(factor));
            if let Some(factor) = outside {
                let of = of.clone();
                let outside = BrokenRule::Body(BodyRule::VersionOutside { of, factor });
                rules.add(path.clone(), outside);
            }
        }
    }
}

/// The strength of a file that a path names.
fn strength_of(record: &LifterRecord, path: &str) -> Option<f64> {
    match StrengthFactor::of_path(path)? {
        StrengthFactor::Whole => Some(record.strength_scale),
        StrengthFactor::Group(group) => Some(record.strength.get(&group).copied().unwrap_or(1.0)),
        StrengthFactor::Lift(lift) => Some(record.strength_in(&lift)),
    }
}

/// Rounding of a covariance that was written with few digits, as a share of both deviations.
const ROUNDING: f64 = 0.05;

/// Whether a row of a triangle has a variance, and no covariance above the root of both variances.
fn is_covariance(rows: &[Vec<f64>], index: usize) -> bool {
    let variance = rows[index][index];
    let beside = rows[index].iter().zip(rows);
    let mut beside = beside.map(|(shared, other)| (shared, other[other.len() - 1]));
    variance >= 0.0
        && beside.all(|(shared, other)| {
            shared.abs() <= (1.0 + ROUNDING) * (variance * other.max(0.0)).sqrt()
        })
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
