//! Plain weight over each class: where the same kind of load is heavy and where it is light.
//!
//! In: one lift of every class, each with a plain weight that is equally hard at its hardest place.
//! Out: small panels with capacity, demand and the sticking region.

use super::classes::{examples, median, median_axis, over_range, range_axis};
use super::desk::{Desk, HARD_EFFORT, Lift};
use super::sheet::{Chart, Sheet};
use crate::error::Result;
use crate::narrative::name_of;
use crate::narrative::prose::{capital, listed, part_of_range, percent};
use crate::plot::{Heading, Role, Series, Shade, SmallMultiples, SmallPanel};
use crate::study::{SetupStudy, Study};
use crate::units::System;

/// Capacity and demand of one example a class.
pub fn load_over_class(desk: &Desk<'_>) -> Result<Sheet> {
    let loaded = examples(desk)
        .into_iter()
        .map(|lift| loaded(desk, lift))
        .collect::<Result<Vec<_>>>()?;
    let places: Vec<String> = loaded
        .iter()
        .filter_map(|study| {
            let sticking = study.setups[0].sticking?;
            let name = study.movement_title.to_lowercase();
            Some(format!(
                "{} of the {name}",
                part_of_range(sticking.point_range)
            ))
        })
        .collect();
    let columns = loaded.len();
    let described: Vec<String> = loaded
        .iter()
        .map(|study| in_figures(study, desk.units))
        .collect();
    let chart = SmallMultiples {
        heading: Heading {
            title: format!("A plain weight is hardest {}", listed(&places)),
            subtitle: format!(
                "{}; every weight chosen so that its hardest place takes {} of what the lifter has",
                desk.who(),
                percent(HARD_EFFORT)
            ),
            footnote: "Shaded: sticking region, effort within 5 % of its greatest. Where the gap between the curves is \
                       wide the weight is light."
                .to_owned(),
            description: format!(
                "Capacity and the demand of a plain weight for {columns} lifts. {}",
                described.join(" ")
            ),
..super::phrases()
},
        x: range_axis(),
        y: median_axis("Load"),
        panels: loaded.iter().map(panel).collect(),
        columns: Some(columns),
    };
    Ok(Sheet::new(
        Chart::Panels(chart),
        "The heaviest weight that can be lifted is set by one place of the range. Everywhere else the same weight is \
         lighter than the lifter is strong: the gap between the curves is strength that a plain weight does not train.",
    ))
}

fn loaded(desk: &Desk<'_>, lift: &Lift) -> Result<Study> {
    let movement = lift.model.movement_name.as_str();
    let setup = desk.hard(movement, Vec::new())?;
    desk.under(movement, &[setup])
}

fn panel(study: &Study) -> SmallPanel {
    let capacity = study.capacity.values();
    let unit = median(&capacity);
    let setup = &study.setups[0];
    SmallPanel {
        title: study.movement_title.clone(),
        note: lightest(setup),
        series: vec![
            Series {
                name: "capacity".to_owned(),
                points: over_range(study, &capacity, unit),
                role: Role::CAPACITY,
            },
            Series {
                name: "weight".to_owned(),
                points: over_range(study, &setup.values, unit),
                role: Role::DEMAND,
            },
        ],
        shades: setup
            .sticking
            .map(|sticking| Shade {
                from: 100.0 * sticking.from_range,
                to: 100.0 * sticking.to_range,
                label: String::new(),
            })
            .into_iter()
            .collect(),
        ..SmallPanel::default()
    }
}

/// The least effort over the range in words.
fn lightest(setup: &SetupStudy) -> String {
    let least = setup.effort.iter().copied().fold(f64::INFINITY, f64::min);
    format!(
        "effort {} to {}",
        percent(least).trim_end_matches(" %"),
        percent(HARD_EFFORT)
    )
}

fn in_figures(study: &Study, units: System) -> String {
    let setup = &study.setups[0];
    let name = capital(&study.movement_title);
    match setup.sticking {
        None => format!("{name}: the weight asks for nothing."),
        Some(sticking) => format!(
            "{name} ({}), {}: greatest effort {} at {} of the range, sticking region {} to {}.",
            study.class.shape.word(),
            name_of(study, setup, units),
            percent(sticking.max_effort),
            percent(sticking.point_range),
            percent(sticking.from_range),
            percent(sticking.to_range)
        ),
    }
}
