//! How the body moves along the range: poses, linkages, contacts, load point.
//!
//! In: a movement's record and a lifter. Out: [`Range`], every pose on one set of samples, with the
//! torques of the limbs, the way the load reaches the joints, and the reactions of the surroundings.

mod arm;
mod arm_frame;
mod arm_in_space;
mod arm_outline;
mod arm_record;
mod bridge;
mod bridge_record;
mod handling;
mod leg_chain;
mod leg_in_space;
mod leg_press;
mod leg_press_record;
mod limb_lines;
mod limb_weight;
mod linkage;
mod load_point;
mod pose;
mod protocol;
mod record;
mod stance;
mod stance_record;
mod standing;
mod sweep;
mod sweep_outline;
mod sweep_record;
mod technique;
mod trace;
mod traced_path;
mod trunk_links;

pub use arm_record::{ArmPlace, ArmRecord, Hand, HandPlace, Posture};
pub use bridge_record::BridgeRecord;
pub use handling::{
    Catch, EquationBias, Handling, Handover, HelperPlace, NoHandover, SpotterPlace, SpotterRule,
    WayBack, lift_name,
};
pub use leg_in_space::Feet;
pub use leg_press_record::LegPressRecord;
pub use limb_weight::{BodyPart, LimbWeight};
pub use linkage::{Link, Linkage, Placed, along, forearm_and_hand};
pub use load_point::{Carrier, Helping, LoadPoint, PlaneForce};
pub use pose::{
    Affine, Balance, BodyOutline, Coordinate, Pose, PushPlace, Reaction, ReactionLimit,
    ReactionReading, View,
};
pub use protocol::{Finish, LiftStart, Protocol, TurnRound};
pub use record::{CarrierRecord, Measure, Movement, PathRecord, Sides};
pub use stance_record::{BackPlace, BarPlace, LiftOff, StanceRecord};
pub use sweep_record::{BodyPlace, SweepRecord, SweptLimb};
pub use technique::{Technique, TechniqueValue};
pub use trace::{LiftWay, Range, trace, trace_place};
