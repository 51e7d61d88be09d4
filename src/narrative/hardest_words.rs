//! The hardest part of a lift held still in words, beside what the simulated lift and measured lifters do in motion.
//!
//! In: a lift under plain weight, what is held and lifted, measured lifters. Out: the words around the lecture's figures.

use super::doubt_words::doubt_sentence;
use super::figure_words::FigureWords;
use super::prose::percent;
use super::quantities::QuantityWords;
use super::telling::Telling;
use crate::capacity::Pace;
use crate::library::MeasuredSticking;
use crate::overlay::Sticking;
use crate::rep::slight_dip;
use crate::study::{AgainstPlain, HeldAndLifted, RepStudy, Study};
use crate::units::System;

/// The stretch of nearly the greatest effort: a sticking region is one of a moving load, and told as such.
pub(crate) const HARDEST_PART: &str = "Hardest part";
/// The same of a lift held still.
const HARDEST_PART_STILL: &str = "Hardest part, held still";

/// A lift that holds this much less than it lifts is carried past its hardest place by its speed; less is not told.
const CARRIED_PAST: f64 = 1.05;

/// The words around the figure of the hardest part.
pub(crate) fn hardest_part_words(
    plain: &AgainstPlain,
    beside: &HeldAndLifted,
    measured: Option<&MeasuredSticking>,
    units: System,
) -> FigureWords {
    let told = plain.study.told(units);
    let mut words = told.strength_words();
    let held = told.hung_in_full(&plain.study.setups[0]);
    words.subtitle = format!("{}, {held} held still", plain.study.lifter_title);
    if let Some(rep) = &beside.lifted {
        words.subtitle += &format!("; {}", in_motion(rep, units));
        words.subtitle += &measured.map_or_else(String::new, measured_in_short);
    }
    words.caption = format!(
        "Effort is demand over capacity. The hardest part, held still, lies around its greatest value. It says nothing about the rest of the \
         range, where the same load is lighter. A sticking region is another thing: the stretch of a moving load from the first peak of its \
         velocity to the slowest place behind it.{}",
        beside_measured(beside, measured)
    );
    let plain = &plain.study;
    if let Some(doubt) = doubt_sentence(&[(plain.movement_title.as_str(), plain)]) {
        words.caption += &format!(" {doubt}");
    }
    words
}

/// What the maximum does in motion: "lifted, 59.3 kg (its maximum) has no sticking region".
fn in_motion(rep: &RepStudy, units: System) -> String {
    let load = units.mass(rep.load);
    let region = match rep.trace.sticking {
        None if slight_dip(rep.trace.lifting()).is_some() => {
            "a dip too slight for a sticking region".to_owned()
        }
        None => "no sticking region".to_owned(),
        Some(sticking) => {
            let ends = [sticking.first_peak.range, sticking.minimum.range];
            let stretch = rep.still.told(units).stretch(ends[0], ends[1]);
            format!("a sticking region {stretch}")
        }
    };
    format!("lifted, {load} (the maximum) has {region}")
}

/// How many of measured lifters had a sticking region, below the title: "; of 12 measured lifters 12 had one".
fn measured_in_short(measured: &MeasuredSticking) -> String {
    let (with, of) = (measured.with_region, measured.lifters);
    format!("; of {of} measured lifters {with} had one")
}

/// Measured lifters beside the simulated one; nothing where none were measured or nothing is lifted.
fn beside_measured(beside: &HeldAndLifted, measured: Option<&MeasuredSticking>) -> String {
    let (Some(rep), Some(measured)) = (&beside.lifted, measured) else {
        return String::new();
    };
    let (with, of) = (measured.with_region, measured.lifters);
    let ours = match (rep.trace.sticking.is_some(), 2 * with > of) {
        (true, true) => ", as this simulated one has",
        (false, true) => "; this simulated one has none, which the model misses",
        (true, false) => "; this simulated one has one",
        (false, false) => ", and neither has this simulated one",
    };
    format!(" Of {of} measured lifters {with} had one at their maximum{ours}.")
}

/// What can be held all along and what is lifted, below a panel's title.
pub(crate) fn held_and_lifted(beside: &HeldAndLifted, units: System) -> String {
    beside.most.map_or_else(
        || format!("most held {}", units.mass(beside.held)),
        |most| {
            // Whole numbers, as the weights are: tenths find no room above a small panel.
            let held = units.mass_number(beside.held, 0);
            format!("most held {held}, lifted {}", units.fine_mass(most, 0))
        },
    )
}

/// The line of the weight that is drawn, which is less than what can be held: "weight, 65 kg".
pub(crate) fn weight_line(study: &Study, units: System) -> String {
    let load = study.told(units).hung_in_short(&study.setups[0]);
    format!("weight, {load}")
}

/// Lifts whose speed carries more past the hardest place than can be held there.
pub(crate) fn carried_past(loaded: &[Study], beside: &[HeldAndLifted], units: System) -> String {
    let carried = loaded.iter().zip(beside).filter_map(|(study, beside)| {
        let lifted = beside.most?;
        let is_carried = lifted.as_kg() > CARRIED_PAST * beside.held.as_kg();
        is_carried.then(|| {
            format!(
                " The {} is lifted with {}, which its speed carries past the hardest place, where only {} can be held still.",
                study.movement_title.to_lowercase(),
                units.mass(lifted),
                units.mass(beside.held)
            )
        })
    });
    carried.collect()
}

impl Telling<'_> {
    /// What the shaded stretch of the only setup is: one speed changes a curve, and where it is hardest.
    #[must_use]
    pub(crate) fn hardest_part(&self) -> &'static str {
        match self.study.pace {
            Pace::Isometric => HARDEST_PART_STILL,
            _ => HARDEST_PART,
        }
    }

    /// "hardest part: effort within 5 % of its greatest".
    #[must_use]
    pub(crate) fn region_definition(&self) -> String {
        format!(
            "hardest part: effort within {} of its greatest",
            percent(1.0 - self.study.region_share)
        )
    }

    /// What the bar of one setup's hardest part says, beside the bars of others.
    #[must_use]
    pub(crate) fn region_name(&self, sticking: &Sticking) -> String {
        format!("{HARDEST_PART}, {}", self.region(sticking))
    }
}
