//! Rules for proportions: limbs and breadths against those of the shipped tables at the same height, masses of segments
//! against theirs at the same body mass, of the same sex where it is known.
//!
//! In: a segment table or a finished lifter. Out: complaints about lengths and masses that no body of that size has.

use super::built_in;
use super::complaint::{PlausibleRange, Rules};
use super::read::read;
use crate::anatomy::{Lifter, SegmentName, SegmentTable, Sex};
use crate::bounds::{Bound, bounds};
use crate::error::{BodyRule, BrokenRule, Doubt};
use std::sync::LazyLock;

/// The shipped tables, men and women.
static SHIPPED: LazyLock<Vec<SegmentTable>> = LazyLock::new(|| {
    let names = ["de-leva-men", "de-leva-women"].map(|name| format!("segments/{name}.ron"));
    let texts = names.iter().filter_map(|name| built_in::text(name));
    texts.filter_map(|text| read(EMBEDDED, text).ok()).collect()
});

/// What the shipped tables are called where they are read.
const EMBEDDED: &str = "models/segments";

/// The shipped tables of a sex; all where it is not known.
fn shipped(sex: Option<Sex>) -> impl Iterator<Item = &'static SegmentTable> {
    let is_of_sex = move |table: &&SegmentTable| sex.is_none() || table.sex == sex;
    SHIPPED.iter().filter(is_of_sex)
}

/// The segments and breadths of a table.
pub(super) fn of_table(table: &SegmentTable, rules: &mut Rules) {
    let height_m = table.sample_height.as_m();
    for (name, row) in &table.rows {
        let path = format!("rows.{}.length", name.name());
        let usual_m = height_m * share_of(*name, table.sex);
        let bound = &bounds().segment_proportion;
        compared(&path, (row.length.as_m(), usual_m), bound, rules);
        let path = format!("rows.{}.mass_percent", name.name());
        let usual_percent = percent_of(*name, table.sex);
        let mass = (row.mass_percent / 100.0, usual_percent / 100.0);
        let body_kg = table.sample_mass.as_kg();
        compared_mass(&path, mass, (body_kg, 1.0), rules);
    }
    let usual_m = height_m * stature_share(table.sex);
    stature("rows", sum_of(table), usual_m, rules);
    for (field, share, usual) in breadths_of(table) {
        let path = format!("breadths.{field}");
        compared(
            &path,
            (share * height_m, usual * height_m),
            &bounds().breadth_proportion,
            rules,
        );
    }
    let (trunk, hips) = (table.rows.get(&SegmentName::Trunk), &table.breadths);
    if trunk.is_some_and(|trunk| trunk.length.as_m() <= hips.hip_to_lumbar * height_m) {
        let below = BrokenRule::Body(BodyRule::ShouldersBelowHips);
        rules.add("rows.trunk.length", below);
    }
}

/// The segments and breadths of a finished lifter.
pub(super) fn of_lifter(lifter: &Lifter, rules: &mut Rules) {
    let height_m = lifter.height.as_m();
    for (name, limb) in &lifter.segments {
        let path = format!("segments.{}.length", name.name());
        let usual_m = height_m * share_of(*name, Some(lifter.sex));
        let bound = &bounds().segment_proportion;
        compared(&path, (limb.length.as_m(), usual_m), bound, rules);
        let path = format!("segments.{}.mass", name.name());
        let body_kg = lifter.body_mass.as_kg();
        let usual = percent_of(*name, Some(lifter.sex)) / 100.0;
        let mass = (limb.mass.as_kg() / body_kg, usual);
        compared_mass(&path, mass, (body_kg, body_kg), rules);
    }
    let build = &lifter.build;
    let sum_m: f64 = UPRIGHT
        .iter()
        .map(|name| lifter.segment(*name).length.as_m())
        .sum();
    let sum_m = sum_m + build.ankle_height.as_m();
    let usual_m = height_m * stature_share(Some(lifter.sex));
    stature("segments", sum_m, usual_m, rules);
    for ((field, size), usual) in build
        .sizes()
        .into_iter()
        .zip(usual_breadths(Some(lifter.sex)))
    {
        let path = format!("build.{field}");
        compared(
            &path,
            (size.as_m(), usual * height_m),
            &bounds().breadth_proportion,
            rules,
        );
    }
    if lifter.segment(SegmentName::Trunk).length <= build.hip_to_lumbar {
        let below = BrokenRule::Body(BodyRule::ShouldersBelowHips);
        rules.add("segments.trunk.length", below);
    }
}

/// A segment's share of the height in the shipped tables of a sex, their mean.
fn share_of(name: SegmentName, sex: Option<Sex>) -> f64 {
    let shares = shipped(sex).filter_map(|table| {
        let row = table.rows.get(&name)?;
        Some(row.length.as_m() / table.sample_height.as_m())
    });
    mean(shares)
}

/// A segment's share of the body mass in the shipped tables of a sex, their mean, %.
fn percent_of(name: SegmentName, sex: Option<Sex>) -> f64 {
    mean(shipped(sex).filter_map(|table| Some(table.rows.get(&name)?.mass_percent)))
}

