//! The command line's words for bands and chains: `loop-29mm:2@rack-low,doubled`.
//!
//! In: one option's text and what there is to choose from. Out: hung bands and chains. The grammar:
//! `NAME[:COUNT[@ANCHOR]]` for bands, `NAME[:COUNT[@BOX HEIGHT]]` for chains, then any of the words
//! `single`, `doubled`, `choked`, `straight`, `leader LENGTH`, `left`, `right`, `middle`, each after a
//! comma. An anchor is a name or "HEIGHT" or "HEIGHT,OFFSET". Counts are per side, 1 if left out.

use super::readings_text::readings_from_text;
use crate::error::{Error, Result};
use crate::resistance::{
    Anchor, Band, Chain, ChainHang, FittedPull, Hang, HungBand, HungChain, Item, Leader, Setup,
    Side, Weight,
};
use crate::units::{Length, Mass};
use std::collections::BTreeMap;

/// Most pieces a side that a text may ask for. Assumed: no bar end holds more.
const MOST_PIECES: u32 = 20;

/// What there is to choose from by name.
#[derive(Debug, Clone, Copy)]
pub struct Stock<'a> {
    /// Bands by name.
    pub bands: &'a BTreeMap<String, Band>,
    /// Chains by name.
    pub chains: &'a BTreeMap<String, Chain>,
    /// Anchors by name, before the general ones.
    pub anchors: &'a BTreeMap<String, Anchor>,
}

/// The parts of an option's text.
#[derive(Debug, Clone, PartialEq)]
pub struct PieceText {
    /// The piece that is named.
    pub name: String,
    /// How many a side.
    pub count: u32,
    /// What stands behind `@`: an anchor, or the height of a box; empty if left out.
    pub place: String,
    /// The words behind it.
    pub words: Vec<String>,
}

/// Words that may follow a piece, each after a comma; `leader` is followed by a length.
const WORDS: [&str; 9] = [
    "single", "doubled", "choked", "straight", "leader", "both", "left", "right", "middle",
];

impl PieceText {
    /// Splits `NAME[:COUNT[@PLACE]][,WORD]…`.
    ///
    /// **Fails** for an empty name and for a count that is no whole number from 1 to 20.
    pub fn from_text(text: &str) -> Result<Self> {
        let mut fields = text.split(',').map(str::trim);
        let (head, mut place) = match fields.next().unwrap_or_default().split_once('@') {
            Some((head, place)) => (head.trim(), place.trim().to_owned()),
            None => (
                text.split(',').next().unwrap_or_default().trim(),
                String::new(),
            ),
        };
        let (name, count) = match head.split_once(':') {
            Some((name, count)) => (name.trim(), count_from(text, count.trim())?),
            None => (head, 1),
        };
        if name.is_empty() {
            return Err(Error::bad(format!("`{text}` names no band or chain"))
                .hint("write NAME or NAME:COUNT, such as loop-29mm:2"));
        }
        let mut words = Vec::new();
        for field in fields {
            let word = field.split_whitespace().next().unwrap_or_default();
            if WORDS.contains(&word) {
                words.push(field.to_owned());
            } else if !place.is_empty() && words.is_empty() && !place.contains(',') {
                place = format!("{place},{field}");
            } else {
                return Err(
                    Error::bad(format!("`{field}` in `{text}` is understood by nothing"))
                        .hint(format!("words that may follow are {}", WORDS.join(", "))),
                );
            }
        }
        Ok(Self {
            name: name.to_owned(),
            count,
            place,
            words,
        })
    }

    fn side(&self) -> Side {
        let of = |word: &str| self.words.iter().any(|w| w == word);
        match () {
            () if of("left") => Side::Left,
            () if of("right") => Side::Right,
            () if of("middle") => Side::Middle,
            () => Side::Both,
        }
    }
}

fn count_from(text: &str, count: &str) -> Result<u32> {
    count
        .parse()
        .ok()
        .filter(|count| (1..=MOST_PIECES).contains(count))
        .ok_or_else(|| {
            Error::bad(format!("`{count}` in `{text}` is no count of pieces a side"))
                .hint(format!("a count is a whole number from 1 to {MOST_PIECES}; it stands behind the name: loop-29mm:2"))
        })
}

/// Hangs a band as a text says.
///
/// **Fails** for an unknown band or anchor (with the nearest names) and for a word of chains.
pub fn band_from_text(text: &str, stock: &Stock) -> Result<HungBand> {
    let piece = PieceText::from_text(text)?;
    let band = chosen("band", &piece.name, stock.bands)?;
    let mut hung = HungBand::from_floor(band.clone(), piece.count);
    hung.side = piece.side();
    if !piece.place.is_empty() {
        hung.anchor = Anchor::from_text(&piece.place, &|name| stock.anchors.get(name).copied())?;
    }
    for word in &piece.words {
        match word.as_str() {
            "single" => hung.hang = Hang::Single,
            "doubled" => hung.hang = Hang::Doubled,
            "choked" => hung.hang = Hang::Choked,
            "both" | "left" | "right" | "middle" => {}
            other => {
                return Err(wrong_word(
                    text,
                    other,
                    "bands",
                    "single, doubled, choked, left, right, middle",
                ));
            }
        }
    }
    Ok(hung)
}

