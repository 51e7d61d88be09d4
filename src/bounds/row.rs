//! A row of the table of bounds, kept for as long as the program runs.
//!
//! In: a row's text. Out: its bound, by reference. The table is read once and has more than a hundred rows; rows that
//! own nothing need no dropping on each way out of the reader, which took the compiler minutes to lay out.

use super::Bound;
use serde::{Deserialize, Deserializer};
use std::ops::Deref;

/// A bound of the table that is compiled in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row(&'static Bound);

impl Deref for Row {
    type Target = Bound;

    fn deref(&self) -> &Bound {
        self.0
    }
}

impl<'de> Deserialize<'de> for Row {
    fn deserialize<D: Deserializer<'de>>(reader: D) -> Result<Self, D::Error> {
        Bound::deserialize(reader).map(|bound| Self(Box::leak(Box::new(bound))))
    }
}
