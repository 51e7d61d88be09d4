//! Changed values as tables and sentences: a family over one of them, figures over two.
//!
//! In: a [`Family`] or a [`PairGrid`], under which conditions, units. Out: text for the report of a variation.

use super::causes::why_lines;
use super::changed_numbers::{from_to, signed as account_signed};
use super::comparison::{compared_of, shown_figure};
use super::faults::in_one_line;
use super::fibre_words::fibre_warning_lines;
use super::made_words::pace_words;
use super::parameter_list::shown_unit;
use super::parameters::{parameter_in_words, shown_value};
use super::prose::capital;
use super::quantities::{QuantityWords, rounded, with_minus};
use crate::movement::Measure;
use crate::study::{
    BothWays, Compared, Conditions, Family, Figures, HeldChange, PairGrid, Study, Variant,
};
use crate::units::{Length, Mass, System};

/// Where a table has nothing to tell.
const NONE: &str = "-";

/// The heads of a family's table.
#[must_use]
pub fn variant_heads(family: &Family, asked: &Conditions, units: System) -> Vec<String> {
    let unit = |figure: Compared| shown_figure(figure, 0.0, &family.base, asked, units).1;
    let force = unit(Compared::Peak);
    vec![
        family.parameter.path.clone(),
        format!("peak {force}"),
        "peak at".to_owned(),
        format!("start {force}"),
        format!("end {force}"),
        "class".to_owned(),
        "hardest at".to_owned(),
        format!(
            "{} {}",
            compared_of(Compared::Held, &family.base),
            unit(Compared::Held)
        ),
    ]
}

/// A changed value as a row of that table.
#[must_use]
pub fn variant_cells(variant: &Variant, asked: &Conditions, units: System) -> Vec<String> {
    let name = shown_value(&variant.text);
    cells(name, &variant.study, &variant.figures, asked, units)
}

/// The present value as a row of that table.
#[must_use]
pub fn present_cells(family: &Family, asked: &Conditions, units: System) -> Vec<String> {
    let name = family.present.as_ref().map_or_else(
        || "as it is".to_owned(),
        |number| format!("as it is ({})", in_unit(number.value, number.unit, units)),
    );
    cells(name, &family.base, &family.base_figures, asked, units)
}

fn cells(
    name: String,
    study: &Study,
    figures: &Figures,
    asked: &Conditions,
    units: System,
) -> Vec<String> {
    let number = |figure: Compared, decimals: usize| {
        figures.value(figure).map_or_else(
            || NONE.to_owned(),
            |value| rounded(shown_figure(figure, value, study, asked, units).0, decimals),
        )
    };
    vec![
        name,
        number(Compared::Peak, 1),
        place_or_end(study, figures.peak_range, units),
        number(Compared::Start, 1),
        number(Compared::End, 1),
        study.class.shape.word().to_owned(),
        figures.sticking.map_or_else(
            || NONE.to_owned(),
            |s| place_or_end(study, s.point_range, units),
        ),
        number(Compared::Held, held_decimals(asked)),
    ]
}

/// Decimals of the heaviest weight: more where it is told in multiples of a load.
const fn held_decimals(asked: &Conditions) -> usize {
    if asked.load.is_some() { 2 } else { 1 }
}

/// A value in its SI unit as people read it: lengths in cm or inches, angles in degrees.
fn in_unit(value: f64, unit: &str, units: System) -> String {
    match unit {
        "m" => units.short_length(Length::from_m(value)),
        "rad" => format!("{} deg", with_minus(&rounded(value.to_degrees(), 1))),
        "shoulder breadths" => format!("{} \u{d7} build.biacromial_breadth", rounded(value, 4)),
        unit => {
            let (factor, unit) = match (units, unit) {
                (System::Us, "kg" | "N" | "N·m") => shown_unit(value, unit, units),
                _ => (1.0, unit),
            };
            let value = factor * value;
            let told = format!("{} {unit}", rounded(value, shown_decimals(value)));
            told.trim_end().to_owned()
        }
    }
}

/// Decimals with which a value has five digits, at most four.
fn shown_decimals(value: f64) -> usize {
    let before = value.abs().max(1.0).log10().floor() as usize;
    4_usize.saturating_sub(before)
}

/// A place of the range as people read it: travel in cm or inches, or the joint's angle.
fn place(study: &Study, range: f64, units: System) -> String {
    let value = study.axis_value(range);
    match study.range.measure {
        Measure::Torque => format!("{} deg", with_minus(&rounded(value, 0))),
        Measure::Force => units.short_length(Length::from_cm(value)),
    }
}

/// A place of the range that says so where it lies on the border: the curve may go on beyond it.
fn place_or_end(study: &Study, range: f64, units: System) -> String {
    let place = place(study, range, units);
    if range <= 0.0 {
        format!("{place} (start)")
    } else if range >= 1.0 {
        format!("{place} (end)")
    } else {
        place
    }
}

