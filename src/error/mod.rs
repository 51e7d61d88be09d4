//! Faults: what is wrong, where it stands; facts, no words.
//!
//! In: quantities and names from any room. Out: one [`Error`] that the command line prints and turns into an exit
//! status. One file a room; `narrative` makes the words.

mod body;
mod command;
mod failure;
mod fault;
mod figure;
mod grammar;
mod gym;
mod hold;
mod implement;
mod known;
mod log;
mod measured;
mod model;
mod numeric;
mod outcome;
mod path;
mod pick;
mod place;
mod planning;
mod repetition;
mod session;
mod study;

pub use body::BodyFault;
pub use command::CommandFault;
pub use failure::{Error, FaultKind, Result};
pub use fault::{Fault, What};
pub use figure::{FigureFault, PictureFault, PlotFault, Plotted};
pub use grammar::{
    GrammarFault, HungPiece, ItemTextFault, PieceTextFault, ReadingColumn, ReadingsFault,
};
pub use gym::{GymFault, GymSlip, LoadingGear, WishSize};
pub use hold::HoldFault;
pub use implement::{CamFault, ImplementFault, ImplementKind, ImplementSize, Unfit};
pub use known::Known;
pub use log::{DateFault, LogColumn, LogFault, LogRowFault};
pub use measured::{Measured, OutOfBounds};
pub use model::{
    BodyRule, BrokenRule, CurveRule, ExpectedType, FoundValue, ModelFault, MuscleRule, PathRule,
    PlaceOnPath, RuleFault, SettingFault, SettingReason, Shelf, SyntaxFault, TechniqueNumber,
    TechniqueRule, TextFault, TypeFault,
};
pub use numeric::{FitFault, LinksFault, NumericFault, ProgrammeFault, ProgrammePart};
pub use outcome::{FailedEnd, OutcomeFault, StopPlace, StopPosition};
pub use path::{
    ArmFault, BridgeFault, LegPressFault, Outside, PathFault, StanceFault, TechniqueFault,
    TechniqueKind, TechniqueRange,
};
pub use pick::{
    Advice, HungPair, Instead, Means, NearestSetup, PickFault, PlainLoad, Remedy, Shortfall,
};
pub use place::Place;
pub use planning::PlanFault;
pub use repetition::{MaximumSearchFault, RepetitionFault, TimedPart};
pub use session::{
    Counted, LoweringFault, PredictionFault, RestPlace, SchemeFault, SessionFault,
    SessionFigureFault, SessionRefusal,
};
pub use study::{
    Compared, ComparisonFault, LiftFault, MaximumFault, SpacingFault, StudyFault, ValuesFault,
};
