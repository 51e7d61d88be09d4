//! Words for: what is wrong with a text that names implements.

use super::implement_told;
use super::told::{TellInner, Told};
use crate::error::{
    GrammarFault, HungPiece, ImplementKind, ItemTextFault, PieceTextFault, ReadingColumn,
    ReadingsFault, What,
};
use crate::grammar::{IMPLEMENTS, ImplementRow};
use crate::resistance::NAMED_ANCHORS;
use crate::units::System;

/// How a band of one's own is described.
const OWN_BAND: &str = "write NAME: rest=LENGTH, LENGTH=PULL, such as \"mine: rest=104 cm, 120 cm=10 kg, 150 cm=18 kg\"";

/// The implement whose example stands for all.
const EXAMPLE_OF_ALL: ImplementKind = ImplementKind::Cable;

/// The fault in words.
pub(super) fn told(fault: &GrammarFault<What>, units: System, of: TellInner) -> Told {
    let behind = |place: String, fault: &What| behind(&place, of(fault, units));
    match fault {
        GrammarFault::InText { fault, kind } => {
            let examples = row(*kind).map(|row| format!("an example: \"{}\"", row.example));
            examples.into_iter().fold(of(fault, units), Told::hint)
        }
        GrammarFault::InItem { index, fault } => behind(format!("items[{index}]"), fault),
        GrammarFault::OnLine { line, fault } => behind(format!("line {line}"), fault),
        GrammarFault::NoItems => Told::new("the setup has no items, so nothing is lifted with it")
            .hint(
                "list what hangs, such as items: [Weight(Bar(\"20 kg\")), Band(\"loop-14mm:1\")]",
            ),
        GrammarFault::Item(fault) => of_item(fault),
        GrammarFault::Piece(fault) => of_piece(fault),
        GrammarFault::Readings(fault) => of_readings(fault, units),
    }
}

/// A fault behind where it stands: "items[2]: …".
fn behind(place: &str, told: Told) -> Told {
    Told {
        message: format!("{place}: {}", told.message),
        ..told
    }
}

fn row(kind: ImplementKind) -> Option<&'static ImplementRow> {
    IMPLEMENTS.iter().find(|row| row.kind == kind)
}

/// What is wrong with the text of an implement.
fn of_item(fault: &ItemTextFault) -> Told {
    match fault {
        ItemTextFault::BodyOfWhom => Told::new(
            "`body` needs its mass here; in a pull-up or calf raise the lifter's own body is in the load already",
        )
        .hint("leave --item out to move the body alone"),
        ItemTextFault::UnknownKind { word } => unknown_kind(word),
        ItemTextFault::UnknownWord { word, text, kind } => unknown_word(word, text, *kind),
        ItemTextFault::WordTwice { word, text } => {
            Told::new(format!("`{word}` stands twice in `{text}`")).hint("leave one of them out")
        }
        ItemTextFault::NoNumber { value, text } => {
            Told::new(format!("`{value}` in `{text}` is no number")).hint("write 2, 0.05 or 5 %")
        }
        ItemTextFault::PairCount { count, text } => Told::new(format!(
            "`{count}` in `{text}` is no count of pairs: 1 to 20 are"
        )),
        ItemTextFault::PlateSide(side) => Told::new(format!(
            "`{side}` is no side of the bar: left and right are"
        )),
        ItemTextFault::TwoLeads(text) => Told::new(format!("`{text}` leads the cable in two ways"))
            .hint("write either from ANCHOR or angle ANGLE"),
        ItemTextFault::CamPoint { part, text } => Told::new(format!(
            "`{part}` in `{text}` is no point of a cam: write ANGLE=RADIUS"
        )),
        ItemTextFault::NoArm(text) => Told::new(format!(
            "`{text}` does not say how long the loaded arm is"
        ))
        .hint("add arm LENGTH"),
        ItemTextFault::NoPivot(text) => Told::new(format!(
            "`{text}` does not say what the arm turns about"
        ))
        .hint("write height and offset of its pivot, or start ANGLE for an arm that turns with the pad"),
        ItemTextFault::SpotterPhase(phase) => Told::new(format!(
            "`{phase}` is no phase of a spotter: lifting and both are"
        )),
        ItemTextFault::TooHeavy { text, most_kg } => too_heavy(text, *most_kg),
    }
}

fn unknown_kind(word: &str) -> Told {
    let known: Vec<&str> = IMPLEMENTS.iter().map(|row| row.word).collect();
    let told = Told::new(format!("`{word}` is no kind of load"))
        .hint(format!("kinds are {}", known.join(", ")));
    let example = row(EXAMPLE_OF_ALL).map(|row| format!("such as \"{}\"", row.example));
    example.into_iter().fold(told, Told::hint)
}

fn unknown_word(word: &str, text: &str, kind: ImplementKind) -> Told {
    let (of, known) = row(kind).map_or(("load", Vec::new()), |row| {
        let words = row.fields.iter().map(|field| field.word);
        (row.word, words.collect())
    });
    Told::new(format!("`{word}` in `{text}` says nothing about a {of}"))
        .hint(format!("words for it are {}", known.join(", ")))
}

fn too_heavy(text: &str, most_kg: f64) -> Told {
    Told::new(format!("`{text}` is no load that anybody lifts")).hint(format!(
        "loads run from 0 kg to {most_kg} kg, bar and both sides together"
    ))
}

