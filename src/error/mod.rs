//! Faults: what is wrong, where it stands; facts, no words.
//!
//! In: quantities and names from any room. Out: one [`Error`] that the command line prints and turns into an exit
//! status. One file a room; `narrative` makes the words.

mod again_fault;
mod body_fault;
mod command_fault;
mod failure;
mod fault;
mod figure_fault;
mod file_fault;
mod grammar_fault;
mod gym_fault;
mod hold_fault;
mod implement_fault;
mod known_names;
mod log_fault;
mod model;
mod numeric_fault;
mod out_of_bounds;
mod outcome_fault;
mod page_fault;
mod path_fault;
mod person_fault;
mod pick_fault;
mod place;
mod planning_fault;
mod repetition_fault;
mod session_fault;
mod study_fault;
mod task_fault;
mod team_fault;
mod trace_fault;

pub use again_fault::{AgainFault, PictureDamage};
pub use body_fault::BodyFault;
pub use command_fault::{CommandFault, FileForm, OptionFault, RepetitionOptions};
pub use failure::{Error, FaultKind, Result};
pub use fault::{Fault, What};
pub use figure_fault::{FigureFault, LeftOff, PictureFault, PlotFault, Plotted};
pub use file_fault::FileFault;
pub use grammar_fault::{
    GrammarFault, HungPiece, ItemTextFault, PieceTextFault, ReadingColumn, ReadingsFault,
};
pub use gym_fault::{
    GymFault, GymPart, GymSlip, LoadingFault, LoadingGear, SearchFault, WishFault, WishSize,
};
pub use hold_fault::{HoldFault, MovingAt};
pub use implement_fault::{
    BandFitFault, CamFault, ImplementFault, ImplementKind, ImplementSize, Unfit,
};
pub use known_names::Known;
pub use log_fault::{DateFault, DateOrder, LogColumn, LogFault, LogRowFault};
pub use model::{
    BodyRule, BrokenRule, CurveRule, Doubt, ExpectedType, ExtendsFault, FoundValue, JointTorque,
    ModelFault, MuscleRule, PathRule, PlaceOnPath, RuleFault, SettingFault, SettingReason, Shelf,
    SyntaxFault, TechniqueNumber, TechniqueRule, TextFault, TypeFault,
};
pub use numeric_fault::{FitFault, LinksFault, NumericFault, ProgrammeFault, ProgrammePart};
pub use out_of_bounds::{Measured, OutOfBounds};
pub use outcome_fault::{FailedEnd, OutcomeFault, StopPlace, StopPosition};
pub use page_fault::PageFault;
pub use path_fault::{
    ArmFault, BridgeFault, LegPressFault, Outside, PathFault, StanceFault, TechniqueFault,
    TechniqueKind, TechniqueRange,
};
pub use person_fault::{JudgedBy, PersonFault, PersonOption};
pub use pick_fault::{
    Advice, HungPair, Instead, LoopWay, Means, NearestSetup, PickFault, PlainLoad, Remedy,
    Shortfall,
};
pub use place::Place;
pub use planning_fault::PlanFault;
pub use repetition_fault::{MaximumSearchFault, RepetitionFault, TimedPart};
pub use session_fault::{
    Counted, LoweringFault, NoHelp, PredictionFault, RestPlace, SchemeFault, SessionFault,
    SessionFigureFault, SessionRefusal,
};
pub use study_fault::{
    Compared, ComparisonFault, Lacking, LiftFault, MaximumFault, SpacingFault, StudyFault,
    ValuesFault,
};
pub use task_fault::TaskFault;
pub use team_fault::{TeamColumn, TeamFault, TeamRowFault};
pub use trace_fault::TraceFault;
