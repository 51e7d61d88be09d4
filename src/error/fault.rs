//! One fault: what is wrong, as facts, and where it stands.
//!
//! In: the fault of one room. Out: one type that travels up to the door, where `narrative` puts it into words. A fault
//! that holds another is generic over what it holds, so that no room's faults need this sum.

use super::{
    AgainFault, ArmFault, BodyFault, BridgeFault, CommandFault, ComparisonFault, ExtendsFault,
    FigureFault, FileFault, FitFault, GrammarFault, GymFault, HoldFault, ImplementFault,
    ItemTextFault, LegPressFault, LiftFault, LoadingFault, LogFault, LoweringFault, MaximumFault,
    MaximumSearchFault, ModelFault, NumericFault, OptionFault, OutcomeFault, PageFault, PathFault,
    PersonFault, PickFault, PictureFault, PieceTextFault, Place, PlanFault, PlotFault,
    PredictionFault, ProgrammeFault, ReadingsFault, RepetitionFault, RepetitionOptions, RuleFault,
    SchemeFault, SearchFault, SessionFault, SessionFigureFault, SessionRefusal, SettingFault,
    StanceFault, StudyFault, TeamFault, TechniqueFault, TextFault, TraceFault, ValuesFault,
    WishFault,
};
use crate::units::QuantityFault;

/// What is wrong, as facts: one variant a room, its words are made in `narrative`.
#[derive(Debug, Clone, PartialEq)]
pub enum What {
    /// Why a text is no quantity.
    Quantity(QuantityFault),
    /// What the mathematics cannot do.
    Numeric(NumericFault),
    /// What is wrong with a lifter, a muscle, a segment.
    Body(BodyFault),
    /// Why a movement cannot be traced or posed.
    Path(PathFault),
    /// Why a pose holds nothing, or has no capacity.
    Hold(HoldFault),
    /// Why a repetition or a maximum cannot be simulated.
    Repetition(RepetitionFault),
    /// What is wrong with an implement or its text.
    Implement(ImplementFault),
    /// What is wrong with a text that names implements.
    Grammar(GrammarFault<What>),
    /// What is wrong with a gym, a wish, or a search for setups.
    Gym(GymFault),
    /// Why a file of the user's is not read.
    File(FileFault),
    /// What is wrong with a training log.
    Log(LogFault),
    /// Why the ground of a session cannot be laid.
    Plan(PlanFault),
    /// Why a session is not planned.
    Session(SessionFault),
    /// What is wrong in a model file or a path of a value.
    Model(ModelFault<Fault>),
    /// Why a question has no answer.
    Study(StudyFault),
    /// What is wrong with the file of a team.
    Team(TeamFault),
    /// What is wrong with what is told of a person.
    Person(PersonFault),
    /// Why a figure cannot be drawn.
    Figure(FigureFault<What>),
    /// Why the live page's question cannot be put.
    Page(PageFault),
    /// What is wrong with the arguments of a command.
    Command(CommandFault),
}

/// Every fault of a room becomes the variant of the sum that holds it.
macro_rules! sum_of {
    ($($fault:ty => $held:expr),+ $(,)?) => {$(
        impl From<$fault> for What {
            fn from(fault: $fault) -> Self {
                ($held)(fault)
            }
        }
    )+};
}

sum_of! {
    PictureFault => |fault| What::Figure(FigureFault::Picture(fault)),
    PlotFault => |fault| What::Figure(FigureFault::Plot(fault)),
    WishFault => |fault| What::Gym(GymFault::Wish(fault)),
    LoadingFault => |fault| What::Gym(GymFault::Loading(fault)),
    SearchFault => |fault| What::Gym(GymFault::Search(fault)),
    ItemTextFault => |fault| What::Grammar(GrammarFault::Item(fault)),
    PieceTextFault => |fault| What::Grammar(GrammarFault::Piece(fault)),
    ReadingsFault => |fault| What::Grammar(GrammarFault::Readings(fault)),
    OutcomeFault => |fault| What::Study(StudyFault::Outcome(fault)),
    PickFault => |fault| What::Study(StudyFault::Pick(fault)),
    LiftFault => |fault| What::Study(StudyFault::Lift(fault)),
    ValuesFault => |fault| What::Study(StudyFault::Values(fault)),
    ComparisonFault => |fault| What::Study(StudyFault::Comparison(fault)),
    MaximumFault => |fault| What::Study(StudyFault::Maximum(fault)),
    QuantityFault => What::Quantity,
    NumericFault => What::Numeric,
    ProgrammeFault => |fault| What::Numeric(NumericFault::Programme(fault)),
    FitFault => |fault| What::Numeric(NumericFault::Fit(fault)),
    BodyFault => What::Body,
    PathFault => What::Path,
    HoldFault => What::Hold,
    RepetitionFault => What::Repetition,
    TechniqueFault => |fault| What::Path(PathFault::Technique(fault)),
    ArmFault => |fault| What::Path(PathFault::Arm(fault)),
    StanceFault => |fault| What::Path(PathFault::Stance(fault)),
    BridgeFault => |fault| What::Path(PathFault::Bridge(fault)),
    LegPressFault => |fault| What::Path(PathFault::LegPress(fault)),
    MaximumSearchFault => |fault| What::Repetition(RepetitionFault::Maximum(fault)),
    ImplementFault => What::Implement,
    GrammarFault<What> => What::Grammar,
    GymFault => What::Gym,
    FileFault => What::File,
    LogFault => What::Log,
    PlanFault => What::Plan,
    SessionFault => What::Session,
    ExtendsFault => |fault| What::Model(ModelFault::Extends(fault)),
    TextFault => |fault| What::Model(ModelFault::Text(fault)),
    RuleFault<Fault> => |fault| What::Model(ModelFault::Rule(fault)),
    SettingFault => |fault| What::Model(ModelFault::Setting(fault)),
    ModelFault<Fault> => What::Model,
    StudyFault => What::Study,
    TeamFault => What::Team,
    PersonFault => What::Person,
    TraceFault => |fault| What::Person(PersonFault::Trace(fault)),
    FigureFault<What> => What::Figure,
    PageFault => What::Page,
    CommandFault => What::Command,
    OptionFault => |fault| What::Command(CommandFault::Option(fault)),
    AgainFault => |fault| What::Command(CommandFault::Again(fault)),
    RepetitionOptions => |fault| What::Command(CommandFault::Repetition(fault)),
    SessionRefusal => |fault| What::Session(SessionFault::Refusal(fault)),
    SessionFigureFault => |fault| What::Session(SessionFault::Figure(fault)),
    LoweringFault => |fault| What::Session(SessionFault::Lowering(fault)),
    SchemeFault => |fault| What::Session(SessionFault::Scheme(fault)),
    PredictionFault => |fault| What::Session(SessionFault::Prediction(fault)),
}

/// One thing that is wrong, and where it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// What is wrong, as facts.
    pub what: What,
    /// Where it stands, if it stands in a file.
    pub place: Option<Place>,
}

impl Fault {
    /// A fault that stands in no file.
    #[must_use]
    pub fn new(what: impl Into<What>) -> Self {
        Self {
            what: what.into(),
            place: None,
        }
    }

    /// The same fault with the stretch of a file where it stands.
    #[must_use]
    pub fn at(mut self, place: Place) -> Self {
        self.place = Some(place);
        self
    }
}
