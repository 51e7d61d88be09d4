//! Every implement, one row each: its kind, its word, an example, the words that may follow.
//!
//! In: one option's text: kind, quantity, then `WORD VALUE` pairs after commas. Out: an item. From the rows follow
//! the reading of texts, the help, the refusal of an unknown kind and the tests over all implements.

use super::machine_texts::{cable, cam, lever};
use super::named_pieces::Stock;
use super::option_words::{Field, Reader, Words};
use super::piece_texts::{band, chain};
use super::weight_texts::{
    bar, belt, body, collars, counterweight, dumbbell, lowering, plate, plates, sled, spotter,
};
use crate::error::{Error, GrammarFault, ImplementKind, ItemTextFault, Result};
use crate::resistance::Item;

/// A kind of implement that a text can name.
#[derive(Debug, Clone, Copy)]
pub struct ImplementRow {
    /// The kind, by which it is called elsewhere.
    pub kind: ImplementKind,
    /// First word of the text.
    pub word: &'static str,
    /// A text that is read.
    pub example: &'static str,
    /// Words that may follow.
    pub fields: &'static [Field],
    read: Reader,
}

/// A word that says nothing where it is left out.
const fn optional(word: &'static str) -> Field {
    Field {
        word,
        default: None,
    }
}

/// A word with the value that stands in for it.
const fn usually(word: &'static str, value: &'static str) -> Field {
    Field {
        word,
        default: Some(value),
    }
}

const fn row(
    kind: ImplementKind,
    word: &'static str,
    example: &'static str,
    fields: &'static [Field],
    read: Reader,
) -> ImplementRow {
    ImplementRow {
        kind,
        word,
        example,
        fields,
        read,
    }
}

/// Every kind of implement that a text can name, in the order of help.
#[rustfmt::skip]
pub const IMPLEMENTS: [ImplementRow; 16] = [
    row(ImplementKind::Bar, "bar",
        "bar 20 kg",
        &[], bar),
    row(ImplementKind::Plates, "plates",
        "plates 20 kg, pairs 2",
        &[usually("pairs", "1")], plates),
    row(ImplementKind::OnePlate, "plate",
        "plate 5 kg, side left",
        &[optional("side")], plate),
    row(ImplementKind::Collars, "collars",
        "collars 2.5 kg",
        &[], collars),
    row(ImplementKind::Dumbbell, "dumbbell",
        "dumbbell 12 kg",
        &[], dumbbell),
    row(ImplementKind::Belt, "belt",
        "belt 20 kg",
        &[], belt),
    row(ImplementKind::BodyMass, "body",
        "body 80 kg",
        &[], body),
    row(ImplementKind::Band, "band",
        "band loop-29mm:1@floor,doubled",
        &[], band),
    row(ImplementKind::Chain, "chain",
        "chain chain-10mm:2",
        &[], chain),
    row(ImplementKind::Cable, "cable",
        "cable 40 kg, ratio 2, friction 5 %, from rack-high",
        &[usually("ratio", "1"), usually("friction", "0"), optional("from"), optional("offset"), optional("angle")], cable),
    row(ImplementKind::Cam, "cam",
        "cam 0 deg=10 cm, 60 deg=14 cm",
        &[], cam),
    row(ImplementKind::Lever, "lever",
        "lever 30 kg, arm 50 cm, height 120 cm, offset -90 cm, ahead 5 deg",
        &[optional("arm"), optional("height"), optional("offset"), optional("ahead"), optional("start")], lever),
    row(ImplementKind::Sled, "sled",
        "sled 50 kg, friction 3 %",
        &[usually("friction", "0")], sled),
    row(ImplementKind::Lowering, "lowering",
        "lowering 20 kg",
        &[], lowering),
    row(ImplementKind::Spotter, "spotter",
        "spotter 150 N",
        &[usually("phase", "lifting")], spotter),
    row(ImplementKind::Counterweight, "counterweight",
        "counterweight 20 kg",
        &[], counterweight),
];

/// Reads one item: `KIND QUANTITY[, WORD VALUE]…`, see [`IMPLEMENTS`].
///
/// **Fails** for an unknown kind or word, with the known ones, and for a bad quantity.
pub fn item_from_text(text: &str, stock: &Stock) -> Result<Item> {
    let text = text.trim();
    let (word, rest) = text.split_once(char::is_whitespace).unwrap_or((text, ""));
    let Some(row) = IMPLEMENTS.iter().find(|row| row.word == word) else {
        return Err(Error::bad(ItemTextFault::UnknownKind {
            word: word.to_owned(),
        }));
    };
    let words = Words::split(text, row.kind, rest, row.fields)?;
    let item = (row.read)(&words, stock);
    let item = item.and_then(|item| item.accepted().map_err(Error::bad));
    item.map_err(|error| {
        error.inside(|fault| {
            let kind = row.kind;
            GrammarFault::InText { fault, kind }.into()
        })
    })
}
