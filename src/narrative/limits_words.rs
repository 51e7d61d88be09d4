//! How sure the model is and what it cannot tell, in words.
//!
//! In: its errors beside published values. Out: the words around both figures.

use super::figure_words::FigureWords;
use super::prose::{capital, counted_noun, listed, percent};
use super::quantities::rounded;
use crate::library::PublishedError;

/// Fewest published values that say something of a lift, assumed.
pub(crate) const FEWEST_ROWS: usize = 7;

/// "off by 21 %", of the root mean square of logarithms of computed over published.
pub(crate) fn off_by(error: f64) -> String {
    format!("off by {}", percent(error))
}

/// What the bars measure.
pub(crate) const ERROR_QUANTITY: &str = "Computed numbers off published ones by";

/// A lift with how many published values there are.
pub(crate) fn error_name(lift: &str, rows: usize) -> String {
    format!("{} ({rows})", capital(lift))
}

/// The words around the bars; the lifts are in the order of their errors, the greatest first.
pub(crate) fn error_words(lifts: &[(&str, PublishedError)]) -> FigureWords {
    let rows: usize = lifts.iter().map(|(_, error)| error.rows).sum();
    let told: Vec<String> = lifts
        .iter()
        .map(|(name, error)| {
            format!(
                "{name} {} over {}",
                percent(error.error),
                counted_noun(error.rows, "value")
            )
        })
        .collect();
    let (most, least) = (lifts.first(), lifts.last());
    let name = |lift: Option<&(&str, PublishedError)>| lift.map_or("", |lift| lift.0).to_owned();
    let error =
        |lift: Option<&(&str, PublishedError)>| percent(lift.map_or(0.0, |lift| lift.1.error));
    // A difference of logarithms is a factor, as far up as down.
    let factor = |lift: Option<&(&str, PublishedError)>| {
        rounded(lift.map_or(0.0, |lift| lift.1.error).exp(), 1)
    };
    FigureWords {
        title: format!(
            "Closest for the {} (off by {}), farthest for the {} ({})",
            name(least),
            error(least),
            name(most),
            error(most)
        ),
        subtitle: format!("Computed beside {rows} published numbers of every kind (forces, velocities, repetitions) that nothing was fitted to, in brackets how many a lift"),
        footnote: format!(
            "Root mean square of the natural logarithm of computed over published, in hundredths: {} is a factor of {} up or \
             down, {} one of {}.",
            error(least),
            factor(least),
            error(most),
            factor(most)
        ),
        description: format!("How far computed numbers are from published ones: {}.", listed(&told)),
        caption: "Shapes, classes and directions are surer than single numbers. Part of every difference is the scatter of people and of ways to measure."
            .to_owned(),
    }
}

/// Questions, and why the model has no answer.
pub(crate) const CANNOT_TELL: [[&str; 2]; 6] = [
    [
        "Is this lift safe for this person?",
        "Pain, injuries and the load on cartilage, ligaments and discs are not modelled.",
    ],
    [
        "What will training make of it?",
        "Muscles do not grow or learn here: the curve is that of one day.",
    ],
    [
        "How well does somebody do the lift?",
        "The best coordination is taken for granted at every place.",
    ],
    [
        "What can exactly this athlete lift?",
        "People of one size differ widely: measure a few lifts, and fit the lifter to them.",
    ],
    [
        "What does the shoulder blade do?",
        "It follows a fixed rule, and its own muscles are taken to suffice.",
    ],
    [
        "Which side is weaker?",
        "Both sides are alike: one is modelled and doubled.",
    ],
];

/// The words around the page of questions.
pub(crate) fn cannot_tell_words() -> FigureWords {
    let questions: Vec<String> = CANNOT_TELL
        .iter()
        .map(|[question, why]| format!("{question} {why}"))
        .collect();
    FigureWords {
        title: "Six questions that this model cannot answer".to_owned(),
        subtitle: "What a computed strength curve leaves open".to_owned(),
        footnote: String::new(),
        description: questions.join(" "),
        caption: "A model answers the question it was built for: where a lift is strong, where a load is heavy, and why.".to_owned(),
    }
}
