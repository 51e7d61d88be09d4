//! Rules for the published tables: what an estimate or a plan could not be made with.
//!
//! In: records whose types already fit. Out: complaints about rates, shares and ranges that make no sense.

use super::complaint::{Complaint, Rules};
use crate::bounds::bounds;
use crate::error::BrokenRule;
use crate::person::PersonTable;
use crate::progress::published_equations::{RepetitionEquations, VelocityEquations};
use crate::session::published::{
    ClusterTable, EccentricTable, FatigueTable, PyramidTable, RecoveryTable, RecoveryTime,
    RepetitionTable, RestTable, StraightTable,
};

fn rows(path: &str, count: usize, rules: &mut Rules) {
    rules.within(path, count as f64, &bounds().table_rows);
}

fn whole((fewest, most): (u32, u32)) -> (f64, f64) {
    (f64::from(fewest), f64::from(most))
}

/// The equations from repetitions to 1RM.
pub(super) fn repetition_equations(table: &RepetitionEquations) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let general = table.equations.iter().filter(|row| row.is_general());
    rows("equations", general.count(), &mut rules);
    for (index, row) in table.equations.iter().enumerate() {
        let path = format!("equations.{index}.repetitions");
        rules.rising(&path, row.repetitions, &bounds().table_repetitions);
    }
    rules.complaints
}

/// The equations from velocity to load.
pub(super) fn velocity_equations(table: &VelocityEquations) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let bounds = bounds();
    rules.rising("loads.percent", table.loads.percent, &bounds.table_percent);
    for (index, row) in table.at_one_rm.iter().enumerate() {
        let path = format!("at_one_rm.{index}.mean");
        rules.within(&path, row.mean.as_m_s(), &bounds.table_speed);
    }
    rules.complaints
}

/// Repetitions at a share of 1RM: more of them at a smaller one.
pub(super) fn repetitions(table: &RepetitionTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let bounds = bounds();
    let chart = &table.chart.rows;
    rows("chart.rows", chart.len().saturating_sub(1), &mut rules);
    for (index, (repetitions, percent)) in chart.iter().enumerate() {
        let path = format!("chart.rows.{index}");
        rules.within(&path, *repetitions, &bounds.table_repetitions);
        rules.within(&path, *percent, &bounds.table_percent);
    }
    for (index, pair) in chart.windows(2).enumerate() {
        let (first, second) = (pair[0].0, pair[1].0);
        if second <= first || pair[1].1 >= pair[0].1 {
            let path = format!("chart.rows.{}", index + 1);
            rules.add(path, BrokenRule::NotRising { first, second });
        }
    }
    rules.complaints
}

/// The three-compartment model of fatigue.
pub(super) fn fatigue(table: &FatigueTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let bounds = bounds();
    rows("joints", table.joints.len(), &mut rules);
    let controller = &table.controller;
    for (field, rate) in [
        ("recruit_per_s", controller.recruit_per_s),
        ("release_per_s", controller.release_per_s),
    ] {
        rules.within(
            &format!("controller.{field}"),
            rate,
            &bounds.controller_rate,
        );
    }
    for (index, row) in table.joints.iter().enumerate() {
        for (field, value, bound) in [
            ("f_per_s", row.f_per_s, &bounds.fatigue_rate),
            ("r_per_s", row.r_per_s, &bounds.fatigue_rate),
            (
                "rest_multiplier",
                row.rest_multiplier,
                &bounds.rest_multiplier,
            ),
        ] {
            rules.within(&format!("joints.{index}.{field}"), value, bound);
        }
    }
    rules.complaints
}

/// Recoveries of phosphocreatine.
pub(super) fn phosphocreatine(table: &RecoveryTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    rows("recoveries", table.recoveries.len(), &mut rules);
    for (index, row) in table.recoveries.iter().enumerate() {
        let (RecoveryTime::Constant(time) | RecoveryTime::Half(time)) = row.time;
        let path = format!("recoveries.{index}.time");
        rules.within(&path, time.as_s(), &bounds().recovery_time);
    }
    rules.complaints
}

/// Lowering against lifting.
pub(super) fn eccentric(table: &EccentricTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let bounds = bounds();
    rows("ratios", table.ratios.len(), &mut rules);
    for (index, row) in table.ratios.iter().enumerate() {
        let path = format!("ratios.{index}.ratio");
        rules.within(&path, row.ratio, &bounds.overload_share);
    }
    let lowering_s = table.lowering.time.as_s();
    rules.within("lowering.time", lowering_s, &bounds.lowering_time);
    let efficiency = &table.efficiency;
    for (field, percent) in [
        ("lifting_percent", efficiency.lifting_percent),
        ("lowering_percent", efficiency.lowering_percent),
    ] {
        rules.within(&format!("efficiency.{field}"), percent, &bounds.efficiency);
    }
    let overload = &table.overload;
    for (field, range, bound) in [
        ("shares", overload.shares, &bounds.overload_share),
        (
            "repetitions",
            whole(overload.repetitions),
            &bounds.table_repetitions,
        ),
        ("sets", whole(overload.sets), &bounds.table_sets),
    ] {
        rules.rising(&format!("overload.{field}"), range, bound);
    }
    rules.complaints
}

/// Ranges of rests.
pub(super) fn rests(table: &RestTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    for (path, row) in [
        ("heavy", &table.heavy),
        ("light", &table.light),
        ("in_cluster", &table.in_cluster),
    ] {
        let range_s = (row.least.as_s(), row.most.as_s());
        rules.rising(path, range_s, &bounds().table_rest);
    }
    rules.complaints
}

