//! Where numbers come from, in words: a source in one line; a publication, and how its numbers are known.
//!
//! In: a [`Source`] or a [`Publication`]. Out: text.

use crate::source::{Publication, Seen, Source};

/// One line for a table: "from memory: holzbaur_2005, muscle table".
#[must_use]
pub fn source_in_words(source: &Source) -> String {
    match source {
        Source::Published(key, place) => format!("published: {key}, {place}"),
        Source::FromMemory(key, what) => format!("from memory: {key}, {what}"),
        Source::Derived(key, how) => format!("derived: {key}, {how}"),
        Source::Assumed(why) => format!("assumed: {why}"),
        Source::Fitted(to) => format!("fitted: {to}"),
        Source::CommonPractice(what) => format!("common practice: {what}"),
        Source::Invented(what) => format!("invented: {what}"),
    }
}

/// How the numbers of a publication are known.
#[must_use]
pub const fn how_known(seen: Seen) -> &'static str {
    match seen {
        Seen::Read => "read",
        Seen::Partly => "partly read, partly from memory",
        Seen::Recalled => "from memory",
    }
}

/// A publication, a line for its key, for itself, and for its use.
#[must_use]
pub fn publication_in_words(key: &str, publication: &Publication) -> String {
    format!(
        "{key} ({})\n  {}\n  used for: {}",
        how_known(publication.seen),
        publication.citation,
        publication.used_for
    )
}

/// Authors and year of a publication as a text refers to it: "Hill 1938", "Walker & Schrodt 1974", "Kulig et al. 1984";
/// one without authors and year by its whole title.
#[must_use]
pub fn short_citation(citation: &str) -> String {
    let year = |at: usize| {
        let year = citation.get(at + 2..at + 6)?;
        let is_year =
            year.chars().all(|c| c.is_ascii_digit()) && citation[at + 6..].starts_with(')');
        is_year.then_some((at, year))
    };
    let found = citation.match_indices(" (").find_map(|(at, _)| year(at));
    let Some((at, year)) = found else {
        return citation.to_owned();
    };
    let authors: Vec<&str> = citation[..at].split(", ").collect();
    let surname = |author: &str| -> String {
        let is_initials = |word: &&str| word.chars().all(char::is_uppercase);
        let words: Vec<&str> = author
            .split(' ')
            .filter(|word| !is_initials(word))
            .collect();
        words.join(" ")
    };
    match authors.as_slice() {
        [one] if one.ends_with(" et al.") => {
            format!("{} et al. {year}", surname(one.trim_end_matches(" et al.")))
        }
        [one] => format!("{} {year}", surname(one)),
        [one, two] if !two.contains("et al") => {
            format!("{} & {} {year}", surname(one), surname(two))
        }
        [first, ..] => format!("{} et al. {year}", surname(first)),
        [] => citation.to_owned(),
    }
}

/// The publications that a figure rests on, a sentence behind its caption; empty without any.
#[must_use]
pub fn cited_in_words(publications: &[&Publication]) -> String {
    let one = |publication: &&Publication| {
        let name = short_citation(&publication.citation);
        match publication.seen {
            Seen::Recalled => format!("{name}†"),
            Seen::Read | Seen::Partly => name,
        }
    };
    match publications {
        [] => String::new(),
        some => format!(
            " After {}.{}",
            some.iter().map(one).collect::<Vec<_>>().join("; "),
            if some
                .iter()
                .any(|publication| publication.seen == Seen::Recalled)
            {
                " † cited from memory."
            } else {
                ""
            }
        ),
    }
}

/// What a list of publications is called.
pub const SOURCES_TITLE: &str = "Sources";

/// Publications in full in the order of their letters, then what their mark means if one has it; nothing without any.
#[must_use]
pub fn listed_in_words(publications: &[&Publication]) -> Vec<String> {
    let mark = |publication: &&Publication| match publication.seen {
        Seen::Recalled => format!("{}†", publication.citation),
        Seen::Read | Seen::Partly => publication.citation.clone(),
    };
    let mut lines: Vec<String> = publications.iter().map(mark).collect();
    lines.sort_by_key(|line| line.to_lowercase());
    let recalled = publications
        .iter()
        .any(|publication| publication.seen == Seen::Recalled);
    if recalled {
        lines.push("† Cited from memory; all others were read, whole or in part.".to_owned());
    }
    lines
}

/// How many publications there are, and what of the numbers without one.
#[must_use]
pub fn publications_counted(count: usize) -> String {
    format!(
        "{count} publications. Numbers without one are marked in the model files as assumed,\ncommon practice or invented."
    )
}
