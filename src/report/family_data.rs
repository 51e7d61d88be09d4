//! A family of curves over one changed value as tidy tables: figures, curves, parts of every change.
//!
//! In: a [`Family`]. Out: [`TidyTable`]s in SI, rows that JSON holds as well.

use super::account_rows::{account_rows, place_name};
use super::sample::{Sample, samples};
use super::tidy_table::{Cells, TidyTable};
use crate::movement::Measure;
use crate::study::{Compared, Conditions, Family, Figures, Study, Variant};
use serde::{Serialize, Serializer, ser::SerializeMap};

/// A value and the figures of its curve; of the model as it is, if there is no other value.
#[derive(Debug, Serialize)]
pub(super) struct ValueRow<'a> {
    is_baseline: bool,
    value: Option<&'a str>,
    value_si: Option<f64>,
    unit: Option<&'a str>,
    class: &'static str,
    #[serde(flatten)]
    capacity: FigureCells,
    peak_range: f64,
    sticking_point_range: Option<f64>,
    max_effort: Option<f64>,
    heaviest_kg: Option<f64>,
}

/// Figures under names that tell their units.
#[derive(Debug)]
pub(super) struct FigureCells(Vec<(&'static str, Option<f64>)>);

impl Serialize for FigureCells {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(self.0.len()))?;
        for (name, value) in &self.0 {
            map.serialize_entry(name, value)?;
        }
        map.end()
    }
}

/// One figure of a curve beside the same one of the model as it is; nothing where the movement cannot be done.
pub(super) fn figure_cell(
    figures: Option<&Figures>,
    measure: Compared,
    (base, unit): (&Figures, Measure),
) -> FigureCells {
    let value = figures.and_then(|figures| figures.value(measure));
    let name = match measure {
        // With a load of one's own: how many times of it would be all the lifter has.
        Compared::Held if base.held_kg.is_none() => "heaviest_over_load",
        _ => figure_name(measure, unit),
    };
    FigureCells(vec![(name, value)])
}

/// The name of a figure in CSV and JSON.
const fn figure_name(measure: Compared, unit: Measure) -> &'static str {
    match (measure, unit) {
        (Compared::Held, _) => "heaviest_kg",
        (Compared::Peak, Measure::Force) => "peak_capacity_n",
        (Compared::Peak, Measure::Torque) => "peak_capacity_nm",
        (Compared::Start, Measure::Force) => "start_capacity_n",
        (Compared::Start, Measure::Torque) => "start_capacity_nm",
        (Compared::End, Measure::Force) => "end_capacity_n",
        (Compared::End, Measure::Torque) => "end_capacity_nm",
    }
}

/// The row of a value, or of the model as it is.
pub(super) fn value_row<'a>(family: &'a Family, variant: Option<&'a Variant>) -> ValueRow<'a> {
    let present = (&family.base_figures, &family.base, family.present.as_ref());
    let (figures, study, number) = variant.map_or(present, |variant| {
        (&variant.figures, &variant.study, variant.number.as_ref())
    });
    let capacities = [Compared::Peak, Compared::Start, Compared::End];
    let unit = study.range.measure;
    ValueRow {
        is_baseline: variant.is_none(),
        value: variant.map(|variant| variant.text.as_str()),
        value_si: number.map(|number| number.value),
        unit: number.map(|number| number.unit),
        class: study.class.shape.word(),
        capacity: FigureCells(
            capacities
                .map(|measure| (figure_name(measure, unit), figures.value(measure)))
                .to_vec(),
        ),
        peak_range: figures.peak_range,
        sticking_point_range: figures.sticking.map(|sticking| sticking.point_range),
        max_effort: figures.max_effort,
        heaviest_kg: figures.held_kg,
    }
}

/// Which value of which parameter a row is of.
#[derive(Serialize)]
struct OfValue<'a> {
    parameter: &'a str,
    is_baseline: bool,
    value: Option<&'a str>,
    value_si: Option<f64>,
    unit: Option<&'a str>,
}

impl<'a> OfValue<'a> {
    fn of(family: &'a Family, variant: Option<&'a Variant>) -> Self {
        let row = value_row(family, variant);
        Self {
            parameter: &family.parameter.path,
            is_baseline: row.is_baseline,
            value: row.value,
            value_si: row.value_si,
            unit: row.unit,
        }
    }
}

#[derive(Serialize)]
struct OfParameter<'a> {
    parameter: &'a str,
}

/// The model as it is, then every value; a change of nothing is the model as it is and has no row of its own.
fn all(family: &Family) -> impl Iterator<Item = Option<&Variant>> {
    std::iter::once(None).chain(family.changed().map(Some))
}

/// Figures: a row a value, the model as it is first.
#[must_use]
pub fn family_data(family: &Family) -> TidyTable {
    let named = Cells::of(&OfParameter {
        parameter: &family.parameter.path,
    });
    TidyTable::of(all(family).map(|variant| named.clone().and(&value_row(family, variant))))
}

/// The samples of a curve; without a load of its own neither demand nor effort.
pub(super) fn family_samples(study: &Study, asked: &Conditions) -> Vec<Sample> {
    let load = study.setups.first().filter(|_| asked.load.is_some());
    samples(study, load, false)
}

/// Curves: a row a value and sample, those of the model as it is first.
#[must_use]
pub fn family_curves(family: &Family, asked: &Conditions) -> TidyTable {
    TidyTable::of(all(family).flat_map(|variant| {
        let study = variant.map_or(&family.base, |variant| &variant.study);
        let named = Cells::of(&OfValue::of(family, variant));
        let samples = family_samples(study, asked);
        let rows: Vec<Cells> = samples.iter().map(|s| named.clone().and(s)).collect();
        rows
    }))
}

#[derive(Serialize)]
struct OfPlace {
    place: &'static str,
    range: f64,
}

/// Why every value changes the curve: a row a value, place and part.
#[must_use]
pub fn why_data(family: &Family) -> TidyTable {
    let measure = family.base.range.measure;
    TidyTable::of(family.changed().flat_map(|variant| {
        let named = Cells::of(&OfValue::of(family, Some(variant)));
        let rows = variant.causes.iter().flat_map(|cause| {
            let place = OfPlace {
                place: place_name(cause.spot),
                range: cause.range,
            };
            let at = named.clone().and(&place);
            let parts = account_rows(cause, measure);
            parts
                .iter()
                .map(|part| at.clone().and(part))
                .collect::<Vec<_>>()
        });
        rows.collect::<Vec<_>>()
    }))
}