/// What the upright segments add up to there, as a share of the height.
fn stature_share(sex: Option<Sex>) -> f64 {
    mean(shipped(sex).map(|table| sum_of(table) / table.sample_height.as_m()))
}

/// The segments that stand on one another in who stands.
const UPRIGHT: [SegmentName; 4] = [
    SegmentName::Head,
    SegmentName::Trunk,
    SegmentName::Thigh,
    SegmentName::Shank,
];

/// What the upright segments of a table and its ankle's height add up to, m.
fn sum_of(table: &SegmentTable) -> f64 {
    let rows = UPRIGHT.iter().filter_map(|name| table.rows.get(name));
    let ankle_m = table.breadths.ankle_height * table.sample_height.as_m();
    rows.map(|row| row.length.as_m()).sum::<f64>() + ankle_m
}

/// The sum of the upright segments against that of the shipped tables at the same height.
fn stature(path: &str, sum_m: f64, usual_m: f64, rules: &mut Rules) {
    let bound = &bounds().stature_proportion;
    let (sum_cm, usual_cm) = (100.0 * sum_m, 100.0 * usual_m);
    let ratio = sum_m / usual_m;
    if let Some(ratio) = bound.outside(ratio) {
        let broken = BodyRule::Stature {
            sum_cm,
            usual_cm,
            ratio,
        };
        rules.add(path, BrokenRule::Body(broken));
    } else if let Some(ratio) = bound.unlikely(ratio) {
        let odd = Doubt::Stature {
            sum_cm,
            usual_cm,
            ratio,
        };
        rules.add(path, BrokenRule::Doubt(odd));
    }
}

/// A length against the usual one.
fn compared(path: &str, (length_m, usual_m): (f64, f64), bound: &'static Bound, rules: &mut Rules) {
    if !(usual_m > 0.0 && length_m.is_finite()) {
        return;
    }
    rules.asks(path, PlausibleRange::times(bound, usual_m));
    let ratio = length_m / usual_m;
    if let Some(ratio) = bound.outside(ratio) {
        let proportion = BodyRule::Proportion {
            length_cm: 100.0 * length_m,
            usual_cm: 100.0 * usual_m,
            ratio,
        };
        rules.add(path, BrokenRule::Body(proportion));
    } else if let Some(ratio) = bound.unlikely(ratio) {
        let odd = Doubt::Proportion {
            length_cm: 100.0 * length_m,
            usual_cm: 100.0 * usual_m,
            ratio,
        };
        rules.add(path, BrokenRule::Doubt(odd));
    }
}

/// A segment's share of the body mass against the usual one; `whole_si` is what a share of 1 is at the path, in SI.
fn compared_mass(
    path: &str,
    (share, usual): (f64, f64),
    (body_kg, whole_si): (f64, f64),
    rules: &mut Rules,
) {
    let bound = &bounds().mass_proportion;
    if !(usual > 0.0 && share.is_finite()) {
        return;
    }
    let (mass_kg, usual_kg) = (share * body_kg, usual * body_kg);
    rules.asks(path, PlausibleRange::times(bound, usual * whole_si));
    let ratio = share / usual;
    if let Some(ratio) = bound.outside(ratio) {
        let proportion = BodyRule::MassProportion {
            mass_kg,
            usual_kg,
            ratio,
        };
        rules.add(path, BrokenRule::Body(proportion));
    } else if let Some(ratio) = bound.unlikely(ratio) {
        let odd = Doubt::MassProportion {
            mass_kg,
            usual_kg,
            ratio,
        };
        rules.add(path, BrokenRule::Doubt(odd));
    }
}

/// The breadths of a table beside those of the shipped ones.
fn breadths_of(table: &SegmentTable) -> impl Iterator<Item = (&'static str, f64, f64)> {
    let own = fields(table);
    own.into_iter()
        .zip(usual_breadths(table.sex))
        .map(|((field, share), usual)| (field, share, usual))
}

/// Breadths of the shipped tables of a sex as shares of the height, their means.
fn usual_breadths(sex: Option<Sex>) -> Vec<f64> {
    let count = SHIPPED.first().map_or(0, |table| fields(table).len());
    (0..count)
        .map(|index| mean(shipped(sex).map(|table| fields(table)[index].1)))
        .collect()
}

/// Breadths in the order in which a lifter's build names them.
fn fields(table: &SegmentTable) -> [(&'static str, f64); 8] {
    let breadths = &table.breadths;
    [
        ("biacromial", breadths.biacromial),
        ("shoulder_joints", breadths.shoulder_joints),
        ("chest_above_shoulder", breadths.chest_above_shoulder),
        ("hip_joints", breadths.hip_joints),
        ("hip_to_lumbar", breadths.hip_to_lumbar),
        ("ankle_height", breadths.ankle_height),
        ("heel_to_ankle", breadths.heel_to_ankle),
        ("ankle_to_ball", breadths.ankle_to_ball),
    ]
}

fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = values.fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
    sum / f64::max(count, 1.0)
}
