//! How the body moves along the range: poses, linkages, contacts, load point.

mod load_point;

pub use load_point::{Carrier, LoadPoint, PlaneForce};
