//! Faults in words: what is wrong, where it stands, and what to try next.
//!
//! In: text and written-out numbers from any room. Out: one [`Error`] that the command line prints
//! and turns into an exit status. It holds text and places only, so every room can use it.

mod body;
mod command;
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
mod what;

pub use body::BodyFault;
pub use command::CommandFault;
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
pub use what::What;

use std::fmt;

/// The result of everything that can fail here.
pub type Result<T> = std::result::Result<T, Error>;

/// Whether the input is wrong or the question has no answer; decides the exit status.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FaultKind {
    /// Wrong arguments or a wrong file: exit status 2.
    BadInput,
    /// The question is well put and has no answer: exit status 1.
    NoAnswer,
}

/// One thing that is wrong: message, place if it stands in a file, next moves.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// What is wrong, as facts; `None` while only its words are known.
    pub what: Option<What>,
    /// What is wrong, without a full stop, numbers written out. (Passing: goes when no room reads it.)
    pub message: String,
    /// Where it stands, if it stands in a file.
    pub place: Option<Place>,
    /// A short label for the marked stretch, such as "expected a length".
    pub label: Option<String>,
    /// What to try next, one move a line.
    pub hints: Vec<String>,
}

impl Fault {
    /// A fault with a message and nothing else.
    #[must_use]
    pub fn new(what: impl Into<What>) -> Self {
        let (what, message) = match what.into() {
            What::Told(message) => (None, message),
            // Passing, against the map: rooms that still read a message find the words of a fact there.
            what => {
                let message = crate::narrative::faults::message(&what);
                (Some(what), message)
            }
        };
        Self {
            what,
            message,
            place: None,
            label: None,
            hints: Vec::new(),
        }
    }

    /// Every next move, those that follow from the fact first. (Passing, as `message` is.)
    #[must_use]
    pub fn every_hint(&self) -> Vec<String> {
        crate::narrative::faults::told(self, crate::units::System::Metric).hints
    }

    /// The same fault with the stretch of a file where it stands.
    #[must_use]
    pub fn at(mut self, place: Place) -> Self {
        self.place = Some(place);
        self
    }

    /// The same fault with a label on the marked stretch.
    #[must_use]
    pub fn label(mut self, label: impl Into<String>) -> Self {
        self.label = Some(label.into());
        self
    }

    /// The same fault with one more next move.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hints.push(hint.into());
        self
    }
}

/// Why a question was not answered: one fault or several, all of one kind.
#[derive(Debug, Clone, PartialEq)]
pub struct Error {
    kind: FaultKind,
    faults: Vec<Fault>,
}

impl Error {
    /// Wrong arguments or files; the caller collects as many faults as can be known.
    #[must_use]
    pub fn bad_input(faults: Vec<Fault>) -> Self {
        Self {
            kind: FaultKind::BadInput,
            faults,
        }
    }

    /// One wrong thing in the input.
    #[must_use]
    pub fn bad(what: impl Into<What>) -> Self {
        Self::bad_input(vec![Fault::new(what)])
    }

    /// A well-put question without an answer, with the reason.
    #[must_use]
    pub fn no_answer(what: impl Into<What>) -> Self {
        Self {
            kind: FaultKind::NoAnswer,
            faults: vec![Fault::new(what)],
        }
    }

    /// The same error with one more next move on its last fault.
    #[must_use]
    pub fn hint(mut self, hint: impl Into<String>) -> Self {
        if let Some(last) = self.faults.last_mut() {
            last.hints.push(hint.into());
        }
        self
    }

    /// The same error with what is wrong put inside something wider, every fault by itself.
    #[must_use]
    pub fn inside(mut self, wrap: impl Fn(Box<What>) -> What) -> Self {
        for fault in &mut self.faults {
            let told = std::mem::take(&mut fault.message);
            let what = fault.what.take().unwrap_or(What::Told(told));
            let wider = Fault::new(wrap(Box::new(what)));
            (fault.what, fault.message) = (wider.what, wider.message);
        }
        self
    }

    /// What kind of failure this is.
    #[must_use]
    pub fn kind(&self) -> FaultKind {
        self.kind
    }

    /// The faults, in the order they were found.
    #[must_use]
    pub fn faults(&self) -> &[Fault] {
        &self.faults
    }

    /// 2 for bad input, 1 for a question without an answer.
    #[must_use]
    pub fn exit_status(&self) -> u8 {
        match self.kind {
            FaultKind::BadInput => 2,
            FaultKind::NoAnswer => 1,
        }
    }
}

impl From<Fault> for Error {
    fn from(fault: Fault) -> Self {
        Self::bad_input(vec![fault])
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, fault) in self.faults.iter().enumerate() {
            if index > 0 {
                writeln!(f)?;
            }
            write!(f, "{}", fault.message)?;
            if let Some(place) = &fault.place {
                write!(f, " ({}:{}:{})", place.file, place.start.0, place.start.1)?;
            }
            for hint in fault.every_hint() {
                write!(f, "; {hint}")?;
            }
        }
        Ok(())
    }
}

impl std::error::Error for Error {}
