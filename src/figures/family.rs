//! A family of strength curves over one changed value.
//!
//! In: a [`Family`]. Out: a chart whose title says what changed and by how much, and whose footnote says why.

use super::strength_curve::{self, ceiling, force_axis, level_axis, points, shown};
use crate::library::NumberAt;
use crate::movement::Measure;
use crate::narrative::causes::cause_in_short;
use crate::narrative::comparison::{compared_in_words, shown_figure};
use crate::narrative::parameters::{parameter_in_words, shown_value};
use crate::narrative::prose::{capital, listed};
use crate::plot::{Heading, LineChart, Panel, Role, Series};
use crate::study::{Compared, Conditions, Family, Study, usual_comparison};
use crate::units::{System, rounded};

/// A change smaller than this is called none, as a share.
const HARDLY: f64 = 0.005;

/// The curves of a family, the lightness of a line in the order of the values.
#[must_use]
pub fn family_chart(family: &Family, asked: &Conditions, units: System) -> LineChart {
    let base = &family.base;
    let highest: Vec<f64> = shown(base, units, &base.capacity.values());
    LineChart {
        heading: Heading {
            title: family_title(family, asked, units),
            subtitle: format!(
                "{}: {} over the {}, everything else as it is",
                base.lifter_title,
                base.movement_title.to_lowercase(),
                base.axis
            ),
            footnote: footnote(family),
            description: description(family, asked, units),
            ..super::phrases()
        },
        x: level_axis(base, units),
        panels: vec![Panel {
            axis: force_axis(base, units).reaching(ceiling(&highest, 0.0)),
            series: series(family, units),
            ..Panel::default()
        }],
        ..LineChart::default()
    }
}

fn series(family: &Family, units: System) -> Vec<Series> {
    let curve = |name: String, study: &Study, role| Series {
        name,
        points: points(study, units, &shown(study, units, &study.capacity.values())),
        role,
    };
    let numbers: Option<Vec<&NumberAt>> = family
        .variants
        .iter()
        .map(|variant| variant.number.as_ref())
        .collect();
    let mut order: Vec<usize> = (0..family.variants.len()).collect();
    // Values held in different units (a width in metres beside one in breadths) stay as they were asked for.
    if let Some(numbers) = &numbers
        && numbers.windows(2).all(|pair| pair[0].unit == pair[1].unit)
    {
        order.sort_by(|a, b| numbers[*a].value.total_cmp(&numbers[*b].value));
    }
    let last = order.len().saturating_sub(1).max(1) as f64;
    let mut all: Vec<Series> = order
        .iter()
        .enumerate()
        .map(|(place, index)| {
            let variant = &family.variants[*index];
            let role = if numbers.is_some() {
                Role::Ordered(place as f64 / last)
            } else {
                Role::Series(place)
            };
            curve(shown_value(&variant.text), &variant.study, role)
        })
        .collect();
    if !family.has_present() {
        all.push(curve("as it is".to_owned(), &family.base, Role::Reference));
    }
    all
}

/// What the change does to the figure that is compared, from the least to the greatest value.
#[must_use]
pub fn family_title(family: &Family, asked: &Conditions, units: System) -> String {
    let measure = usual_comparison(family.base.range.measure);
    let what = match (measure, family.base.range.measure) {
        (Compared::Peak, Measure::Torque) => "peak torque",
        _ => compared_in_words(measure),
    };
    let name = capital(&parameter_in_words(&family.parameter.path));
    let told: Vec<(String, f64)> = family
        .variants
        .iter()
        .filter_map(|variant| {
            let value = variant.figures.value(measure)?;
            Some((shown_value(&variant.text), value))
        })
        .collect();
    let ([first, .., last], Some(best)) = (
        told.as_slice(),
        told.iter().max_by(|a, b| a.1.total_cmp(&b.1)),
    ) else {
        return format!("{name}: {what}");
    };
    let figure = |value: f64| {
        let (value, unit) = shown_figure(measure, value, &family.base, asked, units);
        format!(
            "{} {unit}",
            rounded(value, if value < 10.0 { 2 } else { 1 })
        )
    };
    let change = last.1 / first.1 - 1.0;
    let is_inside = best.1 > (1.0 + HARDLY) * first.1.max(last.1);
    if is_inside {
        format!("{name}: {what} best at {}, {}", best.0, figure(best.1))
    } else if change.abs() < HARDLY {
        format!("{name} hardly matters: {what} {}", figure(first.1))
    } else {
        format!(
            "{name} from {} to {}: {what} {} from {} to {}",
            first.0,
            last.0,
            if change > 0.0 { "rises" } else { "falls" },
            figure(first.1),
            figure(last.1)
        )
    }
}

/// Why the value that lies farthest from the present one changes the curve.
fn footnote(family: &Family) -> String {
    let variant = family.farthest();
    let causes: Vec<String> = variant.causes.iter().map(cause_in_short).collect();
    format!(
        "{}: {}.",
        capital(&shown_value(&variant.text)),
        causes.join("; ")
    )
}

fn description(family: &Family, asked: &Conditions, units: System) -> String {
    let curves: Vec<String> = family
        .variants
        .iter()
        .map(|variant| {
            format!(
                "{} ({}, {} % of the peak at the start, {} % at the end)",
                shown_value(&variant.text),
                variant.study.class.shape.word(),
                rounded(100.0 * variant.study.class.start_ratio, 0),
                rounded(100.0 * variant.study.class.end_ratio, 0)
            )
        })
        .collect();
    format!(
        "Strength curves of the {} of {} for {}: {}. {}. {}",
        family.base.movement_title.to_lowercase(),
        family.base.lifter_title,
        parameter_in_words(&family.parameter.path),
        listed(&curves),
        family_title(family, asked, units),
        strength_curve::description(&family.base, units),
    )
}