/// What stands under a family's table: values that cannot be had, sensitivities, why each curve differs.
#[must_use]
pub fn family_paragraphs(family: &Family, units: System) -> Vec<String> {
    let undone = family.undone.iter().map(|undone| {
        format!(
            "{}: {}",
            shown_value(&undone.text),
            in_one_line(&undone.error, units)
        )
    });
    let mut lines: Vec<String> = undone.collect();
    let pace = pace_words(family.base.pace);
    if let Some(pace) = pace.strip_prefix(", ") {
        lines.insert(0, format!("All values {pace}."));
    }
    lines.extend(same_as_now(family));
    if let Some(sentence) = sensitivities(family) {
        lines.push(String::new());
        lines.push(sentence);
    }
    lines.extend(whys(family, units));
    lines
}

/// That no value is another one than the present; nothing where one is.
fn same_as_now(family: &Family) -> Option<String> {
    let changes_nothing = |variant: &Variant| variant.figures == family.base_figures;
    if family.variants.is_empty() || !family.variants.iter().all(changes_nothing) {
        return None;
    }
    let is_zero = family
        .present
        .as_ref()
        .is_some_and(|number| number.value == 0.0);
    let is_share = |variant: &Variant| variant.text.ends_with('%') && variant.text != "+0%";
    let of_nothing = match is_zero && family.variants.iter().any(is_share) {
        true => " A share of 0 is 0: name a value with its unit.",
        false => "",
    };
    Some(format!(
        "Nothing changes: every value is the one that is there.{of_nothing}"
    ))
}

/// Why each curve differs: a line for the value, one for every place.
fn whys(family: &Family, units: System) -> Vec<String> {
    let changed = family
        .variants
        .iter()
        .filter(|variant| variant.figures != family.base_figures);
    let mut lines = Vec::new();
    for variant in changed {
        let told = why_lines(family, variant, units).into_iter();
        let told = told.chain(heaviest_line(family, variant, units));
        for (number, line) in told.enumerate() {
            let indent = if number == 0 { "" } else { "  " };
            lines.push(format!("{indent}{line}"));
        }
    }
    if !lines.is_empty() {
        lines.insert(0, String::new());
        lines.push(HOW_IT_ADDS_UP.to_owned());
    }
    lines
}

/// Why the heaviest weight is another one: "Heaviest weight 17.3 → 16.1 kg (−6.9 %): …"; `None` where it hardly
/// changes.
#[must_use]
pub fn heaviest_line(family: &Family, variant: &Variant, units: System) -> Option<String> {
    let change = HeldChange::between(
        [&family.base, &variant.study],
        [&family.base_figures, &variant.figures],
    )?;
    let whole = percent_change(change.ratio());
    if whole == "0" {
        return None;
    }
    let heaviest = capital(compared_of(Compared::Held, &family.base));
    let (what, unit, asks) = match (family.base_figures.held_kg, units) {
        (None, _) => (
            "Times the load that can be held",
            "",
            "what the load asks for",
        ),
        (_, System::Metric) => (heaviest.as_str(), " kg", "what each kilogram asks for"),
        (_, System::Us) => (heaviest.as_str(), " lb", "what each pound asks for"),
    };
    let shown = |value: f64| match (family.base_figures.held_kg, units) {
        (Some(_), System::Us) => Mass::from_kg(value).as_lb(),
        _ => value,
    };
    let held = from_to(change.held.map(shown), if unit.is_empty() { 2 } else { 1 })?;
    let places = [0, 1].map(|side| {
        place(
            [&family.base, &variant.study][side],
            change.range[side],
            units,
        )
    });
    let place = if places[0] == places[1] {
        format!("at the hardest place, {}, ", places[0])
    } else {
        format!(
            "the hardest place moves from {} to {}, between them ",
            places[0], places[1]
        )
    };
    Some(format!(
        "{what} {held}{unit} ({whole} %): {place}capacity {}, {asks} {}.",
        changed_by(change.capacity_ratio),
        changed_by(change.demand_ratio)
    ))
}

fn changed_by(ratio: f64) -> String {
    match percent_change(ratio).as_str() {
        "0" => "stays as it is".to_owned(),
        percent => format!("changes by {percent} %"),
    }
}

/// A ratio as a signed change in percent, one decimal.
fn percent_change(ratio: f64) -> String {
    account_signed(100.0 * (ratio - 1.0), 1)
}

/// What the parts of a reason are.
const HOW_IT_ADDS_UP: &str = "Each part is what the change of that one thing adds to the capacity there, the mean over all orders in which \
     things may change (Shapley 1953; muscle forces are of one side); with all else the parts add up to the change but for rounding. --why lists them all, --why-figure draws them.";

