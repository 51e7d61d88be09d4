//! Where a number comes from: a publication, somebody's memory of one, an assumption, the trade.
//!
//! In: the `source:` field of a model record. Out: a checked [`Source`] that `torquill sources`
//! lists and that a test demands for every number in `models/`.

use serde::{Deserialize, Serialize};

/// Where the numbers of one record come from.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Source {
    /// Read in a publication: a key of `models/sources.ron` and the place in it ("Table 4").
    Published(String, String),
    /// Recalled from a publication and not re-read: the key and what was recalled.
    FromMemory(String, String),
    /// Computed from other published numbers: the key of the main one and how.
    Derived(String, String),
    /// Chosen by us, with the reason.
    Assumed(String),
    /// Found by the calibration (`models/calibration/`): what it was held to, or where it started.
    Fitted(String),
    /// A fact of the trade without a publication.
    CommonPractice(String),
    /// Made up for a demonstration (invented lifters, gyms and logs).
    Invented(String),
}

/// One publication of `models/sources.ron`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Publication {
    /// Authors, year, title, journal, as one would cite it.
    pub citation: String,
    /// What the project takes from it.
    pub used_for: String,
    /// Whether the numbers were read or recalled.
    pub seen: Seen,
}

/// How well a publication's numbers are known to us.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Seen {
    /// The numbers were read in a stored text of the publication.
    Read,
    /// Some numbers were read, others recalled.
    Partly,
    /// The numbers are recalled: "from memory".
    Recalled,
}
