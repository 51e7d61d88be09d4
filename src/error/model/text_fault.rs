//! Why a text is no record: its grammar, its fields, the types of its values.
//!
//! In: what the reader of model files stops at. Out: [`TextFault`].

use crate::error::Known;
use crate::units::QuantityKind;

/// Why a text is no record.
#[derive(Debug, Clone, PartialEq)]
pub enum TextFault {
    /// The file holds nothing.
    Empty {
        /// The file.
        file: String,
    },
    /// More fields, keys and items than any model file has.
    TooManyParts {
        /// The file.
        file: String,
        /// The most that are read.
        most: usize,
    },
    /// The file begins with something else than a record.
    NoRecord,
    /// A field or key stands twice in one record or map.
    GivenTwice {
        /// Path of the value.
        path: String,
    },
    /// A field stands twice, and the reader names no more than the field.
    FieldTwice {
        /// The field.
        field: String,
    },
    /// A bare number that is not finite.
    NotFinite {
        /// Path of the value.
        path: String,
        /// The number as written.
        written: String,
    },
    /// A text holds a character that cannot be shown: a control character, a sign that turns the direction of the
    /// text, or no character at all.
    Unprintable {
        /// Path of the value.
        path: String,
        /// The character's number.
        code: u32,
    },
    /// A text that is too long to be shown.
    TooLong {
        /// Path of the value.
        path: String,
        /// Its letters.
        letters: usize,
        /// The most.
        most: usize,
    },
    /// A field that its record does not have.
    NoSuchField {
        /// The field.
        field: String,
        /// Type of the record, if the reader knows it.
        record: Option<String>,
        /// The fields there are.
        known: Known,
    },
    /// A field that its record lacks.
    MissingField {
        /// Path of the record; empty for the whole file.
        path: String,
        /// The field.
        field: String,
        /// Other fields that the same record lacks.
        others: Vec<String>,
        /// Type of the record, if the reader knows it.
        record: Option<String>,
    },
    /// A word that is none of a choice.
    NoSuchWord {
        /// The word.
        word: String,
        /// Type of the choice, if the reader knows it.
        choice: Option<String>,
        /// The words there are.
        known: Known,
    },
    /// A value of another type.
    Type(TypeFault),
    /// No comma behind a value.
    NoComma {
        /// Whether the place is that of the value before.
        behind: bool,
    },
    /// A text without its closing quote on its line.
    OpenQuote,
    /// The grammar is broken.
    Syntax {
        /// Path of what it stands in; empty for the whole file.
        path: String,
        /// How.
        what: SyntaxFault,
        /// What stands there, if it is short.
        found: Option<String>,
    },
    /// What the types of the record itself say in a way of their own.
    Refused {
        /// What they say.
        why: String,
    },
}

/// A value of another type than is expected.
#[derive(Debug, Clone, PartialEq)]
pub enum TypeFault {
    /// A value of another type.
    WrongType {
        /// Path of the value; empty for the whole file.
        path: String,
        /// What is expected there.
        expected: ExpectedType,
        /// What stands there.
        found: FoundValue,
    },
    /// Too few or too many values in the brackets of a choice.
    WrongCount {
        /// The word before the brackets.
        word: String,
        /// How many it takes, as the reader says it.
        takes: String,
        /// How many stand there.
        found: usize,
    },
    /// Too few or too many values in other brackets.
    WrongLength {
        /// What is expected, as the reader says it.
        expected: String,
        /// How many stand there.
        found: usize,
    },
    /// A record of another name.
    OtherRecord {
        /// The name that stands there.
        found: String,
        /// Type of the record that is expected.
        expected: String,
    },
}

/// What is expected where a value of another type stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ExpectedType {
    /// A quantity with its unit.
    Quantity(QuantityKind),
    /// A number.
    Number,
    /// A whole number.
    WholeNumber,
    /// True or false.
    Boolean,
    /// As the reader says it.
    Other(String),
}

/// What stands where a value of another type is expected.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum FoundValue {
    /// A number, as the reader marks it.
    Number(String),
    /// A text, as the reader marks it.
    Text(String),
    /// Nothing.
    Nothing,
    /// A list.
    List,
    /// As the reader says it.
    Other(String),
}

/// How the grammar of a text is broken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SyntaxFault {
    /// It ends in the middle of a record.
    EndsEarly,
    /// No colon behind a name.
    Colon,
    /// No map begins.
    MapBegins,
    /// A map does not end.
    MapEnds,
    /// No list begins.
    ListBegins,
    /// A list does not end.
    ListEnds,
    /// No record begins.
    RecordBegins,
    /// A record does not end.
    RecordEnds,
    /// No text in quotes.
    Text,
    /// A text does not end.
    TextEnds,
    /// Neither true nor false.
    Boolean,
    /// No number.
    Number,
    /// No whole number.
    WholeNumber,
    /// No name.
    Name,
    /// A number whose decimals stand behind a comma.
    DecimalComma {
        /// The same with a point.
        meant: String,
    },
    /// None of the words of a choice.
    NoWord {
        /// The words there are.
        words: Vec<String>,
    },
    /// Something stands behind the record.
    Trailing,
    /// A comment does not end.
    CommentEnds,
    /// Brackets in brackets beyond what is read.
    TooDeep,
    /// As the reader says it.
    Other(String),
}
