//! The names that could have been meant.
//!
//! In: the known names and the nearest of them. Out: [`Known`], a part of many faults.

use serde::{Deserialize, Serialize};

/// The known names beside a wrong one.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
pub struct Known {
    /// The ones that it is a slip away from, nearest first.
    pub near: Vec<String>,
    /// All of them.
    pub all: Vec<String>,
}
