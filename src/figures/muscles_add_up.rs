//! Why a curve has its shape: force × moment arm, muscle by muscle, adding up to torque.
//!
//! In: lifts of one joint. Out: a stack of torques, and force, arm and torque on one scale.

use super::data_table::{DataTable, figure};
use super::desk::Desk;
use super::sheet::{Chart, Sheet};
use super::strength_curve::{level_axis, points};
use crate::error::Result;
use crate::narrative::muscle_names::muscle_label;
use crate::narrative::places::{place_in_words, sides_in_words};
use crate::narrative::prose::{listed, part_of_range, percent};
use crate::plot::{Axis, Fill, Heading, Labels, LineChart, Panel, Role, Series};
use crate::study::{MusclePart, Study, muscle_parts, muscle_torque_nm};

/// The lift that is taken apart.
const LIFT: &str = "biceps-curl";
/// Layers of the stack; what is left over is taken together.
const MOST_LAYERS: usize = 3;

/// The torques of all muscles stacked upon each other.
pub fn muscles_add_up(desk: &Desk<'_>) -> Result<Sheet> {
    let study = &desk.lift(LIFT)?.study;
    let layers = layers(study);
    let total = muscle_torque_nm(study, 0);
    let peak = place_of_peak(&total);
    let first = &layers[0];
    let two: Vec<String> = layers
        .iter()
        .take(2)
        .map(|layer| layer.name.clone())
        .collect();
    let share = layers
        .iter()
        .take(2)
        .map(|layer| layer.torque_nm[peak])
        .sum::<f64>()
        / total[peak];
    let last = (total.len() - 1) as f64;
    let mut series = vec![Series {
        name: "left for the load".to_owned(),
        points: points(study, desk.units, &study.capacity.values()),
        role: Role::Reference,
    }];
    let (fills, edges) = stacked(desk, study, &layers);
    series.extend(edges);
    let told: Vec<String> = layers
        .iter()
        .map(|layer| {
            format!(
                "{} {}",
                layer.name,
                percent(layer.torque_nm[peak] / total[peak])
            )
        })
        .collect();
    let chart = LineChart {
        heading: Heading {
            title: format!(
                "Muscles add up: {} make {} of the peak",
                listed(&two),
                percent(share)
            ),
            subtitle: format!(
                "{}, {}: force × moment arm of every muscle at the {}",
                desk.who(),
                study.movement_title.to_lowercase(),
                study.joint(0)
            ),
            footnote: format!(
                "Upper edge: torque of all muscles. The line below it is what they leave for the load: the limb's own \
                 weight and the joint's passive torque are taken off. {}",
                sides_in_words(study)
            ),
            description: format!(
                "Stacked torques over {}. At the peak, {}, the shares are: {}. {} starts the stack.",
                study.axis,
                place_in_words(study, peak as f64 / last, desk.units),
                told.join(", "),
                first.name
            ),
            ..super::phrases()
        },
        x: level_axis(study, desk.units),
        panels: vec![Panel {
            axis: Axis::new(format!("Torque at the {}", study.joint(0)), "N·m"),
            series,
            fills,
            ..Panel::default()
        }],
        labels: Labels::Column,
        ..LineChart::default()
    };
    let mut sheet = Sheet::new(
        Chart::Lines(chart),
        "Each muscle gives its force times its moment arm at every angle; the strength curve is their sum, less what \
         the limb itself weighs.",
    );
    sheet.data = muscle_table(study, &layers);
    Ok(sheet)
}

/// The strongest muscles and the rest as one.
fn layers(study: &Study) -> Vec<MusclePart> {
    let mut parts = muscle_parts(study, 0);
    if parts.len() > MOST_LAYERS + 1 {
        let rest = parts.split_off(MOST_LAYERS);
        parts.push(together(&rest));
    }
    parts
}

fn together(parts: &[MusclePart]) -> MusclePart {
    let sum = |values: fn(&MusclePart) -> &Vec<f64>| -> Vec<f64> {
        (0..values(&parts[0]).len())
            .map(|index| parts.iter().map(|part| values(part)[index]).sum())
            .collect()
    };
    let (force_n, torque_nm) = (sum(|part| &part.force_n), sum(|part| &part.torque_nm));
    let many = parts.len() as f64;
    MusclePart {
        name: format!("{} others", parts.len()),
        heads: 1,
        arm_m: torque_nm
            .iter()
            .zip(&force_n)
            .map(|(t, f)| t / f.max(1.0e-9))
            .collect(),
        fibre_norm: sum(|part| &part.fibre_norm)
            .iter()
            .map(|l| l / many)
            .collect(),
        force_n,
        torque_nm,
    }
}

