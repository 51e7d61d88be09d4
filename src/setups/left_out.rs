//! Ways of hanging that are not searched, and why.
//!
//! In: pieces with the way in which they cannot or need not be hung. Out: [`LeftOut`]s, those of one reason and one
//! list of pieces together.

use crate::resistance::{ChainHang, Hang};
use crate::units::Length;
use std::collections::BTreeMap;

/// Why a way of hanging is not searched, in the order in which it is told.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum LeftOutReason {
    /// What the movement lifts holds no chain.
    NoPlaceForChains,
    /// Bands are not hung so on what the movement lifts.
    NoPlaceForBands,
    /// There is no second piece for the other side.
    NoSecondPiece,
    /// A band would be stretched beyond its safe length.
    Overstretched,
    /// A chain would hang free over the whole range.
    HangsFree,
    /// A chain would lie on the floor over the whole range.
    LiesOnFloor,
    /// A band would pull a free bar far from plumb.
    PullsAskew,
    /// A band would go slack on the way and slide off.
    GoesSlack,
    /// A band would stay slack.
    StaysSlack,
}

/// A way of hanging.
#[derive(Debug, Clone, PartialEq)]
pub enum WayOfHanging {
    /// A band.
    Band {
        /// Single, doubled or choked.
        hang: Hang,
        /// What the gym calls the anchor.
        anchor: String,
    },
    /// A chain.
    Chain {
        /// Straight or double-looped.
        hang: ChainHang,
        /// Length of the leader; nothing without one.
        leader: Length,
    },
}

/// Pieces of a gym.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LeftOutPieces {
    /// All bands that may be used, several.
    EveryBand,
    /// All chains that may be used, several.
    EveryChain,
    /// These.
    Named(Vec<String>),
}

/// Pieces that are not hung in some ways, for one reason.
#[derive(Debug, Clone, PartialEq)]
pub struct LeftOut {
    /// The pieces.
    pub pieces: LeftOutPieces,
    /// The ways; none where it is all of them.
    pub ways: Vec<WayOfHanging>,
    /// Why.
    pub reason: LeftOutReason,
}

/// One way of hanging, for one reason, with all the pieces that it concerns.
struct Entry {
    reason: LeftOutReason,
    way: Option<WayOfHanging>,
    names: Vec<String>,
}

/// What is left out, being gathered.
#[derive(Default)]
pub(super) struct LeftOutList {
    entries: Vec<Entry>,
    /// Names of all bands that may be used.
    pub(super) bands: Vec<String>,
    /// Names of all chains that may be used.
    pub(super) chains: Vec<String>,
}

impl LeftOutList {
    /// Adds a piece.
    pub(super) fn add(&mut self, reason: LeftOutReason, way: Option<WayOfHanging>, name: &str) {
        let same = |entry: &&mut Entry| entry.reason == reason && entry.way == way;
        match self.entries.iter_mut().find(same) {
            Some(entry) if entry.names.last().is_some_and(|last| last == name) => {}
            Some(entry) => entry.names.push(name.to_owned()),
            None => self.entries.push(Entry {
                reason,
                way,
                names: vec![name.to_owned()],
            }),
        }
    }

    /// One for each reason and list of pieces, the ways of hanging together.
    pub(super) fn gathered(self) -> Vec<LeftOut> {
        let mut together: BTreeMap<(LeftOutReason, Vec<String>), Vec<WayOfHanging>> =
            BTreeMap::new();
        for entry in self.entries {
            let ways = together.entry((entry.reason, entry.names)).or_default();
            ways.extend(entry.way);
        }
        let is_all = |all: &[String], names: &[String]| all.len() > 1 && all == names;
        let left_out = together.into_iter().map(|((reason, names), ways)| LeftOut {
            pieces: if is_all(&self.bands, &names) {
                LeftOutPieces::EveryBand
            } else if is_all(&self.chains, &names) {
                LeftOutPieces::EveryChain
            } else {
                LeftOutPieces::Named(names)
            },
            ways,
            reason,
        });
        left_out.collect()
    }
}
