//! What is wrong, as facts: the sum of what every room can find fault with.
//!
//! In: the fault of one room. Out: one type that travels up to the door, where `narrative` puts it into words.

use super::{
    ArmFault, BodyFault, BridgeFault, CommandFault, FigureFault, FitFault, GrammarFault, GymFault,
    HoldFault, ImplementFault, LegPressFault, LogFault, LoweringFault, MaximumSearchFault,
    ModelFault, NumericFault, PathFault, PlanFault, PredictionFault, ProgrammeFault,
    RepetitionFault, RuleFault, SchemeFault, SessionFault, SessionFigureFault, SessionRefusal,
    SettingFault, StanceFault, StudyFault, TechniqueFault, TextFault,
};
use crate::units::QuantityFault;

/// What is wrong, as facts: one variant a room, its words are made in `narrative`.
#[derive(Debug, Clone, PartialEq)]
pub enum What {
    /// Words as they are. (Passing: goes when every room raises facts.)
    Told(String),
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
    Grammar(GrammarFault),
    /// What is wrong with a gym, a wish, or a search for setups.
    Gym(GymFault),
    /// What is wrong with a training log.
    Log(LogFault),
    /// Why the ground of a session cannot be laid.
    Plan(PlanFault),
    /// Why a session is not planned.
    Session(SessionFault),
    /// What is wrong in a model file or a path of a value.
    Model(ModelFault),
    /// Why a question has no answer.
    Study(StudyFault),
    /// Why a figure cannot be drawn.
    Figure(FigureFault),
    /// What is wrong with the arguments of a command.
    Command(CommandFault),
}

impl From<String> for What {
    fn from(text: String) -> Self {
        Self::Told(text)
    }
}

impl From<&str> for What {
    fn from(text: &str) -> Self {
        Self::Told(text.to_owned())
    }
}

impl From<QuantityFault> for What {
    fn from(fault: QuantityFault) -> Self {
        Self::Quantity(fault)
    }
}

impl From<NumericFault> for What {
    fn from(fault: NumericFault) -> Self {
        Self::Numeric(fault)
    }
}

impl From<ProgrammeFault> for What {
    fn from(fault: ProgrammeFault) -> Self {
        Self::Numeric(NumericFault::Programme(fault))
    }
}

impl From<FitFault> for What {
    fn from(fault: FitFault) -> Self {
        Self::Numeric(NumericFault::Fit(fault))
    }
}

impl From<BodyFault> for What {
    fn from(fault: BodyFault) -> Self {
        Self::Body(fault)
    }
}

impl From<PathFault> for What {
    fn from(fault: PathFault) -> Self {
        Self::Path(fault)
    }
}

impl From<HoldFault> for What {
    fn from(fault: HoldFault) -> Self {
        Self::Hold(fault)
    }
}

impl From<RepetitionFault> for What {
    fn from(fault: RepetitionFault) -> Self {
        Self::Repetition(fault)
    }
}

impl From<TechniqueFault> for What {
    fn from(fault: TechniqueFault) -> Self {
        Self::Path(PathFault::Technique(fault))
    }
}

impl From<ArmFault> for What {
    fn from(fault: ArmFault) -> Self {
        Self::Path(PathFault::Arm(fault))
    }
}

impl From<StanceFault> for What {
    fn from(fault: StanceFault) -> Self {
        Self::Path(PathFault::Stance(fault))
    }
}

impl From<BridgeFault> for What {
    fn from(fault: BridgeFault) -> Self {
        Self::Path(PathFault::Bridge(fault))
    }
}

impl From<LegPressFault> for What {
    fn from(fault: LegPressFault) -> Self {
        Self::Path(PathFault::LegPress(fault))
    }
}

impl From<MaximumSearchFault> for What {
    fn from(fault: MaximumSearchFault) -> Self {
        Self::Repetition(RepetitionFault::Maximum(fault))
    }
}

impl From<ImplementFault> for What {
    fn from(fault: ImplementFault) -> Self {
        Self::Implement(fault)
    }
}

impl From<GrammarFault> for What {
    fn from(fault: GrammarFault) -> Self {
        Self::Grammar(fault)
    }
}

impl From<GymFault> for What {
    fn from(fault: GymFault) -> Self {
        Self::Gym(fault)
    }
}

impl From<LogFault> for What {
    fn from(fault: LogFault) -> Self {
        Self::Log(fault)
    }
}

impl From<PlanFault> for What {
    fn from(fault: PlanFault) -> Self {
        Self::Plan(fault)
    }
}

impl From<SessionFault> for What {
    fn from(fault: SessionFault) -> Self {
        Self::Session(fault)
    }
}

impl From<TextFault> for What {
    fn from(fault: TextFault) -> Self {
        Self::Model(ModelFault::Text(fault))
    }
}

impl From<RuleFault> for What {
    fn from(fault: RuleFault) -> Self {
        Self::Model(ModelFault::Rule(fault))
    }
}

impl From<SettingFault> for What {
    fn from(fault: SettingFault) -> Self {
        Self::Model(ModelFault::Setting(fault))
    }
}

impl From<ModelFault> for What {
    fn from(fault: ModelFault) -> Self {
        Self::Model(fault)
    }
}

impl From<StudyFault> for What {
    fn from(fault: StudyFault) -> Self {
        Self::Study(fault)
    }
}

impl From<FigureFault> for What {
    fn from(fault: FigureFault) -> Self {
        Self::Figure(fault)
    }
}

impl From<CommandFault> for What {
    fn from(fault: CommandFault) -> Self {
        Self::Command(fault)
    }
}

impl From<SessionRefusal> for What {
    fn from(fault: SessionRefusal) -> Self {
        Self::Session(SessionFault::Refusal(fault))
    }
}

impl From<SessionFigureFault> for What {
    fn from(fault: SessionFigureFault) -> Self {
        Self::Session(SessionFault::Figure(fault))
    }
}

impl From<LoweringFault> for What {
    fn from(fault: LoweringFault) -> Self {
        Self::Session(SessionFault::Lowering(fault))
    }
}

impl From<SchemeFault> for What {
    fn from(fault: SchemeFault) -> Self {
        Self::Session(SessionFault::Scheme(fault))
    }
}

impl From<PredictionFault> for What {
    fn from(fault: PredictionFault) -> Self {
        Self::Session(SessionFault::Prediction(fault))
    }
}