/// Straight sets by training status.
pub(super) fn straight(table: &StraightTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let bounds = bounds();
    rows("guidance", table.guidance.len(), &mut rules);
    for (index, row) in table.guidance.iter().enumerate() {
        let at = |field: &str| format!("guidance.{index}.{field}");
        rules.within(&at("share"), row.share, &bounds.table_share);
        rules.within(&at("sets"), f64::from(row.sets), &bounds.table_sets);
    }
    let novice = whole(table.novice.repetitions);
    rules.rising("novice.repetitions", novice, &bounds.table_repetitions);
    rules.rising("step.percent", table.step.percent, &bounds.table_percent);
    let weeks = &table.weeks;
    rules.within(
        "weeks.novice.share",
        weeks.novice.share,
        &bounds.table_share,
    );
    rules.within(
        "weeks.novice.least_share",
        weeks.novice.least_share,
        &bounds.table_share,
    );
    let (least, share) = (weeks.novice.least_share, weeks.novice.share);
    if least > share {
        let path = "weeks.novice.least_share";
        rules.add(
            path,
            BrokenRule::LeastAboveMost {
                least,
                most: share,
                field: "weeks.novice.share",
            },
        );
    }
    for (path, list) in [
        ("weeks.novice.repetitions", &weeks.novice.repetitions),
        ("weeks.rounds.repetitions", &weeks.rounds.repetitions),
        ("weeks.rounds.one_joint", &weeks.rounds.one_joint),
    ] {
        rows(path, list.len(), &mut rules);
        for repetitions in list {
            rules.within(path, f64::from(*repetitions), &bounds.table_repetitions);
        }
    }
    rows(
        "weeks.rounds.reserves",
        weeks.rounds.reserves.len(),
        &mut rules,
    );
    rules.within(
        "weeks.deload.every",
        f64::from(weeks.deload.every),
        &bounds.block_weeks,
    );
    rules.within(
        "weeks.deload.left",
        weeks.deload.left.0,
        &bounds.table_share,
    );
    rules.within(
        "weeks.deload.left",
        weeks.deload.left.1,
        &bounds.table_share,
    );
    rules.complaints
}

/// Scatter between people and errors of measurements.
pub(super) fn person(table: &PersonTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let bounds = bounds();
    rows("between_people", table.between_people.len(), &mut rules);
    rows("training", table.training.len(), &mut rules);
    for (index, row) in table.between_people.iter().enumerate() {
        let path = format!("between_people.{index}.deviation");
        rules.within(&path, row.deviation / row.mean, &bounds.log_deviation);
    }
    for (index, row) in table.bodies.iter().enumerate() {
        for (field, share) in [
            (
                "height_deviation_cm",
                row.height_deviation_cm / row.height_cm,
            ),
            ("mass_deviation_kg", row.mass_deviation_kg / row.mass_kg),
        ] {
            let path = format!("bodies.{index}.{field}");
            rules.within(&path, share, &bounds.log_deviation);
        }
        let path = format!("bodies.{index}.correlation");
        rules.within(&path, row.correlation, &bounds.log_covariance);
    }
    rows("bodies", table.bodies.len(), &mut rules);
    for (index, row) in table.statuses.iter().enumerate() {
        let path = format!("statuses.{index}.months");
        rules.within(&path, row.months, &bounds.training_months);
    }
    for (index, pair) in table.training.windows(2).enumerate() {
        let (first, second) = (pair[0].months, pair[1].months);
        if second <= first {
            let path = format!("training.{}.months", index + 1);
            rules.add(path, BrokenRule::NotRising { first, second });
        }
    }
    for (path, share) in [
        ("correlation.value", table.correlation.value),
        ("one_rm.deviation", table.one_rm.deviation),
        ("repetitions.deviation", table.repetitions.deviation),
        ("hold.deviation", table.hold.deviation),
        ("dynamometer.deviation", table.dynamometer.deviation),
        ("limb.deviation", table.limb.deviation),
        ("segment.deviation", table.segment.deviation),
        ("velocity.deviation", table.velocity.deviation),
        (
            "velocity_equation.deviation",
            table.velocity_equation.deviation,
        ),
        ("reserve.deviation", table.reserve.deviation),
    ] {
        rules.within(path, share, &bounds.log_deviation);
    }
    rules.complaints
}

/// Cluster sets.
pub(super) fn clusters(table: &ClusterTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let bounds = bounds();
    let group = &table.group;
    rules.rising(
        "group.repetitions",
        whole(group.repetitions),
        &bounds.cluster_group,
    );
    rules.within("group.rest", group.rest.as_s(), &bounds.cluster_rest);
    rules.within("group.share", group.share, &bounds.table_share);
    let of_set = f64::from(table.set.most_repetitions);
    rules.within("set.most_repetitions", of_set, &bounds.table_repetitions);
    for (index, zone) in table.totals.zones.iter().enumerate() {
        let at = |field: &str| format!("totals.zones.{index}.{field}");
        rules.rising(&at("percent"), zone.percent, &bounds.table_percent);
        let repetitions = whole(zone.repetitions);
        rules.rising(&at("repetitions"), repetitions, &bounds.table_repetitions);
    }
    rules.complaints
}

/// The ascending pyramid.
pub(super) fn pyramid(table: &PyramidTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    rows("repetitions", table.repetitions.len(), &mut rules);
    for (index, repetitions) in table.repetitions.iter().enumerate() {
        let path = format!("repetitions.{index}");
        rules.within(&path, f64::from(*repetitions), &bounds().table_repetitions);
    }
    rules.complaints
}
