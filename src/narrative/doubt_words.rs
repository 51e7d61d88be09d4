//! What makes part of a drawn curve less sure, in the words around its figure.
//!
//! In: the studies whose curves are drawn. Out: how the hollow line is read, at the foot; where it is, behind the caption.

use super::figure_words::FigureWords;
use super::prose::{listed, percent};
use crate::study::{LIVING_LENGTHS, Study, beyond_living, doubted_stretches};

/// How a hollow line is read, at the foot of a figure.
pub(crate) const HOLLOW: &str = "Double line: less sure, unmeasured fibre lengths.";

/// Behind a finding at a place in such a stretch.
pub(crate) const LESS_SURE: &str = ", where the model is less sure";

/// The same behind a place that is named with others.
pub(crate) const LESS_SURE_HERE: &str = ", where the model is less sure,";

/// The stretches of one curve: "from 68 % to 94 %"; nothing where it has none.
fn stretches_in_words(stretches: &[[f64; 2]]) -> Option<String> {
    let told: Vec<String> = stretches
        .iter()
        .map(|ends| {
            let [from, to] = ends.map(percent);
            match from == to {
                true => format!("at {from}"),
                false => format!("from {from} to {to}"),
            }
        })
        .collect();
    (!told.is_empty()).then(|| listed(&told))
}

/// Where the lines are hollow, and why; nothing where none is. Curves with the same stretches need no names.
pub(crate) fn doubt_sentence(curves: &[(&str, &Study)]) -> Option<String> {
    let curves = curves.iter();
    let lines = curves.map(|(name, study)| ((*name).to_owned(), doubted_stretches(study)));
    doubted_lines(&lines.collect::<Vec<_>>())
}

/// The same of lines with their stretches, shares of the range.
fn doubted_lines(lines: &[(String, Vec<[f64; 2]>)]) -> Option<String> {
    let told: Vec<(&str, Option<String>)> = lines
        .iter()
        .map(|(name, stretches)| (name.as_str(), stretches_in_words(stretches)))
        .collect();
    let (_, first) = told.first()?;
    let where_in_words = match first {
        Some(same) if told.iter().all(|(_, other)| other.as_ref() == Some(same)) => same.clone(),
        _ => {
            let named: Vec<String> = told
                .iter()
                .filter_map(|(name, places)| Some(format!("{name} {}", places.as_ref()?)))
                .collect();
            named.join("; ")
        }
    };
    let (shortest, longest) = LIVING_LENGTHS;
    (!where_in_words.is_empty()).then(|| {
        format!(
            "Double, and less sure, because fibres leave the lengths of living ones ({shortest} to {longest} times the \
             optimal one): {where_in_words} of the range."
        )
    })
}

/// Letters that two lines at the foot of a slide hold, about: 1776 px for each at some 16 px a letter.
pub(super) const FOOT_LETTERS: usize = 205;

/// A footnote that ends in how the hollow line is read; it loses its last sentences where two lines would not hold all.
pub(crate) fn with_hollow(footnote: &str) -> String {
    let mut sentences: Vec<&str> = footnote.split_inclusive(". ").map(str::trim_end).collect();
    let letters = |sentences: &[&str]| sentences.join(" ").chars().count();
    while !sentences.is_empty() && letters(&sentences) + 1 + HOLLOW.len() > FOOT_LETTERS {
        sentences.pop();
    }
    sentences.retain(|sentence| !sentence.is_empty());
    sentences.push(HOLLOW);
    sentences.join(" ")
}

impl FigureWords {
    /// The words with what is said of hollow lines; the same where no curve has a doubted stretch.
    #[must_use]
    pub(crate) fn doubting(self, curves: &[(&str, &Study)]) -> Self {
        self.with_doubt(doubt_sentence(curves))
    }

    /// The same for lines of fibre lengths, which are as sure as the lengths that they draw.
    #[must_use]
    pub(crate) fn doubting_lengths<'l>(
        self,
        lines: impl Iterator<Item = (String, &'l [f64])>,
    ) -> Self {
        let lines = lines.map(|(name, lengths)| (name, beyond_living(lengths)));
        self.with_doubt(doubted_lines(&lines.collect::<Vec<_>>()))
    }

    fn with_doubt(mut self, sentence: Option<String>) -> Self {
        if let Some(sentence) = sentence {
            self.footnote = with_hollow(&self.footnote);
            for text in [&mut self.description, &mut self.caption] {
                if !text.is_empty() {
                    text.push(' ');
                }
                text.push_str(&sentence);
            }
        }
        self
    }
}
