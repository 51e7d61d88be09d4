//! Implements in words: what their kinds are called, what one item of a setup is, where it is tied.
//!
//! In: items, anchors, fits. Out: words; masses and lengths in the units asked for.

use super::loads::exact_mass;
use super::quantities::{QuantityWords, rounded};
use crate::error::ImplementKind;
use crate::grammar::IMPLEMENTS;
use crate::resistance::{
    Anchor, Assistance, ChainHang, EccentricOnly, FittedPull, Hang, HangingSide, HungBand,
    HungChain, Item, NAMED_ANCHORS, PullShape, Setup, Weight,
};
use crate::units::{Force, System};

/// What the help says of an option that names any implement.
#[must_use]
pub fn implements_help() -> String {
    let kinds: Vec<&str> = IMPLEMENTS.iter().map(|row| row.word).collect();
    format!(
        "Any other implement: \"cable 40 kg, ratio 2, from rack-high\", \"spotter 150 N\", \"cam fitted\" (kinds: {})",
        kinds.join(", ")
    )
}

/// The kind of implement in one or two words, with its article.
#[must_use]
pub fn kind_with_article(kind: ImplementKind) -> &'static str {
    match kind {
        ImplementKind::Load => "a plain load",
        ImplementKind::Bar => "a bar",
        ImplementKind::Plates | ImplementKind::OnePlate => "a plate",
        ImplementKind::Collars => "a pair of collars",
        ImplementKind::Dumbbell => "a dumb-bell",
        ImplementKind::Belt => "a belt with plates",
        ImplementKind::BodyMass => "body mass",
        ImplementKind::Band => "a band",
        ImplementKind::Chain => "a chain",
        ImplementKind::Cable => "a cable",
        ImplementKind::Cam => "a cam",
        ImplementKind::Lever => "a lever machine",
        ImplementKind::Sled => "a sled",
        ImplementKind::Lowering => "a load of the lowering phase",
        ImplementKind::Spotter | ImplementKind::Counterweight => "assistance",
    }
}

/// The setup in words: its name, or its items.
#[must_use]
pub fn setup_in_words(setup: &Setup, units: System) -> String {
    if !setup.name.is_empty() {
        return setup.name.clone();
    }
    let items: Vec<String> = setup
        .items
        .iter()
        .map(|item| item_in_words(item, units))
        .collect();
    if items.is_empty() {
        "no load".to_owned()
    } else {
        items.join(" + ")
    }
}

/// An item in words, as a label of its part.
#[must_use]
pub fn item_in_words(item: &Item, units: System) -> String {
    let mass = |mass| exact_mass(units, mass, 2);
    match item {
        Item::Weight(weight) => weight_in_words(weight, units),
        Item::Band(hung) => band_in_words(hung, units),
        Item::Chain(hung) => chain_in_words(hung),
        Item::Cable(cable) => format!("{} stack on a cable", mass(cable.stack())),
        Item::Cam(_) => "cam".to_owned(),
        Item::Lever(lever) => format!("{} on a lever", mass(lever.mass())),
        Item::Sled(sled) => format!("{} sled", mass(sled.mass())),
        Item::EccentricOnly(EccentricOnly::Hung(extra)) => {
            format!("{} in lowering only", mass(*extra))
        }
        Item::EccentricOnly(EccentricOnly::Pushed(force)) => {
            format!("{} pushed in lowering only", exact_force(units, *force))
        }
        Item::Assistance(Assistance::Counterweight(weight)) => {
            format!("{} counterweight", mass(*weight))
        }
        Item::Assistance(_) => "spotter".to_owned(),
    }
}

fn weight_in_words(weight: &Weight, units: System) -> String {
    let mass = |mass: &_| exact_mass(units, *mass, 2);
    match weight {
        Weight::Load(load) => format!("{} load", mass(load)),
        Weight::Bar(bar) => format!("{} bar", mass(bar)),
        Weight::Plates { each, pairs } => format!("{pairs} × {} a side", mass(each)),
        Weight::OnePlate { mass: plate, side } => {
            format!("{} on the {} only", mass(plate), side_word(*side))
        }
        Weight::Collars { each } => format!("collars of {}", mass(each)),
        Weight::Dumbbell(each) => format!("{} dumb-bell", mass(each)),
        Weight::Belt(hung) => format!("{} on a belt", mass(hung)),
        Weight::BodyMass(body) => format!("{} of body mass", mass(body)),
    }
}

