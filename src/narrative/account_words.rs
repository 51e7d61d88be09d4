//! One part of a change of capacity in words: which muscle, through what, from where to where.
//!
//! In: a [`Cause`], one of its items, units. Out: "biceps long head: fibres 67 → 54 % of optimal length, 373 → 59 N".

use super::changed_numbers::{decimals_of, from_to, signed};
use super::lever_lengths::{Turned, lengths_in_words};
use super::muscle_names::head_name;
use super::parameters::shown_value;
use super::quantities::{QuantityWords, rounded, with_minus};
use super::shown_units::{ShownUnit, ShownUnits};
use crate::capacity::{ForceFactor, MuscleShare};
use crate::movement::Measure;
use crate::study::{Cause, CauseItem, Family, ItemOf, OtherCurves, Spot, Variant};
use crate::units::{Length, System};

/// Where a change is told: the peak's place is the one before the change, and is told with it; so is that it lies beside the
/// sample where the parts are worked out, if the two read otherwise.
#[must_use]
pub(crate) fn spot_in_words(cause: &Cause, units: System) -> String {
    let former = |what: &str| {
        let [place, former] =
            [cause.axis_value, cause.former_value].map(|value| match cause.measure {
                Measure::Torque => format!("{} deg", with_minus(&rounded(value, 1))),
                Measure::Force => units.short_length(Length::from_cm(value)),
            });
        let beside = if place == former { "" } else { "close to " };
        format!("{beside}where {what} was, at {place}")
    };
    match cause.spot {
        Spot::Start => "at the start".to_owned(),
        Spot::Peak => former("the peak"),
        Spot::Hardest => former("the hardest place"),
        Spot::Middle => "in the middle".to_owned(),
        Spot::End => "at the end".to_owned(),
    }
}

/// The same at the head of a clause.
#[must_use]
pub(crate) fn spot_before(cause: &Cause, units: System) -> String {
    let place = spot_in_words(cause, units);
    if place.contains(',') {
        place + ","
    } else {
        place
    }
}

/// An item with its figures: who, through what, from where to where.
#[must_use]
pub(crate) fn item_in_words(
    cause: &Cause,
    item: &CauseItem,
    unit: ShownUnit,
    units: System,
) -> String {
    let lengths = |turned: &Turned<'_>| lengths_in_words(cause, turned, unit, units);
    match item.of {
        ItemOf::Muscle(index, ForceFactor::Arm) => {
            let muscle = &cause.account.muscles[index];
            let name = head_name(&muscle.name);
            format!("{name}: {}", lengths(&Turned::by_muscle(muscle)))
        }
        ItemOf::Muscle(index, factor) => {
            let muscle = &cause.account.muscles[index];
            let figures = factor_in_words((muscle, cause.curves), factor, units);
            let works_against = muscle.gain.iter().all(|gain| *gain < -ROUNDING);
            let against = if works_against {
                ", pulling against the lift"
            } else {
                ""
            };
            format!("{}{against}: {figures}", head_name(&muscle.name))
        }
        ItemOf::Factor(factor, count) => {
            let muscle = &cause.account.muscles[cause.foremost(factor)];
            let name = head_name(&muscle.name);
            let part = unit.of(muscle.part(factor));
            let figures = match factor {
                ForceFactor::Arm => signed(part, decimals_of(unit.of(item.part))),
                _ => factor_in_words((muscle, cause.curves), factor, units),
            };
            let factors = factors_name(cause.curves, factor);
            format!("{factors} of {count} muscles, most in {name} ({figures})")
        }
        ItemOf::Lever => lengths(&Turned::by_load(&cause.account)),
        _ => item_name(cause, item),
    }
}

/// An item without figures: "biceps long head: fibre length".
#[must_use]
pub(crate) fn item_name(cause: &Cause, item: &CauseItem) -> String {
    match item.of {
        ItemOf::Muscle(index, factor) => {
            let muscle = &cause.account.muscles[index];
            let factor = factor_of(cause.curves, factor);
            format!("{}: {factor}", head_name(&muscle.name))
        }
        ItemOf::Factor(factor, count) => {
            format!("{} of {count} muscles", factors_name(cause.curves, factor))
        }
        ItemOf::Others(factor, count) => {
            let factors = factors_name(cause.curves, factor);
            match cause.having(factor) > count {
                true => format!("{factors} of {count} other muscles"),
                false => format!("{factors} of {count} muscles"),
            }
        }
        ItemOf::Lever => Turned::by_load(&cause.account).name.to_owned(),
        ItemOf::Supports => "support by floor, bench or grip".to_owned(),
        ItemOf::Limbs => "weight of the limbs".to_owned(),
        ItemOf::PassiveJoints => "passive moment of the joints".to_owned(),
        ItemOf::Rest => "what no part explains".to_owned(),
    }
}

/// What a force-velocity or force-length curve gives, where that is told in the place of the fibre's state.
const VELOCITY_FACTOR: &str = "force-velocity factor";
const LENGTH_FACTOR: &str = "active force-length factor";

/// A factor of a muscle's share; of a curve that is another one, what it gives.
fn factor_of(curves: OtherCurves, factor: ForceFactor) -> &'static str {
    match factor {
        ForceFactor::Arm => "moment arm",
        ForceFactor::PeakForce => "peak force",
        ForceFactor::Length if curves.length => LENGTH_FACTOR,
        ForceFactor::Length => "fibre length",
        ForceFactor::Speed if curves.velocity => VELOCITY_FACTOR,
        ForceFactor::Speed => "fibre speed",
        ForceFactor::Pennation => "pennation",
        ForceFactor::Passive => "passive force",
        ForceFactor::Activation => "activation",
    }
}

