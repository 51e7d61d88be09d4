//! The laws of bands and chains in words.
//!
//! In: a band, a chain. Out: the words around the figures of their laws.

use super::figure_words::FigureWords;
use super::prose::percent;
use super::quantities::{QuantityWords, rounded};
use super::shown_units::{ShownUnit, ShownUnits};
use crate::movement::Measure;
use crate::resistance::{Band, Chain, ChainHang, Hang};
use crate::units::{Length, System};

/// Distance along which a band is pulled.
pub(crate) const BAND_LENGTH: &str = "Distance from anchor to bar";
/// What a band pulls with.
pub(crate) const BAND_PULL: &str = "Pull of one band";
/// Height of the end of a bar from which a chain hangs.
pub(crate) const CHAIN_HEIGHT: &str = "Height of the hook above the floor";
/// What a bar carries of a chain.
pub(crate) const CHAIN_WEIGHT: &str = "Weight in the air";
/// A loop pulled as it is.
pub(crate) const SINGLE: &str = "single";
/// A loop folded over the bar.
pub(crate) const DOUBLED: &str = "doubled";
/// A chain by its end.
pub(crate) const STRAIGHT: &str = "by its end";
/// A chain by its middle.
pub(crate) const LOOPED: &str = "by its middle";
/// Where a band begins to pull.
pub(crate) const TAUT: &str = "taut";

/// A length far from nothing without decimals.
fn whole(m: f64, units: System) -> String {
    let unit = units.length_unit();
    format!("{} {}", rounded(unit.of(m), 0), unit.symbol)
}

/// The length at which pulls are told: both ways of hanging reach it, doubled the band may then be pulled no farther.
pub(crate) fn told_length_m(band: &Band) -> f64 {
    band.safe_stretch() * band.taut_length_m(Hang::Doubled)
}

/// A pull at a marked place.
pub(crate) fn told_pull(pull: f64, unit: ShownUnit) -> String {
    format!("{} {}", rounded(pull, 0), unit.symbol)
}

/// A piece of the built-in lists by its size, "22 mm loop band"; any other by its own name.
fn called(name: &str, before: &str, kind: &str) -> String {
    let size = name
        .strip_prefix(before)
        .and_then(|rest| rest.strip_suffix("mm"));
    size.map_or_else(|| name.to_owned(), |size| format!("{size} mm {kind}"))
}

/// A band's tension over its length.
pub(crate) fn band_law_words(band: &Band, units: System) -> FigureWords {
    let force = units.load_unit(Measure::Force);
    let taut_m = band.taut_length_m(Hang::Single);
    let told_m = told_length_m(band);
    let pull = |hang| told_pull(force.of(band.force_n(told_m, hang)), force);
    let (low, high) = band.spread_n(1.0);
    FigureWords {
        title: format!(
            "A band pulls nothing while slack, and at {} {} single, {} doubled",
            whole(told_m, units),
            pull(Hang::Single),
            pull(Hang::Doubled)
        ),
        subtitle: format!(
            "{}, flat length {}",
            called(band.name(), "loop-", "loop band"),
            units.tape(band.rest_length())
        ),
        footnote: format!(
            "Shaded: what another band of the same label may pull, {} to {} of it. Curves end at the longest stretch that is planned with, {} \
             times the slack length.",
            percent(low),
            percent(high),
            rounded(band.safe_stretch(), 1)
        ),
        description: format!(
            "Pull over length of one band: taut from {} single and from {} doubled, steep at first, then flatter.",
            whole(taut_m, units),
            whole(band.taut_length_m(Hang::Doubled), units)
        ),
        caption: "Rubber pulls by its stretch, its length over its slack length. Doubled, twice as many strands of half the length are stretched twice as \
                  much by the same way of the bar."
            .to_owned(),
    }
}

/// A chain's weight over the height of its hook.
pub(crate) fn chain_law_words(chain: &Chain, units: System) -> FigureWords {
    let force = units.load_unit(Measure::Force);
    let at = |m: f64, hang| force.of(chain.hanging_at(m, hang).force_n(0.0));
    let whole_m = chain.length().as_m() + chain.leader().length.as_m();
    let step_m = match units {
        System::Metric => 0.1,
        System::Us => Length::from_in(4.0).as_m(),
    };
    let from_m = chain.leader().length.as_m();
    let step = |hang| rounded(at(from_m + step_m, hang) - at(from_m, hang), 1);
    FigureWords {
        title: format!(
            "A chain adds with every {} of height {} {u} by its end, {} {u} by its middle",
            whole(step_m, units),
            step(ChainHang::Straight),
            step(ChainHang::DoubleLooped),
            u = force.symbol
        ),
        subtitle: format!("{}, {} long", called(chain.name(), "chain-", "chain"), units.tape(chain.length())),
        footnote: "Weight only, held still: links that are picked up in motion take a little more.".to_owned(),
        description: format!(
            "Weight of one chain in the air over the height of its hook: by its end it grows up to {} and stays at {} {}, by its middle it reaches the \
             same at half that height.",
            whole(whole_m, units),
            rounded(at(whole_m, ChainHang::Straight), 0),
            force.symbol
        ),
        caption: "Only links in the air are load. Hung by its middle a chain gives twice as much with the same height, and stops at half of it.".to_owned(),
    }
}
