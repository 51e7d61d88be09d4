//! Bands and chains of a setup in words that a coach hangs them by.
//!
//! In: items, the names of a gym's anchors. Out: how many of which, tied where, and what the words mean.

use super::quantities::rounded;
use crate::error::HungPair;
use crate::resistance::{Anchor, ChainHang, Hang, Item};
use crate::setups::hung_pairs;
use crate::units::Length;
use std::collections::BTreeMap;

/// The word for a chain's way of hanging.
pub(crate) fn chain_hang_in_words(hang: ChainHang) -> &'static str {
    match hang {
        ChainHang::Straight => "straight",
        ChainHang::DoubleLooped => "double-looped",
    }
}

/// The bands and chains of a setup, one in words each, by the gym's own names of its anchors.
#[must_use]
pub fn hung_pieces(items: &[Item], anchors: &BTreeMap<String, Anchor>) -> Vec<String> {
    let pairs = hung_pairs(items, anchors);
    pairs.iter().map(pair_in_words).collect()
}

/// A pair of bands or chains in words.
pub(crate) fn pair_in_words(pair: &HungPair) -> String {
    match pair {
        HungPair::Band {
            count,
            name,
            anchor,
            height,
            offset,
            is_doubled,
        } => {
            let how = if *is_doubled { "doubled" } else { "single" };
            let place = placed(anchor, *height, *offset);
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
            let leader_cm = leader.as_cm();
            let leader = if leader_cm > 0.0 {
                format!(" on a leader of {} cm", rounded(leader_cm, 0))
            } else {
                String::new()
            };
            format!("{count} × {name} a side, {how}{leader}")
        }
    }
}

/// The bands and chains of a setup in words; "none" where there are none.
#[must_use]
pub fn hung_in_words(items: &[Item], anchors: &BTreeMap<String, Anchor>) -> String {
    let words = hung_pieces(items, anchors);
    if words.is_empty() {
        "none".to_owned()
    } else {
        words.join(" + ")
    }
}

/// An anchor's name with where it stands, so that another rack can be matched to it.
fn placed(name: &str, height: Length, offset: Length) -> String {
    let (height_cm, offset_cm) = (height.as_cm(), offset.as_cm());
    let mut place = Vec::new();
    if height_cm > 0.0 {
        place.push(format!("{} cm high", rounded(height_cm, 0)));
    }
    if offset_cm != 0.0 {
        let side = if offset_cm > 0.0 { "ahead" } else { "behind" };
        place.push(format!("{} cm {side}", rounded(offset_cm.abs(), 0)));
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
    let band = |hang: Hang| {
        items
            .iter()
            .any(|item| matches!(item, Item::Band(hung) if hung.hang == hang))
    };
    let chain = |hang: ChainHang| {
        items
            .iter()
            .any(|item| matches!(item, Item::Chain(hung) if hung.hang == hang))
    };
    let leader = items
        .iter()
        .any(|item| matches!(item, Item::Chain(hung) if hung.chain.leader().length.as_m() > 0.0));
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
