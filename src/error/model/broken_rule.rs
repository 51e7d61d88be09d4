//! A value that breaks a rule: its path in the record, and which rule.
//!
//! In: what the rules of `library` find. Out: [`RuleFault`].

use super::{Doubt, JointTorque, Shelf};
use crate::error::{Known, OutOfBounds, TechniqueKind};

/// A value that breaks a rule.
#[derive(Debug, Clone, PartialEq)]
pub struct RuleFault<Inner> {
    /// Path of the value: `muscles.brachialis.pennation`; empty for the whole.
    pub path: String,
    /// The rule.
    pub broken: BrokenRule<Inner>,
}

impl<Inner> RuleFault<Inner> {
    /// Whether the value is accepted, and no more than unlikely.
    #[must_use]
    pub const fn is_doubt(&self) -> bool {
        matches!(self.broken, BrokenRule::Doubt(_))
    }
}

/// Which rule a value breaks.
#[derive(Debug, Clone, PartialEq)]
pub enum BrokenRule<Inner> {
    /// It is outside its bounds.
    Outside(OutOfBounds),
    /// It is empty.
    Empty,
    /// It names a file that is not there.
    NoSuchFile {
        /// The kind of file.
        shelf: Shelf,
        /// The name.
        name: String,
        /// The names there are.
        known: Known,
    },
    /// Two numbers that must rise do not.
    NotRising {
        /// The first.
        first: f64,
        /// The second.
        second: f64,
    },
    /// The least of something is more than the most of it.
    LeastAboveMost {
        /// The least.
        least: f64,
        /// The most.
        most: f64,
        /// The path of the most.
        field: &'static str,
    },
    /// A rule of bodies.
    Body(BodyRule),
    /// A rule of muscles.
    Muscle(MuscleRule<Inner>),
    /// A rule of fibre curves.
    Curve(CurveRule),
    /// A rule of technique parameters.
    Technique(TechniqueRule),
    /// A rule of paths.
    Path(PathRule<Inner>),
    /// None: it is accepted and yet unlikely.
    Doubt(Doubt),
    /// What the laws of a room say of the value, in sentences of their own.
    Said(Vec<Inner>),
    /// What the rules of another room say of the value, reading on from its path.
    ReadsOn(Box<Inner>),
}

