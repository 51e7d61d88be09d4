//! Demand upon capacity: effort, the static sticking region, flattening.
//!
//! In: demand and capacity on the same samples. Out: where it is hard, and how even.

mod effort;
mod flattening;
mod sticking;

pub use effort::effort;
pub use flattening::{flattening_percent, spread};
pub use sticking::{REGION_SHARE, Sticking, sticking, sticking_with};
