//! Words for: why a value cannot be set or read by its path.

use super::known_told::{did_you_mean, one_of};
use super::{Told, quantity_told};
use crate::error::{PlaceOnPath, SettingFault, SettingReason};

/// The fault in words.
pub(super) fn told(fault: &SettingFault) -> Told {
    match fault {
        SettingFault::NoSetting {
            written,
            without_sign,
        } => no_setting(written, *without_sign),
        SettingFault::Twice { first, second } => twice(first, second),
        SettingFault::NoSuchRoot { path, first, known } => {
            Told::new(format!("`{path}`: no path begins with `{first}`"))
                .hint(did_you_mean(known))
                .hint(format!("paths begin with: {}", known.all.join(", ")))
        }
        SettingFault::RootOnly { path } => {
            Told::new(format!("`{path}` is a group of values, not one"))
                .hint(format!("go on with {path}.NAME"))
        }
        SettingFault::Lost {
            path,
            step,
            walked,
            at,
        } => lost(path, step, walked, at),
        SettingFault::NoNumber { path } => {
            Told::new(format!("`{path}` is no number that can be read or varied"))
                .hint("name one value, such as technique.grip_width or segments.upper_arm.length")
        }
        SettingFault::Unfit { path, reason } => {
            let told = unfit(path, reason);
            Told {
                message: format!("`{path}`: {}", told.message),
                ..told
            }
        }
        SettingFault::NotFound { word } => {
            Told::new(format!("no value has `{word}` in its path or its meaning"))
                .hint("`torquill parameters` without --find lists all")
        }
        SettingFault::MeantElsewhere { fault, path } => {
            told(fault).hint(format!("did you mean `{path}`?"))
        }
    }
}

fn no_setting(written: &str, without_sign: bool) -> Told {
    let told = Told::new(format!("`{written}` sets nothing: expected PATH=VALUE"));
    if without_sign {
        told.hint("for example technique.grip_width=\"60 cm\" or segments.upper_arm.length=+5%")
    } else {
        told
    }
}

/// A value that is set twice: to what, and by which paths where they differ.
fn twice([path, text]: &[String; 2], [other_path, other]: &[String; 2]) -> Told {
    let told = match (path == other_path, text == other) {
        (true, true) => format!("`{path}` is set twice, both times to `{text}`"),
        (true, false) => format!("`{path}` is set twice: to `{text}` and to `{other}`"),
        (false, _) => format!(
            "`{path}` and `{other_path}` are one value, and it is set twice: to `{text}` and to `{other}`"
        ),
    };
    Told::new(told).hint("leave one of the two out")
}

/// A path that leads nowhere: which part, and what there is instead.
fn lost(path: &str, step: &str, walked: &str, at: &PlaceOnPath) -> Told {
    let place = if walked.is_empty() {
        "nothing here".to_owned()
    } else {
        format!("nothing in `{walked}`")
    };
    match at {
        PlaceOnPath::Group(known) => {
            Told::new(format!("`{path}`: {place} is called `{step}`")).hint(did_you_mean(known))
        }
        PlaceOnPath::List { last } => {
            Told::new(format!("`{path}`: {place} has the number `{step}`"))
                .hint(format!("its items are numbered 0 to {last}"))
        }
        PlaceOnPath::Line(line) => Told::new(format!("`{path}`: {place} is called `{step}`")).hint(format!(
            "across the shoulder a muscle is a line, and its arms follow from it: `{line}` makes them all longer or shorter"
        )),
        PlaceOnPath::Single => Told::new(format!(
            "`{path}`: `{walked}` is a single value, so it has no `{step}`"
        )),
    }
}

/// Why a text does not fit where its path leads.
fn unfit(path: &str, reason: &SettingReason) -> Told {
    match reason {
        SettingReason::Refused(why) => Told::new(why.clone()),
        SettingReason::Quantity(fault) => quantity_told::told(fault),
        SettingReason::NoSuchWord { text, known } => {
            let told = Told::new(format!("cannot be `{text}`"));
            one_of(known, "words here")
                .into_iter()
                .fold(told, Told::hint)
        }
        SettingReason::UnclearChange { value } => Told::new(format!(
            "`+{value}` is no value: only a change has a plus, and it is in per cent"
        ))
        .hint(format!(
            "write `{value}` for that value itself, or a change such as +10%"
        )),
        SettingReason::IsGroup { names } if names.is_empty() => {
            Told::new("is a group of values, not one")
        }
        SettingReason::IsGroup { names } => Told::new("is a group of values, not one").hint(
            format!("go on with {path}.NAME; names: {}", names.join(", ")),
        ),
        SettingReason::IsList { last } => Told::new("is a list of values, not one")
            .hint(format!("go on with a number, 0 to {last}")),
        SettingReason::NoNumber { text, now } => Told::new(format!("`{text}` is no number")).hint(
            format!("it is {now} now: a plain number without a unit, or a change such as +10%"),
        ),
        SettingReason::IsFree => {
            Told::new("is left free, so there is no number to change").hint("give it a value first")
        }
        SettingReason::ShareWithoutUnit { text, unit, now } => {
            Told::new(format!("`{text}` is no length and no number of {unit}")).hint(format!(
                "write a length such as \"60 cm\", or a multiple such as \"{now} {unit}\""
            ))
        }
        SettingReason::IsCourse => Told::new("is a course over the joint angle, not one value")
            .hint("change it as a whole, such as +10%"),
        SettingReason::DoesNotFit { text } => Told::new(format!("`{text}` does not fit here")),
        SettingReason::Unprintable { code } => Told::new(format!(
            "its value holds the character U+{code:04X}, which cannot be shown"
        ))
        .hint("leave it out"),
        SettingReason::TooLong { letters, most } => Told::new(format!(
            "its value is {letters} letters long; at most {most} are shown"
        )),
        SettingReason::HasNoValue => Told::new("has no value in this model, so it cannot be set"),
        SettingReason::IsWord { word } => Told::new(format!("is the word `{word}`, not a number")),
        SettingReason::IsBoolean { now, text } => Told::new(format!(
            "is {now} now and can be true or false, not `{text}`"
        )),
        SettingReason::CannotBeFree => Told::new("cannot be left free in this movement"),
        SettingReason::NoQuantity { text } => {
            Told::new(format!("`{text}` is no length, angle or number"))
        }
    }
}
