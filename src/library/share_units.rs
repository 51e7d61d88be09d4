//! Shares with their unit: how a text says that it is one of a breadth or a height, and not a plain number.
//!
//! In: the word that a model file writes before a share, a text such as "1.9 shoulder breadths". Out: the number.

use crate::units::parse_number_and_unit;

/// What a share is one of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct ShareUnit {
    /// The words that model files write before it.
    tags: &'static [&'static str],
    /// The unit as it is shown.
    pub name: &'static str,
    /// All spellings of the unit.
    spellings: &'static [&'static str],
}

/// Every share that has a unit.
const SHARES: [ShareUnit; 2] = [
    ShareUnit {
        tags: &["OfShoulders"],
        name: "shoulder breadths",
        spellings: &[
            "shoulder breadths",
            "shoulder breadth",
            "shoulder-breadths",
            "shoulders",
        ],
    },
    ShareUnit {
        tags: &["OfHeight", "OverHips"],
        name: "body heights",
        spellings: &[
            "body heights",
            "body height",
            "body-heights",
            "heights",
            "of height",
        ],
    },
];

/// What a share is one of, by the word that stands before it in a file.
pub(super) fn share_of(tag: &str) -> Option<ShareUnit> {
    SHARES.into_iter().find(|share| share.tags.contains(&tag))
}

impl ShareUnit {
    /// The number of a text with this unit.
    pub fn read(self, text: &str) -> Option<f64> {
        let (number, unit, rest) = parse_number_and_unit(text)?;
        let unit = format!("{unit} {rest}");
        let is_ours = self.spellings.contains(&unit.trim());
        (is_ours && number.is_finite()).then_some(number)
    }
}
