//! Machines as text: "cable 40 kg, ratio 2, from rack-high", "cam fitted 12 cm", "lever 30 kg, arm 50 cm, start 0 deg".
//!
//! In: the parts of a text. Out: an item.

use super::named_pieces::Stock;
use super::option_words::Words;
use crate::error::{Error, ItemTextFault, Result};
use crate::resistance::{Anchor, Cable, Cam, Item, Lead, LeverMachine, Turns};
use crate::units::{Angle, Length};

pub(super) fn cable(words: &Words, stock: &Stock) -> Result<Item> {
    let lead = match (words.value("from"), words.angle("angle")?) {
        (Some(_), Some(_)) => {
            return Err(Error::bad(ItemTextFault::TwoLeads(words.text.to_owned())));
        }
        (None, Some(angle)) => Lead::Direction(angle),
        (from, None) => {
            let pulley = stock.anchor(from.unwrap_or("floor"))?;
            let offset = words.length("offset")?.unwrap_or(pulley.offset());
            Lead::Pulley(Anchor::at(pulley.height(), offset).map_err(Error::bad)?)
        }
    };
    let (ratio, friction) = (words.number("ratio")?, words.number("friction")?);
    let cable = Cable::new(words.mass()?, ratio, friction, lead);
    cable.map(Item::Cable).map_err(Error::bad)
}

/// Mean radius of a fitted cam whose text names none. Assumed: a common size; it scales the load alone.
const MEAN_CAM_RADIUS: Length = Length::from_m(0.12);

pub(super) fn cam(words: &Words, _: &Stock) -> Result<Item> {
    let cam = match words.main.strip_prefix("fitted") {
        Some(mean_radius) => Cam::to_fit(match mean_radius.trim() {
            "" => MEAN_CAM_RADIUS,
            text => Length::from_text(text).map_err(Error::bad)?,
        }),
        None => {
            let points = words.main.split(',').map(|part| cam_point(words, part));
            Cam::through(&points.collect::<Result<Vec<_>>>()?)
        }
    };
    cam.map(Item::Cam).map_err(Error::bad)
}

fn cam_point(words: &Words, part: &str) -> Result<(Angle, Length)> {
    let (angle, radius) = part.split_once('=').ok_or_else(|| {
        Error::bad(ItemTextFault::CamPoint {
            part: part.to_owned(),
            text: words.text.to_owned(),
        })
    })?;
    Ok((
        Angle::from_text(angle).map_err(Error::bad)?,
        Length::from_text(radius).map_err(Error::bad)?,
    ))
}

pub(super) fn lever(words: &Words, _: &Stock) -> Result<Item> {
    let arm = words
        .length("arm")?
        .ok_or_else(|| Error::bad(ItemTextFault::NoArm(words.text.to_owned())))?;
    let turns = match (words.length("height")?, words.angle("start")?) {
        (Some(height), None) => Turns::AboutPivot {
            pivot: Anchor::at(height, words.length("offset")?.unwrap_or_default())
                .map_err(Error::bad)?,
            plates_ahead: words.angle("ahead")?.unwrap_or_default(),
        },
        (None, Some(start)) => Turns::WithPad { start },
        _ => return Err(Error::bad(ItemTextFault::NoPivot(words.text.to_owned()))),
    };
    let lever = LeverMachine::new(words.mass()?, arm, turns);
    lever.map(Item::Lever).map_err(Error::bad)
}
