//! Words for: a value that breaks a rule, told by its path.

use super::known_told::did_you_mean;
use super::told::{TellFault, Told};
use super::{model_body, model_doubt, model_movement};
use crate::error::{BrokenRule, CurveRule, Fault, Known, RuleFault};
use crate::narrative::measured::outside;
use crate::narrative::model_files::shelf_name;
use crate::narrative::quantities::rounded;
use crate::units::System;

/// The fault in words.
pub(super) fn told(fault: &RuleFault<Fault>, units: System, tell: TellFault) -> Told {
    let told = broken(&fault.broken, units, tell);
    // What a room says is a sentence of its own; a rule reads on from the path.
    let between = match fault.broken {
        BrokenRule::Said(_) => ": ",
        _ => " ",
    };
    Told {
        message: if fault.path.is_empty() {
            told.message
        } else {
            format!("`{}`{between}{}", fault.path, told.message)
        },
        ..told
    }
}

fn broken(rule: &BrokenRule<Fault>, units: System, tell: TellFault) -> Told {
    match rule {
        BrokenRule::Outside(range) => Told::new(outside(range)),
        BrokenRule::Empty => Told::new("is empty"),
        BrokenRule::NoSuchFile { shelf, name, known } => {
            let told = Told::new(format!(
                "is `{name}`, and no {} is called that",
                shelf_name(*shelf)
            ));
            own_folder(told.hint(did_you_mean(known)), known, shelf.folder(), name)
        }
        BrokenRule::NotRising { first, second } => {
            Told::new(format!("does not rise: {first} is followed by {second}"))
        }
        BrokenRule::LeastAboveMost { least, most, field } => Told::new(format!(
            "is {least}, and `{field}`, the most of it, is {most}"
        ))
        .hint("the least is no more than the most: were the two exchanged?"),
        BrokenRule::Body(rule) => model_body::body(rule),
        BrokenRule::Muscle(rule) => model_body::muscle(rule, units, tell),
        BrokenRule::Curve(rule) => curve(rule),
        BrokenRule::Technique(rule) => model_movement::technique(rule),
        BrokenRule::Path(rule) => model_movement::path(rule, units, tell),
        BrokenRule::Doubt(doubt) => model_doubt::told(doubt),
        BrokenRule::Said(faults) => {
            let told: Vec<Told> = faults.iter().map(|fault| tell(fault, units)).collect();
            let messages: Vec<&str> = told.iter().map(|told| told.message.as_str()).collect();
            let message = Told::new(messages.join("; "));
            let hints = told.iter().flat_map(|told| told.hints.clone());
            hints.fold(message, Told::hint)
        }
        BrokenRule::ReadsOn(fault) => tell(fault, units),
    }
}

/// Where a file of one's own is found, unless a slip of the name is more likely.
pub(super) fn own_folder(told: Told, known: &Known, folder: &str, name: &str) -> Told {
    if name.is_empty() || name.contains(['/', '\\']) || name.starts_with('.') {
        return told.hint("a file of your own is given by its path, which ends in .ron");
    }
    if !known.near.is_empty() {
        return told;
    }
    // An option takes these by their path, too.
    let by_path = match folder {
        "gyms" | "lifters" => format!("{name}.ron is named by its path, with its ending; "),
        _ => String::new(),
    };
    told.hint(format!(
        "{by_path}a file of your own, DIR/{folder}/{name}.ron, is found with --models DIR"
    ))
}

fn curve(rule: &CurveRule) -> Told {
    Told::new(match rule {
        CurveRule::ActivePeak(range) => format!(
            "reaches {} at its peak; a share of peak force is 1 there, within {} %",
            rounded(range.value, 3),
            rounded(50.0 * (range.most - range.least), 0)
        ),
        CurveRule::BellWidth { length_norm, width } => format!(
            "gives the bell a width of {} at {} optimal lengths: b3 + b4 times the length must stay above 0",
            rounded(width.value, 3),
            rounded(*length_norm, 2)
        ),
        CurveRule::CornersFall { corners_um } => {
            let corners: Vec<String> = corners_um.iter().map(|um| rounded(*um, 3)).collect();
            format!(
                "the corners of the diagram are not in rising order: {} µm",
                corners.join(", ")
            )
        }
    })
}
