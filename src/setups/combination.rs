//! What hangs on the bar in one setup.
//!
//! In: hangings by their number in the rack. Out: [`Combination`], ordered.

use super::wish::MOST_HUNG;

/// Hangings in rising order; one may stand several times.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Combination {
    hangings: [u16; MOST_HUNG as usize],
    length: u8,
}

impl Combination {
    /// The hangings.
    #[must_use]
    pub fn hangings(&self) -> &[u16] {
        &self.hangings[..usize::from(self.length)]
    }

    /// The same with one more, which stands last.
    pub(super) fn with(mut self, hanging: usize) -> Self {
        self.hangings[usize::from(self.length)] = hanging as u16;
        self.length += 1;
        self
    }
}
