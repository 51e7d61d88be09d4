//! What is accepted of a model and yet unlikely.
//!
//! In: values that no rule forbids. Out: [`Doubt`].

use crate::error::{Known, OutOfBounds};

/// What is accepted of a model and yet unlikely.
#[derive(Debug, Clone, PartialEq)]
pub enum Doubt {
    /// A value outside what one meets; the ends are of that.
    Unlikely(OutOfBounds),
    /// A moment arm longer than those that are measured.
    LongArm {
        /// The arm, cm.
        arm_cm: f64,
        /// The joint's angle, degrees.
        angle_deg: f64,
        /// The longest that one meets, cm.
        most_cm: f64,
    },
    /// A lifter without any strength factor: each group counts as in the muscle table.
    NoStrength,
    /// Fibres that leave the lengths of living ones on the way of a lift.
    Fibres {
        /// The muscle.
        muscle: String,
        /// The lift.
        movement: String,
        /// The length farthest out, with the usual range.
        length: OutOfBounds,
    },
    /// A torque above those that are measured at the joint.
    Strong(JointTorque),
    /// Lifts of the library that a body cannot do.
    CannotDo {
        /// Their titles.
        lifts: Vec<String>,
    },
    /// A technique parameter that neither path nor carrier reads.
    UnusedTechnique {
        /// The parameters that are read.
        known: Known,
    },
    /// An axis that names an angle, of a lift that is drawn over the way of its load.
    AngleOnTheWay,
    /// The load ends below where it starts.
    GoesDown {
        /// How far below, cm.
        by_cm: f64,
    },
    /// A load that sinks where it is to be lifted.
    LoadHelps {
        /// Whether it does so at the start.
        at_start: bool,
        /// Share of the range over which it does so.
        share: f64,
    },
    /// A name of a lift that moves in another way.
    CalledLike {
        /// The name.
        name: String,
        /// Title of that lift.
        lift: String,
    },
    /// A segment table of the other sex.
    OtherSex,
    /// Head, trunk, thigh, shank and ankle's height do not add up to the height.
    Stature {
        /// Their sum, cm.
        sum_cm: f64,
        /// What it is usually at that height, cm.
        usual_cm: f64,
        /// The sum over the usual one, with what one meets.
        ratio: OutOfBounds,
    },
    /// A band whose layer is thicker than its strand is wide.
    ThickerThanWide,
    /// An odd piece of what is used in pairs.
    Lone {
        /// How many there are.
        count: u32,
    },
    /// A name that is not the one of its file.
    OtherName {
        /// The name of the file.
        file: String,
    },
    /// A strength group that the reference table does not have.
    NewGroup {
        /// The groups that it has.
        known: Known,
    },
    /// A muscle that pulls against its strength group.
    AgainstGroup {
        /// The joint.
        joint: &'static str,
        /// Whether the group pulls the joint's angle up.
        group_pulls_up: bool,
    },
    /// A muscle whose strength group pulls at other joints.
    GroupElsewhere {
        /// The joints of the group.
        joints: Vec<&'static str>,
    },
    /// A segment at none of the joints that a muscle crosses.
    AlongElsewhere,
    /// A changed number without a source.
    Unsourced {
        /// Paths of the other ones of the file.
        others: Vec<String>,
    },
    /// Body mass over the square of the height.
    MassIndex(OutOfBounds),
    /// Readings of a band that go badly with the law of rubber.
    Misfit {
        /// Root mean square of reading minus law over the largest reading, %.
        percent: f64,
    },
    /// A length that is odd for the height.
    Proportion {
        /// The length, cm.
        length_cm: f64,
        /// The usual length at that height, cm.
        usual_cm: f64,
        /// The length over the usual one, with what one meets.
        ratio: OutOfBounds,
    },
    /// A segment's mass that is odd for the body's.
    MassProportion {
        /// The mass, kg.
        mass_kg: f64,
        /// The usual mass in a body of that mass, kg.
        usual_kg: f64,
        /// The mass over the usual one, with what one meets.
        ratio: OutOfBounds,
    },
}

/// What the muscles make about a joint on the way of a lift, beside what was measured.
#[derive(Debug, Clone, PartialEq)]
pub struct JointTorque {
    /// The lift.
    pub movement: String,
    /// The joint.
    pub joint: &'static str,
    /// The torque of one side, N·m.
    pub torque_nm: f64,
    /// The torque over body mass, with its bounds.
    pub per_kg: OutOfBounds,
}
