//! Lines no wider than a terminal.
//!
//! In: words of a line, how far it is indented. Out: lines.

/// Columns of the narrowest terminal that is written for.
pub const COLUMNS: usize = 80;

/// The words in lines of at most [`COLUMNS`], the first behind `head`, the others under its end.
#[must_use]
pub fn wrapped(head: &str, words: &str) -> Vec<String> {
    let words = &held_together(words);
    let indent = " ".repeat(head.chars().count());
    let mut lines = Vec::new();
    let mut line = head.to_owned();
    let mut is_empty = true;
    for word in words.split(' ') {
        let width = line.chars().count() + usize::from(!is_empty) + word.chars().count();
        if !is_empty && width > COLUMNS {
            lines.push(std::mem::replace(&mut line, indent.clone()));
            is_empty = true;
        }
        if !is_empty {
            line.push(' ');
        }
        line.push_str(word);
        is_empty = false;
    }
    lines.push(line.trim_end().to_owned());
    lines.iter().map(|line| line.replace(HELD, " ")).collect()
}

/// A text of one or more lines, each no wider than a terminal; rows of tables, which begin with a blank, stay as they are,
/// and what follows "- " is indented.
#[must_use]
pub(super) fn folded(text: &str) -> Vec<String> {
    text.lines()
        .flat_map(|line| match line.strip_prefix("- ") {
            _ if line.is_empty() || line.starts_with(' ') => vec![line.to_owned()],
            Some(words) => wrapped("- ", words),
            None => wrapped("", line),
        })
        .collect()
}

/// A blank at which no line ends.
pub(super) const HELD: &str = "\u{a0}";

/// A number and its unit stay on one line, and so does a count.
pub(super) fn held_together(words: &str) -> String {
    let mut held = words.replace(" × ", "\u{a0}×\u{a0}");
    for unit in [" kg", " lb", " cm", " in", " %", " m/s", " s", " min"] {
        for end in [" ", ",", ";", ":", ".", ")"] {
            let free = format!("{unit}{end}");
            let before = free.replacen(' ', HELD, 1);
            held = replaced_after_digit(&held, &free, &before);
        }
    }
    held
}

/// Replaces a text where a digit stands before it.
fn replaced_after_digit(words: &str, free: &str, held: &str) -> String {
    let mut parts = words.split(free);
    let mut whole = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let is_number = whole.ends_with(|last: char| last.is_ascii_digit());
        whole.push_str(if is_number { held } else { free });
        whole.push_str(part);
    }
    whole
}
