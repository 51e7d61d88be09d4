//! How people differ, in words.
//!
//! In: the curves of many people. Out: the words around their figure.

use super::figure_words::FigureWords;
use super::quantities::rounded;
use crate::study::{People, Study, Tenths};

/// One in ten is stronger.
pub(crate) const HIGH: &str = "one in ten above";
/// The middle of all.
pub(crate) const MIDDLE: &str = "middle";
/// One in ten is weaker.
pub(crate) const LOW: &str = "one in ten below";

/// The words around the figure.
pub(crate) fn people_words(study: &Study, people: &People) -> FigureWords {
    let apart = |tenths: &Tenths| rounded(100.0 * (tenths.high[0] / tenths.low[0] - 1.0), 0);
    let (force, shape) = (apart(&people.forces), apart(&people.shapes));
    FigureWords {
        title: format!(
            "At the start the strongest tenth holds {force} % more than the weakest; by shape alone {shape} %"
        ),
        subtitle: format!(
            "{} invented people around: {}, {}",
            people.count,
            study.lifter_title,
            study.movement_title.to_lowercase()
        ),
        footnote: "Scatter of height, mass, limbs and muscle groups as in groups of trained people, in part assumed. Below: each curve in percent of \
                   its own median."
            .to_owned(),
        description: format!(
            "Bands in which eight in ten of {} people lie, above as force and below as shape, with the middle of all.",
            people.count
        ),
        caption: "People differ more in how strong they are than in where. A class of curve holds for nearly everybody; a number does not.".to_owned(),
    }
}
