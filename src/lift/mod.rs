//! The library's own door: one lift of one lifter with a load, and everything that follows.
//!
//! In: names of the library, texts with units ("80 kg"). Out: answers, figures, typed errors.

mod lift_error;
mod loaded_lift;
mod names;

pub use lift_error::{LiftError, Reason};
pub use loaded_lift::{Lift, LiftAnswer};
pub use names::{lifters, movements};
