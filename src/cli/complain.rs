//! Faults as a person reads them: message, the line it stands on, what to try next.
//!
//! In: an [`Error`] of any room. Out: text for standard error, in colour where that is wanted.

use super::output::note;
use crate::bounds::{first_hidden, is_shown};
use crate::error::{Error, Fault, FaultKind};
use crate::narrative::faults::{Told, more_faults, told};
use crate::report::wrapped;
use crate::units::System;
use annotate_snippets::{AnnotationKind, Element, Group, Level, Renderer, Snippet};
use std::borrow::Cow;
use std::collections::BTreeSet;
use std::ops::Range;
use std::sync::Mutex;

/// Faults beyond these are counted, not shown.
const MOST_FAULTS: usize = 25;

/// An error as text: its faults one under the other, each with its place and its next moves.
///
/// In colour it is for a terminal, and its lines end where one does. The text ends without a line break. **Fails.** Never.
#[must_use]
pub fn render(error: &Error, units: System, colour: bool) -> String {
    let renderer = if colour {
        Renderer::styled()
    } else {
        Renderer::plain()
    };
    let all = error.faults();
    let shown = all.iter().take(MOST_FAULTS);
    let mut faults: Vec<String> = shown
        .map(|fault| {
            let mut told = told(fault, units);
            shorten(&mut told);
            if colour {
                fold(&mut told);
            }
            let level = match error.kind() {
                FaultKind::BadInput => Level::ERROR,
                FaultKind::NoAnswer => Level::ERROR.with_name("no answer"),
            };
            renderer.render(&[group(fault, &told, level)])
        })
        .collect();
    if all.len() > MOST_FAULTS {
        faults.push(more_faults(all.len() - MOST_FAULTS));
    }
    faults.join("\n\n")
}

/// Doubts that were told already: a command that asks several models tells each of theirs once.
static TOLD: Mutex<BTreeSet<String>> = Mutex::new(BTreeSet::new());

/// Lets every doubt be told again, for another call in the same process.
pub(super) fn forget_told() {
    if let Ok(mut told) = TOLD.lock() {
        told.clear();
    }
}

/// What is accepted and yet unlikely, told on standard error as warnings.
pub(super) fn warn(doubts: &[Fault], units: System) {
    for doubt in doubts {
        let mut words = told(doubt, units);
        shorten(&mut words);
        let shown = Renderer::plain().render(&[group(doubt, &words, Level::WARNING)]);
        let is_new = TOLD.lock().is_ok_and(|mut told| told.insert(shown.clone()));
        if is_new {
            note(&shown);
        }
    }
}

/// Columns that the words before a message take: "no answer: ", " = hint: ".
const BEFORE_MESSAGE: usize = 11;

/// Ends the lines of message and hints where a terminal does.
fn fold(told: &mut Told) {
    told.message = folded(&told.message);
    told.hints = told.hints.iter().map(|hint| folded(hint)).collect();
}

fn folded(text: &str) -> String {
    let head = " ".repeat(BEFORE_MESSAGE);
    let lines = wrapped(&head, text);
    let lines: Vec<&str> = lines.iter().map(|line| line.trim_start()).collect();
    lines.join("\n")
}

/// A word longer than this is shown by its ends: it is what somebody typed or a file holds, and says no more in full.
const LONGEST_WORD: usize = 300;

/// Letters of each end of a word that is too long.
const END_OF_WORD: usize = 60;

/// Message, label and hints without the middle of words that fill a screen, and without signs that a terminal obeys.
fn shorten(told: &mut Told) {
    let fit = |text: &str| shortened(&visible_signs(text));
    told.message = fit(&told.message);
    told.label = told.label.as_deref().map(fit);
    told.hints = told.hints.iter().map(|hint| fit(hint)).collect();
}

/// What stands in the place of a sign that cannot be shown.
const HIDDEN: &str = "\u{fffd}";

/// The text with a mark for every sign that cannot be shown.
fn visible_signs(text: &str) -> Cow<'_, str> {
    match first_hidden(text) {
        None => Cow::Borrowed(text),
        Some(_) => Cow::Owned(text.replace(|sign: char| !is_shown(sign.into()), HIDDEN)),
    }
}

/// A file's text as it may be shown, and where a stretch of it stands then.
fn visible_text(text: &str, stretch: Range<usize>) -> (Cow<'_, str>, Range<usize>) {
    if first_hidden(text).is_none() {
        return (Cow::Borrowed(text), stretch);
    }
    let parts = [
        &text[..stretch.start],
        &text[stretch.clone()],
        &text[stretch.end..],
    ];
    let [before, marked, behind] = parts.map(visible_signs);
    let marks = before.len()..before.len() + marked.len();
    (Cow::Owned([before, marked, behind].concat()), marks)
}

fn shortened(text: &str) -> String {
    let words = text.split_inclusive(char::is_whitespace).map(|word| {
        let letters = word.chars().count();
        if letters <= LONGEST_WORD {
            return word.to_owned();
        }
        let start: String = word.chars().take(END_OF_WORD).collect();
        let end: String = word.chars().skip(letters - END_OF_WORD).collect();
        format!("{start}…{end}")
    });
    words.collect()
}

/// One fault for the renderer.
fn group<'a>(fault: &'a Fault, told: &'a Told, level: Level<'a>) -> Group<'a> {
    let title = level.primary_title(&told.message);
    let hints = told
        .hints
        .iter()
        .map(|hint| Element::from(Level::HELP.with_name("hint").message(hint)));
    let Some(place) = &fault.place else {
        return title.elements(hints);
    };
    let (text, stretch) = visible_text(&place.text, place.bytes());
    let stretch = visible(&text, stretch);
    let mut mark = AnnotationKind::Primary.span(stretch);
    if let Some(label) = &told.label {
        mark = mark.label(label);
    }
    title
        .element(Snippet::source(text).path(&place.file).annotation(mark))
        .elements(hints)
}

/// The stretch itself as far as a screen shows it, or the next sign of the line where it is empty, so that something is marked.
fn visible(text: &str, stretch: Range<usize>) -> Range<usize> {
    if !stretch.is_empty() {
        let marked = &text[stretch.clone()];
        let end = marked.char_indices().nth(LONGEST_WORD);
        return stretch.start..end.map_or(stretch.end, |(at, _)| stretch.start + at);
    }
    let sign = text[stretch.start..].chars().next();
    let width = sign.filter(|sign| *sign != '\n').map_or(0, char::len_utf8);
    stretch.start..stretch.start + width
}
