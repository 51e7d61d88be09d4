//! Rules for the published tables: what an estimate or a plan could not be made with.
//!
//! In: records whose types already fit. Out: complaints about rates, shares and ranges that make no sense.

use super::complaint::{Complaint, Rules};
use crate::progress::published::{RepetitionEquations, VelocityEquations};
use crate::session::published::{
    ClusterTable, EccentricTable, FatigueTable, PyramidTable, RecoveryTable, RecoveryTime,
    RepetitionTable, RestTable, StraightTable,
};

/// The equations from repetitions to 1RM.
pub(super) fn repetition_equations(table: &RepetitionEquations) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let general = table.equations.iter().filter(|row| row.movement.is_none());
    rules.within("equations", general.count() as f64, 1.0, 100.0, "");
    for (index, row) in table.equations.iter().enumerate() {
        let path = format!("equations.{index}.repetitions");
        rules.rising(&path, row.repetitions, 1.0, 60.0);
    }
    rules.complaints
}

/// The equations from velocity to load.
pub(super) fn velocity_equations(table: &VelocityEquations) -> Vec<Complaint> {
    let mut rules = Rules::default();
    rules.rising("loads.percent", table.loads.percent, 1.0, 100.0);
    for (index, row) in table.at_one_rm.iter().enumerate() {
        let path = format!("at_one_rm.{index}.mean");
        rules.positive(&path, row.mean.as_m_s(), 5.0, "m/s");
    }
    rules.complaints
}

/// Repetitions at a share of 1RM.
pub(super) fn repetitions(table: &RepetitionTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let rows = &table.chart.rows;
    rules.within("chart.rows", rows.len() as f64, 2.0, 100.0, "");
    for (index, (repetitions, percent)) in rows.iter().enumerate() {
        let path = format!("chart.rows.{index}");
        let (before, above) = match index.checked_sub(1).map(|before| rows[before]) {
            Some((repetitions, percent)) => (repetitions, percent),
            None => (0.0, 101.0),
        };
        rules.within(&path, *repetitions, before + 0.5, 100.0, "");
        rules.within(&path, *percent, 1.0, above - 0.01, "");
    }
    rules.complaints
}

/// The three-compartment model of fatigue.
pub(super) fn fatigue(table: &FatigueTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    rules.within("joints", table.joints.len() as f64, 1.0, 100.0, "");
    let controller = &table.controller;
    let per_s = "per second";
    rules.within(
        "controller.recruit_per_s",
        controller.recruit_per_s,
        0.1,
        50.0,
        per_s,
    );
    rules.within(
        "controller.release_per_s",
        controller.release_per_s,
        0.1,
        50.0,
        per_s,
    );
    for (index, row) in table.joints.iter().enumerate() {
        let at = |field: &str| format!("joints.{index}.{field}");
        rules.positive(&at("f_per_s"), row.f_per_s, 1.0, per_s);
        rules.positive(&at("r_per_s"), row.r_per_s, 1.0, per_s);
        rules.within(&at("rest_multiplier"), row.rest_multiplier, 1.0, 1000.0, "");
    }
    rules.complaints
}

/// Recoveries of phosphocreatine.
pub(super) fn phosphocreatine(table: &RecoveryTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    rules.within("recoveries", table.recoveries.len() as f64, 1.0, 100.0, "");
    for (index, row) in table.recoveries.iter().enumerate() {
        let (RecoveryTime::Constant(time) | RecoveryTime::Half(time)) = row.time;
        let path = format!("recoveries.{index}.time");
        rules.positive(&path, time.as_s(), 3600.0, "s");
    }
    rules.complaints
}

/// Lowering against lifting.
pub(super) fn eccentric(table: &EccentricTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    rules.within("ratios", table.ratios.len() as f64, 1.0, 100.0, "");
    for (index, row) in table.ratios.iter().enumerate() {
        rules.within(&format!("ratios.{index}.ratio"), row.ratio, 1.0, 3.0, "");
    }
    rules.positive("lowering.time", table.lowering.time.as_s(), 60.0, "s");
    let efficiency = &table.efficiency;
    rules.positive(
        "efficiency.lifting_percent",
        efficiency.lifting_percent,
        100.0,
        "%",
    );
    rules.positive(
        "efficiency.lowering_percent",
        efficiency.lowering_percent,
        100.0,
        "%",
    );
    rules.rising("overload.shares", table.overload.shares, 1.0, 3.0);
    let whole = |(least, most): (u32, u32)| (f64::from(least), f64::from(most));
    rules.rising(
        "overload.repetitions",
        whole(table.overload.repetitions),
        1.0,
        30.0,
    );
    rules.rising("overload.sets", whole(table.overload.sets), 1.0, 12.0);
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
        rules.rising(path, (row.least.as_s(), row.most.as_s()), 0.0, 1800.0);
    }
    rules.complaints
}

/// Straight sets by training status.
pub(super) fn straight(table: &StraightTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    rules.within("guidance", table.guidance.len() as f64, 1.0, 100.0, "");
    for (index, row) in table.guidance.iter().enumerate() {
        let at = |field: &str| format!("guidance.{index}.{field}");
        rules.within(&at("share"), row.share, 0.1, 1.0, "of 1RM");
        rules.within(&at("sets"), f64::from(row.sets), 1.0, 12.0, "");
    }
    let (fewest, most) = table.novice.repetitions;
    let novice = (f64::from(fewest), f64::from(most));
    rules.rising("novice.repetitions", novice, 1.0, 30.0);
    rules.rising("step.percent", table.step.percent, 0.0, 100.0);
    rules.complaints
}

/// Cluster sets.
pub(super) fn clusters(table: &ClusterTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    let (fewest, most) = table.group.repetitions;
    rules.rising(
        "group.repetitions",
        (f64::from(fewest), f64::from(most)),
        1.0,
        12.0,
    );
    rules.positive("group.rest", table.group.rest.as_s(), 180.0, "s");
    rules.within("group.share", table.group.share, 0.1, 1.0, "of 1RM");
    let of_set = f64::from(table.set.most_repetitions);
    rules.within("set.most_repetitions", of_set, 1.0, 60.0, "");
    for (index, zone) in table.totals.zones.iter().enumerate() {
        let path = format!("totals.zones.{index}.percent");
        rules.rising(&path, zone.percent, 0.0, 100.0);
    }
    rules.complaints
}

/// The ascending pyramid.
pub(super) fn pyramid(table: &PyramidTable) -> Vec<Complaint> {
    let mut rules = Rules::default();
    rules.within(
        "repetitions",
        table.repetitions.len() as f64,
        1.0,
        12.0,
        "sets",
    );
    for (index, repetitions) in table.repetitions.iter().enumerate() {
        let path = format!("repetitions.{index}");
        rules.within(&path, f64::from(*repetitions), 1.0, 30.0, "");
    }
    rules.complaints
}
