//! Words for: what is wrong with an implement or a setup.

use super::quantity_told::comma;
use super::told::Told;
use crate::bounds::bounds;
use crate::error::{BandFitFault, CamFault, ImplementFault, ImplementKind, ImplementSize, Unfit};
use crate::narrative::implements::kind_with_article;
use crate::narrative::prose::counted_noun;
use crate::narrative::quantities::{QuantityWords, rounded};
use crate::resistance::pull_from_text;
use crate::units::{Force, Length, Mass, System, comma_meanings};

/// The fault in words.
pub(super) fn told(fault: &ImplementFault, units: System) -> Told {
    match fault {
        ImplementFault::MakesNoSense {
            kind,
            movement,
            why,
        } => {
            let (reason, instead) = unfit(*why);
            let kind = kind_with_article(*kind);
            Told::new(format!("{kind} makes no sense on {movement}: {reason}")).hint(instead)
        }
        ImplementFault::Repeated { kind, times } => repeated(*kind, *times),
        ImplementFault::Cam(CamFault::FitTooSmall {
            smallest,
            least,
            mean_at_least,
        }) => fit_too_small([*smallest, *least], *mean_at_least, units),
        other => Told::new(message(other, units)),
    }
}

fn message(fault: &ImplementFault, units: System) -> String {
    match fault {
        ImplementFault::Outside {
            size,
            value,
            least,
            most,
        } => outside(*size, *value, [*least, *most], units),
        ImplementFault::Layers(layers) => {
            format!("a band of {layers} layers cannot be: 1 to 50 can")
        }
        ImplementFault::Strands(strands) => {
            format!("a band of {strands} strands cannot be: 1 for a strip, 2 for a loop, at most 8")
        }
        ImplementFault::AnchorHeight(height) => format!(
            "an anchor {} above the floor cannot be: heights run from {} to {}",
            units.far_length(*height),
            units.far_length(Length::from_m(0.0)),
            units.far_length(Length::from_m(6.0))
        ),
        ImplementFault::AnchorOffset(offset) => format!(
            "an anchor {} away from the load cannot be: offsets run from {} to {}",
            units.far_length(*offset),
            units.far_length(Length::from_m(-6.0)),
            units.far_length(Length::from_m(6.0))
        ),
        ImplementFault::MassOfNoLeader => "a leader with a mass needs a length too".to_owned(),
        ImplementFault::NoPull(text) if text.contains(',') => format!(
            "`{text}` is no pull: {}",
            comma(&comma_meanings(text, |text| pull_from_text(text).is_ok()))
        ),
        ImplementFault::NoPull(text) => format!(
            "`{text}` is no pull: write a force such as \"120 N\", or what a scale shows, such as \"12 kg\""
        ),
        ImplementFault::Fit(fault) => of_fit(fault, units),
        ImplementFault::Cam(fault) => of_cam(fault),
        ImplementFault::MakesNoSense { .. } | ImplementFault::Repeated { .. } => String::new(),
    }
}

/// Why readings of a band allow no fit.
pub(super) fn of_fit(fault: &BandFitFault, units: System) -> String {
    let short = |length: Length| units.short_length(length);
    match fault {
        BandFitFault::OddReading { length, force } => odd_reading(*length, *force, units),
        BandFitFault::PullFalls { shorter, longer } => format!(
            "the band pulls {} at {} and only {} at {}: rubber pulls harder the longer it is",
            force_in_words(shorter.1, units),
            short(shorter.0),
            force_in_words(longer.1, units),
            short(longer.0)
        ),
        BandFitFault::TooFewReadings { pulling } => format!(
            "{} with a pull {} too few or too close together: give at least two, {} or more apart",
            counted_noun(*pulling, "reading"),
            if *pulling == 1 { "is" } else { "are" },
            short(Length::from_cm(1.0))
        ),
        BandFitFault::TooManyReadings { readings, most } => format!(
            "{readings} readings of one band are too many: at most {most} are fitted"
        ),
        BandFitFault::RestBeyondPull { rest, shortest } => format!(
            "a band of {} at rest cannot pull at {}: the rest length lies below every length with a pull",
            short(*rest),
            short(*shortest)
        ),
        BandFitFault::RestUnknown => {
            "two readings cannot tell the rest length as well: give the rest length, or a third reading".to_owned()
        }
        BandFitFault::SlackBeyondPull { slack, shortest } => format!(
            "the band is slack at {} and pulls at {}: one of the two is misread",
            short(*slack),
            short(*shortest)
        ),
    }
}

