//! Bands and chains over an ascending lift in words: what they do to the strong end, how even they make effort.
//!
//! In: a lift under plain weight, band, chain, both. Out: the words around the lecture's figures of them.

use super::figure_words::FigureWords;
use super::prose::{capital, listed, percent};
use super::quantities::rounded;
use super::strength_words::STICKING_REGION;
use crate::overlay::Sticking;
use crate::study::{AgainstPlain, HARD_EFFORT, HungKind};
use crate::units::System;

/// What is said to the sticking region of a plain weight.
pub(crate) const STICKING_CAPTION: &str = "Effort is demand over capacity. Around its greatest value lies the sticking region: the load passes there or \
     the lift fails. It says nothing about the rest of the range, where the same load is light.";

/// What a cam shaped after the curve does, told in place of a hardest place that is none.
const SAME_SHARE: &str =
    "Over the cam the load is about the same share of what the lifter can hold at every place.";

/// The strong end of a lift that rises, short of lockout: what [`AgainstPlain::end_effort`] is the mean of.
const STRONG_END: &str = "80 to 90 %";

/// What a setup of the lecture is called in its figures.
#[must_use]
pub(crate) fn hung_name(kind: HungKind) -> &'static str {
    match kind {
        HungKind::Plain => "plain weight",
        HungKind::Band => "with a band",
        HungKind::Chain => "with a chain",
        HungKind::Both => "with both",
        HungKind::Cam => "with a cam",
    }
}

/// The shaded stretch, which the figure is about.
#[must_use]
pub(crate) fn region_under(kind: HungKind) -> String {
    format!("{STICKING_REGION} {}", hung_name(kind))
}

/// Plain weight against a band or a chain.
#[must_use]
pub fn against_plain_words(lifter: &str, both: &AgainstPlain, units: System) -> FigureWords {
    let study = &both.study;
    let [plain, hung] = [0, 1].map(|index| percent(both.end_effort(index)));
    let what = kind_word(both.last_kind());
    FigureWords {
        title: format!(
            "A {what} loads the strong end: effort from {STRONG_END} of the way is {hung} instead of {plain}"
        ),
        subtitle: hung_against_plain(lifter, both, units),
        footnote: equally_hard(both, units),
        description: format!(
            "{} Effort from {STRONG_END} of the range is {hung} with the {what} and {plain} with plain weight.",
            study.told(units).strength_description(),
        ),
        caption: hung_caption(both),
    }
}

/// Lifter, lift and both loads.
fn hung_against_plain(lifter: &str, both: &AgainstPlain, units: System) -> String {
    let told = both.study.told(units);
    let [plain, hung] = [0, 1].map(|index| told.hung_in_full(&both.study.setups[index]));
    let lift = both.study.movement_title.to_lowercase();
    let cut = match both.last_kind() {
        HungKind::Cam => " cut to this lifter's curve,",
        _ => "",
    };
    format!("{lifter}, {lift}: {hung}{cut} against {plain}")
}

/// What both loads have in common, how even the hung one makes effort, and that more even effort makes the sticking region
/// longer, where it does.
fn equally_hard(both: &AgainstPlain, units: System) -> String {
    let gained = both.gained_percent();
    let spread = if gained < 0.0 { "more" } else { "less" };
    format!(
        "Both take {} at their hardest place. Effort spreads {} % {spread} over the range (deviation over mean){}.",
        percent(HARD_EFFORT),
        rounded(gained.abs(), 0),
        longer_region(both, units).unwrap_or_default()
    )
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
            ", so it stays within {} of its greatest for longer: {now} instead of {before}",
            percent(1.0 - both.study.region_share)
        )
    })
}

/// The kind as a bare word.
fn kind_word(kind: HungKind) -> &'static str {
    match kind {
        HungKind::Chain => "chain",
        HungKind::Both => "both",
        HungKind::Cam => "cam",
        HungKind::Plain | HungKind::Band => "band",
    }
}

/// Plain weight against a band or a cam on a lift whose strength falls: whether effort becomes more even.
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
            "A {what} makes effort over the {lift} {more} even, by {} %",
            rounded(gained.abs(), 0)
        ),
        subtitle: hung_against_plain(lifter, both, units),
        footnote: equally_hard(both, units),
        description: format!(
            "{} Mean effort over the range is {hung} with the {what} and {plain} with plain weight.",
            match both.last_kind() {
                HungKind::Cam => SAME_SHARE.to_owned(),
                _ => study.told(units).strength_description(),
            },
        ),
        caption: match both.last_kind() {
            HungKind::Cam => {
                "A cam changes the moment arm of the stack with the angle. This one is shaped after this lifter's own strength curve; \
                 a machine's is shaped after nobody's in particular."
                    .to_owned()
            }
            _ if gained >= 0.0 => hung_caption(both),
            _ => format!(
                "Where strength falls along the way, a {what} adds load just where the lifter has least. {}",
                bar_beside_plain(both)
            ),
        },
    }
}

/// What the capacity in the direction of one load goes by, where it is another one.
#[must_use]
pub(crate) fn capacity_under(capacity: &str, setup: &str) -> String {
    let joint = if setup.starts_with("with ") {
        ""
    } else {
        "under "
    };
    format!("{capacity} {joint}{setup}")
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

/// What hangs in each setup: "plain weight 55 kg; with a band 37 kg + doubled 14 mm band; bands and chains a side".
fn loads_in_words(all: &AgainstPlain, units: System) -> String {
    let told = all.study.told(units);
    let setups = all.study.setups.iter().zip(&all.kinds);
    let loads =
        setups.map(|(setup, kind)| format!("{} {}", hung_name(*kind), told.hung_in_short(setup)));
    format!("{} (a side)", loads.collect::<Vec<String>>().join("; "))
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
            format!("{} {percent} %", kind_word(*kind))
        })
        .collect();
    FigureWords {
        title: format!("Flattening against plain weight: {}", told.join(", ")),
        subtitle: format!(
            "{lifter}, {}, {} effort at the hardest place. Flattening: less spread (deviation over mean)",
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
