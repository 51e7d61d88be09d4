//! What a setup asks for at each place of the range.
//!
//! In: a setup and the load points of a movement. Out: load patterns for the programme of each pose,
//! and demand curves up and down for figures, overlay and repetition.

mod demand_curve;
mod pattern;

pub use demand_curve::{DemandCurve, DemandSample};
pub use pattern::{patterns, put_up};
