//! Sex, as far as published tables tell it apart.
//!
//! In: a word of a file. Out: [`Sex`].

use serde::{Deserialize, Serialize};

/// Sex in the sense of the published tables.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Sex {
    /// Tables of women.
    Woman,
    /// Tables of men.
    Man,
}
