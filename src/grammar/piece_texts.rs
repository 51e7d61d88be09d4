//! Bands and chains as text: `loop-29mm:2@rack-low,doubled`.
//!
//! In: one option's text and what there is to choose from. Out: hung bands and chains. The grammar:
//! `NAME[:COUNT[@ANCHOR]]` for bands, `NAME[:COUNT[@BOX HEIGHT]]` for chains, then any of the words
//! `single`, `doubled`, `choked`, `straight`, `leader LENGTH`, `left`, `right`, `middle`, each after a
//! comma. An anchor is a name or "HEIGHT" or "HEIGHT,OFFSET". Counts are per side, 1 if left out.

use super::named_pieces::Stock;
use super::option_words::{Words, load_from_text};
use crate::bounds::bounds;
use crate::error::{Error, HungPiece, ItemTextFault, PieceTextFault, Result};
use crate::resistance::{
    Chain, ChainHang, Hang, HangingSide, HungBand, HungChain, Item, Leader, Setup, Weight,
};
use crate::units::{Length, Mass};

/// The parts of an option's text.
#[derive(Debug, Clone, PartialEq)]
struct PieceText {
    /// The piece that is named.
    name: String,
    /// How many a side.
    count: u32,
    /// What stands behind `@`: an anchor, or the height of a box; empty if left out.
    place: String,
    /// The words behind it.
    words: Vec<String>,
}

/// Words that may follow a piece, each after a comma; `leader` is followed by a length.
const WORDS: [&str; 9] = [
    "single", "doubled", "choked", "straight", "leader", "both", "left", "right", "middle",
];

/// Words of which a piece takes one.
const ONE_OF: [&[&str]; 3] = [
    &["single", "doubled", "choked", "straight"],
    &["both", "left", "right", "middle"],
    &["leader"],
];

impl PieceText {
    /// Splits `NAME[:COUNT[@PLACE]][,WORD]…`.
    ///
    /// **Fails** for an empty name and for a count that is no whole number from 1 to 20.
    fn from_text(text: &str) -> Result<Self> {
        let mut fields = text.split(',').map(str::trim);
        let first = fields.next().unwrap_or_default();
        let (head, place) = first.split_once('@').unwrap_or((first, ""));
        if first.trim_end().ends_with('@') {
            return Err(Error::bad(PieceTextFault::NoPlace(text.to_owned())));
        }
        let (name, count) = match head.trim().split_once(':') {
            Some((name, count)) => (name.trim(), count_from(text, count.trim())?),
            None => (head.trim(), 1),
        };
        if name.is_empty() {
            return Err(Error::bad(PieceTextFault::Unnamed(text.to_owned())));
        }
        let mut piece = Self {
            name: name.to_owned(),
            count,
            place: place.trim().to_owned(),
            words: Vec::new(),
        };
        for field in fields {
            piece.add(text, field)?;
        }
        piece.check_one_way(text)?;
        Ok(piece)
    }

    /// **Fails** where two words hang the piece in different ways, or on different sides.
    fn check_one_way(&self, text: &str) -> Result<()> {
        for group in ONE_OF {
            let mut named = self.words.iter().filter(|word| {
                let first = word.split_whitespace().next().unwrap_or_default();
                group.contains(&first)
            });
            if let (Some(first), Some(second)) = (named.next(), named.next()) {
                return Err(Error::bad(PieceTextFault::TwoWays {
                    words: [first.clone(), second.clone()],
                    text: text.to_owned(),
                }));
            }
        }
        Ok(())
    }

    /// Takes what stands behind a comma: a word, or the offset of the place.
    fn add(&mut self, text: &str, field: &str) -> Result<()> {
        let word = field.split_whitespace().next().unwrap_or_default();
        if WORDS.contains(&word) {
            self.words.push(field.to_owned());
        } else if !self.place.is_empty() && self.words.is_empty() && !self.place.contains(',') {
            self.place = format!("{},{field}", self.place);
        } else {
            return Err(Error::bad(PieceTextFault::UnknownPart {
                part: field.to_owned(),
                text: text.to_owned(),
                known: WORDS.to_vec(),
            }));
        }
        Ok(())
    }

    fn side(&self) -> HangingSide {
        let of = |word: &str| self.words.iter().any(|w| w == word);
        match () {
            () if of("left") => HangingSide::Left,
            () if of("right") => HangingSide::Right,
            () if of("middle") => HangingSide::Middle,
            () => HangingSide::Both,
        }
    }
}

