//! What a lifter is made of: segments, joints, muscles, curves.
//!
//! In: records of `models/` (read by `library`). Out: [`Lifter`] with every value resolved, and the
//! kernels that evaluate fibres, arms and tendons.

mod curves;
mod dynamics;
mod joint;
mod lifter;
mod moment_arm;
mod muscle;
mod passive_joint;
mod person_scatter;
mod sarcomere;
mod scaling;
mod segment;
mod sex;
mod shoulder_line;
mod shoulder_pose;
mod tendon;

pub use curves::{ActiveForceLength, Bell, Curves, ForceVelocity, PassiveForceLength};
pub use dynamics::Dynamics;
pub use joint::{Dof, HIP_OF_THIGH_ON_TRUNK, Joint};
pub use lifter::{Build, Lifter, LifterRecord, Training};
pub use moment_arm::{ArmCurve, ArmShape, MomentArm};
pub use muscle::{Fibre, FibreState, Muscle, Reference, force_shares};
pub use passive_joint::PassiveJoint;
pub use person_scatter::PersonScatter;
pub use sarcomere::Sarcomere;
pub use scaling::{MuscleTable, Tables, build, groups, lengths_of};
pub use segment::{Breadths, Segment, SegmentName, SegmentRow, SegmentTable};
pub use sex::Sex;
pub use shoulder_line::{LineAtPose, LinePlace, LineStart, ShoulderLine, ShoulderPath};
pub use shoulder_pose::{BladeTurn, ShoulderMotion, ShoulderPose, axis_of};
pub use tendon::{
    TENDON_SLOPE, TOE_END, TOE_FORCE, TOE_SHAPE, Tendon, tendon_force, tendon_strain,
};
