//! The command line's words for every other implement: `cable 40 kg, ratio 2, from rack-high`.
//!
//! In: one option's text: kind, quantity, then `WORD VALUE` pairs after commas. Out: an item. The
//! kinds stand in one list, from which help and the refusal of an unknown kind are made.

use super::texts::{Stock, band_from_text, chain_from_text, load_from_text};
use crate::error::{Error, Result};
use crate::resistance::{
    Anchor, Assistance, Cable, Cam, EccentricOnly, Item, Lead, LeverMachine, Side, Sled, Turns,
    Weight, pull_from_text,
};
use crate::units::{Angle, Force, Length, Mass};

/// A kind of item on the command line: its word, an example, what it is.
#[derive(Debug, Clone, Copy)]
pub struct ItemKind {
    /// First word of the text.
    pub word: &'static str,
    /// An example that is read.
    pub example: &'static str,
    /// What it is, in a line.
    pub what: &'static str,
    /// Words that may follow, each with a value.
    options: &'static [&'static str],
    read: Reader,
}

/// Makes an item from the parts of its text.
type Reader = fn(&Words<'_>, &Stock<'_>) -> Result<Item>;

/// Every kind of item that a text can name, in the order of help.
pub const ITEM_KINDS: [ItemKind; 16] = [
    kind("bar", "bar 20 kg", "an empty bar", &[], bar),
    kind(
        "plates",
        "plates 20 kg, pairs 2",
        "equal plates, so many a side",
        &["pairs"],
        plates,
    ),
    kind(
        "plate",
        "plate 5 kg, side left",
        "one plate on one side",
        &["side"],
        plate,
    ),
    kind(
        "collars",
        "collars 2.5 kg",
        "a pair of collars, mass of one",
        &[],
        collars,
    ),
    kind(
        "dumbbell",
        "dumbbell 12 kg",
        "a dumb-bell in each hand, mass of one",
        &[],
        dumbbell,
    ),
    kind("belt", "belt 20 kg", "plates on a belt", &[], belt),
    kind(
        "body",
        "body 80 kg",
        "body mass in the place of the lifter's own",
        &[],
        body,
    ),
    kind(
        "band",
        "band loop-29mm:1@floor,doubled",
        "bands, as behind --band",
        &[],
        band,
    ),
    kind(
        "chain",
        "chain chain-10mm:2",
        "chains, as behind --chain",
        &[],
        chain,
    ),
    kind(
        "cable",
        "cable 40 kg, ratio 2, friction 5 %, from rack-high",
        "a weight stack on a cable",
        &["ratio", "friction", "from", "offset", "angle"],
        cable,
    ),
    kind(
        "cam",
        "cam 0 deg=10 cm, 60 deg=14 cm",
        "a machine's cam: radius over angle since the start, or \"cam fitted 12 cm\" to follow the lifter's strength",
        &[],
        cam,
    ),
    kind(
        "lever",
        "lever 30 kg, arm 50 cm, height 120 cm, offset -90 cm, ahead 5 deg",
        "plates on an arm about a pivot, or with the pad (start 0 deg)",
        &["arm", "height", "offset", "ahead", "start"],
        lever,
    ),
    kind(
        "sled",
        "sled 50 kg, friction 3 %",
        "an empty sled on rails",
        &["friction"],
        sled,
    ),
    kind(
        "lowering",
        "lowering 20 kg",
        "load of the lowering phase only: a mass, or a push in N",
        &[],
        lowering,
    ),
    kind(
        "spotter",
        "spotter 150 N",
        "a partner's help: a force, or a share such as 20 %",
        &["phase"],
        spotter,
    ),
    kind(
        "counterweight",
        "counterweight 20 kg",
        "a weight that takes load away over a pulley",
        &[],
        counterweight,
    ),
];

const fn kind(
    word: &'static str,
    example: &'static str,
    what: &'static str,
    options: &'static [&'static str],
    read: Reader,
) -> ItemKind {
    ItemKind {
        word,
        example,
        what,
        options,
        read,
    }
}

/// The parts of an item's text.
struct Words<'a> {
    text: &'a str,
    main: &'a str,
    options: Vec<(&'a str, &'a str)>,
}