/// Filled layers and their upper edges; the top edge is the sum of all.
fn stacked(desk: &Desk<'_>, study: &Study, layers: &[MusclePart]) -> (Vec<Fill>, Vec<Series>) {
    let mut below = vec![0.0; study.range.poses.len()];
    let (mut fills, mut edges) = (Vec::new(), Vec::new());
    for (index, layer) in layers.iter().enumerate() {
        let above: Vec<f64> = below
            .iter()
            .zip(&layer.torque_nm)
            .map(|(b, t)| b + t)
            .collect();
        let edge = points(study, desk.units, &above);
        fills.push(Fill {
            upper: edge.clone(),
            lower: points(study, desk.units, &below),
            role: Role::Series(index),
        });
        edges.push(Series {
            name: match index {
                0 => muscle_label(layer),
                _ => format!("+ {}", muscle_label(layer)),
            },
            points: edge,
            role: Role::Series(index),
        });
        below = above;
    }
    // The highest edge comes first in the column of names.
    edges.reverse();
    (fills, edges)
}

fn place_of_peak(values: &[f64]) -> usize {
    (0..values.len())
        .max_by(|a, b| values[*a].total_cmp(&values[*b]).then(b.cmp(a)))
        .unwrap_or(0)
}

/// Force, moment arm and torque, each in percent of its own greatest value.
pub fn force_times_arm(desk: &Desk<'_>) -> Result<Sheet> {
    let study = &desk.lift(LIFT)?.study;
    let parts = muscle_parts(study, 0);
    let count = study.range.poses.len();
    let sum = |values: fn(&MusclePart) -> &Vec<f64>| -> Vec<f64> {
        (0..count)
            .map(|index| parts.iter().map(|part| values(part)[index]).sum())
            .collect()
    };
    let (force, torque) = (sum(|part| &part.force_n), sum(|part| &part.torque_nm));
    let arm: Vec<f64> = torque.iter().zip(&force).map(|(t, f)| t / f).collect();
    let peaks = [&force, &arm, &torque].map(|values| place_of_peak(values));
    let last = (count - 1) as f64;
    let place = |peak: usize| part_of_range(peak as f64 / last);
    let own = |values: &[f64]| -> Vec<f64> {
        let peak = values.iter().copied().fold(0.0, f64::max);
        values.iter().map(|value| 100.0 * value / peak).collect()
    };
    let curve = |name: &str, values: &[f64], role| Series {
        name: name.to_owned(),
        points: points(study, desk.units, &own(values)),
        role,
    };
    let where_is = |peak: usize| place_in_words(study, peak as f64 / last, desk.units);
    let chart = LineChart {
        heading: Heading {
            title: format!(
                "Force peaks {}, leverage {}: torque peaks {}",
                place(peaks[0]),
                place(peaks[1]),
                place(peaks[2])
            ),
            subtitle: format!(
                "{}, {}: all muscles that flex the {} together",
                desk.who(),
                study.movement_title.to_lowercase(),
                study.joint(0)
            ),
            footnote: "Each curve in percent of its own greatest value. Moment arm: the one at which the summed force \
                       makes the summed torque."
                .to_owned(),
            description: format!(
                "Three curves over {}: summed muscle force is greatest at {}, the mean moment arm at {}, their product, \
                 the torque, at {}.",
                study.axis,
                where_is(peaks[0]),
                where_is(peaks[1]),
                where_is(peaks[2])
            ),
..super::phrases()
},
        x: level_axis(study, desk.units),
        panels: vec![Panel {
            axis: Axis::new("Share of its own greatest value", "%"),
            series: vec![
                curve("torque", &torque, Role::Reference),
                curve("muscle force", &force, Role::Series(0)),
                curve("moment arm", &arm, Role::Series(1)),
            ],
            ..Panel::default()
        }],
        ..LineChart::default()
    };
    Ok(Sheet::new(
        Chart::Lines(chart),
        "Force falls as the fibres get short while the moment arm grows; the product is greatest in between. That is \
         all a bell-shaped curve is.",
    ))
}

/// Force, arm, fibre length and torque of muscles over the range of a lift of one joint.
fn muscle_table(study: &Study, parts: &[MusclePart]) -> DataTable {
    let mut table = DataTable {
        header: [
            "muscle",
            "range",
            "angle_deg",
            "force_n",
            "moment_arm_m",
            "fibre_length_norm",
            "torque_nm",
        ]
        .map(str::to_owned)
        .to_vec(),
        rows: Vec::new(),
    };
    for part in parts {
        for (index, pose) in study.range.poses.iter().enumerate() {
            let mut row = vec![part.name.clone()];
            row.extend(
                [
                    pose.load.range,
                    pose.coordinates[0].angle_rad.to_degrees(),
                    part.force_n[index],
                    part.arm_m[index],
                    part.fibre_norm[index],
                    part.torque_nm[index],
                ]
                .map(figure),
            );
            table.rows.push(row);
        }
    }
    table
}
