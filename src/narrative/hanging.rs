//! Bands and chains of a setup in words that a coach hangs them by.
//!
//! In: items, the names of a gym's anchors. Out: how many of which, tied where, and what the words mean.

use super::quantities::QuantityWords;
use crate::error::{HungPair, LoopWay};
use crate::resistance::{Anchor, ChainHang, Hang, Item};
use crate::setups::hung_pairs;
use crate::units::{Length, System};
use std::collections::BTreeMap;

/// The bands and chains of a setup, one in words each, by the gym's own names of its anchors.
#[must_use]
pub fn hung_pieces(
    items: &[Item],
    anchors: &BTreeMap<String, Anchor>,
    units: System,
) -> Vec<String> {
    let pairs = hung_pairs(items, anchors);
    pairs
        .iter()
        .map(|pair| pair_in_words(pair, units))
        .collect()
}

/// The same by the names of the anchors alone, without where they stand: cards are short.
#[must_use]
pub(super) fn hung_by_name(
    items: &[Item],
    anchors: &BTreeMap<String, Anchor>,
    units: System,
) -> Vec<String> {
    let pairs = hung_pairs(items, anchors);
    let by_name = pairs.iter().map(|pair| match pair {
        HungPair::Band { anchor, .. } => pair_from(pair, anchor, units),
        HungPair::Chain { .. } => pair_from(pair, "", units),
    });
    by_name.collect()
}

/// The bands and chains of a setup in words; "none" where there are none.
#[must_use]
pub fn hung_in_words(items: &[Item], anchors: &BTreeMap<String, Anchor>, units: System) -> String {
    let words = hung_pieces(items, anchors, units);
    if words.is_empty() {
        "none".to_owned()
    } else {
        words.join(" + ")
    }
}

/// A pair of bands or chains in words.
pub(crate) fn pair_in_words(pair: &HungPair, units: System) -> String {
    let place = match pair {
        HungPair::Band {
            anchor,
            height,
            offset,
            ..
        } => placed(anchor, *height, *offset, units),
        HungPair::Chain { .. } => String::new(),
    };
    pair_from(pair, &place, units)
}

/// A pair in words, bands from a place.
fn pair_from(pair: &HungPair, place: &str, units: System) -> String {
    match pair {
        HungPair::Band {
            count, name, way, ..
        } => {
            let how = match way {
                LoopWay::Single => "single",
                LoopWay::Doubled => "doubled",
                LoopWay::Choked => "choked",
            };
            format!("{count} × {name} a side from {place}, {how}")
        }
        HungPair::Chain {
            count,
            name,
            is_double_looped,
            leader,
        } => {
            let how = if *is_double_looped {
                "double-looped"
            } else {
                "straight"
            };
            let leader = on_a_leader(*leader, units);
            format!("{count} × {name} a side, {how}{leader}")
        }
    }
}

/// " on a leader of 40 cm"; empty without one.
pub(super) fn on_a_leader(length: Length, units: System) -> String {
    if length.as_m() > 0.0 {
        format!(" on a leader of {}", units.tape(length))
    } else {
        String::new()
    }
}

/// An anchor's name with where it stands, so that another rack can be matched to it.
fn placed(name: &str, height: Length, offset: Length, units: System) -> String {
    let mut place = Vec::new();
    if height.as_m() > 0.0 {
        place.push(format!("{} high", units.tape(height)));
    }
    if offset.as_m() != 0.0 {
        let side = if offset.as_m() > 0.0 {
            "ahead"
        } else {
            "behind"
        };
        let aside = Length::from_m(offset.as_m().abs());
        place.push(format!("{} {side}", units.tape(aside)));
    }
    if place.is_empty() {
        name.to_owned()
    } else {
        format!("{name} ({})", place.join(", "))
    }
}

/// What the words for ways of hanging mean, one sentence for each that these items use.
#[must_use]
pub fn hangs_explained(items: &[&Item]) -> Vec<&'static str> {
    let uses = |is_used: &dyn Fn(&Item) -> bool| items.iter().any(|item| is_used(item));
    let band = |hang| uses(&|item| matches!(item, Item::Band(hung) if hung.hang == hang));
    let chain = |hang| uses(&|item| matches!(item, Item::Chain(hung) if hung.hang == hang));
    let leader =
        uses(&|item| matches!(item, Item::Chain(hung) if hung.chain.leader().length.as_m() > 0.0));
    let table = [
        (
            band(Hang::Single),
            "single: one end of the loop on the bar, the other on the anchor",
        ),
        (
            band(Hang::Doubled),
            "doubled: the loop folded in half, both ends on the anchor and the middle over the bar",
        ),
        (
            band(Hang::Choked),
            "choked: the loop pulled through itself round the anchor, some 12 cm shorter, its end on the bar",
        ),
        (
            chain(ChainHang::Straight),
            "straight: one end on the bar, the rest piles up on the floor",
        ),
        (
            chain(ChainHang::DoubleLooped),
            "double-looped: both ends on the bar, the middle on the floor",
        ),
        (
            leader,
            "leader: a light strap or chain of that length between bar and chain",
        ),
    ];
    let used = table.into_iter().filter(|(is_used, _)| *is_used);
    used.map(|(_, words)| words).collect()
}
