//! Which joint gives way first, in words.
//!
//! In: a lift of several joints, the stretches in which one joint limits it. Out: the words around its figure.

use super::figure_words::FigureWords;
use super::prose::{capital, percent};
use crate::study::{LimitedStretch, Study};

/// The words around the figure of a lift's limits.
#[must_use]
pub fn limit_words(lifter: &str, study: &Study, stretches: &[LimitedStretch]) -> FigureWords {
    FigureWords {
        title: format!(
            "{}: {}",
            study.movement_title,
            stretches_in_words(stretches)
        ),
        subtitle: format!(
            "{lifter}: how much more could be held with 1 % more strength at one joint"
        ),
        footnote: "Held still. The joint with the highest line gives way first; at 0 more strength of a joint helps \
                   nothing there."
            .to_owned(),
        description: format!(
            "Gain of the heaviest load of the {} with 1 % more strength at each joint, over the {}. {}.",
            study.movement_title.to_lowercase(),
            study.axis,
            shares_in_words(study, stretches)
        ),
        caption: "A chain is as strong as its weakest link: at every place of the range one joint's strength counts most; \
                  where muscles run over two joints, another one's may count too."
            .to_owned(),
    }
}

/// "the shoulder gives way first, then the hip, at the end the elbow".
fn stretches_in_words(stretches: &[LimitedStretch]) -> String {
    match stretches {
        [] => "no joint gives way first for long".to_owned(),
        [only] => format!("the {} gives way first all the way", only.joint),
        [first, second] => format!(
            "first the {} gives way, then the {}",
            first.joint, second.joint
        ),
        [first, between @ .., last] => {
            let between: Vec<String> = between
                .iter()
                .map(|stretch| format!("the {}", stretch.joint))
                .collect();
            format!(
                "the {} gives way first, then {}, at the end the {}",
                first.joint,
                between.join(", then "),
                last.joint
            )
        }
    }
}

fn shares_in_words(study: &Study, stretches: &[LimitedStretch]) -> String {
    let last = (study.range.poses.len() - 1) as f64;
    let told: Vec<String> = stretches
        .iter()
        .map(|stretch| {
            format!(
                "the {} gives way first from {} to {} of the range",
                stretch.joint,
                percent(stretch.from as f64 / last),
                percent(stretch.to as f64 / last)
            )
        })
        .collect();
    capital(&told.join("; "))
}
