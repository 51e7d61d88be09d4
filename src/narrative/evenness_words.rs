//! Bands and chains over an ascending lift in words: what they do to the strong end, how even they make effort.
//!
//! In: a lift under plain weight, band, chain, both. Out: the words around the lecture's figures of them.

use super::figure_words::FigureWords;
use super::hardest_words::HARDEST_PART;
use super::prose::{capital, listed, percent};
use super::quantities::rounded;
use crate::overlay::Sticking;
use crate::study::{AgainstPlain, HARD_EFFORT, HungKind};
use crate::units::System;

/// The strong end of a lift that rises, short of lockout: what [`AgainstPlain::end_effort`] is the mean of.
pub(crate) const STRONG_END: &str = "80 to 90 % of the way";

/// What a setup of the lecture is called in its figures.
#[must_use]
pub(crate) fn hung_name(kind: HungKind) -> &'static str {
    match kind {
        HungKind::Plain => "plain weight",
        HungKind::Band => "with a band",
        HungKind::Chain => "with chains",
        HungKind::Both => "with both",
        HungKind::Cam => "with a cam",
    }
}

/// What a setup of a machine with a lever is called.
#[must_use]
pub(crate) fn machine_name(kind: HungKind) -> &'static str {
    match kind {
        HungKind::Plain => "round pulley",
        other => hung_name(other),
    }
}

/// The shaded stretch, which the figure is about.
#[must_use]
pub(crate) fn region_under(kind: HungKind) -> String {
    format!("{HARDEST_PART}, {}", hung_name(kind))
}

/// Plain weight against a band or a chain.
#[must_use]
pub fn against_plain_words(lifter: &str, both: &AgainstPlain, units: System) -> FigureWords {
    let study = &both.study;
    let [plain, hung] = [0, 1].map(|index| percent(both.end_effort(index)));
    let what = hung_name(both.last_kind());
    FigureWords {
        title: format!(
            "{} the strong end: effort from {STRONG_END} is {hung} instead of {plain}",
            loads_it(both.last_kind())
        ),
        subtitle: hung_against_plain(lifter, "", both, units),
        footnote: equally_hard(both, units),
        description: format!(
            "{} Effort from {STRONG_END} is {hung} {what} and {plain} with plain weight.",
            study.told(units).strength_description(),
        ),
        caption: hung_caption(both),
    }
}

/// Lifter, lift, how it is held, and both loads.
pub(super) fn hung_against_plain(
    lifter: &str,
    how: &str,
    both: &AgainstPlain,
    units: System,
) -> String {
    let told = both.study.told(units);
    let [plain, hung] = [0, 1].map(|index| told.hung_in_full(&both.study.setups[index]));
    let lift = both.study.movement_title.to_lowercase();
    format!("{lifter}, {lift}{how}: {hung} against {plain}")
}

/// The kind with its verb: chains hang in twos and more.
fn loads_it(kind: HungKind) -> &'static str {
    match kind {
        HungKind::Chain => "Chains load",
        HungKind::Both => "Band and chains load",
        HungKind::Cam => "A cam loads",
        HungKind::Plain | HungKind::Band => "A band loads",
    }
}

/// The same with what it does to effort.
fn makes(kind: HungKind) -> &'static str {
    match kind {
        HungKind::Chain => "Chains make",
        HungKind::Both => "Band and chains make",
        HungKind::Cam => "A cam makes",
        HungKind::Plain | HungKind::Band => "A band makes",
    }
}

/// What both loads have in common, how even the hung one makes effort, and that more even effort makes the hardest part
/// longer, where it does.
fn equally_hard(both: &AgainstPlain, units: System) -> String {
    let gained = both.gained_percent();
    let spread = if gained < 0.0 { "more" } else { "less" };
    format!(
        "{} at their hardest place. Effort spreads {} % {spread} over the range (standard deviation over mean){}.",
        both_take(both),
        rounded(gained.abs(), 0),
        longer_region(both, units).unwrap_or_default()
    )
}

/// What both loads take of the strength at their hardest place: loads are whole kilograms, so the shares may differ.
fn both_take(both: &AgainstPlain) -> String {
    let [plain, hung] = [0, 1].map(|index| percent(both.effort_span(index)[1]));
    if plain == hung {
        return format!("Both take {plain}");
    }
    let [low, high] = match both.effort_span(0)[1] < both.effort_span(1)[1] {
        true => [plain, hung],
        false => [hung, plain],
    };
    format!("Both take {} to {high}", low.trim_end_matches(" %"))
}

fn longer_region(both: &AgainstPlain, units: System) -> Option<String> {
    let told = both.study.told(units);
    let plain = both.study.setups[0].sticking?;
    let hung = both.study.setups[1].sticking?;
    let [before, now] = [plain, hung].map(|region| told.region_length(&region));
    let length = |region: &Sticking| region.to_range - region.from_range;
    let is_longer = both.gained_percent() > 0.0 && length(&hung) > length(&plain) && before != now;
    is_longer.then(|| {
        format!(
            ", so more of the way is within {} of the greatest, held still: {now} instead of {before}",
            percent(1.0 - both.study.region_share)
        )
    })
}

/// The kind as a bare word.
fn kind_word(kind: HungKind) -> &'static str {
    match kind {
        HungKind::Chain => "chains",
        HungKind::Both => "both",
        HungKind::Cam => "a cam",
        HungKind::Plain | HungKind::Band => "a band",
    }
}

