//! One part of a change of capacity in words: which muscle, through what, from where to where.
//!
//! In: a [`Cause`], one of its items, units. Out: "biceps long head: fibres 67 → 54 % of optimal length, 373 → 59 N".

use super::muscle_names::head_name;
use super::parameters::shown_value;
use super::prose::listed;
use super::quantities::rounded;
use super::shown_units::{ShownUnit, ShownUnits};
use crate::capacity::{ForceFactor, Lever, MuscleShare};
use crate::movement::Measure;
use crate::study::{Cause, CauseItem, Family, ItemOf, Spot, Variant, telling_levers};
use crate::units::System;

/// A signed number with a true minus sign: "+12.3", "−4".
#[must_use]
pub(crate) fn signed(value: f64, decimals: usize) -> String {
    let text = rounded(value, decimals);
    match text.strip_prefix('-') {
        Some(size) => format!("\u{2212}{size}"),
        None if text == "0" => text,
        None => format!("+{text}"),
    }
}

/// Decimals with which a change has two digits that matter, three at most.
#[must_use]
pub(crate) fn decimals_of(change: f64) -> usize {
    if change == 0.0 {
        return 0;
    }
    (1.0 - change.abs().log10().floor()).clamp(0.0, 3.0) as usize
}

/// Two values with as many decimals as it takes to see them differ: "67 → 54"; `None` if three more do not show it.
#[must_use]
pub(crate) fn from_to(values: [f64; 2], decimals: usize) -> Option<String> {
    (decimals..=decimals + 3).find_map(|decimals| {
        let [before, after] = values.map(|value| rounded(value, decimals));
        (before != after).then(|| format!("{before} \u{2192} {after}").replace('-', "\u{2212}"))
    })
}

/// Where a change is told.
#[must_use]
pub(crate) fn spot_in_words(spot: Spot) -> &'static str {
    match spot {
        Spot::Start => "at the start",
        Spot::Peak => "at the peak",
        Spot::Hardest => "at the hardest place",
        Spot::Middle => "in the middle",
        Spot::End => "at the end",
    }
}

/// An item with its figures: who, through what, from where to where.
#[must_use]
pub(crate) fn item_in_words(cause: &Cause, item: &CauseItem, units: System) -> String {
    match item.of {
        ItemOf::Muscle(index, factor) => {
            let muscle = &cause.account.muscles[index];
            let figures = factor_in_words(muscle, factor, units);
            let works_against = muscle.gain.iter().all(|gain| *gain < 0.0);
            let against = match factor {
                ForceFactor::Arm => "",
                _ if works_against => ", pulling against the lift",
                _ => "",
            };
            format!("{}{against}: {figures}", head_name(&muscle.name))
        }
        ItemOf::Factor(factor, count) => {
            let muscle = &cause.account.muscles[cause.foremost(factor)];
            format!(
                "{} of {count} muscles, most in {} ({})",
                factors_name(factor),
                head_name(&muscle.name),
                factor_in_words(muscle, factor, units)
            )
        }
        ItemOf::Lever => lever_in_words(cause, units),
        _ => item_name(cause, item),
    }
}

/// An item without figures: "biceps long head: fibre length".
#[must_use]
pub(crate) fn item_name(cause: &Cause, item: &CauseItem) -> String {
    match item.of {
        ItemOf::Muscle(index, factor) => {
            let muscle = &cause.account.muscles[index];
            format!("{}: {}", head_name(&muscle.name), factor_name(factor))
        }
        ItemOf::Factor(factor, count) => format!("{} of {count} muscles", factors_name(factor)),
        ItemOf::Lever => lever_name(cause).to_owned(),
        ItemOf::Supports => "support by floor, bench or grip".to_owned(),
        ItemOf::Limbs => "weight of the limbs".to_owned(),
        ItemOf::PassiveJoints => "passive torque of the joints".to_owned(),
        ItemOf::Rest => "what no part explains".to_owned(),
    }
}

