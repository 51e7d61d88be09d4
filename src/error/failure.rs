//! Why a question was not answered, and with which exit status the program ends.
//!
//! In: one fault or several. Out: [`Error`], the error of every function that can fail.

use super::{Fault, What};
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

    /// The same error with what is wrong put inside something wider, every fault by itself.
    #[must_use]
    pub fn inside(self, wrap: impl Fn(Box<What>) -> What) -> Self {
        let wider = |fault: Fault| Fault {
            what: wrap(Box::new(fault.what)),
            place: fault.place,
        };
        Self {
            kind: self.kind,
            faults: self.faults.into_iter().map(wider).collect(),
        }
    }

    /// The same error with every fault changed.
    #[must_use]
    pub fn each(self, change: impl FnMut(Fault) -> Fault) -> Self {
        Self {
            kind: self.kind,
            faults: self.faults.into_iter().map(change).collect(),
        }
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

/// For developers: the facts as they are. People read `narrative::faults`.
impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, fault) in self.faults.iter().enumerate() {
            if index > 0 {
                writeln!(f)?;
            }
            write!(f, "{:?}", fault.what)?;
            if let Some(place) = &fault.place {
                write!(f, " ({}:{}:{})", place.file, place.start.0, place.start.1)?;
            }
        }
        Ok(())
    }
}

impl std::error::Error for Error {}