/// Plain weight against a band or chains on a lift whose strength falls: whether effort becomes more even.
#[must_use]
pub fn evener_words(lifter: &str, both: &AgainstPlain, units: System) -> FigureWords {
    let study = &both.study;
    let [plain, hung] = [0, 1].map(|index| percent(both.mean_effort(index)));
    let what = kind_word(both.last_kind());
    let lift = study.movement_title.to_lowercase();
    let gained = both.gained_percent();
    let more = if gained < 0.0 { "less" } else { "more" };
    FigureWords {
        title: format!(
            "{} effort over the {lift} {more} even, by {} %",
            makes(both.last_kind()),
            rounded(gained.abs(), 0)
        ),
        subtitle: hung_against_plain(lifter, "", both, units),
        footnote: format!(
            "{} at their hardest place. Even: low standard deviation over mean.",
            both_take(both)
        ),
        description: format!(
            "{} Mean effort over the range is {hung} {} and {plain} with plain weight.",
            study.told(units).strength_description(),
            hung_name(both.last_kind()),
        ),
        caption: if gained >= 0.0 {
            hung_caption(both)
        } else {
            format!(
                "Where strength falls along the way, {what} add{} load just where the lifter has least. {}",
                if both.last_kind() == HungKind::Chain {
                    ""
                } else {
                    "s"
                },
                bar_beside_plain(both)
            ) + pulls_aslant(both)
        },
    }
}

/// What the grey line is, where a hung load is not held along the way; nothing where it is.
fn pulls_aslant(both: &AgainstPlain) -> &'static str {
    let along = both.study.capacity.values();
    match both
        .study
        .setups
        .iter()
        .any(|setup| setup.pulls_aslant(&along))
    {
        true => {
            " Grey: a load that pulls aslant is held with another strength than one along the way."
        }
        false => "",
    }
}

/// What the capacity in the direction of one load goes by, where it is another one.
#[must_use]
pub(crate) fn capacity_under(capacity: &str, setup: &str) -> String {
    match setup.strip_prefix("with ") {
        Some(hung) => format!("{capacity} along the pull of {hung}"),
        None => format!("{capacity} under {setup}"),
    }
}

/// What the effort under a setup goes by, beside its load.
#[must_use]
pub fn effort_under(setup: &str) -> String {
    format!("effort: {}", setup.to_lowercase())
}

fn hung_caption(both: &AgainstPlain) -> String {
    let grows = match both.last_kind() {
        HungKind::Chain => {
            "A chain weighs more with every link that leaves the floor: its load grows in a straight line with height."
        }
        HungKind::Plain | HungKind::Band | HungKind::Both | HungKind::Cam => {
            "A band pulls harder the farther it is stretched: its load grows along the way."
        }
    };
    format!("{grows} {}", bar_beside_plain(both))
}

/// Whether the bar under what hangs is lighter than the plain one, and where the load is less, if anywhere.
fn bar_beside_plain(both: &AgainstPlain) -> &'static str {
    /// Bars that differ by less are as heavy, kg.
    const ALIKE_KG: f64 = 0.25;
    let study = &both.study;
    let [plain, hung] = [0, 1].map(|index| {
        let setup = &study.setups[index].demand.setup;
        setup.plain_mass(&study.range.carrier).as_kg()
    });
    if plain - hung > ALIKE_KG {
        "The bar is lighter so that the hardest place is about as hard as with plain weight."
    } else {
        "The bar is as heavy: where the lift is hardest what hangs on it adds next to nothing."
    }
}

/// What hangs in each setup: "weights in all, bands and chains a side: plain 55 kg; with a band 37 kg + doubled 14 mm band".
fn loads_in_words(all: &AgainstPlain, units: System) -> String {
    let told = all.study.told(units);
    let setups = all.study.setups.iter().zip(&all.kinds);
    let loads = setups.map(|(setup, kind)| {
        let name = match kind {
            HungKind::Plain => "plain",
            hung => hung_name(*hung),
        };
        format!("{name} {}", told.hung_in_short(setup))
    });
    let loads: Vec<String> = loads.collect();
    format!(
        "weights in all, bands and chains a side: {}",
        loads.join("; ")
    )
}

/// Effort under plain weight, chain, band and both.
#[must_use]
pub fn flattening_words(lifter: &str, all: &AgainstPlain, units: System) -> FigureWords {
    let study = &all.study;
    let told: Vec<String> = study
        .setups
        .iter()
        .zip(&all.kinds)
        .filter(|(_, kind)| **kind != HungKind::Plain)
        .map(|(setup, kind)| {
            let percent = rounded(setup.flattening_percent.unwrap_or(0.0), 0);
            format!("{} {percent} %", kind_word(*kind).trim_start_matches("a "))
        })
        .collect();
    FigureWords {
        title: format!("Flattening against plain weight: {}", told.join(", ")),
        subtitle: format!(
            "{lifter}, {}, {} effort at the hardest place. Flattening: less spread (standard deviation over mean)",
            study.movement_title.to_lowercase(),
            percent(HARD_EFFORT)
        ),
        footnote: format!("{}.", capital(&loads_in_words(all, units))),
        description: format!(
            "Effort over the {} for four loads of equal hardest place. Flattening against plain weight: {}.",
            study.axis,
            listed(&told)
        ),
        caption: "The flatter the line, the more of the range asks for about as much as the hardest place. How much is gained depends on the lift and on the \
                  share of the load that bands and chains take."
            .to_owned(),
    }
}
