//! How the body moves along the range: poses, linkages, contacts, load point.
//!
//! In: a movement's record and a lifter. Out: [`Range`], every pose on one set of samples, with the
//! torques of the limbs, the way the load reaches the joints, and the reactions of the surroundings.

mod arm;
mod linkage;
mod load_point;
mod pose;
mod record;
mod sweep;
mod trace;

pub use arm::{ArmRecord, Hand, HandPlace, Place, Posture};
pub use linkage::{Link, Linkage, Placed, along};
pub use load_point::{Carrier, LoadPoint, PlaneForce};
pub use pose::{Balance, Coordinate, Limit, Outline, Pose, Reaction};
pub use record::{CarrierRecord, Measure, Movement, PathRecord, Sides, Technique, TechniqueValue};
pub use sweep::{Body, Limb, SweepRecord};
pub use trace::{Range, SAMPLES, trace};
