//! Labels of a repetition's figures: what its marked points, stretches and curves are called.
//!
//! In: a [`RepStudy`], a mark of it, units. Out: the words around its figures and the labels in them.

use super::figure_words::FigureWords;
use super::places::{at_position, velocity_in_words};
use super::quantities::rounded;
use super::repetition_words::{rep_sentences, rep_title, subtitle};
use super::shown_units::ShownUnits;
use crate::rep::Mark;
use crate::study::RepStudy;
use crate::units::System;

/// The axis of a whole repetition.
pub(crate) const TIME_SINCE_START: &str = "Time since the repetition began";
/// The shaded stretch over time.
pub(crate) const REGION: &str = "Sticking region";
/// The shaded stretch over the way.
pub(crate) const REGION_IN_MOTION: &str = "Sticking region in motion";
/// The bar of the static sticking region.
pub(crate) const HARDEST_STILL: &str = "hardest held still";
/// The curve of the force on the load.
pub(crate) const ON_LOAD: &str = "on the load";
/// The curve of what the load asks for.
pub(crate) const LOAD_AT_REST: &str = "load at rest";
/// The curve of what full effort holds.
pub(crate) const MOST_HELD: &str = "most that is held still";
/// The pose of a load that does not leave its place.
pub(crate) const STAYS: &str = "stays here";
/// The pose of an end that is not reached.
pub(crate) const NOT_REACHED: &str = "end, not reached";

/// The words around the figures of a repetition.
#[must_use]
pub fn rep_figure_words(rep: &RepStudy, units: System) -> FigureWords {
    FigureWords {
        title: rep_title(rep, units),
        subtitle: subtitle(rep, units),
        footnote: "In motion: first peak of velocity to the slowest place behind it. Held still: effort within 5 % of its greatest."
            .to_owned(),
        description: rep_sentences(rep, units).join(" "),
        caption: String::new(),
    }
}

/// The peaks and the least of velocity.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MarkKind {
    /// Where velocity first peaks.
    FirstPeak,
    /// Where it is least.
    Slowest,
    /// Where velocity peaks again.
    SecondPeak,
}

/// What a mark is called, and its velocity or, where the load stops, its place.
#[must_use]
pub(crate) fn mark_label(
    rep: &RepStudy,
    kind: MarkKind,
    mark: Mark,
    units: System,
) -> (&'static str, String) {
    let velocity = velocity_in_words(rep.trace.measure, mark.velocity);
    match kind {
        MarkKind::FirstPeak => ("first peak", velocity),
        MarkKind::SecondPeak => ("second peak", velocity),
        MarkKind::Slowest if rep.trace.is_lifted() => ("slowest", velocity),
        MarkKind::Slowest => ("stops", at_position(rep, mark.position, units)),
    }
}

/// What a mark over time is called, and its velocity.
#[must_use]
pub(crate) fn mark_in_time(rep: &RepStudy, kind: MarkKind, mark: Mark) -> (&'static str, String) {
    let name = match kind {
        MarkKind::FirstPeak => "first peak",
        MarkKind::SecondPeak => "second peak",
        MarkKind::Slowest if rep.trace.is_lifted() => "slowest",
        MarkKind::Slowest => "stops",
    };
    (name, velocity_in_words(rep.trace.measure, mark.velocity))
}

/// What holds against a load that does not leave its place.
#[must_use]
pub(crate) fn stuck_label(rep: &RepStudy, held: f64, units: System) -> (&'static str, String) {
    let unit = units.load_unit(rep.trace.measure);
    (
        "all there is at the start",
        format!(
            "{} {} with what lowering left",
            rounded(unit.of(held), 0),
            unit.symbol
        ),
    )
}

/// The axis of velocity of the animated repetition, and the value at its top.
#[must_use]
pub(crate) fn velocity_scale(rep: &RepStudy, top: f64, units: System) -> (String, String) {
    let unit = units.velocity_unit(rep.trace.measure);
    (
        format!("Velocity ({})", unit.symbol),
        rounded(unit.of(top), unit.decimals),
    )
}

/// The axis of time of the animated repetition.
#[must_use]
pub(crate) fn time_in_all(length_s: f64) -> String {
    format!("Time ({} s in all)", rounded(length_s, 1))
}
