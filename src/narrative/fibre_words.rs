//! Fibres and filaments in words: overlap, species, active and passive force, force over speed.
//!
//! In: filament lengths, fibre curves, the stretch of them that a lift uses. Out: the words around the
//! lecture's figures of fibres.

use super::figure_words::FigureWords;
use super::muscle_names::head_name;
use super::prose::{capital, percent};
use super::quantities::rounded;
use crate::anatomy::{Curves, Sarcomere};
use crate::study::SpeedCost;
use crate::study::{FibreUse, FibreWarning, LIVING_LENGTHS, Study, fibre_warnings};

/// What the curve of a whole muscle is beside that of a sarcomere.
pub(crate) const SMOOTHER: &str = "The muscle's curve is another law than the sarcomere's: smoother, farther at long lengths; at short ones it falls sooner and ends later.";

/// The four lengths at which a sarcomere is drawn, by letter: what happens there.
pub(crate) const STATIONS: [(&str, &str); 4] = [
    ("A", "filaments collide and crumple"),
    ("B", "thick filaments meet the Z discs"),
    ("C", "every head faces a thin filament"),
    ("D", "no overlap, no head can attach"),
];

/// What the strokes of a drawn sarcomere are.
pub(crate) const FILAMENTS: [&str; 3] = ["Z disc", "thin filament", "thick filament"];

/// The upright axis of a length-tension diagram.
pub(crate) const ACTIVE_FORCE: (&str, &str) = ("Active force", "% of the greatest");

/// The level axis of a length-tension diagram.
pub(crate) const SARCOMERE_LENGTH: (&str, &str) = ("Sarcomere length", "µm");

/// Where the total force of a fibre is least between its two rises.
pub(crate) const DIP: &str = "total dips between active peak and passive rise";

/// The force that a person makes on purpose.
pub(crate) const VOLUNTARY: &str = "voluntary effort";
/// The half of the curve that a voluntary effort and an isolated fibre share.
pub(crate) const BOTH: &str = "both alike";
/// The force of a fibre by itself.
pub(crate) const ISOLATED: &str = "isolated fibre";

/// Where a fibre keeps its length.
pub(crate) const HELD_STILL: &str = "held still";
/// The part of the force-velocity curve in which a load is lifted.
pub(crate) const LIFTING: &str = "Lifting: fibres shorten";
/// The part of the force-velocity curve in which a load is lowered.
pub(crate) const LOWERING: &str = "Lowering: fibres lengthen";

fn um(length: f64) -> String {
    rounded(length, 2)
}

/// Filaments and force.
#[must_use]
pub fn overlap_words(sarcomere: &Sarcomere) -> FigureWords {
    let corners = sarcomere.corners();
    let at = |corner: usize| um(corners[corner].0);
    FigureWords {
        title: format!("Force needs the right overlap: greatest from {} to {} µm", at(2), at(3)),
        subtitle: format!(
            "One {} sarcomere, fully active, held still",
            sarcomere.species
        ),
        footnote: format!(
            "Thin filament {} µm, thick filament {} µm, bare zone {} µm, Z\u{a0}disc {}\u{a0}µm; drawn to scale{}.",
            um(sarcomere.thin_um),
            um(sarcomere.thick_um),
            um(sarcomere.bare_zone_um),
            um(sarcomere.z_disc_um),
            if sarcomere.thick_um > corners[0].0 - sarcomere.z_disc_um {
                ", at A cut off at the Z discs"
            } else {
                ""
            }
        ),
        description: format!(
            "Length-tension diagram of a {} sarcomere: no force at {} µm, {} at {} µm, full force from {} to {} µm, \
             no force again at {} µm. Below it the sarcomere at four of these lengths, with Z discs, thin and thick \
             filaments to scale.",
            sarcomere.species,
            at(0),
            percent(corners[1].1),
            at(1),
            at(2),
            at(3),
            at(4)
        ),
        caption: "Force comes from heads of the thick filament that hold a thin one. Stretched too far (D) no head finds \
                  a thin filament; in the plateau (C) all do; shorter than that thin filaments of both sides get in each \
                  other's way, and below B the thick filaments run into the Z discs. Where force ends on that side (A), and how much of it is \
                  left at B, are taken over from frog muscle."
            .to_owned(),
    }
}

/// The head of a drawn sarcomere's caption: its letter, length, force.
#[must_use]
pub(crate) fn station_head(letter: &str, length: &str, force_percent: &str) -> String {
    format!("{letter}: {length} µm, force {force_percent} %")
}

/// Human against frog filaments.
#[must_use]
pub fn species_words(human: &Sarcomere, frog: &Sarcomere) -> FigureWords {
    FigureWords {
        title: format!(
            "Human sarcomeres are strongest around {} µm, a frog's around {} µm",
            um(human.optimum_um()),
            um(frog.optimum_um())
        ),
        subtitle: format!(
            "Thin filament {} µm in people, {} µm in frogs; thick filament {} µm in both",
            um(human.thin_um),
            um(frog.thin_um),
            um(human.thick_um)
        ),
        footnote: "Corners of both are computed from filament lengths; the shortest length with force, and the force at the corner \
                   above it, are the frog's in both."
            .to_owned(),
        description: format!(
            "Two length-tension diagrams. Frog: plateau around {} µm, no overlap from {} µm on. Human: plateau \
             around {} µm, no overlap from {} µm on.",
            um(frog.optimum_um()),
            um(frog.corners()[4].0),
            um(human.optimum_um()),
            um(human.corners()[4].0)
        ),
        caption: format!(
            "The same law of overlap with other filament lengths: textbook figures of the frog's sarcomere must not be \
             carried over to people unchanged. Of the {} µm between the two places longer thin filaments explain {} µm, Z disc and \
             bare zone the rest. The steep foot at the left is the frog's in both: no human one is known.",
            um(human.optimum_um() - frog.optimum_um()),
            um(2.0 * (human.thin_um - frog.thin_um))
        ),
    }
}

