//! How the body moves along the range: poses, linkages, contacts, load point.
//!
//! In: a movement's record and a lifter. Out: [`Range`], every pose on one set of samples, with the
//! torques of the limbs, the way the load reaches the joints, and the reactions of the surroundings.

mod arm;
mod arm_frame;
mod arm_outline;
mod bridge;
mod handling;
mod leg_chain;
mod leg_press;
mod linkage;
mod load_point;
mod outline;
mod pose;
mod record;
mod stance;
mod sweep;
mod sweep_outline;
mod trace;

pub use arm::{ArmRecord, Hand, HandPlace, Place};
pub use arm_frame::Posture;
pub use bridge::BridgeRecord;
pub use handling::{
    Catch, EquationBias, Handling, Handover, HelperPlace, NoHandover, SpotterPlace, SpotterRule,
    WayBack, lift_name,
};
pub use leg_chain::Projection;
pub use leg_press::LegPressRecord;
pub use linkage::{Link, Linkage, Placed, along, forearm_and_hand};
pub use load_point::{Carrier, LoadPoint, PlaneForce};
pub use pose::{Affine, Balance, Coordinate, Limit, Outline, Pose, Reaction, Reading, View};
pub use record::{
    Begins, CarrierRecord, Measure, Movement, PathRecord, Sides, Technique, TechniqueValue,
};
pub use stance::{BackPlace, BarPlace, StanceRecord};
pub use sweep::{Body, Limb, SweepRecord};
pub use trace::{Range, SAMPLES, trace};
