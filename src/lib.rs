//! torquill computes strength curves from anatomy: where in a lift a person is strong, where the
//! load is heavy, and what can be done about the gap.
//!
//! ```text
//! models/*.ron ─ library ─▶ Lifter, Movement, Setup
//!                               │ study
//!   Movement ─▶ poses over s ─▶ capacity ─┐
//!                     └──────▶ demand  ───┴▶ overlay ─▶ rep ─▶ setups ─▶ session
//!                                               │ results: plain structs, all on the same range samples
//!                               figures ─▶ plot ─▶ scene ─▶ svg, png     report ─▶ table, csv, json
//!                                               └────── cli (the door)
//! ```
#![forbid(unsafe_code)]
#![warn(missing_docs)]

pub mod anatomy;
pub mod capacity;
#[cfg(feature = "program")]
pub mod cli;
pub mod demand;
pub mod draw;
pub mod error;
pub mod figures;
pub mod grammar;
pub mod lecture;
pub mod library;
pub mod movement;
pub mod narrative;
pub mod numeric;
pub mod overlay;
pub mod plot;
pub mod progress;
pub mod rep;
pub mod report;
pub mod resistance;
pub mod session;
pub mod setups;
pub mod source;
pub mod study;
pub mod units;
