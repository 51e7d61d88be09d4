//! Small texts of the command line: shares, places of the range, limits, profiles.
//!
//! In: an option's text. Out: numbers, or a fault that shows how to write it.

use crate::bounds::bounds;
use crate::error::{Error, OptionFault, Result};
use crate::study::AskedPlace;
use crate::units::{Angle, Length, Mass};

/// Bare numbers above the first and up to the second are taken for percents whose sign was forgotten.
const FORGOTTEN: [f64; 2] = [2.0, 300.0];

/// Reads "80 %", "80%" or "0.8".
///
/// **Fails** for anything else; a bare number that would be a percent is taken for a forgotten sign.
pub fn share(text: &str) -> Result<f64> {
    let trimmed = text.trim();
    let (digits, scale) = match trimmed.strip_suffix('%') {
        Some(digits) => (digits.trim(), 100.0),
        None => (trimmed, 1.0),
    };
    let number = digits
        .parse::<f64>()
        .ok()
        .filter(|number| number.is_finite());
    match number {
        Some(number) if scale == 1.0 && FORGOTTEN[0] < number && number <= FORGOTTEN[1] => {
            Err(Error::bad(OptionFault::ForgottenPercent {
                text: text.to_owned(),
                number,
            }))
        }
        Some(number) => Ok(number / scale),
        None => Err(Error::bad(OptionFault::NoShare(text.to_owned()))),
    }
}

/// Reads "10%..35%", "..35%", "10%.." or "any"; nothing without a text.
pub fn shares(text: Option<&str>) -> Result<Option<[Option<f64>; 2]>> {
    let Some(text) = text else {
        return Ok(None);
    };
    if text.trim() == "any" {
        return Ok(Some([None, None]));
    }
    let (least, most) = text
        .split_once("..")
        .ok_or_else(|| Error::bad(OptionFault::NoShares(text.to_owned())))?;
    let end = |part: &str| match part.trim() {
        "" => Ok(None),
        part => share(part).map(Some),
    };
    Ok(Some([end(least)?, end(most)?]))
}

/// Two ends of which the first is not above the second; an open one is beside any.
fn rising<T: PartialOrd + Copy>(text: &str, ends: [Option<T>; 2]) -> Result<[Option<T>; 2]> {
    match ends {
        [Some(least), Some(most)] if least > most => {
            Err(Error::bad(OptionFault::ReversedRange(text.to_owned())))
        }
        ends => Ok(ends),
    }
}

/// Reads a place of the range: start, middle, end (or bottom, top, lockout), or 0 to 1.
pub fn place(text: &str) -> Result<f64> {
    match text.trim() {
        "start" | "bottom" => Ok(0.0),
        "middle" => Ok(0.5),
        "end" | "top" | "lockout" => Ok(1.0),
        other => share(other)
            .ok()
            .filter(|place| bounds().range_place.holds(*place))
            .ok_or_else(|| Error::bad(OptionFault::NoPlace(text.to_owned()))),
    }
}

/// Reads where a pose is worked out: "10 cm" from the start, "60 deg" of the joint, 40% of the range, or a word.
///
/// **Fails** for a number without a unit, and as lengths and angles do.
pub fn pose_place(text: &str) -> Result<AskedPlace> {
    let trimmed = text.trim();
    let is_number = trimmed.parse::<f64>().is_ok();
    let has_digit = trimmed.contains(|c: char| c.is_ascii_digit());
    if is_number || trimmed.is_empty() {
        return Err(Error::bad(OptionFault::NoPosePlace(text.to_owned())));
    }
    if trimmed.ends_with('%') || !has_digit {
        let share = place(trimmed).ok();
        let share = share.ok_or_else(|| Error::bad(OptionFault::NoPosePlace(text.to_owned())))?;
        return Ok(AskedPlace::Share(share));
    }
    if trimmed.contains("deg") || trimmed.contains('°') || trimmed.contains("rad") {
        let angle = Angle::from_text(trimmed).map_err(Error::bad)?;
        return Ok(AskedPlace::AtAngle(angle));
    }
    let travel = Length::from_text(trimmed);
    travel
        .map(AskedPlace::Travel)
        .map_err(|fault| Error::bad(OptionFault::NoTravel(fault)))
}

/// Reads "end=60 kg..80 kg", "start=..60 kg": a place and the limits of the load there.
pub fn load_limit(text: &str) -> Result<(f64, [Option<Mass>; 2])> {
    let bad = || Error::bad(OptionFault::NoLoadLimit(text.to_owned()));
    let (at, limits) = text.split_once('=').ok_or_else(bad)?;
    let (least, most) = limits.split_once("..").ok_or_else(bad)?;
    let end = |part: &str| match part.trim() {
        "" => Ok(None),
        part => Mass::from_text(part).map(Some).map_err(Error::bad),
    };
    match [end(least)?, end(most)?] {
        [None, None] => Err(bad()),
        ends => Ok((place(at)?, rising(text, ends)?)),
    }
}

/// Reads "0=60%, 0.5=80%, 1=90%".
///
/// **Fails** for anything else, and for places that do not rise.
pub fn profile(text: Option<&str>) -> Result<Vec<(f64, f64)>> {
    let text = text.ok_or_else(|| Error::bad(OptionFault::NoProfile))?;
    let points = text.split(',').map(|part| {
        let (at, effort) = part
            .split_once('=')
            .ok_or_else(|| Error::bad(OptionFault::NoProfilePoint(part.trim().to_owned())))?;
        Ok((place(at)?, share(effort)?))
    });
    let points: Vec<(f64, f64)> = points.collect::<Result<_>>()?;
    if points.windows(2).any(|pair| pair[0].0 >= pair[1].0) {
        return Err(Error::bad(OptionFault::ReversedRange(text.to_owned())));
    }
    Ok(points)
}