/// Reads the user's own band: `mine: rest=104 cm, 120 cm=10 kg, 150 cm=18 kg`.
///
/// The readings are of the band pulled as it is, a loop as a loop. The rest length may be left out
/// when three readings pull.
///
/// **Fails** for a text without a name and for readings that allow no fit.
pub fn own_band_from_text(text: &str) -> Result<Band> {
    let example = "write NAME: rest=LENGTH, LENGTH=PULL, such as \"mine: rest=104 cm, 120 cm=10 kg, 150 cm=18 kg\"";
    let (name, readings) = text
        .split_once(':')
        .filter(|(name, _)| !name.trim().is_empty())
        .ok_or_else(|| {
            Error::bad(format!("`{text}` describes no band: its name is missing")).hint(example)
        })?;
    let is_rest = |part: &str| part.trim_start().starts_with("rest");
    let rest = readings.split(',').find(|part| is_rest(part));
    let rest = rest.map(|part| {
        part.trim()
            .trim_start_matches("rest")
            .trim_start_matches([' ', '='])
    });
    let rest = rest
        .map(Length::from_text)
        .transpose()
        .map_err(Error::bad)?;
    let pulls: Vec<&str> = readings.split(',').filter(|part| !is_rest(part)).collect();
    let readings = readings_from_text(&pulls.join(","))?;
    let fitted = FittedPull::from_readings(&readings, rest)
        .map_err(|fault| Error::bad(format!("band `{}`: {fault}", name.trim())).hint(example))?;
    Ok(Band::measured(name.trim(), fitted))
}

/// Hangs a chain as a text says.
///
/// **Fails** for an unknown chain (with the nearest names), a bad height or leader, a word of bands.
pub fn chain_from_text(text: &str, stock: &Stock) -> Result<HungChain> {
    let piece = PieceText::from_text(text)?;
    let chain = chosen("chain", &piece.name, stock.chains)?.clone();
    let mut hung = HungChain::to_floor(chain, piece.count);
    hung.side = piece.side();
    if !piece.place.is_empty() && piece.place != "floor" {
        hung.floor = box_height(&piece.place)?;
    }
    for word in &piece.words {
        match word.as_str() {
            "straight" => hung.hang = ChainHang::Straight,
            "doubled" => hung.hang = ChainHang::DoubleLooped,
            "both" | "left" | "right" | "middle" => {}
            other => match other.strip_prefix("leader") {
                Some(length) => hung.chain = on_a_leader(hung.chain, length)?,
                None => {
                    return Err(wrong_word(
                        text,
                        other,
                        "chains",
                        "straight, doubled, leader LENGTH, left, right, middle",
                    ));
                }
            },
        }
    }
    Ok(hung)
}

fn box_height(text: &str) -> Result<Length> {
    let height = Length::from_text(text).map_err(Error::bad)?;
    if (0.0..=2.0).contains(&height.as_m()) {
        return Ok(height);
    }
    Err(Error::bad(format!(
        "a chain cannot come to lie {} m high",
        height.as_m()
    ))
    .hint("behind @ stands the height of the box under the chain, 0 m to 2 m"))
}

fn on_a_leader(chain: Chain, length: &str) -> Result<Chain> {
    let length = Length::from_text(length).map_err(Error::bad)?;
    let leader = Leader {
        length,
        mass: if length.as_m() > 0.0 {
            chain.leader().mass
        } else {
            Mass::ZERO
        },
    };
    chain.with_leader(leader).map_err(Error::bad)
}

fn wrong_word(text: &str, word: &str, of: &str, words: &str) -> Error {
    Error::bad(format!("`{word}` in `{text}` says nothing about {of}"))
        .hint(format!("words for {of} are {words}"))
}

/// The piece of that name, or a fault that offers the nearest names.
fn chosen<'a, T>(kind: &str, name: &str, known: &'a BTreeMap<String, T>) -> Result<&'a T> {
    known.get(name).ok_or_else(|| {
        let error = Error::bad(format!("no {kind} is named `{name}`"));
        let mut near: Vec<(usize, &str)> = known
            .keys()
            .map(|other| (strsim::damerau_levenshtein(name, other), other.as_str()))
            .collect();
        near.sort_unstable();
        let close: Vec<&str> = near
            .iter()
            .filter(|n| n.0 <= 1 + name.len() / 3)
            .take(3)
            .map(|n| n.1)
            .collect();
        let all: Vec<&str> = known.keys().map(String::as_str).collect();
        match (close.is_empty(), all.is_empty()) {
            (false, _) => error.hint(format!("did you mean {}?", close.join(", or "))),
            (true, false) => error.hint(format!("{kind}s are {}", all.join(", "))),
            (true, true) => error.hint(format!("there are no {kind}s here")),
        }
    })
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
    for load in loads {
        items.push(Item::Weight(Weight::Load(load_from_text(load)?)));
    }
    for band in bands {
        items.push(Item::Band(band_from_text(band, stock)?));
    }
    for chain in chains {
        items.push(Item::Chain(chain_from_text(chain, stock)?));
    }
    Ok(Setup::new("", items))
}

/// Heaviest load that is taken for real, kg. Assumed: about three times the heaviest loads lifted.
const HEAVIEST_LOAD_KG: f64 = 2000.0;

/// Reads a plain load, "100 kg" or "225 lb".
///
/// **Fails** for a bad mass and for one beyond 2000 kg.
pub fn load_from_text(text: &str) -> Result<Mass> {
    let mass = Mass::from_text(text).map_err(Error::bad)?;
    if mass.as_kg() > HEAVIEST_LOAD_KG {
        return Err(
            Error::bad(format!("`{text}` is no load that anybody lifts")).hint(format!(
                "loads run from 0 kg to {HEAVIEST_LOAD_KG} kg, bar and both sides together"
            )),
        );
    }
    Ok(mass)
}
