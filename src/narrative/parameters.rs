//! What a person calls a value of the model, and how a tried value reads.
//!
//! In: a path and a value as `PATH=VALUE` takes them. Out: words.

use super::muscle_names::head_name;
/// What a person calls a value of the model: "moment arm of biceps brachii long head at the elbow".
#[must_use]
pub fn parameter_in_words(path: &str) -> String {
    named(path, false)
}

/// The same where room is short: "arm of biceps long at the elbow".
#[must_use]
pub fn parameter_in_short(path: &str) -> String {
    named(path, true)
}

fn named(path: &str, is_short: bool) -> String {
    let path = path.strip_suffix(".scale").unwrap_or(path);
    let parts: Vec<&str> = path.split('.').collect();
    match parts.as_slice() {
        ["technique" | "build", name] => words(name),
        ["segments", segment, field] => format!("{} of the {}", words(field), words(segment)),
        ["muscles", muscle, fields @ ..] => of_a_muscle(muscle, fields, is_short),
        ["lifter", "strength", group] => format!("strength of the {}", words(group)),
        ["lifter", "strength_scale"] => "strength of all muscles".to_owned(),
        ["lifter", field] => format!("{} of the lifter", words(field)),
        ["joints", dof, field] => of_a_joint(dof, field),
        ["curves", curve, fields @ ..] => {
            format!("{} of the {} curve", words(&fields.join(" ")), words(curve))
        }
        ["movement", "path", .., "from"] | ["movement", "from"] => "start of the range".to_owned(),
        ["movement", "path", .., "to"] | ["movement", "to"] => "end of the range".to_owned(),
        ["movement", "path", .., "feet", "turned_out"] => "turn-out of the feet".to_owned(),
        ["movement", "path", .., "feet", "between"] => "distance between the feet".to_owned(),
        ["movement", "path", "lumbar"] => "angle of the lower back".to_owned(),
        ["movement", "path", end @ ("start" | "end"), way] => {
            format!("{} of the path, {}", words(end), words(way))
        }
        ["movement", "path", fields @ ..] | ["movement", fields @ ..] => {
            words(&fields.join(" ")) + " of the movement"
        }
        _ => words(&path.replace('.', " ")),
    }
}

/// A name of the model as words.
fn words(name: &str) -> String {
    name.replace('_', " ")
}

fn of_a_muscle(muscle: &str, fields: &[&str], is_short: bool) -> String {
    let who = if is_short {
        words(muscle)
    } else {
        head_name(muscle)
    };
    match fields {
        ["moment_arm", dof, rest @ ..] => {
            let more = rest.iter().map(|part| format!(", {}", words(part)));
            let arm = if is_short { "arm" } else { "moment arm" };
            format!(
                "{arm} of {} {}{}",
                who,
                at_a_joint(dof, is_short),
                more.collect::<String>()
            )
        }
        ["shoulder"] | ["shoulder", "scale"] => {
            format!("line of {} across the shoulder", who)
        }
        ["shoulder", "wrap"] => format!("radius that {} bends round", who),
        ["shoulder", "over_blade", way] => {
            format!("place on the blade of {}, {}", who, words(way))
        }
        ["shoulder", end @ ("origin" | "insertion"), way] => {
            format!("{end} of {}, {}", who, words(way))
        }
        ["reference", number, field] => {
            let pose = if is_short {
                ""
            } else {
                " in its reference pose"
            };
            let which = if *number == "0" {
                String::new()
            } else {
                format!(" (pose {number})")
            };
            format!("{} of {}{pose}{which}", words(field), who)
        }
        _ => format!("{} of {}", words(&fields.join(" ")), who),
    }
}

/// Where an arm works; in short the shoulder goes without saying beside its plane.
fn at_a_joint(dof: &str, is_short: bool) -> String {
    match dof.split_once('_') {
        Some(("shoulder", plane)) if is_short => format!("({})", words(plane)),
        Some((joint, plane)) => format!("at the {joint} ({})", words(plane)),
        None => format!("at the {dof}"),
    }
}

fn of_a_joint(dof: &str, field: &str) -> String {
    let what = match field {
        "high" => "upper stop",
        "low" => "lower stop",
        "high_torque" => "passive torque at the upper stop",
        "low_torque" => "passive torque at the lower stop",
        "width" => "softness of the stops",
        other => return format!("{} of the {}", words(other), words(dof)),
    };
    format!("{what} of the {}", words(dof))
}

/// A tried value for people: a true minus sign, a blank before the per cent sign.
#[must_use]
pub fn shown_value(text: &str) -> String {
    match text.strip_suffix('%') {
        Some("+0") => "as it is".to_owned(),
        Some(number) => format!("{} %", number.replace('-', "\u{2212}")),
        None => match text.strip_prefix('-') {
            Some(number) => format!("\u{2212}{number}"),
            None => text.to_owned(),
        },
    }
}

/// A parameter with a tried value: "Grip width 60 cm", "Depth set to −20 deg", which is no change by so much.
#[must_use]
pub(crate) fn parameter_at(path: &str, text: &str) -> String {
    let is_negative = text.starts_with(['-', '\u{2212}']) && !text.ends_with('%');
    let verb = if is_negative { " set to" } else { "" };
    let name = super::prose::capital(&parameter_in_words(path));
    format!("{name}{verb} {}", shown_value(text))
}
