//! Pairs of bands and chains with their anchors by the names that a gym gives them.
//!
//! In: items of a setup, the anchors of a gym. Out: plain data from which a coach hangs them.

use crate::error::{HungPair, LoopWay};
use crate::resistance::{Anchor, ChainHang, Hang, Item};
use std::collections::BTreeMap;

/// The bands and chains of a setup that stand on anchors of the gym.
#[must_use]
pub fn hung_pairs(items: &[Item], anchors: &BTreeMap<String, Anchor>) -> Vec<HungPair> {
    let pair = |item: &Item| match item {
        Item::Band(hung) => {
            let (name, anchor) = anchors.iter().find(|(_, anchor)| **anchor == hung.anchor)?;
            Some(HungPair::Band {
                count: hung.count,
                name: hung.band.name().to_owned(),
                anchor: name.clone(),
                height: anchor.height(),
                offset: anchor.offset(),
                way: match hung.hang {
                    Hang::Auto | Hang::Single => LoopWay::Single,
                    Hang::Doubled => LoopWay::Doubled,
                    Hang::Choked => LoopWay::Choked,
                },
            })
        }
        Item::Chain(hung) => Some(HungPair::Chain {
            count: hung.count,
            name: hung.chain.name().to_owned(),
            is_double_looped: hung.hang == ChainHang::DoubleLooped,
            leader: hung.chain.leader().length,
        }),
        _ => None,
    };
    items.iter().filter_map(pair).collect()
}
