//! The class of strength curve that a lift is published with.
//!
//! In: `models/calibration/published_classes.ron`. Out: [`PublishedClasses`].

use super::records::Library;
use super::{built_in, read::read};
use crate::error::Result;
use crate::source::Source;
use serde::Deserialize;
use std::collections::BTreeMap;

/// Classes by the name of their movement.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PublishedClasses {
    /// Where they come from.
    pub source: Source,
    /// The trade's word for the class of each movement.
    pub by_lift: BTreeMap<String, String>,
}

impl PublishedClasses {
    /// The published class of a movement, where that is another word than the computed one.
    #[must_use]
    pub fn otherwise(&self, movement: &str, computed: &str) -> Option<&str> {
        let published = self.by_lift.get(movement)?;
        (published != computed).then_some(published)
    }
}

impl Library {
    /// The published classes of lifts.
    ///
    /// **Fails** if the shipped file is not sound.
    pub fn published_classes(&self) -> Result<PublishedClasses> {
        let file = "calibration/published_classes.ron";
        read(
            &format!("models/{file}"),
            built_in::text(file).unwrap_or_default(),
        )
    }
}