/// What is wrong with the text of a band, a chain, an anchor.
fn of_piece(fault: &PieceTextFault) -> Told {
    match fault {
        PieceTextFault::Unnamed(text) => Told::new(format!("`{text}` names no band or chain"))
            .hint("write NAME or NAME:COUNT, such as loop-29mm:2"),
        PieceTextFault::NoPlace(text) => Told::new(format!("`{text}` names no place behind `@`"))
            .hint("write the anchor, such as loop-29mm:2@rack-high, or leave `@` out"),
        PieceTextFault::AnchoredChain { anchor } => Told::new(format!(
            "a chain takes no anchor, and `{anchor}` is one: it hangs from the bar and comes to lie on the floor"
        ))
        .hint("leave it out, or write the height of a box that it comes to lie on: chain-10mm:1@20 cm"),
        PieceTextFault::UnknownPart { part, text, known } => {
            Told::new(format!("`{part}` in `{text}` is understood by nothing"))
                .hint(format!("words that may follow are {}", known.join(", ")))
        }
        PieceTextFault::Count { count, text, most } => Told::new(format!(
            "`{count}` in `{text}` is no count of pieces a side"
        ))
        .hint(format!(
            "a count is a whole number from 1 to {most}; it stands behind the name: loop-29mm:2"
        )),
        PieceTextFault::CountOutside { count, most } => Told::new(format!(
            "a count of {count} a side is outside what can be: 1 to {most}"
        )),
        PieceTextFault::TwoWays {
            words: [first, second],
            text,
        } => Told::new(format!(
            "`{first}` and `{second}` in `{text}` cannot both be"
        ))
        .hint("leave one of them out"),
        PieceTextFault::WordOfOther { word, text, piece } => {
            let (of, words) = words_of(*piece);
            Told::new(format!("`{word}` in `{text}` says nothing about {of}"))
                .hint(format!("words for {of} are {words}"))
        }
        PieceTextFault::BoxHeight(height) => Told::new(format!(
            "a chain cannot come to lie {} m high",
            height.as_m()
        ))
        .hint("behind @ stands the height of the box under the chain, 0 m to 2 m"),
        PieceTextFault::Unknown {
            piece,
            name,
            near,
            known,
        } => unknown_piece(*piece, name, near, known),
        PieceTextFault::UnknownAnchor(name) => unknown_anchor(name),
    }
}

fn words_of(piece: HungPiece) -> (&'static str, &'static str) {
    match piece {
        HungPiece::Band => ("bands", "single, doubled, choked, left, right, middle"),
        HungPiece::Chain => (
            "chains",
            "straight, doubled, leader LENGTH, left, right, middle",
        ),
    }
}

fn unknown_piece(piece: HungPiece, name: &str, near: &[String], known: &[String]) -> Told {
    let kind = match piece {
        HungPiece::Band => "band",
        HungPiece::Chain => "chain",
    };
    let told = Told::new(format!("no {kind} is named `{name}`"));
    match (near.is_empty(), known.is_empty()) {
        (false, _) => told.hint(format!("did you mean {}?", near.join(", or "))),
        (true, false) => told.hint(format!("{kind}s are {}", known.join(", "))),
        (true, true) => told.hint(format!("there are no {kind}s here")),
    }
}

fn unknown_anchor(name: &str) -> Told {
    let names: Vec<&str> = NAMED_ANCHORS.iter().map(|(name, _, _)| *name).collect();
    Told::new(format!("no anchor is named `{name}`"))
        .hint(format!("anchors are {}", names.join(", ")))
        .hint("or write its height, and how far in front it stands: \"10 cm,-20 cm\"")
}

/// What is wrong with the readings of a band.
fn of_readings(fault: &ReadingsFault, units: System) -> Told {
    match fault {
        ReadingsFault::OwnBand {
            name,
            fault,
            in_text,
        } => {
            let told = behind(
                &format!("band `{name}`"),
                Told::new(implement_told::of_fit(fault, units)),
            );
            if *in_text { told.hint(OWN_BAND) } else { told }
        }
        ReadingsFault::Unnamed(text) => {
            Told::new(format!("`{text}` describes no band: its name is missing")).hint(OWN_BAND)
        }
        ReadingsFault::NotOne(part) => Told::new(format!("`{part}` is no reading of a band"))
            .hint("write length=pull, such as \"120 cm=10 kg, 150 cm=18 kg\""),
        ReadingsFault::TwoRests(text) => {
            Told::new(format!("`{text}` has two lengths at rest")).hint("leave one of them out")
        }
        ReadingsFault::Column {
            number,
            found,
            expected,
        } => wrong_column(*number, found, *expected),
        ReadingsFault::NoCsv { reason } => Told::new(format!("the readings are no CSV: {reason}"))
            .hint("write one reading a line: length,force"),
    }
}

fn wrong_column(number: usize, found: &str, expected: ReadingColumn) -> Told {
    let expected = match expected {
        ReadingColumn::Length => "length",
        ReadingColumn::Force => "force",
    };
    Told::new(format!(
        "column {number} is called `{found}`, expected `{expected}`"
    ))
    .hint("the head line is `length,force`, or with units `length_cm,force_kg`")
}