fn factors_name(curves: OtherCurves, factor: ForceFactor) -> &'static str {
    match factor {
        ForceFactor::Length if curves.length => "active force-length factors",
        ForceFactor::Speed if curves.velocity => "force-velocity factors",
        ForceFactor::Arm => "moment arms",
        ForceFactor::PeakForce => "peak forces",
        ForceFactor::Length => "fibre lengths",
        ForceFactor::Speed => "fibre speeds",
        ForceFactor::Pennation => "pennation",
        ForceFactor::Passive => "passive forces",
        ForceFactor::Activation => "activations",
    }
}

/// Capacity per newton of a muscle's force that is only rounding: it neither helps nor hinders, 1 or m.
const ROUNDING: f64 = 1.0e-9;

/// A factor of a muscle's force from where to where, with the force.
fn factor_in_words(
    (muscle, curves): (&MuscleShare, OtherCurves),
    factor: ForceFactor,
    units: System,
) -> String {
    let told = match factor {
        ForceFactor::Arm => factor_of(curves, factor).to_owned(),
        ForceFactor::PeakForce => {
            let peak = muscle.terms.map(|terms| terms.peak_n);
            let force = force_unit(units);
            return with_unit(
                "peak force",
                from_to(peak.map(|n| force.of(n)), 0),
                force.symbol,
            );
        }
        ForceFactor::Length => length_in_words(muscle, curves.length),
        ForceFactor::Speed => speed_in_words(muscle, curves.velocity),
        ForceFactor::Pennation => {
            let angle = |cos: f64| cos.clamp(-1.0, 1.0).acos().to_degrees();
            let angles = muscle.terms.map(|terms| angle(terms.cos_pennation[1]));
            with_unit("pennation", from_to(angles, 0), "deg")
        }
        ForceFactor::Passive => {
            let shares = passive_shares(muscle).map(|share| 100.0 * share);
            with_unit("passive force", from_to(shares, 0), "% of peak force")
        }
        ForceFactor::Activation => {
            let shares = muscle.activation.map(|activation| 100.0 * activation);
            with_unit("activation", from_to(shares, 0), "%")
        }
    };
    if !tells_the_force(muscle, factor) {
        return told;
    }
    let force = force_unit(units);
    match from_to(muscle.force_n.map(|n| force.of(n)), 0) {
        Some(forces) => format!(
            "{told}, {}{forces} {}{}",
            with_others(muscle, factor),
            force.symbol,
            also_activation(muscle, factor)
        ),
        None => told,
    }
}

/// Passive force before and after as shares of the peak force, as activated as the muscle is.
fn passive_shares(muscle: &MuscleShare) -> [f64; 2] {
    std::array::from_fn(|at| muscle.terms[at].passive_share(muscle.activation[at]))
}

/// "in all " before a force that other parts than this one are in: the passive one, or what another factor did to it.
fn with_others(muscle: &MuscleShare, factor: ForceFactor) -> &'static str {
    /// Less of the peak force is told nowhere.
    const NONE: f64 = 0.005;
    /// Less of this part than that another part may be: the force is this factor's then.
    const LITTLE: f64 = 0.1;
    let has_passive = passive_shares(muscle).iter().any(|share| *share > NONE);
    let own = muscle.part(factor).abs();
    let others = of_the_force().filter(|other| *other != factor);
    let changed_it = others
        .map(|other| muscle.part(other).abs())
        .any(|part| part > LITTLE * own);
    match factor {
        ForceFactor::Passive if !changed_it => "",
        _ if has_passive || changed_it => "in all ",
        _ => "",
    }
}

/// The factors that a muscle's force is made of.
fn of_the_force() -> impl Iterator<Item = ForceFactor> {
    ForceFactor::ALL
        .into_iter()
        .filter(|factor| *factor != ForceFactor::Arm)
}

/// Whether a muscle's force before and after stands beside this factor: once a muscle, beside the largest of its parts that
/// are of the force.
fn tells_the_force(muscle: &MuscleShare, factor: ForceFactor) -> bool {
    let size = |factor: &ForceFactor| muscle.part(*factor).abs();
    let shown = of_the_force().filter(|factor| *factor != ForceFactor::PeakForce);
    let largest = shown.max_by(|a, b| size(a).total_cmp(&size(b)).then(b.cmp(a)));
    largest == Some(factor)
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

/// Fibre lengths; where those stayed or the curve is another one, the factors.
fn length_in_words(muscle: &MuscleShare, is_other_curve: bool) -> String {
    let lengths = muscle.fibres.map(|fibres| 100.0 * fibres.length_norm);
    match from_to(lengths, 0).filter(|_| !is_other_curve) {
        Some(lengths) => format!("fibres {lengths} % of optimal length"),
        None => {
            let factors = muscle.terms.map(|terms| 100.0 * terms.length_factor);
            with_unit(LENGTH_FACTOR, from_to(factors, 0), "%")
        }
    }
}

/// Fibre speeds; where those stayed or the curve is another one, the factors.
fn speed_in_words(muscle: &MuscleShare, is_other_curve: bool) -> String {
    let speeds = muscle.fibres.map(|fibres| 100.0 * fibres.velocity_norm);
    match from_to(speeds, 0).filter(|_| !is_other_curve) {
        Some(speeds) => format!("fibre speed {speeds} % of its maximum"),
        None => {
            let factors = muscle.terms.map(|terms| 100.0 * terms.speed_factor);
            with_unit(VELOCITY_FACTOR, from_to(factors, 0), "%")
        }
    }
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
            spot_in_words(cause, units),
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
            rows.push(row(item_in_words(cause, &item, unit, units), part));
        }
    }
    if rounded(small, decimals) != "0" {
        rows.push(row("all smaller parts".to_owned(), small));
    }
    rows.push(row("together".to_owned(), change));
    rows
}
