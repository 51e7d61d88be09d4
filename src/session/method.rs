//! The methods of training a session can be built from, as one list.
//!
//! In: a name. Out: the [`Method`]. Commands, help, comparisons and tests over "all of them" are
//! derived from [`METHODS`].

use crate::error::{Error, Result, SessionRefusal};

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

/// Every method with its name on the command line.
pub const METHODS: &[(Method, &str)] = &[
    (Method::Straight, "straight"),
    (Method::Pyramid, "pyramid"),
    (Method::Clusters, "clusters"),
    (Method::OverloadedLowering, "overloaded-lowering"),
    (Method::Bands, "bands"),
    (Method::Chains, "chains"),
];

impl Method {
    /// Its name on the command line.
    #[must_use]
    pub fn name(self) -> &'static str {
        METHODS
            .iter()
            .find(|(method, _)| *method == self)
            .map_or("straight", |(_, name)| name)
    }

    /// The method of that name.
    ///
    /// **Fails** with the list of names.
    pub fn from_name(name: &str) -> Result<Self> {
        METHODS
            .iter()
            .find(|(_, known)| *known == name)
            .map(|(method, _)| *method)
            .ok_or_else(|| {
                Error::bad(SessionRefusal::NoMethod {
                    named: name.to_owned(),
                    known: METHODS.iter().map(|(_, name)| (*name).to_owned()).collect(),
                })
            })
    }

    /// Whether band or chain setups are needed for it.
    #[must_use]
    pub const fn is_accommodating(self) -> bool {
        matches!(self, Self::Bands | Self::Chains)
    }
}
