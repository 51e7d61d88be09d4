//! Mean velocity over load in words: the velocity of a maximum beside the published one.
//!
//! In: a [`MaximumStudy`] with its profile, a published equation, units. Out: the words around its figure.

use super::figure_words::FigureWords;
use super::quantities::rounded;
use super::shown_units::{ShownUnit, ShownUnits};
use crate::progress::published_equations::VelocityEquation;
use crate::rep::LoadPace;
use crate::study::MaximumStudy;
use crate::units::System;

/// The level axis of a profile.
pub(crate) const LOAD_SHARE: &str = "Load, share of the maximum";
/// The upright axis of a profile.
pub(crate) const MEAN_VELOCITY: &str = "Mean velocity";
/// The curve by which a profile is judged.
pub(crate) const PUBLISHED: &str = "published equation";

/// The words around the figure; `at_maximum_m_s` is the published velocity of a maximum.
#[must_use]
pub fn profile_words(
    found: &MaximumStudy,
    rows: &[LoadPace],
    equation: Option<&VelocityEquation>,
    at_maximum_m_s: Option<f64>,
    units: System,
) -> FigureWords {
    let unit = units.velocity_unit(found.measure);
    let slowest = rows.last().map_or(0.0, |row| unit.of(row.mean_velocity));
    let title = &found.movement_title;
    FigureWords {
        title: match at_maximum_m_s {
            Some(published) => format!(
                "{title}: {} {} at the maximum, {} published",
                rounded(slowest, 2),
                unit.symbol,
                rounded(unit.of(published), 2)
            ),
            None => format!(
                "{title}: {} {} at the maximum",
                rounded(slowest, unit.decimals),
                unit.symbol
            ),
        },
        subtitle: format!(
            "{}. Mean velocity of the lift with full effort, by share of the maximum",
            found.lifter_title
        ),
        footnote: footnote(equation),
        description: description(rows, unit),
        caption: String::new(),
    }
}

fn footnote(equation: Option<&VelocityEquation>) -> String {
    let Some(equation) = equation else {
        return "No published load-velocity equation for this lift is at hand.".to_owned();
    };
    let scatter = match equation.error_percent {
        Some(_) => "; shaded: two standard errors",
        None => "",
    };
    format!(
        "Published equation: see torquill sources; guided bar, pause at the bottom, trained men{scatter}."
    )
}

fn description(rows: &[LoadPace], unit: ShownUnit) -> String {
    let end = |row: Option<&LoadPace>| {
        let (velocity, share) = row.map_or((0.0, 0.0), |r| (r.mean_velocity, r.share));
        format!(
            "{} {} at {} %",
            rounded(unit.of(velocity), 2),
            unit.symbol,
            rounded(100.0 * share, 0)
        )
    };
    let falls = |pair: &[LoadPace]| pair[1].mean_velocity < pair[0].mean_velocity;
    let verb = if rows.windows(2).all(falls) {
        "falls"
    } else {
        "goes"
    };
    format!(
        "Mean velocity {verb} from {} to {} of the maximum.",
        end(rows.first()),
        end(rows.last())
    )
}