/// Active, passive and total force, and the stretch of it that a lift uses.
#[must_use]
pub fn active_passive_words(
    curves: &Curves,
    crossing_percent: f64,
    used: &FibreUse,
) -> FigureWords {
    let crossing = rounded(crossing_percent, 0);
    FigureWords {
        title: format!("Stretched beyond {crossing} % a muscle resists more than it pulls"),
        subtitle: "Fully active muscle, held still, greatest active force = 100 %; passive force needs no activation"
            .to_owned(),
        footnote: format!("Shaded: the lengths that the {} passes. {SMOOTHER}", used.muscle),
        description: format!(
            "Force of a muscle over the length of its fibres. Active force is greatest near 100 % of the optimal length; {} of \
             it is left at 60 %, {} at 140 %. Passive force starts at 100 % and passes the active one at {crossing} %. \
             {} works from {} to {} % in the {}.",
            percent(curves.active.at(0.6)),
            percent(curves.active.at(1.4)),
            capital(&used.muscle),
            rounded(used.from_percent, 0),
            rounded(used.to_percent, 0),
            used.lift.to_lowercase()
        ),
        caption: "A muscle is strong near its optimal length and weak when it is short. When it is long, elastic structures \
                  take over. Which part of the curve a lift uses depends on the joint angles it passes."
            .to_owned(),
    }
}

/// The muscle and the lift whose stretch is shaded.
#[must_use]
pub(crate) fn fibre_use_label(used: &FibreUse) -> String {
    format!("{} in the {}", used.muscle, used.lift.to_lowercase())
}

/// Force of a fibre over its speed.
#[must_use]
pub fn force_velocity_words(cost: &SpeedCost) -> FigureWords {
    let (speed, left) = (percent(cost.speed), percent(cost.left));
    FigureWords {
        title: format!("Speed costs force: at {speed} of top speed only {left} is left"),
        subtitle: "Force at the optimal fibre length, isometric force = 100 %: of a voluntary effort and of an isolated fibre".to_owned(),
        footnote: "Hill's hyperbola in shortening, its curvature fitted to single joints; in lengthening a person reaches far less of the surplus than \
                   an isolated fibre."
            .to_owned(),
        description: format!(
            "Force over speed. Lengthening is at the left: an isolated fibre reaches {} of its isometric force, \
             a voluntary effort {}. Shortening is at the right: force falls steeply at first, to {left} at {speed} of the \
             fastest speed, and to nothing at 100 %.",
            percent(cost.isolated_lengthening),
            percent(cost.voluntary_lengthening)
        ),
        caption: "A lifter can lower more than can be held and hold more than can be lifted. The faster a load moves up, the \
                  less force is left to move it."
            .to_owned(),
    }
}

/// What the marked speed is.
#[must_use]
pub(crate) fn of_fastest_speed(share: f64) -> String {
    format!("at {} of the fastest speed", percent(share))
}

/// A fibre of a length that no living one is known at, in a line.
#[must_use]
pub fn fibre_warning(warning: &FibreWarning) -> String {
    format!("warning: {}", beyond_living(warning))
}

/// The same as sentences behind others; nothing where all fibres are as long as living ones.
#[must_use]
pub(crate) fn fibre_sentences(study: &Study) -> String {
    let told = fibre_warnings(study);
    told.iter()
        .map(|warning| format!(" {}.", capital(&beyond_living(warning))))
        .collect()
}

/// Whether a place of the range is one of those.
#[must_use]
pub(crate) fn is_doubted(study: &Study, range: f64) -> bool {
    let told = fibre_warnings(study);
    told.iter()
        .any(|warning| (warning.range.0..=warning.range.1).contains(&range))
}

fn beyond_living(warning: &FibreWarning) -> String {
    let (from, to) = (percent(warning.range.0), percent(warning.range.1));
    let (shortest, longest) = LIVING_LENGTHS;
    let place = if from == to {
        format!("at {from}")
    } else {
        format!("from {from} to {to}")
    };
    format!(
        "{place} of the range the fibres of {} are {} times their optimal length at the farthest (living ones: \
         {shortest} to {longest}), with up to {} of the peak forces that pull there: trust the curve less",
        head_name(&warning.muscle),
        length_beyond(warning.length_norm),
        percent(warning.share)
    )
}

/// A length with as many decimals as show that it lies beyond the living ones: "0.498", not "0.5".
fn length_beyond(length_norm: f64) -> String {
    let (shortest, longest) = LIVING_LENGTHS;
    let is_seen = |text: &String| {
        let shown: f64 = text.parse().unwrap_or(length_norm);
        !(shortest..=longest).contains(&shown)
    };
    let mut texts = (2..=6).map(|decimals| rounded(length_norm, decimals));
    texts
        .find(is_seen)
        .unwrap_or_else(|| rounded(length_norm, 6))
}

/// All of them in one short line, for a card; nothing without any.
#[must_use]
pub fn fibre_note(study: &Study) -> Option<String> {
    let mut names: Vec<String> = fibre_warnings(study)
        .iter()
        .map(|w| head_name(&w.muscle))
        .collect();
    names.dedup();
    (!names.is_empty()).then(|| {
        format!(
            "note: the model is less sure of this lift where fibres work outside the lengths of living ones ({}); \
             curve says where",
            names.join(", ")
        )
    })
}

/// All such lines of a study.
#[must_use]
pub fn fibre_warning_lines(study: &Study) -> Vec<String> {
    fibre_warnings(study).iter().map(fibre_warning).collect()
}