fn side_word(side: HangingSide) -> &'static str {
    match side {
        HangingSide::Both => "both",
        HangingSide::Left => "left",
        HangingSide::Right => "right",
        HangingSide::Middle => "middle",
    }
}

fn band_in_words(hung: &HungBand, units: System) -> String {
    // How a band hangs that nobody has put up yet is not known; a single one is the usual one.
    let how = match hung.hang {
        Hang::Auto | Hang::Single => String::new(),
        hang => format!(", {}", hang_word(hang)),
    };
    format!(
        "{} from {}{how}",
        counted(hung.count, hung.band.name(), hung.side),
        anchor_in_words(&hung.anchor, units)
    )
}

fn chain_in_words(hung: &HungChain) -> String {
    let how = match hung.hang {
        ChainHang::Straight => "",
        ChainHang::DoubleLooped => ", double-looped",
    };
    format!("{}{how}", counted(hung.count, hung.chain.name(), hung.side))
}

fn counted(count: u32, name: &str, side: HangingSide) -> String {
    let side = match side {
        HangingSide::Both => "a side",
        HangingSide::Left => "on the left",
        HangingSide::Right => "on the right",
        HangingSide::Middle => "in the middle",
    };
    format!("{count} × {name} {side}")
}

fn exact_force(units: System, force: Force) -> String {
    match units {
        System::Metric => format!("{} N", rounded(force.as_n(), 2)),
        System::Us => format!("{} lbf", rounded(force.as_lbf(), 2)),
    }
}

/// The word for a band's way of hanging; one that nobody resolved counts as single.
#[must_use]
pub fn hang_word(hang: Hang) -> &'static str {
    match hang {
        Hang::Auto | Hang::Single => "single",
        Hang::Doubled => "doubled",
        Hang::Choked => "choked",
    }
}

/// The word for a chain's way of hanging.
#[must_use]
pub fn chain_hang_word(hang: ChainHang) -> &'static str {
    match hang {
        ChainHang::Straight => "straight",
        ChainHang::DoubleLooped => "double-looped",
    }
}

/// An anchor in words: "floor", "220 cm high", "10 cm high, 20 cm behind".
#[must_use]
pub fn anchor_in_words(anchor: &Anchor, units: System) -> String {
    let (height, offset) = (anchor.height(), anchor.offset());
    let same = |value_cm: f64, cm: f64| (value_cm - cm).abs() < 1e-9;
    let named = NAMED_ANCHORS.iter().find(|(_, height_cm, offset_cm)| {
        same(height.as_cm(), *height_cm) && same(offset.as_cm(), *offset_cm)
    });
    if let Some((name, _, _)) = named {
        return (*name).to_owned();
    }
    let high = format!("{} high", units.short_length(height));
    let aside = || units.short_length(offset * offset.as_m().signum());
    match offset.as_m() {
        0.0 => high,
        metres if metres > 0.0 => format!("{high}, {} ahead", aside()),
        _ => format!("{high}, {} behind", aside()),
    }
}

/// A fit to a band in one sentence: how many readings, how well met.
#[must_use]
pub fn fit_in_words(fitted: &FittedPull, units: System) -> String {
    let pulls_n = fitted.readings().iter().map(|reading| reading.force.as_n());
    let largest_n = pulls_n.fold(0.0, f64::max);
    let form = match fitted.shape() {
        PullShape::TwoConstants { .. } => "the rubber law",
        PullShape::Bent { .. } => "a bent rubber law",
    };
    let misfit = match units {
        System::Metric => format!("{} N", rounded(fitted.misfit().as_n(), 1)),
        System::Us => format!("{} lbf", rounded(fitted.misfit().as_lbf(), 1)),
    };
    format!(
        "{} readings fitted by {form}, rest length {}, misfit {misfit} ({} % of the largest reading)",
        fitted.readings().len(),
        units.short_length(fitted.rest_length()),
        rounded(100.0 * fitted.misfit().as_n() / largest_n, 1),
    )
}