/// Reads one item: `KIND QUANTITY[, WORD VALUE]…`, see [`ITEM_KINDS`].
///
/// **Fails** for an unknown kind or word, with the known ones, and for a bad quantity.
pub fn item_from_text(text: &str, stock: &Stock) -> Result<Item> {
    let text = text.trim();
    let (word, rest) = text.split_once(char::is_whitespace).unwrap_or((text, ""));
    let Some(kind) = ITEM_KINDS.iter().find(|kind| kind.word == word) else {
        let known: Vec<&str> = ITEM_KINDS.iter().map(|kind| kind.word).collect();
        return Err(Error::bad(format!("`{word}` is no kind of load"))
            .hint(format!("kinds are {}", known.join(", ")))
            .hint(format!("such as \"{}\"", ITEM_KINDS[9].example)));
    };
    let mut words = Words {
        text,
        main: rest.trim(),
        options: Vec::new(),
    };
    if !kind.options.is_empty() {
        let mut fields = rest.split(',').map(str::trim);
        words.main = fields.next().unwrap_or_default();
        for field in fields {
            words.options.push(option(kind, text, field)?);
        }
    }
    (kind.read)(&words, stock)
        .map_err(|fault| fault.hint(format!("an example: \"{}\"", kind.example)))
}

fn option<'a>(kind: &ItemKind, text: &str, field: &'a str) -> Result<(&'a str, &'a str)> {
    let (word, value) = field.split_once(char::is_whitespace).unwrap_or((field, ""));
    if kind.options.contains(&word) {
        return Ok((word, value.trim()));
    }
    Err(Error::bad(format!(
        "`{word}` in `{text}` says nothing about a {}",
        kind.word
    ))
    .hint(format!("words for it are {}", kind.options.join(", "))))
}

impl<'a> Words<'a> {
    fn mass(&self) -> Result<Mass> {
        load_from_text(self.main)
    }

    fn option(&self, word: &str) -> Option<&'a str> {
        self.options
            .iter()
            .find(|(known, _)| *known == word)
            .map(|(_, value)| *value)
    }

    fn length(&self, word: &str) -> Result<Option<Length>> {
        self.option(word)
            .map(Length::from_text)
            .transpose()
            .map_err(Error::bad)
    }

    fn angle(&self, word: &str) -> Result<Option<Angle>> {
        self.option(word)
            .map(Angle::from_text)
            .transpose()
            .map_err(Error::bad)
    }

    fn number(&self, word: &str) -> Result<Option<f64>> {
        self.option(word)
            .map(|value| share_or_number(self.text, value))
            .transpose()
    }
}

/// Reads "5 %" or "0.05".
fn share_or_number(text: &str, value: &str) -> Result<f64> {
    let (digits, scale) = match value.strip_suffix('%') {
        Some(digits) => (digits.trim(), 100.0),
        None => (value, 1.0),
    };
    digits
        .parse::<f64>()
        .ok()
        .filter(|number| number.is_finite())
        .map(|number| number / scale)
        .ok_or_else(|| {
            Error::bad(format!("`{value}` in `{text}` is no number")).hint("write 2, 0.05 or 5 %")
        })
}

fn bar(words: &Words, _: &Stock) -> Result<Item> {
    Ok(Item::Weight(Weight::Bar(words.mass()?)))
}

fn plates(words: &Words, _: &Stock) -> Result<Item> {
    let pairs = words.option("pairs").unwrap_or("1");
    let pairs = pairs
        .parse()
        .ok()
        .filter(|pairs| (1..=20).contains(pairs))
        .ok_or_else(|| {
            Error::bad(format!(
                "`{pairs}` in `{}` is no count of pairs: 1 to 20 are",
                words.text
            ))
        })?;
    Ok(Item::Weight(Weight::Plates {
        each: words.mass()?,
        pairs,
    }))
}

fn plate(words: &Words, _: &Stock) -> Result<Item> {
    let side = match words.option("side").unwrap_or_default() {
        "left" => Side::Left,
        "right" => Side::Right,
        other => {
            return Err(Error::bad(format!(
                "`{other}` is no side of the bar: left and right are"
            )));
        }
    };
    Ok(Item::Weight(Weight::OnePlate {
        mass: words.mass()?,
        side,
    }))
}

fn collars(words: &Words, _: &Stock) -> Result<Item> {
    Ok(Item::Weight(Weight::Collars {
        each: words.mass()?,
    }))
}

fn dumbbell(words: &Words, _: &Stock) -> Result<Item> {
    Ok(Item::Weight(Weight::Dumbbell(words.mass()?)))
}

fn belt(words: &Words, _: &Stock) -> Result<Item> {
    Ok(Item::Weight(Weight::Belt(words.mass()?)))
}

fn body(words: &Words, _: &Stock) -> Result<Item> {
    Ok(Item::Weight(Weight::BodyMass(words.mass()?)))
}

fn band(words: &Words, stock: &Stock) -> Result<Item> {
    band_from_text(words.main, stock).map(Item::Band)
}

fn chain(words: &Words, stock: &Stock) -> Result<Item> {
    chain_from_text(words.main, stock).map(Item::Chain)
}