/// That no value changes the curve, and where it would.
#[must_use]
pub fn without_effect(family: &Family) -> Option<String> {
    if !family.is_without_effect() {
        return None;
    }
    let name = capital(&parameter_in_words(&family.parameter.path));
    let at_speed = family.parameter.path.starts_with("curves.velocity")
        || family.parameter.path.ends_with("max_velocity");
    let hint = if at_speed {
        " Everything is held still here: ask with --speed."
    } else {
        ""
    };
    Some(format!(
        "{name} changes nothing in this lift: with every value the capacity is the same at every place.{hint}"
    ))
}

/// "Per 1 % more: peak +0.12 %, ..." near the present value.
fn sensitivities(family: &Family) -> Option<String> {
    const OF_RANGE: &str = " points of the range";
    let s = family.sensitivity?;
    let told = [
        signed("peak", Some(s.peak_percent), " %"),
        signed("start", Some(s.start_percent), " %"),
        signed("end", Some(s.end_percent), " %"),
        signed(
            compared_of(Compared::Held, &family.base),
            s.held_percent,
            " %",
        ),
        signed("place of the peak", Some(s.peak_place_percent), OF_RANGE),
        signed("hardest place", s.sticking_place_percent, OF_RANGE),
    ];
    let told: Vec<String> = told.into_iter().flatten().collect();
    Some(format!(
        "Per 1 % more of the {}: {}.",
        parameter_in_words(&family.parameter.path),
        told.join(", ")
    ))
}

/// A figure with its change; where the limit changes hands just here, more and less are told apart.
fn signed(name: &str, change: Option<BothWays>, unit: &str) -> Option<String> {
    /// Share of the larger change by which both ways may differ: a curve bends a little.
    const BENDS: f64 = 0.2;
    /// No difference that two decimals show.
    const NONE: f64 = 0.01;
    let change = change?;
    let shown = |value: f64| {
        let size = rounded(value.abs(), 2);
        let sign = match size.as_str() {
            "0" => "",
            _ if value > 0.0 => "+",
            _ => "\u{2212}",
        };
        format!("{sign}{size}{unit}")
    };
    let larger = change.more.abs().max(change.less.abs());
    let apart = (change.more + change.less).abs();
    Some(match apart <= (BENDS * larger).max(NONE) {
        true => format!("{name} {}", shown(change.mean())),
        false => format!(
            "{name} {} (1 % less: {})",
            shown(change.more),
            shown(change.less)
        ),
    })
}

/// Which figure a grid tells, in which unit, and what it is with nothing changed.
#[must_use]
pub fn pair_head(grid: &PairGrid, figure: Compared, asked: &Conditions, units: System) -> String {
    let present = grid.base_figures.value(figure);
    format!(
        "{} in {}; as it is {}",
        compared_of(figure, &grid.base),
        shown_figure(figure, 0.0, &grid.base, asked, units).1,
        present.map_or_else(
            || "none".to_owned(),
            |value| pair_number(grid, figure, value, asked, units)
        )
    )
}

/// The heads of a grid's table: both parameters, then the values of the first.
#[must_use]
pub fn pair_heads(grid: &PairGrid) -> Vec<String> {
    let [x, y] = &grid.parameters;
    let corner = format!("{} \\ {}", y.path, x.path);
    let values = x.values.iter().map(|value| shown_value(value));
    std::iter::once(corner).chain(values).collect()
}

/// The rows of a grid's table: the second parameter downwards, the first across.
#[must_use]
pub fn pair_rows(
    grid: &PairGrid,
    figure: Compared,
    asked: &Conditions,
    units: System,
) -> Vec<Vec<String>> {
    let cell = |figures: &Option<Figures>| {
        let value = figures.as_ref().and_then(|figures| figures.value(figure));
        value.map_or_else(
            || NONE.to_owned(),
            |value| pair_number(grid, figure, value, asked, units),
        )
    };
    let rows = grid.parameters[1].values.iter().zip(&grid.cells);
    rows.map(|(name, row)| {
        let cells = row.iter().map(cell);
        std::iter::once(shown_value(name)).chain(cells).collect()
    })
    .collect()
}

fn pair_number(
    grid: &PairGrid,
    figure: Compared,
    value: f64,
    asked: &Conditions,
    units: System,
) -> String {
    let shown = shown_figure(figure, value, &grid.base, asked, units).0;
    rounded(shown, held_decimals(asked))
}

/// What is to be doubted about the curves: of the model as it is, and of every value what is new with it.
#[must_use]
pub fn doubts_of_all(family: &Family) -> Vec<String> {
    let base = fibre_warning_lines(&family.base);
    let mut lines = base.clone();
    for variant in &family.variants {
        let new = fibre_warning_lines(&variant.study);
        let with = format!("warning with {}: ", shown_value(&variant.text));
        let new = new.iter().filter(|line| !base.contains(line));
        lines.extend(new.map(|line| line.replacen("warning: ", &with, 1)));
    }
    lines
}