fn count_from(text: &str, count: &str) -> Result<u32> {
    let number = count.parse().ok();
    number
        .filter(|number| bounds().pieces.holds(f64::from(*number)))
        .ok_or_else(|| {
            Error::bad(PieceTextFault::Count {
                count: count.to_owned(),
                text: text.to_owned(),
                most: bounds().pieces.most_of_them() as u32,
            })
        })
}

pub(super) fn band(words: &Words, stock: &Stock) -> Result<Item> {
    band_from_text(words.main, stock).map(Item::Band)
}

pub(super) fn chain(words: &Words, stock: &Stock) -> Result<Item> {
    chain_from_text(words.main, stock).map(Item::Chain)
}

/// Hangs a band as a text says.
///
/// **Fails** for an unknown band or anchor (with the nearest names) and for a word of chains.
pub fn band_from_text(text: &str, stock: &Stock) -> Result<HungBand> {
    let piece = PieceText::from_text(text)?;
    let mut hung = HungBand::from_floor(stock.band(&piece.name)?.clone(), piece.count);
    hung.side = piece.side();
    if !piece.place.is_empty() {
        hung.anchor = stock.anchor(&piece.place)?;
    }
    for word in &piece.words {
        match word.as_str() {
            "single" => hung.hang = Hang::Single,
            "doubled" => hung.hang = Hang::Doubled,
            "choked" => hung.hang = Hang::Choked,
            "both" | "left" | "right" | "middle" => {}
            other => return Err(word_of_other(text, other, HungPiece::Band)),
        }
    }
    Ok(hung)
}

/// Hangs a chain as a text says.
///
/// **Fails** for an unknown chain (with the nearest names), a bad height or leader, a word of bands.
pub fn chain_from_text(text: &str, stock: &Stock) -> Result<HungChain> {
    let piece = PieceText::from_text(text)?;
    let mut hung = HungChain::to_floor(stock.chain(&piece.name)?.clone(), piece.count);
    hung.side = piece.side();
    if !piece.place.is_empty() && piece.place != "floor" {
        if Length::from_text(&piece.place).is_err() && stock.anchor(&piece.place).is_ok() {
            return Err(Error::bad(PieceTextFault::AnchoredChain {
                anchor: piece.place,
            }));
        }
        hung.floor = box_height(&piece.place)?;
    }
    for word in &piece.words {
        match word.as_str() {
            "straight" => hung.hang = ChainHang::Straight,
            "doubled" => hung.hang = ChainHang::DoubleLooped,
            "both" | "left" | "right" | "middle" => {}
            other => match other.strip_prefix("leader") {
                Some(length) => hung.chain = on_a_leader(hung.chain, length)?,
                None => return Err(word_of_other(text, other, HungPiece::Chain)),
            },
        }
    }
    Ok(hung)
}

fn word_of_other(text: &str, word: &str, piece: HungPiece) -> Error {
    Error::bad(PieceTextFault::WordOfOther {
        word: word.to_owned(),
        text: text.to_owned(),
        piece,
    })
}

fn box_height(text: &str) -> Result<Length> {
    let height = Length::from_text(text).map_err(Error::bad)?;
    if bounds().box_height.holds(height.as_m()) {
        return Ok(height);
    }
    Err(Error::bad(PieceTextFault::BoxHeight(height)))
}

fn on_a_leader(chain: Chain, length: &str) -> Result<Chain> {
    let length = Length::from_text(length.trim()).map_err(Error::bad)?;
    let mass = if length.as_m() > 0.0 {
        chain.leader().mass
    } else {
        Mass::ZERO
    };
    chain
        .with_leader(Leader { length, mass })
        .map_err(Error::bad)
}

/// Builds a setup from the command line's options.
///
/// **Fails** with the first option that cannot be understood; a mass that is negative or absurd is
/// refused by its type.
pub fn setup_from_texts(
    loads: &[&str],
    bands: &[&str],
    chains: &[&str],
    stock: &Stock,
) -> Result<Setup> {
    let mut items = Vec::new();
    let mut total_kg = 0.0;
    for load in loads {
        let mass = load_from_text(load)?;
        total_kg += mass.as_kg();
        items.push(Item::Weight(Weight::Load(mass)));
    }
    let bound = &bounds().load_mass;
    if !bound.holds(total_kg) {
        return Err(Error::bad(ItemTextFault::TooHeavy {
            text: loads.join(" + "),
            most_kg: bound.most(),
        }));
    }
    for band in bands {
        items.push(Item::Band(band_from_text(band, stock)?));
    }
    for chain in chains {
        items.push(Item::Chain(chain_from_text(chain, stock)?));
    }
    Ok(Setup::new("", items))
}