fn cable(words: &Words, stock: &Stock) -> Result<Item> {
    let lead = match (words.option("from"), words.angle("angle")?) {
        (Some(_), Some(_)) => {
            return Err(
                Error::bad(format!("`{}` leads the cable in two ways", words.text))
                    .hint("write either from ANCHOR or angle ANGLE"),
            );
        }
        (None, Some(angle)) => Lead::Direction(angle),
        (from, None) => {
            let pulley = Anchor::from_text(from.unwrap_or("floor"), &|name| {
                stock.anchors.get(name).copied()
            })?;
            let offset = words.length("offset")?.unwrap_or(pulley.offset());
            Lead::Pulley(Anchor::at(pulley.height(), offset).map_err(Error::bad)?)
        }
    };
    let ratio = words.number("ratio")?.unwrap_or(1.0);
    let friction = words.number("friction")?.unwrap_or(0.0);
    Cable::new(words.mass()?, ratio, friction, lead)
        .map(Item::Cable)
        .map_err(Error::bad)
}

/// Mean radius of a fitted cam whose text names none. Assumed: a common size; it scales the load alone.
const MEAN_CAM_RADIUS: Length = Length::from_m(0.12);

fn cam(words: &Words, _: &Stock) -> Result<Item> {
    if let Some(mean_radius) = words.main.strip_prefix("fitted") {
        let mean_radius = match mean_radius.trim() {
            "" => MEAN_CAM_RADIUS,
            text => Length::from_text(text).map_err(Error::bad)?,
        };
        return Cam::to_fit(mean_radius).map(Item::Cam).map_err(Error::bad);
    }
    let point = |part: &str| -> Result<(Angle, Length)> {
        let (angle, radius) = part.split_once('=').ok_or_else(|| {
            Error::bad(format!(
                "`{part}` in `{}` is no point of a cam: write ANGLE=RADIUS",
                words.text
            ))
        })?;
        Ok((
            Angle::from_text(angle).map_err(Error::bad)?,
            Length::from_text(radius).map_err(Error::bad)?,
        ))
    };
    let profile: Vec<(Angle, Length)> = words.main.split(',').map(point).collect::<Result<_>>()?;
    Cam::through(&profile).map(Item::Cam).map_err(Error::bad)
}

fn lever(words: &Words, _: &Stock) -> Result<Item> {
    let arm = words.length("arm")?.ok_or_else(|| {
        Error::bad(format!(
            "`{}` does not say how long the loaded arm is",
            words.text
        ))
        .hint("add arm LENGTH")
    })?;
    let turns = match (words.length("height")?, words.angle("start")?) {
        (Some(height), None) => Turns::AboutPivot {
            pivot: Anchor::at(height, words.length("offset")?.unwrap_or_default())
                .map_err(Error::bad)?,
            plates_ahead: words.angle("ahead")?.unwrap_or_default(),
        },
        (None, Some(start)) => Turns::WithPad { start },
        _ => {
            return Err(Error::bad(format!("`{}` does not say what the arm turns about", words.text))
                .hint("write height and offset of its pivot, or start ANGLE for an arm that turns with the pad"));
        }
    };
    LeverMachine::new(words.mass()?, arm, turns)
        .map(Item::Lever)
        .map_err(Error::bad)
}

fn sled(words: &Words, _: &Stock) -> Result<Item> {
    let friction = words.number("friction")?.unwrap_or(0.0);
    Sled::new(words.mass()?, friction)
        .map(Item::Sled)
        .map_err(Error::bad)
}

fn lowering(words: &Words, _: &Stock) -> Result<Item> {
    let extra = match Force::from_text(words.main) {
        Ok(push) => EccentricOnly::Pushed(push),
        Err(_) => EccentricOnly::Hung(words.mass()?),
    };
    extra.checked().map(Item::EccentricOnly).map_err(Error::bad)
}

fn spotter(words: &Words, _: &Stock) -> Result<Item> {
    let in_lowering = match words.option("phase").unwrap_or("lifting") {
        "lifting" => false,
        "both" => true,
        other => {
            return Err(Error::bad(format!(
                "`{other}` is no phase of a spotter: lifting and both are"
            )));
        }
    };
    let help = if words.main.ends_with('%') {
        Assistance::SpotterShare {
            share: share_or_number(words.text, words.main)?,
            in_lowering,
        }
    } else {
        Assistance::Spotter {
            force: pull_from_text(words.main).map_err(Error::bad)?,
            in_lowering,
        }
    };
    help.checked().map(Item::Assistance).map_err(Error::bad)
}

fn counterweight(words: &Words, _: &Stock) -> Result<Item> {
    Ok(Item::Assistance(Assistance::Counterweight(words.mass()?)))
}