fn of_cam(fault: &CamFault) -> String {
    match fault {
        CamFault::InTwoWays => {
            "a cam has either a profile or is fitted to the lifter, not both".to_owned()
        }
        CamFault::WithoutPoint => "a cam needs at least one point of (angle, radius)".to_owned(),
        CamFault::AngleFalls { angle, before } => format!(
            "the cam's angles must rise: {} deg stands after {} deg",
            rounded(angle.as_deg(), 2),
            rounded(before.as_deg(), 2)
        ),
        CamFault::FitCounts { capacities, angles } => format!(
            "a cam is fitted to as many capacities as angles: {capacities} and {angles} were given"
        ),
        CamFault::Capacity(capacity) => {
            format!("a cam cannot follow a capacity of {capacity}: it must be above 0 everywhere")
        }
        CamFault::FitTooSmall { .. } => String::new(),
    }
}

/// A cam that would be too small where the lifter is weakest, and from which mean radius on it can be.
fn fit_too_small([smallest, least]: [Length; 2], mean: Length, units: System) -> Told {
    let mean = match units {
        System::Metric => format!("{} cm", mean.as_cm().ceil()),
        System::Us => format!("{} in", mean.as_in().ceil()),
    };
    let [smallest, least] = [smallest, least].map(|radius| match units {
        System::Metric => format!("{} cm", rounded(radius.as_cm(), 2)),
        System::Us => format!("{} in", rounded(radius.as_in(), 2)),
    });
    Told::new(format!(
        "a cam that follows this lifter would have a radius of {smallest} where he is weakest, and none is smaller than {least}"
    ))
    .hint(format!("a larger cam can follow: \"cam fitted {mean}\""))
}

fn repeated(kind: ImplementKind, times: usize) -> Told {
    let kind = kind_with_article(kind);
    Told::new(format!(
        "the setup has {kind} {times} times, and a machine has one"
    ))
    .hint("leave all but one out")
}

fn force_in_words(force: Force, units: System) -> String {
    match units {
        System::Metric => format!("{} N", rounded(force.as_n(), 1)),
        System::Us => format!("{} lbf", rounded(force.as_lbf(), 1)),
    }
}

fn odd_reading(length: Length, force: Force, units: System) -> String {
    format!(
        "the reading {}, {} cannot be: lengths lie between {} and {}, pulls between 0 and {}",
        units.short_length(length),
        force_in_words(force, units),
        units.far_length(Length::from_m(0.0)),
        units.far_length(Length::from_m(20.0)),
        force_in_words(Force::from_n(bounds().band_pull.most()), units)
    )
}

fn outside(size: ImplementSize, value: f64, limits: [f64; 2], units: System) -> String {
    let (what, unit) = size_name(size);
    let (value, [least, most], unit) = in_units(value, limits, unit, units);
    let behind = if unit.is_empty() {
        String::new()
    } else {
        format!(" {unit}")
    };
    format!("{what} {value}{behind} is outside what can be: {least} to {most}{behind}")
}

/// Numbers of an SI unit as text, in the units asked for.
fn in_units(
    value: f64,
    limits: [f64; 2],
    unit: &'static str,
    units: System,
) -> (String, [String; 2], &'static str) {
    let turn: fn(f64) -> f64 = match (units, unit) {
        (System::Us, "m") => |metres| Length::from_m(metres).as_in(),
        (System::Us, "kg") => |kg| Mass::from_kg(kg).as_lb(),
        (System::Us, "N") => |newtons| Force::from_n(newtons).as_lbf(),
        _ => {
            return (
                value.to_string(),
                limits.map(|limit| limit.to_string()),
                unit,
            );
        }
    };
    let unit = match unit {
        "m" => "in",
        "kg" => "lb",
        _ => "lbf",
    };
    let text = |si: f64| rounded(turn(si), 3);
    (text(value), limits.map(text), unit)
}

