//! Families of strength curves over one changed value, maps over two, and the values that matter most.

use super::strength_curve::{level_axis, points};
use super::{
    Axis, Extent, Heading, HeatMap, LineChart, Look, MapStyle, Panel, Role, Series, Swing, Tornado,
};
use crate::draw::Scene;
use crate::error::Result;
use crate::movement::Measure;
use crate::study::{Leverage, Variant};
use crate::units::{System, rounded};

/// One curve a value.
///
/// **Fails** if there is no variant.
pub fn family_chart(
    parameter: &str,
    variants: &[Variant],
    reason: &str,
    units: System,
    look: Look,
) -> Result<Scene> {
    let (title, axis, extent) = words(parameter, variants);
    let series = variants
        .iter()
        .enumerate()
        .map(|(index, variant)| Series {
            name: variant.value.clone(),
            points: points(&variant.study, units, &variant.study.capacity.values()),
            role: Role::Series(index % 7),
        })
        .collect();
    let x = variants.first().map_or_else(
        || Axis::new("Range", ""),
        |variant| level_axis(&variant.study, units),
    );
    LineChart {
        heading: Heading {
            title,
            subtitle: variants.first().map_or_else(String::new, |v| {
                format!("{}, {}", v.study.movement_title, v.study.lifter_title)
            }),
            footnote: reason.to_owned(),
            description: reason.to_owned(),
        },
        x,
        panels: vec![Panel {
            axis: axis.reaching(extent),
            series,
            ..Panel::default()
        }],
        ..LineChart::default()
    }
    .scene(look)
}

fn words(parameter: &str, variants: &[Variant]) -> (String, Axis, Extent) {
    let change = match (variants.first(), variants.last()) {
        (Some(first), Some(last)) => 100.0 * (last.strength() / first.strength() - 1.0),
        _ => 0.0,
    };
    let force = variants
        .first()
        .is_some_and(|v| v.study.range.measure == Measure::Force);
    let what = if force {
        "least capacity"
    } else {
        "peak torque"
    };
    let name = parameter
        .rsplit_once("muscles.")
        .map_or(parameter, |parts| parts.1)
        .trim_start_matches("technique.")
        .replace(['_', '.'], " ");
    let title = format!(
        "{name}: {what} {} by {} %",
        if change < 0.0 { "falls" } else { "rises" },
        rounded(change.abs(), 0)
    );
    let middle = variants
        .iter()
        .map(|v| {
            let mut values = v.study.capacity.values();
            values.sort_by(f64::total_cmp);
            values[values.len() / 2]
        })
        .fold(0.0, f64::max);
    if force {
        (
            title,
            Axis::new("Capacity", "N"),
            Extent::FromZeroTo(1.8 * middle),
        )
    } else {
        (title, Axis::new("Capacity", "N·m"), Extent::FromZero)
    }
}

/// Strength over two values.
///
/// **Fails** if a list of values is empty.
pub fn map_chart(
    parameters: [&str; 2],
    labels: [&[String]; 2],
    numbers: [Vec<f64>; 2],
    values: Vec<Vec<Option<f64>>>,
    unit: &str,
    heading: (String, String),
    look: Look,
) -> Result<Scene> {
    let [xs, ys] = numbers;
    let axis = |index: usize, at: &[f64]| Axis {
        ticks: at
            .iter()
            .zip(labels[index])
            .map(|(value, label)| (*value, label.clone()))
            .collect(),
        ..Axis::new(parameters[index].replace(['_', '.'], " "), "")
    };
    HeatMap {
        heading: Heading {
            title: heading.0,
            subtitle: heading.1,
            footnote: String::new(),
            description: "Strength over two values.".to_owned(),
        },
        x: axis(0, &xs),
        y: axis(1, &ys),
        xs,
        ys,
        values,
        colour: Axis::new("Capacity", unit),
        decimals: 0,
        missing: "no pose".to_owned(),
        markers: Vec::new(),
        style: MapStyle::default(),
    }
    .scene(look)
}

/// The values that matter most.
///
/// **Fails** if nothing matters.
pub fn leverage_chart(
    title: &str,
    lifter: &str,
    percent: f64,
    leverages: &[Leverage],
    look: Look,
) -> Result<Scene> {
    let name = |path: &str| {
        path.trim_start_matches("muscles.")
            .trim_start_matches("segments.")
            .trim_start_matches("technique.")
            .replace(['_', '.'], " ")
    };
    let top: Vec<&Leverage> = leverages.iter().take(12).collect();
    Tornado {
        heading: Heading {
            title: format!(
                "{title}: {} matters most",
                top.first().map_or_else(String::new, |l| name(&l.path))
            ),
            subtitle: format!(
                "{lifter}. Change of strength when each value is lowered or raised by {} %",
                rounded(percent, 1)
            ),
            footnote: "One value at a time; everything else as it is.".to_owned(),
            description: top
                .iter()
                .map(|l| format!("{}: {} %.", name(&l.path), rounded(l.size(), 1)))
                .collect::<Vec<_>>()
                .join(" "),
        },
        axis: Axis::new("Change of strength", "%"),
        lowered: format!("lowered by {} %", rounded(percent, 1)),
        raised: format!("raised by {} %", rounded(percent, 1)),
        decimals: 1,
        swings: top
            .iter()
            .map(|l| Swing {
                name: name(&l.path),
                lowered: l.lowered_percent,
                raised: l.raised_percent,
            })
            .collect(),
    }
    .scene(look)
}
