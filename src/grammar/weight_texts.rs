//! Plain weights and help as text: "plates 20 kg, pairs 2", "spotter 150 N".
//!
//! In: the parts of a text. Out: an item.

use super::named_pieces::Stock;
use super::option_words::Words;
use crate::bounds::bounds;
use crate::error::{Error, ItemTextFault, Result};
use crate::resistance::{
    Assistance, EccentricOnly, HangingSide, Item, Sled, Weight, pull_from_text,
};
use crate::units::Force;

pub(super) fn bar(words: &Words, _: &Stock) -> Result<Item> {
    Ok(Item::Weight(Weight::Bar(words.mass()?)))
}

pub(super) fn plates(words: &Words, _: &Stock) -> Result<Item> {
    let pairs = words.value("pairs").unwrap_or_default();
    let count = pairs.parse::<u32>().ok();
    let pairs = count
        .filter(|pairs| bounds().plate_pairs.holds(f64::from(*pairs)))
        .ok_or_else(|| {
            Error::bad(ItemTextFault::PairCount {
                count: pairs.to_owned(),
                text: words.text.to_owned(),
            })
        })?;
    let each = words.mass()?;
    Ok(Item::Weight(Weight::Plates { each, pairs }))
}

pub(super) fn plate(words: &Words, _: &Stock) -> Result<Item> {
    let side = match words.value("side").unwrap_or_default() {
        "left" => HangingSide::Left,
        "right" => HangingSide::Right,
        other => return Err(Error::bad(ItemTextFault::PlateSide(other.to_owned()))),
    };
    let mass = words.mass()?;
    Ok(Item::Weight(Weight::OnePlate { mass, side }))
}

pub(super) fn collars(words: &Words, _: &Stock) -> Result<Item> {
    let each = words.mass()?;
    Ok(Item::Weight(Weight::Collars { each }))
}

pub(super) fn dumbbell(words: &Words, _: &Stock) -> Result<Item> {
    Ok(Item::Weight(Weight::Dumbbell(words.mass()?)))
}

pub(super) fn belt(words: &Words, _: &Stock) -> Result<Item> {
    Ok(Item::Weight(Weight::Belt(words.mass()?)))
}

pub(super) fn body(words: &Words, _: &Stock) -> Result<Item> {
    if words.main.trim().is_empty() {
        return Err(Error::bad(ItemTextFault::BodyOfWhom));
    }
    Ok(Item::Weight(Weight::BodyMass(words.mass()?)))
}

pub(super) fn sled(words: &Words, _: &Stock) -> Result<Item> {
    let friction = words.number("friction")?;
    let sled = Sled::new(words.mass()?, friction).map_err(Error::bad)?;
    Ok(Item::Sled(sled))
}

pub(super) fn lowering(words: &Words, _: &Stock) -> Result<Item> {
    let extra = match Force::from_text(words.main) {
        Ok(push) => EccentricOnly::Pushed(push),
        Err(_) => EccentricOnly::Hung(words.mass()?),
    };
    extra.checked().map(Item::EccentricOnly).map_err(Error::bad)
}

pub(super) fn spotter(words: &Words, _: &Stock) -> Result<Item> {
    let in_lowering = match words.value("phase").unwrap_or_default() {
        "lifting" => false,
        "both" => true,
        other => return Err(Error::bad(ItemTextFault::SpotterPhase(other.to_owned()))),
    };
    let help = if words.main.ends_with('%') {
        Assistance::SpotterShare {
            share: words.share_or_number(words.main)?,
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

pub(super) fn counterweight(words: &Words, _: &Stock) -> Result<Item> {
    Ok(Item::Assistance(Assistance::Counterweight(words.mass()?)))
}