/// A factor of a muscle's share.
#[must_use]
pub(crate) fn factor_name(factor: ForceFactor) -> &'static str {
    match factor {
        ForceFactor::Arm => "moment arm",
        ForceFactor::PeakForce => "peak force",
        ForceFactor::Length => "fibre length",
        ForceFactor::Speed => "fibre speed",
        ForceFactor::Pennation => "pennation",
        ForceFactor::Passive => "passive force",
        ForceFactor::Activation => "activation",
    }
}

fn factors_name(factor: ForceFactor) -> &'static str {
    match factor {
        ForceFactor::Arm => "moment arms",
        ForceFactor::PeakForce => "peak forces",
        ForceFactor::Length => "fibre lengths",
        ForceFactor::Speed => "fibre speeds",
        ForceFactor::Pennation => "pennation",
        ForceFactor::Passive => "passive forces",
        ForceFactor::Activation => "activations",
    }
}

/// A factor of a muscle from where to where, with the muscle's force where the factor is one of force.
fn factor_in_words(muscle: &MuscleShare, factor: ForceFactor, units: System) -> String {
    let told = match factor {
        ForceFactor::Arm => return arm_in_words(muscle, units),
        ForceFactor::PeakForce => {
            let peak = muscle.terms.map(|terms| terms.peak_n);
            let force = force_unit(units);
            return with_unit(
                "peak force",
                from_to(peak.map(|n| force.of(n)), 0),
                force.symbol,
            );
        }
        ForceFactor::Length => length_in_words(muscle),
        ForceFactor::Speed => speed_in_words(muscle),
        ForceFactor::Pennation => {
            let angle = |cos: f64| cos.clamp(-1.0, 1.0).acos().to_degrees();
            let angles = muscle.terms.map(|terms| angle(terms.cos_pennation[1]));
            with_unit("pennation", from_to(angles, 0), "deg")
        }
        ForceFactor::Passive => {
            let shares = muscle.terms.map(|terms| 100.0 * terms.passive[1]);
            with_unit("passive force", from_to(shares, 0), "% of peak force")
        }
        ForceFactor::Activation => {
            let shares = muscle.activation.map(|activation| 100.0 * activation);
            with_unit("activation", from_to(shares, 0), "%")
        }
    };
    let force = force_unit(units);
    match from_to(muscle.force_n.map(|n| force.of(n)), 0) {
        Some(forces) => format!(
            "{told}, {forces} {}{}",
            force.symbol,
            also_activation(muscle, factor)
        ),
        None => told,
    }
}

/// That a force is another one also because the muscle is activated otherwise; nothing where activation is told or
/// stays.
fn also_activation(muscle: &MuscleShare, factor: ForceFactor) -> String {
    if factor == ForceFactor::Activation {
        return String::new();
    }
    let shares = muscle
        .activation
        .map(|activation| rounded(100.0 * activation, 0));
    match shares {
        [before, after] if before != after => {
            format!(" with activation {before} \u{2192} {after} %")
        }
        _ => String::new(),
    }
}

fn force_unit(units: System) -> ShownUnit {
    units.load_unit(Measure::Force)
}

fn with_unit(name: &str, values: Option<String>, unit: &str) -> String {
    match values {
        Some(values) => format!("{name} {values} {unit}"),
        None => name.to_owned(),
    }
}

/// Fibre lengths; where those stayed and the curve is another one, the factors.
fn length_in_words(muscle: &MuscleShare) -> String {
    let lengths = muscle.fibres.map(|fibres| 100.0 * fibres.length_norm);
    match from_to(lengths, 0) {
        Some(lengths) => format!("fibres {lengths} % of optimal length"),
        None => {
            let factors = muscle.terms.map(|terms| 100.0 * terms.length_factor);
            with_unit("active force-length factor", from_to(factors, 0), "%")
        }
    }
}

/// Fibre speeds; where those stayed and the curve is another one, the factors.
fn speed_in_words(muscle: &MuscleShare) -> String {
    let speeds = muscle.fibres.map(|fibres| 100.0 * fibres.velocity_norm);
    match from_to(speeds, 0) {
        Some(speeds) => format!("fibre speed {speeds} % of its maximum"),
        None => {
            let factors = muscle.terms.map(|terms| 100.0 * terms.speed_factor);
            with_unit("force-velocity factor", from_to(factors, 0), "%")
        }
    }
}

