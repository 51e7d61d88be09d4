//! torquill computes strength curves from anatomy: where in a lift a person is strong, where the
//! load is heavy, and what can be done about the gap.
//!
//! A movement and a lifter give the poses of the range; the muscles at each pose give *capacity*, the most
//! that it can hold; what hangs on the bar gives *demand*; both give *effort*, the sticking region and how
//! much a setup flattens it. [`Lift`] is the way in:
//!
//! ```
//! # fn main() -> Result<(), torquill::LiftError> {
//! let lift = torquill::Lift::of("bench-press", "reference-man")?.load("55 kg")?;
//! let summary = lift.answer()?.summary;
//! assert_eq!(summary.class, "ascending");
//! println!("hardest at {:?} of the range: {:?}", summary.sticking_point_range, summary.max_effort);
//! let picture: String = lift.svg()?;
//! # Ok(())
//! # }
//! ```
//!
//! The rooms behind it, and what each hands on; nothing flows back:
//!
//! ```text
//! models/*.ron ─ library ─▶ Lifter, Movement, Setup
//!                               │ study
//!   Movement ─▶ poses over s ─▶ capacity ─┐
//!                     └──────▶ demand  ───┴▶ overlay ─▶ rep ─▶ setups ─▶ session
//!                                               │ results: plain structs, all on the same range samples
//!                               figures ─▶ plot ─▶ scene ─▶ svg, png     report ─▶ table, csv, json
//!                                               └────── lift (the library's door), cli (the program's)
//! ```
//!
//! They are public for the program and its tests, and change without notice.
#![forbid(unsafe_code)]
#![warn(missing_docs)]

#[doc(hidden)]
pub mod anatomy;
#[doc(hidden)]
pub mod bounds;
#[doc(hidden)]
pub mod capacity;
#[cfg(feature = "program")]
#[doc(hidden)]
pub mod cli;
#[doc(hidden)]
pub mod demand;
#[doc(hidden)]
pub mod draw;
#[doc(hidden)]
pub mod error;
#[doc(hidden)]
pub mod explore;
#[doc(hidden)]
pub mod figures;
#[doc(hidden)]
pub mod grammar;
#[doc(hidden)]
pub mod lecture;
#[doc(hidden)]
pub mod library;
mod lift;
#[doc(hidden)]
pub mod movement;
#[doc(hidden)]
pub mod narrative;
#[doc(hidden)]
pub mod numeric;
#[doc(hidden)]
pub mod overlay;
#[doc(hidden)]
pub mod person;
#[doc(hidden)]
pub mod plot;
#[doc(hidden)]
pub mod progress;
#[doc(hidden)]
pub mod rep;
#[doc(hidden)]
pub mod report;
#[doc(hidden)]
pub mod resistance;
#[doc(hidden)]
pub mod session;
#[doc(hidden)]
pub mod setups;
#[doc(hidden)]
pub mod source;
#[doc(hidden)]
pub mod study;
#[doc(hidden)]
pub mod units;

pub use lift::{Lift, LiftAnswer, LiftError, Reason, lifters, movements};
#[doc(inline)]
pub use report::{CurveSummary, Sample};

/// The examples of the README, so that they are compiled.
#[cfg(doctest)]
#[doc = include_str!("../README.md")]
struct ReadmeExamples;
