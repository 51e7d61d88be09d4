//! Faults in words: what is wrong, where it stands, and what to try next.
//!
//! In: text and written-out numbers from any room. Out: one [`Error`] that the command line prints
//! and turns into an exit status. It holds text and places only, so every room can use it.

use std::fmt;
use std::ops::Range;

/// The result of everything that can fail here.
pub type Result<T> = std::result::Result<T, Error>;

/// Whether the input is wrong or the question has no answer; decides the exit status.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// Wrong arguments or a wrong file: exit status 2.
    BadInput,
    /// The question is well put and has no answer: exit status 1.
    NoAnswer,
}

/// A stretch of a text file, lines and columns counted from 1, columns in characters.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    /// The file as the user named it.
    pub file: String,
    /// The whole text of that file, so that the line can be shown.
    pub text: String,
    /// First line and column of the faulty stretch.
    pub start: (usize, usize),
    /// Line and column just behind the faulty stretch.
    pub end: (usize, usize),
}

impl Place {
    /// The place of a stretch of bytes; a stretch outside the text is cut to it.
    #[must_use]
    pub fn of(file: &str, text: &str, bytes: Range<usize>) -> Self {
        let position = |byte: usize| {
            let byte = (0..=byte.min(text.len())).rfind(|at| text.is_char_boundary(*at));
            let before = &text[..byte.unwrap_or(0)];
            let line = before.matches('\n').count() + 1;
            let column = before.chars().rev().take_while(|c| *c != '\n').count() + 1;
            (line, column)
        };
        Self {
            file: file.to_owned(),
            text: text.to_owned(),
            start: position(bytes.start),
            end: position(bytes.end.max(bytes.start)),
        }
    }

    /// The stretch in bytes of the text; positions behind a line's end count as its end.
    #[must_use]
    pub fn bytes(&self) -> Range<usize> {
        let byte = |(line, column): (usize, usize)| {
            let before: usize = self
                .text
                .split_inclusive('\n')
                .take(line.saturating_sub(1))
                .map(str::len)
                .sum();
            let line = self.text[before..].split('\n').next().unwrap_or("");
            let inside = line.char_indices().nth(column.saturating_sub(1));
            before + inside.map_or(line.len(), |(index, _)| index)
        };
        let start = byte(self.start);
        start..byte(self.end).max(start)
    }
}

/// One thing that is wrong: message, place if it stands in a file, next moves.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// What is wrong, without a full stop, numbers written out.
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
    pub fn new(message: impl Into<String>) -> Self {
        Self {
            message: message.into(),
            place: None,
            label: None,
            hints: Vec::new(),
        }
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
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Error {
    kind: Kind,
    faults: Vec<Fault>,
}

impl Error {
    /// Wrong arguments or files; the caller collects as many faults as can be known.
    #[must_use]
    pub fn bad_input(faults: Vec<Fault>) -> Self {
        Self {
            kind: Kind::BadInput,
            faults,
        }
    }

    /// One wrong thing in the input.
    #[must_use]
    pub fn bad(message: impl Into<String>) -> Self {
        Self::bad_input(vec![Fault::new(message)])
    }

    /// A well-put question without an answer, with the reason.
    #[must_use]
    pub fn no_answer(message: impl Into<String>) -> Self {
        Self {
            kind: Kind::NoAnswer,
            faults: vec![Fault::new(message)],
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

    /// What kind of failure this is.
    #[must_use]
    pub fn kind(&self) -> Kind {
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
            Kind::BadInput => 2,
            Kind::NoAnswer => 1,
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
            for hint in &fault.hints {
                write!(f, "; {hint}")?;
            }
        }
        Ok(())
    }
}

impl std::error::Error for Error {}
