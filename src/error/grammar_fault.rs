//! What is wrong with a text that names implements.
//!
//! In: the text and its faulty part. Out: facts that `narrative` puts into words.

use super::{BandFitFault, ImplementKind};
use crate::units::Length;

/// Pieces that are hung by name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HungPiece {
    /// Elastic bands.
    Band,
    /// Chains.
    Chain,
}

/// Where the cells of a reading stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ReadingColumn {
    /// Length of the band.
    Length,
    /// Its pull.
    Force,
}

/// What is wrong with the text of an implement.
#[derive(Debug, Clone, PartialEq)]
pub enum ItemTextFault {
    /// The body without its mass.
    BodyOfWhom,
    /// A first word that names no implement.
    UnknownKind {
        /// The word.
        word: String,
    },
    /// A word that says nothing about an implement.
    UnknownWord {
        /// The word.
        word: String,
        /// The whole text.
        text: String,
        /// The implement.
        kind: ImplementKind,
    },
    /// A word that stands twice in the text of an implement.
    WordTwice {
        /// The word.
        word: String,
        /// The whole text.
        text: String,
    },
    /// A value that is no number.
    NoNumber {
        /// The value.
        value: String,
        /// The whole text.
        text: String,
    },
    /// A count of pairs that is none.
    PairCount {
        /// The count.
        count: String,
        /// The whole text.
        text: String,
    },
    /// A side that a bar does not have.
    PlateSide(String),
    /// A cable that leads to a pulley and in a direction.
    TwoLeads(String),
    /// A part that is no point of a cam.
    CamPoint {
        /// The part.
        part: String,
        /// The whole text.
        text: String,
    },
    /// A lever without the length of its arm.
    NoArm(String),
    /// A lever without what it turns about.
    NoPivot(String),
    /// A phase that a spotter does not know.
    SpotterPhase(String),
    /// A load that nobody lifts.
    TooHeavy {
        /// The text.
        text: String,
        /// The heaviest that is taken for real, kg.
        most_kg: f64,
    },
}

/// What is wrong with the text of a band, a chain or an anchor.
#[derive(Debug, Clone, PartialEq)]
pub enum PieceTextFault {
    /// A text without the name of a piece.
    Unnamed(String),
    /// A text with the sign of a place and no place.
    NoPlace(String),
    /// A chain at the anchor of a band.
    AnchoredChain {
        /// The anchor.
        anchor: String,
    },
    /// A part that nothing understands.
    UnknownPart {
        /// The part.
        part: String,
        /// The whole text.
        text: String,
        /// Words that may follow a piece.
        known: Vec<&'static str>,
    },
    /// A count that is no count of pieces.
    Count {
        /// The count.
        count: String,
        /// The whole text.
        text: String,
        /// The largest one.
        most: u32,
    },
    /// A count of pieces in a file that cannot be.
    CountOutside {
        /// The count.
        count: u32,
        /// The largest one.
        most: u32,
    },
    /// Two words that hang a piece in different ways, or on different sides.
    TwoWays {
        /// The words.
        words: [String; 2],
        /// The whole text.
        text: String,
    },
    /// A word that says nothing about a piece.
    WordOfOther {
        /// The word.
        word: String,
        /// The whole text.
        text: String,
        /// The piece.
        piece: HungPiece,
    },
    /// A box so high that no chain comes to lie on it.
    BoxHeight(Length),
    /// A name that no piece has.
    Unknown {
        /// The piece.
        piece: HungPiece,
        /// The name.
        name: String,
        /// The nearest names.
        near: Vec<String>,
        /// All names.
        known: Vec<String>,
    },
    /// A name that no anchor has.
    UnknownAnchor(String),
}

/// What is wrong with the readings of a band.
#[derive(Debug, Clone, PartialEq)]
pub enum ReadingsFault {
    /// A band's description without its name.
    Unnamed(String),
    /// A band's readings that allow no fit.
    OwnBand {
        /// Its name.
        name: String,
        /// Why not.
        fault: BandFitFault,
        /// Whether it was written as a text, for which an example helps.
        in_text: bool,
    },
    /// A part that is no reading of a band.
    NotOne(String),
    /// Two lengths at rest.
    TwoRests(String),
    /// A column of another name.
    Column {
        /// Its place, counted from 1.
        number: usize,
        /// What it is called.
        found: String,
        /// What it should be.
        expected: ReadingColumn,
    },
    /// A file that is no CSV.
    NoCsv {
        /// What the reader of CSV says.
        reason: String,
    },
}

/// What is wrong with a text that names implements.
#[derive(Debug, Clone, PartialEq)]
pub enum GrammarFault<Inner> {
    /// The text of an implement.
    Item(ItemTextFault),
    /// The text of a band, a chain or an anchor.
    Piece(PieceTextFault),
    /// The readings of a band.
    Readings(ReadingsFault),
    /// A fault in the text of an implement, for which an example helps.
    InText {
        /// What is wrong.
        fault: Box<Inner>,
        /// The implement.
        kind: ImplementKind,
    },
    /// A fault on a line of a file.
    OnLine {
        /// The line, counted from 1.
        line: u64,
        /// What is wrong.
        fault: Box<Inner>,
    },
    /// A setup without an item: nothing would be lifted.
    NoItems,
    /// A fault in an item of a setup file.
    InItem {
        /// Its place in the list, counted from 0.
        index: usize,
        /// What is wrong.
        fault: Box<Inner>,
    },
}