/// What a size is called, and its unit.
fn size_name(size: ImplementSize) -> (&'static str, &'static str) {
    match size {
        ImplementSize::RestLength => ("rest length", "m"),
        ImplementSize::Worn => ("worn", "(share of the pull lost)"),
        ImplementSize::SafeStretch => ("safe_stretch", ""),
        ImplementSize::LossShare => ("loss share", ""),
        ImplementSize::Width => ("width", "m"),
        ImplementSize::Thickness => ("thickness", "m"),
        ImplementSize::CableRatio => ("cable ratio", ""),
        ImplementSize::CableFriction => ("cable friction", ""),
        ImplementSize::CamRadius => ("cam radius", "m"),
        ImplementSize::LoadedArm => ("loaded arm", "m"),
        ImplementSize::RailFriction => ("friction", ""),
        ImplementSize::SpotterForce => ("spotter's force", "N"),
        ImplementSize::SpotterShare => ("spotter's share", ""),
        ImplementSize::Push => ("push", "N"),
        ImplementSize::LeaderLength => ("leader length", "m"),
        ImplementSize::LeaderMass => ("leader mass", "kg"),
        ImplementSize::MassPerMetre => ("mass per metre", "kg/m"),
        ImplementSize::Wire => ("wire", "m"),
        ImplementSize::InsideWidth => ("inside width", "m"),
        ImplementSize::Pitch => ("pitch", "m"),
        ImplementSize::ChainLength => ("chain length", "m"),
        ImplementSize::BandPull => ("pull at the largest stretch", "N"),
        ImplementSize::LoadMass => ("plain weight", "kg"),
        ImplementSize::TotalMass => ("all plain weight together", "kg"),
        ImplementSize::SetupItems => ("number of items", ""),
        ImplementSize::BarMass => ("mass of a bar", "kg"),
        ImplementSize::PlateMass => ("mass of a plate", "kg"),
        ImplementSize::PlatePairs => ("pairs of plates", ""),
        ImplementSize::CollarMass => ("mass of both collars", "kg"),
        ImplementSize::DumbbellMass => ("mass of a dumb-bell", "kg"),
        ImplementSize::StackMass => ("mass on the cable", "kg"),
        ImplementSize::LoweringMass => ("mass hung on for the lowering", "kg"),
        ImplementSize::CableDirection => ("direction of the cable", "deg"),
    }
}

/// Why an implement makes no sense, and what to do instead.
#[rustfmt::skip]
fn unfit(why: Unfit) -> (&'static str, &'static str) {
    match why {
        Unfit::NoLever => ("a cam turns with a machine's lever, and this movement has none", "use a band or a chain to load the strong part of the range more"),
        Unfit::NoPad => ("its arm turns with a pad about the lifter's joint, and this movement has none", "give the lever a pivot of its own: turns: AboutPivot(pivot: (height: \"150 cm\"), plates_ahead: \"0 deg\")"),
        Unfit::NoRails => ("a sled runs on rails, and this movement's load is carried freely", "write its mass as a plain load, --load \"60 kg\""),
        Unfit::HeldNotWorn => ("the load is held, not worn", "write the mass as a plain load, --load \"20 kg\""),
        Unfit::DumbbellInEachHand => ("it takes a dumb-bell in each hand", "write the mass of one dumb-bell, --load \"10 kg\""),
        Unfit::OneHand => ("each hand has its own load and one of them is computed", "leave the side out: counts are per hand"),
        Unfit::LoadIsSled => ("the load is a sled on rails", "write sled and plates as one load, --load \"120 kg\""),
        Unfit::SledOnCable => ("the sled hangs on its rails, not on a cable", "use plates, bands, or help that takes load away"),
        Unfit::SledOnLever => ("the sled runs on rails instead of turning about a pivot", "use plates on the sled, or bands"),
        Unfit::ChainOnPad => ("a chain must hang from something that rises off the floor, and the pad of a machine lever turns on its arc", "use a cam that follows the lifter's strength, a band from pad to frame, or a heavier stack"),
        Unfit::LoadIsStack => ("the load is a weight stack on a machine's lever", "write the stack as a plain load, --load \"40 kg\""),
        Unfit::LeverOnRails => ("the machine has a turning lever and no rails", "write the stack as a plain load, --load \"40 kg\""),
        Unfit::OwnPivot => ("the pad turns about the lifter's joint, not about a pivot of its own", "write turns: WithPad(start: \"0 deg\") for plates on the pad's own arm"),
        Unfit::BodyOnArm => ("the body itself is the load and hangs on no arm", "use a belt with plates, bands, or a counterweight"),
    }
}
