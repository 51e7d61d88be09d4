//! What a drawn curve met and what it missed, with the points of each part.
//!
//! In: a study, a judged drawing. Out: sentences; and the rule, in the numbers that the score is made of.

use super::prose::percent;
use super::quantities::rounded;
use super::shown_units::ShownUnits;
use crate::capacity::CurveShape;
use crate::study::Study;
use crate::units::System;

/// Points for the right class.
pub const MOST_SHAPE: u32 = 60;
/// Points for the place of the peak, and as many for the weakest place.
pub const MOST_PLACE: u32 = 10;
/// Points for closeness.
pub const MOST_CLOSE: u32 = 20;

/// How near a drawn curve came.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnCurve {
    /// Class of what was drawn.
    pub drawn: CurveShape,
    /// Class of the curve.
    pub computed: CurveShape,
    /// Class of what the page shows of the curve.
    pub shown: CurveShape,
    /// Where both are greatest; none of a level drawing that should not be level.
    pub peak: Option<DrawnPlace>,
    /// Where both are least.
    pub weakest: Option<DrawnPlace>,
    /// Mean distance, share of the highest point shown.
    pub mean_distance: f64,
    /// Points for the class.
    pub shape_points: u32,
    /// Points for closeness.
    pub close_points: u32,
    /// Where the page's axis ends although the curve goes on, N or N·m.
    pub top: Option<f64>,
}

/// A place of a drawing beside that of the curve.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DrawnPlace {
    /// Place of the drawing.
    pub drawn_range: f64,
    /// Place of the curve.
    pub shown_range: f64,
    /// Points for it.
    pub points: u32,
}

impl DrawnCurve {
    /// The whole score, of 100.
    #[must_use]
    pub fn points(&self) -> u32 {
        let place = |place: Option<DrawnPlace>| place.map_or(0, |place| place.points);
        self.shape_points + place(self.peak) + place(self.weakest) + self.close_points
    }
}

/// How the score is made.
#[must_use]
pub fn score_rule() -> String {
    format!(
        "The score: {MOST_SHAPE} points for the right shape (ascending, descending, bell-shaped, u-shaped or level), \
         {MOST_PLACE} for the place of the peak, {MOST_PLACE} for the weakest place, {MOST_CLOSE} for how near you come to the \
         curve that Explore shows. The highest point counts as 100 %."
    )
}

/// What a drawn curve met and what it missed.
#[must_use]
pub fn drawn_in_words(study: &Study, told: &DrawnCurve, units: System) -> Vec<String> {
    let mut lines = vec![shape_in_words(told)];
    match (told.peak, told.weakest) {
        (Some(peak), Some(weakest)) => {
            lines.push(place_in_words(study, "Peak", peak, units));
            lines.push(place_in_words(study, "Weakest place", weakest, units));
        }
        _ => lines.push(format!(
            "A level curve has no peak and no weakest place: 0 of {} points.",
            2 * MOST_PLACE
        )),
    }
    lines.push(format!(
        "On average you are {} of the highest point away: {} of {MOST_CLOSE} points.",
        percent(told.mean_distance),
        told.close_points
    ));
    if let Some(top) = told.top {
        let unit = units.load_unit(study.range.measure);
        lines.push(format!(
            "The model's curve leaves the picture above {} {}, in Explore as here; from there on every height counts as the highest.",
            rounded(unit.of(top), 0),
            unit.symbol
        ));
    }
    lines
}

fn shape_in_words(told: &DrawnCurve) -> String {
    let (drawn, computed) = (told.drawn.word(), told.computed.word());
    let met = if told.drawn == told.computed {
        format!("Your curve is {drawn}, and so is the model's")
    } else if told.shape_points > 0 {
        format!(
            "Your curve is {drawn}, and so is what Explore shows of the model's, which as a whole is {computed}"
        )
    } else {
        format!("Your curve is {drawn}; the model's is {computed}")
    };
    format!("{met}: {} of {MOST_SHAPE} points.", told.shape_points)
}

fn place_in_words(study: &Study, what: &str, place: DrawnPlace, units: System) -> String {
    let told = study.told(units);
    let [own, shown] = [place.drawn_range, place.shown_range].map(|range| told.at_place(range));
    let met = match own == shown {
        true => format!("yours and the model's {shown}"),
        false => format!("yours {own}, the model's {shown}"),
    };
    format!("{what}: {met}: {} of {MOST_PLACE} points.", place.points)
}
