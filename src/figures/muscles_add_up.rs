//! Why a curve has its shape: force × moment arm, muscle by muscle, adding up to torque.
//!
//! In: a lift of one joint. Out: a stack of torques, and force, arm and torque on one scale.

use super::data_table::{DataTable, figure};
use super::over_range::OverRange;
use super::sheet::Sheet;
use crate::narrative::axis_words::OWN_GREATEST;
use crate::narrative::lever_words::{
    LEFT_FOR_LOAD, MUSCLE_FORCE, SUMMED_ARM, force_times_arm_words, stack_words,
};
use crate::narrative::muscle_names::{muscle_label, muscle_name};
use crate::narrative::shown_units::{ShownUnit, ShownUnits};
use crate::plot::{Axis, Fill, Labels, LineChart, Panel, Role, Series};
use crate::study::{ForceAndArm, MusclePart, Study, muscle_layers, sample_of_peak};
use crate::units::System;

/// The torques of all muscles stacked upon each other.
#[must_use]
pub fn muscles_add_up(lifter: &str, study: &Study, units: System) -> Sheet {
    let over = OverRange::new(study, units);
    let layers = muscle_layers(study);
    // What is drawn: a muscle that is stretched against the others stands in no layer.
    let sum = |at: usize| layers.iter().map(|layer| layer.torque_nm[at]).sum();
    let total: Vec<f64> = (0..study.range.poses.len()).map(sum).collect();
    let left = over.load_points(&study.capacity.values());
    let (fills, edges) = stacked(&over, &layers, units.torque_unit());
    let left_for_load = Series::new(LEFT_FOR_LOAD, left, Role::Reference).doubted(over.hollow());
    let mut series = vec![left_for_load];
    series.extend(edges);
    let (quantity, unit) = study.told(units).joint_torque_axis();
    let panel = Panel {
        fills,
        ..Panel::new(Axis::new(quantity, unit), series)
    };
    let chart = LineChart {
        labels: Labels::Column,
        ..LineChart::new(over.axis(), vec![panel])
    };
    let peak = sample_of_peak(&total);
    let words = stack_words(lifter, study, &layers, &total, peak, units);
    Sheet {
        data: muscle_table(study, &layers),
        ..Sheet::lines(&words, chart)
    }
}

/// Filled layers and their upper edges; the top edge is the sum of all.
pub(super) fn stacked(
    over: &OverRange<'_>,
    layers: &[MusclePart],
    unit: ShownUnit,
) -> (Vec<Fill>, Vec<Series>) {
    let points = |torques_nm: &[f64]| {
        let shown: Vec<f64> = torques_nm.iter().map(|nm| unit.of(*nm)).collect();
        over.points(&shown)
    };
    let mut below = vec![0.0; over.told.study.range.poses.len()];
    let (mut fills, mut edges) = (Vec::new(), Vec::new());
    for (index, layer) in layers.iter().enumerate() {
        let role = Role::Series(index);
        let sums = below.iter().zip(&layer.torque_nm).map(|(b, t)| b + t);
        let above: Vec<f64> = sums.collect();
        let (upper, lower) = (points(&above), points(&below));
        let label = muscle_label(layer);
        let name = match index {
            0 => label,
            _ => format!("+ {label}"),
        };
        edges.push(Series::new(name, upper.clone(), role));
        fills.push(Fill { upper, lower, role });
        below = above;
    }
    // The highest edge comes first in the column of names.
    edges.reverse();
    (fills, edges)
}

/// Force, moment arm and torque, each in percent of its own greatest value.
#[must_use]
pub fn force_times_arm(lifter: &str, study: &Study, units: System) -> Sheet {
    let over = OverRange::new(study, units);
    let product = ForceAndArm::of(study);
    let curve = |name: &str, values: &[f64], role| {
        let peak = values.iter().copied().fold(0.0, f64::max);
        let own: Vec<f64> = values.iter().map(|value| 100.0 * value / peak).collect();
        Series::new(name, over.points(&own), role).doubted(over.hollow())
    };
    let series = vec![
        curve("moment", &product.torque_nm, Role::Reference),
        curve(MUSCLE_FORCE, &product.force_n, Role::Series(0)),
        curve(SUMMED_ARM, &product.arm_m, Role::Series(1)),
    ];
    let panel = Panel::new(Axis::new(OWN_GREATEST, "%"), series);
    let chart = LineChart::new(over.axis(), vec![panel]);
    let words = force_times_arm_words(lifter, study, &product);
    Sheet::lines(&words, chart)
}

/// Columns of the table of muscles.
const COLUMNS: [&str; 7] = [
    "muscle",
    "range",
    "angle_deg",
    "force_n",
    "moment_arm_m",
    "fibre_length_norm",
    "torque_nm",
];

/// Force, arm, fibre length and torque of muscles over the range of a lift of one joint, and what is left for the load.
fn muscle_table(study: &Study, parts: &[MusclePart]) -> DataTable {
    let mut table = DataTable {
        header: COLUMNS.map(str::to_owned).to_vec(),
        rows: Vec::new(),
    };
    for part in parts {
        for (index, pose) in study.range.poses.iter().enumerate() {
            let figures = [
                pose.load.range,
                pose.coordinates[0].angle_rad.to_degrees(),
                part.force_n[index],
                part.arm_m[index],
                part.fibre_norm[index],
                part.torque_nm[index],
            ];
            let mut row = vec![muscle_name(part)];
            row.extend(figures.map(figure));
            table.rows.push(row);
        }
    }
    let poses = study.range.poses.iter().zip(study.capacity.values());
    for (pose, left_nm) in poses {
        let angle = pose.coordinates[0].angle_rad.to_degrees();
        let mut row = vec![LEFT_FOR_LOAD.to_owned()];
        row.extend([pose.load.range, angle].map(figure));
        row.extend([const { String::new() }; 3]);
        row.push(figure(left_nm));
        table.rows.push(row);
    }
    table
}
