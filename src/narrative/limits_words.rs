//! How sure the model is and what it cannot tell, in words.
//!
//! In: its errors beside published values. Out: the words around both figures.

use super::figure_words::FigureWords;
use super::prose::{capital, counted_noun, listed};
use super::quantities::rounded;
use crate::library::{FEWEST_ROWS, PublishedError};

/// "by a factor of 2.2", of the root mean square of logarithms of computed over published.
pub(crate) fn by_factor(error: PublishedError) -> String {
    format!("by a factor of {}", rounded(error.factor(), 1))
}

/// Decimals of the bars: with one several kinds would read alike.
pub(crate) const BAR_DECIMALS: usize = 2;

/// The same as finely as the bars have it.
fn exactly(error: PublishedError) -> String {
    format!("by a factor of {}", rounded(error.factor(), BAR_DECIMALS))
}

/// What the bars measure.
pub(crate) const ERROR_QUANTITY: &str =
    "Factor, up or down, by which computed and published differ";

/// A factor on the axis.
pub(crate) fn factor_tick(factor: f64) -> String {
    rounded(factor, 1)
}

/// A kind of question with how many published values there are.
pub(crate) fn error_name(kind: &str, rows: usize) -> String {
    format!("{} ({rows})", capital(kind_in_words(kind)))
}

/// A kind of the table of evidence as readers know it.
pub(crate) fn kind_in_words(kind: &str) -> &str {
    match kind {
        "moment" => "moments at joints",
        "geometry" => "joint angles and distances",
        "ratio of lifts" => "one lift over another",
        "repetitions" => "repetitions to failure",
        "strength" => "strength",
        "velocity" => "velocities",
        "fatigue" => "loss by fatigue",
        other => other,
    }
}

/// The words around the bars; the kinds are in the order of their errors, the greatest first.
pub(crate) fn error_words(kinds: &[(&str, PublishedError)]) -> FigureWords {
    let rows: usize = kinds.iter().map(|(_, error)| error.rows).sum();
    let told: Vec<String> = kinds
        .iter()
        .map(|(name, error)| {
            format!(
                "{} {} over {}",
                kind_in_words(name),
                exactly(*error),
                counted_noun(error.rows, "value")
            )
        })
        .collect();
    let name = |kind: Option<&(&str, PublishedError)>| {
        kind.map_or("", |kind| kind_in_words(kind.0)).to_owned()
    };
    let factor =
        |kind: Option<&(&str, PublishedError)>| kind.map_or(String::new(), |kind| exactly(kind.1));
    let (most, least) = (kinds.first(), kinds.last());
    FigureWords {
        title: format!(
            "The model misses {} {}, {} {}",
            name(least),
            factor(least),
            name(most),
            factor(most)
        ),
        subtitle: format!(
            "{rows} published values that nothing was fitted to, by kind of question; in brackets how many of each"
        ),
        footnote: format!(
            "Kinds with {FEWEST_ROWS} values or more. The factor is e to the root mean square of the natural logarithm of computed over \
             published: 1 would be no difference."
        ),
        description: format!(
            "How far computed numbers are from published ones: {}.",
            listed(&told)
        ),
        caption: "Part of every difference is the scatter of people and of ways to measure."
            .to_owned(),
    }
}

/// What the model's sticking regions are worth beside measured ones (held to the table of evidence by a test).
pub(crate) const STICKING_MISSED: &str =
    "Whether, where and how long lifters stick: the model misses most of what was measured.";

/// Questions, and why the model has no answer.
pub(crate) const CANNOT_TELL: [[&str; 2]; 7] = [
    [
        "Is this lift safe for this person?",
        "Pain, injuries and the load on cartilage, ligaments and discs are not modelled.",
    ],
    [
        "What will training change?",
        "Muscles do not grow or learn here: the curve is that of one day.",
    ],
    [
        "How well does somebody do the lift?",
        "The best coordination is taken for granted at every place.",
    ],
    [
        "What exactly can this athlete lift?",
        "People of one size differ widely: measure a few lifts, and fit the lifter to them.",
    ],
    ["Where does the bar stick?", STICKING_MISSED],
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
        title: "Seven questions that this model cannot answer".to_owned(),
        subtitle: "What a computed strength curve leaves open".to_owned(),
        footnote: String::new(),
        description: questions.join(" "),
        caption: "A model answers the question it was built for: where a lift is strong, where a load is heavy, and why.".to_owned(),
    }
}