/// The arm at the joint where it does most; one that works against the lift says so.
fn arm_in_words(muscle: &MuscleShare, units: System) -> String {
    let levers = telling_levers(&muscle.arms, 1.0);
    let Some(arm) = levers.first() else {
        return "moment arm".to_owned();
    };
    let against = arm.length_m.iter().all(|length| *length < 0.0);
    let sizes = arm.length_m.map(|m| if against { -m } else { m });
    let name = match (muscle.arms.len(), against) {
        (1, false) => "moment arm".to_owned(),
        (1, true) => "moment arm against the lift".to_owned(),
        (_, false) => format!("moment arm at the {}", arm.joint.name()),
        (_, true) => format!("moment arm against the lift at the {}", arm.joint.name()),
    };
    let unit = units.length_unit();
    with_unit(&name, from_to(sizes.map(|m| unit.of(m)), 1), unit.symbol)
}

/// The load's lever about the one or two joints where it does most.
fn lever_in_words(cause: &Cause, units: System) -> String {
    let unit = units.length_unit();
    let levers = telling_levers(&cause.account.levers, -1.0);
    let told = levers.iter().take(2).filter(|lever| {
        // A joint beside the first is told where it does at least a quarter of what the first does.
        lever.part.abs() >= 0.25 * levers[0].part.abs()
    });
    let told: Vec<String> = told
        .filter_map(|lever| lever_from_to(lever, unit))
        .collect();
    if told.is_empty() {
        return lever_name(cause).to_owned();
    }
    format!("{} {}", lever_name(cause), listed(&told))
}

/// The load's lever; where hands or feet push beside it, their pushes count in.
fn lever_name(cause: &Cause) -> &'static str {
    if cause.account.has_pushes {
        "lever of load and push"
    } else {
        "lever of the load"
    }
}

fn lever_from_to(lever: &Lever, unit: ShownUnit) -> Option<String> {
    let lengths = from_to(lever.length_m.map(|m| unit.of(m)), 1)?;
    let crosses = lever.length_m[0] * lever.length_m[1] < 0.0;
    let side = if crosses { " (to its other side)" } else { "" };
    Some(format!(
        "about the {} {lengths} {}{side}",
        lever.joint.name(),
        unit.symbol
    ))
}

/// The heads of the table of all parts.
#[must_use]
pub fn account_heads(family: &Family, units: System) -> Vec<String> {
    let unit = units.load_unit(family.base.range.measure).symbol;
    vec![
        family.parameter.path.clone(),
        "place".to_owned(),
        "what".to_owned(),
        format!("part {unit}"),
    ]
}

/// All parts of a change that can be seen, as rows of that table, and their sum.
#[must_use]
pub fn account_table(
    family: &Family,
    variant: &Variant,
    cause: &Cause,
    units: System,
) -> Vec<Vec<String>> {
    /// Decimals beyond those with which the change is told.
    const FINER: usize = 1;
    let unit = units.load_unit(family.base.range.measure);
    let change = unit.of(cause.account.change());
    let decimals = (decimals_of(change) + FINER).min(3);
    let row = |what: String, part: f64| {
        vec![
            shown_value(&variant.text),
            spot_in_words(cause.spot).to_owned(),
            what,
            signed(part, decimals),
        ]
    };
    let mut rows: Vec<Vec<String>> = Vec::new();
    let mut small = 0.0;
    for item in cause.single_items() {
        let part = unit.of(item.part);
        if rounded(part, decimals) == "0" {
            small += part;
        } else {
            rows.push(row(item_in_words(cause, &item, units), part));
        }
    }
    if rounded(small, decimals) != "0" {
        rows.push(row("all smaller parts".to_owned(), small));
    }
    rows.push(row("together".to_owned(), change));
    rows
}
