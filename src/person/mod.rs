//! One person's strengths: what is known beforehand, what a measurement says and how far it is off, what to measure next.
//!
//! In: texts such as `squat=95 kg`, the published table of scatter and errors. Out: measurements as logarithms with their
//! variance, the belief before any of them, the worth of another one. What a lifter of given strengths lifts is not
//! known here: `study` simulates it.

mod log_measured;
mod longer_than_life;
mod next_test;
mod people_scatter;
mod person_factors;
mod person_prior;
mod person_table;
mod told_measure;
mod told_texts;

pub use log_measured::{LogMeasured, measured_dynamometer, measured_hold, measured_lift};
pub use longer_than_life::longer_than_life;
pub use next_test::narrowing;
pub use people_scatter::Scatter;
pub use person_factors::{PersonFactors, StrengthFactor};
pub use person_prior::{PriorGrounds, prior};
pub use person_table::PersonTable;
pub use told_measure::{ToldLimb, ToldMeasure, ToldMeasurement, ToldTrace};
pub use told_texts::{MeasureReader, read_limb};
