//! How people differ, in words.
//!
//! In: the curves of many people. Out: the words around their figure.

use super::figure_words::FigureWords;
use super::quantities::rounded;
use super::setup_names::with_article;
use super::telling::Telling;
use crate::anatomy::{Sex, Training};
use crate::study::{People, PeopleAsked, Study, Tenths};

/// One in ten is stronger, and one in ten weaker.
pub(crate) const STRENGTHS: [&str; 2] = ["1 in 10 stronger", "1 in 10 weaker"];
/// The same of shapes alone.
pub(crate) const SHAPES: [&str; 2] = ["shape: 1 in 10 above", "shape: 1 in 10 below"];
/// The median of all.
pub(crate) const MIDDLE: &str = "median";

/// How far curves, and their shapes alone, are from the median, on an axis.
pub(crate) const OFF_THE_MIDDLE: &str = "Off the median";

/// A distance from the median on an axis: "+30".
pub(crate) fn signed_percent(off: f64) -> String {
    let size = rounded(off.abs(), 0);
    match off {
        off if off > 0.0 => format!("+{size}"),
        off if off < 0.0 => format!("\u{2212}{size}"),
        _ => size,
    }
}

/// The words around the figure.
pub(crate) fn people_words(study: &Study, people: &People) -> FigureWords {
    let apart = |tenths: &Tenths| rounded(100.0 * (tenths.high[0] / tenths.low[0] - 1.0), 0);
    let (force, shape) = (apart(&people.forces), apart(&people.shapes));
    FigureWords {
        title: format!(
            "Invented people differ by {force} % in strength at the start, by {shape} % in shape"
        ),
        subtitle: format!(
            "{} (scatter assumed) around {}, {}; upper over lower edge of the bands, in which eight in ten lie",
            invented(people.count),
            study.lifter_title,
            study.movement_title.to_lowercase()
        ),
        footnote: "Scatter assumed from published groups. Shape: each curve over its own median, so all meet half way."
            .to_owned(),
        description: format!(
            "Bands in which eight in ten of {} people lie, with the median of all: one in strength, one in shape alone, each as how far off the median.",
            people.count
        ),
        caption: format!(
            "These people are invented, and how much they differ is an assumption; shape alone is a curve over its own median. They \
             differ more in how strong they are than in where. Their curves: {}.",
            classes_by_share(people)
        ),
    }
}

/// The stretch where people are stopped, in a figure.
pub(crate) const HARDEST_OF_PEOPLE: &str = "Hardest, 4 in 5 people";

/// What people are drawn from.
pub(crate) const DRAWN_FROM: &str =
    "They differ as published groups do; what the model itself misses people by is not in it.";

/// Fewest people of whom a tenth is at least one.
pub(crate) const FEWEST_FOR_TAILS: usize = 10;

/// "1 invented person", "200 invented people".
fn invented(count: usize) -> String {
    match count {
        1 => "1 invented person".to_owned(),
        many => format!("{many} invented people"),
    }
}

/// "200 invented women, novices", "200 invented people around Reference man".
pub(crate) fn invented_people(asked: &PeopleAsked, lifter_title: &str) -> String {
    let count = asked.count;
    let Some((sex, training)) = asked.kind else {
        return format!("{} around {lifter_title}", invented(count));
    };
    let who = match sex {
        Sex::Woman if count == 1 => "woman",
        Sex::Man if count == 1 => "man",
        Sex::Woman => "women",
        Sex::Man => "men",
    };
    format!("{count} invented {who} {}", trained(training))
}

/// "93 % bell-shaped, 7 % ascending".
pub(crate) fn classes_by_share(people: &People) -> String {
    let shares = people.classes.iter().map(|(shape, count)| {
        let share = 100.0 * *count as f64 / people.count as f64;
        format!("{} % {}", rounded(share, 0), shape.word())
    });
    shares.collect::<Vec<_>>().join(", ")
}

/// "95 % of 200 invented people have an ascending curve".
pub(crate) fn most_frequent_class(people: &People) -> String {
    let first = people.classes.first();
    let words = first.map(|(shape, count)| {
        let share = 100.0 * *count as f64 / people.count as f64;
        let share = rounded(share, 0);
        format!(
            "{share} % of {} have {} curve",
            invented(people.count),
            with_article(shape.word())
        )
    });
    words.unwrap_or_default()
}

/// "with years of training".
const fn trained(training: Training) -> &'static str {
    match training {
        Training::Novice => "without training",
        Training::Intermediate => "with half a year of training",
        Training::Advanced => "with years of training",
    }
}

impl Telling<'_> {
    /// Whose curve the line is: of the lifter, where there are people of the one in their middle.
    pub(crate) fn whose_line(&self) -> String {
        let lifter = &self.study.lifter_title;
        match &self.study.people {
            None => lifter.clone(),
            Some(people) => match people.asked.kind {
                None => format!("Line: {lifter}"),
                Some((_, training)) => format!("Line: {lifter} {}", trained(training)),
            },
        }
    }

    /// What is to be said of the people of a curve.
    pub(crate) fn people_sentences(&self) -> Vec<String> {
        let Some(people) = &self.study.people else {
            return Vec::new();
        };
        let who = invented_people(&people.asked, &self.study.lifter_title);
        let mut lines = vec![format!("{who} (seed {}). {DRAWN_FROM}", people.asked.seed)];
        if people.count < people.asked.count {
            lines.push(format!(
                "{} of them cannot do the lift at all and are left out.",
                people.asked.count - people.count
            ));
        }
        if people.count < FEWEST_FOR_TAILS {
            lines.push(format!(
                "Of fewer than {FEWEST_FOR_TAILS} people there is no tenth, so the edges of the bands lie at single people or between two."
            ));
        }
        lines.push(format!(
            "Curves of these people: {}.",
            classes_by_share(people)
        ));
        if let Some([from, middle, to]) = people.hardest_between(0.8) {
            lines.push(format!(
                "Hardest place of four in five people: {}; of the middle one {}.",
                self.stretch(from, to),
                self.at_place(middle)
            ));
        }
        lines
    }
}
