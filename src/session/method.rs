//! The methods of training a session can be built from, as one list.
//!
//! In: a name. Out: the [`Method`]. Commands, help, comparisons and tests over "all of them" are
//! derived from [`METHODS`].

use crate::error::{Error, Result};

/// How a session is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Method {
    /// The same load for several sets, raised little by little.
    Straight,
    /// Rising loads and falling repetitions.
    Pyramid,
    /// Short rests inside a set.
    Clusters,
    /// Lowering more than can be lifted.
    OverloadedLowering,
    /// Elastic bands on the bar.
    Bands,
    /// Chains on the bar.
    Chains,
}

/// Every method: its name on the command line and one sentence.
pub const METHODS: &[(Method, &str, &str)] = &[
    (
        Method::Straight,
        "straight",
        "the same load for several sets, raised when the repetitions allow",
    ),
    (
        Method::Pyramid,
        "pyramid",
        "rising loads and falling repetitions up to a top set",
    ),
    (
        Method::Clusters,
        "clusters",
        "groups of 1 to 3 repetitions with short rests, so that velocity is kept",
    ),
    (
        Method::OverloadedLowering,
        "overloaded-lowering",
        "slow lowering of more than 1RM; spotters lift the bar back",
    ),
    (
        Method::Bands,
        "bands",
        "elastic bands that pull harder towards lockout",
    ),
    (
        Method::Chains,
        "chains",
        "chains that leave the floor on the way up",
    ),
];

impl Method {
    /// Its name on the command line.
    #[must_use]
    pub fn name(self) -> &'static str {
        METHODS
            .iter()
            .find(|(method, ..)| *method == self)
            .map_or("straight", |(_, name, _)| name)
    }

    /// What it is, in one sentence.
    #[must_use]
    pub fn sentence(self) -> &'static str {
        METHODS
            .iter()
            .find(|(method, ..)| *method == self)
            .map_or("", |(.., sentence)| sentence)
    }

    /// The method of that name.
    ///
    /// **Fails** with the list of names.
    pub fn from_name(name: &str) -> Result<Self> {
        METHODS
            .iter()
            .find(|(_, known, _)| *known == name)
            .map(|(method, ..)| *method)
            .ok_or_else(|| {
                let names: Vec<&str> = METHODS.iter().map(|(_, name, _)| *name).collect();
                Error::bad(format!("there is no method `{name}`"))
                    .hint(format!("methods: {}", names.join(", ")))
            })
    }

    /// Whether band or chain setups are needed for it.
    #[must_use]
    pub const fn is_accommodating(self) -> bool {
        matches!(self, Self::Bands | Self::Chains)
    }
}
