//! A family of strength curves over one changed value.
//!
//! In: a [`Family`]. Out: a chart whose title says what changed and by how much, and whose footnote says why.

use super::over_range::OverRange;
use super::sheet::{Chart, Sheet, heading};
use crate::library::{MeasuredGrips, NumberAt};
use crate::narrative::family_words::{
    AS_IT_IS, family_words, thigh_caption, thigh_title, with_corner,
};
use crate::narrative::grip_words::{grip_words, usual_grip};
use crate::narrative::limit_words::corner_words;
use crate::narrative::parameters::shown_value;
use crate::narrative::source_words::short_citation;
use crate::plot::{LineChart, Marker, Panel, Role, Series};
use crate::source::Publication;
use crate::study::{Conditions, Family, GripFamily, Study};
use crate::units::System;

/// The curves of a family, the lightness of a line in the order of the values.
#[must_use]
pub fn family_chart(family: &Family, asked: &Conditions, units: System) -> LineChart {
    let base = OverRange::new(&family.base, units);
    let axis = base.load_axis().reaching(base.load_extent(0.0));
    let panel = Panel::new(axis, series(family, units));
    LineChart {
        heading: heading(&family_words(family, asked, units).doubting(&named(family))),
        ..LineChart::new(base.axis(), vec![panel])
    }
}

/// The curves of a family with the values that they are of.
fn named(family: &Family) -> Vec<(&str, &Study)> {
    let variants = family.variants.iter();
    let mut curves: Vec<(&str, &Study)> = variants
        .map(|variant| (variant.text.as_str(), &variant.study))
        .collect();
    if !family.has_present() {
        curves.push((AS_IT_IS, &family.base));
    }
    curves
}

/// A press with narrow and wide grips, beside what was measured in the publication `study`.
#[must_use]
pub fn grip_sheet(
    grips: &GripFamily,
    measured: &MeasuredGrips,
    study: &Publication,
    units: System,
) -> Sheet {
    let study = short_citation(&study.citation);
    let words = grip_words(grips, measured, &study, units);
    let mut chart = family_chart(&grips.family, &Conditions::default(), units);
    let curves = chart.panels.iter_mut().flat_map(|panel| &mut panel.series);
    for curve in curves.filter(|curve| curve.name == AS_IT_IS) {
        curve.name = usual_grip(grips, AS_IT_IS, units);
    }
    Sheet::lines(&words, chart)
}

/// A lift with short and long thighs.
#[must_use]
pub fn thigh_sheet(family: &Family, units: System) -> Sheet {
    let mut chart = family_chart(family, &Conditions::default(), units);
    if let Some(title) = thigh_title(family, units) {
        chart.heading.title = title;
    }
    if let Some((sample, place, told)) = corner_words(&family.base, units) {
        let curve = OverRange::new(&family.base, units).capacity_points();
        let at = curve.get(sample).copied();
        let ring = at.map(|at| Marker::new(at, place, Role::Reference));
        // Words beside the ring need a leader across another curve: they stand at the foot, where that has room.
        let note = &mut chart.heading.footnote;
        let corner = match with_corner(note, &told) {
            Some(both) => {
                *note = both;
                ring
            }
            None => ring.map(|ring| ring.detailed(told)),
        };
        chart.panels[0].markers.extend(corner);
    }
    Sheet::new(Chart::Lines(chart), thigh_caption(family))
}

fn series(family: &Family, units: System) -> Vec<Series> {
    let curve = |name: String, study: &Study, role| {
        let over = OverRange::new(study, units);
        Series::new(name, over.capacity_points(), role)
            .doubted(over.hollow())
            .crested(over.crest().map(|(_, point)| point))
    };
    let (order, are_numbers) = order(family);
    let last = order.len().saturating_sub(1).max(1) as f64;
    let mut all: Vec<Series> = order
        .iter()
        .enumerate()
        .map(|(place, index)| {
            let variant = &family.variants[*index];
            let role = if shown_value(&variant.text) == AS_IT_IS {
                Role::Reference
            } else if are_numbers {
                Role::Ordered(place as f64 / last)
            } else {
                Role::Series(place)
            };
            curve(shown_value(&variant.text), &variant.study, role)
        })
        .collect();
    if !family.has_present() {
        all.push(curve(AS_IT_IS.to_owned(), &family.base, Role::Reference));
    }
    all
}

/// The variants in the order of their values, and whether all values are numbers.
fn order(family: &Family) -> (Vec<usize>, bool) {
    let variants = family.variants.iter();
    let numbers: Option<Vec<&NumberAt>> = variants.map(|variant| variant.number.as_ref()).collect();
    let mut order: Vec<usize> = (0..family.variants.len()).collect();
    // Values held in different units (a width in metres beside one in breadths) stay as they were asked for.
    if let Some(numbers) = &numbers
        && numbers.windows(2).all(|pair| pair[0].unit == pair[1].unit)
    {
        order.sort_by(|a, b| numbers[*a].value.total_cmp(&numbers[*b].value));
    }
    (order, numbers.is_some())
}