/// Rules of lifters and segment tables.
#[derive(Debug, Clone, PartialEq)]
pub enum BodyRule {
    /// A strength group that no muscle belongs to.
    NoSuchGroup {
        /// The muscle table.
        muscles: String,
        /// The groups there are.
        known: Known,
    },
    /// A strength factor without a source.
    NoSource {
        /// The group.
        group: String,
    },
    /// A source of no strength factor.
    StraySource {
        /// The groups with a factor.
        known: Known,
    },
    /// Segments that a table lacks.
    LacksSegments(Vec<&'static str>),
    /// All segments of a table do not add up to a body.
    Sum(OutOfBounds),
    /// Body mass over the square of the height.
    MassIndex(OutOfBounds),
    /// A length that is out of proportion to the height; the ends are shares of the usual length.
    Proportion {
        /// The length, cm.
        length_cm: f64,
        /// The usual length at that height, cm.
        usual_cm: f64,
        /// The length over the usual one, with its bounds.
        ratio: OutOfBounds,
    },
    /// A segment's mass that is out of proportion to the body's.
    MassProportion {
        /// The mass, kg.
        mass_kg: f64,
        /// The usual mass in a body of that mass, kg.
        usual_kg: f64,
        /// The mass over the usual one, with its bounds.
        ratio: OutOfBounds,
    },
    /// Head, trunk, thigh, shank and ankle's height do not add up to the height.
    Stature {
        /// Their sum, cm.
        sum_cm: f64,
        /// What it is usually at that height, cm.
        usual_cm: f64,
        /// The sum over the usual one, with its bounds.
        ratio: OutOfBounds,
    },
    /// The shoulders are not above the hips.
    ShouldersBelowHips,
    /// A covariance that is no lower triangle over its numbers.
    NoTriangle {
        /// How many numbers are named.
        numbers: usize,
    },
    /// A variance below nothing, or a covariance that is more than both variances allow.
    NoCovariance,
    /// A version whose strength is no person's.
    VersionOutside {
        /// The number.
        of: String,
        /// Its value in the version, with its bounds.
        factor: OutOfBounds,
    },
    /// A number that is no strength, or a first one that is not that of all muscles.
    NoStrength,
    /// A version that has more or fewer numbers than are named.
    NoVersion {
        /// How many numbers are named.
        numbers: usize,
    },
}

/// Rules of muscles and joints.
#[derive(Debug, Clone, PartialEq)]
pub enum MuscleRule<Inner> {
    /// A table without a muscle.
    NoMuscle,
    /// The lower end of a joint's range is not below the upper one.
    LowNotBelowHigh,
    /// A muscle without its strength group.
    NoGroup,
    /// A muscle that crosses no joint.
    CrossesNoJoint {
        /// The joints there are.
        joints: Vec<&'static str>,
    },
    /// A muscle without a reference pose.
    NoReference,
    /// A reference pose of a joint that the muscle does not cross.
    ForeignJoint {
        /// The joints it crosses.
        crossed: Vec<&'static str>,
    },
    /// A moment arm that is no curve.
    UnusableArm(Box<Inner>),
    /// A moment arm longer than any.
    LongArm {
        /// The arm, cm.
        arm_cm: f64,
        /// The joint's angle, degrees.
        angle_deg: f64,
        /// The longest, cm.
        most_cm: f64,
    },
    /// Fibres of a length that tears them or that they cannot have, on the way of a lift.
    Torn {
        /// The muscle.
        muscle: String,
        /// The lift.
        movement: String,
        /// The length.
        length: OutOfBounds,
    },
    /// A torque far above any that was measured at the joint.
    TooStrong(JointTorque),
    /// The angle of a point is not above that of the one before.
    AnglesFall {
        /// The angle, degrees.
        angle_deg: f64,
        /// The one before, degrees.
        before_deg: f64,
    },
}

/// Rules of fibre curves and sarcomeres.
#[derive(Debug, Clone, PartialEq)]
pub enum CurveRule {
    /// The peak of the active curve is not 1.
    ActivePeak(OutOfBounds),
    /// A bell of active force without a width at some length.
    BellWidth {
        /// The fibre length.
        length_norm: f64,
        /// The width there.
        width: OutOfBounds,
    },
    /// The corners of the length-tension diagram are not in rising order.
    CornersFall {
        /// The corners, µm.
        corners_um: Vec<f64>,
    },
}

/// Rules of technique parameters.
#[derive(Debug, Clone, PartialEq)]
pub enum TechniqueRule {
    /// A path needs a parameter that is missing.
    Missing {
        /// The parameter.
        name: String,
        /// The kinds that it may have.
        kinds: Vec<TechniqueKind>,
        /// The parameters there are.
        known: Known,
    },
    /// A parameter of another kind than its path reads.
    WrongKind {
        /// The kinds that are read.
        kinds: Vec<TechniqueKind>,
        /// The kind that it has.
        value: TechniqueKind,
        /// The words that are understood, of a choice.
        words: Vec<String>,
    },
    /// A word to choose that the path does not understand.
    ForeignWord {
        /// The word.
        word: String,
        /// The words that it understands.
        known: Known,
    },
    /// A word that is none of a parameter's.
    NoSuchWord {
        /// The word.
        word: String,
        /// The words there are.
        known: Known,
    },
    /// An end of a parameter's range is of another kind than its value.
    OtherKind {
        /// Kind of the end.
        bound: TechniqueKind,
        /// Kind of the value.
        value: TechniqueKind,
    },
    /// The lower end of a parameter's range is not below the upper one.
    LeastNotBelowMost {
        /// The lower end.
        least: TechniqueNumber,
        /// The upper end.
        most: TechniqueNumber,
    },
    /// A parameter outside its range.
    Outside {
        /// The value.
        value: TechniqueNumber,
        /// The lower end, if there is one.
        least: Option<TechniqueNumber>,
        /// The upper end, if there is one.
        most: Option<TechniqueNumber>,
        /// What the parameter means, as its file says.
        meaning: String,
    },
}

/// Rules of the paths of movements.
#[derive(Debug, Clone, PartialEq)]
pub enum PathRule<Inner> {
    /// A sweep without a way.
    JointStands {
        /// Start, degrees.
        from_deg: f64,
        /// End, degrees.
        to_deg: f64,
    },
    /// A joint that moves and is held.
    MovesAndStands,
    /// A plane of the shoulder where another joint moves.
    PlaneOfOtherJoint {
        /// The joint.
        joint: &'static str,
    },
    /// A joint that no single limb hangs from.
    JointWithoutLimb {
        /// The joint.
        joint: &'static str,
    },
    /// A limb that another joint carries.
    LimbOfOtherJoint {
        /// The joint.
        joint: &'static str,
        /// The limb that it carries.
        limb: &'static str,
    },
    /// A torque where several joints move.
    TorqueOfSeveralJoints,
    /// Lockout, where it cannot stand.
    Lockout {
        /// Whether it is a place of the hand.
        of_hand: bool,
    },
    /// The hand ends where it started.
    HandStands,
    /// Too few key poses, or not in order.
    KeyPoses,
    /// The sled does not move away.
    SledStands,
    /// The limbs of a lifter cannot do it.
    CannotBeDone {
        /// The lifter.
        lifter: String,
        /// Why.
        fault: Box<Inner>,
    },
}

/// The number of a technique value, with what it is measured in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TechniqueNumber {
    /// Metres.
    Metres(f64),
    /// Radians.
    Radians(f64),
    /// Multiples of the breadth of the shoulders.
    Shoulders(f64),
    /// A plain number.
    Plain(f64),
}

impl TechniqueNumber {
    /// The number alone.
    #[must_use]
    pub const fn number(self) -> f64 {
        match self {
            Self::Metres(number)
            | Self::Radians(number)
            | Self::Shoulders(number)
            | Self::Plain(number) => number,
        }
    }

    /// Whether both are measured in the same.
    #[must_use]
    pub fn is_comparable(self, other: Self) -> bool {
        std::mem::discriminant(&self) == std::mem::discriminant(&other)
    }
}
